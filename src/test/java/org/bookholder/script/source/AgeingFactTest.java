package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.AgeingFact;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;

final class AgeingFactTest {
    @Test
    void isReadLikeOtherWordsAndKeepsItsLineAndDate() throws ProblemException {
        Script script = ScriptReader.parse(
                "Welcome. It costs [$12](check:2027-03) here.\nMade by [hand](check:2027-04-15).\n",
                "l.md",
                Format.MARKDOWN);

        assertThat(script.lines()).extracting(ScriptLine::text).contains("It costs $12 here.", "Made by hand.");
        assertThat(script.facts())
                .containsExactly(
                        new AgeingFact("$12", LocalDate.of(2027, 3, 1), 2),
                        new AgeingFact("hand", LocalDate.of(2027, 4, 15), 3));
    }

    @Test
    void anImpossibleDateIsReported() {
        assertThatThrownBy(() -> ScriptReader.parse("Hi.\nIt is [$12](check:2027-13) now.", "l.md", Format.MARKDOWN))
                .isInstanceOf(ProblemException.class)
                .hasMessage("l.md:2: '2027-13' is no day on which to check '$12'; write a month or a day, as in "
                        + "[$12](check:2027-03)");
    }
}
