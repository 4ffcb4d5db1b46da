package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.bookholder.script.model.PreparedScript;

/** Properties that hold for any input from ears and hands, even nonsensical input. */
final class FollowerProperties {
    @Property(tries = 4000)
    void findingsLieWithinTheScriptAndTheTake(
            @ForAll("scripts") PreparedScript script, @ForAll("wild") List<Deed> deeds) {
        FollowInvariants.check(script, RandomReading.of(script, deeds));
    }

    @Property(tries = 500)
    void theSameReportsGiveTheSameEvents(@ForAll("scripts") PreparedScript script, @ForAll("wild") List<Deed> deeds) {
        assertThat(RandomReading.of(script, deeds)).isEqualTo(RandomReading.of(script, deeds));
    }

    @Property(tries = 500)
    void finalOutcomesDoNotDependOnTheDelayBetweenTheEars(
            @ForAll("scripts") PreparedScript script, @ForAll("orderly") List<Deed> deeds) {
        assertThat(RandomReading.settled(RandomReading.openEarLast(script, deeds)))
                .isEqualTo(RandomReading.settled(RandomReading.of(script, deeds)));
    }

    @Provide
    Arbitrary<PreparedScript> scripts() {
        return RandomReadings.scripts();
    }

    @Provide
    Arbitrary<List<Deed>> wild() {
        return RandomReadings.wild();
    }

    @Provide
    Arbitrary<List<Deed>> orderly() {
        return RandomReadings.orderly();
    }
}
