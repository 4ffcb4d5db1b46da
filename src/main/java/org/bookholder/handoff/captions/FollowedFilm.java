package org.bookholder.handoff.captions;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.bookholder.follow.model.Attempt;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;

/** What is said in a film that was followed against its script as if it were a take. */
public final class FollowedFilm {
    private FollowedFilm() {}

    /** Everything that is said, in order of time: each reading of each line, and speech that is not in the script. */
    public static List<SpokenLine> of(SessionState state) {
        List<SpokenLine> lines = new ArrayList<>();
        for (LineNotes notes : state.lines().all()) {
            for (Attempt attempt : notes.attempts()) {
                List<TimedWord> words = SaidWords.of(state.line(notes.line()).words(), attempt);
                if (!words.isEmpty()) {
                    lines.add(new SpokenLine(notes.line(), words));
                }
            }
        }
        state.lines().asides().stream()
                .filter(aside -> !aside.said().isBlank())
                .forEach(aside -> lines.add(new SpokenLine(
                        0, SaidWords.shared(List.of(aside.said().strip().split("\\s+")), aside.start(), aside.end()))));
        lines.sort(Comparator.comparing(SpokenLine::start));
        return lines;
    }
}
