package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.journal.FootageNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** A recording that its camera split in the middle of words: real files and the real recogniser. */
@Timeout(value = 5, unit = TimeUnit.MINUTES)
@Execution(ExecutionMode.CONCURRENT)
final class LogSplitFilesTest {
    private static final Path MODEL = Path.of(System.getProperty("bookholder.home"), "models/vosk-model-en-us");

    /** Where the files begin in the demo's reading, in seconds: in the middle of lines 2 and 3. */
    private static final double[] CUTS = {0, 5.88, 11.6, 18.8};

    private static final String[] TIMES = {"09:00:00", "09:00:05", "09:00:11"};

    @TempDir
    private Path folder;

    /** By {@code demo-scripts/lesson-1.reading.json} lines 1 to 4 are read clean. */
    @Test
    void threeFilesAreLoggedAsOneTake() throws IOException, InterruptedException, ProblemException {
        Needs.program("ffmpeg", "Debian's ffmpeg");
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        Path third = part(2);
        Path first = part(0);
        Path second = part(1);

        Path session = folder.resolve("session");
        Program program = log(session, third, first, second);

        assertThat(program.out())
                .contains(
                        "C0001.mp4 to C0003.mp4 are one recording, so they are one take",
                        "Following C0001.mp4 to C0003.mp4",
                        "4 clean");
        List<PlacedFootage> placed = FootageNotes.read(session);
        assertThat(placed.stream()
                        .map(p -> p.footage().name() + " in take "
                                + p.placements().get(0).take() + " at "
                                + p.placements().get(0).start()))
                .containsExactly(
                        "C0001.mp4 in take 1 at 0", "C0002.mp4 in take 1 at -282240", "C0003.mp4 in take 1 at -556800");
        assertThat(Files.readString(session.resolve("handoff/reading-a-bent-wheel.edl")))
                .contains("C0001.mp4", "C0002.mp4", "C0003.mp4");

        Path apart = folder.resolve("apart");
        assertThat(log(apart, first, second, "--each-file").out())
                .contains("Following C0001.mp4\n", "Following C0002.mp4\n")
                .doesNotContain("one recording");
    }

    @Test
    void filesThatDontTellTheTimeAreNamedAndWhatIsMissingIsReadByTheCommandThatCan()
            throws IOException, InterruptedException {
        Needs.program("ffmpeg", "Debian's ffmpeg");
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        Path first = part(0, Optional.empty());
        Path second = part(1, Optional.empty());
        Path script = Films.DEMO.resolve("lesson-1.md");
        Program apart = log(folder.resolve("apart"), first, second);
        assertThat(apart.err())
                .contains("C0001.mp4 and C0002.mp4 are numbered one after the other, but don't both say at what time")
                .contains("log them again with --join-numbered");
        assertThat(apart.out())
                .contains(", run bookholder read " + script + " --from ", " --session " + folder.resolve("apart"))
                .doesNotContain("the same command");
        Program joined = log(folder.resolve("joined"), first, second, "--join-numbered");
        assertThat(joined.err()).doesNotContain("numbered");
        assertThat(joined.out()).contains("C0001.mp4 and C0002.mp4 are one recording, so they are one take");
    }

    private Program log(Path session, Object... arguments) {
        Program program = new Program(folder);
        program.equipment.hearsForReal();
        List<String> all =
                new ArrayList<>(List.of("log", Films.DEMO.resolve("lesson-1.md").toString()));
        for (Object argument : arguments) {
            all.add(argument.toString());
        }
        all.addAll(List.of("--session", session.toString(), "--model", MODEL.toString()));
        assertThat(program.run(all.toArray(String[]::new))).as(program.err()).isZero();
        return program;
    }

    private Path part(int number) throws IOException, InterruptedException {
        return part(number, Optional.of("2026-03-01T" + TIMES[number] + "Z"));
    }

    private Path part(int number, Optional<String> recorded) throws IOException, InterruptedException {
        List<String> options = new ArrayList<>(List.of("-c:a", "aac"));
        recorded.ifPresent(time -> options.addAll(List.of("-metadata", "creation_time=" + time)));
        return Films.make(
                folder.resolve("C000" + (number + 1) + ".mp4"),
                Films.reading(CUTS[number], CUTS[number + 1] - CUTS[number]),
                options.toArray(String[]::new));
    }
}
