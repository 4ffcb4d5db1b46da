package org.bookholder.session;

import java.util.List;
import java.util.Optional;
import org.bookholder.timing.StreamTime;

/**
 * Something a person did that its author can take back.
 *
 * @param number from 1, in the order in which they were done
 * @param author who did it; empty if it is not known
 * @param change what it changed
 */
public record Act(int number, String author, Change change) {
    /** What an act changed. */
    public sealed interface Change {
        /** Calls the handler's method for this change and returns its result. */
        <T> T to(Handler<T> handler);
    }

    /**
     * Receives changes by kind.
     *
     * @param <T> the result of each method
     */
    public interface Handler<T> {
        /** Receives {@link Noted}. */
        T noted(Noted change);

        /** Receives {@link Edited}. */
        T edited(Edited change);

        /** Receives {@link Told}. */
        T told(Told change);

        /** Receives {@link Decided}. */
        T decided(Decided change);

        /** Receives {@link Bounded}. */
        T bounded(Bounded change);

        /** Receives {@link Filmed}. */
        T filmed(Filmed change);
    }

    /** A note or a mark was made; it has the act's number. */
    public record Noted(Note note) implements Change {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.noted(this);
        }
    }

    /** The text of a note was changed; {@code before} is the note as it was. */
    public record Edited(Note before, String text) implements Change {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.edited(this);
        }
    }

    /** The presenter was sent a message; {@code message} is its number. */
    public record Told(int message) implements Change {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.told(this);
        }
    }

    /** Something was decided about a line; {@code accepted} are the readings that this declares right. */
    public record Decided(int line, Decision decision, List<AcceptedReading> accepted) implements Change {
        /** Copies the list. */
        public Decided {
            accepted = List.copyOf(accepted);
        }

        @Override
        public <T> T to(Handler<T> handler) {
            return handler.decided(this);
        }
    }

    /** The bounds of an attempt were set. */
    public record Bounded(int take, int ordinal, StreamTime start, StreamTime end) implements Change {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.bounded(this);
        }
    }

    /** Something was decided about a line in the film. */
    public record Filmed(int line, FilmChange what) implements Change {
        @Override
        public <T> T to(Handler<T> handler) {
            return handler.filmed(this);
        }
    }

    /** The line that it concerns; 0 if none. */
    public int line() {
        if (change instanceof Noted noted) {
            return noted.note().line();
        }
        if (change instanceof Edited edited) {
            return edited.before().line();
        }
        if (change instanceof Filmed filmed) {
            return filmed.line();
        }
        return change instanceof Decided decided ? decided.line() : 0;
    }

    ReviewOverrides over(ReviewOverrides rulings) {
        if (change instanceof Decided decided) {
            return rulings.decided(decided.line(), decided.decision(), decided.accepted());
        }
        if (change instanceof Bounded b) {
            return rulings.bounded(b.take(), b.ordinal(), b.start(), b.end());
        }
        if (change instanceof Filmed filmed) {
            return rulings.filmed(filmed.line(), filmed.what());
        }
        return rulings;
    }

    /** Whether it is a decision about a line or an attempt. */
    boolean rules() {
        return change instanceof Decided || change instanceof Bounded || change instanceof Filmed;
    }

    /** The same for a changed script; empty if it concerned a line that is gone, and can no longer be taken back. */
    Optional<Act> renumbered(Renumbering lines) {
        if (change instanceof Decided decided) {
            int line = lines.line(decided.line());
            return line == 0
                    ? Optional.empty()
                    : with(new Decided(
                            line, decided.decision(), ReviewOverrides.renumbered(decided.accepted(), lines)));
        }
        if (change instanceof Filmed filmed) {
            int line = lines.line(filmed.line());
            return line == 0 && filmed.line() > 0 ? Optional.empty() : with(new Filmed(line, filmed.what()));
        }
        if (change instanceof Noted noted) {
            int line = lines.line(noted.note().line());
            return line == 0 ? Optional.empty() : with(new Noted(noted.note().movedTo(line)));
        }
        if (change instanceof Edited edited) {
            int line = lines.place(edited.before().line());
            return with(new Edited(edited.before().movedTo(line), edited.text()));
        }
        return Optional.of(this);
    }

    /** A decision whose line the changed script no longer has: what it accepted in every line is left of it. */
    Act withoutLine(Renumbering lines) {
        return change instanceof Decided decided
                ? new Act(
                        number,
                        author,
                        new Decided(0, decided.decision(), ReviewOverrides.renumbered(decided.accepted(), lines)))
                : change instanceof Filmed filmed ? new Act(number, author, new Filmed(0, filmed.what())) : this;
    }

    /** The readings that it declares right. */
    List<AcceptedReading> accepted() {
        return change instanceof Decided decided ? decided.accepted() : List.of();
    }

    private Optional<Act> with(Change changed) {
        return Optional.of(new Act(number, author, changed));
    }
}
