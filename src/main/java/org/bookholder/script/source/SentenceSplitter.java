package org.bookholder.script.source;

import com.ibm.icu.text.BreakIterator;
import com.ibm.icu.util.ULocale;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.bookholder.script.normalize.Typography;

/**
 * Finds where sentences end: at Unicode's sentence boundaries (UAX #29, by ICU), except after abbreviations and
 * initials. ICU's own list of abbreviations is not used, because it contains words that often end a sentence ("job.",
 * "up.").
 */
final class SentenceSplitter {
    private static final Set<String> NEVER_LAST = words("""
            mr mrs ms messrs dr prof mt sgt capt lt col gen rev hon gov sen rep pres fr e.g i.e eg ie vs cf approx ca viz
            al incl""");
    private static final Set<String> BEFORE_NUMBER = words("""
            no nos nr num p pp ch fig figs vol sec art eq ed par ver v jan feb mar apr jun jul aug sep sept oct nov dec""");

    /** Abbreviations that may end a sentence or precede a name. */
    private static final Set<String> BEFORE_NAME =
            words("st ave rd blvd sq u.s u.k e.u u.n jr sr inc ltd co corp bros ft");

    private static final Set<String> SENTENCE_STARTS = words("""
            the a an it this that these those we you he she they i but and so in if then now when for there what as at after
            before by do don't let's let here how my our your his her its their no not on once one or some to use with who
            why where while next first""");
    private static final Pattern OPENING = Pattern.compile("^[^\\p{L}\\p{N}]{1,9}");

    private final BreakIterator breaks;

    SentenceSplitter(String language) {
        this.breaks = BreakIterator.getSentenceInstance(ULocale.forLanguageTag(language));
    }

    private static Set<String> words(String list) {
        return Set.of(list.split("\\s+", -1));
    }

    /** Ends of the sentences of {@code line}, in order; the last is its length. */
    List<Integer> ends(MarkedSourceLine line) {
        String text = line.plain();
        List<Integer> ends = new ArrayList<>();
        breaks.setText(text);
        int start = 0;
        for (int end = breaks.next(); end != BreakIterator.DONE; end = breaks.next()) {
            if (end == text.length() || (isEnd(text, start, end) && !line.isWhole(end))) {
                ends.add(end);
                start = end;
            }
        }
        return ends;
    }

    private static boolean isEnd(String text, int start, int end) {
        String sentence = text.substring(start, end).stripTrailing();
        if (!sentence.endsWith(".")) {
            return !goesOn(text, start + sentence.length(), end);
        }
        String last = sentence.substring(sentence.lastIndexOf(' ') + 1, sentence.length() - 1);
        last = OPENING.matcher(last).replaceFirst("");
        String rest = OPENING.matcher(text.substring(end, Math.min(text.length(), end + 40)))
                .replaceFirst("");
        int space = rest.indexOf(' ');
        String next = space < 0 ? rest : rest.substring(0, space);
        if (next.isEmpty()) {
            return true;
        }
        String abbreviation = Typography.lower(last);
        boolean number = Character.isDigit(next.charAt(0));
        if (NEVER_LAST.contains(abbreviation) || (number && BEFORE_NUMBER.contains(abbreviation))) {
            return false;
        }
        boolean startsSentence = SENTENCE_STARTS.contains(Typography.lower(next).replaceAll("[^a-z']", ""));
        boolean name = BEFORE_NAME.contains(abbreviation) || isInitial(sentence, last);
        return startsSentence || !name;
    }

    /**
     * Whether a sentence goes on behind a question or an exclamation mark: inside an address, "a?b=c", and in small letters
     * behind a quotation, {@code "Why?" she said}, or behind a mark that stands by itself, "the ? key".
     *
     * @param last index behind the last character that is no space
     * @param end index of what follows
     */
    private static boolean goesOn(String text, int last, int end) {
        char mark = text.charAt(last - 1);
        char next = text.charAt(end);
        boolean asks = mark == '?' || mark == '!';
        if (last == end) {
            return asks && (Character.isLetterOrDigit(next) || "=&/%#_+-".indexOf(next) >= 0);
        }
        boolean alone = asks && last > 1 && text.charAt(last - 2) == ' ';
        return (alone || "\"')]".indexOf(mark) >= 0) && Character.isLowerCase(next);
    }

    /** Whether a sentence ends in an initial: "J. Smith", but not "vitamin C." or "and so did I." */
    private static boolean isInitial(String sentence, String last) {
        if (last.length() != 1 || !Character.isUpperCase(last.charAt(0)) || last.equals("I")) {
            return false;
        }
        String before = sentence.substring(0, sentence.length() - 2).stripTrailing();
        String word =
                OPENING.matcher(before.substring(before.lastIndexOf(' ') + 1)).replaceFirst("");
        return word.isEmpty() || Character.isUpperCase(word.charAt(0));
    }
}
