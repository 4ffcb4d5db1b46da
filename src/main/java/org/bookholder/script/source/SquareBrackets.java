package org.bookholder.script.source;

import java.util.Set;
import java.util.regex.Pattern;
import org.bookholder.script.normalize.Typography;

/**
 * Tells whether a square bracket is read aloud, is a remark to the presenter, or a mark that is neither read nor shown;
 * by what stands in it and around it. What no rule knows is a remark.
 */
final class SquareBrackets {
    /** What a bracket is. */
    enum Kind {
        READ,
        REMARK,
        MARK
    }

    /**
     * What a bracket is, and why.
     *
     * @param alone whether it is no part of a sentence
     */
    record Verdict(Kind kind, String why, boolean alone) {
        Verdict(Kind kind, String why) {
            this(kind, why, false);
        }
    }

    private static final Verdict ALONE = new Verdict(Kind.REMARK, "it stands alone", true);
    private static final Verdict REMARK = new Verdict(Kind.REMARK, "a remark within a sentence");
    private static final Verdict MARK = new Verdict(Kind.MARK, "the mark of a comment or a note");

    /** Remarks in one word or a few; common practice of scripts for camera and stage. */
    private static final Pattern CUE =
            Pattern.compile("(?i)(?:(?:a |long |short |brief )?(?:beat|pause|silence|breath)s?\\b.*"
                    + "|(?:close|wide|medium|long|two)[- ]?(?:up|shot)?|cu|ecu|ws|ms|b-?roll|gfx|sfx|vfx|vo|os|v\\.o\\.|o\\.s\\.|music|applause|"
                    + "laughter|silence|cut|fade|zoom|pan|slide|graphics?|on-?screen|cont(?:'d|inued)|inaudible|crosstalk)"
                    + "|\\d{1,2}(?::\\d\\d){1,2}(?:[.:]\\d{1,3})?|\\d{1,3} ?(?:s|secs?|seconds?|mins?|minutes?)");

    /** What an editor writes into a text that is not the author's; The Chicago Manual of Style, 17th edition, 13.50–13.62. */
    private static final Pattern EDITOR = Pattern.compile(
            "(?i)sic!?|\\.{3,4}|\u2026|(?:emphasis|italics) (?:added|mine|ours)|citation needed|illegible|(?:foot)?notes?:? .+");

    /** Numbers, single letters and signs, and what ties them; not one word. */
    private static final Pattern SIGNS =
            Pattern.compile("(?:(?:\\p{L}|\\p{N}{1,15})(?!\\p{L})|[^\\p{L}\\p{N}\\[\\]]){1,60}");

    private static final Pattern HALF_OPEN = Pattern.compile("\\[[^\\[\\]()]{1,20},[^\\[\\]()]{1,20}\\).*");
    private static final Pattern ION = Pattern.compile("(?:[A-Z][a-z]?\\d{0,2}){1,4}\\d?[+\u207a\u207b\u2212-]");
    private static final Pattern SOUNDS = Pattern.compile("\\S*[\u0250-\u02af\u02c8\u02cc\u02d0]\\S*");

    /** An index or a part of a name: no two words of a language one behind the other. */
    private static final Pattern TWO_WORDS = Pattern.compile(".*\\p{L}{2,} +\\p{L}{2,}.*");

    private static final Pattern KEY = Pattern.compile(
            "(?i)ctrl|control|shift|alt|alt ?gr|esc|escape|tab|cmd|command|enter|return|"
                    + "del|ins|backspace|caps ?lock|f\\d{1,2}|page ?(?:up|down)|pg ?(?:up|dn)|[\u2318\u2325\u21e7\u2303\u21b5]");
    private static final Pattern LABEL =
            Pattern.compile("[\\p{Lu}\\p{N}]\\S{0,20}(?: \\S{1,20}){0,3}\u2026?(?:\\.\\.\\.)?");
    private static final Pattern SMALL_LABEL =
            Pattern.compile("(?!.*ly$)\\p{Ll}[\\p{L}\\d]{0,15}(?: [\\p{L}\\d]{1,15}){0,2}");

