package org.bookholder.wording;

import org.bookholder.session.Act;

/** Says what an act was, as the object of "undo". */
public final class ActText {
    private ActText() {}

    /** A few words, such as "mark on line 18". */
    public static String of(Act act) {
        return act.change().to(new Words());
    }

    private record Words() implements Act.Handler<String> {
        @Override
        public String noted(Act.Noted change) {
            return (change.note().pickup() ? "mark on line " : "note on line ")
                    + change.note().line();
        }

        @Override
        public String edited(Act.Edited change) {
            return "change of the note on line " + change.before().line();
        }

        @Override
        public String told(Act.Told change) {
            return "message";
        }

        @Override
        public String decided(Act.Decided change) {
            return Labels.of(change.decision().choice()) + ", line " + change.line();
        }

        @Override
        public String bounded(Act.Bounded change) {
            return "bounds of an attempt in take " + change.take();
        }

        @Override
        public String filmed(Act.Filmed change) {
            return FilmChoiceText.of(change.what()) + (change.line() == 0 ? "" : ", line " + change.line());
        }
    }
}
