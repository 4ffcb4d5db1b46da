package org.bookholder.handoff.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.bookholder.cutlist.TakeSound;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.handoff.ExampleHandOff;
import org.bookholder.handoff.ExampleSession;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.HandOffPartContract;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.speech.AudioBlock;
import org.bookholder.testing.Readings;
import org.bookholder.testing.Stereo;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.bookholder.timing.Timecode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A camera that began two seconds before the take and counts 50 millionths too much, and a recorder that began one second
 * before it and counts 100 millionths too little. All sound is one tone in the session's time.
 */
final class SyncedSoundPartTest extends HandOffPartContract {
    private static final int RATE = 48_000;
    private static final int BYTES_BEFORE_CHUNKS = 12;

    @TempDir
    private Path folder;

    @Override
    protected HandOffPart part() {
        return new SyncedSoundPart();
    }

    @Test
    void aRecordersChannelsGoWithTheCameraFromItsFirstFrameToItsLast() throws Exception {
        Map<String, byte[]> files = written();
        assertThat(files.keySet())
                .containsExactly(
                        "lesson-sync-cam1-rec01-ch1.wav",
                        "lesson-sync-cam1-rec01-ch2.wav",
                        "lesson-sync-cam1-takes.wav");
        short[] first = samples(files, "lesson-sync-cam1-rec01-ch1.wav");
        short[] second = samples(files, "lesson-sync-cam1-rec01-ch2.wav");
        assertThat(first).hasSize(20 * RATE);
        // The recorder began a second after the camera, and has a second of the tone before the take.
        for (int i = 0; i < first.length; i++) {
            double expected = i < 1.01 * RATE || i > 19.99 * RATE ? first[i] : tone(session(i, RATE));
            assertThat((double) first[i]).as("sample %d", i).isCloseTo(expected, within(12.0));
            assertThat(second[i]).isZero();
        }
        assertThat(first[RATE / 2]).isZero();
    }

    @Test
    void ourOwnRecordingFollowsTheCamerasClockToo() throws Exception {
        int rate = 8000;
        short[] takes = samples(written(), "lesson-sync-cam1-takes.wav");
        assertThat(takes).hasSize(20 * rate);
        for (int i = (int) (2.01 * rate); i < 19.9 * rate; i++) {
            assertThat((double) takes[i]).as("sample %d", i).isCloseTo(tone(session(i, rate)), within(12.0));
        }
        assertThat(takes[rate]).isZero();
    }

    /** Two sessions of a lesson are handed off as one; each may have had a microphone of its own. */
    @Test
    void takesOfTwoRatesUnderOneCameraAreBothInStep() throws Exception {
        StreamTime second = StreamTime.ofSeconds(18);
        StreamTime end = StreamTime.ofSeconds(26);
        List<SessionEvent> events = new ArrayList<>(ExampleSession.events());
        events.add(new SessionEvent.TakeStarted(second, 2, Readings.MORNING, "headset", ReadingPosition.START));
        events.add(new SessionEvent.TakeEnded(end, 2, Readings.MORNING, TakeEnd.CUT));
        PlacedFootage camera = camera(
                30,
                new Placement(1, StreamTime.ZERO, 96_000, 50_000, StreamTime.ZERO, second, 1),
                new Placement(2, second, 960_043, 50_000, second, end, 1));
        HandOff handOff = handOff(
                events,
                List.of(camera),
                (take, from, to) -> take == 1
                        ? own(8000, from, StreamTime.min(to, second))
                        : own(16_000, from, StreamTime.min(to, end)));
        short[] takes = samples(written(handOff), "lesson-sync-cam1-takes.wav");
        int rate = 16_000;
        assertThat(takes).hasSize(30 * rate);
        for (int i = (int) (2.01 * rate); i < 27.9 * rate; i++) {
            double now = (double) i / rate;
            double session = now < 20 ? session(i, rate) : 18 + (now - 960_043 / 48_000.0) / (1 + 50e-6);
            double expected = Math.abs(now - 20) < 0.01 ? takes[i] : tone(session);
            assertThat((double) takes[i]).as("sample %d", i).isCloseTo(expected, within(12.0));
        }
    }

    /** EBU Tech 3285: the time reference is the count of samples since midnight, here from the camera's 10:00:00:00. */
    @Test
    void theTimeReferenceIsTheCamerasTimecode() throws Exception {
        ByteBuffer file = ByteBuffer.wrap(Objects.requireNonNull(written().get("lesson-sync-cam1-rec01-ch1.wav")))
                .order(ByteOrder.LITTLE_ENDIAN);
        assertThat(new String(file.array(), BYTES_BEFORE_CHUNKS, 4, StandardCharsets.US_ASCII))
                .isEqualTo("bext");
        assertThat(file.getLong(BYTES_BEFORE_CHUNKS + 8 + 338)).isEqualTo(36_000L * RATE);
    }

