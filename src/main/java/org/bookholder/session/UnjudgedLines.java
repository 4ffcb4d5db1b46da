package org.bookholder.session;

import org.bookholder.follow.model.UnjudgedStretch;
import org.pcollections.PVector;
import org.pcollections.TreePVector;

/** What the program failed to judge. It is applied on top of everything else known about the lines. */
record UnjudgedLines(PVector<UnjudgedStretch> stretches) {
    static final UnjudgedLines NONE = new UnjudgedLines(TreePVector.empty());

    UnjudgedLines with(UnjudgedStretch stretch) {
        return new UnjudgedLines(stretches.plus(stretch));
    }

    UnjudgedLines renumbered(Renumbering change) {
        return new UnjudgedLines(
                TreePVector.from(stretches.stream().map(change::stretch).toList()));
    }

    /** Sets the outcome "not judged" for each line of a stretch that was not also read completely elsewhere. */
    PVector<LineNotes> over(PVector<LineNotes> notes) {
        PVector<LineNotes> lines = notes;
        for (UnjudgedStretch stretch : stretches) {
            for (int line : stretch.lines()) {
                LineNotes known = lines.get(line - 1);
                lines = known.best().isPresent() ? lines : lines.with(line - 1, known.notJudged());
            }
        }
        return lines;
    }
}
