package org.bookholder.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.bookholder.fatigue.FatigueReport;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.Script;
import org.bookholder.session.Command;
import org.bookholder.session.Mover;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyMap;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.layout.Layout;
import org.bookholder.view.layout.TextMeasure;
import org.bookholder.view.layout.Typesetter;
import org.bookholder.view.motion.Motion;
import org.bookholder.view.motion.Steering;
import org.bookholder.view.page.Pages;
import org.bookholder.view.settings.WindowSettings;
import org.jspecify.annotations.Nullable;

/**
 * The reading window without an actual window: takes the presenter's input, advances time, and gives the picture to
 * draw. Reads no clock. Confined to one thread.
 */
public final class Scene {
    private static final double SINKING_SECONDS = 0.11;
    private static final int SINKING_WORDS = 6;
    private static final double SPEAKING_SECONDS = 1.5;
    private static final double LONG_AGO = 100;
    private static final double TEXT_SECONDS = 2.5;
    private static final double ROUND_SECONDS = 4;

    /** A peak above this, in dBFS, counts as a voice trying the sound before the lesson begins. */
    private static final double VOICE = -45;

    private final TextMeasure measure;
    private final AnimationState now;
    private final FrameBuilder pictures;
    private final ActionHandler requests;
    private final Teaching teaching;
    private final Steering steering;
    private final List<Command> commands = new ArrayList<>();
    private Script script;
    private WindowSettings settings;
    private Screen screen;
    private Geometry geometry;
    private Layout layout;
    private @Nullable FatigueReport report;
    private ReadingPosition before;
    private boolean readBefore;
    private double sinceSpoken = LONG_AGO;

    /**
     * The size of a picture.
     *
     * @param width in pixels
     * @param height in pixels
     * @param monitorPixels height of the whole monitor in pixels
     * @param monitorHeight height of the monitor's picture in mm as it reports it, 0 if it does not
     */
    public record Screen(int width, int height, int monitorPixels, double monitorHeight) {
        /**
         * Height of a monitor in pixels. A screen unit may be several pixels, or one and a half.
         *
         * @param height height in pixels of the picture in a window on this monitor
         * @param units the same height in screen units
         * @param monitorUnits height of the monitor in screen units
         */
        public static int pixels(int height, int units, int monitorUnits) {
            return units > 0 ? (int) Math.round((double) monitorUnits * height / units) : height;
        }
    }

    /** Sets up the scene for a script; {@code from} is where reading begins. */
    public Scene(Script script, WindowSettings settings, TextMeasure measure, Screen screen, ReadingPosition from) {
        this.script = script;
        this.settings = settings;
        this.measure = measure;
        this.screen = screen;
        geometry = geometry(settings, screen);
        layout = Typesetter.set(script, geometry, measure);
        steering = new Steering(layout, settings.way(), from, commands::add);
        now = new AnimationState(Motion.restingAt(steering.aim().height()));
        now.sunk = layout.wordsBefore(from);
        now.pages.useKeys(settings.keys());
        pictures = new FrameBuilder(now, geometry);
        before = from;
        teaching = new Teaching(now.messages);
        requests = new ActionHandler(this::apply, commands::add, now, teaching);
    }

    /** The geometry of the picture. */
    public Geometry geometry() {
        return geometry;
    }

    /** The current settings. */
    public WindowSettings settings() {
        return settings;
    }

    /** The current layout. */
    public Layout layout() {
        return layout;
    }

    /** Whether the presenter has asked, and confirmed where needed, to end the session. */
    public boolean closing() {
        return requests.closing();
    }

    /** Changes the size of the picture; the place at the eye-line stays. */
    public void resize(Screen newScreen) {
        if (!newScreen.equals(screen)) {
            screen = newScreen;
            relayout();
        }
    }

    /** The action of a key; empty if it has none or is being assigned one. */
    public Optional<Action> press(String key) {
        if (!teaching.isOn()) {
            return settings.keys().action(key);
        }
        teaching.press(key, settings.keys()).ifPresent(keys -> apply(settings.withKeys(keys)));
        return Optional.empty();
    }

    /** Whether the next key pressed will be assigned an action. */
    public boolean teaching() {
        return teaching.isOn();
    }

    /** Shows the presenter a short message. */
    public void say(String words) {
        now.messages.say(words, TEXT_SECONDS);
    }

    /** Carries out an action of the presenter. */
    public void act(Action action, SessionState state) {
        double page = now.pages.isShown() ? pageRows(action) : 0;
        if (page != 0) {
            scroll(page);
            return;
        }
        requests.act(action, state, settings, steering);
    }

    /** Moves the text, or the page on top of it, by this many rows; positive is forward. */
    public void scroll(double rows) {
        if (now.pages.isShown()) {
            now.pages.scroll(rows * geometry.pitch() / 2, geometry);
        } else {
            steering.byHand(rows);
        }
    }

    /** Hands over the commands for the session, in the order in which the presenter gave them. */
    public void drainTo(Consumer<Command> receiver) {
        commands.forEach(receiver);
        commands.clear();
    }

