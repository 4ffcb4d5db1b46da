package org.bookholder.film.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.FloatBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.Heard;
import org.bookholder.film.plan.Track;
import org.bookholder.follow.model.Attempt;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Wav;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is heard where nothing was recorded. */
final class RoomToneTest {
    private static final int RATE = 48_000;

    /** The level of the room's noise, of full scale: 66 dB below it. */
    private static final double ROOM = 0.0005;

    @TempDir
    private Path folder;

    @Test
    void itIsAsLoudAsTheRoomAndNothingComesAgain() {
        float[] quiet = noise(RATE / 2, ROOM, 3);
        RoomTone tone = RoomTone.of(List.of(quiet)).orElseThrow();
        float[] heard = new float[6 * RATE];
        for (int i = 0; i < heard.length; i++) {
            heard[i] = tone.at(i);
        }
        for (int from = 0; from < heard.length; from += RATE / 5) {
            assertThat(decibels(level(heard, from, from + RATE / 5)))
                    .as("each fifth of a second, at %d", from)
                    .isCloseTo(decibels(ROOM), within(1.0));
        }
        assertThat(mostAlike(quiet, quiet, RATE / 10))
                .as("a recording that is looped, for comparison")
                .isGreaterThan(0.95);
        for (int from = 0; from < heard.length - RATE; from += RATE / 3) {
            float[] part = new float[RATE / 10];
            System.arraycopy(heard, from, part, 0, part.length);
            float[] later = new float[2 * RATE];
            int next = from + part.length;
            int count = Math.min(later.length, heard.length - next);
            System.arraycopy(heard, next, later, 0, count);
            assertThat(mostAlike(later, part, part.length))
                    .as("the tenth of a second at %d beside what follows", from)
                    .isLessThan(0.7);
        }
    }

    @Test
    void withoutAPauseThereIsNoTone() {
        assertThat(RoomTone.of(List.of())).isEmpty();
        assertThat(RoomTone.of(List.of(new float[2000]))).isEmpty();
    }

    @Test
    void betweenTwoClipsTheRoomIsHeardWithoutBreathAndVoice() throws ProblemException, IOException {
        float[] take = recorded();
        float[] film = mixed(take, 200);
        int card = 2 * RATE;
        assertThat(decibels(level(film, card + 480, card + 8 * RATE - 480)))
                .as("the card's sound beside the noise of the room")
                .isCloseTo(decibels(ROOM), within(1.0));
        for (int at = card - 480; at < card + 8 * RATE + 480; at += 240) {
            assertThat(decibels(level(film, at, at + 240)))
                    .as("5 ms at sample %d, joins too", at)
                    .isBetween(decibels(ROOM) - 7, decibels(ROOM) + 5);
        }
    }

    @Test
    void aTakeWithoutAnyQuietLeavesSilence() throws ProblemException, IOException {
        float[] take = new float[5 * RATE];
        float[] film = mixed(take, 50);
        assertThat(level(film, 0, film.length)).isZero();
    }

    /** Five seconds: a line from 0.5 to 1.5 s, a breath, and a line from 3.2 to 4.5 s. */
    private static float[] recorded() {
        float[] take = noise(5 * RATE, ROOM, 5);
        add(take, 0.5, 1.5, 0.1);
        add(take, 2.8, 3.0, 0.004);
        add(take, 3.2, 4.5, 0.1);
        return take;
    }

    private static void add(float[] take, double from, double to, double level) {
        float[] sound = noise((int) ((to - from) * RATE), level, 9);
        for (int i = 0; i < sound.length; i++) {
            take[(int) (from * RATE) + i] += sound[i];
        }
    }

    /** A film of two clips of a take with a card between them. */
    private float[] mixed(float[] take, long cardFrames) throws ProblemException, IOException {
        short[] samples = new short[take.length];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (short) Math.round(take[i] * 32_768);
        }
        Path wav = Wav.write(folder.resolve("take.wav"), RATE, samples);
        FilmPlan plan = new FilmPlan(
                FrameRate.FPS_25,
                List.of(
                        clip(wav, 1, 0, 2, 0.5, 1.5, 0),
                        card(50, cardFrames),
                        clip(wav, 3, 2.5, 5, 3.2, 4.5, 50 + cardFrames)));
        Path mix = new FilmSound(plan, Files.createDirectories(folder.resolve("work")), part -> {}).mix();
        FloatBuffer read = SampleFile.read(mix);
        float[] film = new float[read.remaining()];
        read.get(film);
        return film;
    }

    private static FilmClip clip(Path wav, int line, double in, double out, double said, double end, long start) {
        Attempt attempt = new Attempt(1, line, line, s(said), s(end), true, List.of(), List.of());
        return new FilmClip(
                line,
                line,
                0,
                1,
                s(in),
                s(out),
                start,
                Math.round((out - in) * 25),
                Optional.empty(),
                Optional.of(new Heard(wav, Track.Kind.TAKE, Optional.empty(), in * RATE, 1)),
                List.of(attempt));
    }

    private static FilmClip card(long start, long frames) {
        return new FilmClip(2, 2, 0, 0, s(0), s(0), start, frames, Optional.empty(), Optional.empty(), List.of());
    }

    private static StreamTime s(double seconds) {
        return StreamTime.ofSeconds(seconds);
    }

    private static float[] noise(int count, double level, long seed) {
        Random random = new Random(seed);
        float[] noise = new float[count];
        for (int i = 0; i < count; i++) {
            noise[i] = (float) (level * random.nextGaussian());
        }
        return noise;
    }

    private static double level(float[] sound, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += (double) sound[i] * sound[i];
        }
        return Math.sqrt(sum / (to - from));
    }

    private static double decibels(double level) {
        return 20 * Math.log10(level);
    }

    /** How alike the beginning of one is to any place of the other: 1 is the same. */
    private static double mostAlike(float[] in, float[] what, int count) {
        double most = 0;
        double own = 0;
        for (int i = 0; i < count; i++) {
            own += (double) what[i] * what[i];
        }
        for (int lag = 0; lag + count <= in.length; lag++) {
            double sum = 0;
            double other = 0;
            for (int i = 0; i < count; i += 4) {
                sum += (double) in[lag + i] * what[i];
                other += (double) in[lag + i] * in[lag + i];
            }
            most = Math.max(most, Math.abs(sum) / Math.sqrt(Math.max(1e-12, own / 4 * other)));
        }
        return most;
    }
}
