package org.bookholder.script.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;

/** What an author says each time is expected first, and nothing else becomes wrong by it. */
final class SpokenHabitsTest {
    private static SpokenHabit said(String written, String usual, String said, int times) {
        return new SpokenHabit(written, usual, said, times);
    }

    private static SpokenHabits heard(SpokenHabit... habits) {
        return new SpokenHabits(Map.of(), List.of(habits));
    }

    private static ScriptWord word(String written) throws ProblemException {
        return ScriptReader.parse("It has " + written + " here.", "a.txt", Format.PLAIN_TEXT)
                .lines()
                .get(0)
                .words()
                .get(2);
    }

    private static String first(SpokenHabits habits, String written) throws ProblemException {
        ScriptWord before = word(written);
        ScriptWord after = habits.of(before);
        assertThat(after.spoken()).containsAll(before.spoken());
        return String.join(" ", after.spoken().get(0));
    }

    @Test
    void aUnitIsExpectedAsItWasSaidWithOtherNumbers() throws ProblemException {
        SpokenHabits kilos = heard(
                said("5 kg", "five kilograms", "five kilos", 1), said("7 kg", "seven kilograms", "seven kilos", 1));
        assertThat(first(kilos, "9 kg")).isEqualTo("nine kilos");
        assertThat(first(kilos, "9 km")).isEqualTo("nine kilometers");
    }

    @Test
    void whatWasSaidOnceOrHalfOfTheTimeIsNoHabit() throws ProblemException {
        assertThat(first(heard(said("5 kg", "five kilograms", "five kilos", 1)), "5 kg"))
                .isEqualTo("five kilograms");
        SpokenHabits either = heard(
                said("5 kg", "five kilograms", "five kilos", 2), said("5 kg", "five kilograms", "five kilograms", 2));
        assertThat(first(either, "5 kg")).isEqualTo("five kilograms");
        assertThat(first(either, "8 kg")).isEqualTo("eight kilograms");
    }

    @Test
    void hundredsAndZerosAreExpectedAsTheyWereSaid() throws ProblemException {
        SpokenHabits fifty = heard(said("350", "three hundred fifty", "three fifty", 2));
        assertThat(first(fifty, "350")).isEqualTo("three fifty");
        assertThat(first(fifty, "470")).isEqualTo("four seventy");
        SpokenHabits and = heard(said("105", "one hundred five", "one hundred and five", 3));
        assertThat(first(and, "207")).isEqualTo("two hundred and seven");
    }

    /** "Three hundred" without its hundred is another number: a habit never makes a form that is not allowed. */
    @Test
    void aHabitMakesNoFormThatIsWrong() throws ProblemException {
        SpokenHabits fifty = heard(said("350", "three hundred fifty", "three fifty", 9));
        assertThat(first(fifty, "300")).isEqualTo("three hundred");
        assertThat(word("300").spoken()).doesNotContain(List.of("three"));
    }

    @Test
    void whatWasChosenComesBeforeWhatWasHeard() throws ProblemException {
        SpokenHabits habits = new SpokenHabits(
                Map.of("350", "three and a half hundred"),
                List.of(said("350", "three hundred fifty", "three fifty", 9)));
        assertThat(first(habits, "350,")).isEqualTo("three and a half hundred");
        assertThat(first(habits, "360")).isEqualTo("three sixty");
    }

    @Test
    void onlyWordsCanBeChosen() {
        assertThat(SpokenHabits.form("  Three  Fifty ")).hasValue("three fifty");
        assertThat(SpokenHabits.form("twenty-one o’clock")).hasValue("twenty one o'clock");
        assertThat(SpokenHabits.form("350")).isEmpty();
        assertThat(SpokenHabits.form(" ")).isEmpty();
        assertThat(SpokenHabits.form("a\nb: c")).isEmpty();
    }
}
