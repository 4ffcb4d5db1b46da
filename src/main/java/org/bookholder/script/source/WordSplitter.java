package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.model.ScriptWord.Emphasis;
import org.bookholder.script.normalize.SpokenForms;
import org.bookholder.script.normalize.SpokenSpan;
import org.bookholder.script.normalize.TextNormalizer;
import org.bookholder.script.normalize.Typography;
import org.jspecify.annotations.Nullable;

/** Splits a sentence into words and gives each its spoken forms. Not thread-safe. */
final class WordSplitter {
    private static final String OPENING = "\"'([{<*_\u00a1\u00bf\u2026.-\u2013\u2014\u2212\u2022#|";

    private static final Pattern OPTION = Pattern.compile("(?:--[A-Za-z][A-Za-z-]{1,30}|-[A-Za-z]{1,4})[.,;:!?]?");

    /** What text is sent on to, in a command: "| grep". */
    private static final Pattern PIPED =
            Pattern.compile("\\| (?:grep|awk|sed|sort|uniq|wc|less|head|tail|xargs|tee|tr|cut|jq)\\b");

    private final TextNormalizer speaker;

    WordSplitter(TextNormalizer speaker) {
        this.speaker = speaker;
    }

    /** The words between two indices; none if there is nothing to say. */
    List<ScriptWord> split(MarkedSourceLine line, int from, int to) {
        return new Pass(line, from, to).run();
    }

    /** The work on one sentence. */
    private final class Pass {
        private final MarkedSourceLine line;
        private final String plain;
        private final int to;
        private final List<ScriptWord> words = new ArrayList<>();
        private int at;
        /** Characters before the first word, which belong to it. */
        private String silent = "";

        Pass(MarkedSourceLine line, int from, int to) {
            this.line = line;
            this.plain = line.plain();
            this.at = from;
            this.to = to;
        }

        List<ScriptWord> run() {
            while (true) {
                while (at < to && plain.charAt(at) == ' ') {
                    at++;
                }
                if (at >= to) {
                    return words;
                }
                next();
            }
        }

        private void next() {
            int chunkEnd = chunkEnd(at);
            MarkedSourceLine.Said said = line.said(at, chunkEnd);
            if (said != null) {
                int end = chunkEnd(at, said.end());
                add(end, given(said, end));
                return;
            }
            int body = body(at, chunkEnd);
            int limit = saidAfter(chunkEnd);
            SpokenSpan heard = body < chunkEnd
                    ? speaker.at(plain, body, chunkEnd, Math.min(limit, to))
                    : new SpokenSpan(chunkEnd, SpokenForms.NONE);
            int end = heard.end() <= chunkEnd ? chunkEnd : chunkEnd(at, heard.end());
            add(endOf(heard.end(), end), heard.forms());
        }

        /** Index behind what was read and the punctuation after it, where more than that follows in the same written word. */
        private int endOf(int read, int end) {
            for (int i = read; i < end; i++) {
                if (Character.isLetterOrDigit(plain.charAt(i)) && read > at) {
                    return line.isInsideSaid(i) ? end : i;
                }
            }
            return end;
        }

        private void add(int end, SpokenForms forms) {
            String written = line.text().substring(at, end);
            Emphasis emphasis = line.emphasis(at, end);
            at = end;
            if (!forms.isEmpty()) {
                words.add(new ScriptWord(silent + written, forms.all(), emphasis));
                silent = "";
            } else if (words.isEmpty()) {
                silent = silent + written + " ";
            } else {
                ScriptWord before = words.remove(words.size() - 1);
                words.add(new ScriptWord(before.written() + " " + written, before.spoken(), before.emphasis()));
            }
        }

        private int chunkEnd(int start) {
            return chunkEnd(start, start + 1);
        }

        /** Index of the space after {@code start}, or past a dash or ellipsis that joins two words. */
        private int chunkEnd(int start, int searchFrom) {
            for (int i = searchFrom; i < to; i++) {
                char c = plain.charAt(i);
                if (c == ' ') {
                    return i;
                }
                boolean joins = isDash(i - 1) && Character.isLetterOrDigit(c) && hasWord(start, i - 1);
                if (joins && !line.isInsideSaid(i)) {
                    return i;
                }
            }
            return to;
        }

        private boolean hasWord(int start, int end) {
            return plain.substring(Math.min(start, end), end).chars().anyMatch(Character::isLetterOrDigit);
        }

        private boolean isDash(int i) {
            char c = plain.charAt(i);
            return c == '\u2014'
                    || c == '\u2026'
                    || (c == '.' && i >= 2 && plain.startsWith("...", i - 2))
                    || (c == '-' && i >= 2 && plain.charAt(i - 1) == '-')
                    || (c == '\u2013'
                            && i >= 1
                            && Character.isLetter(plain.charAt(i - 1))
                            && !(isLetterAlone(i - 1) && isLetterAlone(i + 1)));
        }

