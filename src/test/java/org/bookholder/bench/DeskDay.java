package org.bookholder.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.cli.Main;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Session;
import org.bookholder.session.SessionState;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.SoundServer;
import org.openqa.selenium.Keys;

/**
 * Six lessons read in one start of the program, while two producers at browsers and one at a phone mark lines, write notes, undo and
 * lead the day, all by chance, over networks that fail. Afterwards the journals are compared with what was done.
 */
final class DeskDay {
    private static final int LESSONS = 6;
    private static final int LINES_A_MINUTE = 12;
    private static final int ACTS_A_MINUTE = 6;
    private static final Path MODEL = KilledReading.MODEL;

    private final Path folder;
    private final Form form;
    private final List<Producer> producers = new ArrayList<>();

    private DeskDay(Path folder, Form form) {
        this.folder = folder;
        this.form = form;
    }

    /**
     * How a day is run.
     *
     * @param seed what people do by chance
     * @param speed how many times as fast the time of the pages runs
     * @param lines lines of a lesson
     * @param acts what each of those who don't lead does in a lesson
     * @param rest the longest rest between two acts, in seconds
     * @param spoken whether a voice reads the lessons into a microphone
     */
    private record Form(long seed, double speed, int lines, int acts, double rest, boolean spoken) {}

    /**
     * Runs a day in real time with a voice, and prints what is wrong with the journals. Needs the Debian packages
     * chromium-headless-shell, chromium-driver, flite, pulseaudio and pulseaudio-utils.
     *
     * <p>Arguments: minutes of a lesson (default 10; 0 for a day without a voice, as fast as pages and program can) and a seed
     * (default 1).
     */
    public static void main(String[] args) throws IOException, InterruptedException, ProblemException {
        int minutes = args.length > 0 ? Integer.parseInt(args[0]) : 10;
        long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
        Path folder = Files.createTempDirectory("day");
        Form form = minutes == 0
                ? new Form(seed, 2, 24, 4, 0, false)
                : new Form(seed, 1, minutes * LINES_A_MINUTE, minutes * ACTS_A_MINUTE, 2 * 60.0 / ACTS_A_MINUTE, true);
        DeskDayCheck check = new DeskDay(folder, form).run();
        check.faults().forEach(System.out::println);
        System.out.printf(
                Locale.ROOT,
                "%d lessons of %d minutes: %s; %d faults (%s)%n",
                LESSONS,
                minutes,
                check.counts(),
                check.faults().size(),
                folder);
        // Those who do nothing any more hold threads of their own.
        System.exit(check.faults().isEmpty() ? 0 : 1);
    }

    private DeskDayCheck run() throws IOException, InterruptedException, ProblemException {
        Optional<SoundServer> sound = form.spoken() ? Optional.of(SoundServer.in(folder)) : Optional.empty();
        try (ChildJvm program = start(sound)) {
            String address = program.readTo("Desk: ").substring("Desk: ".length());
            CompletableFuture<List<String>> printed = CompletableFuture.supplyAsync(() -> printed(program));
            List<CompletableFuture<Void>> working = open(URI.create(address));
            for (int lesson = 1; lesson <= LESSONS; lesson++) {
                lead(lesson, sound);
            }
            producers.forEach(Producer::leave);
            working.forEach(CompletableFuture::join);
            producers.forEach(Producer::comeBack);
            DeskDayCheck check = new DeskDayCheck(sessions());
            for (Producer producer : producers) {
                check.add(
                        producer.author(),
                        PageAct.all(json(producer, "acts")),
                        json(producer, "answers"),
                        json(producer, "said"));
            }
            producers.get(0).press("q");
            check.ended(printed.join());
            return check;
        } finally {
            for (Producer producer : producers) {
                producer.close();
            }
            sound.ifPresent(SoundServer::close);
        }
    }

    private List<CompletableFuture<Void>> open(URI desk) throws IOException {
        Random random = new Random(form.seed());
        List<CompletableFuture<Void>> working = new ArrayList<>();
        for (String name : List.of("anna", "ben", "phone")) {
            Producer producer =
                    new Producer(name, desk.getPort(), form.speed(), form.rest(), new Random(random.nextLong()));
            producers.add(producer);
            producer.open(desk.getFragment(), name.equals("phone"));
            working.add(CompletableFuture.runAsync(producer::work));
        }
        return working;
    }

