package org.bookholder.view.settings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.bookholder.settings.SettingsText;
import org.bookholder.settings.SettingsText.Values;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class WindowFormTest {
    @Test
    void writtenSettingsCanBeReadBack() {
        WindowSettings settings = WindowSettings.defaults()
                .withDistance(1850)
                .withEyeLine(0.25)
                .withMirrored(true)
                .withUpsideDown(true)
                .withCues(Set.of(Cue.PACE, Cue.SOUND, Cue.BREAK))
                .withCountIn(3)
                .withSize(72.5)
                .withColumnWords(8)
                .withKeys(KeyMap.usual()
                        .with("F13", Action.HOLD)
                        .with("Page Up", Action.MARK_PICKUP)
                        .with(":", Action.CUT)
                        .with("#", Action.PICKUPS)
                        .with("'", Action.ROUND)
                        .with("\"", Action.WAY));
        WindowWish wish = new WindowWish(settings, WindowPlace.windowed().on(2).filled());
        assertThat(over(WindowWish.defaults(), written(wish))).isEqualTo(wish);
    }

    @Test
    void keysAreReadAsEarlierVersionsWroteThem() {
        assertThat(over(
                                WindowWish.defaults(),
                                "hide: \nkey :: cut\nkey #: pickups\nkey ': round\nkey \": way\nkey &: hold\n")
                        .settings()
                        .keys()
                        .taught())
                .isEqualTo(Map.of(
                        ":", Action.CUT, "#", Action.PICKUPS, "'", Action.ROUND, "\"", Action.WAY, "&", Action.HOLD));
    }

    @Test
    void hidingTheAdviceOnBreaksIsNotKept() {
        WindowWish hidden =
                new WindowWish(WindowSettings.defaults().withCues(Set.of(Cue.TIME)), WindowPlace.windowed());
        assertThat(over(WindowWish.defaults(), written(hidden)).settings().cues())
                .containsExactlyInAnyOrder(Cue.TIME, Cue.BREAK);
    }

    @Test
    void aRemovedTypeSizeIsNotSetAgain() {
        WindowWish sized = new WindowWish(WindowSettings.defaults().withSize(60), WindowPlace.windowed());
        assertThat(over(sized, written(WindowWish.defaults())).settings().size())
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "distance-cm: near | distance-cm 'near' is not a number",
                "count-in: 40 | count-in 40 is out of range",
                "mirror: maybe | mirror 'maybe' is not known",
                "hide: pace, clouds | hide 'clouds' is not known",
                "colour: red | there is no setting 'colour'",
                "key F13: dance | key F13 'dance' is not known",
                "words: 13 | words 13 is out of range",
                "monitor: 0 | monitor 0 is out of range",
            })
    void aWrongLineAffectsNoOtherLine(String line, String what) {
        Values<UnaryOperator<WindowWish>> values = SettingsText.of(
                        "upside-down: yes\n" + line + "\nfull-screen: yes\n", "window.txt")
                .read(WindowForm.FORM);
        assertThat(values.wrong()).singleElement().satisfies(problem -> {
            assertThat(problem.what()).isEqualTo(what);
            assertThat(problem.where()).isEqualTo("window.txt:2");
        });
        assertThat(values.values()).containsOnlyKeys("upside-down", "full-screen");
    }

    private static String written(WindowWish wish) {
        SettingsText text = SettingsText.of("", "window.txt");
        for (Map.Entry<String, String> value : WindowForm.values(wish).entrySet()) {
            text = text.with(WindowForm.FORM, value.getKey(), value.getValue());
        }
        return text.text();
    }

    private static WindowWish over(WindowWish before, String text) {
        Values<UnaryOperator<WindowWish>> values =
                SettingsText.of(text, "window.txt").read(WindowForm.FORM);
        assertThat(values.wrong()).isEqualTo(List.of());
        WindowWish wish = before;
        for (UnaryOperator<WindowWish> change : values.values().values()) {
            wish = change.apply(wish);
        }
        return wish;
    }
}
