package org.bookholder.journal.sqlite;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.journal.event.CheckedText;
import org.bookholder.journal.event.EventCodec;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;

/**
 * Finds the events in a page by how their text begins, whatever else of the page is damaged.
 *
 * <p>A row of the journal is a cell: two variable-length numbers (bytes of the row, number of the event), a header of three
 * entries (its length, a null for the number, the length of the text), and the text, an event as JSON. A text that is too
 * long for the page goes on in others (sqlite.org/fileformat2.html, sections 1.6 and 2.1).
 */
final class CellReader {
    /** How the text of every event begins. */
    private static final byte[] BEGINNING = "{\"type\":\"".getBytes(StandardCharsets.US_ASCII);

    /** The most bytes of a row that a page holds itself, and the fewest that it holds of a longer one. */
    private static final int MOST_LOCAL = PageCopies.PAGE_BYTES - 35;

    private static final int FEWEST_LOCAL = (PageCopies.PAGE_BYTES - 12) * 32 / 255 - 23;

    private static final int OVERFLOW_BYTES = PageCopies.PAGE_BYTES - 4;

    /** No event of hours of reading is longer. */
    private static final int MOST_TEXT = 1 << 27;

    /** Pages of a long text may each have several copies; not every choice of them is tried. */
    private static final int MOST_TRIES = 64;

    private final PageCopies pages;

    /** A log holds the same event in many copies of its page. */
    private final Map<String, Optional<Decoded>> decoded = new HashMap<>();

    private record Decoded(SessionEvent event, CheckedText.State state) {}

    CellReader(PageCopies pages) {
        this.pages = pages;
    }

    /** The events in a page, the one at its end, which was written first, first. */
    List<EventCell> cells(byte[] page) {
        List<EventCell> cells = new ArrayList<>();
        int at = next(page, 0);
        while (at >= 0) {
            Optional<EventCell> cell = cell(page, at);
            cell.ifPresent(found -> cells.add(0, found));
            at = next(page, cell.map(EventCell::to).orElse(at + 1));
        }
        return cells;
    }

    private static int next(byte[] page, int from) {
        for (int at = from; at + BEGINNING.length <= page.length; at++) {
            int same = 0;
            while (same < BEGINNING.length && page[at + same] == BEGINNING[same]) {
                same++;
            }
            if (same == BEGINNING.length) {
                return at;
            }
        }
        return -1;
    }

    /** The event whose text begins at {@code at}; by what stands before it, else by the text alone. */
    private Optional<EventCell> cell(byte[] page, int at) {
        for (int bytes = 1; bytes <= 4; bytes++) {
            long serial = number(page, at - bytes, bytes);
            int header = bytes + 2;
            int headerAt = at - header;
            boolean fits = serial >= 13
                    && serial % 2 == 1
                    && serial < MOST_TEXT
                    && headerAt >= 0
                    && page[headerAt] == header
                    && page[headerAt + 1] == 0;
            if (fits) {
                int length = (int) (serial - 13) / 2;
                Optional<Decoded> event = event(page, at, header, length);
                if (event.isPresent()) {
                    return Optional.of(cell(page, at, header, length, event.get()));
                }
            }
        }
        int end = endOfText(page, at);
        return decode(page, at, end - at).map(found -> new EventCell(0, found.event(), found.state(), at, end));
    }

    private static EventCell cell(byte[] page, int at, int header, int length, Decoded found) {
        int row = header + length;
        int to = at - header + (row <= MOST_LOCAL ? row : local(row) + 4);
        for (int bytes = 1; bytes <= 9; bytes++) {
            int numberAt = at - header - bytes;
            long number = number(page, numberAt, bytes);
            for (int more = 1; number > 0 && more <= 4; more++) {
                if (number(page, numberAt - more, more) == row) {
                    return new EventCell(number, found.event(), found.state(), numberAt - more, to);
                }
            }
        }
        return new EventCell(0, found.event(), found.state(), at - header, to);
    }

    private Optional<Decoded> event(byte[] page, int at, int header, int length) {
        int row = header + length;
        if (row <= MOST_LOCAL) {
            return at + length <= page.length ? decode(page, at, length) : Optional.empty();
        }
        int here = local(row) - header;
        if (at + here + 4 > page.length || length / OVERFLOW_BYTES > pages.all().size()) {
            return Optional.empty();
        }
        byte[] text = new byte[length];
        System.arraycopy(page, at, text, 0, here);
        int[] tries = {MOST_TRIES};
        return overflow(Integer.toUnsignedLong(ByteBuffer.wrap(page).getInt(at + here)), text, here, tries);
    }

    /**
     * Goes on in each copy of the next page until the text as a whole is an event's that has not changed; {@code begun} bytes of it
     * are there. One that has changed is better than none.
     */
    private Optional<Decoded> overflow(long page, byte[] text, int begun, int[] tries) {
        int left = text.length - begun;
        if (left == 0) {
            tries[0]--;
            return decode(text, 0, text.length);
        }
        int here = Math.min(left, OVERFLOW_BYTES);
        Optional<Decoded> changed = Optional.empty();
        for (byte[] copy : pages.of(page)) {
            System.arraycopy(copy, 4, text, begun, here);
            long next = Integer.toUnsignedLong(ByteBuffer.wrap(copy).getInt());
            Optional<Decoded> event = overflow(next, text, begun + here, tries);
            if (event.filter(found -> found.state() != CheckedText.State.CHANGED)
                    .isPresent()) {
                return event;
            }
            changed = changed.or(() -> event);
            if (tries[0] <= 0) {
                break;
            }
        }
        return changed;
    }

    private static int local(int row) {
        int most = FEWEST_LOCAL + (row - FEWEST_LOCAL) % OVERFLOW_BYTES;
        return most <= MOST_LOCAL ? most : FEWEST_LOCAL;
    }

    private Optional<Decoded> decode(byte[] bytes, int from, int length) {
        return decoded.computeIfAbsent(new String(bytes, from, length, StandardCharsets.UTF_8), CellReader::decode);
    }

    private static Optional<Decoded> decode(String text) {
        try {
            return Optional.of(new Decoded(EventCodec.decode(text, "a page"), CheckedText.state(text)));
        } catch (ProblemException damaged) {
            return Optional.empty();
        }
    }

    /** Where the brace that opens at {@code at} is closed; the end of the page if it is not. */
    private static int endOfText(byte[] page, int at) {
        int depth = 0;
        boolean quoted = false;
        for (int i = at; i < page.length; i++) {
            if (quoted && page[i] == '\\') {
                i++;
            } else if (quoted) {
                quoted = page[i] != '"';
            } else if (page[i] == '"') {
                quoted = true;
            } else if (page[i] == '{') {
                depth++;
            } else if (page[i] == '}' && --depth == 0) {
                return i + 1;
            }
        }
        return page.length;
    }

    /** A variable-length number of exactly {@code bytes} bytes; -1 if none stands there. */
    private static long number(byte[] page, int at, int bytes) {
        if (at < 0 || bytes > 8) {
            return -1;
        }
        long number = 0;
        for (int i = at; i < at + bytes; i++) {
            boolean last = i == at + bytes - 1;
            boolean more = page[i] < 0;
            if (last == more) {
                return -1;
            }
            number = (number << 7) | (page[i] & 0x7f);
        }
        return number;
    }
}