    private static final String VERB = "\\b(?:press(?:es|ed|ing)?|hit(?:s|ting)?|click(?:s|ed|ing)?|tap(?:s|ped|ping)?|"
            + "typ(?:e|es|ed|ing)|push(?:es|ed|ing)?|hold(?:s|ing)?|held|choos(?:e|es|ing)|chose|select(?:s|ed|ing)?|"
            + "enter(?:s|ed|ing)?|us(?:e|es|ed|ing)|releas(?:e|es|ed|ing)|strik(?:e|es|ing)|pick(?:s|ed|ing)?|touch(?:es|ed|ing)?|open(?:s|ed|ing)?|"
            + "(?:go|goes|going|went|switch|switches|change) to)";
    private static final Pattern BEHIND_VERB = Pattern.compile(
            "(?i).*" + VERB
                    + "(?: (?:on|in|down|the|an?|key|keys|button|menu|option|icon|command|item|labelled|called|marked)){0,4} $");
    private static final Pattern RIGHT_BEHIND_VERB = Pattern.compile("(?i).*" + VERB + "(?: (?:on|the|down))? $");
    private static final Pattern CHAINED =
            Pattern.compile(".*\\](?: ?[,+/>\u2192&-] ?|,? (?:and|or|then|and then|plus) | )$");
    private static final Pattern BEFORE_CONTROL = Pattern.compile(
            "(?i)^ (?:keys?|buttons?|menus?|tabs?|icons?|commands?|options?|dialog(?:ue)?s?|fields?|switch(?:es)?|box(?:es)?|links?)\\b.*");

    /** The thing that is held or used comes behind the bracket: "hold [lift it] the cup". */
    private static final Pattern BEFORE_OBJECT = Pattern.compile(
            "(?i)^ (?:the|an?|this|that|these|those|my|your|his|her|its|our|their|it|them|both|all|one)\\b.*");

    private static final Pattern BEHIND_LIST = Pattern.compile(
            "(?i).*\\b(?:lists?|arrays?|vectors?|tuples?|sets?|sequences?|matri(?:x|ces)|concentrations?|units?)[,:]?(?: of| is| like| called)?,? $");
    private static final Pattern LISTED = Pattern.compile("(?:[^\\s,;]{1,20})?(?:[,;] ?[^\\s,;]{1,20}){0,20}");

    /** Words of a sentence that nobody writes alone as a remark. */
    private static final Set<String> FUNCTION_WORDS =
            Set.of(("i you he she it we they me him her us them my your his its our their this that "
                            + "these those who which is are was were be been am has have had do does did will would can could may might must shall "
                            + "should not and or but if as to of in for from with by the a an")
                    .split(" ", -1));

    private static final Pattern NAMED = Pattern.compile(
            "(?:the|an?|his|her|my|your|our|their|its|this|that) .{1,40}|\\p{Lu}\\S{0,20}(?: \\p{Lu}\\S{0,20}){0,2}");

    /** A word that is missing between an article and what it belongs to. */
    private static final Pattern BEHIND_ARTICLE =
            Pattern.compile("(?i)(?s).*\\b(?:the|an?|his|her|my|your|our|their|its) $");

    private static final Pattern SENTENCE_ENDS = Pattern.compile("(?s).*[.!?:\u2026][\"')\\]]{0,2} $");

    /** Words behind which a noun must come; others, such as "on", may stand at the end of what is said. */
    private static final Pattern BEFORE_NOUN = Pattern.compile(
            "(?is).*\\b(?:of|for|with|by|from|between|into|than|that|when|if|because|while|whether|about|against|among|during|without"
                    + "|within|towards?|until|since|via|is|are|was|were|to|told|asked|gave|called) $");

