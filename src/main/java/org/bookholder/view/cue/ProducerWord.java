package org.bookholder.view.cue;

import java.util.Optional;
import org.bookholder.session.Remarks;
import org.bookholder.session.SessionState;

/**
 * What the producer has to say to the presenter. It comes up slowly, at a line's end or while nobody reads, stays as long
 * as it takes to read, and sinks away.
 *
 * @param text what is said, empty if nothing is
 * @param light its light, 0 to 1
 * @param number of the message that was last taken up, 0 if none was
 * @param line the line that was being read when it came
 * @param waited seconds for which it has waited for the line's end
 * @param shown seconds for which it has been seen
 */
public record ProducerWord(String text, double light, int number, int line, double waited, double shown) {
    /** Nothing has been said. */
    public static final ProducerWord NONE = new ProducerWord("", 0, 0, 0, 0, 0);

    /** Long lines must not keep a message back for longer, in seconds. */
    static final double PATIENCE = 4;

    private static final double RISE = 0.8;
    private static final double FALL = 1.2;
    private static final double LEAST = 6;
    private static final double PER_WORD = 0.5;

    /** The same {@code seconds} later. */
    public ProducerWord after(SessionState state, double seconds) {
        Optional<Remarks.Message> message = state.remarks().message();
        int last = message.isPresent() ? message.get().number() : 0;
        if (last != number) {
            String said = message.isPresent() ? message.get().text() : "";
            return new ProducerWord(said, 0, last, state.following().position().line(), 0, 0);
        }
        if (text.isEmpty()) {
            return this;
        }
        boolean reading = state.takes().rolling() && !state.takes().held();
        if (shown == 0 && reading && state.following().position().line() == line && waited < PATIENCE) {
            return new ProducerWord(text, 0, number, line, waited + seconds, 0);
        }
        double seen = shown + seconds;
        double stays = LEAST + PER_WORD * text.split(" ", -1).length;
        double left = Math.min(1, Math.max(0, (stays - seen) / FALL));
        String kept = left > 0 ? text : "";
        return new ProducerWord(kept, Math.min(Math.min(1, seen / RISE), left), number, line, waited, seen);
    }
}
