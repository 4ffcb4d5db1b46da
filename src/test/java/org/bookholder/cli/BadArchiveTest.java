package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Damaged or malicious archives are refused with one line and leave no files behind. */
@Execution(ExecutionMode.CONCURRENT)
final class BadArchiveTest {
    private static final long SEED = 2026;

    @TempDir
    private Path folder;

    private Program program;
    private Path archive;
    private Path unpacked;
    private byte[] whole;
    private String notes;

    @BeforeEach
    void pack() throws Exception {
        program = new Program(folder);
        archive = folder.resolve("session.zip");
        unpacked = folder.resolve("deep/er/session");
        Path session = folder.resolve("lesson");
        StoredExamples.write(session, "lesson.md");
        assertThat(program.run("pack", session.toString(), archive.toString())).isZero();
        whole = Files.readAllBytes(archive);
        assertThat(program.run("notes", session.toString(), "--json")).isZero();
        notes = program.out();
    }

    @Test
    void aByteThatIsWrongIsNoticedWhereverItIs() throws IOException {
        Random random = new Random(SEED);
        int refused = 0;
        for (int i = 0; i < 120; i++) {
            byte[] bytes = whole.clone();
            // Half of them in the list at the end, which is small beside the sound.
            int from = i % 2 == 0 ? 0 : Math.max(0, bytes.length - 1500);
            bytes[from + random.nextInt(bytes.length - from)] ^= (byte) (1 << random.nextInt(8));
            refused += refusedOrTheSame(bytes) ? 1 : 0;
        }
        // The other damages changed a time of day or the like, which does no harm.
        assertThat(refused).isGreaterThan(90);
    }

    @Test
    void anArchiveThatIsCutShortIsRefused() throws IOException {
        Random random = new Random(SEED);
        for (int i = 0; i < 40; i++) {
            byte[] bytes = Arrays.copyOf(whole, random.nextInt(whole.length));
            assertThat(refusedOrTheSame(bytes)).isTrue();
        }
    }

    @Test
    void theDamagedFileIsNamed() throws IOException {
        byte[] bytes = whole.clone();
        // In the middle of the sound, which is nearly all of the archive.
        bytes[bytes.length / 2] ^= 1;
        Files.write(archive, bytes);
        assertRefused("the archive is damaged (take-001.wav is not what was packed); copy it once more");
    }

    @Test
    void aFileWhoseSumIsAnotherIsRefused() throws Exception {
        Map<String, byte[]> files = files();
        files.put("lesson/script.md", "other words".getBytes(StandardCharsets.UTF_8));
        Files.write(archive, zip(files));
        assertRefused("'script.md' has no sum in SHA256SUMS");
        files.remove("lesson/script.md");
        files.merge(
                "lesson/SHA256SUMS",
                ("0".repeat(64) + "  script.md\n").getBytes(StandardCharsets.UTF_8),
                (a, b) -> (text(a) + text(b)).getBytes(StandardCharsets.UTF_8));
        Files.write(archive, zip(files));
        assertRefused("(script.md is not what was packed)");
        files.put("lesson/script.md", "other words".getBytes(StandardCharsets.UTF_8));
        Files.write(archive, zip(files));
        assertRefused("(script.md is not what was packed)");
    }

    @Test
    void pathsThatLeadElsewhereAndStrangeFilesAreRefused() throws Exception {
        for (String name : List.of(
                "../evil.wav",
                "lesson/../../take-009.wav",
                "/tmp/take-009.wav",
                "lesson/deeper/take-009.wav",
                "lesson\\take-009.wav",
                "C:/take-009.wav",
                "../take-009.wav",
                "take-009.wav",
                "other/take-009.wav",
                "lesson/lock",
                "lesson/desk.json",
                "lesson/run.sh",
                "lesson/journal.db-wal",
                "lesson/take-\u001b[31m.wav")) {
            Map<String, byte[]> files = files();
            byte[] content = {1, 2, 3};
            files.put(name, content);
            sum(files, name.substring(name.lastIndexOf('/') + 1), content);
            Files.write(archive, zip(files));
            assertRefused("which is no file of a session");
            assertThat(program.err()).doesNotContain("\u001b");
        }
        assertThat(folder.toFile().list()).containsExactlyInAnyOrder("lesson", "session.zip");
    }