    /** Up to four words that may name somebody or something; a remark tells what to do, or how. */
    private static final Pattern NOUN = Pattern.compile(
            "(?i)(?!.*(?:ing|ly|s up|s down|s in|s out)$)(?!(?:cut|show|play|fade|zoom|cue|hold|pan|roll|point|look|smile|laugh|nod|wave"
                    + "|pause|lift|turn|both|all|insert|add)\\b(?! \\S+s$))[\\p{L}'-]{2,20}(?: [\\p{L}'-]{2,20}){0,3}");

    private static final Pattern ARTICLE = Pattern.compile(
            "(?i)(?:the|an?|this|that|these|those|his|her|my|your|our|their|its|each) .*|(?:both|all) (?:the )?\\S+s");

    /** "The logo appears". */
    private static final Pattern ACTING = Pattern.compile("\\S+ (?:\\S+ ){1,2}\\S+s");

    private static final Pattern BEFORE_CLAUSE = Pattern.compile(
            "(?is).*\\b(?:and|but|or|so|then|where|what|who|how|why|which|says?|said|thinks?|thought|knows?|knew|hopes?|believes?|as) $");

    private static final Pattern WHOSE = Pattern.compile(
            "(?:(?i:the|an?|my|your|our|their|his|her) [\\p{L}-]{2,20}|\\p{Lu}[\\p{L}-]{1,20}(?: \\p{Lu}[\\p{L}-]{1,20}){0,2})(?:'s|s')");
    private static final Pattern BEFORE_VERB = Pattern.compile(
            "(?s) (?:is|are|was|were|has|have|had|does|did|will|would|can|could|may|might|must|shall|should|says|said|wrote|writes"
                    + "|thinks|thought|told|asks|went|goes|came|comes|took|takes|made|makes|gave|found|knew|left|\\p{Ll}{2,}ed)\\b.*");

    /** How many characters before and behind a bracket may tell what it is. */
    private static final int NEAR = 300;

    private final NoteMarks marks;

    SquareBrackets(NoteMarks marks) {
        this.marks = marks;
    }

    /** Whether what begins at {@code open} is an interval that a round bracket closes: "[0, 1)". */
    static boolean isHalfOpen(String text, int open) {
        return HALF_OPEN
                .matcher(text.substring(open, Math.min(text.length(), open + 44)))
                .matches();
    }

    /** Whether a line is the text of a comment or a note, to which a mark before it belongs. */
    boolean isNote(String line) {
        return marks.isOwnText(line);
    }

    /**
     * What the bracket between two indices is.
     *
     * @param line the whole line
     * @param open index of the opening bracket
     * @param end index behind the closing one
     * @param behindRead whether the bracket before it in the line is read
     */
    Verdict of(MarkedSourceLine line, int open, int end, boolean behindRead) {
        String plain = line.plain();
        String inside = line.text().substring(open + 1, end - 1).strip();
        String before = plain.substring(Math.max(0, open - NEAR), open);
        String after = plain.substring(end, Math.min(plain.length(), end + NEAR));
        boolean cue = CUE.matcher(inside).matches();
        if (EDITOR.matcher(inside).matches()) {
            return new Verdict(Kind.REMARK, "an editor's mark, which is not read");
        }
        if (isJoined(before, after)) {
            return joined(inside, before, after, cue);
        }
        if (inside.matches("\\^\\S{1,20}") || (inside.matches("[a-z]{1,2}|\\d{1,3}") && isMark(inside, before))) {
            return MARK;
        }
        if (standsAlone(before, after)) {
            return ALONE;
        }
        boolean quoted = plain.substring(0, open).chars().filter(c -> c == '"').count() % 2 == 1;
        return cue ? REMARK : within(inside, before, after, behindRead, quoted);
    }

    private boolean isMark(String inside, String before) {
        return before.matches("(?s).*[.,;:!?\"')]") || marks.listed(inside);
    }

    private static boolean isJoined(String before, String after) {
        boolean left = before.matches("(?s).*[\\p{L}\\p{N}_)\\]]");
        return left || (!after.isEmpty() && Character.isLetterOrDigit(after.charAt(0)));
    }

