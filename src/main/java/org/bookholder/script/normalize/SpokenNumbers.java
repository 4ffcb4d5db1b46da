package org.bookholder.script.normalize;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** English number words back to digits, as far as they go: "twelve hundred and fifty" is 1250, "oh" is 0, "double four" is 44. */
final class SpokenNumbers {
    private static final Map<String, Integer> SMALL = small();
    private static final Map<String, Integer> TENS =
            tens("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety");
    private static final Map<String, Long> SCALES =
            Map.of("thousand", 1_000L, "million", 1_000_000L, "billion", 1_000_000_000L);
    private static final Map<String, Integer> REPEATED = Map.of("double", 2, "triple", 3);

    private final List<String> said;
    private int at;

    private static Map<String, Integer> small() {
        String words = "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen"
                + " sixteen seventeen eighteen nineteen";
        Map<String, Integer> small = new HashMap<>();
        for (String word : words.split(" ", -1)) {
            small.put(word, small.size());
        }
        List.of("oh", "o", "nought").forEach(zero -> small.put(zero, 0));
        return Map.copyOf(small);
    }

    private static Map<String, Integer> tens(String... words) {
        Map<String, Integer> tens = new HashMap<>();
        for (String word : words) {
            tens.put(word, 10 * (tens.size() + 2));
        }
        return Map.copyOf(tens);
    }

    private SpokenNumbers(List<String> said, int from) {
        this.said = said;
        at = from;
    }

    /**
     * Digits that were said.
     *
     * @param end index behind the last word
     */
    record Said(String digits, int end) {}

    /** The number that begins with a word, as long as it may be; empty if none does. */
    static Optional<Said> at(List<String> said, int from) {
        return new SpokenNumbers(said, from).number();
    }

    private Optional<Said> number() {
        Integer times = REPEATED.get(word());
        if (times != null) {
            at++;
            Integer digit = SMALL.get(word());
            return digit == null || digit > 9
                    ? Optional.empty()
                    : Optional.of(new Said(digit.toString().repeat(times), at + 1));
        }
        if (Integer.valueOf(0).equals(SMALL.get(word()))) {
            return Optional.of(new Said("0", at + 1));
        }
        int begin = at;
        long value = cardinal();
        return at == begin ? Optional.empty() : Optional.of(new Said(Long.toString(value), at));
    }

    private long cardinal() {
        long total = 0;
        long scale = Long.MAX_VALUE;
        while (true) {
            int before = at;
            if (total > 0 && word().equals("and")) {
                at++;
            }
            int begin = at;
            long part = hundreds();
            Long next = SCALES.get(word());
            boolean fits = at > begin && (next == null ? scale > part : next < scale);
            if (!fits) {
                at = before;
                return total;
            }
            if (next == null) {
                return total + part;
            }
            at++;
            total += part * next;
            scale = next;
        }
    }

    /** Up to 9,999, where it is said in hundreds; nothing is taken if there is no number. */
    private long hundreds() {
        boolean article = word().equals("a") && (word(1).equals("hundred") || SCALES.containsKey(word(1)));
        int begin = at;
        long value = article ? 1 : tens();
        at += article ? 1 : 0;
        if (at > begin && value > 0 && word().equals("hundred")) {
            at++;
            int behind = at;
            if (word().equals("and")) {
                at++;
            }
            int rest = at;
            long small = tens();
            at = at == rest ? behind : at;
            return 100 * value + small;
        }
        return value;
    }

    /** Up to 99, without zero; nothing is taken if there is no number. */
    private long tens() {
        Integer small = SMALL.get(word());
        if (small != null && small > 0) {
            at++;
            return small;
        }
        Integer tens = TENS.get(word());
        if (tens == null) {
            return 0;
        }
        at++;
        Integer unit = SMALL.get(word());
        if (unit == null || unit < 1 || unit > 9) {
            return tens;
        }
        at++;
        return (long) tens + unit;
    }

    private String word() {
        return word(0);
    }

    private String word(int ahead) {
        return at + ahead < said.size() ? said.get(at + ahead) : "";
    }
}
