package org.bookholder.app.session;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.app.environment.Environment;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.record.KeptElsewhere;
import org.bookholder.runtime.record.Tapes;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.session.TakeCommand;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.bookholder.testing.Spoken;
import org.bookholder.testing.StoredExamples;
import org.bookholder.testing.Wav;

/** A minute of reading in virtual time. Its notes and sound go to a real disk that fills up or disappears meanwhile. */
final class SmallDisk implements AutoCloseable {
    static final double SECONDS = 60;

    static final double KILLED_AT = 36;

    private static final String FILLER = "filler";
    private static final int MOST_FILLED = 64 << 20;

    final Environment here;
    private final SessionFolder folder;
    private final SecondPlace second;
    private final ReadingRig rig;
    private final Reading reading;

    /** Begins the reading; the user's data goes to {@code data}. */
    SmallDisk(Path session, Path data) throws ProblemException {
        here = StoredExamples.here(data);
        folder = SessionFolder.create(session, here.locks());
        second = new SecondPlace(here, folder);
        Spoken voice = new Spoken(0.5);
        for (int i = 0; i < 12; i++) {
            voice.says("every wheel begins with its hub")
                    .says("count the spokes twice")
                    .pauses(1);
        }
        rig = new ReadingRig(
                Scripts.of("Every wheel begins with its hub.", "Count the spokes twice."),
                new FakeEars(voice.hypotheses()),
                true);
        rig.savesIn(folder.journal(), Tapes.in(folder, second));
        FakeAudioSource sound = FakeAudioSource.of(ReadingRig.RATE, Wav.sine(300, 0.2, ReadingRig.RATE, SECONDS));
        reading = rig.begin(new PacedSource(sound, rig.clock));
    }

    void pass(double seconds) {
        rig.pass(seconds);
    }

    /** Ends the reading as the program does; returns what is then in the second place. */
    Optional<KeptElsewhere> end() {
        reading.tell(new TakeCommand.Quit());
        rig.pass(5);
        Optional<KeptElsewhere> rest = reading.keepElsewhere();
        boolean allIn = second.takeIn();
        Optional<KeptElsewhere> kept = rest.filter(some -> !allIn);
        folder.close();
        return kept;
    }

    /** What could not be saved in either place. */
    String unsaved() {
        return reading.unsaved();
    }

    List<Throwable> faults() {
        return rig.failures;
    }

    @Override
    public void close() {
        folder.close();
    }

    /** In a process of its own: the disk is full from 12 s on, for 12 s, for good, or until a kill at 36 s. */
    static final class Child {
        private static final String WAITS = "waits for its end";

        private Child() {}

        /**
         * Arguments: {@code moment}, {@code good}, {@code kill} or {@code killed}, the disk, the data folder, a folder for a copy of
         * the session.
         */
        public static void main(String[] args) throws ProblemException, IOException, InterruptedException {
            Path disk = Path.of(args[1]);
            Path session = disk.resolve("session");
            switch (args[0]) {
                case "kill" -> kill(args, disk, session);
                case "killed" -> readUntilKilled(disk, session, Path.of(args[2]));
                default -> read(args, disk, session);
            }
        }

        /** The disk belongs to this process, which outlives the one that reads. */
        private static void kill(String[] args, Path disk, Path session)
                throws ProblemException, IOException, InterruptedException {
            try (ChildJvm child = ChildJvm.start(Child.class, "killed", args[1], args[2])) {
                child.readTo(WAITS);
                child.kill();
            }
            Files.delete(disk.resolve(FILLER));
            System.out.println("taken in: " + Overflows.takeIn(StoredExamples.here(Path.of(args[2])), session));
            copy(session, Path.of(args[3]));
        }

        private static void readUntilKilled(Path disk, Path session, Path data) throws ProblemException, IOException {
            try (SmallDisk trial = new SmallDisk(session, data)) {
                trial.pass(12);
                fill(disk);
                trial.pass(KILLED_AT - 12);
                System.out.println(WAITS);
                System.in.transferTo(OutputStream.nullOutputStream());
            }
        }

        private static void read(String[] args, Path disk, Path session) throws ProblemException, IOException {
            try (SmallDisk trial = new SmallDisk(session, Path.of(args[2]))) {
                trial.pass(12);
                Path filler = fill(disk);
                trial.pass(12);
                if (args[0].equals("moment")) {
                    Files.delete(filler);
                }
                trial.pass(SECONDS - 24);
                System.out.println(
                        "kept: " + trial.end().map(KeptElsewhere::sentence).orElse("nothing"));
                System.out.println("unsaved: " + trial.unsaved());
                System.out.println("faults: " + trial.faults());
                System.out.println("still full: " + refusal(trial.here, session));
                Files.deleteIfExists(filler);
                System.out.println("taken in: " + Overflows.takeIn(trial.here, session));
                System.out.println("left: " + Overflows.of(trial.here, session));
                copy(session, Path.of(args[3]));
            }
        }

        private static String refusal(Environment here, Path session) {
            try {
                return Overflows.takeIn(here, session).toString();
            } catch (ProblemException e) {
                return e.getMessage();
            }
        }

        /** Fills a disk to its last byte. */
        private static Path fill(Path disk) throws IOException {
            Path filler = disk.resolve(FILLER);
            try (OutputStream out = Files.newOutputStream(filler)) {
                for (int i = 0; i < MOST_FILLED / 512; i++) {
                    out.write(new byte[512]);
                }
                throw new IOException("the disk is larger than " + MOST_FILLED);
            } catch (IOException full) {
                if (Files.getFileStore(disk).getUsableSpace() > 0) {
                    throw full;
                }
                return filler;
            }
        }

        private static void copy(Path folder, Path to) throws IOException {
            Files.createDirectories(to);
            try (Stream<Path> files = Files.list(folder)) {
                for (Path file : files.sorted().toList()) {
                    Files.copy(file, to.resolve(file.getFileName()));
                }
            }
        }
    }
}
