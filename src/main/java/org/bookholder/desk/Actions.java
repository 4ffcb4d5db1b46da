package org.bookholder.desk;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.PaceSource;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.session.Act;
import org.bookholder.session.Acts;
import org.bookholder.session.Command;
import org.bookholder.session.Decision;
import org.bookholder.session.Mover;
import org.bookholder.session.Note;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.OwnPace;
import org.bookholder.session.Remark;
import org.bookholder.session.Request;
import org.bookholder.session.RoundCommand;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;
import org.bookholder.session.TakeCommand;
import org.bookholder.session.UpNext;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.PaceText;

/** Turns what a page asks for into requests to the session. */
public final class Actions {
    /** Longest note or message, in characters. */
    static final int LONGEST_TEXT = 500;

    private static final Set<String> KNOWN = Set.of(
            "mark",
            "note",
            "edit",
            "say",
            "decide",
            "bound",
            "undo",
            "hold",
            "go_on",
            "round",
            "round_end",
            "leave",
            "again",
            "next_lesson",
            "own_pace",
            "end_session",
            "go_to",
            "cut",
            "next_take",
            "break",
            "back");

    /** The name that a page gives itself, which makes its acts its own, and the name that it gives an act. */
    private static final Pattern NAME = Pattern.compile("[0-9a-z]{0,40}");

    private static final JsonMapper MAPPER = new JsonMapper();

    private final DeskSession session;
    private final InstantSource clock;

    /** Acts on {@code session}; breaks are noted by {@code clock}. */
    public Actions(DeskSession session, InstantSource clock) {
        this.session = session;
        this.clock = clock;
    }

    /**
     * Turns a page's action into a request to the session. Actions are absolute and refer to what the page showed when
     * the key was pressed: if two people press the same key at the same moment, neither undoes what the other did. The session
     * that the page showed is named too: the next lesson comes to the same address, and has lines and takes of the same numbers.
     *
     * @param json one object; {@code do} holds the action
     * @param reply receives the outcome
     * @throws IllegalArgumentException if that is no action; the message is for people
     */
    public void act(String json, Request.Reply reply) {
        JsonNode asked;
        try {
            asked = MAPPER.readTree(json);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("this is not JSON", e);
        }
        if (!asked.path("session").asText(session.name()).equals(session.name())) {
            reply.refused("that lesson is over");
            return;
        }
        String what = asked.path("do").asText();
        if (what.equals("hand_off")) {
            session.handOff().ask(asked.path("replace").asBoolean(false)).ifPresentOrElse(reply::refused, reply::done);
            return;
        }
        if (!KNOWN.contains(what)) {
            throw new IllegalArgumentException("there is no such action");
        }
        Signature by = new Signature(author(asked), name(asked));
        // A page that got no answer can't know whether its act was done, and sends it again under the same name.
        session.ask(
                state -> state.remarks().acts().done(by.act()) ? List.of() : commands(what, asked, state, by), reply);
    }

    /** Who asks for an act, and what they call it; empty if not said. */
    private record Signature(String author, String act) {
        List<Command> under(Remark remark) {
            return add(new Remark.Signed(author, remark, act));
        }
    }

    private static String author(JsonNode asked) {
        String author = asked.path("by").asText("");
        if (!NAME.matcher(author).matches() || author.equals(Remark.Signed.PRESENTER)) {
            throw new IllegalArgumentException("nobody can be called that");
        }
        return author;
    }

    private static String name(JsonNode asked) {
        String name = asked.path("once").asText("");
        if (!NAME.matcher(name).matches()) {
            throw new IllegalArgumentException("no act can be called that");
        }
        return name;
    }

    private List<Command> commands(String what, JsonNode asked, SessionState state, Signature by) {
        return switch (what) {
            case "mark" -> by.under(new Remark.Noted(lineOr(asked, justRead(state), state), text(asked), true));
            case "note" -> by.under(new Remark.Noted(lineOr(asked, justRead(state), state), text(asked), false));
            case "edit" -> edit(asked, state, by);
            case "say" -> by.under(new Remark.Told(text(asked)));
            case "decide" -> by.under(decided(asked, state));
            case "bound" -> by.under(bounded(asked, state));
            case "undo" -> undo(asked, state, by);
            default -> live(what, asked, state);
        };
    }

