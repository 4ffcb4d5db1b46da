package org.bookholder.view;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.SessionState;
import org.bookholder.view.Frame.Footlights;
import org.bookholder.view.Frame.LessonThread;
import org.bookholder.view.Frame.Spot;
import org.bookholder.view.cue.KeyHints;
import org.bookholder.view.cue.Opening;
import org.bookholder.view.cue.PaceCue;
import org.bookholder.view.cue.Palette;
import org.bookholder.view.input.KeyMap;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.layout.Layout;
import org.bookholder.view.page.PageView;
import org.bookholder.view.page.PickupLines;
import org.bookholder.view.settings.Cue;
import org.bookholder.view.settings.WindowSettings;
import org.bookholder.wording.RoundText;
import org.jspecify.annotations.Nullable;

/** Fills in the pictures of the reading window from the state of a session. Confined to one thread. */
final class FrameBuilder {
    /** The blade's position is rounded to this fraction of its range, so that it really comes to rest. */
    private static final double BLADE_FINENESS = 500;

    private final AnimationState moment;
    private final Frame view;
    private final PickupLines pickups = new PickupLines();
    private final RowViews rows;
    private final KeyHints hints = new KeyHints();
    private List<Double> pickupShares = List.of();
    private String pickupCount = "";
    private @Nullable Layout sharedOf;
    private String round = "";
    private @Nullable SessionState wordedOf;

    FrameBuilder(AnimationState moment, Geometry geometry) {
        this.moment = moment;
        view = new Frame(geometry, moment.opening);
        rows = new RowViews(view, pickups, moment);
    }

    /** Fills in the picture of {@code state}; returns the same object each time. */
    Frame fill(SessionState state, Layout layout, Geometry geometry, WindowSettings settings) {
        Set<Cue> cues = settings.cues();
        look(state, layout);
        word(state);
        Optional<PageView> page = moment.pages.view();
        double pageLight = page.isPresent() ? page.get().light() : 0;
        view.setGround(geometry, settings.mirrored(), settings.upsideDown());
        rows.fill(layout, geometry, cues.contains(Cue.PICKUPS));
        Footlights marks = cues.contains(Cue.FOOTLIGHTS) ? footlights(state) : Footlights.HIDDEN;
        view.setText((1 - moment.motion.veil()) * (1 - pageLight), marks);
        reed(cues.contains(Cue.PACE));
        thread(state, layout, cues.contains(Cue.PICKUPS));
        captions(state, cues, page.isPresent(), settings.keys());
        view.setRest(showsRest(cues) ? moment.rest.urgency() : Urgency.NONE);
        view.lookAtOpening();
        view.setPage(page);
        return view;
    }

    /** Finds the positions of the pickups, when the pickups or the rows have changed. */
    @SuppressWarnings("ReferenceEquality")
    private void look(SessionState state, Layout layout) {
        boolean changed = pickups.look(state);
        if (changed || layout != sharedOf) {
            sharedOf = layout;
            double whole = Math.max(1, layout.spoken());
            pickupShares = pickups.numbers().stream()
                    .map(line -> layout.spokenBefore(new ReadingPosition(line, 1)) / whole)
                    .collect(Collectors.toUnmodifiableList());
            pickupCount = pickups.count() == 0 ? "" : Integer.toString(pickups.count());
        }
    }

    /** Puts the round into words, when the state has changed. */
    @SuppressWarnings("ReferenceEquality")
    private void word(SessionState state) {
        if (state != wordedOf) {
            wordedOf = state;
            round = RoundText.of(state);
        }
    }

    private static Footlights footlights(SessionState state) {
        if (state.takes().held() || !state.takes().rolling()) {
            return Footlights.OUTLINES;
        }
        return state.following().certainty() == FollowState.LOST ? Footlights.DOTS : Footlights.BARS;
    }

    private void reed(boolean shown) {
        double lean = Math.rint(moment.pace.lean() * BLADE_FINENESS) / BLADE_FINENESS;
        int side = lean > 0 ? Palette.FAST : Palette.SLOW;
        double limit = 0.07 / PaceCue.FULL_LEAN;
        double share = (Math.abs(lean) - limit) / limit;
        view.setReed(shown, lean, Palette.mix(Palette.ON_PACE, side, share), moment.pace.text());
    }

    private void thread(SessionState state, Layout layout, boolean shown) {
        if (!shown) {
            view.setThread(Optional.empty());
            return;
        }
        double read = layout.spokenBefore(state.following().position()) / Math.max(1.0, layout.spoken());
        if (!view.threadShows(read, pickupShares)) {
            view.setThread(Optional.of(new LessonThread(read, pickupShares)));
        }
    }

