package org.bookholder.view.cue;

import java.util.Optional;
import org.bookholder.session.Remarks;
import org.bookholder.session.SessionState;

/**
 * The producer's message to the presenter. It fades in at the end of a line or while nobody is reading, stays long
 * enough to be read, and fades out.
 *
 * @param text the message, empty if there is none
 * @param light its opacity, 0 to 1
 * @param number number of the last message that was taken up, 0 if none was
 * @param line the line that was being read when it arrived
 * @param waited seconds for which it has waited for the end of the line
 * @param shown seconds for which it has been shown
 */
public record ProducerWord(String text, double light, int number, int line, double waited, double shown) {
    /** No message. */
    public static final ProducerWord NONE = new ProducerWord("", 0, 0, 0, 0, 0);

    /** Longest wait for the end of a line, in seconds. */
    static final double PATIENCE = 4;

    private static final double RISE = 0.8;
    private static final double FALL = 1.2;
    private static final double LEAST = 6;
    private static final double PER_WORD = 0.5;

    /** The message {@code seconds} later. */
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
