package org.bookholder.script.pronounce;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SoundingTest {
    /** The CMU Pronouncing Dictionary, as Debian's pocketsphinx-en-us brings it. */
    private static final Path DICTIONARY = Path.of("/usr/share/pocketsphinx/model/en-us/cmudict-en-us.dict");

    /** Counts as the CMU Pronouncing Dictionary has them (one of them where it has several). */
    @ParameterizedTest
    @CsvSource({
        "australian, 3",
        "platypus, 3",
        "seemingly, 3",
        "reptilian, 3",
        "creature, 2",
        "vegetable, 3",
        "camera, 3",
        "interesting, 4",
        "area, 3",
        "poem, 2",
        "hour, 1",
        "queue, 1",
        "rhythm, 2",
        "database, 3",
        "algorithm, 4"
    })
    void countsSyllables(String word, int syllables) {
        assertThat(Sounding.syllables(word)).isEqualTo(syllables);
    }

    @ParameterizedTest
    @CsvSource({"she, S", "sea, s", "shells, S", "thick, T", "spoke, sp", "chin, C", "knee, n", "phone, f", "wheel, w"})
    void findsHowWordsBegin(String word, String onset) {
        assertThat(Sounding.onset(word)).isEqualTo(onset);
    }

    /** Over running text the count must come out, for it is what readability is made of. */
    @Test
    void countsRunningTextAsTheDictionaryDoes() throws IOException, ProblemException {
        Needs.file(DICTIONARY, "pocketsphinx-en-us");
        Map<String, Set<Integer>> dictionary = dictionary();
        int words = 0;
        int right = 0;
        int counted = 0;
        int nearest = 0;
        for (String word : demoWords()) {
            Set<Integer> counts = dictionary.getOrDefault(word, Set.of());
            if (!counts.isEmpty()) {
                int own = Sounding.syllables(word);
                words++;
                counted += own;
                right += counts.contains(own) ? 1 : 0;
                nearest += counts.contains(own) ? own : counts.iterator().next();
            }
        }
        assertThat(words).isGreaterThan(1000);
        assertThat((double) right / words).isGreaterThan(0.97);
        assertThat((double) counted / nearest).isBetween(0.99, 1.01);
    }

    private static List<String> demoWords() throws ProblemException {
        List<String> words = new ArrayList<>();
        for (int lesson = 1; lesson <= 3; lesson++) {
            ScriptReader.read(Path.of("demo-scripts/lesson-" + lesson + ".md")).lines().stream()
                    .flatMap(line -> line.words().stream())
                    .forEach(word -> words.addAll(word.spoken().get(0)));
        }
        return words;
    }

    private static Map<String, Set<Integer>> dictionary() throws IOException {
        Map<String, Set<Integer>> counts = new HashMap<>();
        for (String row : Files.readAllLines(DICTIONARY, StandardCharsets.UTF_8)) {
            String[] phones = row.strip().split("\\s+", -1);
            int syllables = 0;
            for (int i = 1; i < phones.length; i++) {
                syllables += "AEIOU".indexOf(phones[i].charAt(0)) >= 0 ? 1 : 0;
            }
            counts.computeIfAbsent(phones[0].replaceAll("\\(\\d+\\)$", ""), w -> new HashSet<>())
                    .add(syllables);
        }
        return counts;
    }
}
