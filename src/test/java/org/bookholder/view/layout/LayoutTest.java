package org.bookholder.view.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.script.model.ScriptSettings.LineBreaks;
import org.bookholder.testing.Scripts;
import org.bookholder.view.Plain;
import org.bookholder.view.SampleState;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class LayoutTest {
    private static final Geometry GEOMETRY =
            Geometry.of(WindowSettings.defaults().withSize(72), 300, 1080, 1920, 1080);

    @Test
    void neverSeparatesANumberFromItsUnit() {
        for (int before = 0; before < 30; before++) {
            String lead = "so ".repeat(before);
            Layout layout = set(Scripts.of(lead + "take 500 grams of flour and 350 millilitres of water"));
            assertThat(texts(layout)).noneMatch(row -> row.endsWith("500") || row.endsWith("350"));
        }
    }

    @Test
    void doesNotEndARowAfterAnArticleOrPreposition() {
        Layout layout = set(SampleState.lessonScript());
        List<String> rows = layout.readRows().stream().map(Row::text).toList();
        assertThat(rows)
                .noneMatch(row -> row.matches("(?i).*\\b(the|a|an|of|to|in|from|under|with)$"))
                .hasSizeGreaterThan(15);
    }

    @Test
    void prefersToEndARowWithASentence() {
        Layout layout = set(Scripts.of("Weigh it twice. Then begin with the flour."));
        assertThat(texts(layout).get(0)).isEqualTo("Weigh it twice.");
    }

    @Test
    void rarelyLeavesAWordAloneInARow() {
        Layout layout =
                set(Scripts.of("Look at the rim itself before you touch a tool. Cracks around the holes mean that"
                        + " the rim is done."));
        assertThat(texts(layout)).allMatch(row -> row.contains(" "));
    }

    @ParameterizedTest
    @ValueSource(ints = {4, 5, 6, 7})
    void noWordStandsAloneInARowOfTheLessonHoweverNarrow(int words) {
        Geometry narrow = Geometry.of(WindowSettings.defaults().withColumnWords(words), 0, 1080, 1920, 1080);
        Layout layout = Typesetter.set(SampleState.lessonScript(), narrow, new Plain());
        assertThat(layout.readRows())
                .allMatch(row -> row.pieces().size() > 1, "has two words")
                .noneMatch(row -> row.text().matches("(?i).*\\b(the|a|an|of|to|in|from|under|with)$"));
    }

    @Test
    void aSentenceOfOneWordMayStandAlone() {
        Layout layout =
                set(Scripts.of("Look at the rim and at each spoke. Stop. Now look at the hub and at the tyre."));
        assertThat(texts(layout)).allMatch(row -> row.contains(" ") || row.equals("Stop."));
    }

    @Test
    void keepsEveryWordOnceAndInOrder() {
        Script script = SampleState.lessonScript();
        Layout layout = set(script);
        String shown = layout.readRows().stream().map(Row::text).collect(Collectors.joining(" "));
        String written = script.lines().stream().map(ScriptLine::text).collect(Collectors.joining(" "));
        assertThat(shown).isEqualTo(written);
    }

    @Test
    void noRowIsLongerThanTheColumn() {
        Script script = Scripts.of("Say " + "interdenominational".repeat(20) + " slowly and then go on with 3 things.");
        Layout layout = set(script);
        assertThat(layout.rows())
                .allSatisfy(row -> assertThat(new Plain().advance(row.text(), row.face()) * row.size())
                        .isLessThanOrEqualTo(GEOMETRY.columnWidth() + 1e-6));
    }

    @Test
    void setsAWordThatIsAlmostTooLongInSmallerType() {
        int most = (int) (GEOMETRY.columnWidth() / GEOMETRY.em() / 0.5);
        Layout layout = set(Scripts.of("x".repeat(most + 3)));
        assertThat(layout.rows()).hasSize(1);
        assertThat(layout.rows().get(0).size()).isLessThan(GEOMETRY.em()).isGreaterThan(0.7 * GEOMETRY.em());
    }

    @Test
    void aPauseIsSeparateAndStaysWithItsWord() {
        Layout layout = set(Scripts.of("Now wait... then go on with the wheel"));
        Row row = layout.readRows().get(0);
        assertThat(row.text()).startsWith("Now wait … then");
        assertThat(row.pieces().get(2).pause()).isTrue();
        assertThat(row.pieces().get(2).spoken()).isZero();
        assertThat(layout.wordsBefore(new ReadingPosition(1, 3))).isEqualTo(2);
        for (int before = 0; before < 12; before++) {
            Layout moved = set(Scripts.of("so ".repeat(before) + "wait... then"));
            assertThat(texts(moved)).noneMatch(text -> text.startsWith("…"));
        }
    }

    @Test
    void aParagraphWhoseFirstLetterIsHebrewOrArabicIsSetFromTheRight() {
        Layout layout =
                set(Scripts.of("\u05e9\u05dc\u05d5\u05dd 125 wheels", "(\u0628) wheel", "\u201cWheel\u201d \u0628"));
        assertThat(layout.rows()).extracting(Row::rightToLeft).containsExactly(true, true, false);
    }

    @Test
    void setsDirectionsInTheirOwnTypeface() {
        Layout layout = set(SampleState.lessonScript());
        List<Row> directions = layout.rows().stream()
                .filter(row -> row.face() == Face.DIRECTION)
                .toList();
        assertThat(directions).isNotEmpty().allSatisfy(row -> {
            assertThat(row.size()).isLessThan(GEOMETRY.em());
            assertThat(row.isRead()).isFalse();
        });
    }

    /** WCAG 2.2, 1.4.8: rows at least 1.5 apart, paragraphs at least 1.5 times that. */
    @Test
    void setsRowsAndParagraphsApart() {
        Layout layout = set(SampleState.lessonScript());
        List<Row> rows = layout.rows();
        for (int i = 1; i < rows.size(); i++) {
            double distance = rows.get(i).middle() - rows.get(i - 1).middle();
            if (rows.get(i).isRead() && rows.get(i - 1).isRead()) {
                assertThat(distance).isGreaterThanOrEqualTo(1.5 * GEOMETRY.em() - 1e-9);
                boolean newParagraph = rows.get(i).first().equals(new ReadingPosition(9, 1));
                assertThat(distance > 1.49 * GEOMETRY.pitch()).isEqualTo(newParagraph);
            }
        }
    }

    @Test
    void startsARowWithEachLineThatIsKeptAsWritten() {
        List<ScriptLine> lines =
                Scripts.of("One two.", "Three four.", "Five six.").lines();
        Script script = new Script(
                "t",
                "s",
                new ScriptSettings(100, "en-US", LineBreaks.AS_WRITTEN, ScriptSettings.Wording.FREE),
                lines.stream()
                        .map(l -> new ScriptLine(l.number(), l.words(), 0, l.sourceLine()))
                        .collect(Collectors.toList()));
        assertThat(texts(set(script))).containsExactly("One two.", "Three four.", "Five six.");
    }

    @Test
    void findsTheRowOfEveryWordAndTheWordOfEveryRow() {
        Script script = SampleState.lessonScript();
        Layout layout = set(script);
        for (ScriptLine line : script.lines()) {
            for (int word = 1; word <= line.words().size(); word++) {
                ReadingPosition position = new ReadingPosition(line.number(), word);
                Row row = layout.readRows().get(layout.readRowOf(position));
                int wanted = word;
                assertThat(row.pieces()).anyMatch(p -> p.line() == line.number() && p.word() == wanted);
                assertThat(layout.positionAt(layout.spokenBefore(position))).isEqualTo(position);
            }
        }
        assertThat(layout.readRowOf(new ReadingPosition(script.lines().size() + 1, 1)))
                .isEqualTo(layout.readRows().size() - 1);
        assertThat(layout.wordsBefore(new ReadingPosition(script.lines().size() + 1, 1)))
                .isEqualTo(
                        script.lines().stream().mapToInt(l -> l.words().size()).sum());
    }

    @Test
    void theAimMovesEvenlyFromWordToWord() {
        Layout layout = set(SampleState.lessonScript());
        double last = layout.aimAtSpoken(0);
        int gaps = 0;
        for (double words = 0.25; words <= layout.spoken(); words += 0.25) {
            double aim = layout.aimAtSpoken(words);
            boolean gap = aim - last > 0.6 * GEOMETRY.pitch();
            assertThat(aim - last).isGreaterThanOrEqualTo(0);
            gaps += gap ? 1 : 0;
            last = aim;
        }
        // A direction, and a new paragraph after the next line.
        assertThat(gaps).isEqualTo(2);
        assertThat(layout.readRows().get(0).middle()).isEqualTo(layout.aimAtSpoken(0));
    }

    @Test
    void keepsTheRowBeingReadAtTheEyeLine() {
        Layout layout = set(SampleState.lessonScript());
        for (int i = 0; i < layout.spoken(); i++) {
            double aim = layout.aimAtSpoken(i + 0.5);
            Row row = layout.readRows().get(layout.readRowOf(layout.positionAt(i)));
            assertThat(Math.abs(aim - row.middle())).isLessThan(0.5 * GEOMETRY.pitch());
        }
    }

    @Test
    void aGapIsNotCrossedBeforeTheLastWordAboveItHasBeenSaid() {
        Layout layout = set(Scripts.of("One two three.", "> Smile.", "Four five six."));
        double above = layout.readRows().get(0).middle();
        double below = layout.readRows().get(1).middle();
        double half = 0.5 * GEOMETRY.pitch();
        assertThat(layout.aimAtSpoken(3.6, 1, 3)).isBetween(above, above + half);
        assertThat(layout.aimAtSpoken(2.9, 2, 0.5)).isBetween(above, above + half);
        assertThat(layout.aimAtSpoken(2.9, 2, 1.5)).isBetween(below - half, below);
        assertThat(layout.aimAtSpoken(3.6, 3, 0)).isBetween(below - half, below);
    }

    @Test
    void setsAScriptOfFiftyThousandWordsAndAnEmptyOne() {
        Layout layout = set(Scripts.sized(100, 5000, 10));
        assertThat(layout.spoken()).isEqualTo(50_000);
        assertThat(layout.readRowOf(new ReadingPosition(5000, 10)))
                .isEqualTo(layout.readRows().size() - 1);
        Layout empty = set(new Script("t", "s", ScriptSettings.defaults(), List.of(new Direction("Smile.", 0, 1))));
        assertThat(empty.aim(ReadingPosition.START)).isZero();
    }

    @Test
    void setsALineOfTwoThousandWords() {
        String line = IntStream.range(0, 2000).mapToObj(i -> "word").collect(Collectors.joining(" "));
        Layout layout = set(Scripts.of(line));
        assertThat(layout.spoken()).isEqualTo(2000);
        assertThat(layout.rows()).hasSizeBetween(300, 500);
    }

    private static Layout set(Script script) {
        return Typesetter.set(script, GEOMETRY, new Plain());
    }

    private static List<String> texts(Layout layout) {
        return layout.rows().stream().map(Row::text).toList();
    }
}
