package org.bookholder.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.pace.PaceLog;
import org.bookholder.pace.PaceRules;
import org.bookholder.pace.RunningTime;
import org.bookholder.pace.TextLength;
import org.bookholder.pace.WordCounts;
import org.bookholder.pace.WordTally;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.session.LineNotes;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.timing.StreamTime;

/**
 * How far the time that is foretold for the second half of a reading is from the time that it took, once the first half is known.
 *
 * <p>Argument: a folder of readers, each a folder with sound files and {@code transcripts.tsv}: file, seconds, text, with a first line that
 * names these. A file holds a sentence, or a whole text; that is followed by the program, which then knows when its lines were read.
 *
 * @param line the text of a line, with a line break behind it if a paragraph ends there
 * @param seconds how long it was read: of a sentence by its voice, of a line of a text up to the next line
 */
record RunningTimeError(String line, double seconds) {
    private static final Path MODEL = Path.of("models/vosk-model-en-us");
    private static final int TARGET = 100;
    private static final int FORMER_PRIOR = 100;
    private static final int WHOLE_TEXT = 100;
    private static final double CLOSE = 5;

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, ProblemException {
        int close = 0;
        int readings = 0;
        System.out.println("Errors in %; all but the last of the second half of the reading");
        System.out.println("reading                  words |  at own pace |  formerly |        now | whole reading");
        try (Stream<Path> readers = Files.list(Path.of(args[0]))) {
            for (Path reader : readers.filter(Files::isDirectory).sorted().toList()) {
                List<RunningTimeError> sentences = new ArrayList<>();
                for (String row : rows(reader.resolve("transcripts.tsv"))) {
                    String[] parts = row.split("\t", -1);
                    Path file = reader.resolve(parts[0]);
                    if (parts[2].split("\\s+", -1).length > WHOLE_TEXT) {
                        readings++;
                        close += print(parts[0], text(whole(reader, parts), Decoder.file(file))) ? 1 : 0;
                    } else {
                        int[] voice = Sound.voice(Decoder.file(file));
                        sentences.add(new RunningTimeError(parts[2], (voice[1] - voice[0]) / (double) Sound.RATE));
                    }
                }
                if (!sentences.isEmpty()) {
                    readings++;
                    close += print(reader.getFileName().toString(), sentences) ? 1 : 0;
                }
            }
        }
        System.out.println("within " + CLOSE + " %: " + close + " of " + readings);
    }

    /** A text with its paragraphs, if it lies beside its reading as {@code NAME.script.txt}. */
    private static String whole(Path reader, String... parts) throws IOException {
        try (Stream<Path> files = Files.list(reader)) {
            Optional<Path> script = files.filter(
                            file -> file.getFileName().toString().endsWith(".script.txt"))
                    .filter(file ->
                            parts[0].contains(file.getFileName().toString().replace(".script.txt", "")))
                    .findFirst();
            return script.isPresent() ? Files.readString(script.get()) : parts[2];
        }
    }

    private static List<String> rows(Path table) throws IOException {
        List<String> rows = Files.readAllLines(table, StandardCharsets.UTF_8);
        return rows.subList(1, rows.size());
    }

    /** The lines of a text and their times; without lines that were not found, or read after the next one. */
    private static List<RunningTimeError> text(String text, short[] sound) throws ProblemException {
        List<LineNotes> notes;
        Script script;
        try (VoskEars ears = VoskEars.load(MODEL)) {
            ReadingRun.Ended ended = ReadingRun.read(text, FakeAudioSource.of(Sound.RATE, sound), ears);
            script = ended.state().script();
            notes = ended.state().lines().all();
        }
        List<RunningTimeError> lines = new ArrayList<>();
        for (int i = 0; i + 1 < notes.size(); i++) {
            Optional<StreamTime> begins = begins(notes.get(i));
            Optional<StreamTime> next = begins(notes.get(i + 1));
            if (begins.isPresent() && next.isPresent() && begins.get().isBefore(next.get())) {
                boolean ends = script.lines().get(i).paragraph()
                        != script.lines().get(i + 1).paragraph();
                String line = script.lines().get(i).words().stream()
                        .map(word -> word.written())
                        .collect(Collectors.joining(" "));
                lines.add(new RunningTimeError(
                        ends ? line + "\n" : line,
                        next.get().since(begins.get()).seconds()));
            }
        }
        return lines;
    }

    private static Optional<StreamTime> begins(LineNotes notes) {
        return notes.attempts().stream().findFirst().map(attempt -> attempt.start());
    }

    /** Prints the errors in percent; says whether the last one is small. */
    private static boolean print(String name, List<RunningTimeError> lines) throws ProblemException {
        String text = "---\nlines: as-written\n---\n"
                + lines.stream().map(RunningTimeError::line).collect(Collectors.joining("\n"));
        Script script = ScriptReader.parse(text, name, Format.MARKDOWN);
        int half = lines.size() / 2;
        WordCounts counts = WordCounts.of(script);
        TextLength first = counts.length(new ReadingPosition(half + 1, 1));
        double known = seconds(lines.subList(0, half));
        double took = seconds(lines.subList(half, lines.size()));
        long left = counts.total() - first.words();
        WordTally read = WordTally.of(first.words(), StreamTime.ofSeconds(known));
        double now = PaceLog.begin(PaceRules.defaults())
                .settle(1, read)
                .reading(first, counts.length(), TARGET)
                .left()
                .seconds();
        double before = RunningTime.of(left, RunningTime.blend(read, TARGET, FORMER_PRIOR))
                .seconds();
        System.out.printf(
                Locale.ROOT,
                "%-24s %5d | %+12.1f | %+9.1f | %+10.1f | %+13.1f%n",
                name,
                counts.total(),
                percent(RunningTime.of(left, read.perMinute()).seconds(), took),
                percent(before, took),
                percent(now, took),
                percent(known + now, known + took));
        return Math.abs(percent(now, took)) <= CLOSE;
    }

    private static double seconds(List<RunningTimeError> lines) {
        return lines.stream().mapToDouble(RunningTimeError::seconds).sum();
    }

    private static double percent(double foretold, double took) {
        return 100 * (foretold / took - 1);
    }
}
