package org.bookholder.app.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.bookholder.app.environment.Interruption;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files of recorders with several channels, made by FFmpeg's own program, with the voice where each test puts it. */
final class PolyRecorderTest {
    private static final String READING = Path.of(System.getProperty("bookholder.home", ""))
            .resolve("demo-scripts/lesson-1.wav")
            .toString();

    /** Another voice, hiss and a tone that comes and goes, in turn. */
    private static final List<String> OTHERS = List.of("0.8*c1", "0.1*c2", "0.3*c3");

    private static final int SECONDS = 25;

    @TempDir
    private Path folder;

    private Path session;

    @BeforeEach
    void aTake() throws Exception {
        session = folder.resolve("session");
        try (SessionFolder open = SessionFolder.create(session, new SessionLocks())) {
            open.journal().append(new SessionEvent.Opened(s(0), MORNING, "A lesson", "a.md", StoredExamples.script()));
            open.journal().append(rolled(1, 0, MORNING));
            open.journal().append(cut(1, SECONDS, MORNING.plusSeconds(SECONDS)));
        }
        Ffmpeg.make(session.resolve("take-001.wav"), "-ss", "20", "-t", Integer.toString(SECONDS), "-i", READING);
    }

    /** The channel of low effects is the third of 2.1, the fourth of 5.1 and 7.1. */
    @ParameterizedTest
    @CsvSource({"2.1, 3, pcm_s24le, wav", "4.0, 4, flac, flac", "5.1, 6, pcm_s16le, wav", "7.1, 8, pcm_s16be, mov"})
    void aVoiceOnOneChannelIsFoundThere(String layout, int count, String codec, String ending) throws Exception {
        for (int voice = 1; voice <= count; voice++) {
            Path file = recorder(layout, count, codec, "voice-" + voice + "." + ending, Map.of(voice, "c0"));
            assertFound(file, Integer.toString(voice));
        }
    }

    /** Each microphone of a pair hisses for itself, so that both together are clearer than one. */
    @ParameterizedTest
    @CsvSource({
        "2.1, 3, 1, 3, +",
        "2.1, 3, 2, 3, -",
        "4.0, 4, 1, 2, +",
        "4.0, 4, 2, 4, -",
        "5.1, 6, 4, 6, +",
        "5.1, 6, 3, 4, -",
        "7.1, 8, 1, 8, +",
        "7.1, 8, 4, 5, -"
    })
    void aVoiceOnAPairIsFoundThere(String layout, int count, int first, int second, String sign) throws Exception {
        Map<Integer, String> voice =
                Map.of(first, "c0+0.06*c4", second, (sign.equals("+") ? "" : "-1*") + "c0+0.06*c5");
        Path file = recorder(layout, count, "pcm_s24le", "pair.wav", voice);
        assertFound(file, first + sign + second);
    }

    /** What disturbs both sides alike is gone where one of them is inverted; in neither alone can the voice be found. */
    @ParameterizedTest
    @CsvSource({"2.1, 3, 1, 2", "4.0, 4, 3, 4", "5.1, 6, 2, 4", "7.1, 8, 6, 8"})
    void aBalancedPairIsFoundUnderWhatDisturbsBothSides(String layout, int count, int first, int second)
            throws Exception {
        Map<Integer, String> voice = Map.of(first, "0.5*c0+2*c2", second, "-0.5*c0+2*c2");
        Path file = recorder(layout, count, "pcm_s24le", "balanced.wav", voice);
        assertFound(file, first + "-" + second);
    }

    /** Cameras that store each microphone as a stream of its own, in the files that they write. */
    @ParameterizedTest
    @CsvSource({
        "2, 1, pcm_s24le, mov",
        "2, 2, pcm_s16le, mxf",
        "3, 3, aac, mp4",
        "4, 2, pcm_s24be, mov",
        "4, 4, pcm_s24le, mxf"
    })
    void aVoiceOnOneOfSeveralStreamsIsFoundThere(int count, int voice, String codec, String ending) throws Exception {
        assertFound(camera(count, codec, ending, Map.of(voice, "c0")), Integer.toString(voice));
    }

