package org.bookholder.app.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.settled;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.delivery.ComparedSound;
import org.bookholder.delivery.Finding;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.StoredExamples;
import org.bookholder.testing.Wav;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A film that was cut from three stretches of the demo's reading, stored as AAC at 128 kbit/s, beside the session with the whole. */
final class TakeComparisonTest {
    private static final int RATE = 16_000;
    private static final String SCRIPT =
            "The first line is here.\n\nThe second line is there.\n\nThe third one is last.\n";

    /** Where the lines begin in the take, and how long each lasts, in seconds. */
    private static final int[] BEGIN = {6, 14, 20};

    private static final int LENGTH = 4;

    /** A loud place in the film's third line, in seconds. */
    private double place;

    /** How much of the film was compared last. */
    private ComparedSound sound = ComparedSound.NOT_COMPARED;

    @TempDir
    private Path folder;

    private Path session;
    private ScriptFile lesson;
    private short[] take;
    private final short[] film = new short[BEGIN.length * LENGTH * RATE];

    @BeforeEach
    void aSession() throws Exception {
        take = Wav.demo(30);
        session = folder.resolve("session");
        try (SessionFolder open = SessionFolder.create(session, new SessionLocks())) {
            open.journal().append(new SessionEvent.Opened(s(0), MORNING, "A lesson", "a.md", SCRIPT));
            for (SessionEvent event : events(BEGIN, 30)) {
                open.journal().append(event);
            }
        }
        Path script = Files.writeString(folder.resolve("a.md"), SCRIPT);
        lesson = ScriptFile.read(script);
        Files.createDirectories(session.resolve("film"));
        place = loudest(BEGIN[2] + 1, BEGIN[2] + 3) - BEGIN[2] + 2 * LENGTH;
    }

    private static List<SessionEvent> events(int[] begin, int end) {
        List<SessionEvent> events = new ArrayList<>(List.of(rolled(1, 0)));
        for (int i = 0; i < begin.length; i++) {
            // Where a line begins is known to some tenths of a second.
            events.add(settled(complete(1, i + 1, i + 1, 5, begin[i] + 0.1 * i, begin[i] + LENGTH)));
        }
        events.add(cut(1, end));
        return events;
    }

    @Test
    void aFilmThatIsAsLoudAsItsTakeHasNoFinding() throws Exception {
        assertThat(found(1, 1, 1)).isEmpty();
    }

    @Test
    void aCutAtWhichOnlyTheFilmGetsLouderIsFound() throws Exception {
        assertThat(found(0.4, 0.8, 0.8)).singleElement().satisfies(finding -> {
            assertThat(finding.what()).isEqualTo("the sound gets 5 LU louder at a cut; in the take it does not");
            assertThat(finding.place().orElseThrow().start().seconds()).isBetween(3.0, 4.0);
            assertThat(finding.place().orElseThrow().end().seconds()).isBetween(4.0, 5.0);
        });
    }

    /** The reader moves away from the microphone before the third line. */
    @Test
    void aTakeThatGetsSofterAndAFilmThatEvensItHaveNoFinding() throws Exception {
        join(1, 1, 1.19);
        for (int i = (BEGIN[1] + LENGTH) * RATE; i < take.length; i++) {
            take[i] = (short) (0.4 * take[i]);
        }
        assertThat(found()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"dynaudnorm", "speechnorm"})
    void aLevelledFilmHasNoFinding(String filter) throws Exception {
        join(1, 1, 1);
        Wav.write(session.resolve("take-001.wav"), RATE, take);
        assertThat(compared(0, "-af", filter)).isEmpty();
    }

    @Test
    void whatIsFoundIsToldByTheFilmsOwnTimeWhereverItBegins() throws Exception {
        join(0.4, 0.8, 0.8);
        hole(film, place);
        Wav.write(session.resolve("take-001.wav"), RATE, take);
        List<Finding> atZero = compared(0);
        List<Finding> later = compared(0.2);
        assertThat(atZero).hasSize(2);
        assertThat(later).hasSize(2);
        for (int i = 0; i < 2; i++) {
            Finding.Place moved = later.get(i).place().orElseThrow();
            Finding.Place unmoved = atZero.get(i).place().orElseThrow();
            assertThat(moved.start().seconds()).isCloseTo(unmoved.start().seconds() + 0.2, within(0.001));
            assertThat(moved.end().seconds()).isCloseTo(unmoved.end().seconds() + 0.2, within(0.001));
        }
    }

