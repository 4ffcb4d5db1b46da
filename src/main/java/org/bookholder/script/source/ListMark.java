package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.script.model.ScriptWord;
import org.jspecify.annotations.Nullable;

/**
 * The bullet or number before an item of a list. It is shown; a number may be read or left out.
 *
 * @param shown the bullet, or the number with its stop
 * @param number the number; -1 for a bullet
 */
record ListMark(String shown, int number) {
    private static final ListMark BULLET = new ListMark("•", -1);
    private static final Pattern BULLETED = Pattern.compile("[-*•‣◦▪]\\s+(?=\\S)");
    private static final Pattern NUMBERED = Pattern.compile("(\\d{1,2})([.)])\\s+(?=[^\\s\\d])");

    /** How many forms of the first word are allowed behind a number that is read. */
    private static final int FORMS_BEHIND_NUMBER = 2;

    static ListMark bullet() {
        return BULLET;
    }

    static ListMark number(int number, String stop) {
        return new ListMark(number + stop, number);
    }

    /**
     * A mark at the start of a line of plain text.
     *
     * @param mark the mark
     * @param end index at which the item's text begins
     */
    record Found(ListMark mark, int end) {}

    static @Nullable Found at(String line) {
        Matcher m = BULLETED.matcher(line);
        if (m.lookingAt()) {
            return new Found(BULLET, m.end());
        }
        m = NUMBERED.matcher(line);
        return m.lookingAt() ? new Found(number(Integer.parseInt(m.group(1)), m.group(2)), m.end()) : null;
    }

    /**
     * An item's first word with the mark before it.
     *
     * @param readings how its number may be read
     */
    ScriptWord before(ScriptWord word, List<List<String>> readings) {
        Set<List<String>> forms = new LinkedHashSet<>(word.spoken());
        for (List<String> reading : readings) {
            word.spoken().stream().limit(FORMS_BEHIND_NUMBER).forEach(behind -> {
                List<String> both = new ArrayList<>(reading);
                both.addAll(behind);
                forms.add(both);
            });
        }
        return new ScriptWord(shown + " " + word.written(), List.copyOf(forms), word.emphasis());
    }
}
