package org.bookholder.bench;

import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
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
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.bookholder.testing.Ffmpeg;
import org.jspecify.annotations.Nullable;

/**
 * Damages scripts, recordings and films at random, reads each in another process, and counts how that ended.
 *
 * <p>Arguments: how many scripts (default 500), recordings (500) and films (100), and the seed (1).
 */
public final class Mutations {
    private static final int SLOW_MILLIS = 2_000;
    private static final int SECONDS_OF_SOUND = 5;

    private final Path folder;
    private final Random random;
    private @Nullable Process reader;
    private @Nullable BufferedReader said;

    private Mutations(Path folder, long seed) {
        this.folder = folder;
        this.random = new Random(seed);
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
            Files.write(file, what.startsWith("XML") ? archiveMutated(bytes) : mutated(bytes, isText(file) ? 95 : 256));
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
        return isSettings(file) || file.toString().endsWith(".md");
    }

    /** An archive whose parts are damaged and packed anew, so that their checksums are right. */
    private byte[] archiveMutated(byte[] archive) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(archive));
                ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (ZipEntry part = in.getNextEntry(); part != null; part = in.getNextEntry()) {
                out.putNextEntry(new ZipEntry(part.getName()));
                byte[] text = in.readAllBytes();
                out.write(part.getName().equals("word/document.xml") ? mutated(text, 95) : text);
                out.closeEntry();
            }
        }
        return bytes.toByteArray();
    }

    /** A random byte below {@code of}; if that is 95, a printable one. */
    private byte anyByte(int of) {
        return (byte) ((of == 95 ? ' ' : 0) + random.nextInt(of));
    }

    /** One to eight damages: a byte changed, a stretch cut out, repeated, made zero, or the end cut off. */
    private byte[] mutated(byte[] whole, int of) {
        byte[] bytes = whole.clone();
        for (int i = 1 + random.nextInt(8); i > 0 && bytes.length > 0; i--) {
            int at = random.nextInt(8) == 0 ? random.nextInt(Math.min(64, bytes.length)) : random.nextInt(bytes.length);
            int length = Math.min(bytes.length - at, 1 + random.nextInt(64));
            switch (random.nextInt(6)) {
                case 0, 1 -> bytes[at] = anyByte(of);
                case 2 -> bytes = joined(bytes, at, bytes, at + length);
                case 3 -> bytes = joined(bytes, at + length, bytes, at);
                case 4 -> Arrays.fill(bytes, at, at + length, of == 95 ? anyByte(of) : 0);
                default -> bytes = random.nextInt(4) == 0 ? Arrays.copyOf(bytes, at) : bytes;
            }
        }
        return bytes;
    }

    /** The first bytes of one file, followed by another from {@code from} on. */
    private static byte[] joined(byte[] first, int to, byte[] second, int from) {
        byte[] all = Arrays.copyOf(first, to + second.length - from);
        System.arraycopy(second, from, all, to, second.length - from);
        return all;
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