    @Test
    void aHoleOfFiveMillisecondsThatOnlyTheFilmHasIsFound() throws Exception {
        join(1, 1, 1);
        hole(film, place);
        assertThat(found())
                .singleElement()
                .satisfies(finding -> assertThat(finding.what()).isEqualTo("the sound drops out for 5 ms"));
    }

    @Test
    void aHoleThatTheTakeHasTooIsNot() throws Exception {
        hole(take, place - 2 * LENGTH + BEGIN[2]);
        assertThat(found(1, 1, 1)).isEmpty();
    }

    @Test
    void withoutTheTakesFileNothingIsCompared() throws Exception {
        join(0.4, 0.8, 0.8);
        hole(film, place);
        assertThat(compared()).isEmpty();
        assertThat(sound.shared()).isEqualTo(StreamTime.ZERO);
    }

    @Test
    void howMuchWasComparedIsTold() throws Exception {
        found(1, 1, 1);
        assertThat(sound.sessions()).isEqualTo(1);
        assertThat(sound.read()).isEqualTo(s(BEGIN.length * LENGTH - 0.3));
        assertThat(sound.shared().seconds()).isBetween(0.8 * BEGIN.length * LENGTH, 1.0 * BEGIN.length * LENGTH);
    }

    private List<Finding> found(double... gains) throws Exception {
        join(gains);
        return found();
    }

    private void join(double... gains) {
        for (int i = 0; i < film.length; i++) {
            int line = i / (LENGTH * RATE);
            film[i] = (short) (gains[line] * take[BEGIN[line] * RATE + i % (LENGTH * RATE)]);
        }
    }

    private List<Finding> found() throws Exception {
        Wav.write(session.resolve("take-001.wav"), RATE, take);
        return compared();
    }

    private List<Finding> compared() throws Exception {
        return compared(0);
    }

    /** @param begins when the film's first picture is due, in seconds */
    private List<Finding> compared(double begins, String... treated) throws Exception {
        Path cut = Wav.write(folder.resolve("cut.wav"), RATE, film);
        List<String> command = new ArrayList<>(List.of("-i", cut.toString(), "-f", "lavfi", "-i"));
        command.add("color=s=64x64:r=25:d=" + BEGIN.length * LENGTH);
        command.addAll(List.of(treated));
        command.addAll(List.of("-c:v", "mpeg4", "-ar", "48000", "-c:a", "aac", "-b:a", "128k"));
        Path atZero = Ffmpeg.make(folder.resolve("cut.mp4"), command.toArray(String[]::new));
        Path file = Ffmpeg.make(
                session.resolve("film/a.mp4"),
                "-itsoffset",
                Double.toString(begins),
                "-i",
                atZero.toString(),
                "-c",
                "copy");
        ExportJob job = new ExportJob(
                file,
                Optional.empty(),
                ProfileForm.usual(),
                Optional.of(lesson),
                Optional.empty(),
                FilmSessions.of(file, lesson, StoredExamples.here(folder)),
                Set.of(),
                List.of());
        SessionState followed = Session.apply(
                Session.begin(lesson.script(), FatigueLimits.defaults()),
                events(new int[] {0, LENGTH, 2 * LENGTH}, BEGIN.length * LENGTH));
        TakeComparison.Result result = TakeComparison.of(
                job,
                followed,
                List.of(new Finding.Place(s(begins + place), s(begins + place + 0.005))),
                Interruption.NONE);
        sound = result.compared();
        return result.findings();
    }

    private static void hole(short[] sound, double at) {
        Arrays.fill(sound, (int) (at * RATE), (int) ((at + 0.005) * RATE), (short) 0);
    }

    /** The loudest tenth of a second in the take between two times, in seconds: its middle. */
    private double loudest(int from, int to) {
        double best = from;
        long most = 0;
        for (int at = from * RATE; at < to * RATE; at += RATE / 10) {
            long sum = 0;
            for (int i = at; i < at + RATE / 10; i++) {
                sum += (long) take[i] * take[i];
            }
            if (sum > most) {
                most = sum;
                best = (at + RATE / 20.0) / RATE;
            }
        }
        return best;
    }
}
