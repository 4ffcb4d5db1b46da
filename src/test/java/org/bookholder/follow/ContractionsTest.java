package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.bookholder.follow.judge.OneLine;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.testing.ReadAloud;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Contractions read in full and the other way about. That both are scored as the same is the custom of speech recognition
 * too: the global mapping files of the NIST evaluations expand contractions in what was said and in what was recognised
 * (from memory).
 */
final class ContractionsTest {
    @ParameterizedTest(name = "{0} read as {1}")
    @CsvSource({
        "It's the brake that squeaks., it is the brake that squeaks",
        "It is the brake that squeaks., it's the brake that squeaks",
        "The nuts will not turn at all today., the nuts won't turn at all today",
        "The nuts won't turn at all today., the nuts will not turn at all today",
        "Then they would rub on the rim., then they'd rub on the rim",
        "You cannot see the tear from outside., you can't see the tear from outside",
        "You can't see the tear from outside., you cannot see the tear from outside",
        "He’s never carried a spare tube., he has never carried a spare tube",
        "Carry a spare because tubes do not last., carry a spare because tubes don't last",
    })
    void areReadForEachOtherUnlessTheScriptSaysOtherwise(String line, String read) throws ProblemException {
        assertThat(deviations("free", line, read)).isEmpty();
        assertThat(deviations("as-written", line, read)).singleElement().satisfies(deviation -> {
            assertThat(deviation.kind()).isEqualTo(Deviation.Kind.SWAPPED);
            assertThat(deviation.said()).isNotEmpty();
        });
        assertThat(deviations(
                        "as-written",
                        line,
                        line.toLowerCase(Locale.ROOT).replace('’', '\'').replace(".", "")))
                .isEmpty();
    }

    private static List<Deviation> deviations(String contractions, String line, String read) throws ProblemException {
        String text = "---\nlines: as-written\ncontractions: " + contractions + "\n---\n" + OneLine.text(line);
        ReadAloud reader = ReadAloud.of(
                ScriptPreparer.prepare(ScriptReader.parse(text, "lesson.md", Format.MARKDOWN), word -> true));
        List<Attempt> attempts = OneLine.read(reader, read);
        assertThat(attempts).singleElement().matches(Attempt::complete);
        return attempts.get(0).deviations();
    }
}
