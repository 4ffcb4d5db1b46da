package org.bookholder.script.pronounce;

import java.util.LinkedHashSet;
import java.util.Set;
import org.bookholder.script.normalize.Typography;

/** Other ways to spell the same sounds. */
final class Respellings {
    private static final String[][] SAME = {
        {"ph", "f"},
        {"f", "ph"},
        {"ck", "k"},
        {"k", "c"},
        {"c", "k"},
        {"k", "ck"},
        {"y", "i"},
        {"i", "y"},
        {"ie", "y"},
        {"y", "ie"},
        {"y", "ey"},
        {"ey", "y"},
        {"ei", "ie"},
        {"ei", "i"},
        {"ae", "e"},
        {"oe", "e"},
        {"ou", "o"},
        {"our", "or"},
        {"isation", "ization"},
        {"ise", "ize"},
        {"ising", "izing"},
        {"s", "z"},
        {"z", "s"},
        {"th", "t"},
        {"dt", "t"},
        {"sz", "s"},
        {"kh", "k"},
        {"gh", "g"},
        {"aa", "a"},
        {"ee", "ea"},
        {"ea", "ee"},
        {"oo", "u"},
        {"u", "oo"},
        {"ue", "u"},
        {"re", "er"},
        {"w", "v"},
        {"j", "y"},
        {"x", "cks"},
        {"tz", "ts"},
        {"sch", "sh"},
        {"tsch", "ch"},
        {"'s", "s"},
        {"'", ""},
        {"-", ""}
    };

    private Respellings() {}

    /** The spellings that differ from {@code word} by one such change, without {@code word} itself. */
    static Set<String> of(String word) {
        Set<String> spellings = new LinkedHashSet<>();
        for (String[] pair : SAME) {
            for (int at = word.indexOf(pair[0]); at >= 0; at = word.indexOf(pair[0], at + 1)) {
                spellings.add(word.substring(0, at) + pair[1] + word.substring(at + pair[0].length()));
            }
        }
        for (int i = 0; i < word.length(); i++) {
            char c = word.charAt(i);
            boolean twice = i > 0 && word.charAt(i - 1) == c;
            if (twice) {
                spellings.add(word.substring(0, i) + word.substring(i + 1));
            } else if ("bdfglmnprst".indexOf(c) >= 0) {
                spellings.add(word.substring(0, i) + c + word.substring(i));
            }
        }
        spellings.add(word.endsWith("e") ? word.substring(0, word.length() - 1) : word + "e");
        spellings.add(Typography.withoutMarks(word));
        spellings.remove(word);
        spellings.remove("");
        return spellings;
    }
}
