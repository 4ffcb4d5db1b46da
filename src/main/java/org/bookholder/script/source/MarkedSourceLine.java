package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.bookholder.script.model.ScriptWord.Emphasis;
import org.bookholder.script.normalize.Latex;
import org.bookholder.script.normalize.Typography;
import org.jspecify.annotations.Nullable;

/** One source line as shown, with the author's marks. */
final class MarkedSourceLine {
    /**
     * A place where the author gave the spoken form.
     *
     * @param start first character
     * @param end index after the last
     * @param said what is said, as the author wrote it
     */
    record Said(int start, int end, String said) {}

    private final String text;
    private final String plain;
    private final List<Emphasis> emphasis;
    private final List<Said> said;
    private final List<Range> code;
    private final List<String> dropped;

    /** From one index to before another. */
    private record Range(int start, int end) {}

    private MarkedSourceLine(
            String text, List<Emphasis> emphasis, List<Said> said, List<Range> code, List<String> dropped) {
        this.text = text;
        this.plain = Typography.plain(text);
        this.emphasis = emphasis;
        this.said = said;
        this.code = code;
        this.dropped = dropped;
    }

    /** The text, with single spaces between words. */
    String text() {
        return text;
    }

    /** The text in plain typography; every character keeps its index. */
    String plain() {
        return plain;
    }

    /** The strongest emphasis between two indices. */
    Emphasis emphasis(int from, int to) {
        Emphasis strongest = Emphasis.NONE;
        for (int i = from; i < to; i++) {
            strongest = emphasis.get(i).compareTo(strongest) > 0 ? emphasis.get(i) : strongest;
        }
        return strongest;
    }

    /** The spoken form given by the author that begins in this range, or null. */
    @Nullable Said said(int from, int to) {
        for (Said one : said) {
            if (one.start >= from && one.start < to) {
                return one;
            }
        }
        return null;
    }

    /** Whether the author gave a spoken form anywhere in it. */
    boolean hasSaid() {
        return !said.isEmpty();
    }

    /** Whether this index is inside a place with a given spoken form, so that the text must not be split there. */
    boolean isInsideSaid(int index) {
        for (Said one : said) {
            if (one.start < index && index < one.end) {
                return true;
            }
        }
        return false;
    }

    /** Whether a sentence must not end here: inside a place with a given spoken form, and inside code. */
    boolean isWhole(int index) {
        return isInsideSaid(index) || code.stream().anyMatch(one -> one.start < index && index < one.end);
    }

    /** Whether the character here is text whatever it looks like: in a place with a given spoken form, and in code. */
    boolean isKept(int index) {
        return isInsideSaid(index) || code.stream().anyMatch(one -> one.start <= index && index < one.end);
    }

    /**
     * What stays of a line from which characters were taken.
     *
     * @param line the line that stays
     * @param places for each index of the old line, and for its length, the index in the new one
     */
    record Rest(MarkedSourceLine line, List<Integer> places) {}

    /** The line without some of its characters; the spaces around them become one. */
    Rest without(BitSet taken) {
        Builder rest = new Builder();
        int[] places = new int[text.length() + 1];
        for (int i = 0; i < text.length(); i++) {
            places[i] = rest.text.length();
            char c = text.charAt(i);
            if (!taken.get(i) && (c != ' ' || (!rest.text.isEmpty() && rest.text.charAt(places[i] - 1) != ' '))) {
                rest.append(c, emphasis.get(i));
            }
        }
        places[text.length()] = rest.text.length();
        for (Said one : said) {
            if (places[one.end] - places[one.start] == one.end - one.start) {
                rest.said.add(new Said(places[one.start], places[one.end], one.said));
            }
        }
        for (Range one : code) {
            rest.code.add(new Range(places[one.start], places[one.end]));
        }
        return new Rest(rest.build(), Arrays.stream(places).boxed().toList());
    }

    /** The part of the line between two indices. */
    MarkedSourceLine part(int from, int to) {
        BitSet taken = new BitSet();
        taken.set(0, from);
        taken.set(to, text.length());
        return without(taken).line();
    }

