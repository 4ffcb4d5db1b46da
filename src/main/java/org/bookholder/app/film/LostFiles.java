package org.bookholder.app.film;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.bookholder.course.Text;
import org.bookholder.film.plan.FilmPlan;

/**
 * What follows for a film from files that cannot be used now.
 *
 * @param obstacles why no final film can be made: each file on which lines stand, with these lines; empty if every line has something
 *     else that shows it and lets it be heard
 * @param lines the lines that stand on such files
 * @param remarks what is to be said of a film that is made all the same, one sentence each
 */
record LostFiles(List<FilmObstacle> obstacles, Set<Integer> lines, List<String> remarks) {
    LostFiles {
        obstacles = List.copyOf(obstacles);
        lines = Set.copyOf(lines);
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
        Map<LostFile, List<Integer>> needed = new LinkedHashMap<>();
        List<String> remarks = new ArrayList<>();
        for (LostFile file : lost) {
            List<Integer> standing = file.lines(plan);
            if (!standing.isEmpty()) {
                needed.put(file, standing);
            }
            List<Integer> others = instead.stream()
                    .filter(line -> line.session() == file.number() && file.showed(line.attempt()))
                    .map(ReplacedReading::line)
                    .toList();
            if (!others.isEmpty() || standing.isEmpty()) {
                String meanwhile = others.isEmpty()
                        ? "it is done without"
                        : "another reading of " + Text.lines(others) + " is used";
                remarks.add(file.said() + "; " + file.why().remedy() + "; meanwhile " + meanwhile);
            }
        }
        Set<Integer> lines = needed.values().stream().flatMap(List::stream).collect(Collectors.toSet());
        return new LostFiles(obstacles(needed), lines, remarks);
    }

    /** Files that are gone are said in one sentence, as they often went together. */
    private static List<FilmObstacle> obstacles(Map<LostFile, List<Integer>> needed) {
        List<FilmObstacle> obstacles = new ArrayList<>();
        List<LostFile> gone = needed.keySet().stream().filter(LostFiles::isGone).toList();
        if (gone.size() > 1) {
            String each = gone.stream()
                    .map(file -> file.placed().footage().name() + " (session "
                            + file.session().getFileName() + ", " + Text.lines(Objects.requireNonNull(needed.get(file)))
                            + ")")
                    .collect(Collectors.joining(", "));
            String remedy = "put them back, or match them again where they are now";
            obstacles.add(new FilmObstacle(
                    gone.size() + " files are not where they were matched any more, and nothing else has their lines: "
                            + each,
                    gone.get(0).why().where(),
                    remedy,
                    remedy,
                    true));
        }
        needed.forEach((file, lines) -> {
            if (gone.size() < 2 || !isGone(file)) {
                String remedy = file.why().remedy();
                obstacles.add(new FilmObstacle(
                        file.said() + ", and nothing else has " + Text.lines(lines),
                        file.why().where(),
                        remedy,
                        remedy,
                        true));
            }
        });
        return obstacles;
    }

    private static boolean isGone(LostFile file) {
        return !Files.exists(file.placed().footage().file());
    }
}
