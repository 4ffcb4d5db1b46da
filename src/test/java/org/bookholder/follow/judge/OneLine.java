package org.bookholder.follow.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import org.bookholder.follow.model.Attempt;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.bookholder.wording.Labels;

/** What becomes of one line that is read between two others. */
public final class OneLine {
    private static final String BEFORE = "Nobody answered the question from the back row";
    private static final String AFTER = "Everybody wrote the number down at once";

    private OneLine() {}

    /** The text of a script with the line in it. */
    public static String text(String line) {
        return BEFORE + "\n" + line + "\n" + AFTER;
    }

    /** The words not read as written in its only attempt, which is complete. */
    public static List<String> deviations(String line, String read) {
        List<Attempt> attempts = read(line, read);
        assertThat(attempts).singleElement().matches(Attempt::complete);
        return attempts.get(0).deviations().stream()
                .map(d -> d.written() + " " + Labels.of(d.kind()))
                .toList();
    }

    /** Its attempts. */
    public static List<Attempt> read(String line, String read) {
        return read(ReadAloud.of(Scripts.of(BEFORE, line, AFTER)), read);
    }

    /** Its attempts by a reader of a script of that {@link #text}. */
    public static List<Attempt> read(ReadAloud reader, String read) {
        return between(reader, in -> in.say(read));
    }

    /** Its attempts, if the two ears hear it differently. */
    public static List<Attempt> heard(String line, String scriptEar, String openEar) {
        return heard(ReadAloud.of(Scripts.of(BEFORE, line, AFTER)), scriptEar, openEar);
    }

    /** The same by a reader of a script of that {@link #text}. */
    public static List<Attempt> heard(ReadAloud reader, String scriptEar, String openEar) {
        return between(reader, in -> in.say(scriptEar, openEar));
    }

    private static List<Attempt> between(ReadAloud reader, UnaryOperator<ReadAloud> line) {
        return line
                .apply(reader.say(BEFORE.toLowerCase(Locale.ROOT)))
                .say(AFTER.toLowerCase(Locale.ROOT))
                .cut()
                .attempts()
                .stream()
                .filter(attempt -> attempt.line() == 2)
                .toList();
    }
}