    private void captions(SessionState state, Set<Cue> cues, boolean page, KeyMap keys) {
        boolean time = cues.contains(Cue.TIME);
        say(Spot.HEAD_LEFT, time ? moment.readouts.takeText() : "", Palette.FIGURE);
        say(Spot.FOOT_LEFT, time && state.takes().rolling() ? moment.readouts.leftText() : "", Palette.FIGURE);
        say(Spot.HEAD_RIGHT, cues.contains(Cue.PICKUPS) ? pickupCount : "", Palette.DOG_EAR);
        boolean pressing = moment.rest.urgency().compareTo(Urgency.DUE) >= 0;
        String rest = showsRest(cues) ? moment.rest.text() : "";
        say(Spot.FOOT_RIGHT, rest, pressing ? Palette.ASKING : Palette.DIRECTION);
        say(Spot.HEAD_MIDDLE, cues.contains(Cue.SOUND) ? soundText(state) : "", Palette.ASKING);
        String count = moment.count.text(keys);
        say(Spot.COUNT, page ? "" : count, Palette.COMING);
        boolean clean = moment.round.ticked() > 0;
        say(
                Spot.BESIDE,
                page ? "" : standing(state, count, cues.contains(Cue.FOOTLIGHTS), keys),
                clean ? Palette.TICK : Palette.FOOTLIGHT);
        message(
                state,
                showsRest(cues),
                page || !edges(cues) ? "" : hints.text(state, moment.opening, moment.notices.notice(), keys));
    }

    /** Advice on a break can be hidden only until it is overdue. */
    private boolean showsRest(Set<Cue> cues) {
        return cues.contains(Cue.BREAK) || moment.rest.urgency() == Urgency.OVERDUE;
    }

    /** Whether anything is shown at the edges: who has turned that off wants the text alone. */
    private static boolean edges(Set<Cue> cues) {
        return cues.size() > (cues.contains(Cue.FOOTLIGHTS) ? 1 : 0);
    }

    /** Good sound needs no words; before the lesson the verdict is shown with the lesson's length instead. */
    private String soundText(SessionState state) {
        if (moment.opening.light() > 0) {
            return "";
        }
        return switch (moment.sound.verdict()) {
            case UNKNOWN, LOWISH, GOOD, LOUDISH -> "";
            case GONE, LOW, LOUD ->
                Opening.listens(state) ? moment.sound.verdict().words() : "";
        };
    }

    /**
     * Order of priority: answers to the presenter, the producer's message, problems, what has to be known at the opening,
     * notices, advice while nobody is reading, then the keys that are needed now.
     */
    private void message(SessionState state, boolean rests, String hint) {
        boolean reading = state.takes().rolling() && !state.takes().held();
        if (!moment.messages.text().isEmpty()) {
            view.setCaption(Spot.MESSAGE, moment.messages.text(), Palette.COMING, moment.messages.light());
        } else if (!moment.producer.text().isEmpty() && moment.producer.light() > 0) {
            view.setCaption(Spot.MESSAGE, moment.producer.text(), Palette.COMING, moment.producer.light());
        } else if (!moment.notices.wrong().isEmpty()) {
            say(Spot.MESSAGE, moment.notices.wrong(), Palette.ASKING);
        } else if (moment.opening.light() > 0 && !hint.isEmpty()) {
            view.setCaption(Spot.MESSAGE, hint, Palette.FIGURE, state.takes().held() ? 1 : moment.opening.light());
        } else if (moment.notices.light() > 0 && !moment.notices.notice().isEmpty()) {
            view.setCaption(Spot.MESSAGE, moment.notices.notice(), Palette.FIGURE, moment.notices.light());
        } else if (!reading && rests && !moment.rest.sentence().isEmpty()) {
            say(Spot.MESSAGE, moment.rest.sentence(), Palette.DIRECTION);
        } else {
            say(Spot.MESSAGE, hint, Palette.FIGURE);
        }
    }

    /** Text beside the mark: what the mark means, and the progress of the pickup round. */
    private String standing(SessionState state, String count, boolean marked, KeyMap keys) {
        if (!marked || (!state.takes().rolling() && !round.isEmpty())) {
            return round;
        }
        if (!state.takes().rolling()) {
            return state.takes().all().isEmpty() ? "ready" : "cut";
        }
        if (state.takes().held()) {
            return count.isEmpty() ? hints.held(keys) : "";
        }
        if (state.following().certainty() == FollowState.LOST) {
            return "listening for the place";
        }
        return round;
    }

    private void say(Spot spot, String text, int rgb) {
        view.setCaption(spot, text, rgb, 1);
    }
}