    private static List<String> printed(ChildJvm program) {
        try {
            return program.untilItEnds();
        } catch (IOException | InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** One of the three leads a lesson to its end, while the others do what they like. */
    private void lead(int lesson, Optional<SoundServer> sound) throws IOException, InterruptedException {
        Producer leader = producers.get(lesson % producers.size());
        Producer other = producers.get((lesson + 1) % producers.size());
        for (Producer producer : producers) {
            for (int i = 0; i < form.acts() && !producer.equals(leader); i++) {
                producer.ask(producer::act);
            }
        }
        leader.asked(() -> {
                    leader.comeBack();
                    leader.until("deskState.model.script.title === '" + title(lesson) + "'");
                })
                .join();
        CompletableFuture<Void> led = leader.asked(() -> lead(leader, lesson));
        if (sound.isPresent()) {
            new SpokenLesson(sound.get(), folder, WorkshopTalk.lines(lesson, form.lines())).read(leader, led);
        }
        led.join();
        if (lesson < LESSONS) {
            // Both want the next lesson at the same moment; it must not be left out.
            other.ask(() -> other.press(Keys.ENTER));
            leader.asked(() -> leader.lead(Keys.ENTER, "deskState.model.script.title === '" + title(lesson + 1) + "'"))
                    .join();
        }
    }

    /** Holds, goes on, sends the position to a line, and has a break or a pickup round. */
    private void lead(Producer leader, int lesson) {
        leader.until("deskState.model.at.rolling");
        acts(leader);
        leader.read(7);
        leader.lead("h", "deskState.model.at.held");
        acts(leader);
        leader.lead("h", "!deskState.model.at.held");
        leader.read(15);
        acts(leader);
        if (lesson % 3 == 1) {
            leader.lead("z", "deskState.model.people.break_since");
            acts(leader);
            leader.lead("z", "!deskState.model.people.break_since");
            return;
        }
        if (lesson % 3 == 2) {
            leader.lead("p", "deskState.model.at.open > 0");
            leader.lead("r", "deskState.model.at.round");
            acts(leader);
            leader.lead("r", "!deskState.model.at.round");
        }
        leader.until("deskState.seenTake.value() === deskState.model.takes.length");
        leader.lead("c", "!deskState.model.at.rolling");
    }

    /** A quarter of what the others do in the lesson; then the network is there again. */
    private void acts(Producer leader) {
        for (int i = 0; i < form.acts() / 4; i++) {
            leader.act();
        }
        leader.comeBack();
    }

    private static String title(int lesson) {
        return "Lesson " + lesson;
    }

    private String text(int lesson) {
        return "---\ntitle: " + title(lesson) + "\nlines: as-written\n---\n"
                + String.join("\n", WorkshopTalk.lines(lesson, form.lines())) + "\n";
    }

    private ChildJvm start(Optional<SoundServer> sound) throws IOException {
        List<String> arguments = new ArrayList<>(List.of("read"));
        for (int lesson = 1; lesson <= LESSONS; lesson++) {
            arguments.add(Files.writeString(folder.resolve("lesson-" + lesson + ".md"), text(lesson))
                    .toString());
        }
        arguments.addAll(List.of("--no-window", "--desk-name", "localhost", "--model", MODEL.toString()));
        Map<String, String> environment = new HashMap<>(Map.of(
                "XDG_DATA_HOME", folder.resolve("data").toString(),
                "XDG_CONFIG_HOME", folder.resolve("settings").toString()));
        if (sound.isPresent()) {
            environment.putAll(sound.get().environment());
        } else {
            arguments.add("--no-microphone");
        }
        return ChildJvm.startWith(environment, Main.class, arguments.toArray(String[]::new));
    }

    /** The journals of the day, in the order in which the sessions began. */
    private List<DeskDayCheck.Journal> sessions() throws IOException, ProblemException {
        List<Path> places;
        try (Stream<Path> all = Files.walk(folder.resolve("data"))) {
            places = all.filter(SessionFolder::isSession).sorted().toList();
        }
        List<DeskDayCheck.Journal> journals = new ArrayList<>();
        for (Path place : places) {
            try (SessionFolder session = SessionFolder.openForReading(place)) {
                journals.add(DeskDayCheck.Journal.of(session.events(), this::begun));
            }
        }
        return journals;
    }

    private SessionState begun(String title) {
        int lesson = Integer.parseInt(title.substring("Lesson ".length()));
        try {
            return Session.begin(ScriptFile.parse(text(lesson), "lesson.md"), FatigueLimits.defaults());
        } catch (ProblemException e) {
            throw new IllegalStateException(e);
        }
    }

    private static JsonNode json(Producer producer, String kind) throws IOException {
        return new JsonMapper().readTree(producer.written(kind));
    }
}
