package org.bookholder.app.film;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.session.ChosenReadings;
import org.bookholder.cutlist.CutPlanner;
import org.bookholder.cutlist.CutRules;
import org.bookholder.follow.model.Attempt;
import org.bookholder.session.LineNotes;

/**
 * A line of which another reading is used than if no file were lost.
 *
 * @param line its number in the lesson
 * @param session the session of the reading that is not used, from 0
 * @param attempt that reading
 */
record ReplacedReading(int line, int session, Attempt attempt) {
    /**
     * All of a lesson.
     *
     * @param readings its sessions
     * @param found their files
     * @param chosen which of the readings are used
     */
    static List<ReplacedReading> of(
            List<ChosenReadings.Reading> readings,
            List<FilmFootage.Found> found,
            ChosenReadings chosen,
            CutRules rules) {
        List<ChosenReadings.Reading> whole = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            ChosenReadings.Reading now = readings.get(i);
            boolean filmed = now.filmed()
                    || found.get(i).lost().stream()
                            .anyMatch(file -> file.placed().footage().picture().isPresent());
            whole.add(new ChosenReadings.Reading(now.state(), now.numbers(), filmed));
        }
        ChosenReadings usual = ChosenReadings.of(whole, rules);
        List<ReplacedReading> all = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            ChosenReadings.Reading now = readings.get(i);
            for (LineNotes notes : now.state().lines().all()) {
                Integer line = now.numbers().get(notes.line());
                Optional<Attempt> wanted = CutPlanner.chosen(notes, rules).filter(found.get(i)::hides);
                if (line == null || wanted.isEmpty() || !isFrom(i, line, usual)) {
                    continue;
                }
                if (!isFrom(i, line, chosen) || !now.chosen(notes, rules).equals(wanted)) {
                    all.add(new ReplacedReading(line, i, wanted.get()));
                }
            }
        }
        return all;
    }

    private static boolean isFrom(int session, int line, ChosenReadings readings) {
        return readings.sessions().getOrDefault(line, -1) == session;
    }
}
