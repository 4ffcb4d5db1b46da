package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;

/** What becomes of one line that is read between two others. */
final class OneLine {
    private OneLine() {}

    /** The words not read as written in its only attempt, which is complete. */
    static List<String> deviations(String line, String read) {
        List<Attempt> attempts = read(line, read);
        assertThat(attempts).singleElement().matches(Attempt::complete);
        return attempts.get(0).deviations().stream()
                .map(d -> d.written() + " " + d.kind().label())
                .toList();
    }

    /** Its attempts. */
    static List<Attempt> read(String line, String read) {
        return ReadAloud.of(Scripts.of(
                        "Nobody answered the question from the back row",
                        line,
                        "Everybody wrote the number down at once"))
                .say("nobody answered the question from the back row")
                .say(read)
                .say("everybody wrote the number down at once")
                .cut()
                .attempts()
                .stream()
                .filter(attempt -> attempt.line() == 2)
                .toList();
    }
}
