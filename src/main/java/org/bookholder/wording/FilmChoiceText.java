package org.bookholder.wording;

import java.util.Locale;
import org.bookholder.session.FilmChange;
import org.bookholder.session.FilmChoices;

/** Says what was decided about a line in the film. */
final class FilmChoiceText {
    private FilmChoiceText() {}

    /** A few words, such as "closer". */
    static String of(FilmChange change) {
        return change.to(new Words());
    }

    private record Words() implements FilmChange.Handler<String> {
        @Override
        public String framed(FilmChange.Framed change) {
            return switch (change.framing()) {
                case PLANNED -> "framing as planned";
                case AS_SHOT -> "framing as shot";
                case CLOSER -> "closer framing";
            };
        }

        @Override
        public String paused(FilmChange.Paused change) {
            return change.millis() == FilmChoices.AS_READ
                    ? "pause as read"
                    : String.format(Locale.ROOT, "pause of %.1f s", change.millis() / 1000.0);
        }

        @Override
        public String cutAt(FilmChange.CutAt change) {
            return change.edge() == FilmChoices.Edge.IN ? "place of its beginning" : "place of its end";
        }

        @Override
        public String seenBy(FilmChange.SeenBy change) {
            return change.camera().isEmpty() ? "picture as the program chooses" : "shown by " + change.camera();
        }

        @Override
        public String keptPoint(FilmChange.KeptPoint change) {
            return "point that stays in place in " + change.camera();
        }

        @Override
        public String heardFrom(FilmChange.HeardFrom change) {
            return change.file().isEmpty() ? "sound as the program chooses" : "sound of " + change.file();
        }

        @Override
        public String ofTake(FilmChange.OfTake change) {
            return "take " + change.take() + ": " + of(change.what());
        }
    }
}