    @Test
    void aFileThatComesTwiceIsRefused() throws Exception {
        Map<String, byte[]> files = files();
        byte[] other = Objects.requireNonNull(files.get("lesson/take-001.wav")).clone();
        files.put("lesson/take-0x1.wav", other);
        sum(files, "take-0x1.wav", other);
        // No ZIP writer writes a name twice: one of the same length is renamed.
        byte[] bytes = zip(files);
        byte[] twice = new String(bytes, StandardCharsets.ISO_8859_1)
                .replace("take-0x1.wav", "take-001.wav")
                .getBytes(StandardCharsets.ISO_8859_1);
        Files.write(archive, twice);
        assertRefused("it holds take-001.wav twice");
    }

    @Test
    void aFileThatIsFarTooLargeIsRefusedBeforeItIsUnpacked() throws Exception {
        Map<String, byte[]> files = files();
        byte[] zeros = new byte[65 << 20];
        files.put("lesson/footage.json", zeros);
        sum(files, "footage.json", zeros);
        byte[] bytes = zip(files);
        assertThat(bytes.length).isLessThan(2 << 20);
        Files.write(archive, bytes);
        assertRefused("its file footage.json is too large");
    }

    @Test
    void whatIsNoArchiveOfASessionIsRefused() throws Exception {
        Files.writeString(archive, "no archive");
        assertRefused("is damaged, or no ZIP archive");
        Files.write(archive, zip(Map.of("lesson/SHA256SUMS", new byte[0])));
        assertRefused("it lacks journal.db");
        Files.write(archive, zip(Map.of("lesson/journal.db", new byte[0])));
        assertRefused("it lacks SHA256SUMS");
        Files.write(
                archive, zip(Map.of("lesson/journal.db", new byte[0], "lesson/SHA256SUMS", new byte[] {'x', '\n'})));
        assertRefused("SHA256SUMS is not what was packed");
    }

    /** Whether it was refused without leaving files; if it was not, its notes must be the same. */
    private boolean refusedOrTheSame(byte[] bytes) throws IOException {
        Files.write(archive, bytes);
        int status = program.run("unpack", archive.toString(), unpacked.toString());
        if (status == 2) {
            assertThat(program.err().lines()).hasSize(1);
            assertThat(unpacked).doesNotExist();
            return true;
        }
        assertThat(status).as(program.err()).isZero();
        assertThat(program.run("notes", unpacked.toString(), "--json")).isZero();
        assertThat(program.out()).isEqualTo(notes);
        for (File file : Objects.requireNonNull(unpacked.toFile().listFiles())) {
            Files.delete(file.toPath());
        }
        Files.delete(unpacked);
        return false;
    }

    private void assertRefused(String why) {
        assertThat(program.run("unpack", archive.toString(), unpacked.toString()))
                .isEqualTo(2);
        assertThat(program.err().lines()).singleElement().asString().contains(why);
        assertThat(unpacked).doesNotExist();
    }

    private Map<String, byte[]> files() throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(whole))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                files.put(entry.getName(), zip.readAllBytes());
            }
        }
        return files;
    }

    private static void sum(Map<String, byte[]> files, String name, byte[] content) throws Exception {
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(content);
        String list = text(Objects.requireNonNull(files.get("lesson/SHA256SUMS")))
                + HexFormat.of().formatHex(digest) + "  " + name + "\n";
        files.put("lesson/SHA256SUMS", list.getBytes(StandardCharsets.UTF_8));
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    private static byte[] zip(Map<String, byte[]> files) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, byte[]> file : new ArrayList<>(files.entrySet())) {
                zip.putNextEntry(new ZipEntry(file.getKey()));
                zip.write(file.getValue());
                zip.closeEntry();
            }
        }
        return bytes.toByteArray();
    }
}