    /** Advances by {@code seconds} and gives the picture of {@code state}; always the same object, overwritten. */
    public Frame advance(SessionState state, double seconds) {
        adoptText(state);
        followRound(state);
        now.takes.look(state);
        steering.advance(state, seconds);
        now.motion.advance(steering.aim(), seconds, geometry.pitch());
        sink(layout.wordsBefore(steering.accepted()), seconds);
        boolean reading = state.takes().rolling() && !state.takes().held();
        double live = reading ? state.measures().pace().live() : Double.NaN;
        now.pace.advance(live, state.script().settings().targetPace(), seconds);
        lookForBreaks(state, reading);
        now.readouts = now.readouts.next(state);
        listen(state, seconds);
        now.count.advance(state, seconds);
        now.messages.advance(seconds);
        now.notices.advance(state, seconds);
        showMessage(state, seconds);
        now.pages.advance(state, seconds, geometry, now.round.isOn());
        return pictures.fill(state, layout, geometry, settings);
    }

    /** Advances until everything is at rest and gives the picture, for documents and tests. */
    public Frame settle(SessionState state) {
        Frame view = advance(state, 0);
        for (int i = 0; i < 240; i++) {
            view = advance(state, 1.0 / 30);
        }
        return view;
    }

    /** How far an action scrolls an open page, in rows; 0 if it does something else. */
    private static double pageRows(Action action) {
        return switch (action) {
            case ROW_UP -> -2;
            case ROW_DOWN -> 2;
            case BACK_LINE -> -8;
            case FORWARD_LINE -> 8;
            default -> 0;
        };
    }

    /** Says how the pickup round is steered when it begins, and shows what is left when it ends. */
    private void followRound(SessionState state) {
        boolean was = now.round.isOn();
        now.round = state.round();
        if (!was && now.round.isOn()) {
            now.pages.putAway(Pages.Kind.PICKUPS);
            KeyMap keys = settings.keys();
            now.messages.say(
                    keys.first(Action.FORWARD_LINE) + ": leave it and go on  ·  " + keys.first(Action.BACK_LINE)
                            + ": once more",
                    ROUND_SECONDS);
        } else if (was && !now.round.isOn()) {
            if (state.lines().pickups().isEmpty()) {
                now.pages.show(Pages.Kind.PICKUPS);
            } else {
                now.messages.say("pickup round ended", TEXT_SECONDS);
            }
        }
    }

    /** Updates the break notice when the advice has changed. */
    @SuppressWarnings("ReferenceEquality")
    private void lookForBreaks(SessionState state, boolean reading) {
        if (state.measures().fatigue() != report
                || reading != readBefore
                || state.following().position().line() != now.rest.line()) {
            report = state.measures().fatigue();
            readBefore = reading;
            now.rest = now.rest.next(
                    state.measures().fatigue(), state.following().position().line(), reading);
        }
    }

    private void listen(SessionState state, double seconds) {
        boolean moved = state.following().mover() == Mover.VOICE
                && !state.following().position().equals(before);
        before = state.following().position();
        sinceSpoken = moved ? 0 : Math.min(LONG_AGO, sinceSpoken + seconds);
        boolean tried = now.opening.light() > 0 && state.measures().sound().peak() > VOICE;
        now.sound.advance(state.measures().sound(), tried || sinceSpoken < SPEAKING_SECONDS, seconds);
        now.opening.advance(state, now.sound, seconds);
    }

    /** Shows the producer's message, and lets the producer know that it was shown. */
    private void showMessage(SessionState state, double seconds) {
        boolean waited = now.producer.shown() == 0;
        now.producer = now.producer.after(state, seconds);
        if (waited && now.producer.shown() > 0) {
            commands.add(new NoteCommand.Add(new Remark.Shown(now.producer.number())));
        }
    }

    /** A spoken word dims within a tenth of a second; after a jump the words change at once. */
    private void sink(int words, double seconds) {
        double sunk = now.sunk + (words - now.sunk) * (1 - Math.exp(-seconds / SINKING_SECONDS));
        boolean there = Math.abs(words - now.sunk) > SINKING_WORDS || Math.abs(words - sunk) < 0.01;
        now.sunk = there ? words : sunk;
    }

    /** Shows a changed text as soon as the session uses it; the reading position is kept. */
    private void adoptText(SessionState state) {
        if (!sameText(state.script())) {
            layout = Typesetter.set(script, geometry, measure);
            commands.removeIf(TakeCommand.GoTo.class::isInstance);
            steering.textChanged(layout, state.following().position());
            now.motion.restAt(steering.aim().height());
            now.sunk = layout.wordsBefore(state.following().position());
            before = state.following().position();
            now.messages.say("the text was changed", TEXT_SECONDS);
        }
    }

    /** Compares texts only when the state holds another object: once, not for every picture. */
    @SuppressWarnings("ReferenceEquality")
    private boolean sameText(Script text) {
        if (text == script) {
            return true;
        }
        boolean same = text.equals(script);
        script = text;
        return same;
    }

    private void apply(WindowSettings changed) {
        boolean otherLayout = !geometry(changed, screen).equals(geometry);
        if (changed.way() != settings.way()) {
            steering.choose(changed.way());
        }
        settings = changed;
        now.pages.useKeys(changed.keys());
        if (otherLayout) {
            relayout();
        }
    }

    private void relayout() {
        ReadingPosition place = steering.place();
        geometry = geometry(settings, screen);
        layout = Typesetter.set(script, geometry, measure);
        steering.relayout(layout, place);
        now.motion.restAt(steering.aim().height());
    }

    private static Geometry geometry(WindowSettings settings, Screen screen) {
        return Geometry.of(settings, screen.monitorHeight(), screen.monitorPixels(), screen.width(), screen.height());
    }
}
