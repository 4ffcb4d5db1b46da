package org.bookholder.script.source;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.script.model.AgeingFact;
import org.bookholder.script.model.ScriptLine;

/** Collects the facts of a script that must be checked again some day. */
final class AgeingFacts {
    private final List<AgeingFact> facts = new ArrayList<>();
    private final List<AgeingFact> ofThisLine = new ArrayList<>();

    /**
     * Takes in a fact of the next source line.
     *
     * @param due a month or a day
     * @throws java.time.DateTimeException if {@code due} is neither
     */
    void add(String text, String due) {
        LocalDate day = due.matches("\\d{4}-\\d{2}") ? YearMonth.parse(due).atDay(1) : LocalDate.parse(due);
        ofThisLine.add(new AgeingFact(MarkedSourceLine.plain(text).text(), day, 0));
    }

    /**
     * Assigns each new fact to the first of these lines that contains it.
     *
     * @param added the lines that the source line holds
     * @param last number of the script's last line
     */
    void place(List<ScriptLine> added, int last) {
        for (AgeingFact fact : ofThisLine) {
            int line = added.stream()
                    .filter(l -> l.text().contains(fact.text()))
                    .mapToInt(ScriptLine::number)
                    .findFirst()
                    .orElse(Math.max(1, last));
            facts.add(new AgeingFact(fact.text(), fact.due(), line));
        }
        ofThisLine.clear();
    }

    /** The facts that were placed. */
    List<AgeingFact> all() {
        return List.copyOf(facts);
    }
}
