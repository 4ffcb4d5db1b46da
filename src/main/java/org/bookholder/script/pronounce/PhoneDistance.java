package org.bookholder.script.pronounce;

import java.util.Set;

/** How different two strings of phones sound: a weighted edit distance, about 1 for one clearly different consonant. */
final class PhoneDistance {
    private static final Set<String> CLOSE = Set.of(
            "pb", "td", "kg", "fv", "sz", "SZ", "CJ", "Ts", "Tf", "Tt", "Td", "SC", "ZJ", "sS", "zZ", "mn", "nN", "lr",
            "vw", "vb", "iI", "Ie", "ea", "aA", "AV", "Uu", "UV", "eV", "IV", "ou", "oA", "aV", "Ee", "Ei", "WA", "Wo",
            "Oo", "YI", "YA", "iy", "uw", "oV");

    private PhoneDistance() {}

    static double swap(char a, char b) {
        if (a == b) {
            return 0;
        }
        if (CLOSE.contains("" + a + b) || CLOSE.contains("" + b + a)) {
            return 0.3;
        }
        boolean vowel = Phones.isVowel(a);
        return vowel != Phones.isVowel(b) ? 1.4 : vowel ? 0.6 : 1;
    }

    static double drop(char phone) {
        return phone == 'V' || phone == 'I' || phone == 'h' ? 0.4 : Phones.isVowel(phone) ? 0.7 : 0.9;
    }

    /**
     * Distances between {@code candidate} and each prefix of {@code phones} from {@code start} on; the one at index j
     * is j phones long.
     */
    static double[] toBeginnings(String candidate, String phones, int start) {
        int length = Math.min(phones.length() - start, candidate.length() + 2);
        double[] row = new double[length + 1];
        for (int j = 1; j <= length; j++) {
            row[j] = row[j - 1] + drop(phones.charAt(start + j - 1));
        }
        for (int i = 1; i <= candidate.length(); i++) {
            char c = candidate.charAt(i - 1);
            double diagonal = row[0];
            row[0] += drop(c);
            for (int j = 1; j <= length; j++) {
                char p = phones.charAt(start + j - 1);
                double swapped = diagonal + swap(c, p);
                diagonal = row[j];
                row[j] = Math.min(swapped, Math.min(row[j] + drop(c), row[j - 1] + drop(p)));
            }
        }
        return row;
    }

    static double between(String a, String b) {
        double[] row = toBeginnings(a, b, 0);
        double rest = 0;
        for (int j = row.length - 1; j < b.length(); j++) {
            rest += drop(b.charAt(j));
        }
        return row[row.length - 1] + rest;
    }
}
