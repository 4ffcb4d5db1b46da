package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.app.course.CourseStatus;
import org.bookholder.app.day.DayService;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.script.CourseImport.Offered;
import org.bookholder.app.script.KnownWords;
import org.bookholder.app.script.LessonText;
import org.bookholder.app.script.LessonTexts;
import org.bookholder.app.script.ScriptInspection;
import org.bookholder.app.script.ScriptJson;
import org.bookholder.app.session.CourseHabits;
import org.bookholder.app.session.HeardAs;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.course.CourseReader;
import org.bookholder.course.UnreadableLesson;
import org.bookholder.course.board.LessonState;
import org.bookholder.files.DiskProblems;
import org.bookholder.problem.ProblemException;

/**
 * The scripts of the course that the page shows: a list, and each as text that can be edited beside how it will be read. Safe for
 * use by several threads.
 */
final class ScriptRoom {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final Environment here;
    private final HomeCourses courses;
    private final LessonTexts texts;
    private final KnownWords words;
    private final CourseHabits habits;

    /** How things are said in the course of the script that was opened last. */
    private CourseHabits.Known said = CourseHabits.Known.NOTHING;

    ScriptRoom(Environment here, HomeCourses courses, LessonTexts texts, KnownWords words) {
        this.here = here;
        this.courses = courses;
        this.texts = texts;
        this.words = words;
        this.habits = new CourseHabits(here);
    }

    /**
     * A script of the course.
     *
     * @param file its file
     * @param lesson the lesson; empty if it can't be read
     * @param why why it can't be read; empty if it can
     */
    private record Entry(Path file, Optional<LessonState> lesson, String why) {
        String name() {
            return String.valueOf(file.getFileName());
        }
    }

    /**
     * Answers what the page asks.
     *
     * @throws ProblemException why it can't be answered or done
     */
    synchronized ObjectNode answer(JsonNode asked) throws ProblemException {
        return switch (asked.path("do").asText()) {
            case "list" -> list();
            case "open" -> open(entry(asked));
            case "revision" ->
                NODES.objectNode()
                        .put("revision", texts.read(entry(asked).file()).revision());
            case "look" -> look(entry(asked).file(), asked.path("text").asText());
            case "save" -> save(entry(asked), asked);
            case "save_over" -> saveOver(entry(asked), asked);
            case "keep" ->
                NODES.objectNode()
                        .put(
                                "kept",
                                String.valueOf(texts.keep(
                                                entry(asked).file(),
                                                asked.path("text").asText())
                                        .getFileName()));
            case "say" -> say(entry(asked), asked);
            case "forget_heard" -> forget(entry(asked), asked);
            case "as_text" -> asText(entry(asked));
            default -> throw new ProblemException("there is no such action", "scripts", "load the page again");
        };
    }

    private ObjectNode list() throws ProblemException {
        ObjectNode json = NODES.objectNode();
        ArrayNode lessons = json.putArray("lessons");
        int number = 0;
        for (Entry entry : entries(courses.seen())) {
            number++;
            ObjectNode row = lessons.addObject();
            row.put("number", number);
            row.put("file", entry.name());
            row.put("why", entry.why());
            row.put("title", entry.lesson().map(state -> state.lesson().title()).orElse(entry.name()));
            entry.lesson()
                    .ifPresent(state -> row.put("words", state.lesson().script().spokenWords())
                            .put("seconds", Math.round(state.seconds())));
        }
        return json;
    }

    private ObjectNode open(Entry entry) throws ProblemException {
        said = habits.known(entry.file());
        return shown(
                texts.read(entry.file()), look(entry.file(), () -> ScriptInspection.of(entry.file(), words), said));
    }

    /** Chooses for the whole course how something is said, and shows the text with it. */
    private ObjectNode say(Entry entry, JsonNode asked) throws ProblemException {
        habits.choose(
                entry.file(), asked.path("written").asText(), asked.path("said").asText());
        said = habits.known(entry.file());
        return look(entry.file(), asked.path("text").asText());
    }

    /** Forgets that a word is heard as something else when somebody reads it, and shows the text without it. */
    private ObjectNode forget(Entry entry, JsonNode asked) throws ProblemException {
        new HeardAs(here, asked.path("presenter").asText())
                .forget(asked.path("written").asText(), asked.path("heard").asText());
        return look(entry.file(), asked.path("text").asText());
    }

    private static ObjectNode shown(LessonText text, ObjectNode look) {
        ObjectNode json = NODES.objectNode();
        json.put("file", String.valueOf(text.file().getFileName()));
        json.put("path", text.file().toString());
        json.put("text", text.text());
        json.put("revision", text.revision());
        json.put("editable", text.editable());
        json.set("look", look);
        return json;
    }

    private ObjectNode look(Path file, String text) {
        return look(file, () -> ScriptInspection.of(text, file.toString(), words), said);
    }

