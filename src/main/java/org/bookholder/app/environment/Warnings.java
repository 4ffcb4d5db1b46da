package org.bookholder.app.environment;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.bookholder.problem.ProblemException;

/** Reports problems that do not stop the work, each only once. Any thread may call it. */
public final class Warnings {
    private final Consumer<String> out;
    private final Set<String> told = new HashSet<>();

    /** Creates one; {@code out} receives each warning as one line. */
    public Warnings(Consumer<String> out) {
        this.out = out;
    }

    /** Tells of something that is damaged or missing, and that the program does without. */
    public synchronized void of(ProblemException problem) {
        if (told.add(problem.getMessage())) {
            out.accept(problem.getMessage());
        }
    }

    /** Reports ignored lines of a settings file. */
    public synchronized void leftOut(List<ProblemException> wrong) {
        for (ProblemException problem : wrong) {
            if (told.add(problem.getMessage())) {
                out.accept(problem.getMessage() + " (this line is left out)");
            }
        }
    }
}
