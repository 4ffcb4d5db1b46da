package org.bookholder.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.follow.FollowState;
import org.bookholder.follow.ReadingPosition;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.view.ViewModel.Caption;
import org.bookholder.view.ViewModel.Footlights;
import org.bookholder.view.ViewModel.LessonThread;
import org.bookholder.view.ViewModel.Reed;
import org.bookholder.view.ViewModel.Spot;

/** Makes pictures of the reading window from the state of a session. Pure. */
public final class ViewModels {
    private ViewModels() {}

    /** The picture of {@code state} at a moment. */
    public static ViewModel of(
            SessionState state, Layout layout, Geometry geometry, Moment moment, WindowSettings settings) {
        List<LineNotes> pickups = state.pickups();
        Set<Cue> cues = settings.cues();
        double pageLight = moment.page().map(ViewModel.PageView::light).orElse(0.0);
        return new ViewModel(
                geometry,
                RowViews.of(layout, geometry, moment, cues.contains(Cue.PICKUPS) ? pickups : List.of()),
                (1 - moment.motion().veil()) * (1 - pageLight),
                footlights(state),
                cues.contains(Cue.PACE) ? Optional.of(reed(moment.pace())) : Optional.empty(),
                cues.contains(Cue.PICKUPS) ? Optional.of(thread(state, layout, pickups)) : Optional.empty(),
                captions(state, moment, pickups.size(), cues),
                cues.contains(Cue.BREAK) ? moment.rest().urgency() : Urgency.NONE,
                moment.opening(),
                moment.page(),
                settings.mirrored(),
                settings.upsideDown());
    }

    private static Footlights footlights(SessionState state) {
        if (state.held() || !state.rolling()) {
            return Footlights.OUTLINES;
        }
        return state.follow() == FollowState.LOST ? Footlights.DOTS : Footlights.BARS;
    }

    private static Reed reed(PaceCue pace) {
        double lean = pace.lean();
        int side = lean > 0 ? Palette.FAST : Palette.SLOW;
        double limit = 0.07 / PaceCue.FULL_LEAN;
        double share = (Math.abs(lean) - limit) / limit;
        String figure = pace.figure() > 0 ? Integer.toString(pace.figure()) : "";
        return new Reed(lean, Palette.mix(Palette.ON_PACE, side, share), figure);
    }

    private static LessonThread thread(SessionState state, Layout layout, List<LineNotes> pickups) {
        double whole = Math.max(1, layout.spoken());
        double read = layout.spokenBefore(state.position()) / whole;
        return new LessonThread(
                read,
                pickups.stream()
                        .map(n -> layout.spokenBefore(new ReadingPosition(n.line(), 1)) / whole)
                        .toList());
    }

    private static List<Caption> captions(SessionState state, Moment moment, int pickups, Set<Cue> cues) {
        List<Caption> captions = new ArrayList<>();
        if (cues.contains(Cue.TIME)) {
            add(captions, moment.readouts().takeText(), Spot.HEAD_LEFT, Palette.FIGURE);
            add(captions, state.rolling() ? moment.readouts().leftText() : "", Spot.FOOT_LEFT, Palette.FIGURE);
        }
        if (cues.contains(Cue.PICKUPS)) {
            add(captions, pickups == 0 ? "" : Integer.toString(pickups), Spot.HEAD_RIGHT, Palette.DOG_EAR);
        }
        if (cues.contains(Cue.BREAK)) {
            boolean pressing = moment.rest().urgency().compareTo(Urgency.DUE) >= 0;
            add(captions, moment.rest().text(), Spot.FOOT_RIGHT, pressing ? Palette.ASKING : Palette.DIRECTION);
        }
        if (cues.contains(Cue.SOUND)) {
            add(captions, soundText(state, moment), Spot.HEAD_MIDDLE, Palette.ASKING);
        }
        if (moment.page().isEmpty()) {
            add(captions, moment.count(), Spot.COUNT, Palette.COMING);
            add(captions, standing(state, moment), Spot.BESIDE, standingColour(moment));
        }
        message(state, moment).ifPresent(captions::add);
        return captions;
    }

    /** Good sound needs no words. */
    private static String soundText(SessionState state, Moment moment) {
        return switch (moment.sound()) {
            case UNKNOWN, GOOD -> "";
            case GONE, LOW, LOUD -> Opening.listens(state) ? moment.sound().words() : "";
        };
    }

    /** What the presenter asked for comes first, then a trouble, then advice while nobody reads. */
    private static Optional<Caption> message(SessionState state, Moment moment) {
        if (!moment.message().isEmpty() && moment.messageLight() > 0) {
            return Optional.of(new Caption(moment.message(), Spot.MESSAGE, Palette.COMING, moment.messageLight()));
        }
        if (!state.trouble().isEmpty()) {
            return Optional.of(new Caption(state.trouble(), Spot.MESSAGE, Palette.ASKING, 1));
        }
        boolean reading = state.rolling() && !state.held();
        if (!reading && !moment.rest().sentence().isEmpty()) {
            return Optional.of(new Caption(moment.rest().sentence(), Spot.MESSAGE, Palette.DIRECTION, 1));
        }
        return Optional.empty();
    }

    private static int standingColour(Moment moment) {
        return moment.round().filter(Round.Shown::clean).isPresent() ? Palette.TICK : Palette.FOOTLIGHT;
    }

    private static String standing(SessionState state, Moment moment) {
        String round = moment.round().map(Round.Shown::caption).orElse("");
        if (!state.rolling() && !round.isEmpty()) {
            return round;
        }
        if (!state.rolling()) {
            return state.takes().isEmpty() ? "ready" : "cut";
        }
        if (state.held()) {
            return moment.count().isEmpty() ? "held" : "";
        }
        if (state.follow() == FollowState.LOST) {
            return "listening for the place";
        }
        return round;
    }

    private static void add(List<Caption> captions, String text, Spot spot, int rgb) {
        if (!text.isEmpty()) {
            captions.add(new Caption(text, spot, rgb, 1));
        }
    }
}