    /** The camera's two files of the example lie nowhere, so only our own recording can be heard. */
    @Test
    void eachCameraFileHasASoundOfItsOwnAndAMissingRecorderIsLeftOut() {
        assertThat(part().files(ExampleHandOff.severalSources()))
                .extracting(HandOffFile::name)
                .containsExactly(
                        "lesson-sync-c0001t-takes.wav", "lesson-sync-c0002-takes.wav", "lesson-sync-b0001-takes.wav");
        assertThat(part().files(ExampleHandOff.plain())).isEmpty();
    }

    /** The session's time at a sample of the camera, in seconds. */
    private static double session(int sample, int rate) {
        return ((double) sample / rate - 2) / (1 + 50e-6);
    }

    private static double tone(double seconds) {
        return 8000 * Math.sin(2 * Math.PI * 200 * seconds);
    }

    private Map<String, byte[]> written() throws Exception {
        short[] voice = new short[19 * RATE];
        for (int i = 0; i < voice.length; i++) {
            voice[i] = (short) Math.round(tone(((double) i / RATE - 1) / (1 - 100e-6)));
        }
        Path recorder = Stereo.write(folder.resolve("REC01.WAV"), RATE, voice, new short[voice.length]);
        StreamTime end = StreamTime.ofSeconds(18);
        List<PlacedFootage> footage = List.of(
                camera(20, new Placement(1, StreamTime.ZERO, 96_000, 50_000, StreamTime.ZERO, end, 1)),
                placed(
                        recorder,
                        19,
                        Optional.empty(),
                        Optional.empty(),
                        new Placement(1, StreamTime.ZERO, 48_000, -100_000, StreamTime.ZERO, end, 1)));
        return written(handOff(
                ExampleSession.events(), footage, (take, from, to) -> own(8000, from, StreamTime.min(to, end))));
    }

    private static HandOff handOff(List<SessionEvent> events, List<PlacedFootage> footage, TakeSound sound) {
        HandOff plain =
                ExampleHandOff.of(ExampleSession.of(events), events, footage, new Timecode(FrameRate.FPS_25, false));
        return new HandOff(
                plain.folder(),
                plain.name(),
                plain.state(),
                plain.events(),
                plain.cut(),
                plain.timeline(),
                plain.media(),
                plain.covers(),
                sound,
                plain.zone());
    }

    private Map<String, byte[]> written(HandOff handOff) throws Exception {
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (HandOffFile file : part().files(handOff)) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            file.content().write(out);
            files.put(file.name(), out.toByteArray());
        }
        return files;
    }

    private static Optional<AudioBlock> own(int rate, StreamTime from, StreamTime to) {
        int first = (int) from.samples(rate);
        short[] samples = new short[Math.max(0, (int) to.samples(rate) - first)];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (short) Math.round(tone((double) (first + i) / rate));
        }
        return samples.length == 0 ? Optional.empty() : Optional.of(new AudioBlock(from, rate, samples));
    }

    private static PlacedFootage camera(double seconds, Placement... placements) {
        return placed(
                Path.of("/shoot/CAM1.MP4"),
                seconds,
                Optional.of(new Footage.Picture(1920, 1080, FrameRate.FPS_25, false)),
                Optional.of("10:00:00:00"),
                placements);
    }

    private static PlacedFootage placed(
            Path file,
            double seconds,
            Optional<Footage.Picture> picture,
            Optional<String> timecode,
            Placement... placements) {
        return new PlacedFootage(
                new Footage(
                        file,
                        StreamTime.ofSeconds(seconds),
                        picture,
                        Optional.of(new Footage.Sound(RATE, 2, "pcm_s16le")),
                        timecode,
                        Optional.empty(),
                        Optional.empty()),
                List.of(placements));
    }

    private static short[] samples(Map<String, byte[]> files, String name) {
        ByteBuffer bytes =
                ByteBuffer.wrap(Objects.requireNonNull(files.get(name), name)).order(ByteOrder.LITTLE_ENDIAN);
        int at = BYTES_BEFORE_CHUNKS;
        while (bytes.get(at) != 'd') {
            int size = bytes.getInt(at + 4);
            at += 8 + size + size % 2;
        }
        short[] samples = new short[bytes.getInt(at + 4) / 2];
        bytes.position(at + 8);
        bytes.slice().order(ByteOrder.LITTLE_ENDIAN).asShortBuffer().get(samples);
        return samples;
    }
}
