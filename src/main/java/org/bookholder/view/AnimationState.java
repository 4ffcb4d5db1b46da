package org.bookholder.view;

import org.bookholder.session.PickupRound;
import org.bookholder.view.cue.BreakNotice;
import org.bookholder.view.cue.CountDisplay;
import org.bookholder.view.cue.Messages;
import org.bookholder.view.cue.Notices;
import org.bookholder.view.cue.Opening;
import org.bookholder.view.cue.PaceCue;
import org.bookholder.view.cue.ProducerWord;
import org.bookholder.view.cue.Readouts;
import org.bookholder.view.cue.SoundCue;
import org.bookholder.view.motion.Motion;
import org.bookholder.view.page.Pages;

/**
 * What a picture needs besides the session's state: the current motion, and everything that changes gradually. Mutable.
 * Confined to one thread.
 */
final class AnimationState {
    /** The motion of the text. */
    final Motion motion;

    /** The pace cue. */
    final PaceCue pace = new PaceCue();

    /** The verdict on the sound. */
    final SoundCue sound = new SoundCue();

    /** What is shown before the lesson begins. */
    final Opening opening = new Opening();

    /** The count before a take. */
    final CountDisplay count = new CountDisplay();

    /** Where takes began. */
    final TakeStarts takes = new TakeStarts();

    /** Short messages for the presenter. */
    final Messages messages = new Messages();

    /** The lists that can replace the script. */
    final Pages pages = new Pages();

    /** The pickup round as the session leads it. */
    PickupRound round = PickupRound.NONE;

    /** Number of written words of the script that have dimmed; the fraction tells how far the next one has. */
    double sunk;

    /** The break notice. */
    BreakNotice rest = BreakNotice.NONE;

    /** Figures at the edges. */
    Readouts readouts = Readouts.NONE;

    /** What is wrong, and what has to be told. */
    final Notices notices = new Notices();

    /** The producer's message. */
    ProducerWord producer = ProducerWord.NONE;

    AnimationState(Motion motion) {
        this.motion = motion;
    }
}
