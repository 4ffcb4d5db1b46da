package org.bookholder.bench;

import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Text of made-up words whose frequencies fall off with their rank as those of a language do (Zipf 1949). */
final class ZipfText {
    private static final int VOCABULARY = 8_000;

    private final double[] cumulative = new double[VOCABULARY];
    private final Random random;

    ZipfText(Random random) {
        this.random = random;
        double sum = 0;
        for (int rank = 0; rank < VOCABULARY; rank++) {
            sum += 1.0 / (rank + 1);
            cumulative[rank] = sum;
        }
    }

    /** So many words with spaces between them. */
    String words(int count) {
        return IntStream.range(0, count).mapToObj(i -> word()).collect(Collectors.joining(" "));
    }

    private String word() {
        double drawn = random.nextDouble() * cumulative[VOCABULARY - 1];
        int low = 0;
        int high = VOCABULARY - 1;
        while (low < high) {
            int middle = (low + high) / 2;
            if (cumulative[middle] < drawn) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return letters(low);
    }

    private static String letters(int rank) {
        String last = String.valueOf((char) ('a' + rank % 26));
        return rank < 26 ? last : letters(rank / 26) + last;
    }
}
