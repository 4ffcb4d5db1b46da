package org.bookholder.view;

/**
 * What a picture needs beside the state of the session: where the motion is, and what changes slowly. Changed in place.
 * Confined to one thread.
 */
final class Moment {
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
    final Round round = new Round();

    /** Words of the script, as written, that have sunk back; its fraction is how far the next one has. */
    double sunk;

    /** The break notice. */
    BreakNotice rest = BreakNotice.NONE;

    /** Figures at the edges. */
    Readouts readouts = Readouts.NONE;

    /** What the producer has to say. */
    ProducerWord producer = ProducerWord.NONE;

    Moment(Motion motion) {
        this.motion = motion;
    }
}
