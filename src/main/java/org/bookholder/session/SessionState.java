package org.bookholder.session;

import java.time.Instant;
import java.util.List;
import org.bookholder.fatigue.FatigueReport;
import org.bookholder.follow.Aside;
import org.bookholder.follow.FollowState;
import org.bookholder.follow.ReadingPosition;
import org.bookholder.pace.PaceReading;
import org.bookholder.script.Script;
import org.bookholder.timing.StreamTime;

/**
 * Where a session stands: what every view shows and every file is written from. Immutable.
 *
 * @param script the lesson
 * @param now audio taken in so far
 * @param takes the takes so far, the last one possibly running
 * @param rolling whether a take is running
 * @param position the word to be read next
 * @param mover who or what moved it there
 * @param follow how sure the follower is
 * @param held whether the take is held
 * @param lines what is known of each line, in script order
 * @param asides in order of time
 * @param pace how fast it is read
 * @param fatigue where the session stands against its limits
 * @param sound the sound of the last second
 * @param trouble what is wrong with microphone or recording now; empty if nothing is
 */
public record SessionState(
        Script script,
        StreamTime now,
        List<Take> takes,
        boolean rolling,
        ReadingPosition position,
        Mover mover,
        FollowState follow,
        boolean held,
        List<LineNotes> lines,
        List<Aside> asides,
        PaceReading pace,
        FatigueReport fatigue,
        Sound sound,
        String trouble) {
    /** Copies the lists. */
    public SessionState {
        takes = List.copyOf(takes);
        lines = List.copyOf(lines);
        asides = List.copyOf(asides);
    }

    /**
     * One run of the lesson.
     *
     * @param number from 1
     * @param start where its audio begins in the session's audio
     * @param end where it ends, so far
     * @param when time of day of its first sample
     * @param audio name of the microphone or file; empty if there is none
     */
    public record Take(int number, StreamTime start, StreamTime end, Instant when, String audio) {}

    /**
     * The sound of the last second.
     *
     * @param rms in dBFS
     * @param peak in dBFS
     * @param clipped samples at full scale in runs of three or more, in the session so far
     * @param lost audio lost on the way in, in the session so far
     */
    public record Sound(double rms, double peak, long clipped, StreamTime lost) {}

    /** The lines to pick up, in script order. */
    public List<LineNotes> pickups() {
        return lines.stream().filter(LineNotes::pickup).toList();
    }

    /** The word count as spoken that lies before the reading position. */
    public int wordsBefore() {
        return script.lines().stream()
                .limit(position.line() - 1L)
                .mapToInt(l -> l.spokenWords())
                .sum();
    }
}
