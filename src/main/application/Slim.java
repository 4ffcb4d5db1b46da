import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.List;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/**
 * Copies jars without native code for other systems, and without compression: the package that they go into is compressed, and
 * a whole compresses better than its compressed parts.
 *
 * <p>Usage: {@code java Slim.java TARGET KEPT JAR...}; KEPT are the folders of native code that stay, with commas between them.
 */
final class Slim {
    /** Folders in which the libraries keep native code, one for each system. */
    private static final Pattern NATIVE = Pattern.compile(
            "((win32|linux)-x86-64|darwin|com/sun/jna/[a-z0-9]+-[a-z0-9-]+|org/sqlite/native/[A-Za-z-]+/[A-Za-z0-9_]+)/.*");

    private Slim() {}

    public static void main(String[] args) throws IOException {
        Path target = Files.createDirectories(Path.of(args[0]));
        List<String> kept = List.of(args[1].split(","));
        for (String jar : List.of(args).subList(2, args.length)) {
            Path file = Path.of(jar);
            copy(file, target.resolve(file.getFileName()), kept);
        }
    }

    private static void copy(Path jar, Path target, List<String> kept) throws IOException {
        try (ZipFile in = new ZipFile(jar.toFile());
                OutputStream file = new BufferedOutputStream(Files.newOutputStream(target));
                ZipOutputStream out = new ZipOutputStream(file)) {
            out.setMethod(ZipOutputStream.STORED);
            Enumeration<? extends ZipEntry> entries = in.entries();
            while (entries.hasMoreElements()) {
                ZipEntry entry = entries.nextElement();
                if (!entry.isDirectory() && isKept(entry.getName(), kept)) {
                    try (InputStream content = in.getInputStream(entry)) {
                        store(entry, content.readAllBytes(), out);
                    }
                }
            }
        }
    }

    private static boolean isKept(String name, List<String> kept) {
        return !NATIVE.matcher(name).matches() || kept.stream().anyMatch(folder -> name.startsWith(folder + "/"));
    }

    private static void store(ZipEntry like, byte[] content, ZipOutputStream out) throws IOException {
        CRC32 sum = new CRC32();
        sum.update(content);
        ZipEntry entry = new ZipEntry(like.getName());
        entry.setTime(like.getTime());
        entry.setSize(content.length);
        entry.setCrc(sum.getValue());
        out.putNextEntry(entry);
        out.write(content);
        out.closeEntry();
    }
}
