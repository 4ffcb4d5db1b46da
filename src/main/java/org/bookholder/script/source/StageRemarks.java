package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.TakenBracket;

/**
 * Takes out of a source line what is meant for the presenter's eyes: remarks in square brackets, a line that
 * stands in round brackets as a whole, and the usual cues, such as "(beat)", within a line; and lines that are cues for those who
 * shoot and cut. Other text in round brackets is read aloud.
 *
 * @param spoken what stays
 * @param remarks what was taken out, in order
 * @param leftOut marks of comments and notes, and check boxes, which are neither read nor shown
 * @param brackets the square brackets that are read or shown, with the reason, in order
 */
record StageRemarks(MarkedSourceLine spoken, List<Remark> remarks, List<LeftOut> leftOut, List<TakenBracket> brackets) {
    private static final Pattern ROUND = Pattern.compile("\\(([^()]*)\\)[.,;:!?]?");

    /** Cues of scripts for camera and stage; common practice. */
    private static final Pattern CUE = Pattern.compile(
            "(?i)\\((?:(?:a |long |short |brief |slight |dramatic )?"
                    + "(?:beat|pause|silence|breath)s?|(?:he |she |they |i )?(?:smil|laugh|chuckl|sigh|nod|point|wink|shrug|"
                    + "wav|gestur|whisper)(?:e?s|ing)?|to camera|aside|off|off[- ]?(?:screen|camera)|o\\.?s\\.?|v\\.?o\\.?|"
                    + "(?:holds|lifts) (?:it|them|both) up|holds up (?:(?:an?|the|this|that|his|her|one|two|both|some|another) [^()]{1,30}|it|them)|picks (?:it|them) up|puts (?:it|them) down|looks (?:up|down|away)|"
                    + "(?:looks|turns|walks) (?:at|to|towards?) (?:the )?(?:camera|lens)|on[- ]screen|cont(?:'d|\\.|inued)?|music|applause|sfx:? [^()]*)\\)");

    private static final Pattern CHECK_BOX = Pattern.compile("\\[[ xX]\\]");

    /**
     * A remark.
     *
     * @param at index in the text that stays, before which it stood
     * @param text the remark without its brackets
     */
    record Remark(int at, String text) {}

    /** Takes a line apart; {@code sourceLine} is its place, for what is said of it. */
    static StageRemarks of(MarkedSourceLine line, int sourceLine, SquareBrackets rules) {
        return new Search(line, sourceLine, rules).run();
    }

    /** The same without the first {@code end} characters of what stays, a speaker's label. */
    StageRemarks behind(int end) {
        BitSet label = new BitSet();
        label.set(0, end);
        return with(spoken.without(label), remarks, leftOut, brackets);
    }

    /** What stays of a line, and its remarks, which stood at places of the whole line. */
    private static StageRemarks with(
            MarkedSourceLine.Rest rest, List<Remark> remarks, List<LeftOut> leftOut, List<TakenBracket> brackets) {
        return new StageRemarks(
                rest.line(),
                remarks.stream()
                        .map(remark -> new Remark(rest.places().get(remark.at()), remark.text()))
                        .toList(),
                leftOut,
                brackets);
    }

    /** Index of a square bracket that is opened and not closed in {@code line}, -1 if there is none. */
    static int openBracket(MarkedSourceLine line) {
        String text = line.text();
        int open = text.lastIndexOf('[');
        boolean before = open == 0 || (open > 0 && text.charAt(open - 1) == ' ');
        return before && text.indexOf(']', open) < 0 && !line.isKept(open) && !SquareBrackets.isHalfOpen(text, open)
                ? open
                : -1;
    }

    /** The search through one line. */
    private static final class Search {
        private final MarkedSourceLine line;
        private final String text;
        private final int sourceLine;
        private final BitSet taken = new BitSet();
        private final List<Remark> remarks = new ArrayList<>();
        private final List<LeftOut> leftOut = new ArrayList<>();
        private final List<TakenBracket> brackets = new ArrayList<>();
        private final SquareBrackets rules;
        private boolean read;

        Search(MarkedSourceLine line, int sourceLine, SquareBrackets rules) {
            this.rules = rules;
            this.line = line;
            this.text = line.text();
            this.sourceLine = sourceLine;
        }

        StageRemarks run() {
            Matcher whole = ROUND.matcher(text);
            if (whole.matches() && !whole.group(1).isBlank()) {
                return new StageRemarks(
                        MarkedSourceLine.plain(""), List.of(new Remark(0, whole.group(1))), List.of(), List.of());
            }
            if (!line.hasSaid() && ProductionCues.isCue(line.plain())) {
                return new StageRemarks(MarkedSourceLine.plain(""), List.of(new Remark(0, text)), List.of(), List.of());
            }
            for (int at = 0; at < text.length(); at++) {
                if (line.isKept(at)) {
                    continue;
                }
                char c = text.charAt(at);
                if (c == '[') {
                    at = square(at);
                } else if (c == '(') {
                    at = round(at);
                }
            }
            return taken.isEmpty()
                    ? new StageRemarks(line, remarks, leftOut, brackets)
                    : with(line.without(taken), remarks, leftOut, brackets);
        }

        private int square(int at) {
            Matcher box = CHECK_BOX.matcher(text).region(at, text.length());
            if (box.lookingAt() && at == 0) {
                leftOut.add(new LeftOut(sourceLine, box.group(), "a check box is not read"));
                return take(at, box.end());
            }
            int end = SquareBrackets.isHalfOpen(text, at) ? -1 : closing(at);
            if (end < 0) {
                return at;
            }
            SquareBrackets.Verdict verdict = rules.of(line, at, end, read);
            String written = text.substring(at, end);
            read = verdict.kind() == SquareBrackets.Kind.READ;
            if (verdict.kind() == SquareBrackets.Kind.MARK) {
                leftOut.add(new LeftOut(sourceLine, written, verdict.why()));
                return take(at, end);
            }
            brackets.add(new TakenBracket(sourceLine, written, read, verdict.alone(), verdict.why()));
            if (read) {
                return end - 1;
            }
            remarks.add(new Remark(at, text.substring(at + 1, end - 1).strip()));
            return take(at, end);
        }

        private int round(int at) {
            Matcher cue = CUE.matcher(text).region(at, text.length());
            if (!cue.lookingAt()) {
                return at;
            }
            remarks.add(new Remark(at, text.substring(at + 1, cue.end() - 1).strip()));
            return take(at, cue.end());
        }

        /** Index after the bracket that closes the one at {@code open}; -1 if none does. */
        private int closing(int open) {
            int depth = 0;
            for (int i = open; i < text.length(); i++) {
                depth += text.charAt(i) == '[' ? 1 : text.charAt(i) == ']' ? -1 : 0;
                if (depth == 0) {
                    return i + 1;
                }
            }
            return -1;
        }

        /** Takes a range, with the space before it if only punctuation or nothing follows; returns its last index. */
        private int take(int from, int to) {
            boolean loose = to == text.length() || ".,;:!?".indexOf(text.charAt(to)) >= 0;
            taken.set(loose && from > 0 && text.charAt(from - 1) == ' ' ? from - 1 : from, to);
            return to - 1;
        }
    }
}
