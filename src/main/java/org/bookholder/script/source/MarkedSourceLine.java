package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.script.model.ScriptWord.Emphasis;
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

    private MarkedSourceLine(String text, List<Emphasis> emphasis, List<Said> said) {
        this.text = text;
        this.plain = Typography.plain(text);
        this.emphasis = emphasis;
        this.said = said;
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
        return emphasis.subList(from, to).stream().reduce(Emphasis.NONE, (a, b) -> a.compareTo(b) < 0 ? b : a);
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

    /** Whether this index is inside a place with a given spoken form, so that the text must not be split there. */
    boolean isInsideSaid(int index) {
        return said.stream().anyMatch(one -> one.start < index && index < one.end);
    }

    /** A line without marks. */
    static MarkedSourceLine plain(String text) {
        Builder builder = new Builder();
        builder.add(text, Emphasis.NONE);
        return builder.build();
    }

    /** Collects a line piece by piece and reduces its spaces to single ones. */
    static final class Builder {
        private final StringBuilder text = new StringBuilder();
        private final List<Emphasis> emphasis = new ArrayList<>();
        private final List<Said> said = new ArrayList<>();

        void add(String piece, Emphasis emphasised) {
            for (int i = 0; i < piece.length(); i++) {
                char c = piece.charAt(i);
                if (Typography.isSpace(c)) {
                    if (!text.isEmpty() && text.charAt(text.length() - 1) != ' ') {
                        append(' ', Emphasis.NONE);
                    }
                } else if (!isInvisible(c)) {
                    append(c, emphasised);
                }
            }
        }

        void addSaid(String piece, Emphasis emphasised, String spoken) {
            int start = text.length();
            add(piece, emphasised);
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

        private void append(char c, Emphasis emphasised) {
            text.append(c);
            emphasis.add(emphasised);
        }

        /** Soft hyphens, word joiners and control characters. */
        private static boolean isInvisible(char c) {
            return c == '\u00ad' || c == '\u2060' || c < ' ' || c == '\u007f';
        }

        boolean isBlank() {
            return text.toString().isBlank();
        }

        MarkedSourceLine build() {
            int length = text.length();
            if (length > 0 && text.charAt(length - 1) == ' ') {
                length--;
            }
            return new MarkedSourceLine(
                    text.substring(0, length), List.copyOf(emphasis.subList(0, length)), List.copyOf(said));
        }
    }
}
