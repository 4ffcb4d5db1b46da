package org.bookholder.view.motion;

import java.util.function.Consumer;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.Command;
import org.bookholder.session.Mover;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.view.layout.Layout;

/**
 * Decides which height is placed at the eye-line: where the voice is, where the steady pace has got to, or where the
 * presenter has moved the text by hand. The hand always wins; the voice takes over again when it has found its place.
 * Confined to one thread.
 */
public final class Steering {
    /** Seconds after a movement by hand in which nothing else moves the text. */
    static final double HAND_SECONDS = 0.6;

    private static final double REPORT_SECONDS = 0.12;
    /** The voice is being followed if it has moved the position within this many seconds. */
    private static final double VOICE_SECONDS = 4;

    private static final double STARTING_SECONDS = 0.7;

    private Layout layout;
    private Mover way;
    private final Aim aim = new Aim();
    private final PositionInterpolator lead = PositionInterpolator.restingAt(0);
    private ReadingPosition accepted = ReadingPosition.START;
    private ReadingPosition seen = ReadingPosition.START;
    private ReadingPosition sent = ReadingPosition.START;
    private int sentRow;
    private boolean byHand;
    private double sinceHand = 100;
    private double sinceSent = 100;
    private double sinceVoice = 100;
    private double steadyWords;
    private double steadySpeed;
    private final Consumer<Command> tell;

    /**
     * @param way what moves the text
     * @param from where reading begins
     * @param tell receives the commands for the session
     */
    public Steering(Layout layout, Mover way, ReadingPosition from, Consumer<Command> tell) {
        this.tell = tell;
        this.layout = layout;
        this.way = way;
        restAt(from);
    }

    /** Where the text should be; always the same object, changed in place. */
    public Aim aim() {
        return aim;
    }

    /**
     * Position up to which words count as spoken: the session's position, except during a possible slip of recognition.
     */
    public ReadingPosition accepted() {
        return accepted;
    }

    /** What moves the text. */
    Mover way() {
        return way;
    }

    /** Current speed of the steady pace, in words per second. */
    double steadySpeed() {
        return steadySpeed;
    }

    /** The place at the eye-line. */
    public ReadingPosition place() {
        return layout.readRows().isEmpty()
                ? ReadingPosition.START
                : layout.readRows().get(layout.readRowAt(aim.height())).first();
    }

    /** Changes what moves the text, starting from where the text is. */
    public void choose(Mover newWay) {
        way = newWay;
        byHand = false;
        steadyWords = spokenAtEyeLine();
        steadySpeed = 0;
        lead.moveTo(steadyWords);
        sentRow = layout.readRowAt(aim.height());
    }

    /** Takes a new layout; the place stays the same. */
    public void relayout(Layout newLayout, ReadingPosition place) {
        layout = newLayout;
        aim.put(byHand || way == Mover.HAND ? middleOf(place) : newLayout.aim(place));
        sentRow = newLayout.readRowOf(place);
    }

    /** Takes a changed text, with the reading position at {@code position}. */
    public void textChanged(Layout newLayout, ReadingPosition position) {
        layout = newLayout;
        byHand = false;
        steadySpeed = 0;
        restAt(position);
    }

    /** Moves the text by hand, by this many rows; positive is forward. */
    public void byHand(double rows) {
        takeInHand();
        double first =
                layout.readRows().isEmpty() ? 0 : layout.readRows().get(0).middle();
        double last = layout.readRows().isEmpty()
                ? 0
                : layout.readRows().get(layout.readRows().size() - 1).middle();
        aim.put(Math.max(first, Math.min(last, aim.height() + rows * layout.pitch())));
        steadyWords = spokenAtEyeLine();
    }

    /** Moves the text by hand to the middle of the row that is {@code rows} after the one at the eye-line. */
    public void toRow(int rows) {
        takeInHand();
        if (!layout.readRows().isEmpty()) {
            int wanted = layout.readRowAt(aim.height()) + rows;
            int row = Math.max(0, Math.min(layout.readRows().size() - 1, wanted));
            aim.put(layout.readRows().get(row).middle());
            steadyWords = spokenAtEyeLine();
        }
    }

    /** Moves the reading position, and the text with it. */
    public void goTo(ReadingPosition position) {
        takeInHand();
        putAt(position);
        steadyWords = layout.spokenBefore(position);
        send(position, Mover.HAND);
    }

    /** Where the presenter is: the position just sent by hand if there is one, otherwise the session's position. */
    public ReadingPosition current(SessionState state) {
        return sinceHand < HAND_SECONDS && sinceSent < HAND_SECONDS
                ? sent
                : state.following().position();
    }

