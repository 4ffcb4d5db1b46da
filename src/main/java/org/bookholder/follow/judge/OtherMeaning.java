package org.bookholder.follow.judge;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.bookholder.script.pronounce.SoundAlike;

/**
 * Words of one kind that mean something else, however alike they sound: thirty and fifty, green and brown, increase and
 * decrease. A learner who hears one for the other does the wrong thing, so what sounds nearly the same is no excuse here.
 *
 * <p>The list is ours, from memory. Left out are words with other uses that ears take for something else all the time, such as
 * "up" and "may".
 */
final class OtherMeaning {
    /** How sure the open ear must be of a word to be believed against the script ear. */
    static final double FIRM = 0.9;

    /** How different, by {@link SoundAlike}, two words of one kind must sound for that; "thirteen" and "thirty" don't. */
    static final double NEARLY_THE_SAME = 0.3;

    /** One kind in each row. */
    private static final String KINDS = """
            zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen \
            eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred thousand million billion
            first second third fourth fifth sixth seventh eighth ninth tenth last
            half quarter
            monday tuesday wednesday thursday friday saturday sunday
            january february april june july august september october november december
            red orange yellow green blue purple pink brown black white grey
            north south east west
            left right
            plus minus
            more less
            above below
            before after
            inside outside
            upper lower
            top bottom
            front back
            hot cold
            open close
            opened closed
            push pull
            always never
            add remove
            input output
            import export
            internal external
            enable disable
            enabled disabled
            positive negative
            maximum minimum
            increase decrease
            increases decreases
            increased decreased
            clockwise anticlockwise counterclockwise
            """;

    private static final Map<String, Integer> KIND = kinds();

    private OtherMeaning() {}

    private static Map<String, Integer> kinds() {
        Map<String, Integer> kinds = new HashMap<>();
        List<String> rows = KINDS.lines().toList();
        for (int row = 0; row < rows.size(); row++) {
            for (String word : rows.get(row).split(" ", -1)) {
                kinds.put(word, row);
            }
        }
        return Map.copyOf(kinds);
    }

    /**
     * Whether what was heard differs from every form of a word, and from one of them only by words of the same kind.
     *
     * @param forms each in words
     * @param said with spaces, lower case
     */
    static boolean heardFor(List<List<String>> forms, String said) {
        List<String> heard = Arrays.asList(said.split(" ", -1));
        return !forms.contains(heard) && forms.stream().anyMatch(form -> differ(form, heard));
    }

    /** Whether two different words are of one kind. */
    static boolean areOfOneKind(String one, String other) {
        Integer kind = KIND.get(one);
        return kind != null && !one.equals(other) && kind.equals(KIND.get(other));
    }

    /** Whether a word is part of a whole number. */
    static boolean isNumber(String word) {
        return Objects.equals(KIND.get(word), KIND.get("one"));
    }

    private static boolean differ(List<String> form, List<String> heard) {
        if (form.size() != heard.size()) {
            return false;
        }
        for (int i = 0; i < form.size(); i++) {
            String written = form.get(i).toLowerCase(Locale.ROOT);
            Integer kind = KIND.get(written);
            if (!written.equals(heard.get(i)) && (kind == null || !kind.equals(KIND.get(heard.get(i))))) {
                return false;
            }
        }
        return true;
    }
}
