package org.bookholder.follow.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.bookholder.follow.model.Deviation;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.testing.ReadAloud;
import org.junit.jupiter.api.Test;

/** Words added beside one that no recogniser knows, which both ears hear as words that sound like it. */
final class AddedWordsTest {
    private static final Set<String> KNOWN = new HashSet<>(
            Arrays.asList(("nobody answered the question from the back row open the valve before you push against rim "
                            + "everybody wrote number down at once roof top")
                    .split(" ", -1)));

    @Test
    void areReportedNextToAnUnknownWordThatBothEarsHeardAsItSounds() throws ProblemException {
        assertThat(deviations("open the valve before you push consult the roof top against the rim"))
                .singleElement()
                .satisfies(deviation -> {
                    assertThat(deviation.kind()).isEqualTo(Deviation.Kind.ADDED);
                    assertThat(deviation.said()).isEqualTo("consult");
                });
        assertThat(deviations("open the valve before you push the roof top really against the rim"))
                .singleElement()
                .satisfies(deviation -> assertThat(deviation.said()).isEqualTo("really"));
    }

    @Test
    void piecesOfAnUnknownWordAreNotAddedWords() throws ProblemException {
        assertThat(deviations("open the valve before you push the roof top against the rim"))
                .isEmpty();
    }

    private static List<Deviation> deviations(String read) throws ProblemException {
        String text = OneLine.text("Open the valve before you push the rooftop against the rim");
        ReadAloud reader = ReadAloud.of(
                ScriptPreparer.prepare(ScriptReader.parse(text, "lesson.txt", Format.PLAIN_TEXT), KNOWN::contains));
        return OneLine.read(reader, read).stream()
                .flatMap(attempt -> attempt.deviations().stream())
                .toList();
    }
}
