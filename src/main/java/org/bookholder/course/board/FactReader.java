package org.bookholder.course.board;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.bookholder.course.Course;
import org.bookholder.course.ExportFiles;
import org.bookholder.course.FactChecks;
import org.bookholder.course.FormerNames;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.AgeingFact;

/** Finds the facts of a course that may be outdated, with what was decided about them and where they are said. */
final class FactReader {
    private static final Pattern CAPTIONS = Pattern.compile("(?i)\\.(vtt|srt|txt)$");

    private final FormerNames names;
    private final FactChecks checks;
    private final List<Path> captions;

    private FactReader(FormerNames names, FactChecks checks, List<Path> captions) {
        this.names = names;
        this.checks = checks;
        this.captions = captions;
    }

    /** The facts of all lessons, in order. */
    static List<DueFact> facts(Course course, FormerNames names, List<LessonState> lessons) throws ProblemException {
        boolean any = lessons.stream()
                .anyMatch(state -> !state.lesson().script().facts().isEmpty());
        if (!any) {
            return List.of();
        }
        FactReader reader = new FactReader(names, FactChecks.read(course.folder()), captions(course.exports()));
        List<DueFact> facts = new ArrayList<>();
        for (LessonState state : lessons) {
            for (AgeingFact fact : state.lesson().script().facts()) {
                facts.add(new DueFact(
                        state.lesson(),
                        fact,
                        reader.checks.lookedAt(state.lesson(), fact),
                        state.exports(),
                        reader.holding(state, fact)));
            }
        }
        return facts;
    }

    /** The captions of a lesson that hold the words of a fact. */
    private List<Path> holding(LessonState state, AgeingFact fact) throws ProblemException {
        List<Path> holding = new ArrayList<>();
        for (Path file : captions) {
            boolean own = names.lessonOf(file).filter(state.lesson()::equals).isPresent();
            if (own && even(text(file)).contains(even(fact.text()))) {
                holding.add(file);
            }
        }
        return holding;
    }

    /** A caption is broken into rows where it must be. */
    private static String even(String text) {
        return text.replaceAll("\\s+", " ");
    }

    private static String text(Path file) throws ProblemException {
        try {
            return new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new ProblemException("the captions cannot be read", file.toString(), "check their permissions", e);
        }
    }

    private static List<Path> captions(Path folder) throws ProblemException {
        return ExportFiles.in(folder, file -> CAPTIONS.matcher(file.toString()).find());
    }
}
