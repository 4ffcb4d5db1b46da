package org.bookholder.settings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.Form.Field;
import org.bookholder.settings.SettingsText.Values;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class SettingsTextTest {
    private static final Form<String> FORM = new Form<>(
            "setting",
            List.of(
                    new Field<>("height", "in metres", Setting::text),
                    new Field<>("depth", "", setting -> Integer.toString(setting.whole(0, 9, "metres"))),
                    new Field<>("key ", "", Setting::text)));

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "height: at least 3 # metres | at least 3",
                "height: 'a # b' | a # b",
                "height: [x, y] | x, y",
                "'height:\n  - x\n  # two\n  - y' | x, y",
                "'height:\n- x\n- y' | x, y",
                "'height: >\n  one\n  two' | one two",
                "'---\nheight: 3' | 3",
                "height: \uD83D\uDEB2 wheel # text | \uD83D\uDEB2 wheel",
            })
    void readsValuesAsYaml(String text, String value) {
        assertThat(read(text).values().get("height")).isEqualTo(value.strip().equals("one two") ? "one two\n" : value);
        assertThat(read(text).wrong()).isEmpty();
        assertThat(SettingsText.of(text, "f").renewed(FORM).text()).isEqualTo(text.strip() + "\n");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "height: [a-z]+ # letters | [a-z]+ | height: '[a-z]+' # letters",
                "height: *x | *x | height: '*x'",
                "height: 'it's' | 'it's' | height: '''it''s'''",
                "height: a: b | a: b | height: 'a: b'",
                "height | '' | height:",
            },
            quoteCharacter = '~')
    void readsWhatEarlierVersionsWroteAndWritesItAsYaml(String text, String value, String renewed) {
        String expected = value.strip().equals("''") ? "" : value;
        assertThat(read(text).values()).containsEntry("height", expected);
        assertThat(SettingsText.of("# mine\n" + text + "\n", "f").renewed(FORM).text())
                .isEqualTo("# mine\n" + renewed + "\n");
        assertThat(read(renewed).values()).containsEntry("height", expected);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "width: 3",
                "depth: 12",
                "depth: [[1]]",
                "depth: {a: b}",
                "- depth",
                "depth: \u0000\u0007",
                "\uFFFD\uFFFDdepth: 1",
                ": :",
                "[[[[[[[[",
                "&a *a !!x %y @z",
                "\t",
                "depth: \"1"
            })
    void aWrongLineAffectsNoOtherLine(String line) {
        Values<String> values = read("height: 1\n" + line + "\nkey a: b\n");
        assertThat(values.values()).containsOnlyKeys("height", "key a");
        if (!line.isBlank()) {
            assertThat(values.wrong()).extracting(ProblemException::where).containsExactly("f:2");
        }
    }

    @Test
    void theFirstOfTwoLinesCounts() {
        Values<String> values = read("height: 1\nheight: 2\n");
        assertThat(values.values()).containsEntry("height", "1");
        assertThat(values.wrong())
                .extracting(ProblemException::getMessage)
                .containsExactly("f:2: 'height' is given twice; leave one of them");
    }

    @Test
    void tellsWhichKnownNamesWereMisread() {
        assertThat(read("width: 1\ndepth: deep\n").misread()).containsExactly("depth");
    }

    @Test
    void aChangeKeepsCommentsOrderAndUnknownLines() {
        SettingsText text = SettingsText.of(
                "# how I like it\nheight: 1      # tall enough\n\nwidth: wide\nkey a:\n  - b\ndepth: 3\n", "f");
        assertThat(text.with(FORM, "height", "22")
                        .with(FORM, "key a", "c")
                        .with(FORM, "depth", "4")
                        .text())
                .isEqualTo("# how I like it\nheight: 22     # tall enough\n\nwidth: wide\nkey a: c\ndepth: 4\n");
        assertThat(text.without("key a").without("height").text())
                .isEqualTo("# how I like it\n\nwidth: wide\ndepth: 3\n");
    }

    @Test
    void aNewSettingIsAddedAtTheEndWithItsMeaning() {
        SettingsText text = SettingsText.of("depth: 3", "f");
        assertThat(text.with(FORM, "height", "1 # 2").text())
                .isEqualTo("depth: 3\n" + String.format("%-40s # in metres", "height: '1 # 2'") + "\n");
    }

    @Test
    void everyNameAndValueReadsBack() {
        for (String value : List.of(
                "",
                "a",
                "1",
                "yes",
                "null",
                "~",
                "a: b",
                "#",
                "'",
                "\"",
                "- a",
                " a ",
                "[",
                "\\d+",
                "\t",
                "a\u2028b")) {
            for (String name :
                    List.of("key #", "key :", "key '", "key \"", "key - x", "key [", "key \u00e9 \uD83D\uDEB2")) {
                SettingsText text = SettingsText.of("", "f").with(FORM, name, value);
                assertThat(text.read(FORM).values()).as("%s = %s", name, value).containsEntry(name, value);
                assertThat(text.with(FORM, name, "other").read(FORM).values())
                        .containsExactly(java.util.Map.entry(name, "other"));
                assertThat(text.without(name).text()).isEmpty();
            }
        }
    }

    private static Values<String> read(String text) {
        return SettingsText.of(text, "f").read(FORM);
    }
}
