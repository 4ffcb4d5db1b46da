package org.bookholder.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.course.PickupSession;
import org.bookholder.app.course.ReadingOn;
import org.bookholder.app.course.RunningOrder;
import org.bookholder.app.day.DayService;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.reading.LessonSequence;
import org.bookholder.app.reading.ReadingRequest;
import org.bookholder.app.reading.WindowPreferences;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.session.Mover;
import org.bookholder.view.settings.WindowWish;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Reads a lesson. */
@Command(
        name = "read",
        sortOptions = false,
        description = {
            "Read a lesson to the camera. The reading window follows your voice; afterwards you get the list of lines "
                    + "to pick up.",
            "In the window, K shows what each key does. Close it or press Ctrl-C to end. Without a window, Enter ends"
                    + " too, and a letter with Enter steers: H hold or go on, C cut, N next take, R pickup round, L leave"
                    + " its line, A the line again, B break, G next lesson, O aim at your pace."
        })
final class ReadCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(
            arity = "0..*",
            paramLabel = "SCRIPT",
            description =
                    "The lesson: a Markdown, plain text or Word (.docx) file. Several are read one after another in"
                            + " the same window; a course's folder stands for the lessons that are next in it. One that was"
                            + " left today in the middle goes on in its session.")
    private @Nullable List<Path> scripts;

    @Option(
            names = "--session",
            paramLabel = "FOLDER",
            description =
                    "Where takes and notes are kept. If a session is there already, it goes on with a new take. If "
                            + "you leave it out, today's interrupted session continues, or a new one starts.")
    private @Nullable Path session;

    @Option(
            names = "--new-session",
            description = "Begin a new session, even if the last one of this script was broken off.")
    private boolean anew;

    @Option(names = "--from", paramLabel = "LINE", description = "Begin at this line, counted from 1.")
    private @Nullable Integer from;

    @Option(
            names = "--pickups",
            description =
                    "Begin with the pickup round: each line to pick up comes, until it is read clean. The lesson's last"
                            + " session with such lines goes on. Of a course's folder, only lessons with such lines are"
                            + " read.")
    private boolean pickups;

    @Option(names = "--microphone", paramLabel = "NAME", description = "Listen to this microphone.")
    private @Nullable String microphone;

    @Option(names = "--list-microphones", description = "List the microphones of this machine, and do no more.")
    private boolean listMicrophones;

    @Option(names = "--no-microphone", description = "Read without being heard: by hand, or with --move steady.")
    private boolean noMicrophone;

    @Option(names = "--audio", paramLabel = "FILE", description = "Hear a recording (WAV) instead of a microphone.")
    private @Nullable Path audio;

    @Option(names = "--unpaced", description = "With --audio and --no-window: as fast as this machine can.")
    private boolean unpaced;

    @Option(
            names = "--presenter",
            paramLabel = "NAME",
            description = {
                "Who reads, if several people do at this machine: breaks are counted for each of them, and what their words are",
                "heard as is remembered for each."
            })
    private @Nullable String presenter;

    @Mixin
    private final SpeakerOption speakers = new SpeakerOption();

    @Option(names = "--no-window", description = "Show progress in the terminal only.")
    private boolean noWindow;

    @Option(names = "--no-desk", description = "Open no desk: no page for a producer.")
    private boolean noDesk;

    @Option(names = "--model", paramLabel = "FOLDER", description = "Use this speech model (Vosk).")
    private @Nullable Path model;

    @Mixin
    private final WindowOptions window = new WindowOptions();

    @Mixin
    private final DeskOptions desk = new DeskOptions();

    @Option(
            names = {"-v", "--verbose"},
            description = "Say more about what is done.")
    private boolean verbose;

    ReadCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        if (listMicrophones) {
            return listMicrophones();
        }
        List<Path> lessons = new ArrayList<>();
        Map<Path, ReadingOn> begun = new HashMap<>();
        for (Path script : Objects.requireNonNullElse(scripts, List.<Path>of())) {
            if (SessionFolder.isSession(script)) {
                throw wrong(
                        "this is a session, not a lesson",
                        script.toString(),
                        "to go on with it, name the lesson's file: bookholder read LESSON --session " + script);
            }
            if (Files.isDirectory(script)) {
                for (RunningOrder.Turn turn : RunningOrder.of(script, whoReads(), anew, here)) {
                    lessons.add(turn.script());
                    begun.put(turn.script(), turn.on());
                }
            } else {
                lessons.add(script);
            }
        }
        check(lessons);
        if (pickups && session == null && !anew) {
            pickUp(lessons, begun);
        }
        int from = anew || lessons.size() == 1 ? 0 : LessonSequence.brokenOff(here, lessons, speakers.names());
        List<Path> left = lessons.subList(from, lessons.size());
        return TerminalReading.run(
                here,
                terminal,
                left,
                speakers.names(),
                place -> request(left.get(place), goesOn(begun, left.get(place), place == 0), place == 0),
                verbose);
    }

    /** Finds the session in which each lesson's lines are picked up; lessons without such lines are taken out of several. */
    private void pickUp(List<Path> lessons, Map<Path, ReadingOn> begun) throws ProblemException {
        List<Path> open = new ArrayList<>();
        for (Path script : lessons) {
            Optional<Path> going = PickupSession.of(script, here);
            if (going.isPresent()) {
                begun.put(script, new ReadingOn(going, Optional.empty()));
                open.add(script);
            }
        }
        if (open.isEmpty()) {
            throw lessons.size() == 1
                    ? wrong("no line of it is to be picked up", lessons.get(0).toString(), "read it without --pickups")
                    : wrong("no line of these lessons is to be picked up", "--pickups", "read them without it");
        }
        lessons.retainAll(open);
    }

    private String whoReads() {
        return presenter == null ? DayService.SOLE_PRESENTER : presenter;
    }

    /** Where a lesson of a course's folder, or a pickup round, goes on: a recording and the part of some speakers do not. */
    private ReadingOn goesOn(Map<Path, ReadingOn> begun, Path script, boolean first) {
        boolean other = session != null || audio != null || !speakers.names().isEmpty();
        ReadingOn on = other && !pickups ? ReadingOn.NOWHERE : begun.getOrDefault(script, ReadingOn.NOWHERE);
        if (on.session().isPresent()) {
            terminal.out()
                    .println((pickups ? "Its last session with lines to pick up" : "Its last session")
                            + " goes on in a new take; --new-session begins another.");
        } else if (on.from().isPresent() && !(first && from != null)) {
            terminal.out()
                    .println("A new session begins at line " + on.from().get()
                            + ", the first that was not reached; to read the lesson once more, name its file.");
        }
        return on;
    }

    private int listMicrophones() throws ProblemException {
        List<String> names = here.equipment().microphones();
        if (names.isEmpty()) {
            terminal.out().println("No microphone was found.");
        }
        names.forEach(terminal.out()::println);
        return 0;
    }

    private void check(List<Path> lessons) throws ProblemException {
        if (lessons.isEmpty()) {
            throw wrong("no script was given", "SCRIPT", "name the lesson's file, as in: bookholder read lesson.md");
        }
        if (lessons.size() > 1 && session != null) {
            throw wrong("each lesson has a session of its own", "--session", "leave it out, or name one lesson");
        }
        if (lessons.size() > 1 && audio != null) {
            throw wrong("a recording is of one lesson", "--audio", "name one lesson");
        }
        if (audio != null && (microphone != null || noMicrophone)) {
            throw wrong("a recording takes the microphone's place", "--audio", "leave out the microphone options");
        }
        if (noMicrophone && microphone != null) {
            throw wrong("contradicts --microphone", "--no-microphone", "leave one of the two out");
        }
        if (unpaced && (audio == null || !noWindow)) {
            throw wrong("only a recording can be read faster than life", "--unpaced", "add --audio FILE --no-window");
        }
        if (noWindow) {
            window.check();
        }
    }

    /** How a lesson is read; where to begin concerns the first one only. */
    private ReadingRequest request(Path script, ReadingOn on, boolean first) throws ProblemException {
        Optional<WindowWish> wish = noWindow
                ? Optional.empty()
                : Optional.of(window.over(WindowPreferences.of(here, script).wish()));
        int countIn = wish.isPresent() ? wish.get().settings().countIn() : window.countIn();
        boolean handOrSteady = audio == null && microphone == null && window.move() != Mover.VOICE;
        return new ReadingRequest(
                script,
                speakers.names(),
                Optional.ofNullable(presenter),
                Optional.ofNullable(session).or(on::session),
                anew || unpaced,
                first && from != null ? Optional.of(from) : on.from(),
                new Conduct(countIn, pickups),
                Optional.ofNullable(audio),
                Optional.ofNullable(microphone),
                noMicrophone,
                handOrSteady,
                unpaced,
                wish,
                noDesk || unpaced ? Optional.empty() : Optional.of(desk.request()),
                model == null ? here.model() : model);
    }

    private static ProblemException wrong(String what, String where, String remedy) {
        return new ProblemException(what, where, remedy);
    }
}
