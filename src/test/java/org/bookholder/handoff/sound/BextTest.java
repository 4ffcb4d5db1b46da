package org.bookholder.handoff.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Offsets of the broadcast extension as they follow from the field list of EBU Tech 3285. */
final class BextTest {
    @ParameterizedTest
    @CsvSource({
        "01:00:00, 48000, 172800000, 0",
        "12:34:56, 48000, 2174208000, 0",
        "23:00:00, 192000, 3012698112, 3",
    })
    void theTimeReferenceIsA64BitNumberLowWordFirst(String time, int rate, long low, long high) {
        ByteBuffer bext = ByteBuffer.wrap(new Bext("", "", LocalDateTime.parse("2026-03-02T" + time), rate).bytes())
                .order(ByteOrder.LITTLE_ENDIAN);
        assertThat(Integer.toUnsignedLong(bext.getInt(338))).isEqualTo(low);
        assertThat(Integer.toUnsignedLong(bext.getInt(342))).isEqualTo(high);
    }

    /** EBU Tech 3285: 32 ASCII characters, and no other recording has the same. */
    @Test
    void noTwoRecordingsHaveTheSameReference() {
        LocalDateTime nine = LocalDateTime.parse("2026-03-02T09:00:00");
        String lesson = "a-lesson-with-a-very-long-name-indeed";
        List<String> references = List.of(
                Bext.reference(lesson + "-take-001.wav", nine),
                Bext.reference(lesson + "-take-002.wav", nine),
                Bext.reference(lesson + "-take-001.wav", nine.plusNanos(1_000_000)),
                Bext.reference("\u00e9t\u00e9-take-001.wav", nine));
        assertThat(references)
                .doesNotHaveDuplicates()
                .allSatisfy(reference -> assertThat(reference).matches("BKH20260302\\d{9}[0-9a-f]{12}"));
        byte[] bext = new Bext("", references.get(0), nine, 48_000).bytes();
        assertThat(text(bext, 288, 32)).isEqualTo(references.get(0)).hasSize(32);
    }

    @Test
    void everyFieldStandsInItsPlace() {
        byte[] bext =
                new Bext("Lesson", "lesson-take-001.wav", LocalDateTime.parse("2026-03-02T09:08:07.5"), 48_000).bytes();
        assertThat(text(bext, 0, 256)).isEqualTo("Lesson");
        assertThat(text(bext, 256, 32)).isEqualTo("Bookholder");
        assertThat(text(bext, 288, 32)).isEqualTo("lesson-take-001.wav");
        assertThat(text(bext, 320, 10)).isEqualTo("2026-03-02");
        assertThat(text(bext, 330, 8)).isEqualTo("09-08-07");
        assertThat(ByteBuffer.wrap(bext).order(ByteOrder.LITTLE_ENDIAN).getShort(346))
                .isEqualTo((short) 1);
        assertThat(text(bext, 602, bext.length - 602)).isEqualTo("A=PCM,F=48000,W=16,M=mono,T=Bookholder\r\n");
    }

    @Test
    void textThatIsTooLongIsCutAndForeignLettersAreReplaced() {
        byte[] bext =
                new Bext("\u00e9" + "x".repeat(300), "", LocalDateTime.parse("2026-03-02T09:08:07"), 48_000).bytes();
        assertThat(text(bext, 0, 256)).isEqualTo("?" + "x".repeat(255));
        assertThat(text(bext, 256, 32)).isEqualTo("Bookholder");
    }

    private static String text(byte[] bytes, int from, int length) {
        return new String(bytes, from, length, StandardCharsets.US_ASCII).replaceAll("\0+$", "");
    }
}
