package org.bookholder.handoff.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.bookholder.handoff.ExampleHandOff;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.HandOffPartContract;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.bookholder.timing.Timecode;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

final class TakesPartTest extends HandOffPartContract {
    private static final int RATE = 8000;

    @Override
    protected HandOffPart part() {
        return new TakesPart();
    }

    /** RIFF: chunks of a name, a length in little-endian, and their bytes, filled up to an even number. */
    @Test
    void writesTheTakeWithItsFactsBeforeItsSound() throws Exception {
        Map<String, byte[]> chunks = chunks(take(ExampleHandOff.plain()));
        assertThat(chunks.keySet()).containsExactly("bext", "iXML", "fmt ", "data");
        assertThat(samples(chunks)).isEqualTo(expected(0, 18));
        assertThat(new String(chunk(chunks, "bext"), 0, 256, StandardCharsets.US_ASCII).trim())
                .contains("take 1, used: lines 1, 5");
    }

    /** The names of the fields and their values: iXML specification (gallery.co.uk/ixml), object details. */
    @Test
    void tellsOtherProgramsInXml() throws Exception {
        Element xml = xml(chunk(chunks(take(ExampleHandOff.filmed())), "iXML"));
        assertThat(xml.getTagName()).isEqualTo("BWFXML");
        assertThat(field(xml, "IXML_VERSION")).isEqualTo("1.61");
        assertThat(field(xml, "TAKE")).isEqualTo("1");
        assertThat(field(xml, "CIRCLED")).isEqualTo("TRUE");
        assertThat(field(xml, "NOTE")).isEqualTo("used: lines 1, 5");
        assertThat(field(xml, "PROJECT")).isEqualTo(field(xml, "SCENE"));
        for (String speed : List.of("MASTER_SPEED", "CURRENT_SPEED", "TIMECODE_RATE")) {
            assertThat(field(xml, speed)).isEqualTo("30000/1001");
        }
        assertThat(field(xml, "TIMECODE_FLAG")).isEqualTo("DF");
        assertThat(field(xml, "AUDIO_BIT_DEPTH")).isEqualTo("16");
        for (String rate : List.of("FILE_SAMPLE_RATE", "DIGITIZER_SAMPLE_RATE", "TIMESTAMP_SAMPLE_RATE")) {
            assertThat(field(xml, rate)).isEqualTo("8000");
        }
        // The take began at nine in the morning.
        assertThat(field(xml, "TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI")).isEqualTo("0");
        assertThat(field(xml, "TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO")).isEqualTo(Integer.toString(9 * 3600 * RATE));
    }

    /** XML 1.0, section 2.2: most control characters may not stand in it at all. */
    @Test
    void textsOfPeopleAreNoMarkupAndAWholeDaysTimeFits() throws Exception {
        Timecode timecode = new Timecode(FrameRate.FPS_25, false);
        long late = (1L << 32) + 7;
        Ixml ixml = new Ixml("a < b & c", "bell \u0007 \ud83d\udd14", 3, false, "nothing used", timecode, late, 96_000);
        Element xml = xml(ixml.bytes());
        assertThat(field(xml, "PROJECT")).isEqualTo("a < b & c");
        assertThat(field(xml, "SCENE")).isEqualTo("bell  \ud83d\udd14");
        assertThat(field(xml, "CIRCLED")).isEqualTo("FALSE");
        assertThat(field(xml, "MASTER_SPEED")).isEqualTo("25/1");
        assertThat(field(xml, "TIMECODE_FLAG")).isEqualTo("NDF");
        assertThat(field(xml, "TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI")).isEqualTo("1");
        assertThat(field(xml, "TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO")).isEqualTo("7");
    }

    @Test
    void partsThatWereNotRecordedAreSilent() throws Exception {
        HandOff handOff =
                ExampleHandOff.withSound((take, from, to) -> sound(from, StreamTime.min(to, StreamTime.ofSeconds(10))));
        short[] whole = expected(0, 18);
        Arrays.fill(whole, 10 * RATE, whole.length, (short) 0);
        assertThat(samples(chunks(take(handOff)))).isEqualTo(whole);
    }

    @Test
    void aTakeWithoutSoundSaysSoWhenItIsWritten() {
        HandOff handOff = ExampleHandOff.withSound((take, from, to) -> Optional.empty());
        HandOffFile file = part().files(handOff).get(0);
        assertThatThrownBy(() -> file.content().write(new ByteArrayOutputStream()))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("the recording of take 1 is missing");
    }

    @Test
    void aTakeThatCannotBeReadIsNotLeftOutInSilence() {
        HandOff handOff = ExampleHandOff.withSound((take, from, to) -> {
            throw new ProblemException("cannot be read", "take-001.wav", "check the disk");
        });
        assertThat(part().files(handOff)).extracting(HandOffFile::name).containsExactly("lesson-take-001.wav");
    }

    private byte[] take(HandOff handOff) throws Exception {
        return Objects.requireNonNull(files(handOff).get("lesson-take-001.wav"));
    }

    private static byte[] chunk(Map<String, byte[]> chunks, String name) {
        return Objects.requireNonNull(chunks.get(name), name);
    }

    private static Optional<AudioBlock> sound(StreamTime from, StreamTime to) {
        return from.isBefore(to)
                ? Optional.of(new AudioBlock(from, RATE, expected(from.seconds(), to.seconds())))
                : Optional.empty();
    }

    /** The tone that the example hand-off has for its sound. */
    private static short[] expected(double from, double to) {
        int first = (int) Math.round(from * RATE);
        short[] samples = new short[(int) Math.round(to * RATE) - first];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (short) (100 * Math.sin(0.3 * (first + i)));
        }
        return samples;
    }

    private static Map<String, byte[]> chunks(byte[] file) {
        ByteBuffer bytes = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
        assertThat(name(bytes)).isEqualTo("RIFF");
        assertThat(bytes.getInt()).isEqualTo(file.length - 8);
        assertThat(name(bytes)).isEqualTo("WAVE");
        Map<String, byte[]> chunks = new LinkedHashMap<>();
        while (bytes.hasRemaining()) {
            String name = name(bytes);
            byte[] body = new byte[bytes.getInt()];
            bytes.get(body);
            chunks.put(name, body);
            bytes.position(bytes.position() + body.length % 2);
        }
        return chunks;
    }

    private static String name(ByteBuffer bytes) {
        byte[] name = new byte[4];
        bytes.get(name);
        return new String(name, StandardCharsets.US_ASCII);
    }

    private static short[] samples(Map<String, byte[]> chunks) {
        ByteBuffer data = ByteBuffer.wrap(chunk(chunks, "data")).order(ByteOrder.LITTLE_ENDIAN);
        short[] samples = new short[data.remaining() / 2];
        data.asShortBuffer().get(samples);
        return samples;
    }

    private static Element xml(byte[] bytes) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(bytes))
                .getDocumentElement();
    }

    private static String field(Element xml, String name) {
        List<String> found = new ArrayList<>();
        for (int i = 0; i < xml.getElementsByTagName(name).getLength(); i++) {
            found.add(xml.getElementsByTagName(name).item(i).getTextContent());
        }
        assertThat(found).as(name).hasSize(1);
        return found.get(0);
    }
}
