package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.bookholder.testing.ChildJvm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

@Execution(ExecutionMode.CONCURRENT)
final class TerminalTest {
    private static final String COMMANDS = "\u001b]0;x\u0007\u009b31m\u202e\u2066\u200f\u2028\u007f";
    private static final String ESCAPED = "\\u001b]0;x\\u0007\\u009b31m\\u202e\\u2066\\u200f\\u2028\\u007f";

    @TempDir
    private Path folder;

    /** What another program writes without end, as {@code yes} does. */
    private static final class Endless extends InputStream {
        private int read;

        @Override
        public int available() {
            return Integer.MAX_VALUE;
        }

        @Override
        public int read() {
            read++;
            return 'y';
        }

        @Override
        public int read(byte[] into, int from, int length) {
            Arrays.fill(into, from, from + length, (byte) 'y');
            read += length;
            return length;
        }
    }

    @Test
    void anEndlessInputIsReadAFewBytesAtATime() {
        Endless endless = new Endless();
        assertThat(terminal(endless).entered()).isFalse();
        assertThat(endless.read).isEqualTo(Terminal.MOST_BYTES);
    }

    @Test
    void aLineIsEnteredOnce() {
        Terminal terminal = terminal(new ByteArrayInputStream("\n".getBytes(StandardCharsets.UTF_8)));
        assertThat(terminal.entered()).isTrue();
        assertThat(terminal.entered()).isFalse();
    }

    @Test
    void aClosedInputIsEmptyAndNotAnotherOpenFile() throws IOException, InterruptedException {
        List<String> closed = List.of("sh", "-c", "exec \"$@\" <&-", "sh");
        try (ChildJvm child = ChildJvm.startBy(closed, Waiting.class)) {
            assertThat(child.untilItEnds()).containsExactly("0 waiting, entered: false", "exit status 0");
        }
    }

    /** Prints what it reads from its input. */
    static final class Waiting {
        private Waiting() {}

        public static void main(String[] args) throws IOException {
            Terminal terminal = Terminal.ofProcess();
            terminal.out().println(terminal.in().available() + " waiting, entered: " + terminal.entered());
        }
    }

    @Test
    void textCannotControlTheTerminalOrReorderItsRows() {
        assertThat(printed("a\tb\r\nc " + COMMANDS + "\rd\n")).isEqualTo("a\tb\r\nc " + ESCAPED + "\\u000dd\n");
        assertThat(printed("\u05e9\u05dc\u05d5\u05dd \u4f60\u597d \u00e9"))
                .isEqualTo("\u05e9\u05dc\u05d5\u05dd \u4f60\u597d \u00e9");
    }

    @Test
    void scriptsAndFileNamesCannotEither() throws IOException, InterruptedException {
        Path course = Files.createDirectory(folder.resolve("a\u001b[2J"));
        Path script = Files.writeString(course.resolve("b\u202ec.md"), """
            ---
            title: "Red\\e]0;x\\a \\u202e\\u009b31m"
            ---
            Hello \u202ethere\u009b31m.

            > A \u2066direction@.
            """.replace('@', '\u0085'));
        for (List<String> arguments : List.of(
                List.of("time", script.toString(), "--json"),
                List.of("time", course.resolve("none\u0007.md").toString()),
                List.of("course", course.toString()),
                List.of("time", "--n\u001b[2Jone"))) {
            try (ChildJvm child = ChildJvm.startBy(
                    List.of("env", "LC_ALL=C.UTF-8", "XDG_DATA_HOME=" + folder.resolve("data")),
                    Main.class,
                    arguments.toArray(String[]::new))) {
                List<String> lines = child.untilItEnds();
                assertThat(lines)
                        .as("%s", arguments)
                        .hasSizeGreaterThan(1)
                        .noneMatch(l -> l.matches(".*[\\p{Cc}\\u200e\\u200f\\u2028-\\u202e\\u2066-\\u2069].*"));
            }
        }
    }

    private static String printed(String text) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        new PlainerStream(bytes, StandardCharsets.UTF_8).print(text);
        return bytes.toString(StandardCharsets.UTF_8);
    }

    private static Terminal terminal(InputStream in) {
        PrintStream nowhere = new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
        return new Terminal(nowhere, nowhere, in, StandardCharsets.UTF_8);
    }
}
