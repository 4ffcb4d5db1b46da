package org.bookholder.view;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.PaceSource;
import org.bookholder.session.Act;
import org.bookholder.session.Acts;
import org.bookholder.session.Command;
import org.bookholder.session.Mover;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.OwnPace;
import org.bookholder.session.Remark;
import org.bookholder.session.RoundCommand;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.session.UpNext;
import org.bookholder.view.cue.Messages;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyMap;
import org.bookholder.view.motion.Steering;
import org.bookholder.view.page.Pages;
import org.bookholder.view.settings.Cue;
import org.bookholder.view.settings.WindowSettings;
import org.bookholder.wording.ActText;
import org.bookholder.wording.PaceText;

/** Turns the presenter's actions into commands to the session and changes of settings. Confined to one thread. */
final class ActionHandler {
    private static final double LARGER = 1.08;
    private static final double SECONDS = 2.5;
    private static final double QUESTION_SECONDS = 4;
    private static final double WAITING_SECONDS = 60;

    private final Consumer<WindowSettings> apply;
    private final Messages messages;
    private final Pages pages;
    private final TakeStarts takes;
    private final Teaching teaching;
    private Set<Cue> edgesBefore = edges(EnumSet.allOf(Cue.class));
    private final Consumer<Command> tell;
    private boolean closing;

    ActionHandler(Consumer<WindowSettings> apply, Consumer<Command> tell, AnimationState moment, Teaching teaching) {
        this.apply = apply;
        this.tell = tell;
        this.teaching = teaching;
        messages = moment.messages;
        pages = moment.pages;
        takes = moment.takes;
    }

    boolean closing() {
        return closing;
    }

    void act(Action action, SessionState state, WindowSettings settings, Steering steering) {
        switch (action) {
            case ROUND -> round(state);
            case NEXT_LESSON -> nextLesson(state, settings.keys());
            case BREAK -> rest(state);
            case OWN_PACE -> ownPace(state);
            case HOLD -> hold(state);
            case BACK_LINE, FORWARD_LINE, BACK_PARAGRAPH, ROW_UP, ROW_DOWN -> move(action, state, steering);
            case MARK_PICKUP -> markPickup(steering.current(state), state, settings.keys());
            case UNDO -> undo(state);
            case NEXT_TAKE -> nextTake(steering.current(state), state);
            case PREVIOUS_TAKE -> tell.accept(new TakeCommand.NextTake(takes.previous(state)));
            case CUT -> tell.accept(new TakeCommand.Cut());
            case LARGER -> resize(settings.scaled(LARGER));
            case SMALLER -> resize(settings.scaled(1 / LARGER));
            case WIDER -> column(settings.withColumnWords(settings.columnWords() + 1));
            case NARROWER -> column(settings.withColumnWords(settings.columnWords() - 1));
            case GLASS ->
                change(settings.withMirrored(!settings.mirrored()), "mirrored for glass", settings.mirrored());
            case UPSIDE_DOWN ->
                change(settings.withUpsideDown(!settings.upsideDown()), "upside down", settings.upsideDown());
            case CUES -> cues(settings);
            case CUE_PACE -> cue(Cue.PACE, settings);
            case CUE_PICKUPS -> cue(Cue.PICKUPS, settings);
            case CUE_TIME -> cue(Cue.TIME, settings);
            case CUE_BREAK -> cue(Cue.BREAK, settings);
            case CUE_SOUND -> cue(Cue.SOUND, settings);
            case CUE_FOOTLIGHTS -> cue(Cue.FOOTLIGHTS, settings);
            case WAY -> way(settings, state);
            case PICKUPS -> pages.toggle(Pages.Kind.PICKUPS);
            case KEYS -> pages.toggle(Pages.Kind.KEYS);
            case TEACH -> teach();
            case QUIT -> quit(state, settings.keys());
            case FULL_SCREEN, MONITOR ->
                throw new IllegalArgumentException("action (" + action + ") is the window's own");
        }
    }

    private void hold(SessionState state) {
        if (state.takes().countIn().isPresent()) {
            tell.accept(new TakeCommand.BeginCount());
        } else {
            tell.accept(state.takes().held() ? new TakeCommand.Resume() : new TakeCommand.Hold());
        }
    }

    /** Turns all cues off if any is on; otherwise turns on again those that the presenter had before. */
    private void cues(WindowSettings settings) {
        Set<Cue> edges = edges(settings.cues());
        boolean shown = !edges.isEmpty();
        Set<Cue> changed = new HashSet<>(settings.cues());
        if (shown) {
            edgesBefore = edges;
            changed.removeAll(edges);
        } else {
            changed.addAll(edgesBefore);
        }
        change(settings.withCues(changed), "cues", shown);
    }

    private void cue(Cue cue, WindowSettings settings) {
        Set<Cue> changed = new HashSet<>(settings.cues());
        boolean shown = changed.remove(cue);
        if (!shown) {
            changed.add(cue);
        }
        boolean rests = cue == Cue.BREAK && shown;
        change(settings.withCues(changed), rests ? "break, until it is overdue" : cue.label(), shown);
    }

    private static Set<Cue> edges(Set<Cue> cues) {
        return cues.stream().filter(cue -> cue != Cue.FOOTLIGHTS).collect(Collectors.toUnmodifiableSet());
    }

    /** Also shows the list of keys, to choose from. */
    private void teach() {
        pages.show(Pages.Kind.KEYS);
        teaching.begin();
    }

