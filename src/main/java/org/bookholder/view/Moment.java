package org.bookholder.view;

import java.util.Optional;

/**
 * What a picture needs beside the state of the session: where the motion is, and what changes slowly.
 *
 * @param motion where the text is
 * @param sunk words of the script, as written, that have sunk back; its fraction is how far the next one has
 * @param pace the pace cue
 * @param rest the break notice
 * @param readouts figures at the edges
 * @param sound the verdict on the sound
 * @param opening what is said before the lesson is begun
 * @param count the count-in, empty if there is none
 * @param message a short message for the presenter, empty if there is none
 * @param messageLight its light, 0 to 1
 * @param page the list in place of the script, if one is shown
 * @param round the pickup round, if it is on
 */
public record Moment(
        Motion motion,
        double sunk,
        PaceCue pace,
        BreakNotice rest,
        Readouts readouts,
        SoundCue.Verdict sound,
        Opening opening,
        String count,
        String message,
        double messageLight,
        Optional<ViewModel.PageView> page,
        Optional<Round.Shown> round) {}