    /** How a document that was dropped will be read; or what must be mended first. */
    ObjectNode look(Path file, Offered offered) {
        return look(
                file,
                () -> ScriptInspection.of(offered.lesson().text(), file.toString(), words)
                        .alsoLeavingOut(offered.document().leftOut()),
                CourseHabits.Known.NOTHING);
    }

    /** What finds how a text will be read. */
    @FunctionalInterface
    private interface Inspection {
        ScriptInspection find() throws ProblemException;
    }

    private ObjectNode look(Path file, Inspection inspection, CourseHabits.Known said) {
        try {
            ScriptInspection found =
                    inspection.find().said(said).aimed(new TargetPaces(here, DayService.SOLE_PRESENTER));
            ObjectNode json = ScriptJson.forPage(found, session -> courses.address(session));
            for (String presenter : HeardAs.presenters(here)) {
                ScriptJson.heardAs(json, presenter, new HeardAs(here, presenter).known());
            }
            courses.seen()
                    .overview()
                    .flatMap(course -> course.status().board().measured().pace().stream()
                            .boxed()
                            .findFirst())
                    .ifPresent(own ->
                            json.put("own seconds", Math.round(found.script().spokenWords() * 60 / own)));
            return json;
        } catch (ProblemException e) {
            boolean own = e.where().startsWith(file.toString());
            String line = own ? e.where().substring(e.where().lastIndexOf(':') + 1) : "";
            return NODES.objectNode()
                    .put("wrong", own ? e.what() : e.named())
                    .put("remedy", e.remedy())
                    .put("source", line.matches("\\d{1,7}") ? Integer.parseInt(line) : 0);
        }
    }

    private ObjectNode save(Entry entry, JsonNode asked) throws ProblemException {
        Optional<LessonText> saved = texts.save(
                entry.file(),
                asked.path("text").asText(),
                asked.path("revision").asText());
        if (saved.isEmpty()) {
            return shown(texts.read(entry.file()), NODES.objectNode()).put("changed", true);
        }
        courses.look();
        return shown(saved.get(), look(entry.file(), saved.get().text()));
    }

    private ObjectNode saveOver(Entry entry, JsonNode asked) throws ProblemException {
        Path kept = texts.saveOver(entry.file(), asked.path("text").asText());
        courses.look();
        return open(entry).put("kept", String.valueOf(kept.getFileName()));
    }

    private ObjectNode asText(Entry entry) throws ProblemException {
        LessonText made = texts.asText(entry.file());
        courses.look();
        return shown(made, look(made.file(), made.text()));
    }

    /** The script of that name; one that the course names outside of its folder, or by a link, is not shown or changed here. */
    private Entry entry(JsonNode asked) throws ProblemException {
        String name = asked.path("file").asText();
        HomeCourses.Seen seen = courses.seen();
        Entry found = entries(seen).stream()
                .filter(entry -> entry.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new ProblemException(
                        "the course has no script of that name", name, "choose one from the list"));
        if (!inside(Path.of(seen.folder()), found.file())) {
            throw new ProblemException(
                    "this script lies outside of the course",
                    found.file().toString(),
                    "put it into the course's folder");
        }
        return found;
    }

    private static boolean inside(Path folder, Path file) throws ProblemException {
        Path there = Files.exists(file) ? file : file.resolveSibling("");
        try {
            return there.toRealPath().startsWith(folder.toRealPath());
        } catch (IOException e) {
            throw DiskProblems.reading(file, e);
        }
    }

    private static List<Entry> entries(HomeCourses.Seen seen) throws ProblemException {
        List<Entry> entries = new ArrayList<>();
        if (seen.overview().isPresent()) {
            CourseStatus course = seen.overview().get().status();
            List<LessonState> lessons = course.board().lessons();
            List<UnreadableLesson> unreadable = course.course().unreadable();
            for (int number = 1; number <= lessons.size() + unreadable.size(); number++) {
                int wanted = number;
                lessons.stream()
                        .filter(state -> state.lesson().number() == wanted)
                        .forEach(state -> entries.add(new Entry(state.lesson().file(), Optional.of(state), "")));
                unreadable.stream()
                        .filter(lesson -> lesson.number() == wanted)
                        .forEach(lesson -> entries.add(new Entry(lesson.file(), Optional.empty(), lesson.why())));
            }
        } else if (!seen.folder().isEmpty()) {
            // No lesson can be read: this is where it is mended.
            Path folder = Path.of(seen.folder());
            try (Stream<Path> files = Files.list(folder)) {
                files.filter(CourseReader::isScript)
                        .sorted()
                        .forEach(file -> entries.add(new Entry(file, Optional.empty(), "Not read yet.")));
            } catch (UncheckedIOException e) {
                throw DiskProblems.reading(folder, Objects.requireNonNull(e.getCause()));
            } catch (IOException e) {
                throw DiskProblems.reading(folder, e);
            }
        }
        return entries;
    }

    /** While a lesson is read the recogniser's vocabulary is not kept in memory for this room too. */
    void whileReading(boolean reading) {
        words.allow(!reading);
    }
}