    private void round(SessionState state) {
        if (state.round().isOn()) {
            tell.accept(new RoundCommand.End());
        } else if (state.lines().pickups().isEmpty()) {
            messages.say("nothing to pick up", SECONDS);
        } else {
            tell.accept(new RoundCommand.Begin());
        }
    }

    private void move(Action action, SessionState state, Steering steering) {
        if (state.round().isOn() && action == Action.FORWARD_LINE) {
            tell.accept(new RoundCommand.Leave());
            return;
        }
        if (state.round().isOn() && action == Action.BACK_LINE) {
            tell.accept(new RoundCommand.Again());
            return;
        }
        ReadingPosition from = steering.current(state);
        switch (action) {
            case BACK_LINE -> steering.goTo(Places.lineBack(state.script(), from));
            case FORWARD_LINE -> steering.goTo(Places.lineForward(state.script(), from));
            case BACK_PARAGRAPH -> steering.goTo(Places.paragraphBack(state.script(), from));
            default -> steering.toRow(action == Action.ROW_UP ? -1 : 1);
        }
    }

    private void markPickup(ReadingPosition at, SessionState state, KeyMap keys) {
        int line = Places.lineJustRead(state.script(), at);
        tell.accept(signed(new Remark.Noted(line, "", true)));
        messages.say("line " + line + " marked  ·  " + keys.first(Action.UNDO) + ": undo", SECONDS);
    }

    /** Takes back what the presenter did last and can be taken back. */
    private void undo(SessionState state) {
        Acts acts = state.remarks().acts();
        Optional<Act> last = acts.last(Remark.Signed.PRESENTER);
        if (last.filter(acts::builtOn).isPresent()) {
            messages.say("someone else has changed this note; it stays", SECONDS);
            return;
        }
        last.ifPresent(act -> tell.accept(signed(new Remark.Retracted(act.number()))));
        messages.say(last.map(act -> "undone: " + ActText.of(act)).orElse("nothing to undo"), SECONDS);
    }

    private static Command signed(Remark remark) {
        return new NoteCommand.Add(new Remark.Signed(Remark.Signed.PRESENTER, remark));
    }

    private void nextTake(ReadingPosition at, SessionState state) {
        tell.accept(new TakeCommand.NextTake(Places.lineStart(state.script(), at)));
    }

    /** While a lesson is being read, one press of a key that is near others must not end it. */
    private void nextLesson(SessionState state, KeyMap keys) {
        Optional<UpNext> next = state.upNext().filter(UpNext::isLeft);
        String question = "a take is rolling: " + keys.first(Action.NEXT_LESSON) + " again goes on to the next lesson";
        if (next.isEmpty()) {
            messages.say("there is no other lesson", SECONDS);
        } else if (state.takes().rolling()
                && !state.finished()
                && !messages.text().equals(question)) {
            messages.say(question, QUESTION_SECONDS);
        } else {
            messages.say("next: " + next.get().title(), WAITING_SECONDS);
            tell.accept(new TakeCommand.NextLesson());
        }
    }

    private void rest(SessionState state) {
        boolean resting = state.remarks().breakSince().isPresent();
        messages.say(resting ? "break over" : "break: voice and eyes rest", SECONDS);
        tell.accept(resting ? new TakeCommand.EndBreak() : new TakeCommand.BeginBreak());
    }

    private void ownPace(SessionState state) {
        OptionalInt pace = OwnPace.offered(state);
        pace.ifPresent(own -> tell.accept(new TakeCommand.AimPace(own, PaceSource.OWN)));
        messages.say(
                pace.isPresent()
                        ? "your target now: " + pace.getAsInt() + " words a minute"
                        : "the target is " + PaceText.target(state),
                QUESTION_SECONDS);
    }

    private void quit(SessionState state, KeyMap keys) {
        if (pages.putAway(Pages.Kind.KEYS)) {
            return;
        }
        if (state.round().isOn()) {
            round(state);
            return;
        }
        boolean asked = messages.text().equals(question(keys));
        if (state.takes().rolling() && !asked) {
            messages.say(question(keys), QUESTION_SECONDS);
        } else {
            tell.accept(new TakeCommand.Quit());
            closing = true;
        }
    }

    private static String question(KeyMap keys) {
        return "a take is rolling: " + keys.first(Action.QUIT) + " again ends the session";
    }

    private void way(WindowSettings settings, SessionState state) {
        Mover next = switch (settings.way()) {
            case VOICE -> Mover.STEADY;
            case STEADY -> Mover.HAND;
            case HAND -> Mover.VOICE;
        };
        apply.accept(settings.withWay(next));
        int pace = state.script().settings().targetPace();
        messages.say(
                switch (next) {
                    case VOICE -> "moved by voice";
                    case STEADY -> "moved steadily, " + pace + " words a minute";
                    case HAND -> "moved by hand";
                },
                SECONDS);
    }

    private void resize(WindowSettings changed) {
        apply.accept(changed);
        messages.say(
                changed.size().isPresent()
                        ? String.format(
                                Locale.ROOT, "text %.0f pixels", changed.size().getAsDouble())
                        : String.format(
                                Locale.ROOT,
                                "letters of size %.0f, seen from %.1f m",
                                changed.arcMinutes(),
                                changed.distance() / 1000),
                SECONDS);
    }

    private void column(WindowSettings changed) {
        apply.accept(changed);
        messages.say("about " + changed.columnWords() + " words to a row", SECONDS);
    }

    private void change(WindowSettings changed, String what, boolean before) {
        apply.accept(changed);
        messages.say(before ? what + ": off" : what + ": on", SECONDS);
    }
}
