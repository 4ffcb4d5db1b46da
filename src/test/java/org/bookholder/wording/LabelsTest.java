package org.bookholder.wording;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.Outcome;
import org.bookholder.journal.SessionSummary;
import org.bookholder.pace.PaceBand;
import org.bookholder.session.Decision;
import org.bookholder.session.Person;
import org.bookholder.sound.Spoil;
import org.junit.jupiter.api.Test;

/** Files of earlier versions and other programs know these words, so they stay the same. */
final class LabelsTest {
    @Test
    void outcomesAndDeviationsHaveTheWordsThatFilesKnow() {
        assertThat(Outcome.values())
                .extracting(Labels::of)
                .containsExactly("clean", "misread", "incomplete", "skipped", "not judged");
        assertThat(Deviation.Kind.values()).extracting(Labels::of).containsExactly("swapped", "dropped", "added");
        assertThat(PaceBand.values()).extracting(Labels::of).containsExactly("unknown", "slow", "on pace", "fast");
    }

    @Test
    void decisionsAndPeopleHaveTheWordsThatFilesKnow() {
        assertThat(Decision.Choice.values())
                .extracting(Labels::of)
                .containsExactly("record again", "keep", "fix in the edit", "not a fault", "left out on purpose");
        assertThat(Person.values()).extracting(Labels::of).containsExactly("presenter", "producer");
    }

    @Test
    void spoiledSoundHasTheWordsThatStoredMarksHave() {
        assertThat(Spoil.Kind.values())
                .extracting(Labels::of)
                .containsExactly("sound clipped", "sound too noisy", "sound dropped out", "sound not saved");
    }

    @Test
    void listsOfSessionsSayHowEachWasLeft() {
        assertThat(SessionSummary.Standing.values())
                .extracting(Labels::of)
                .containsExactly("finished", "broken off", "empty", "open", "unreadable");
    }
}
