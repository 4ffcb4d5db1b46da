package org.bookholder.e2e;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The demo's recording, and the truth about it. */
final class DemoCourseTest {
    private static final Path DEMO =
            Path.of(System.getProperty("bookholder.home")).resolve("demo-scripts");
    private static final int HEADER = 44;
    private static final int RATE = 16_000;

    private final ByteBuffer wav;
    private final JsonNode truth;

    DemoCourseTest() throws IOException {
        wav = ByteBuffer.wrap(Files.readAllBytes(DEMO.resolve("lesson-1.wav"))).order(ByteOrder.LITTLE_ENDIAN);
        truth = new ObjectMapper()
                .readTree(Files.readString(DEMO.resolve("lesson-1.reading.json"), StandardCharsets.UTF_8))
                .get("utterances");
    }

    @Test
    void theRecordingIsSmallMonoSixteenKilohertzSixteenBit() {
        assertThat(wav.capacity()).isLessThan(3_000_000);
        // Field offsets of the canonical header: Microsoft and IBM, Multimedia Programming Interface 1.0, 1991.
        assertThat(wav.getShort(22)).as("channels").isEqualTo((short) 1);
        assertThat(wav.getInt(24)).as("rate").isEqualTo(RATE);
        assertThat(wav.getShort(34)).as("bits").isEqualTo((short) 16);
        assertThat(wav.getInt(40)).as("data bytes").isEqualTo(wav.capacity() - HEADER);
    }

    @Test
    void theRecordingPeaksSixDecibelsBelowFullScale() {
        int peak = IntStream.range(0, (wav.capacity() - HEADER) / 2)
                .map(i -> Math.abs(wav.getShort(HEADER + 2 * i)))
                .max()
                .orElseThrow();

        assertThat(20 * Math.log10(peak / 32768.0)).isBetween(-6.5, -5.5);
    }

    @Test
    void everyKindOfDeviationHappensOnce() {
        assertThat(events("aside")).containsExactly(0);
        assertThat(events("restart")).containsExactly(11);
        assertThat(events("swapped")).containsExactly(13);
        assertThat(events("incomplete")).containsExactly(17);
        TreeSet<Integer> read = new TreeSet<>(
                truth.findValues("line").stream().map(JsonNode::asInt).toList());
        List<Integer> skipped = IntStream.rangeClosed(1, 19)
                .filter(line -> !read.contains(line))
                .boxed()
                .toList();
        assertThat(skipped).containsExactly(8);
    }

    @Test
    void utterancesFollowEachOtherWithinTheRecording() {
        double last = 0;
        for (JsonNode utterance : truth) {
            assertThat(utterance.get("start").asDouble()).isBetween(last + 0.25, last + 0.9);
            last = utterance.get("end").asDouble();
        }
        assertThat(last).isLessThan((wav.capacity() - HEADER) / 2.0 / RATE);
    }

    private List<Integer> events(String kind) {
        return IntStream.range(0, truth.size())
                .mapToObj(truth::get)
                .filter(utterance -> utterance.get("event").asText().equals(kind))
                .map(utterance -> utterance.get("line").asInt())
                .toList();
    }
}
