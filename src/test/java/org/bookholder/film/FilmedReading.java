package org.bookholder.film;

import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.s;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.model.WordTime;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.journal.FootageNotes;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.testing.Wav;

/**
 * A session on disk of which everything is known: five lines, of which the third is broken off once and said again, and the
 * fourth is misread. Its sound is noise where something is said, and next to nothing in between.
 */
public final class FilmedReading {
    /** The lesson's text; the headings make two chapters. */
    public static final String TEXT = """
        ---
        title: Noise to be cut
        ---
        One is the first line.
        Two comes right behind it.

        ## The second part

        Three is said twice today.
        Four has a wrong word.
        Five comes after a rest.
        """;

    /** How long the take is, in seconds. */
    public static final double SECONDS = 18;

    /** When something is said, from and to, in seconds of the take: a line, or the beginning of one. */
    private static final double[][] SAID = {{1, 3}, {3.4, 5.2}, {5.8, 6.6}, {8, 10}, {10.3, 12}, {14, 16}};

    private static final int RATE = 48_000;

    private FilmedReading() {}

    /** Writes the session, without footage. */
    public static void write(Path session, String source) throws ProblemException {
        write(session, source, MORNING);
    }

    /** Writes a session of the day after, in which all was read once more in the same way, without footage. */
    public static void writeAgain(Path session, String source) throws ProblemException {
        write(session, source, MORNING.plusSeconds(86_400));
    }

    private static void write(Path session, String source, Instant when) throws ProblemException {
        write(
                session,
                source,
                when,
                List.of(
                        attempt(1, 1, 0, true, List.of()),
                        attempt(2, 2, 1, true, List.of()),
                        attempt(3, 3, 2, false, List.of()),
                        attempt(4, 3, 3, true, List.of()),
                        attempt(
                                5,
                                4,
                                4,
                                true,
                                List.of(new Deviation(4, "wrong", "strange", Deviation.Kind.SWAPPED, 0.9))),
                        attempt(6, 5, 5, true, List.of())));
    }

    /** Writes the session with its last line broken off, so that there is nothing to use for it. */
    public static void writeWithGap(Path session, String source) throws ProblemException {
        write(
                session,
                source,
                MORNING,
                List.of(
                        attempt(1, 1, 0, true, List.of()),
                        attempt(2, 2, 1, true, List.of()),
                        attempt(3, 3, 2, true, List.of()),
                        attempt(4, 3, 3, true, List.of()),
                        attempt(5, 4, 4, true, List.of()),
                        attempt(6, 5, 5, false, List.of())));
    }

    /** Writes a session of the day after, in which the fourth line alone was read again, and clean. */
    public static void writePickup(Path session, String source) throws ProblemException {
        write(session, source, MORNING.plusSeconds(86_400), List.of(attempt(1, 4, 3, true, List.of())));
    }

    private static void write(Path session, String source, Instant when, List<Attempt> attempts)
            throws ProblemException {
        List<SessionEvent> events = List.of(
                new SessionEvent.Opened(s(0), when, "Noise to be cut", source, TEXT),
                new SessionEvent.TakeStarted(s(0), 1, when, "a microphone", ReadingPosition.START),
                new SessionEvent.TakeEnded(s(SECONDS), 1, when.plusSeconds(18), TakeEnd.CUT),
                new SessionEvent.TakeSettled(s(SECONDS), 1, attempts, List.<Aside>of()));
        try (SessionFolder folder = SessionFolder.create(session, new SessionLocks())) {
            for (SessionEvent event : events) {
                folder.journal().append(event);
            }
        }
        short[] all = sound(0, SECONDS);
        short[] third = new short[all.length / 3];
        for (int i = 0; i < third.length; i++) {
            third[i] = all[3 * i];
        }
        Wav.write(session.resolve("take-001.wav"), RATE / 3, third);
    }

    private static Attempt attempt(int ordinal, int line, int said, boolean whole, List<Deviation> deviations) {
        double from = SAID[said][0];
        double each = (SAID[said][1] - from) / 5;
        List<WordTime> words = new ArrayList<>();
        for (int word = 1; word <= (whole ? 5 : 3); word++) {
            words.add(new WordTime(word, s(from + (word - 1) * each), s(from + word * each)));
        }
        return new Attempt(1, ordinal, line, s(from), s(SAID[said][1]), whole, words, deviations);
    }

    /**
     * What a camera or recorder hears of the reading, 48,000 samples a second.
     *
     * @param before how long it runs before the take begins, in seconds
     * @param seconds how long it runs in all
     */
    public static short[] sound(double before, double seconds) {
        short[] samples = new short[(int) (seconds * RATE)];
        Random random = new Random(7);
        short[] take = new short[(int) (SECONDS * RATE)];
        double smooth = 0;
        for (int i = 0; i < take.length; i++) {
            double time = (double) i / RATE;
            boolean said = false;
            for (double[] each : SAID) {
                said |= each[0] <= time && time < each[1];
            }
            // Low frequencies, as in a voice: they pass every encoder, and a third of the rate holds them.
            smooth = 0.8 * smooth + 0.2 * random.nextGaussian();
            take[i] = (short) (smooth * (said ? 6000 : 12));
        }
        int first = (int) (before * RATE);
        for (int i = 0; i < samples.length; i++) {
            int at = i - first;
            samples[i] = at >= 0 && at < take.length ? take[at] : 0;
        }
        return samples;
    }

    /** A camera that films the whole reading from so many seconds before the take on, 25 pictures a second, and hears it. */
    public static Path camera(Path file, double before) {
        return NumberedCamera.make(
                file, 525, "25", sound(before, 21), "-c:v", "libx264", "-preset", "ultrafast", "-c:a", "aac");
    }

    /** Writes a delivery profile for films as small as those of {@link NumberedCamera}; {@code lines} is the least height. */
    public static Path smallProfile(Path file, int lines) throws IOException {
        return Files.writeString(
                file,
                String.join("\n", ProfileForm.lines(ProfileForm.usual()))
                        .replace("at least 1080", "at least " + lines)
                        .replace("500 to 20000", "100 to 20000"));
    }

    /**
     * Notes in the session that a file begins so many seconds before the take, and by how many thousand-millionths its clock
     * gains.
     */
    public static Footage match(Path session, Path file, double before, long drift) throws ProblemException {
        Footage footage = FootageFile.look(file);
        Placement place = new Placement(1, s(0), Math.round(before * RATE), drift, s(0), s(SECONDS), 1);
        FootageNotes.keep(session, List.of(new PlacedFootage(footage, List.of(place))));
        return footage;
    }
}
