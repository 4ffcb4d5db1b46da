package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.script.model.Script;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** An aside is told when it ends, and not when the take does. */
final class AsidesInTimeTest {
    private static final Script LESSON = Scripts.of(
            "Turn the wheel slowly and watch the gap beside the brake",
            "A spoke that rings low is loose and wants half a turn",
            "Count the threads before you tighten anything near the valve");
    private static final String ASIDE = "sorry somebody left their telephone on could you switch it off";

    @Test
    void anAsideBetweenLinesIsToldInThePauseAfterIt() {
        ReadAloud reader = ReadAloud.of(LESSON)
                .say("turn the wheel slowly and watch the gap beside the brake")
                .say(ASIDE);
        assertThat(told(reader)).singleElement().satisfies(aside -> {
            assertThat(aside.line()).isEqualTo(1);
            assertThat(aside.said()).startsWith("sorry somebody left");
        });
    }

    @Test
    void itStaysWhenTheReadingGoesOnAndWhenTheTakeIsOver() {
        ReadAloud reader = ReadAloud.of(LESSON)
                .say("turn the wheel slowly and watch the gap beside the brake")
                .say(ASIDE)
                .say("a spoke that rings low is loose and wants half a turn")
                .say("count the threads before you tighten anything near the valve");
        List<Aside> running = told(reader);
        assertThat(running).hasSize(1);
        assertThat(reader.cut().asides()).isEqualTo(running);
    }

    @Test
    void itStaysWhileTheNextLineIsBeingRead() {
        ReadAloud reader = ReadAloud.of(LESSON)
                .say("turn the wheel slowly and watch the gap beside the brake")
                .say(ASIDE)
                .say("a spoke that rings low");
        assertThat(told(reader)).hasSize(1);
    }

    @Test
    void anAsideBeforeTheFirstLineIsToldToo() {
        ReadAloud reader = ReadAloud.of(LESSON).say(ASIDE);
        assertThat(told(reader))
                .singleElement()
                .satisfies(aside -> assertThat(aside.line()).isZero());
    }

    @Test
    void aLineThatIsBeingReadIsNoAside() {
        ReadAloud reader = ReadAloud.of(LESSON)
                .say("turn the wheel slowly and watch the gap beside the brake")
                .say("a spoke that rings low");
        assertThat(told(reader)).isEmpty();
        reader.say("is loose and wants half a turn");
        assertThat(told(reader)).isEmpty();
    }

    /** What was told last. */
    private static List<Aside> told(ReadAloud reader) {
        return reader.events().stream()
                .filter(FollowEvent.AsidesHeard.class::isInstance)
                .map(event -> ((FollowEvent.AsidesHeard) event).asides())
                .reduce(List.of(), (before, after) -> after);
    }
}
