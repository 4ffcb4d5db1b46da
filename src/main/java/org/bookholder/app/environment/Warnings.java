package org.bookholder.app.environment;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.bookholder.problem.ProblemException;

/** Tells of problems that stop nothing, each of them once. Any thread may call it. */
public final class Warnings {
    private final Consumer<String> out;
    private final Set<String> told = new HashSet<>();

    /** Creates one; {@code out} takes each warning, one line. */
    public Warnings(Consumer<String> out) {
        this.out = out;
    }

    /** Tells of lines in a file of settings that are left out. */
    public synchronized void leftOut(List<ProblemException> wrong) {
        for (ProblemException problem : wrong) {
            if (told.add(problem.getMessage())) {
                out.accept(problem.getMessage() + " (this line is left out)");
            }
        }
    }
}
