package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.Speaker;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Stage directions, speakers' names, lists and symbols, as they stand in scripts; common practice. */
class StageRemarksTest {
    /** Each element in order: directions behind ">". */
    private static List<String> shown(String text, Format format) throws ProblemException {
        return ScriptReader.parse(text, "l", format).elements().stream()
                .map(element -> (element instanceof Direction ? "> " : "") + element.text())
                .toList();
    }

    private static List<String> left(String text) throws ProblemException {
        return ScriptReader.explain(text, "l", Format.MARKDOWN).leftOut().stream()
                .map(LeftOut::what)
                .toList();
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void bracketsAreDirectionsInEveryFormat(Format format) throws ProblemException {
        assertThat(shown("""
            [Hold up the thermometer]

            Look here. [Turn it] It reads high. [Beat]

            (beat)

            Keep the jar [point at it] shut, and (this is said) wait (pause) a little.
            """, format))
                .containsExactly(
                        "> Hold up the thermometer",
                        "Look here.",
                        "> Turn it",
                        "It reads high.",
                        "> Beat",
                        "> beat",
                        "> point at it",
                        "> pause",
                        "Keep the jar shut, and (this is said) wait a little.");
    }

    /** Cues as scripts for camera have them; common practice. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "VISUAL: Diagram of the wheel",
                "Visual: diagram of the wheel",
                "SFX: a bell",
                "SFX 2: a bell",
                "B-roll: the yard at dawn",
                "MUSIC swells; SFX: chime",
                "MUSIC: soft, under",
                "CUT TO:",
                "CUT TO: the yard",
                "FADE IN:",
                "FADE TO BLACK.",
                "INT. WORKSHOP - DAY",
                "Slide 3: Tools",
                "SLIDE 3",
                "Scene 2 - the yard",
                "Duration: 40 seconds",
                "Running time: 5:20",
                "LOWER THIRD: Ada, wheelwright",
                "On-screen text: three spokes",
                "DEMO: turn the wheel",
                "TITLE CARD: The hub"
            })
    void aCueForThoseWhoShootAndCutIsShownAndNotSpoken(String cue) throws ProblemException {
        assertThat(shown("Take the wheel.\n\n" + cue + "\n\nTurn it.", Format.PLAIN_TEXT))
                .containsExactly("Take the wheel.", "> " + cue, "Turn it.");
        assertThat(shown("Take the wheel.\n\n**" + cue + "**\nTurn it.", Format.MARKDOWN))
                .containsExactly("Take the wheel.", "> " + cue, "Turn it.");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Demo: turn the wheel.",
                "Animation: pictures that move.",
                "Music: it is everywhere.",
                "Slide 3 shows the hub.",
                "Scene two is next.",
                "Cut to the line, then stop.",
                "Visual checks come first.",
                "Note: keep it level.",
                "The duration: forty seconds.",
                "MUSIC is loud. Turn it down.",
                "Action!",
                "AUDIO: First, wash your hands.",
                "MUSIC matters more than you think.",
                "SFX are what we add last.",
                "slide 12.",
                "Duration: hold it for forty seconds.",
                "The hook (holds up to 5 kg) is strong.",
                "SET the dial."
            })
    void aSentenceThatOnlyLooksLikeACueIsSpoken(String text) throws ProblemException {
        assertThat(shown("Take the wheel.\n\n" + text, Format.PLAIN_TEXT)).noneMatch(shown -> shown.startsWith("> "));
    }

    @Test
    void aCueIsNoSpeakerHoweverOftenItStandsThere() throws ProblemException {
        assertThat(shown("""
            VISUAL: the hub

            HOST: Look here.

            VISUAL: the rim

            HOST: And here.
            """, Format.PLAIN_TEXT))
                .containsExactly("> VISUAL: the hub", "> HOST", "Look here.", "> VISUAL: the rim", "And here.");
    }

    @Test
    void inADialogueANameInCapitalsMayStandOnce() throws ProblemException {
        assertThat(shown("""
            MIRA: Feed it at noon.

            TOM: Can't I keep it?

            MIRA: You can.
            """, Format.PLAIN_TEXT))
                .containsExactly("> MIRA", "Feed it at noon.", "> TOM", "Can't I keep it?", "> MIRA", "You can.");
        assertThat(shown("TOM: Can't I keep it?\n\nYou can.", Format.PLAIN_TEXT))
                .containsExactly("TOM: Can't I keep it?", "You can.");
        assertThat(shown("HOST: Look.\n\nUSB: that's the flat one.\n\nHOST: And here.", Format.PLAIN_TEXT))
                .contains("USB: that's the flat one.");
    }

    @Test
    void aCueToWhichTheAuthorGivesASpokenFormIsSpoken() throws ProblemException {
        assertThat(shown("[Slide 3](say:slide three): tools.", Format.MARKDOWN)).containsExactly("Slide 3: tools.");
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void aRemarkMayLieOverSeveralLines(Format format) throws ProblemException {
        assertThat(shown("""
            Now look. [Hold up
            the jar and
            turn it] It is clean.
            """, format)).containsExactly("Now look.", "> Hold up the jar and turn it", "It is clean.");
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void aBracketThatIsNeverClosedIsRead(Format format) throws ProblemException {
        assertThat(shown("One [two.\n\nThree.\n", format)).containsExactly("One [two.", "Three.");
    }

    @Test
    void anItemThatBeginsWithALongRemarkKeepsItsNumber() throws ProblemException {
        assertThat(shown("1. [Show the\nmenu] Click it.\n", Format.PLAIN_TEXT))
                .containsExactly("> Show the menu", "1. Click it.");
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void speakersAreShownWhenTheyChange(Format format) throws ProblemException {
        assertThat(shown("""
            HOST: Welcome back.

            HOST: Who is here?

            Guest - I am.

            HOST (on the phone): Good.
            """, format))
                .containsExactly(
                        "> HOST",
                        "Welcome back.",
                        "Who is here?",
                        "> Guest",
                        "I am.",
                        "> HOST (on the phone)",
                        "Good.");
    }

    @Test
    void aNameInBoldOrOnALineOfItsOwnIsASpeaker() throws ProblemException {
        assertThat(shown("**Host:** Hello.\n\n**GUEST:**\nHi there.\n", Format.MARKDOWN))
                .containsExactly("> Host", "Hello.", "> GUEST", "Hi there.");
    }

    @Test
    void namesAreSpeakersWhereSeveralSpeak() throws ProblemException {
        assertThat(shown("Ann: Hello.\nBen: Hi.\nAnn: Go on.\nBen: Yes.\n", Format.PLAIN_TEXT))
                .containsExactly("> Ann", "Hello.", "> Ben", "Hi.", "> Ann", "Go on.", "> Ben", "Yes.");
    }

    @Test
    void otherWordsBeforeAColonAreRead() throws ProblemException {
        List<String> spoken = List.of("Note: keep it level.", "USB: a plug.", "Step 1: open it.", "Tip: rest.");

        assertThat(shown(String.join("\n", spoken), Format.PLAIN_TEXT)).containsExactlyElementsOf(spoken);
        assertThat(shown("NOTE: one.\nNOTE: two.\n", Format.PLAIN_TEXT)).containsExactly("NOTE: one.", "NOTE: two.");
    }

    @Test
    void theLinesOfOneSpeakerCanBeChosen() throws ProblemException {
        String text = "---\nspeaker: host\n---\nHOST: Welcome.\nGUEST: Thank you. [Bows]\nHOST: Go on.\n";

        assertThat(shown(text, Format.MARKDOWN))
                .containsExactly("> HOST", "Welcome.", "> GUEST", "> Thank you.", "> Bows", "> HOST", "Go on.");
        assertThatThrownBy(() -> shown(text.replace("host", "anna"), Format.MARKDOWN))
                .hasMessageContaining("nobody named 'anna' speaks")
                .hasMessageContaining("HOST, GUEST");
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void eachItemOfAListIsAParagraphWithItsMark(Format format) throws ProblemException {
        List<ScriptLine> lines = ScriptReader.parse("""
            Take these:

            - a jar
            - 2 lids

            1. Open it.
            2. Close it. Wait.
            """, "l", format).lines();

        assertThat(lines)
                .extracting(ScriptLine::text)
                .containsExactly("Take these:", "• a jar", "• 2 lids", "1. Open it.", "2. Close it.", "Wait.");
        assertThat(lines).extracting(ScriptLine::paragraph).containsExactly(0, 1, 2, 3, 4, 4);
        assertThat(lines.get(1).words().get(0).spoken()).containsExactly(List.of("a"));
        assertThat(lines.get(4).words().get(0).spoken())
                .containsExactly(
                        List.of("close"),
                        List.of("two", "close"),
                        List.of("number", "two", "close"),
                        List.of("second", "close"));
    }

    @Test
    void symbolsThatNobodySaysAreLeftOutAndNamed() throws ProblemException {
        String text =
                "Great \ud83d\udd6f\ufe0f work \ud83d\udc69\u200d\ud83c\udf73! Go \ud83c\uddec\ud83c\udde7 on \u2192 "
                        + "[\ud83c\udf89](say:party).\n\n\ud83c\udf89\n";

        assertThat(shown(text, Format.MARKDOWN)).containsExactly("Great work!", "Go on \u2192 \ud83c\udf89.");
        assertThat(left(text))
                .containsExactly(
                        "\ud83d\udd6f\ufe0f",
                        "\ud83d\udc69\u200d\ud83c\udf73",
                        "\ud83c\uddec\ud83c\udde7",
                        "\ud83c\udf89");
    }

    @Test
    void marksOfCommentsAndNotesAreLeftOutAndNamed() throws ProblemException {
        String text = "The hive[a] is old.[12] Go.\n\n- [ ] a jar\n- [x] a lid\n\nEnd [] it.\n";

        assertThat(shown(text, Format.MARKDOWN))
                .containsExactly("The hive is old.", "Go.", "• a jar", "• a lid", "End it.");
        assertThat(left(text)).containsExactly("[a]", "[12]", "[ ]", "[x]", "[]");
    }

    @Test
    void plainTextWithoutBlankLinesHasAParagraphOnEachLine() throws ProblemException {
        assertThat(ScriptReader.parse("One. Two.\nThree.\n", "l", Format.PLAIN_TEXT)
                        .lines())
                .extracting(ScriptLine::paragraph)
                .containsExactly(0, 0, 1);
        assertThat(ScriptReader.parse("One.\nTwo.\n\nThree.\n", "l", Format.PLAIN_TEXT)
                        .lines())
                .extracting(ScriptLine::paragraph)
                .containsExactly(0, 0, 1);
    }

    @Test
    void theFirstLineOfPlainTextIsTheTitleIfItIsWrittenLikeOne() throws ProblemException {
        assertThat(title("How to Open a Hive\n\nTake it off.\n")).isEqualTo("How to Open a Hive");
        assertThat(title("Lesson 3: the smoker\n\nTake it off.\n")).isEqualTo("Lesson 3: the smoker");
        assertThat(title("Hello everyone\n\nTake it off.\n")).isEqualTo("l");
        assertThat(title("Look At This.\n\nTake it off.\n")).isEqualTo("l");
    }

    private static String title(String text) throws ProblemException {
        return ScriptReader.parse(text, "l.txt", Format.PLAIN_TEXT).title();
    }

    @Test
    void frontMatterMayFollowABlankLineAndASpokenFormASpace() throws ProblemException {
        String text = "\n---\npace: 120\n---\nBuy [12] (say:a dozen).\n";

        assertThat(ScriptReader.parse(text, "l.md", Format.MARKDOWN).settings().targetPace())
                .isEqualTo(120);
        assertThat(ScriptReader.parse(text, "l.md", Format.MARKDOWN)
                        .lines()
                        .get(0)
                        .words()
                        .get(1)
                        .spoken())
                .containsExactly(List.of("a", "dozen"));
        assertThat(shown("\n---\n\nOne.\n", Format.MARKDOWN)).containsExactly("One.");
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void aSpeakerIsFoundHoweverTheNameIsWritten(Format format) throws ProblemException {
        assertThat(shown("""
            ---
            speaker: Host
            ---
            host: Welcome.

            guest: Thank you.

            Host: Goodbye.
            """, format))
                .containsExactly("> host", "Welcome.", "> guest", "> Thank you.", "> Host", "Goodbye.");
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void aNameInBracketsIsASpeaker(Format format) throws ProblemException {
        assertThat(shown("""
            ---
            speaker: Host, Ann
            ---
            [HOST] Welcome.

            [Guest]: Thank you.

            [Ann:] [smiling] Hello.

            [Music] It plays.
            """, format))
                .containsExactly(
                        "> HOST",
                        "Welcome.",
                        "> Guest",
                        "> Thank you.",
                        "> Ann",
                        "> smiling",
                        "Hello.",
                        "> Music",
                        "It plays.");
    }

    @Test
    void aChoiceOfSpeakersStandsBeforeTheTextAndIsNoLineOfIt() throws ProblemException {
        String text = "---\nspeaker: Host\n---\nHOST: Welcome.\n\nGUEST: Thanks.\n\nANN: Hello.\n\nANN: Bye.\n";
        String chosen = SpeakerChoice.in(text, List.of("guest", "Ann"));
        ExplainedScript read = ScriptReader.explain(chosen, "l.md", Format.MARKDOWN);
        assertThat(read.script().lines())
                .extracting(ScriptLine::text, ScriptLine::sourceLine)
                .containsExactly(tuple("Thanks.", 6), tuple("Hello.", 8), tuple("Bye.", 10));
        assertThat(read.speakers())
                .containsExactly(new Speaker("HOST", false), new Speaker("GUEST", true), new Speaker("ANN", true));
        assertThat(SpeakerChoice.of(chosen)).isEqualTo(new SpeakerChoice(List.of("guest", "Ann"), text));
        assertThat(SpeakerChoice.in(chosen, List.of())).isEqualTo(text);
    }

    @Test
    void aSpeakerWhoDoesNotSpeakIsNamedWithThoseWhoDo() {
        String chosen = SpeakerChoice.in("HOST: Welcome.\n\nGuest: Thanks.\n", List.of("Host", "Bea"));
        assertThatThrownBy(() -> ScriptReader.parse(chosen, "l.md", Format.MARKDOWN))
                .hasMessage("l.md: nobody named 'Bea' speaks in this script; name one of its speakers: HOST, Guest");
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void aLabelBeforeAnAddressOrASpokenFormStaysInItsLine(Format format) throws ProblemException {
        String text = "See [the site](https://example.org/bees) and buy [12](say:a dozen) [now](check:2027-03).";
        ExplainedScript read = ScriptReader.explain(text, "l", format);
        assertThat(read.script().elements()).hasSize(1);
        ScriptLine line = read.script().lines().get(0);
        assertThat(line.text()).isEqualTo("See the site and buy 12 now.");
        assertThat(line.words().get(5).spoken()).containsExactly(List.of("a", "dozen"));
        assertThat(read.script().facts()).hasSize(1);
        assertThat(read.leftOut()).extracting(LeftOut::what).containsExactly("https://example.org/bees");
    }
}