        /** Whether a letter stands there with none beside it, as in "A–F". */
        private boolean isLetterAlone(int i) {
            return isLetter(i) && !isLetter(i - 1) && !isLetter(i + 1);
        }

        private boolean isLetter(int i) {
            return i >= 0 && i < to && Character.isLetter(plain.charAt(i));
        }

        private int body(int start, int end) {
            int body = start;
            while (body < end && OPENING.indexOf(plain.charAt(body)) >= 0 && !isSign(body, end)) {
                body++;
            }
            return body;
        }

        /** Whether what looks like opening punctuation is part of what is said: "-5", "#1", ".5", "'80s", "'em". */
        private boolean isSign(int i, int end) {
            char c = plain.charAt(i);
            boolean before = i + 1 < end;
            boolean digit = before && Character.isDigit(plain.charAt(i + 1));
            return switch (c) {
                case '-', '\u2013', '\u2212' ->
                    digit
                            || (c == '\u2212' && !before && i > 0 && i + 1 < to)
                            || (before && isValue(i + 1, end))
                            || (c == '-' && isOption(i, end));
                case '<' -> digit || !before;
                case '|' ->
                    plain.startsWith("||", i)
                            || (!before && PIPED.matcher(plain).region(i, to).lookingAt());
                case '.', '#' -> digit || (c == '#' && before && Character.isLetter(plain.charAt(i + 1)));
                case '\'' -> before && (digit || Character.isLetter(plain.charAt(i + 1))) && isShortening(i, end);
                default -> false;
            };
        }

        /** Whether an option of a command begins here: "--help", "-v". */
        private boolean isOption(int i, int end) {
            boolean free = i == 0 || plain.charAt(i - 1) == ' ';
            return free && OPTION.matcher(plain.substring(i, end)).matches();
        }

        /** Whether an amount or a decimal begins here, as behind a minus. */
        private boolean isValue(int i, int end) {
            char c = plain.charAt(i);
            return "$£€¥₹½¼¾".indexOf(c) >= 0 || (c == '.' && i + 1 < end && Character.isDigit(plain.charAt(i + 1)));
        }

        private boolean isShortening(int i, int end) {
            String rest = plain.substring(i, end).replaceAll("[.,;:!?)\"]+$", "");
            return rest.matches("'(?:\\d0s|\\d\\d|n'?|tis|twas|em|til|cause|bout|cept)")
                    || rest.matches("'(?i:tis|twas|em|til|cause|bout|cept)");
        }

        private int saidAfter(int chunkEnd) {
            MarkedSourceLine.Said next = line.said(chunkEnd, to);
            if (next == null) {
                return to;
            }
            int space = plain.lastIndexOf(' ', next.start());
            return Math.max(chunkEnd, space < 0 ? next.start() : space);
        }

        /** The spoken form that the author gave, with the text directly before and after it in the same word. */
        private SpokenForms given(MarkedSourceLine.Said said, int end) {
            SpokenForms forms = spoken(plain.substring(Math.min(at, said.start()), said.start()), null)
                    .then(spoken(Typography.plain(said.said()), said));
            String after = plain.substring(said.end(), end);
            if (after.startsWith("'s") && (after.length() == 2 || !Character.isLetter(after.charAt(2)))) {
                List<String> owned = new ArrayList<>(forms.first());
                owned.set(owned.size() - 1, owned.get(owned.size() - 1) + "'s");
                return new SpokenForms(List.of(owned));
            }
            return forms.then(spoken(after, null));
        }

        private SpokenForms spoken(String text, MarkedSourceLine.@Nullable Said said) {
            SpokenForms forms = SpokenForms.SILENT;
            for (ScriptWord word : said == null && text.isBlank() ? List.<ScriptWord>of() : sub(text)) {
                forms = forms.then(new SpokenForms(word.spoken()).preferred());
            }
            return forms;
        }

        private List<ScriptWord> sub(String text) {
            MarkedSourceLine inner = MarkedSourceLine.plain(text);
            return new Pass(inner, 0, inner.text().length()).run();
        }
    }

    /** How a short text of one word may be read. */
    List<List<String>> forms(String text) {
        List<ScriptWord> words = split(MarkedSourceLine.plain(text), 0, text.length());
        return words.size() == 1 ? words.get(0).spoken() : List.of();
    }

    /** Whether there is anything to say in {@code text}. */
    boolean says(String text) {
        MarkedSourceLine line = MarkedSourceLine.plain(text);
        return !split(line, 0, line.text().length()).isEmpty();
    }
}
