package org.bookholder.testing;

import java.io.BufferedOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.bookholder.cli.Main;

/**
 * The classes of programs that tests start: the same as this process has, in archives as in the packaged program, with the
 * virtual machine's own archive of those that a start needs. A program starts with it in half the time.
 */
final class ChildClasses {
    private static final Path PLACE = Path.of("target", "child-classes").toAbsolutePath();
    private static final Path SHARED = PLACE.resolve("shared.jsa");
    private static final long PATIENCE_SECONDS = 60;

    private ChildClasses() {}

    /** Options for a new virtual machine, the class path among them. */
    static List<String> options() {
        return Once.OPTIONS;
    }

    /** Made at the first start of a program, as most tests start none. */
    private static final class Once {
        private static final List<String> OPTIONS = make();
    }

    private static List<String> make() {
        // Surefire keeps the real class path in a property of its own.
        String own = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        try {
            // A program that such a program starts has archives only, and uses what was made for it.
            boolean made = parts(own).noneMatch(Files::isDirectory);
            String classPath = made ? own : packed(own);
            if (!made) {
                share(classPath);
            }
            List<String> options = new ArrayList<>();
            if (Files.exists(SHARED)) {
                options.add("-XX:SharedArchiveFile=" + SHARED);
            }
            options.addAll(List.of("-cp", classPath));
            return options;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The class path with an archive for each folder: the virtual machine shares classes of archives only. */
    private static String packed(String classPath) throws IOException {
        Files.createDirectories(PLACE);
        List<String> parts = new ArrayList<>();
        for (String part : classPath.split(File.pathSeparator, -1)) {
            Path folder = Path.of(part);
            if (Files.isDirectory(folder)) {
                parts.add(pack(folder, PLACE.resolve(folder.getFileName() + ".jar"))
                        .toString());
            } else if (Files.exists(folder)) {
                parts.add(part);
            }
        }
        return String.join(File.pathSeparator, parts);
    }

    private static Stream<Path> parts(String classPath) {
        return Stream.of(classPath.split(File.pathSeparator, -1))
                .filter(part -> !part.isEmpty())
                .map(Path::of);
    }

    private static Path pack(Path folder, Path jar) throws IOException {
        try (ZipOutputStream out = new ZipOutputStream(new BufferedOutputStream(Files.newOutputStream(jar)));
                Stream<Path> files = Files.walk(folder)) {
            out.setLevel(1);
            for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
                out.putNextEntry(new ZipEntry(folder.relativize(file).toString().replace(File.separatorChar, '/')));
                Files.copy(file, out);
                out.closeEntry();
            }
        }
        return jar;
    }

    /** Lets the program begin a reading once, which needs most of its classes, and keep those that it has loaded. */
    private static void share(String classPath) throws IOException {
        Files.deleteIfExists(SHARED);
        Path folder = Files.createTempDirectory(PLACE, "run");
        Path script = Files.writeString(folder.resolve("lesson.md"), "A line.\n");
        ProcessBuilder builder = new ProcessBuilder(
                java(),
                "-Xmx128m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-XX:ArchiveClassesAtExit=" + SHARED,
                "-cp",
                classPath,
                Main.class.getName(),
                "read",
                script.toString(),
                "--no-window",
                "--no-microphone",
                "--session",
                folder.resolve("session").toString());
        builder.environment().put("XDG_DATA_HOME", folder.toString());
        builder.environment().put("XDG_CONFIG_HOME", folder.toString());
        Process process = builder.redirectErrorStream(true).start();
        try (ChildJvm child = new ChildJvm(process)) {
            child.readTo("Desk: ");
            child.terminate();
            process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        Folders.delete(folder);
    }

    static String java() {
        return Path.of(System.getProperty("java.home"), "bin", "java").toString();
    }
}
