package org.bookholder.script.pronounce;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SoundingTest {
    /** The CMU Pronouncing Dictionary, as Debian's pocketsphinx-en-us brings it. */
    private static final Path DICTIONARY = Path.of("/usr/share/pocketsphinx/model/en-us/cmudict-en-us.dict");

    private static final Pattern WORD = Pattern.compile("(?<![\\w'])[a-z]+(?:'[a-z]+)?(?![\\w'])");

    /** Counts as the CMU Pronouncing Dictionary has them (one of them where it has several). */
    @ParameterizedTest
    @CsvSource({
        "business, 2",
        "chocolate, 2",
        "wednesday, 2",
        "comfortable, 4",
        "every, 3",
        "different, 3",
        "family, 3",
        "february, 4",
        "temperature, 4",
        "fire, 1",
        "people, 2",
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
    @CsvSource({"line's, 1", "bus's, 2", "bridge's, 2", "camera's, 3"})
    void aPossessiveHasASyllableMoreOnlyAfterAHiss(String word, int syllables) {
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

    /** The most frequent words of this project's own English texts: 99.1 % are counted as in the dictionary, which has names, too. */
    @Test
    void countsTwoThousandFrequentWordsAsTheDictionaryDoes() throws IOException {
        Needs.file(DICTIONARY, "pocketsphinx-en-us");
        Map<String, Set<Integer>> dictionary = dictionary();
        Map<String, Integer> times = new HashMap<>();
        for (Path text : texts()) {
            WORD.matcher(Files.readString(text).toLowerCase(Locale.ROOT).replaceAll("`[^`]*`", ""))
                    .results()
                    .forEach(found -> times.merge(found.group(), 1, Integer::sum));
        }
        List<String> frequent = times.keySet().stream()
                .filter(dictionary::containsKey)
                .sorted(Comparator.comparing((String word) -> -times.getOrDefault(word, 0))
                        .thenComparing(Comparator.naturalOrder()))
                .limit(2000)
                .toList();
        List<String> wrong = frequent.stream()
                .filter(word -> !dictionary.getOrDefault(word, Set.of()).contains(Sounding.syllables(word)))
                .toList();
        assertThat(frequent).hasSize(2000);
        assertThat(wrong).as("%s", wrong).hasSizeLessThanOrEqualTo(30);
    }

    private static List<Path> texts() throws IOException {
        List<Path> texts =
                new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md"), Path.of("CHANGELOG.md")));
        for (String folder : List.of("docs", "demo-scripts", "models")) {
            try (Stream<Path> files = Files.walk(Path.of(folder))) {
                files.filter(file -> file.toString().endsWith(".md")).forEach(texts::add);
            }
        }
        return texts;
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
