package org.bookholder.app.film;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Text;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.problem.ProblemException;

/**
 * What follows for a film from files that cannot be used now.
 *
 * @param problem why no final film can be made: each file on which lines stand, with these lines; empty if every line has something
 *     else that shows it and lets it be heard
 * @param remarks what is to be said of a film that is made all the same, one sentence each
 */
record LostFiles(Optional<ProblemException> problem, List<String> remarks) {
    LostFiles {
        remarks = List.copyOf(remarks);
    }

    /**
     * Looks at the files of all sessions.
     *
     * @param instead lines of which another reading is used
     */
    static LostFiles of(List<FilmFootage.Found> found, FilmPlan plan, List<ReplacedReading> instead) {
        List<LostFile> lost =
                found.stream().flatMap(files -> files.lost().stream()).toList();
        Optional<ProblemException> problem = problem(lost, plan);
        List<String> remarks = new ArrayList<>();
        problem.map(ProblemException::told).ifPresent(remarks::add);
        for (LostFile file : lost) {
            List<Integer> others = instead.stream()
                    .filter(line -> line.session() == file.number() && file.showed(line.attempt()))
                    .map(ReplacedReading::line)
                    .toList();
            if (!others.isEmpty() || file.lines(plan).isEmpty()) {
                String meanwhile = others.isEmpty()
                        ? "it is done without"
                        : "another reading of " + Text.lines(others) + " is used";
                remarks.add(file.said() + "; " + file.why().remedy() + "; meanwhile " + meanwhile);
            }
        }
        return new LostFiles(problem, remarks);
    }

    private static Optional<ProblemException> problem(List<LostFile> lost, FilmPlan plan) {
        List<LostFile> needed =
                lost.stream().filter(file -> !file.lines(plan).isEmpty()).toList();
        if (needed.isEmpty()) {
            return Optional.empty();
        }
        List<String> each = needed.stream()
                .map(file -> file.said() + ", and nothing else has " + Text.lines(file.lines(plan)))
                .toList();
        ProblemException first = needed.get(0).why();
        return Optional.of(new ProblemException(
                String.join("; ", each),
                first.where(),
                first.remedy() + ", leave the lines out (--leave-out), or make a draft (--draft)",
                first));
    }
}
