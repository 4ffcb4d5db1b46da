package org.bookholder.runtime.take;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.Attempt;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.sound.Spoil;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.Labels;

/**
 * Marks a line as a pickup, as a person would, if the attempt that would be used is spoiled. A later clean attempt
 * settles the mark. Confined to one thread; one for each take.
 */
public final class SpoiledLines {
    private final List<Spoil> spoils = new ArrayList<>();
    private final List<Mark> marked = new ArrayList<>();

    private record Mark(int line, StreamTime end, Spoil.Kind kind) {
        /** An attempt that is settled anew may end a little elsewhere; the next attempt ends a whole line later. */
        boolean isOf(Attempt attempt, Spoil.Kind spoil) {
            double off = Math.abs(end.seconds() - attempt.end().seconds());
            double length = attempt.end().since(attempt.start()).seconds();
            return line == attempt.line() && kind == spoil && off <= length / 2;
        }
    }

    /** Adds a spoiled stretch of the take. */
    public void add(Spoil spoil) {
        spoils.add(spoil);
    }

    /** Notes an existing mark of this take; a person's mark is ignored. */
    public void given(SessionEvent.PickupMarked mark) {
        for (Spoil.Kind kind : Spoil.Kind.values()) {
            if (Labels.of(kind).equals(mark.note())) {
                marked.add(new Mark(mark.line(), mark.at(), kind));
            }
        }
    }

    /** New marks required by attempts that were just settled. */
    public List<SessionEvent> marks(SessionState state, List<Attempt> settled) {
        List<SessionEvent> marks = new ArrayList<>();
        for (Attempt attempt : settled) {
            if (used(state, attempt)) {
                for (Spoil.Kind kind : Spoil.Kind.values()) {
                    if (spoiled(attempt, kind) && marked.stream().noneMatch(mark -> mark.isOf(attempt, kind))) {
                        marked.add(new Mark(attempt.line(), attempt.end(), kind));
                        marks.add(new SessionEvent.PickupMarked(attempt.end(), attempt.line(), Labels.of(kind)));
                    }
                }
            }
        }
        return marks;
    }

    private static boolean used(SessionState state, Attempt attempt) {
        Optional<Attempt> best = state.lines().notes(attempt.line()).best();
        return best.filter(b -> b.take() == attempt.take() && b.ordinal() == attempt.ordinal())
                .isPresent();
    }

    /** Noise spoils an attempt only if it covers half of it; for the other kinds a moment is enough. */
    private boolean spoiled(Attempt attempt, Spoil.Kind kind) {
        List<Spoil> ofKind = spoils.stream().filter(s -> s.kind() == kind).toList();
        if (kind != Spoil.Kind.NOISY) {
            return ofKind.stream().anyMatch(spoil -> touches(spoil, attempt));
        }
        double covered = ofKind.stream()
                .mapToDouble(
                        spoil -> spoil.within(attempt.start(), attempt.end()).seconds())
                .sum();
        return covered > 0 && covered >= attempt.end().since(attempt.start()).seconds() / 2;
    }

    private static boolean touches(Spoil spoil, Attempt attempt) {
        return !spoil.end().isBefore(attempt.start()) && !attempt.end().isBefore(spoil.start());
    }
}
