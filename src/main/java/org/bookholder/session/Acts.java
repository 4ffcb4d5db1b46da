package org.bookholder.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pcollections.PVector;
import org.pcollections.TreePVector;

/**
 * What people did and can take back, each their own. Immutable.
 *
 * @param standing the acts that hold, in order
 * @param count how many were done, with those taken back: the number of the last one
 * @param base the decisions that nobody can take back: what other sessions have accepted
 */
public record Acts(PVector<Act> standing, int count, ReviewOverrides base) {
    static final Acts NONE = new Acts(TreePVector.empty(), 0, ReviewOverrides.NONE);

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

    /** The last decision that still holds, whoever made it. */
    Optional<Act> lastRuling() {
        return standing.stream().filter(Act::rules).reduce((a, b) -> b);
    }

    /** The decisions that hold. */
    ReviewOverrides rulings() {
        ReviewOverrides rulings = base;
        for (Act act : standing) {
            rulings = act.over(rulings);
        }
        return rulings;
    }

    Acts plus(Act act) {
        return new Acts(standing.plus(act), act.number(), base);
    }

    Acts minus(Act act) {
        return new Acts(standing.minus(act), count, base);
    }

    Acts carried(List<AcceptedReading> earlier) {
        return new Acts(standing, count, base.carried(earlier));
    }

    /** The same for a changed script. What is accepted in every line stays accepted when its own line is gone. */
    Acts renumbered(Renumbering lines) {
        List<AcceptedReading> kept = new ArrayList<>();
        List<Act> moved = new ArrayList<>();
        for (Act act : standing) {
            Optional<Act> now = act.renumbered(lines);
            now.ifPresent(moved::add);
            if (now.isEmpty() && act.change() instanceof Act.Decided decided) {
                kept.addAll(ReviewOverrides.renumbered(decided.accepted(), lines));
            }
        }
        return new Acts(TreePVector.from(moved), count, base.renumbered(lines).carried(kept));
    }
}
