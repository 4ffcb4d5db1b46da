package org.bookholder.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;

/** What the author has written stays: comments, order, blanks and the other values. */
final class YamlEditTest {
    private static final String COURSE = """
        # My course.
        title: A wheel   # as it is sold
        recording:
          # The studio is free on these.
          days: [2027-09-07, {day: 2027-09-09, from: 9:30}]  # two
          set-up: 20
        # Money.
        costs: {price: 15, kept: 85}
        lessons:
          - a.md  # first
          # soon
          - b.md
        """;

    @Test
    void aValueIsReplacedInItsLine() throws ProblemException {
        assertThat(edit(COURSE).with(List.of("title"), "Two wheels"))
                .isEqualTo(COURSE.replace("A wheel ", "Two wheels "));
        assertThat(edit(COURSE).with(List.of("costs", "kept"), "70")).isEqualTo(COURSE.replace("85", "70"));
        assertThat(edit(COURSE).with(List.of("title"), "Wheels: all, \"true\""))
                .isEqualTo(COURSE.replace("A wheel ", "\"Wheels: all, \\\"true\\\"\" "));
    }

    @Test
    void aValueThatIsMissingIsAddedInTheStyleOfItsGroup() throws ProblemException {
        assertThat(edit(COURSE).with(List.of("recording", "ratio"), "1.5"))
                .isEqualTo(COURSE.replace("  set-up: 20\n", "  set-up: 20\n  ratio: 1.5\n"));
        assertThat(edit(COURSE).with(List.of("costs", "hour"), "25"))
                .isEqualTo(COURSE.replace("kept: 85", "kept: 85, hour: 25"));
        assertThat(edit(COURSE).with(List.of("editing", "hours per minute", "slides"), "0.4"))
                .isEqualTo(COURSE + "editing:\n  hours per minute:\n    slides: 0.4\n");
        assertThat(edit("").with(List.of("editing", "from"), "2027-09-13")).isEqualTo("editing:\n  from: 2027-09-13\n");
        assertThat(edit("# Nothing yet.").with(List.of("pace"), "105")).isEqualTo("# Nothing yet.\npace: 105\n");
    }

    @Test
    void aValueIsLeftOut() throws ProblemException {
        assertThat(edit(COURSE).without(List.of("recording", "set-up")))
                .isEqualTo(COURSE.replace("  set-up: 20\n", ""));
        assertThat(edit(COURSE).without(List.of("costs", "price"))).isEqualTo(COURSE.replace("price: 15, ", ""));
        assertThat(edit(COURSE).without(List.of("costs", "kept"))).isEqualTo(COURSE.replace(", kept: 85", ""));
        assertThat(edit(COURSE).without(List.of("editing", "from"))).isEqualTo(COURSE);
    }

    @Test
    void aValueOfAnItemComesAndGoes() throws ProblemException {
        List<String> days = List.of("recording", "days");
        assertThat(edit(COURSE).valueOfItem(days, 1, "from")).contains("9:30");
        assertThat(edit(COURSE).valueOfItem(days, 0, "from")).isEmpty();
        assertThat(edit(COURSE).withValueOfItem(days, 1, "from", "8:00")).isEqualTo(COURSE.replace("9:30", "8:00"));
        assertThat(edit(COURSE).withValueOfItem(days, 1, "from", "")).isEqualTo(COURSE.replace(", from: 9:30", ""));
        assertThat(edit(COURSE).withValueOfItem(days, 1, "hours", "4"))
                .isEqualTo(COURSE.replace("from: 9:30}", "from: 9:30, hours: 4}"));
        assertThat(edit(COURSE).withItemChanged(days, 0, "{day: 2027-09-07}"))
                .isEqualTo(COURSE.replace("[2027-09-07", "[{day: 2027-09-07}"));
        String block = "days:\n  - from: 9:30 # early\n    day: 2027-09-09\n  - day: 2027-09-10\n";
        assertThat(edit(block).withValueOfItem(List.of("days"), 0, "from", ""))
                .isEqualTo("days:\n  - day: 2027-09-09\n  - day: 2027-09-10\n");
        assertThat(edit(block).withValueOfItem(List.of("days"), 1, "hours", "2"))
                .isEqualTo(block + "    hours: 2\n");
        assertThat(edit("days:\n  - from:\n    day: 2027-09-09\n").withValueOfItem(List.of("days"), 0, "from", "9:30"))
                .isEqualTo("days:\n  - from: 9:30\n    day: 2027-09-09\n");
    }

    @Test
    void itemsComeAndGoInListsOfEitherStyle() throws ProblemException {
        List<String> days = List.of("recording", "days");
        assertThat(edit(COURSE).items(days)).containsExactly("2027-09-07", "{day: 2027-09-09, from: 9:30}");
        assertThat(edit(COURSE).withItem(days, 1, "2027-09-08"))
                .isEqualTo(COURSE.replace("07, {", "07, 2027-09-08, {"));
        assertThat(edit(COURSE).withItem(days, 2, "2027-09-10"))
                .isEqualTo(COURSE.replace("9:30}]", "9:30}, 2027-09-10]"));
        assertThat(edit(COURSE).withoutItem(days, 0)).isEqualTo(COURSE.replace("2027-09-07, ", ""));
        assertThat(edit(COURSE).withoutItem(days, 1)).isEqualTo(COURSE.replace(", {day: 2027-09-09, from: 9:30}", ""));

        List<String> lessons = List.of("lessons");
        assertThat(edit(COURSE).withItem(lessons, 1, "c.md"))
                .isEqualTo(COURSE.replace("  - b.md", "  - c.md\n  - b.md"));
        assertThat(edit(COURSE).withItem(lessons, 2, "c.md")).isEqualTo(COURSE + "  - c.md\n");
        assertThat(edit(COURSE).withoutItem(lessons, 1)).isEqualTo(COURSE.replace("  - b.md\n", ""));
        assertThat(edit("").withItem(days, 0, "2027-09-08")).isEqualTo("recording:\n  days: [2027-09-08]\n");
    }

    @Test
    void aFileThatIsNoYamlIsNotTouched() {
        assertThatThrownBy(() -> edit("title: [a").with(List.of("title"), "b"))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("this is not YAML");
        assertThatThrownBy(() -> edit("recording: none").with(List.of("recording", "ratio"), "2"))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("'recording' is not a group of settings");
    }

    private static YamlEdit edit(String text) throws ProblemException {
        return new YamlEdit(text, "course.yaml");
    }
}
