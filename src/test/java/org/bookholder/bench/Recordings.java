package org.bookholder.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.zip.GZIPInputStream;

/** Readings by people, with their texts, from Debian packages. They are used in place and not copied. */
final class Recordings {
    /**
     * A professional reader's prompts for telephones, from the Debian packages asterisk-core-sounds-en (texts) and
     * asterisk-core-sounds-en-g722 (16 kHz, ITU-T G.722); CC BY-SA 3.0.
     */
    static final Path PROMPTS = Path.of("/usr/share/asterisk/sounds/en_US_f_Allison");

    private static final Path PROMPT_TEXTS = Path.of("/usr/share/doc/asterisk-core-sounds-en/core-sounds-en.txt.gz");

    /**
     * A volunteer's reading of Jane Austen, Sense and Sensibility (public domain), five clips with their transcription,
     * from the Debian package pocketsphinx-testdata.
     */
    static final Path NOVEL = Path.of("/usr/share/pocketsphinx/test/data/librivox");

    private static final int FEWEST_WORDS = 5;
    private static final int MOST_WORDS = 30;

    private Recordings() {}

    /** The files that a bench's arguments name, with spaces between them; the demo's reading if there are none. */
    static List<Path> namedOrDemo(String[] args) {
        return args.length == 0
                ? List.of(Path.of(System.getProperty("bookholder.home", "")).resolve("demo-scripts/lesson-1.wav"))
                : Arrays.stream(String.join(" ", args).split(" ", -1))
                        .map(Path::of)
                        .toList();
    }

    /** The prompts of 5 to 30 words, in the order of their list, each text once. */
    static Voice prompts() {
        List<String> said = new ArrayList<>();
        List<Path> files = new ArrayList<>();
        Set<String> texts = new HashSet<>();
        for (String row : lines(PROMPT_TEXTS)) {
            int colon = row.indexOf(':');
            if (row.startsWith(";") || colon < 0) {
                continue;
            }
            Path file = PROMPTS.resolve(row.substring(0, colon) + ".g722");
            String text = row.substring(colon + 1).trim().replaceAll("\\s+", " ");
            int words = text.split(" ", -1).length;
            // Brackets hold remarks, stars and hashes are keys whose names are said in several ways, and three full
            // stops stand for a sentence's other half.
            if (words >= FEWEST_WORDS
                    && words <= MOST_WORDS
                    && !text.matches(".*([\\[(*#]|\\.\\.).*")
                    && Files.exists(file)
                    && texts.add(plain(text))) {
                said.add(text);
                files.add(file);
            }
        }
        List<short[]> sounds = Decoder.g722(files);
        List<Utterance> utterances = new ArrayList<>();
        for (int i = 0; i < files.size(); i++) {
            utterances.add(new Utterance(said.get(i), Sound.trimmed(sounds.get(i))));
        }
        return new Voice("prompts", utterances);
    }

    /** The five clips of the novel. */
    static Voice novel() {
        List<Utterance> utterances = new ArrayList<>();
        try {
            for (String row : Files.readAllLines(NOVEL.resolve("transcription"), StandardCharsets.UTF_8)) {
                String text = row.replaceAll("</?s>|\\(.*", "").trim();
                Path file = NOVEL.resolve(row.replaceAll(".*\\((.*)\\)", "$1") + ".wav");
                utterances.add(new Utterance(text, Sound.trimmed(Decoder.wav(file))));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Voice("novel", utterances);
    }

    private static String plain(String text) {
        return text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9 ]", "");
    }

    private static List<String> lines(Path compressed) {
        try (BufferedReader in = new BufferedReader(
                new InputStreamReader(new GZIPInputStream(Files.newInputStream(compressed)), StandardCharsets.UTF_8))) {
            return in.lines().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
