package org.bookholder.course;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.AgeingFact;

/**
 * What people have decided about facts that may be outdated, kept in {@code facts.json}: that one was looked at and is still right, or that
 * this is taken back. Nothing is deleted: a later decision overrides an earlier one. It holds for the words of the fact, the day on which
 * it was due and the line that says it; if the author changes one of them, the fact is a new one.
 */
public final class FactChecks {
    private static final String FILE = "facts.json";

    private final List<Decision> decisions;

    private FactChecks(List<Decision> decisions) {
        this.decisions = List.copyOf(decisions);
    }

    /**
     * A decision.
     *
     * @param when time as text, ISO 8601 in UTC
     * @param lesson the lesson's name at that time, for people
     * @param fact the words of the fact
     * @param due the day from which it was to be checked, ISO 8601
     * @param line the line that says it
     * @param right whether it was found to be right still; otherwise an earlier decision is taken back
     */
    public record Decision(String when, String lesson, String fact, String due, String line, boolean right) {
        private boolean isAbout(Lesson other, AgeingFact what) {
            return fact.equals(what.text())
                    && due.equals(what.due().toString())
                    && line.equals(FactChecks.line(other, what));
        }
    }

    /** Reads the decisions kept in a course's folder; throws a problem if they cannot be read. */
    public static FactChecks read(Path folder) throws ProblemException {
        return new FactChecks(MarkList.read(folder.resolve(FILE), Decision[].class, FactChecks::check));
    }

    private static void check(Decision decision) {
        Instant.parse(decision.when());
        LocalDate.parse(decision.due());
    }

    /** Saves the decisions in a course's folder; throws a problem if they cannot be written. */
    public void write(Path folder) throws ProblemException {
        MarkList.write(folder.resolve(FILE), decisions);
    }

    /** The same with a decision about a fact of a lesson. */
    public FactChecks decided(Instant when, Lesson lesson, AgeingFact fact, boolean right) {
        List<Decision> more = new ArrayList<>(decisions);
        more.add(new Decision(
                when.toString(), lesson.name(), fact.text(), fact.due().toString(), line(lesson, fact), right));
        return new FactChecks(more);
    }

    /** All decisions that were made about a lesson of that name, in the order in which they were made. */
    public List<Decision> decisions(Lesson lesson) {
        return decisions.stream()
                .filter(decision -> decision.lesson().equals(lesson.name()))
                .toList();
    }

    /** When a fact was looked at and found to be right; empty if it was not, or that was taken back. */
    public Optional<Instant> lookedAt(Lesson lesson, AgeingFact fact) {
        return decisions.stream()
                .filter(decision -> decision.isAbout(lesson, fact))
                .reduce((earlier, later) -> later)
                .filter(Decision::right)
                .map(decision -> Instant.parse(decision.when()));
    }

    private static String line(Lesson lesson, AgeingFact fact) {
        return lesson.script().lines().get(fact.line() - 1).text();
    }
}