    @Test
    void aPairOfStreamsIsHeardTogether() throws Exception {
        Map<Integer, String> voice = Map.of(2, "0.5*c0+2*c2", 4, "-0.5*c0+2*c2");
        assertFound(camera(4, "pcm_s24le", "mov", voice), "2-4");
    }

    @Test
    void aMixInWhichTheVoiceIsClearIsUsedAsItIs() throws Exception {
        Path file = recorder(
                "5.1", 6, "pcm_s24le", "good.wav", Map.of(1, "c0", 2, "c0", 3, "c0", 4, "c0", 5, "c0", 6, "c0"));
        assertFound(file, "all");
    }

    private void assertFound(Path file, String channels) throws Exception {
        FileMatch match = new FootageMatching(StoredExamples.here(folder), progress -> {}, Interruption.NONE)
                .match(session, List.of(file), each -> {})
                .get(0);
        assertThat(match.problem()).as(file.toString()).isEmpty();
        PlacedFootage placed = match.placed().orElseThrow();
        assertThat(placed.placements().get(0).start() / 48_000.0).isCloseTo(2, within(0.002));
        assertThat(placed.hearings().get(0).channels().text())
                .as(file.toString())
                .isEqualTo(channels);
        Files.delete(file);
    }

    /** Streams of one channel each, beside a picture. */
    private Path camera(int count, String codec, String ending, Map<Integer, String> voice) {
        StringBuilder streams = new StringBuilder("[0:a][1:a][2:a][3:a][4:a][5:a]amerge=inputs=6,asplit=" + count);
        for (int stream = 1; stream <= count; stream++) {
            streams.append("[in").append(stream).append(']');
        }
        List<String> maps = new ArrayList<>(List.of("-map", "6:v"));
        for (int stream = 1; stream <= count; stream++) {
            String heard = voice.getOrDefault(stream, OTHERS.get(stream % OTHERS.size()));
            streams.append(String.format(Locale.ROOT, ";[in%d]pan=mono|c0=%s[s%d]", stream, heard, stream));
            maps.addAll(List.of("-map", "[s" + stream + "]"));
        }
        List<String> command = new ArrayList<>(sources());
        command.addAll(source("testsrc2=s=320x180:r=25:d=30"));
        command.addAll(List.of("-filter_complex", streams.toString()));
        command.addAll(maps);
        command.addAll(List.of("-ar", "48000", "-c:v", "mpeg2video", "-c:a", codec));
        return Ffmpeg.make(folder.resolve("camera." + ending), command.toArray(String[]::new));
    }

    /** @param voice what is on some channels: c0 is the reading, c2 loud hiss, c4 and c5 other hiss */
    private Path recorder(String layout, int count, String codec, String name, Map<Integer, String> voice) {
        StringBuilder pan = new StringBuilder("[0:a][1:a][2:a][3:a][4:a][5:a]amerge=inputs=6,pan=" + layout);
        for (int channel = 1; channel <= count; channel++) {
            pan.append("|c")
                    .append(channel - 1)
                    .append('=')
                    .append(voice.getOrDefault(channel, OTHERS.get(channel % OTHERS.size())));
        }
        List<String> command = new ArrayList<>(sources());
        command.addAll(List.of("-filter_complex", pan.toString(), "-ar", "48000", "-c:a", codec));
        return Ffmpeg.make(folder.resolve(name), command.toArray(String[]::new));
    }

    private static List<String> sources() {
        List<String> command = new ArrayList<>(List.of("-ss", "18", "-t", "30", "-i", READING));
        command.addAll(List.of("-ss", "60", "-t", "30", "-i", READING));
        command.addAll(source("anoisesrc=r=16000:a=0.5:d=30:seed=3"));
        command.addAll(source("aevalsrc=sin(2*PI*440*t)*max(0\\,sin(2*PI*0.7*t)):s=16000:d=30"));
        command.addAll(source("anoisesrc=r=16000:a=0.5:d=30:seed=4"));
        command.addAll(source("anoisesrc=r=16000:a=0.5:d=30:seed=5"));
        return command;
    }

    private static List<String> source(String made) {
        return List.of("-f", "lavfi", "-i", made);
    }
}