    private List<Command> live(String what, JsonNode asked, SessionState state) {
        if (!session.live()) {
            throw new IllegalArgumentException("this session is only reviewed, no take can be recorded");
        }
        return switch (what) {
            case "hold" -> rolling(state).takes().held() ? List.of() : List.of(new TakeCommand.Hold());
            case "go_on" -> goOn(rolling(state));
            case "round" -> beginRound(state);
            case "round_end" -> List.of(new RoundCommand.End());
            case "next_lesson" -> nextLesson();
            case "own_pace" -> ownPace(asked, state);
            case "end_session" -> List.of(new TakeCommand.Quit());
            case "leave" -> inRound(asked, state, new RoundCommand.Leave());
            case "again" -> inRound(asked, state, new RoundCommand.Again());
            case "go_to" -> List.of(new TakeCommand.GoTo(start(line(asked, state)), Mover.HAND));
            case "cut" ->
                state.takes().rolling() && sameTake(asked, state) ? List.of(new TakeCommand.Cut()) : List.of();
            case "next_take" -> nextTake(asked, state);
            case "break" -> beginBreak(asked, state);
            default -> resting(state) ? add(new Remark.BreakOver(clock.instant())) : List.of();
        };
    }

    private static SessionState rolling(SessionState state) {
        if (!state.takes().rolling()) {
            throw new IllegalArgumentException("no take is rolling");
        }
        return state;
    }

    private static List<Command> goOn(SessionState state) {
        if (state.takes().countIn().isPresent()) {
            return List.of(new TakeCommand.BeginCount());
        }
        return state.takes().held() ? List.of(new TakeCommand.Resume()) : List.of();
    }

    /** The pace that the page offered, if it is still on offer. */
    private static List<Command> ownPace(JsonNode asked, SessionState state) {
        int pace = asked.path("pace").asInt();
        if (OwnPace.offered(state).isEmpty() || pace < ScriptSettings.MIN_PACE || pace > ScriptSettings.MAX_PACE) {
            throw new IllegalArgumentException("the target stays " + PaceText.target(state));
        }
        return List.of(new TakeCommand.AimPace(pace, PaceSource.OWN));
    }

    /** What follows is told to views only; the session itself does not know it. */
    private List<Command> nextLesson() {
        if (session.state().upNext().filter(UpNext::isLeft).isEmpty()) {
            throw new IllegalArgumentException("there is no other lesson");
        }
        return List.of(new TakeCommand.NextLesson());
    }

    private static List<Command> beginRound(SessionState state) {
        if (!state.round().isOn() && state.lines().pickups().isEmpty()) {
            throw new IllegalArgumentException("there is nothing to pick up");
        }
        return List.of(new RoundCommand.Begin());
    }

    /** Of two people who do the same at once the second does nothing: the round is at another line by then. */
    private static List<Command> inRound(JsonNode asked, SessionState state, Command command) {
        int line = state.round().line();
        return state.round().isOn() && asked.path("line").asInt(line) == line ? List.of(command) : List.of();
    }

    /** Whether the last take is still the one that the page showed. */
    private static boolean sameTake(JsonNode asked, SessionState state) {
        return asked.path("take").asInt(state.takes().count()) == state.takes().count();
    }

    private static boolean resting(SessionState state) {
        return state.remarks().breakSince().isPresent();
    }

    private static List<Command> nextTake(JsonNode asked, SessionState state) {
        if (sameTake(asked, state)) {
            return List.of(new TakeCommand.NextTake(start(lineOr(asked, here(state), state))));
        }
        if (asked.hasNonNull("line")) {
            throw new IllegalArgumentException("someone else has just started another take");
        }
        return List.of();
    }

    private List<Command> beginBreak(JsonNode asked, SessionState state) {
        if (resting(state) || !sameTake(asked, state)) {
            return List.of();
        }
        return List.of(new TakeCommand.Cut(), new NoteCommand.Add(new Remark.BreakBegan(clock.instant())));
    }

