package org.bookholder.wording;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.session.Trouble;
import org.bookholder.session.Trouble.Kind;
import org.bookholder.session.Troubles;
import org.junit.jupiter.api.Test;

final class TroubleTextTest {
    @Test
    void isEmptyIfNothingIsWrong() {
        assertThat(TroubleText.of(Troubles.NONE)).isEmpty();
    }

    @Test
    void eachTroubleIsASentenceInTheOrderOfTheirKinds() {
        Troubles both = Troubles.NONE
                .with(new Trouble(Kind.NOT_RECORDED, "the disk is full"))
                .with(new Trouble(Kind.NO_SOUND, "the microphone was unplugged"));
        assertThat(TroubleText.of(both))
                .isEqualTo("No sound comes in (the microphone was unplugged); move the text by hand. "
                        + "The sound is not being saved (the disk is full); it is kept and tried again.");
    }

    @Test
    void aReaderWhoIsUnderstoodBadlyIsToldWhatStillHolds() {
        assertThat(TroubleText.of(Troubles.NONE.with(new Trouble(Kind.HEARD_BADLY, "45"))))
                .contains("45 of 100 words", "Lost lines are still found", "listen");
    }

    @Test
    void aTroubleReplacesTheOneOfItsKind() {
        Troubles two = Troubles.NONE
                .with(new Trouble(Kind.TEXT_WAITS, ""))
                .with(new Trouble(Kind.NOT_SAVED, "the disk is full"))
                .with(new Trouble(Kind.NOT_SAVED, "the disk is gone"));
        assertThat(TroubleText.of(two))
                .isEqualTo("Notes are not being saved (the disk is gone). The new text is used from the next hold on.");
        assertThat(TroubleText.of(two.without(Kind.NOT_SAVED)))
                .isEqualTo("The new text is used from the next hold on.");
    }
}
