package org.bookholder.delivery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.broken;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.swapped;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** Faults of the edit that the words of a film show, which was followed like a take. */
final class WordsCheckTest {
    private static final Attempt FIRST = complete(1, 1, 1, 6, 1, 4);
    private static final Attempt SECOND = complete(1, 2, 2, 6, 5, 8);
    private static final Attempt THIRD = complete(1, 3, 3, 6, 9, 12);

    @Test
    void nothingIsFoundIfEachLineIsThereOnceInItsPlace() {
        assertThat(found(List.of(), FIRST, SECOND, THIRD)).isEmpty();
    }

    @Test
    void aFilmOfAnotherScriptIsOneFinding() {
        assertThat(found(List.of()))
                .containsExactly("mend -: no line of the script was heard"
                        + " (check that the film and the script belong together)");
    }

    @Test
    void aMissingLineIsNamedAtThePlaceWhereItBelongs() {
        assertThat(found(List.of(), FIRST, THIRD))
                .containsExactly("mend 4.0 to 4.0: line 2 (“Count the spokes twice before lacing.”) is missing"
                        + " (put it back in the edit, or pick it up)");
    }

    @Test
    void aLineThatWasLeftOutOnPurposeIsNotMissing() {
        List<SessionEvent> events = List.of(
                rolled(1, 0), cut(1, 20), new SessionEvent.TakeSettled(s(20), 1, List.of(FIRST, THIRD), List.of()));
        assertThat(found(Set.of(2), events)).isEmpty();
        assertThat(found(Set.of(3), events)).hasSize(1);
    }

    @Test
    void aMissingFirstLineBelongsAtTheBeginning() {
        assertThat(found(List.of(), SECOND, THIRD)).singleElement().asString().startsWith("mend 0.0 to 0.0: line 1 ");
    }

    @Test
    void aLineThatIsThereTwiceIsNamedWhereItIsNotTheOneThatCounts() {
        assertThat(found(List.of(), FIRST, SECOND, complete(1, 3, 2, 6, 9, 12), complete(1, 4, 3, 6, 13, 16)))
                .singleElement()
                .asString()
                .contains("line 2 ", " is there 2 times; this is one of them", "cut one of them out");
    }

    @Test
    void aFalseStartThatWasLeftInIsNamed() {
        assertThat(found(List.of(), FIRST, broken(1, 2, 2, 2, 5, 6), complete(1, 3, 2, 6, 6.5, 9), THIRD))
                .singleElement()
                .asString()
                .startsWith("mend 5.0 to 6.0: a false start of line 2 ")
                .endsWith("(cut it out)");
    }

    @Test
    void aLineThatIsCutOffIsNamedWithItsLastWord() {
        assertThat(found(List.of(), FIRST, broken(1, 2, 2, 3, 5, 7), THIRD))
                .singleElement()
                .asString()
                .startsWith("mend 5.0 to 7.0: line 2 ")
                .endsWith("is broken off after “spokes” (put its end back, or pick the line up)");
    }

    @Test
    void aMisreadLineMayStay() {
        assertThat(found(List.of(), FIRST, complete(1, 2, 2, 6, 5, 8, swapped(3, "spokes", "folks")), THIRD))
                .singleElement()
                .asString()
                .startsWith("look 5.0 to 8.0: line 2 ")
                .endsWith("“folks” for “spokes” (listen whether it may stay so)");
    }

    @Test
    void aLineThatComesTooEarlyIsNamedWithTheOneBeforeWhichItComes() {
        assertThat(found(List.of(), FIRST, complete(1, 2, 3, 6, 5, 8), complete(1, 3, 2, 6, 9, 12)))
                .singleElement()
                .asString()
                .startsWith("mend 5.0 to 8.0: line 3 ")
                .endsWith("comes before line 2 (move it to its place)");
    }

    @Test
    void speechThatIsNotInTheScriptIsForSomebodyToListenTo() {
        List<Aside> asides =
                List.of(new Aside(1, s(4.2), s(4.8), "one more time", 1), new Aside(1, s(0), s(0.5), "", 0));
        assertThat(found(asides, FIRST, SECOND, THIRD))
                .as("in order of time")
                .containsExactly(
                        "look 0.0 to 0.5: speech that is not in the script"
                                + " (listen whether it is meant; cut it out if not)",
                        "look 4.2 to 4.8: speech that is not in the script: “one more time”"
                                + " (listen whether it is meant; cut it out if not)");
    }

    private static List<String> found(List<Aside> asides, Attempt... attempts) {
        List<SessionEvent> events = new ArrayList<>(List.of(rolled(1, 0)));
        events.add(cut(1, 20));
        events.add(new SessionEvent.TakeSettled(s(20), 1, Arrays.asList(attempts), asides));
        return found(Set.of(), events);
    }

    private static List<String> found(Set<Integer> leftOut, List<SessionEvent> events) {
        return WordsCheck.of(
                        Session.apply(
                                Session.begin(
                                        Scripts.of(
                                                "Every wheel begins with its hub.",
                                                "Count the spokes twice before lacing.",
                                                "Turn the wheel over and lace."),
                                        FatigueLimits.defaults()),
                                events),
                        leftOut)
                .stream()
                .map(WordsCheckTest::described)
                .toList();
    }

    private static String described(Finding finding) {
        String place = finding.place()
                .map(p -> p.start().seconds() + " to " + p.end().seconds())
                .orElse("-");
        return CheckText.of(finding.grade()) + " " + place + ": " + finding.what() + " (" + finding.remedy() + ")";
    }
}
