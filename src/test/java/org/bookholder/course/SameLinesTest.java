package org.bookholder.course;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.script.source.SpeakerChoice;
import org.junit.jupiter.api.Test;

/** Sessions of one speaker each belong to lines of one lesson. */
final class SameLinesTest {
    private static final String TALK = """
            HOST: Thank you for coming. Where is the hub?

            GUEST: Thank you for coming. In the middle.

            HOST: Thank you for coming.
            """;

    private static Script script(String text, String... speakers) throws ProblemException {
        String chosen = "---\nspeaker: " + String.join(", ", speakers) + "\n---\n" + text;
        return ScriptReader.parse(speakers.length == 0 ? text : chosen, "talk.txt", Format.PLAIN_TEXT);
    }

    @Test
    void twoSpeakersWhoSayTheSameAreToldApart() throws ProblemException {
        Script lesson = script(TALK);
        assertThat(SameLines.numbers(script(TALK, "Host"), lesson)).isEqualTo(Map.of(1, 1, 2, 2, 3, 5));
        assertThat(SameLines.numbers(script(TALK, "Guest"), lesson)).isEqualTo(Map.of(1, 3, 2, 4));
    }

    @Test
    void aLineThatHasGoneIsNotTakenForTheOtherSpeakers() throws ProblemException {
        Script lesson =
                script("HOST: Where is the hub?\n\nGUEST: Thank you for coming. In the middle.\n\nHOST: Good.\n");
        assertThat(SameLines.numbers(script(TALK, "Host"), lesson)).isEqualTo(Map.of(2, 1));
    }

    @Test
    void namesThatWereAddedOrChangedSinceKeepTheLines() throws ProblemException {
        Script bare = script("Where is the hub?\n\nIn the middle.\n");
        Script named = script("HOST: Where is the hub?\n\nGUEST: In the middle.\n");
        Script renamed = script("ANNA: Where is the hub?\n\nGUEST: In the middle.\n\nANNA: Good.\n");
        assertThat(SameLines.numbers(bare, named)).isEqualTo(Map.of(1, 1, 2, 2));
        assertThat(SameLines.numbers(named, renamed)).isEqualTo(Map.of(1, 1, 2, 2));
    }

    @Test
    void aChoiceForOneSessionIsTheSame() throws ProblemException {
        String chosen = SpeakerChoice.in(TALK, List.of("Guest"));
        Script session = ScriptReader.parse(chosen, "talk.txt", Format.PLAIN_TEXT);
        assertThat(SameLines.numbers(session, script(TALK))).isEqualTo(Map.of(1, 3, 2, 4));
    }
}
