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
import java.util.List;

/**
 * Where the program is talked to.
 *
 * @param out results and progress
 * @param err what stands in the way
 * @param in keys, a line at a time
 * @param charset of all three
 */
record Terminal(PrintStream out, PrintStream err, InputStream in, Charset charset) {
    /** The process's own: in a console's character set, or UTF-8 where a file or another program reads on. */
    static Terminal ofProcess() {
        // The Java platform sets this only where the output is a console.
        String console = System.getProperty("sun.stdout.encoding", "");
        Charset charset = console.isEmpty() ? StandardCharsets.UTF_8 : Charset.forName(console);
        return new Terminal(
                stream(FileDescriptor.out, charset), stream(FileDescriptor.err, charset), System.in, charset);
    }

    /** Whether a person looks on while the program works: the Java platform sets this only where messages go to a console. */
    static boolean console() {
        return !System.getProperty("sun.stderr.encoding", "").isEmpty();
    }

    /** Whether a line was entered since the last call; never waits. */
    boolean entered() {
        try {
            boolean entered = false;
            while (in.available() > 0) {
                entered |= in.read() == '\n';
            }
            return entered;
        } catch (IOException closed) {
            return false;
        }
    }

    /** Says what stands in the way, in a line of its own. */
    void warn(String text) {
        err.println("bookholder: " + text);
    }

    /** Names the sessions that could not be read. */
    void leftOut(List<String> unreadable) {
        unreadable.forEach(session -> warn("left out: " + session));
    }

    /** Results and progress, for who wants a writer. */
    PrintWriter writer() {
        return new PrintWriter(new OutputStreamWriter(out, charset), true);
    }

    private static PrintStream stream(FileDescriptor descriptor, Charset charset) {
        return new PlainerStream(new FileOutputStream(descriptor), charset);
    }
}
