package org.bookholder.journal.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.s;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.bookholder.journal.event.EventCodec;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is read of a journal in which single bytes are damaged. Layout of a row: sqlite.org/fileformat2.html, sections 1.6 and 2.1;
 * {@code DamagedJournalTest} damages journals at random.
 */
final class SalvageTest {
    private static final int EVENTS = 300;
    private static final int PAGE = 4096;

    /** Its number lies in the middle of a page, and takes two bytes. */
    private static final int MIDDLE = 200;

    @TempDir
    private Path folder;

    private Path journal;
    private final List<SessionEvent> events = new ArrayList<>();

    @BeforeEach
    void write() throws ProblemException, IOException {
        journal = folder.resolve("journal.db");
        for (int i = 1; i <= EVENTS; i++) {
            events.add(mark(i, "a \"note\" with { and \\ in it"));
        }
        events.set(0, opened(1, 1));
        events.set(99, opened(100, 200));
        events.set(249, opened(250, 2000));
        try (SqliteJournal open = SqliteJournal.open(journal)) {
            open.append(events);
            copy("killed.db");
            copy("killed.db-wal");
        }
    }

    @Test
    void readsAllOfAWholeJournal() throws ProblemException {
        holds(all());
        assertThat(salvage().gone()).isZero();
    }

    @Test
    void readsAllOfTheLogAlone() throws ProblemException, IOException {
        journal = folder.resolve("killed.db");
        Files.delete(journal);
        holds(all());
    }

    @Test
    void aMissingJournalHoldsNothing() throws ProblemException {
        journal = folder.resolve("none.db");
        assertThat(salvage()).isEqualTo(new Salvage(List.of(), 0, 0));
    }

    @Test
    void theTreeOfPagesIsNotNeeded() throws ProblemException, IOException {
        byte[] bytes = bytes();
        Arrays.fill(bytes, 0, PAGE, (byte) 0x5A);
        for (int page = PAGE; page < bytes.length; page += PAGE) {
            if (bytes[page] == 0x0D || bytes[page] == 0x05) {
                Arrays.fill(bytes, page, page + 12, (byte) 0);
            }
        }
        Files.write(journal, bytes);
        holds(all());
    }

    @Test
    void anEventThatIsDamagedIsGoneAlone() throws ProblemException, IOException {
        damage(MIDDLE);
        holds(all(i -> i != MIDDLE));
        assertThat(salvage().gone()).isEqualTo(1);
    }

    /** Four bytes of header before the text, before them two of its number, before them one of its length. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7})
    void aByteBeforeTheTextCostsNothing(int before) throws ProblemException, IOException {
        for (int other : new int[] {0, 1, 13, 0x7F, 0x80, 0xFF}) {
            byte[] whole = bytes();
            change(text(MIDDLE), -before, other);
            assertThat(numbers(salvage().events()).toString())
                    .as("byte %d", other)
                    .isEqualTo(all().toString());
            Files.write(journal, whole);
        }
    }

    @Test
    void anEventAloneHasTheNumberThatIsWrittenBeforeIt() throws ProblemException, IOException {
        for (int i = 2; i <= EVENTS; i += 2) {
            damage(i);
        }
        holds(all(i -> i % 2 == 1));
        assertThat(salvage().last()).isEqualTo(EVENTS - 1);
        assertThat(salvage().gone()).isEqualTo(EVENTS / 2 - 1);
    }

    @Test
    void anEventWithoutANumberGoesWhereItsTimeSays() throws ProblemException, IOException {
        int at = text(MIDDLE);
        damage(MIDDLE - 1);
        damage(MIDDLE + 1);
        for (int before = 1; before <= 7; before++) {
            change(at, -before, 0xFF);
        }
        holds(all(i -> i != MIDDLE - 1 && i != MIDDLE + 1));
    }

    @Test
    void aNumberThatCannotBeIsNotBelieved() throws ProblemException, IOException {
        damage(MIDDLE - 1);
        damage(MIDDLE + 1);
        // The number's two bytes lie before the four of the row's header; now they say 16,000.
        change(text(MIDDLE), -6, 0xFD);
        holds(all(i -> i != MIDDLE - 1 && i != MIDDLE + 1));
        assertThat(salvage().last()).isEqualTo(EVENTS);
    }

    @Test
    void aLongTextIsReadFromAllItsPages() throws ProblemException, IOException {
        byte[] bytes = bytes();
        int inOverflow = new String(bytes, StandardCharsets.ISO_8859_1).indexOf("Line 250.1500 ");
        bytes[inOverflow] = (byte) 0xFF;
        Files.write(journal, bytes);
        SessionEvent read = salvage().events().get(249);
        assertThat(read)
                .isInstanceOfSatisfying(
                        SessionEvent.Opened.class,
                        opened -> assertThat(opened.scriptText())
                                .startsWith("Line 250.0 ")
                                .contains("Line 250.1499 ", "Line 250.1501 ")
                                .endsWith("Line 250.1999 is read.\n"));
    }

    @Test
    void aTextThatLosesOneOfItsPagesIsGoneAlone() throws ProblemException, IOException {
        byte[] bytes = bytes();
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        int page = text.indexOf("Line 250.1500 ") / PAGE * PAGE;
        Arrays.fill(bytes, page, page + PAGE, (byte) 0);
        Files.write(journal, bytes);
        holds(all(i -> i != 250));
        assertThat(salvage().gone()).isEqualTo(1);
    }

    @Test
    void aFileThatIsCutOffHoldsTheRest() throws ProblemException, IOException {
        byte[] bytes = bytes();
        int cut = text(MIDDLE) + 10;
        Files.write(journal, Arrays.copyOf(bytes, cut));
        assertThat(numbers(salvage().events()))
                .isSorted()
                .hasSizeBetween(MIDDLE / 2, EVENTS - 1)
                .contains(MIDDLE + 1)
                .doesNotContain(0, MIDDLE);
    }

    /** The log keeps each state of a page, the last one last; a frame whose checksum does not hold counts less. */
    @Test
    void anOlderFrameIsBelievedBeforeADamagedOne() throws ProblemException, IOException {
        Path other = folder.resolve("grown.db");
        try (SqliteJournal open = SqliteJournal.open(other)) {
            open.append(mark(1, "first"));
            open.append(mark(2, "second"));
            open.append(mark(3, "third"));
            Files.copy(folder.resolve("grown.db-wal"), folder.resolve("broken.db-wal"));
        }
        journal = folder.resolve("broken.db");
        Path log = folder.resolve("broken.db-wal");
        byte[] bytes = Files.readAllBytes(log);
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        bytes[text.lastIndexOf("first")] = 'F';
        Files.write(log, bytes);
        assertThat(salvage().events()).containsExactly(mark(1, "first"), mark(2, "second"), mark(3, "third"));
    }

