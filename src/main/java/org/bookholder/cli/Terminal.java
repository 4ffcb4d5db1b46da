package org.bookholder.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/**
 * The terminal: reads lines, prints results and messages.
 *
 * @param out results and progress
 * @param err problems and warnings
 * @param in input, a line at a time
 * @param charset character set of all three
 */
record Terminal(PrintStream out, PrintStream err, InputStream in, Charset charset) {
    /** More than anyone types between two looks; another program may write without end. */
    static final int MOST_BYTES = 4_096;

    /**
     * The process's own terminal: in a console's character set, or UTF-8 if the output goes to a file or another
     * program.
     */
    static Terminal ofProcess() {
        // The Java platform sets this only if the output is a console.
        String console = System.getProperty("sun.stdout.encoding", "");
        Charset charset = console.isEmpty() ? StandardCharsets.UTF_8 : Charset.forName(console);
        return new Terminal(stream(FileDescriptor.out, charset), stream(FileDescriptor.err, charset), input(), charset);
    }

    /**
     * The standard input; an empty one if it was closed when the process began. Then the first file that the Java virtual
     * machine opened has its place, a large one of its own. Can be told on Linux only; the launcher sees to the other systems.
     */
    private static InputStream input() {
        try {
            boolean closed = Path.of("/proc/self/fd/0")
                    .toRealPath()
                    .startsWith(Path.of(System.getProperty("java.home")).toRealPath());
            return closed ? InputStream.nullInputStream() : System.in;
        } catch (IOException notAFile) {
            return System.in;
        }
    }

    /** Whether a person is watching: the Java platform sets this property only if messages go to a console. */
    static boolean console() {
        return !System.getProperty("sun.stderr.encoding", "").isEmpty();
    }

    /** Whether a line was entered since the last call; never blocks, and reads at most {@value #MOST_BYTES} bytes. */
    boolean entered() {
        return typed().indexOf('\n') >= 0;
    }

    /** What was typed since the last call; never blocks, and reads at most {@value #MOST_BYTES} bytes. */
    String typed() {
        try {
            byte[] bytes = in.readNBytes(Math.min(in.available(), MOST_BYTES));
            return new String(bytes, charset);
        } catch (IOException closed) {
            return "";
        }
    }

    /** Prints a problem or warning on its own line. */
    void warn(String text) {
        err.println("bookholder: " + text);
    }

    /** Lists the sessions that could not be read. */
    void leftOut(List<String> unreadable) {
        unreadable.forEach(session -> warn("left out: " + session));
    }

    /** The output for results and progress, as a writer. */
    PrintWriter writer() {
        return new PrintWriter(new OutputStreamWriter(out, charset), true);
    }

    private static PrintStream stream(FileDescriptor descriptor, Charset charset) {
        return new PlainerStream(new FileOutputStream(descriptor), charset);
    }
}
