package org.bookholder.view;

import org.bookholder.view.cue.BreakNotice;
import org.bookholder.view.cue.CountIn;
import org.bookholder.view.cue.Messages;
import org.bookholder.view.cue.Opening;
import org.bookholder.view.cue.PaceCue;
import org.bookholder.view.cue.ProducerWord;
import org.bookholder.view.cue.Readouts;
import org.bookholder.view.cue.SoundCue;
import org.bookholder.view.motion.Motion;
import org.bookholder.view.page.Pages;

/**
 * What a picture needs beside the state of the session: where the motion is, and what changes slowly. Changed in place.
 * Confined to one thread.
 */
final class AnimationState {
    /** Where the text is. */
    final Motion motion;

    /** The pace cue. */
    final PaceCue pace = new PaceCue();

    /** The verdict on the sound. */
    final SoundCue sound = new SoundCue();

    /** What is said before the lesson is begun. */
    final Opening opening = new Opening();

    /** The count before a take. */
    final CountIn countIn = new CountIn(0);

    /** Where takes began. */
    final TakeStarts takes = new TakeStarts();

    /** Short messages for the presenter. */
    final Messages messages = new Messages();

    /** The lists that can stand in place of the script. */
    final Pages pages = new Pages();

    /** The pickup round. */
    final PickupRound round = new PickupRound();

    /** Words of the script, as written, that have sunk back; its fraction is how far the next one has. */
    double sunk;

    /** The break notice. */
    BreakNotice rest = BreakNotice.NONE;

    /** Figures at the edges. */
    Readouts readouts = Readouts.NONE;

    /** What the producer has to say. */
    ProducerWord producer = ProducerWord.NONE;

    AnimationState(Motion motion) {
        this.motion = motion;
    }
}
