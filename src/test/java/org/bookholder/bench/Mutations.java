package org.bookholder.bench;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.bookholder.testing.Damage;
import org.bookholder.testing.Ffmpeg;
import org.jspecify.annotations.Nullable;

/**
 * Damages scripts, recordings and films at random, reads each in another process, and counts how that ended.
 *
 * <p>Arguments: how many scripts (default 500, as many of the two kinds of documents that are read by rules of our own), recordings (500) and films (100), and the seed (1).
 */
public final class Mutations {
    private static final int SLOW_MILLIS = 2_000;
    private static final int SECONDS_OF_SOUND = 5;

    private final Path folder;
    private final Damage damage;
    private @Nullable Process reader;
    private @Nullable BufferedReader said;

    private Mutations(Path folder, long seed) {
        this.folder = folder;
        this.damage = new Damage(seed);
    }

    /** How many files of a kind ended in which way. */
    private static final class Tally {
        private int tried;
        private int answered;
        private int read;
        private int faults;
        private int aborts;
        private int slow;
        private long slowest;
    }

    /** Damages, reads and prints. */
    public static void main(String[] args) throws IOException {
        int[] counts = {500, 500, 100, 1};
        for (int i = 0; i < Math.min(args.length, counts.length); i++) {
            counts[i] = Integer.parseInt(args[i]);
        }
        Path folder = Files.createTempDirectory("mutations");
        Mutations all = new Mutations(folder, counts[3]);
        System.out.println("| what | tried | answered with one line | read | faults | aborts | over 2 s | slowest |");
        System.out.println("|---|---|---|---|---|---|---|---|");
        Path demo = Path.of("demo-scripts");
        all.print("Markdown", demo.resolve("lesson-1.md"), counts[0] / 2);
        all.print("DOCX", document(folder), counts[0] / 8);
        all.print("XML in DOCX", document(folder), counts[0] / 8);
        Path documents = Path.of("src/test/resources/documents");
        all.print("ODT", documents.resolve("pandoc-mixed.odt"), counts[0] / 8);
        all.print("XML in ODT", documents.resolve("pandoc-mixed.odt"), counts[0] / 8);
        all.print("RTF", documents.resolve("lo-columns.rtf"), counts[0]);
        all.print("HTML", documents.resolve("pandoc-talk.html"), counts[0] / 4);
        all.print("PDF", documents.resolve("lo-kettle.pdf"), counts[0]);
        all.print("course.yaml", demo.resolve("course.yaml"), counts[0] / 4);
        all.print("WAV", start(demo.resolve("lesson-1.wav"), folder), counts[1]);
        all.print("MP4", film(folder.resolve("film.mp4"), demo), counts[2] / 2);
        all.print("Matroska", film(folder.resolve("film.mkv"), demo), counts[2] / 2);
        all.end();
    }

    private void print(String what, Path whole, int count) throws IOException {
        byte[] bytes = Files.readAllBytes(whole);
        Tally tally = new Tally();
        for (int i = 0; i < count; i++) {
            Path place = Files.createDirectories(folder.resolve(what + i));
            Path file = place.resolve(String.valueOf(whole.getFileName()));
            byte[] damaged = what.startsWith("XML") ? damage.insideArchive(bytes) : damage.of(bytes, isText(file));
            Files.write(file, damaged);
            if (isSettings(file)) {
                for (String lesson : List.of("lesson-1.md", "lesson-2.md", "lesson-3.md")) {
                    Files.copy(Path.of("demo-scripts", lesson), place.resolve(lesson));
                }
            }
            count(tally, file);
        }
        System.out.printf(
                Locale.ROOT,
                "| %s | %d | %d | %d | %d | %d | %d | %d ms |%n",
                what,
                tally.tried,
                tally.answered,
                tally.read,
                tally.faults,
                tally.aborts,
                tally.slow,
                tally.slowest);
    }

    private void count(Tally tally, Path file) throws IOException {
        tally.tried++;
        String line = ask(file);
        if (line == null) {
            tally.aborts++;
            System.err.println("aborted by " + file);
            end();
            return;
        }
        String[] parts = line.split(" ", 2);
        long millis = Long.parseLong(parts[1]);
        tally.slowest = Math.max(tally.slowest, millis);
        tally.slow += millis > SLOW_MILLIS ? 1 : 0;
        switch (parts[0]) {
            case "answered" -> tally.answered++;
            case "read" -> tally.read++;
            default -> {
                tally.faults++;
                System.err.println("fault with " + file);
            }
        }
    }

    /** What the reader says of a file; null if it was aborted. */
    private @Nullable String ask(Path file) {
        try {
            Process child = reader;
            BufferedReader from = said;
            if (child == null || from == null) {
                child = new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java")
                                        .toString(),
                                "-Xmx192m",
                                "-XX:TieredStopAtLevel=1",
                                "-XX:ErrorFile=" + folder.resolve("abort.log"),
                                "-cp",
                                System.getProperty("java.class.path"),
                                MutantReader.class.getName())
                        .redirectError(ProcessBuilder.Redirect.INHERIT)
                        .start();
                from = child.inputReader(StandardCharsets.UTF_8);
                reader = child;
                said = from;
            }
            OutputStream to = child.getOutputStream();
            to.write((file + "\n").getBytes(StandardCharsets.UTF_8));
            to.flush();
            return from.readLine();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void end() {
        if (reader != null) {
            reader.destroy();
        }
        reader = null;
        said = null;
    }

    private static boolean isSettings(Path file) {
        return file.toString().endsWith(".yaml");
    }

    /** Only printable ASCII: a text with other bytes is refused before it is parsed. */
    private static boolean isText(Path file) {
        return isSettings(file) || file.toString().matches(".*\\.(?:md|rtf|html)");
    }

    private static Path document(Path folder) throws IOException {
        Path file = folder.resolve("lesson.docx");
        try (XWPFDocument document = new XWPFDocument();
                OutputStream out = Files.newOutputStream(file)) {
            for (String line : Files.readAllLines(Path.of("demo-scripts/lesson-1.md"))) {
                document.createParagraph().createRun().setText(line);
            }
            document.write(out);
        }
        return file;
    }

    /** The first seconds of a recording, whose header then claims more than there is. */
    private static Path start(Path recording, Path folder) throws IOException {
        Path file = folder.resolve("lesson.wav");
        byte[] all = Files.readAllBytes(recording);
        return Files.write(file, Arrays.copyOf(all, Math.min(all.length, SECONDS_OF_SOUND * 48_000 * 2)));
    }

    private static Path film(Path film, Path demo) {
        List<String> arguments = List.of(
                "-f",
                "lavfi",
                "-i",
                "testsrc=size=320x180:rate=25:duration=2",
                "-i",
                demo + File.separator + "lesson-1.wav",
                "-t",
                "2",
                "-pix_fmt",
                "yuv420p",
                "-c:a",
                "aac");
        return Ffmpeg.make(film, arguments.toArray(String[]::new));
    }
}