    private Verdict joined(String inside, String before, String after, boolean cue) {
        boolean left = !before.isEmpty() && Character.isLetterOrDigit(before.charAt(before.length() - 1));
        if (left && inside.matches("\\^\\S{1,20}")) {
            return MARK;
        }
        boolean index = before.endsWith("]") || after.startsWith("[") || after.startsWith(" =");
        if (left && !index && marks.joined(inside)) {
            return MARK;
        }
        boolean read = inside.isEmpty() || !TWO_WORDS.matcher(inside).matches();
        boolean stage = cue && !inside.matches("[\\d:]+");
        return read && !stage
                ? new Verdict(Kind.READ, "it is joined to a word")
                : new Verdict(Kind.REMARK, "a remark, though no space stands before it");
    }

    /** Whether it is no part of a sentence: nothing, or a sentence's end, stands on both sides. */
    private static boolean standsAlone(String before, String after) {
        boolean begins = before.isBlank() || before.matches("(?s).*[.!?:\u2026][\"')\\]]{0,2} $|(?s).*\\] $");
        boolean ends = after.isBlank() || after.matches("(?s)[.!?]|[.!?]? [\"'(\\[]{0,2}[\\p{Lu}\\p{N}].*");
        return (begins && ends) || (before.isBlank() && after.isBlank());
    }

    private static Verdict within(String inside, String before, String after, boolean behindRead, boolean quoted) {
        if (!inside.isEmpty() && SIGNS.matcher(inside).matches()) {
            return new Verdict(Kind.READ, "it holds a number or a sign, not words");
        }
        if (ION.matcher(inside).matches() || SOUNDS.matcher(inside).matches()) {
            return new Verdict(Kind.READ, "it holds a formula or a sound");
        }
        if (isKey(inside, before, after, behindRead)) {
            return new Verdict(Kind.READ, "it names a key, a button or what is typed");
        }
        if (BEHIND_LIST.matcher(before).matches() && LISTED.matcher(inside).matches()) {
            return new Verdict(Kind.READ, "it holds the items of a list");
        }
        if (FUNCTION_WORDS.contains(Typography.lower(inside))
                || (quoted && NAMED.matcher(inside).matches())
                || (BEHIND_ARTICLE.matcher(before).matches() && inside.matches("\\p{Ll}{2,20}"))) {
            return new Verdict(Kind.READ, "words that the sentence needs");
        }
        if (isInserted(inside, before, after)) {
            return new Verdict(Kind.READ, "words that the sentence needs");
        }
        return inside.isEmpty() ? new Verdict(Kind.MARK, "there is nothing in the brackets") : REMARK;
    }

    /** Whether an editor put a noun where the speaker said "he" or "it": "[The team] went on", "when [Ann Lee] left". */
    private static boolean isInserted(String inside, String before, String after) {
        boolean begins = before.isBlank() || SENTENCE_ENDS.matcher(before).matches();
        boolean verb = BEFORE_VERB.matcher(after).matches();
        boolean place = begins
                || BEFORE_NOUN.matcher(before).matches()
                || (verb && BEFORE_CLAUSE.matcher(before).matches());
        if (WHOSE.matcher(inside).matches()) {
            return after.matches("(?s) \\p{Ll}.*");
        }
        if (!place || !NOUN.matcher(inside).matches()) {
            return false;
        }
        boolean article =
                ARTICLE.matcher(inside).matches() && !ACTING.matcher(inside).matches();
        return article ? !begins || after.matches("(?s) \\p{Ll}.*") : verb;
    }

    private static boolean isKey(String inside, String before, String after, boolean behindRead) {
        boolean label = LABEL.matcher(inside).matches();
        boolean key = KEY.matcher(inside).matches();
        boolean few = label || SMALL_LABEL.matcher(inside).matches();
        return key
                || (label
                        && (BEHIND_VERB.matcher(before).matches()
                                || (behindRead && CHAINED.matcher(before).matches())))
                || (few
                        && RIGHT_BEHIND_VERB.matcher(before).matches()
                        && (label || !BEFORE_OBJECT.matcher(after).matches()))
                || (few && BEFORE_CONTROL.matcher(after).matches());
    }
}
