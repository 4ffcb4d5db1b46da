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
 * @param breakSince time of day at which the current break began; empty if there is none
 * @param rulings decisions about lines and attempts; views need not look at them, because the lines already include
 *     them
 * @param before earlier states of the rulings, for undo
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
     * @param at audio captured when it was sent
     * @param number number of the message in the session, from 1
     * @param text its text; empty if the one before was withdrawn
     */
    public record Message(StreamTime at, int number, String text) {}

    /** How many rulings can be undone, one after another. */
    public int undoable() {
        return before.size();
    }

    /** Deviations that are known to be mistakes of the recogniser. */
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

    /**
     * Adds readings accepted in earlier sessions. They are not rulings of this session, so undo does not remove them.
     */
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

    /** The same for a changed script; a note on a deleted line moves to the line now in its place. */
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