    private static List<Command> edit(JsonNode asked, SessionState state, Signature by) {
        int number = asked.path("note").asInt();
        Note note = state.remarks()
                .note(number)
                .orElseThrow(() -> new IllegalArgumentException("this note is gone, or can't be changed"));
        String text = text(asked);
        return text.equals(note.text()) ? List.of() : by.under(new Remark.Edited(number, text));
    }

    /** Takes back the act that the page named, if it is the author's own, still holds, and is the last thing that they did. */
    private static List<Command> undo(JsonNode asked, SessionState state, Signature by) {
        Acts acts = state.remarks().acts();
        Optional<Act> act =
                asked.hasNonNull("act") ? acts.number(asked.path("act").asInt()) : acts.last(by.author());
        if (act.isEmpty()) {
            throw new IllegalArgumentException("there is nothing to undo");
        }
        if (!act.get().author().equals(by.author())) {
            throw new IllegalArgumentException("someone else did this, and only they can undo it");
        }
        if (acts.last(by.author()).filter(act.get()::equals).isEmpty()) {
            throw new IllegalArgumentException("you have done something else since");
        }
        if (acts.builtOn(act.get())) {
            throw new IllegalArgumentException("someone else has changed this note since; edit it instead");
        }
        return by.under(new Remark.Retracted(act.get().number()));
    }

    private static List<Command> add(Remark remark) {
        return List.of(new NoteCommand.Add(remark));
    }

    private static ReadingPosition start(int line) {
        return new ReadingPosition(line, 1);
    }

    /** The line being read; the last one at the end. */
    private static int here(SessionState state) {
        return Math.min(state.following().position().line(), state.lines().count());
    }

    /**
     * The line that a remark about what was just heard refers to: the current one, or the one before if the current one
     * has only just begun.
     */
    private static int justRead(SessionState state) {
        int line = state.following().position().line();
        boolean begun = state.following().position().word() > 1;
        return Math.max(1, Math.min(state.lines().count(), begun ? line : line - 1));
    }

    private static int lineOr(JsonNode asked, int otherwise, SessionState state) {
        return asked.hasNonNull("line") ? line(asked, state) : otherwise;
    }

    private static int line(JsonNode asked, SessionState state) {
        int line = asked.path("line").asInt();
        if (line < 1 || line > state.lines().count()) {
            throw new IllegalArgumentException("there is no such line");
        }
        return line;
    }

    private static String text(JsonNode asked) {
        String text = asked.path("text")
                .asText("")
                .replaceAll("[\\p{Cntrl}\\s]+", " ")
                .strip();
        if (text.length() > LONGEST_TEXT) {
            throw new IllegalArgumentException("this is longer than " + LONGEST_TEXT + " characters");
        }
        return text;
    }

    private static Remark decided(JsonNode asked, SessionState state) {
        Decision.Choice choice = Decision.Choice.valueOf(asked.path("choice").asText());
        int line = line(asked, state);
        int take = asked.path("take").asInt(0);
        int ordinal = asked.path("ordinal").asInt(0);
        boolean known =
                state.lines().notes(line).attempts().stream().anyMatch(a -> a.take() == take && a.ordinal() == ordinal);
        if (!known && (take != 0 || ordinal != 0 || choice == Decision.Choice.KEEP)) {
            throw new IllegalArgumentException("there is no such attempt");
        }
        return new Remark.Decided(line, choice, take, ordinal);
    }

    private static Remark bounded(JsonNode asked, SessionState state) {
        int take = asked.path("take").asInt();
        double start = asked.path("start").asDouble(-1);
        double end = asked.path("end").asDouble(-1);
        if (take < 1 || take > state.takes().count()) {
            throw new IllegalArgumentException("there is no such take");
        }
        Take whole = state.takes().all().get(take - 1);
        if (!(start >= whole.start().seconds()
                && start + 0.05 <= end
                && end <= whole.end().seconds() + 1)) {
            throw new IllegalArgumentException("an attempt must lie within its take, and end after it begins");
        }
        return new Remark.Bounded(
                take, asked.path("ordinal").asInt(), StreamTime.ofSeconds(start), StreamTime.ofSeconds(end));
    }
}
