package org.bookholder.view;

/** What motion and lead are a moment later, with those before kept to be compared. */
final class Later {
    private Later() {}

    static Motion after(Motion motion, Aim aim, double seconds, double pitch) {
        Motion later = motion.copy();
        later.advance(aim, seconds, pitch);
        return later;
    }

    static Lead after(Lead lead, int recognised, double usual, boolean going, double seconds) {
        Lead later = lead.copy();
        later.advance(recognised, usual, going, seconds);
        return later;
    }
}