    /** Symbols of the source that nobody says, such as emoji, which are not part of the line. */
    List<String> dropped() {
        return dropped;
    }

    /** A line without marks. */
    static MarkedSourceLine plain(String text) {
        Builder builder = new Builder();
        builder.add(text, Emphasis.NONE);
        return builder.build();
    }

    /** Collects a line piece by piece and reduces its spaces to single ones. */
    static final class Builder {
        private static final String CLOSING = ".,;:!?";

        private final StringBuilder text = new StringBuilder();
        private final List<Emphasis> emphasis = new ArrayList<>();
        private final List<Said> said = new ArrayList<>();
        private final List<Range> code = new ArrayList<>();
        private final List<String> dropped = new ArrayList<>();
        /** Where the last symbol was dropped; -1 if none was. */
        private int droppedAt = -1;

        void add(String piece, Emphasis emphasised) {
            int at = 0;
            while (at < piece.length()) {
                int end = Pictographs.endAt(piece, at);
                if (end > at) {
                    dropped.add(piece.substring(at, end));
                    droppedAt = text.length();
                    at = end;
                } else {
                    add(piece.charAt(at++), emphasised);
                }
            }
        }

        private void add(char c, Emphasis emphasised) {
            if (Typography.isSpace(c)) {
                if (!text.isEmpty() && text.charAt(text.length() - 1) != ' ') {
                    append(' ', Emphasis.NONE);
                }
            } else if (!isInvisible(c)) {
                if (droppedAt == text.length() && CLOSING.indexOf(c) >= 0) {
                    dropSpace();
                }
                append(c, emphasised);
            }
        }

        /** The space before a symbol that was dropped does not stay before a mark that ends a sentence or a part of it. */
        private void dropSpace() {
            int last = text.length() - 1;
            if (last >= 0 && text.charAt(last) == ' ') {
                text.setLength(last);
                emphasis.remove(last);
            }
        }

        void addSaid(String piece, Emphasis emphasised, String spoken) {
            int start = text.length();
            for (int i = 0; i < piece.length(); i++) {
                add(piece.charAt(i), emphasised);
            }
            while (start < text.length() && text.charAt(start) == ' ') {
                start++;
            }
            int end = text.length();
            while (end > start && text.charAt(end - 1) == ' ') {
                end--;
            }
            if (end > start) {
                said.add(new Said(start, end, spoken));
            }
        }

        /** Adds text that was marked up as code. */
        void addCode(String piece, Emphasis emphasised) {
            int start = text.length();
            add(piece, emphasised);
            code.add(new Range(start, text.length()));
        }

        private void append(char c, Emphasis emphasised) {
            text.append(c);
            emphasis.add(emphasised);
        }

        /** Soft hyphens, word joiners and control characters. */
        private static boolean isInvisible(char c) {
            return c == '\u00ad' || c == '\u2060' || c < ' ' || c == '\u007f';
        }

        /** A formula is whole, like code. */
        private void addFormulae() {
            String all = text.toString();
            for (int at = all.indexOf('$'); at >= 0; at = all.indexOf('$', at + 1)) {
                int end = Latex.end(all, at);
                if (end > 0) {
                    code.add(new Range(at, end));
                    at = end - 1;
                }
            }
        }

        boolean isBlank() {
            return text.toString().isBlank() && dropped.isEmpty();
        }

        MarkedSourceLine build() {
            int length = text.length();
            if (length > 0 && text.charAt(length - 1) == ' ') {
                length--;
            }
            int whole = length;
            addFormulae();
            return new MarkedSourceLine(
                    text.substring(0, length),
                    List.copyOf(emphasis.subList(0, length)),
                    List.copyOf(said),
                    code.stream()
                            .map(one -> new Range(Math.min(one.start, whole), Math.min(one.end, whole)))
                            .toList(),
                    List.copyOf(dropped));
        }
    }
}
