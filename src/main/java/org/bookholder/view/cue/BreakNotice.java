package org.bookholder.view.cue;

import org.bookholder.fatigue.BreakAdvice;
import org.bookholder.fatigue.BreakAdvice.Reason;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.fatigue.FatigueReport;
import org.bookholder.wording.BreakText;

/**
 * The reading window's notice about the next break: a few words and a small disc that fills. It changes only at the end
 * of a line or while nobody is reading, and never blinks.
 *
 * @param urgency how near the limit is
 * @param text a few words, empty when there is nothing to say
 * @param sentence the full advice, shown while nobody is reading
 * @param line the line that was being read when the notice last changed
 */
public record BreakNotice(Urgency urgency, String text, String sentence, int line) {
    /** Nothing to say. */
    public static final BreakNotice NONE = new BreakNotice(Urgency.NONE, "", "", 0);

    /**
     * The notice to show now.
     *
     * @param report the current state of fatigue
     * @param currentLine the line being read
     * @param reading whether somebody is reading now
     */
    public BreakNotice next(FatigueReport report, int currentLine, boolean reading) {
        if (reading && currentLine == line) {
            return this;
        }
        if (report.advice().isEmpty() || report.advice().get(0).urgency() == Urgency.NONE) {
            return new BreakNotice(Urgency.NONE, "", "", currentLine);
        }
        BreakAdvice first = report.advice().get(0);
        return new BreakNotice(first.urgency(), words(first), BreakText.of(first), currentLine);
    }

    private static String words(BreakAdvice advice) {
        if (advice.reason() == Reason.STUMBLING) {
            return "a break would help";
        }
        long minutes = Math.max(1, Math.round(Math.abs(advice.left().toSeconds()) / 60.0));
        return switch (advice.urgency()) {
            case NONE -> "";
            case COMING -> "break in " + minutes + " min";
            case DUE -> "break due";
            case OVERDUE -> "break overdue by " + minutes + " min";
        };
    }
}
