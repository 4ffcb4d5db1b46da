package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where a speaker's part of a script begins and ends. */
final class SpeakerPartsTest {
    private static final String BEGINNING = "HOST: Welcome back.\n\nGUEST: I ride a lot.\n";

    private static List<String> readBy(String speaker, String text) throws ProblemException {
        return explained(speaker, text).script().lines().stream()
                .map(ScriptLine::text)
                .toList();
    }

    private static ExplainedScript explained(String speaker, String text) throws ProblemException {
        return ScriptReader.explain(SpeakerChoice.in(text, List.of(speaker)), "l.md", Format.MARKDOWN);
    }

    @Test
    void theParagraphsOfALongAnswerAreItsSpeakersAndThatIsSaidOnce() throws ProblemException {
        String text = BEGINNING + "\nI break spokes.\n\nAnd rims.\n\nHOST: Why?\n\nGUEST: Hills.\n\nAnd holes.\n";
        assertThat(readBy("Guest", text))
                .containsExactly("I ride a lot.", "I break spokes.", "And rims.", "Hills.", "And holes.");
        assertThat(explained("Guest", text).leftOut()).isEmpty();
        assertThat(readBy("Host", text)).containsExactly("Welcome back.", "Why?");
        assertThat(explained("Host", text).leftOut())
                .extracting(left -> left.what() + " (" + left.why().split(",", 2)[0] + ")")
                .containsExactly("I break spokes. (taken as GUEST's)", "And holes. (taken as GUEST's)");
    }

    @Test
    void nothingIsSaidOfLinesThatFollowAtOnce() throws ProblemException {
        assertThat(explained("Host", BEGINNING + "I break spokes.\n").leftOut()).isEmpty();
    }

    @Test
    void aHeadingEndsAPart() throws ProblemException {
        assertThat(readBy("Host", BEGINNING + "\n## The rim\n\nNow turn the nipple.\n"))
                .containsExactly("Welcome back.", "Now turn the nipple.");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "HOST & GUEST",
                "Host and guest",
                "GUEST/HOST",
                "Host, guest",
                "HOST + GUEST",
                "[HOST & GUEST]",
                "BOTH",
                "ALL"
            })
    void whatSeveralSayTogetherIsReadByEach(String names) throws ProblemException {
        String text = BEGINNING + "\n" + names + (names.startsWith("[") ? "" : ":") + " Goodbye.\n\nCALLER: Wait.\n";
        assertThat(readBy("Host", text)).containsExactly("Welcome back.", "Goodbye.");
        assertThat(readBy("Guest", text)).containsExactly("I ride a lot.", "Goodbye.");
        assertThat(readBy("Caller", text))
                .containsExactlyElementsOf(
                        names.equals("BOTH") || names.equals("ALL") ? List.of("Goodbye.", "Wait.") : List.of("Wait."));
        assertThat(explained("Host", text).speakers())
                .extracting(speaker -> speaker.name() + " " + speaker.read())
                .containsExactly("HOST true", "GUEST false", "CALLER false");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "ANNA: Welcome. I'm glad to be here.\n\nBEN: Thank you!\n",
                "ANNA: What is it?\n\nBEN: It is a wheel.\n",
                "HOST: Welcome.\n\nBEN: It is a wheel.\n"
            })
    void whoSpeaksOnceIsASpeakerInATalk(String text) throws ProblemException {
        assertThat(ScriptReader.explain(text, "l", Format.PLAIN_TEXT).speakers())
                .hasSize(2);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "USB: A plug for your computer.\n\nRAID: Several disks together.\n",
                "COST: I paid ten pounds.\n\nTIME: It took an hour.\n",
                "POWER: I press this and wait.\n\nMENU: Open this.\n",
                "COST: How much is it?\n\nTIME: How long does it take?\n",
                "ISO: how bright it is\n\nAPERTURE: I open it.\n",
                "NOTE: I mean it.\n\nTIP: Is it dry?\n"
            })
    void whatIsExplainedIsNoSpeaker(String text) throws ProblemException {
        assertThat(ScriptReader.explain(text, "l", Format.PLAIN_TEXT).speakers())
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"Salt and pepper: stay on the table.", "All: of it counts.", "Host and rim: two words."})
    void otherWordsBeforeAColonStaySpoken(String line) throws ProblemException {
        assertThat(readBy("Host", "HOST: Welcome.\n" + line + "\n")).contains(line);
    }
}