    /** The file has the row with a changed letter that can still be understood, the log the row as it was written. */
    @Test
    void aCopyThatHasNotChangedIsTakenBeforeOneThatHas() throws ProblemException, IOException {
        byte[] log = Files.readAllBytes(folder.resolve("killed.db-wal"));
        String text = new String(log, StandardCharsets.ISO_8859_1);
        Files.write(folder.resolve("journal.db-wal"), log);
        change(text(MIDDLE), noteOf(MIDDLE), 'A');
        assertThat(text).contains(beginning(MIDDLE));
        holds(all());
        assertThat(salvage().changed()).isZero();
    }

    @Test
    void anEventOfWhichOnlyAChangedCopyIsLeftIsKeptAndCounted() throws ProblemException, IOException {
        change(text(MIDDLE), noteOf(MIDDLE), 'A');
        assertThat(salvage().events()).hasSize(EVENTS);
        assertThat(salvage().events().get(MIDDLE - 1)).isEqualTo(mark(MIDDLE, "A \"note\" with { and \\ in it"));
        assertThat(salvage().changed()).isEqualTo(1);
        assertThat(salvage().gone()).isZero();
    }

    @Test
    void aLongTextIsMadeUpOfThePagesThatHaveNotChanged() throws ProblemException, IOException {
        Files.copy(folder.resolve("killed.db-wal"), folder.resolve("journal.db-wal"));
        byte[] bytes = bytes();
        bytes[new String(bytes, StandardCharsets.ISO_8859_1).indexOf("Line 250.1500 ")] = 'X';
        Files.write(journal, bytes);
        holds(all());
        assertThat(salvage().changed()).isZero();
    }

    /** Where in the text of an event the first letter of its note stands. */
    private int noteOf(int number) {
        return EventCodec.encode(events.get(number - 1)).indexOf("a \\\"note");
    }

    private Salvage salvage() throws ProblemException {
        return Salvage.of(journal);
    }

    private byte[] bytes() throws IOException {
        return Files.readAllBytes(journal);
    }

    /** Where the text of an event begins in the file. */
    private int text(int number) throws IOException {
        int at = new String(bytes(), StandardCharsets.ISO_8859_1).lastIndexOf(beginning(number));
        assertThat(at).as("event %d", number).isPositive();
        return at;
    }

    private void change(int at, int by, int to) throws IOException {
        byte[] bytes = bytes();
        bytes[at + by] = (byte) to;
        Files.write(journal, bytes);
    }

    /** Makes an event's text one that no event has, in each copy of it. */
    private void damage(int number) throws IOException {
        String text = new String(bytes(), StandardCharsets.ISO_8859_1);
        String other = beginning(number).replace("type", "tXpe");
        Files.writeString(journal, text.replace(beginning(number), other), StandardCharsets.ISO_8859_1);
    }

    private String beginning(int number) {
        String text = EventCodec.encode(events.get(number - 1));
        return text.substring(0, Math.min(60, text.length()));
    }

    /** The numbers of the events that are salvaged, in their order. */
    private void holds(List<Integer> numbers) throws ProblemException {
        assertThat(numbers(salvage().events()).toString()).isEqualTo(numbers.toString());
    }

    private static List<Integer> all() {
        return all(i -> true);
    }

    private static List<Integer> all(IntPredicate numbers) {
        return IntStream.rangeClosed(1, EVENTS).filter(numbers).boxed().toList();
    }

    /** 0 for an event that was never written. */
    private List<Integer> numbers(List<SessionEvent> salvaged) {
        return salvaged.stream().map(event -> events.indexOf(event) + 1).toList();
    }

    private void copy(String name) throws IOException {
        Files.copy(journal.resolveSibling(name.replace("killed", "journal")), folder.resolve(name));
    }

    private static SessionEvent mark(int number, String note) {
        return new SessionEvent.PickupMarked(s(number), number, note);
    }

    /** An event with a text of so many lines: 200 take one more page, 2000 about ten. */
    private static SessionEvent opened(int number, int lines) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < lines; i++) {
            text.append("Line ").append(number + "." + i).append(" is read.\n");
        }
        return new SessionEvent.Opened(s(number), MORNING, "lesson " + number, "lesson.md", text.toString());
    }
}
