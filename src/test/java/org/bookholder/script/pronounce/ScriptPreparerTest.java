package org.bookholder.script.pronounce;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.model.PreparedScript.UnknownWord;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;

final class ScriptPreparerTest {
    private static final Set<String> KNOWN = Set.of("""
        the of bees on a roof top u s b twenty nineteen two thousand shapely ness color bee sew co hive is and\
        """.split("\\s", -1));

    @Test
    void keepsTheFormsThatAreKnown() throws ProblemException {
        PreparedScript prepared = prepare("2019 USB");
        assertThat(prepared.lines().get(0).get(0).forms())
                .containsExactly(
                        List.of("twenty", "nineteen"),
                        List.of("two", "thousand", "nineteen"),
                        List.of("two", "thousand", "and", "nineteen"));
        assertThat(prepared.lines().get(0).get(1).forms()).containsExactly(List.of("u", "s", "b"));
        assertThat(prepared.lines().get(0)).noneMatch(PreparedWord::standIn);
        assertThat(prepared.unknown()).isEmpty();
    }

    @Test
    void splitsUnknownWordsIntoKnownOnes() throws ProblemException {
        PreparedWord word = prepare("a rooftop").lines().get(0).get(1);
        assertThat(word.forms().get(0)).containsExactly("roof", "top");
        assertThat(word.standIn()).isTrue();
        assertThat(first("shapeliness")).containsExactly("shapely", "ness");
    }

    @Test
    void findsAnotherSpelling() throws ProblemException {
        assertThat(first("colour")).containsExactly("color");
        assertThat(first("hive’s")).containsExactly("hive");
    }

    @Test
    void findsAlternativesForContractionsReadAsWritten() throws ProblemException {
        String text = "---\ncontractions: as-written\n---\nNow it is true and won't wobble.";
        PreparedScript prepared = ScriptPreparer.prepare(
                ScriptReader.parse(text, "x.txt", Format.PLAIN_TEXT), word -> !word.equals("shan't"));
        assertThat(prepared.rivals())
                .containsExactly(List.of("now", "it's", "true"), List.of("and", "will", "not", "wobble"));
        assertThat(prepared.lines().get(0).get(5).forms()).containsExactly(List.of("won't"));
    }

    @Test
    void putsSoundsTogether() throws ProblemException {
        assertThat(first("Subiaco")).containsExactly("sew", "bee", "co");
    }

    @Test
    void findsNothingForAnotherWritingSystem() throws ProblemException {
        PreparedScript prepared = prepare("привет");
        assertThat(prepared.lines().get(0).get(0).forms()).isEmpty();
        assertThat(prepared.lines().get(0).get(0).standIn()).isTrue();
        assertThat(prepared.unknown()).containsExactly(new UnknownWord("привет", 1, List.of()));
    }

    @Test
    void namesEachUnknownWordOnceWithItsFirstLine() throws ProblemException {
        assertThat(prepare("The hive.\nA rooftop.\nThe rooftop of Subiaco.").unknown())
                .containsExactly(
                        new UnknownWord("rooftop", 2, List.of("roof", "top")),
                        new UnknownWord("subiaco", 3, List.of("sew", "bee", "co")));
    }

    @Test
    void usesKnownWordsOnly() throws ProblemException {
        assertThat(prepare("Kubernetes brioche tkinter, hyperparameter-ish zyzzyva!")
                        .lines()
                        .get(0))
                .allSatisfy(word -> assertThat(word.forms())
                        .allSatisfy(form -> assertThat(form).isNotEmpty().allMatch(KNOWN::contains)));
    }

    private static List<String> first(String word) throws ProblemException {
        return prepare(word).lines().get(0).get(0).forms().get(0);
    }

    private static PreparedScript prepare(String text) throws ProblemException {
        return ScriptPreparer.prepare(ScriptReader.parse(text, "x.txt", Format.PLAIN_TEXT), KNOWN::contains);
    }
}
