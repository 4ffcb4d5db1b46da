package org.bookholder.session;

import java.time.Instant;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.fatigue.FatigueReport;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.pace.PaceReading;
import org.bookholder.pace.PaceRules;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.timing.StreamTime;
import org.pcollections.PVector;

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
 * @param tallies what is kept to go on from here, of no interest to views
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
        String trouble,
        Accumulators tallies) {
    /** Copies the lists, except those that share their unchanged parts with the state before. */
    public SessionState {
        takes = kept(takes);
        lines = kept(lines);
        asides = kept(asides);
    }

    /** A state to show; events applied to it begin with new tallies. */
    public SessionState(
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
        this(
                script,
                now,
                takes,
                rolling,
                position,
                mover,
                follow,
                held,
                lines,
                asides,
                pace,
                fatigue,
                sound,
                trouble,
                Accumulators.begin(script, PaceRules.defaults(), FatigueLimits.defaults()));
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

    /** The same with something else that is wrong now, for views only. */
    public SessionState withTrouble(String text) {
        return new SessionState(
                script, now, takes, rolling, position, mover, follow, held, lines, asides, pace, fatigue, sound, text,
                tallies);
    }

    /** The lines to pick up, in script order. */
    public List<LineNotes> pickups() {
        return lines.stream().filter(LineNotes::pickup).toList();
    }

    /** The word count as spoken that lies before the reading position. */
    public int wordsBefore() {
        return tallies.counts().before(position);
    }

    /** The word count as spoken of the whole lesson. */
    public int wordsTotal() {
        return tallies.counts().total();
    }

    /** Line {@code number} of the script, from 1. */
    public ScriptLine line(int number) {
        return tallies.counts().line(number);
    }

    /** Whether the position lies past the last line. */
    public boolean finished() {
        return position.line() > tallies.counts().lines();
    }

    /** Whether the take was held at some moment between two times. */
    public boolean heldWithin(StreamTime from, StreamTime to) {
        return tallies.holds().stream().anyMatch(hold -> hold.start().isBefore(to) && from.isBefore(hold.end()));
    }

    /** What people have added: notes, messages, breaks and decisions. */
    public Remarks remarks() {
        return tallies.remarks();
    }

    /** How many events led here: two states of one session with the same count are the same. */
    public long revision() {
        return tallies.revision();
    }

    private static <T> List<T> kept(List<T> list) {
        return list instanceof PVector ? list : List.copyOf(list);
    }
}
