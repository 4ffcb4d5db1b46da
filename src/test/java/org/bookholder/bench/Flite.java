package org.bookholder.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;

/**
 * Voices of the Debian package flite, reading the demo's lessons. They say each word in its preferred spoken form, so that
 * what they read is known.
 *
 * @param voice a name that {@code flite -lv} lists
 * @param stretch how much longer than usual each sound lasts
 */
record Flite(String voice, double stretch) {
    private static final int FEWEST_WORDS = 4;

    /** The lines of the demo's lessons in {@code folder}, read by this voice. */
    Voice lessons(Path folder) {
        return lessons(folder, UnaryOperator.identity());
    }

    /** The same with each line changed before it is read. */
    Voice lessons(Path folder, UnaryOperator<String> changed) {
        List<Utterance> utterances = new ArrayList<>();
        for (int lesson = 1; lesson <= 3; lesson++) {
            for (ScriptLine line : lines(folder.resolve("lesson-" + lesson + ".md"))) {
                if (line.words().size() >= FEWEST_WORDS && standsForItself(line)) {
                    ScriptLine read = alone(changed.apply(line.text())).orElseThrow();
                    utterances.add(new Utterance(read.text(), say(spoken(read))));
                }
            }
        }
        return new Voice(name(), utterances);
    }

    /** For people. */
    String name() {
        return String.format(Locale.ROOT, "%s x%.2f", voice, stretch);
    }

    /** The sound of a text, trimmed. */
    short[] say(String text) {
        try {
            Path file = Files.createTempFile("said", ".wav");
            try {
                Decoder.output(
                        "flite",
                        "-voice",
                        voice,
                        "--setf",
                        String.format(Locale.ROOT, "duration_stretch=%.2f", stretch),
                        "-t",
                        text,
                        "-o",
                        file.toString());
                return Sound.trimmed(Decoder.wav(file));
            } finally {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<ScriptLine> lines(Path file) {
        try {
            return ScriptReader.read(file).lines();
        } catch (ProblemException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Whether the line, as it is shown, is spoken as it was; markup that says otherwise is not shown. */
    private static boolean standsForItself(ScriptLine line) {
        return alone(line.text())
                .filter(again -> forms(again).equals(forms(line)))
                .isPresent();
    }

    /** A text as the only line of a script; nothing if it becomes more or none. */
    private static Optional<ScriptLine> alone(String text) {
        try {
            List<ScriptLine> lines = ScriptReader.parse(
                            "---\nlines: as-written\n---\n" + text, "line.md", Format.MARKDOWN)
                    .lines();
            return lines.size() == 1 ? Optional.of(lines.get(0)) : Optional.empty();
        } catch (ProblemException e) {
            return Optional.empty();
        }
    }

    private static List<List<List<String>>> forms(ScriptLine line) {
        return line.words().stream().map(ScriptWord::spoken).toList();
    }

    private static String spoken(ScriptLine line) {
        return IntStream.range(0, line.words().size())
                .mapToObj(i -> String.join(" ", line.words().get(i).spoken().get(0)))
                .collect(Collectors.joining(" "));
    }
}
