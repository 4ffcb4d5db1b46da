package org.bookholder.desk;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.Command;
import org.bookholder.session.Decision;
import org.bookholder.session.Mover;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/** Turns what a page asks for into commands. */
public final class Actions {
    /** Longest note or message, in characters. */
    static final int LONGEST_TEXT = 500;

    private static final JsonMapper MAPPER = new JsonMapper();

    private final DeskSession session;
    private final InstantSource clock;

    /** Acts on {@code session}; breaks are noted by {@code clock}. */
    public Actions(DeskSession session, InstantSource clock) {
        this.session = session;
        this.clock = clock;
    }

    /**
     * Does what is asked.
     *
     * @param json one object, what to do in {@code do}
     * @return why it cannot be done, for people; empty if it was passed on
     */
    public Optional<String> act(String json) {
        JsonNode asked;
        try {
            asked = MAPPER.readTree(json);
        } catch (JsonProcessingException e) {
            return Optional.of("this is not JSON");
        }
        if (asked.path("do").asText().equals("hand_off")) {
            return session.handOff().ask(asked.path("replace").asBoolean(false));
        }
        SessionState state = session.state();
        try {
            List<Command> commands = commands(asked, state);
            commands.forEach(session::tell);
            return Optional.empty();
        } catch (IllegalArgumentException e) {
            return Optional.of(String.valueOf(e.getMessage()));
        }
    }

    private List<Command> commands(JsonNode asked, SessionState state) {
        String what = asked.path("do").asText();
        return switch (what) {
            case "mark" -> add(new Remark.Noted(lineOr(asked, justRead(state), state), text(asked), true));
            case "note" -> add(new Remark.Noted(lineOr(asked, justRead(state), state), text(asked), false));
            case "say" -> add(new Remark.Told(text(asked)));
            case "decide" -> add(decided(asked, state));
            case "bound" -> add(bounded(asked, state));
            case "undo" -> add(new Remark.Undone());
            case "hold", "go_on", "go_to", "cut", "next_take", "break", "back" -> live(what, asked, state);
            default -> throw new IllegalArgumentException("there is no such action");
        };
    }

    private List<Command> live(String what, JsonNode asked, SessionState state) {
        if (!session.live()) {
            throw new IllegalArgumentException("no take can be rolled: this session is only reviewed");
        }
        return switch (what) {
            case "hold" -> List.of(new Command.Hold());
            case "go_on" -> List.of(new Command.Resume());
            case "go_to" -> List.of(new Command.GoTo(start(line(asked, state)), Mover.HAND));
            case "cut" -> List.of(new Command.Cut());
            case "next_take" -> List.of(new Command.NextTake(start(lineOr(asked, here(state), state))));
            case "break" -> List.of(new Command.Cut(), new Command.Add(new Remark.BreakBegan(clock.instant())));
            default -> add(new Remark.BreakOver(clock.instant()));
        };
    }

    private static List<Command> add(Remark remark) {
        return List.of(new Command.Add(remark));
    }

    private static ReadingPosition start(int line) {
        return new ReadingPosition(line, 1);
    }

    /** The line being read, the last one if all are. */
    private static int here(SessionState state) {
        return Math.min(state.position().line(), state.lines().size());
    }

    /** The line that something just heard is about: the one being read, or the one before if that has only begun. */
    private static int justRead(SessionState state) {
        int line = state.position().line();
        boolean begun = state.position().word() > 1;
        return Math.max(1, Math.min(state.lines().size(), begun ? line : line - 1));
    }

    private static int lineOr(JsonNode asked, int otherwise, SessionState state) {
        return asked.hasNonNull("line") ? line(asked, state) : otherwise;
    }

    private static int line(JsonNode asked, SessionState state) {
        int line = asked.path("line").asInt();
        if (line < 1 || line > state.lines().size()) {
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
        boolean known = state.lines().get(line - 1).attempts().stream()
                .anyMatch(a -> a.take() == take && a.ordinal() == ordinal);
        if (!known && (take != 0 || ordinal != 0 || choice == Decision.Choice.KEEP)) {
            throw new IllegalArgumentException("there is no such attempt");
        }
        return new Remark.Decided(line, choice, take, ordinal);
    }

    private static Remark bounded(JsonNode asked, SessionState state) {
        int take = asked.path("take").asInt();
        double start = asked.path("start").asDouble(-1);
        double end = asked.path("end").asDouble(-1);
        if (take < 1 || take > state.takes().size()) {
            throw new IllegalArgumentException("there is no such take");
        }
        SessionState.Take whole = state.takes().get(take - 1);
        if (!(start >= whole.start().seconds()
                && start + 0.05 <= end
                && end <= whole.end().seconds() + 1)) {
            throw new IllegalArgumentException("an attempt must lie within its take, and end after it begins");
        }
        return new Remark.Bounded(
                take, asked.path("ordinal").asInt(), StreamTime.ofSeconds(start), StreamTime.ofSeconds(end));
    }
}
