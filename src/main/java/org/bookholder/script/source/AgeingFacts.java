package org.bookholder.script.source;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.script.model.AgeingFact;
import org.bookholder.script.model.ScriptElement;
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
     * Assigns each new fact to the first line after line {@code before} that contains it.
     *
     * @param last number of the script's last line
     */
    void place(List<ScriptElement> elements, int before, int last) {
        for (AgeingFact fact : ofThisLine) {
            int line = elements.stream()
                    .filter(ScriptLine.class::isInstance)
                    .map(ScriptLine.class::cast)
                    .filter(l -> l.number() > before && l.text().contains(fact.text()))
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
