package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A damaged recording affects no other take. */
final class DamagedTakeTest {
    @TempDir
    private Path folder;

    private Program program;
    private String session;
    private Path second;

    /** Damage as by a kill, a full disk or a bad medium. */
    private enum Damage {
        MISSING,
        NO_BYTE,
        NO_SAMPLE,
        NO_HEADER
    }

    @BeforeEach
    void readTwice() {
        program = new Program(folder);
        session = program.path("session");
        assertThat(read()).isZero();
        assertThat(read()).isZero();
        second = folder.resolve("session/take-002.wav");
    }

    private int read() {
        String script = program.file("wheel.md", "Every wheel begins with its hub.\n");
        return program.read(script, program.recording("wheel.wav", 0.5), session);
    }

    @ParameterizedTest
    @EnumSource
    void affectsNoOtherTake(Damage damage) throws IOException {
        damage(damage);
        assertThat(program.run("notes", session)).as(program.err()).isZero();
        assertThat(program.run("handoff", session)).as(program.err()).isZero();
        assertThat(program.err()).contains("take 2 has no sound that can be read");
        assertThat(folder.resolve("session/handoff")).isDirectoryContaining("glob:**-take-001.wav");
        assertThat(folder.resolve("session/handoff")).isDirectoryNotContaining("glob:**-take-002.wav");
        assertThat(read()).as(program.err()).isZero();
        assertThat(folder.resolve("session/take-003.wav")).exists();
    }

    @Test
    void anUndamagedOneIsHandedOff() {
        assertThat(program.run("handoff", session)).isZero();
        assertThat(folder.resolve("session/handoff")).isDirectoryContaining("glob:**-take-002.wav");
    }

    private void damage(Damage damage) throws IOException {
        byte[] bytes = Files.readAllBytes(second);
        switch (damage) {
            case MISSING -> Files.delete(second);
            case NO_BYTE -> Files.write(second, new byte[0]);
            case NO_SAMPLE -> Files.write(second, Arrays.copyOf(bytes, 44));
            case NO_HEADER -> {
                Arrays.fill(bytes, 0, 44, (byte) 0);
                Files.write(second, bytes);
            }
        }
    }
}
