package org.bookholder.follow.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.bookholder.follow.judge.ReaderProfile.Told;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.script.model.Script;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class ReaderProfileTest {
    private static final Script NAMES = Scripts.of(
            "Every morning Brandel opens the workshop and turns on the lamp",
            "The wheel that Brandel trued was warped again by evening",
            "Nobody but Brandel knows which spoke is loose",
            "Put the lamp behind the rim");

    private final ReaderProfile record = new ReaderProfile();

    @Test
    void aWordAlwaysHeardAsTheSameOtherIsTheRecognisersFault() {
        wrong(1, 0, "brandel", "brand all");
        wrong(1, 1, "brandel", "brand all");
        assertThat(record.alwaysMisheard("brandel", "brand all")).isFalse();
        wrong(2, 2, "brandel", "brand all");
        assertThat(record.alwaysMisheard("brandel", "brand all")).isTrue();
    }

    @Test
    void aWordThatWasOnceHeardCorrectlyIsStillReported() {
        for (int i = 0; i < 3; i++) {
            wrong(1, i, "brandel", "brand all");
        }
        record.add(2, StreamTime.ZERO, new Told(0, 0, 5, 5, Map.of(), Set.of("brandel")));
        assertThat(record.alwaysMisheard("brandel", "brand all")).isFalse();
    }

    @Test
    void aLineMisreadTheSameWayRepeatedlyIsStillReported() {
        for (int take = 1; take <= 5; take++) {
            wrong(take, 7, "sixty", "fifty");
        }
        assertThat(record.alwaysMisheard("sixty", "fifty")).isFalse();
    }

    @Test
    void aWordForWhichNothingIsHeardIsStillReported() {
        for (int i = 0; i < 5; i++) {
            wrong(1, i, "brandel", "");
        }
        assertThat(record.alwaysMisheard("brandel", "")).isFalse();
    }

    @Test
    void aReadingJudgedAgainCountsOnce() {
        for (int i = 0; i < 50; i++) {
            record.add(1, StreamTime.ZERO, new Told(0, 4, 5, 1, Map.of("brandel", "brand all"), Set.of()));
        }
        assertThat(record.slipsPerReading()).isCloseTo((4 + 2.1) / 11, within(1e-9));
    }

    @Test
    void reportsOnANameThatIsNeverRecognisedAreWithdrawnWithinTheTake() {
        List<Attempt> attempts = ReadAloud.of(NAMES)
                .say("every morning window opens the workshop and turns on the lamp")
                .say("the wheel that window trued was warped again by evening")
                .say("nobody but window knows which spoke is loose")
                .say("put the lamp behind the window")
                .cut()
                .attempts();
        assertThat(attempts)
                .extracting(Attempt::outcome)
                .containsExactly(Outcome.CLEAN, Outcome.CLEAN, Outcome.CLEAN, Outcome.MISREAD);
    }

    @Test
    void howMuchIsUnderstoodIsToldAfterAboutAMinute() {
        for (int line = 0; line < 9; line++) {
            record.add(1, StreamTime.ofSeconds(line), new Told(line, 0, 11, 4, Map.of(), Set.of()));
        }
        assertThat(record.understood()).isEmpty();
        record.add(1, StreamTime.ofSeconds(9), new Told(9, 0, 11, 8, Map.of(), Set.of()));
        assertThat(record.understood()).hasValue(44 / 110.0);
    }

    private void wrong(int take, int line, String word, String heard) {
        record.add(take, StreamTime.ofSeconds(10 * line), new Told(line, 0, 5, 4, Map.of(word, heard), Set.of()));
    }
}
