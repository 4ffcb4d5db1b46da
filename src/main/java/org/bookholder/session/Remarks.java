package org.bookholder.session;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.Attempt;
import org.bookholder.timing.StreamTime;
import org.pcollections.PVector;
import org.pcollections.TreePVector;

/**
 * What people have added to a session. Immutable.
 *
 * @param notes notes and marks in the order in which they were made
 * @param message the last message to the presenter
 * @param breakSince time of day at which the break that is going on began
 * @param rulings what was ruled on lines and attempts, of no interest to views: lines have it laid over them
 * @param before the rulings before the last one, and so on
 */
public record Remarks(
        PVector<Note> notes,
        Optional<Message> message,
        Optional<Instant> breakSince,
        ReviewOverrides rulings,
        PVector<ReviewOverrides> before) {
    static final Remarks NONE = new Remarks(
            TreePVector.empty(), Optional.empty(), Optional.empty(), ReviewOverrides.NONE, TreePVector.empty());

    /**
     * A message to the presenter.
     *
     * @param at audio taken in when it was sent
     * @param number 1 for the session's first, and so on
     * @param text what it says; empty if the one before was taken back
     */
    public record Message(StreamTime at, int number, String text) {}

    /** How many rulings can be taken back, one after another. */
    public int undoable() {
        return before.size();
    }

    /** Calls of the recogniser that are known to be wrong. */
    public List<AcceptedReading> readRight() {
        return List.copyOf(rulings.readRight());
    }

    Remarks noted(Note note) {
        return new Remarks(notes.plus(note), message, breakSince, rulings, before);
    }

    Remarks told(StreamTime at, String text) {
        int number = message.map(Message::number).orElse(0) + 1;
        return new Remarks(notes, Optional.of(new Message(at, number, text)), breakSince, rulings, before);
    }

    Remarks withBreak(Optional<Instant> since) {
        return new Remarks(notes, message, since, rulings, before);
    }

    Remarks decided(int line, Decision decision, List<Attempt> heard) {
        return ruled(rulings.decided(line, decision, heard));
    }

    Remarks bounded(Remark.Bounded b) {
        return ruled(rulings.bounded(b.take(), b.ordinal(), b.start(), b.end()));
    }

    /** What was learned before is no ruling of this session, and stays whatever is taken back. */
    Remarks carried(List<AcceptedReading> earlier) {
        return new Remarks(
                notes,
                message,
                breakSince,
                rulings.carried(earlier),
                TreePVector.from(before.stream().map(r -> r.carried(earlier)).toList()));
    }

    Remarks undone() {
        if (before.isEmpty()) {
            return this;
        }
        int last = before.size() - 1;
        return new Remarks(notes, message, breakSince, before.get(last), before.minus(last));
    }

    /** The same for a changed script; notes on lines that are gone stay where those were. */
    Remarks renumbered(Renumbering change) {
        return new Remarks(
                TreePVector.from(notes.stream()
                        .map(n -> new Note(n.at(), change.place(n.line()), n.text(), n.by(), n.pickup()))
                        .toList()),
                message,
                breakSince,
                rulings.renumbered(change),
                TreePVector.from(before.stream().map(r -> r.renumbered(change)).toList()));
    }

    private Remarks ruled(ReviewOverrides next) {
        return new Remarks(notes, message, breakSince, next, before.plus(rulings));
    }
}
