package org.bookholder.session;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.pcollections.HashTreePSet;
import org.pcollections.PSet;
import org.pcollections.PVector;
import org.pcollections.TreePVector;

/**
 * What people did and can take back, each their own. Immutable.
 *
 * @param standing the acts that hold, in order
 * @param gone decisions about lines that a changed script no longer has, in order; what they accepted in every line still holds
 * @param count how many were done, with those taken back: the number of the last one
 * @param base the decisions that nobody can take back: what other sessions have accepted
 * @param names what the acts that were done are called by those who asked for them, with those taken back
 */
public record Acts(PVector<Act> standing, PVector<Act> gone, int count, ReviewOverrides base, PSet<String> names) {
    static final Acts NONE =
            new Acts(TreePVector.empty(), TreePVector.empty(), 0, ReviewOverrides.NONE, HashTreePSet.empty());

    /** Whether the act of this name was done, in this run of the program or an earlier one; nothing has an empty name. */
    public boolean done(String name) {
        return names.contains(name);
    }

    /** The act with this number, if it still holds. */
    public Optional<Act> number(int number) {
        return standing.stream().filter(act -> act.number() == number).findFirst();
    }

    /** The last act of this author that still holds. */
    public Optional<Act> last(String author) {
        return standing.stream().filter(act -> act.author().equals(author)).reduce((a, b) -> b);
    }

    /** Whether someone else has changed since what this act changed, so that it cannot be taken back. */
    public boolean builtOn(Act act) {
        return act.change() instanceof Act.Noted
                && standing.stream()
                        .anyMatch(later -> !later.author().equals(act.author())
                                && later.change() instanceof Act.Edited edited
                                && edited.before().number() == act.number());
    }

    /** The last decision that was not taken back, whoever made it, also if its line is gone. */
    Optional<Act> lastRuling() {
        return Stream.concat(standing.stream().filter(Act::rules), gone.stream())
                .max(Comparator.comparingInt(Act::number));
    }

    /** The decisions that hold. */
    ReviewOverrides rulings() {
        ReviewOverrides rulings = base;
        for (Act act : gone) {
            rulings = rulings.carried(act.accepted());
        }
        for (Act act : standing) {
            rulings = act.over(rulings);
        }
        return rulings;
    }

    /** What is declared right and was not decided otherwise about the same line since. Without what other sessions have accepted. */
    List<AcceptedReading> accepted() {
        return Stream.concat(gone.stream(), standing.stream().filter(act -> !revised(act)))
                .flatMap(act -> act.accepted().stream())
                .toList();
    }

    private boolean revised(Act act) {
        return standing.stream()
                .anyMatch(later -> later.number() > act.number()
                        && later.line() == act.line()
                        && later.change() instanceof Act.Decided decided
                        && decided.decision().choice() != Decision.Choice.NOT_A_FAULT
                        && decided.decision().choice() != Decision.Choice.LEAVE_OUT);
    }

    Acts plus(Act act) {
        return new Acts(standing.plus(act), gone, act.number(), base, names);
    }

    Acts minus(Act act) {
        return new Acts(standing.minus(act), gone.minus(act), count, base, names);
    }

    Acts named(String act) {
        return new Acts(standing, gone, count, base, names.plus(act));
    }

    Acts carried(List<AcceptedReading> earlier) {
        return new Acts(standing, gone, count, base.carried(earlier), names);
    }

    /** The same for a changed script. What is accepted in every line stays accepted when its own line is gone. */
    Acts renumbered(Renumbering lines) {
        List<Act> moved = new ArrayList<>();
        List<Act> without = new ArrayList<>();
        gone.forEach(act -> without.add(act.withoutLine(lines)));
        for (Act act : standing) {
            Optional<Act> now = act.renumbered(lines);
            now.ifPresent(moved::add);
            if (now.isEmpty() && act.rules()) {
                without.add(act.withoutLine(lines));
            }
        }
        return new Acts(TreePVector.from(moved), TreePVector.from(without), count, base.renumbered(lines), names);
    }
}
