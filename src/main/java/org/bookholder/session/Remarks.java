package org.bookholder.session;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
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
 * @param acts what can be taken back, and by whom
 */
public record Remarks(
        PVector<Note> notes,
        Optional<Message> message,
        Optional<Instant> breakSince,
        ReviewOverrides rulings,
        Acts acts) {
    static final Remarks NONE =
            new Remarks(TreePVector.empty(), Optional.empty(), Optional.empty(), ReviewOverrides.NONE, Acts.NONE);

    /**
     * A message to the presenter.
     *
     * @param at audio captured when it was sent
     * @param number number of the message in the session, from 1
     * @param text its text; empty if the one before was withdrawn
     * @param shown audio captured when the reading window showed it; empty if it has not
     */
    public record Message(StreamTime at, int number, String text, Optional<StreamTime> shown) {}

    /** The note with this number. */
    public Optional<Note> note(int number) {
        return number == 0
                ? Optional.empty()
                : notes.stream().filter(n -> n.number() == number).findFirst();
    }

    /** When this line was last marked as a pickup, by any note that still stands. */
    Optional<StreamTime> lastMark(int line) {
        return notes.stream()
                .filter(n -> n.pickup() && n.line() == line)
                .map(Note::at)
                .reduce(StreamTime::max);
    }

    /** Deviations that are known to be mistakes of the recogniser. */
    public List<AcceptedReading> readRight() {
        return List.copyOf(rulings.readRight());
    }

    /**
     * Words that are heard as something else, as people have decided in this session: what holds in every line, and in other sessions.
     * Without what came from other sessions, and without what they have decided otherwise since.
     */
    public Set<AcceptedReading> heardAs() {
        return acts.accepted().stream()
                .filter(AcceptedReading::everywhere)
                .filter(reading -> !acts.base().readRight().contains(reading))
                .collect(Collectors.toUnmodifiableSet());
    }

    /** What was decided about a line, from 1, in the film; about the session as a whole as line 0. */
    public FilmChoices film(int line) {
        return rulings.film().getOrDefault(line, FilmChoices.NONE);
    }

    /** Adds a note that cannot be taken back. */
    Remarks noted(Note note) {
        return new Remarks(notes.plus(note), message, breakSince, rulings, acts);
    }

    /** Adds a person's note, under a number of its own. */
    Remarks noted(String author, StreamTime at, int line, String text, boolean pickup) {
        Person by = author.equals(Remark.Signed.PRESENTER) ? Person.PRESENTER : Person.PRODUCER;
        Note note = new Note(acts.count() + 1, at, line, text, by, pickup);
        return noted(note).did(author, new Act.Noted(note));
    }

    /** Changes the text of a note; does nothing if there is no such note. */
    Remarks edited(String author, int number, String text) {
        return note(number)
                .map(note -> replaced(note, text).did(author, new Act.Edited(note, text)))
                .orElse(this);
    }

    Remarks told(String author, StreamTime at, String text) {
        Message sent = new Message(at, message.map(Message::number).orElse(0) + 1, text, Optional.empty());
        Remarks told = new Remarks(notes, Optional.of(sent), breakSince, rulings, acts);
        return text.isEmpty() ? told : told.did(author, new Act.Told(sent.number()));
    }

    /** Notes that the reading window has shown a message; does nothing if it is not the last one. */
    Remarks shown(StreamTime at, int number) {
        Optional<Message> now =
                message.map(last -> last.number() == number && last.shown().isEmpty()
                        ? new Message(last.at(), number, last.text(), Optional.of(at))
                        : last);
        return new Remarks(notes, now, breakSince, rulings, acts);
    }

    Remarks withBreak(Optional<Instant> since) {
        return new Remarks(notes, message, since, rulings, acts);
    }

    /** Adds a decision about a line; does nothing if there is no such line. */
    Remarks decided(String author, StreamTime at, Remark.Decided remark, LineIndex heard) {
        int line = remark.line();
        if (line < 1 || line > heard.lines().size()) {
            return this;
        }
        Decision decision = new Decision(remark.choice(), remark.take(), remark.ordinal(), at);
        List<Attempt> attempts = heard.lines().get(line - 1).attempts();
        return did(author, new Act.Decided(line, decision, ReviewOverrides.accepted(line, decision, attempts)));
    }

    Remarks bounded(String author, Remark.Bounded b) {
        return did(author, new Act.Bounded(b.take(), b.ordinal(), b.start(), b.end()));
    }

    /** Adds a decision about a line in the film, or about the session as a whole; does nothing if there is no such line. */
    Remarks filmed(String author, Remark.Filmed remark, int lines) {
        return !remark.change().fits(remark.line()) || remark.line() < 0 || remark.line() > lines
                ? this
                : did(author, new Act.Filmed(remark.line(), remark.change()));
    }

    /**
     * Adds readings accepted in earlier sessions. They are not decisions of this session, so nobody can take them back.
     */
    Remarks carried(List<AcceptedReading> earlier) {
        return new Remarks(notes, message, breakSince, rulings.carried(earlier), acts.carried(earlier));
    }

    /** Takes back the last decision, whoever made it. */
    Remarks undone() {
        return acts.lastRuling().map(this::without).orElse(this);
    }

    /** Takes back an act; does nothing if it does not hold any more. */
    Remarks retracted(StreamTime at, int number) {
        Optional<Act> act = acts.number(number);
        if (act.isEmpty()) {
            return this;
        }
        Remarks rest = without(act.get());
        Act.Change change = act.get().change();
        if (change instanceof Act.Noted noted) {
            return rest.withNotes(note -> note.number() == noted.note().number() ? List.of() : List.of(note));
        }
        if (change instanceof Act.Edited edited) {
            return rest.unedited(edited);
        }
        boolean unread = change instanceof Act.Told told
                && message.filter(last -> last.number() == told.message()).isPresent();
        return unread ? rest.told("", at, "") : rest;
    }

    /** The same for a changed script; a note on a deleted line moves to the line now in its place. */
    Remarks renumbered(Renumbering change) {
        return new Remarks(
                TreePVector.from(notes.stream()
                        .map(n -> n.movedTo(change.place(n.line())))
                        .toList()),
                message,
                breakSince,
                rulings.renumbered(change),
                acts.renumbered(change));
    }

    /** Remembers that the act of this name was done; an empty name is none. */
    Remarks named(String act) {
        return act.isEmpty() ? this : new Remarks(notes, message, breakSince, rulings, acts.named(act));
    }

    private Remarks did(String author, Act.Change change) {
        Act act = new Act(acts.count() + 1, author, change);
        return new Remarks(notes, message, breakSince, act.over(rulings), acts.plus(act));
    }

    private Remarks without(Act act) {
        Acts rest = acts.minus(act);
        return new Remarks(notes, message, breakSince, act.rules() ? rest.rulings() : rulings, rest);
    }

    private Remarks replaced(Note note, String text) {
        boolean gone = text.isEmpty() && !note.pickup();
        return withNotes(n -> n.number() != note.number() ? List.of(n) : gone ? List.of() : List.of(n.withText(text)));
    }

    /** The note as it was before the change, unless it was changed again since. */
    private Remarks unedited(Act.Edited edited) {
        Optional<Note> now = note(edited.before().number());
        if (now.isEmpty()) {
            boolean removed = edited.text().isEmpty() && !edited.before().pickup();
            return removed ? noted(edited.before()) : this;
        }
        return now.get().text().equals(edited.text())
                ? replaced(now.get(), edited.before().text())
                : this;
    }

    /** Puts what the function gives in the place of each note. */
    private Remarks withNotes(Function<Note, List<Note>> change) {
        return new Remarks(
                TreePVector.from(
                        notes.stream().flatMap(n -> change.apply(n).stream()).toList()),
                message,
                breakSince,
                rulings,
                acts);
    }
}
