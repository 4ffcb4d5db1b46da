package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.bookholder.fatigue.AdviceFigures;
import org.bookholder.fatigue.BreakAdvice;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Trouble;
import org.bookholder.view.SampleState;
import org.junit.jupiter.api.Test;

/** The pictures in documents and goldens show states that the program can be in, so that they show only what it says. */
final class SampleStatesTest {
    @Test
    void theAdviceIsWhatTheProgramsLimitsGive() {
        for (Map.Entry<String, SampleState> sample : SampleStates.all().entrySet()) {
            BreakAdvice advice =
                    sample.getValue().state().measures().fatigue().advice().get(0);
            AdviceFigures.Clock clock = (AdviceFigures.Clock) advice.figures();
            FatigueLimits.Limit limit = FatigueLimits.defaults().voice();
            assertThat(clock.limit()).isEqualTo(limit);
            assertThat(advice.urgency()).as(sample.getKey()).isEqualTo(limit.urgency(clock.elapsed()));
            assertThat(advice.left()).as(sample.getKey()).isEqualTo(limit.due().minus(clock.elapsed()));
        }
    }

    /** The causes of a trouble are the program's own words: they stand in its source. */
    @Test
    void theTroublesAreInTheProgramsWords() throws Exception {
        String source = Files.readString(Path.of("src/main/java/org/bookholder/speech/microphone/Microphone.java"));
        for (SampleState sample : SampleStates.all().values()) {
            for (Trouble trouble : sample.troubles().all()) {
                assertThat(source).contains('"' + trouble.detail() + '"');
            }
        }
    }

    /** A line that was not reached has no attempt, and a clean one has no deviation. */
    @Test
    void theOutcomesFitTheirAttempts() {
        for (SampleState sample : SampleStates.all().values()) {
            List<LineNotes> lines = sample.state().lines().all();
            assertThat(lines).allMatch(line -> line.reached() || line.attempts().isEmpty());
            assertThat(lines)
                    .filteredOn(line -> line.outcome() == Outcome.CLEAN)
                    .allMatch(line -> line.best().isPresent()
                            && line.best().get().deviations().isEmpty());
        }
    }
}
