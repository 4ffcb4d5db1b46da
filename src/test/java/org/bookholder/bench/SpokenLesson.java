package org.bookholder.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.bookholder.testing.SoundServer;
import org.bookholder.testing.Wav;

/** A voice that reads a lesson into a microphone, and obeys the desk as a presenter does: it rests while the take is held, and goes where it is sent. */
final class SpokenLesson {
    private static final long LOOK_NANOS = TimeUnit.MILLISECONDS.toNanos(500);

    private final SoundServer sound;
    private final Path folder;
    private final List<String> lines;
    private final Flite voice = new Flite("rms", 1.0);

    SpokenLesson(SoundServer sound, Path folder, List<String> lines) {
        this.sound = sound;
        this.folder = folder;
        this.lines = List.copyOf(lines);
    }

    /** Reads until the lesson was led to its end; {@code page} tells where the reading is. */
    void read(Producer page, CompletableFuture<Void> led) throws IOException, InterruptedException {
        int next = 1;
        while (!led.isDone()) {
            JsonNode at = new JsonMapper().readTree(page.told("JSON.stringify(deskState.model.at)"));
            int shown = at.path("round").path("line").asInt(at.path("line").asInt(1));
            if (Math.abs(shown - next) > 1 || at.has("round")) {
                next = shown;
            }
            if (!at.path("rolling").asBoolean() || at.path("held").asBoolean() || next > lines.size()) {
                LockSupport.parkNanos(LOOK_NANOS);
            } else {
                say(lines.get(next - 1));
                next++;
            }
        }
    }

    private void say(String line) throws IOException, InterruptedException {
        sound.play(Wav.write(folder.resolve("line.wav"), Sound.RATE, voice.say(line)))
                .waitFor();
    }
}
