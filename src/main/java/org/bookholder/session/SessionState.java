package org.bookholder.session;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.UnjudgedStretch;
import org.bookholder.pace.PaceRules;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.timing.StreamTime;

/**
 * The state of a session. Every view shows it and every file is written from it. Immutable.
 *
 * <p>States are equal if the same events lead to them. The running sums needed for the next event are kept inside;
 * views do not need them.
 */
public final class SessionState {
    private final Script script;
    private final StreamTime now;
    private final Takes takes;
    private final Following following;
    private final Lines lines;
    private final Measures measures;
    private final Troubles troubles;
    private final Remarks remarks;
    private final PickupRound round;
    private final Optional<UpNext> upNext;
    private final Accumulators sums;

    SessionState(
            Script script,
            StreamTime now,
            Takes takes,
            Following following,
            Lines lines,
            Measures measures,
            Troubles troubles,
            Remarks remarks,
            PickupRound round,
            Optional<UpNext> upNext,
            Accumulators sums) {
        this.script = script;
        this.now = now;
        this.takes = takes;
        this.following = following;
        this.lines = lines;
        this.measures = measures;
        this.troubles = troubles;
        this.remarks = remarks;
        this.round = round;
        this.upNext = upNext;
        this.sums = sums;
    }

    /** A state made by hand, for display; events applied to it start from empty sums. */
    public SessionState(
            Script script,
            StreamTime now,
            Takes takes,
            Following following,
            Lines lines,
            Measures measures,
            Troubles troubles) {
        this(
                script,
                now,
                takes,
                following,
                lines,
                measures,
                troubles,
                Remarks.NONE,
                PickupRound.NONE,
                Optional.empty(),
                Accumulators.begin(script, PaceRules.defaults(), FatigueLimits.defaults()));
    }

    /** The lesson. */
    public Script script() {
        return script;
    }

    /** How much audio has been taken in. */
    public StreamTime now() {
        return now;
    }

    /** The takes so far, and the condition of the last one. */
    public Takes takes() {
        return takes;
    }

    /** The reading position, and how certain it is. */
    public Following following() {
        return following;
    }

    /** Everything known about the lines. */
    public Lines lines() {
        return lines;
    }

    /** Pace, fatigue and sound. */
    public Measures measures() {
        return measures;
    }

    /** What is wrong now. */
    public Troubles troubles() {
        return troubles;
    }

    /** What people added: notes, messages, breaks and decisions. */
    public Remarks remarks() {
        return remarks;
    }

    /** Where the pickup round stands. */
    public PickupRound round() {
        return round;
    }

    /** What follows in the running order, if there is one; only views are told of it. */
    public Optional<UpNext> upNext() {
        return upNext;
    }

    /** The same with what follows in the running order, for views only. */
    public SessionState with(UpNext next) {
        return new SessionState(
                script, now, takes, following, lines, measures, troubles, remarks, round, Optional.of(next), sums);
    }

    Accumulators sums() {
        return sums;
    }

    /**
     * Words that would be called misread in the best attempts, had nobody decided for another line or session that they are heard so: by
     * line, from 1.
     */
    public SortedMap<Integer, List<Deviation>> notCalled() {
        SortedMap<Integer, List<Deviation>> all = new TreeMap<>();
        for (LineNotes notes : lines.all()) {
            Optional<Attempt> best = notes.decision().isPresent() ? Optional.empty() : notes.best();
            List<Deviation> calls = best.stream()
                    .flatMap(shown -> sums.heard().lines().get(notes.line() - 1).attempts().stream()
                            .filter(heard -> heard.take() == shown.take() && heard.ordinal() == shown.ordinal())
                            .flatMap(heard -> heard.deviations().stream())
                            .filter(call -> call.kind() == Deviation.Kind.SWAPPED)
                            .filter(call -> !shown.deviations().contains(call)))
                    .toList();
            if (!calls.isEmpty()) {
                all.put(notes.line(), calls);
            }
        }
        return all;
    }

    /** The same with one more trouble, for views only. */
    public SessionState with(Trouble trouble) {
        return new SessionState(
                script, now, takes, following, lines, measures, troubles.with(trouble), remarks, round, upNext, sums);
    }

    /** The same with a count-in of its held take, for display. */
    public SessionState with(CountIn count) {
        return new SessionState(
                script,
                now,
                takes.countedIn(count),
                following,
                lines,
                measures,
                troubles,
                remarks,
                round,
                upNext,
                sums);
    }

    /** The same with another step of the pickup round, for display. */
    public SessionState with(PickupRound step) {
        return new SessionState(script, now, takes, following, lines, measures, troubles, remarks, step, upNext, sums);
    }

    /** How long this session took of its presenter. */
    public TimeSpent spent() {
        return sums.spent();
    }

    /** What was read on the day, in this session and before; empty if that is nothing. */
    public Optional<DaySoFar> day() {
        Optional<Instant> until = takes.rolling() ? Optional.of(takes.last().ended()) : takes.restingSince();
        return until.map(time -> new DaySoFar(time, sums.fatigue().earlier(now)));
    }

    /** Number of spoken words before the reading position. */
    public int wordsBefore() {
        return sums.counts().before(following.position());
    }

    /** Number of spoken words in the whole lesson. */
    public int wordsTotal() {
        return sums.counts().total();
    }

    /** Line {@code number} of the script, from 1. */
    public ScriptLine line(int number) {
        return sums.counts().line(number);
    }

    /** Whether the position lies past the last line. */
    public boolean finished() {
        return following.position().line() > sums.counts().lines();
    }

    /** The stretches that the program failed to judge, in the order in which they occurred. */
    public List<UnjudgedStretch> unjudged() {
        return sums.unjudged().stretches();
    }

    /** Number of events applied; two states of one session with the same number are equal. */
    public long revision() {
        return sums.revision();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SessionState state && parts().equals(state.parts());
    }

    @Override
    public int hashCode() {
        return parts().hashCode();
    }

    @Override
    public String toString() {
        return "SessionState" + parts();
    }

    private List<Object> parts() {
        return List.of(script, now, takes, following, lines, measures, troubles, remarks, round, upNext, sums);
    }
}