    /** Advances by {@code seconds}. */
    public void advance(SessionState state, double seconds) {
        sinceHand += seconds;
        sinceSent += seconds;
        sinceVoice += seconds;
        adoptMovesOfOthers(state);
        switch (way) {
            case VOICE -> followVoice(state, seconds);
            case STEADY -> goSteadily(state, seconds);
            case HAND -> {
                accepted = state.following().position();
                report(state, Mover.HAND);
            }
        }
    }

    private void followVoice(SessionState state, double seconds) {
        if (byHand) {
            accepted = state.following().position();
            report(state, Mover.HAND);
            return;
        }
        boolean going = state.takes().rolling()
                && !state.takes().held()
                && state.following().certainty() == FollowState.FOLLOWING;
        lead.advance(layout.spokenBefore(state.following().position()), targetPace(state), going, seconds);
        accepted = lead.slips() ? accepted : state.following().position();
        double speed = lead.speed() * layout.stride(lead.words());
        double height = layout.aimAtSpoken(lead.words(), lead.heard(), lead.saidSince());
        aim.lead(height, speed, lead.speed(), lead.jumped(), !lead.turned());
    }

    private void goSteadily(SessionState state, double seconds) {
        boolean going = state.takes().rolling() && !state.takes().held() && sinceHand > HAND_SECONDS;
        double wanted = going ? targetPace(state) : 0;
        steadySpeed += (wanted - steadySpeed) * (1 - Math.exp(-seconds / STARTING_SECONDS));
        steadyWords = Math.min(layout.spoken(), steadyWords + steadySpeed * seconds);
        if (sinceHand > HAND_SECONDS) {
            double speed = steadyWords < layout.spoken() ? steadySpeed * layout.stride(steadyWords) : 0;
            aim.lead(layout.aimAtSpoken(steadyWords), speed, steadySpeed, false, true);
        }
        accepted = state.following().position();
        report(state, sinceHand > HAND_SECONDS ? Mover.STEADY : Mover.HAND);
    }

    /** Target pace in spoken words per second. */
    private static double targetPace(SessionState state) {
        return state.script().settings().targetPace() / 60.0;
    }

    /** Takes over a position that was changed by another person, or by the voice if it leads. */
    private void adoptMovesOfOthers(SessionState state) {
        if (state.following().position().equals(seen)) {
            return;
        }
        seen = state.following().position();
        sinceVoice = state.following().mover() == Mover.VOICE ? 0 : sinceVoice;
        if (sinceHand < HAND_SECONDS) {
            return;
        }
        if (state.following().mover() == Mover.VOICE) {
            if (byHand) {
                lead.moveTo(layout.spokenBefore(seen));
            }
            byHand = false;
        } else if (state.following().mover() == Mover.HAND && !seen.equals(sent)) {
            lead.moveTo(layout.spokenBefore(seen));
            byHand = false;
            putAt(seen);
            steadyWords = layout.spokenBefore(seen);
            sentRow = layout.readRowOf(seen);
            sent = seen;
        }
    }

    /**
     * Tells the session when another row has reached the eye-line. Not while the session follows the voice there,
     * because that would interrupt its measuring of the pace.
     */
    private void report(SessionState state, Mover mover) {
        int row = layout.readRowAt(aim.height());
        boolean heard = way != Mover.VOICE && sinceVoice < VOICE_SECONDS;
        if (heard && Math.abs(layout.readRowOf(state.following().position()) - row) <= 1) {
            sentRow = row;
            return;
        }
        if (row != sentRow && sinceSent >= REPORT_SECONDS && !layout.readRows().isEmpty()) {
            send(layout.readRows().get(row).first(), mover);
        }
    }

    private void send(ReadingPosition position, Mover mover) {
        sent = position;
        sentRow = layout.readRowOf(position);
        sinceSent = 0;
        tell.accept(new TakeCommand.GoTo(position, mover));
    }

    private void takeInHand() {
        if (!byHand) {
            sentRow = layout.readRowAt(aim.height());
        }
        byHand = true;
        sinceHand = 0;
    }

    private void putAt(ReadingPosition position) {
        aim.put(way == Mover.HAND ? middleOf(position) : layout.aim(position));
    }

    private void restAt(ReadingPosition position) {
        seen = position;
        sent = position;
        accepted = position;
        putAt(position);
        lead.moveTo(layout.spokenBefore(position));
        steadyWords = layout.spokenBefore(position);
        sentRow = layout.readRowOf(position);
    }

    private double middleOf(ReadingPosition position) {
        return layout.readRows().isEmpty()
                ? 0
                : layout.readRows().get(layout.readRowOf(position)).middle();
    }

    private double spokenAtEyeLine() {
        if (layout.readRows().isEmpty()) {
            return 0;
        }
        return layout.readRows().get(layout.readRowAt(aim.height())).spokenBefore();
    }
}
