package org.bookholder.view.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.Set;
import org.bookholder.problem.ProblemException;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SettingsTextTest {
    @Test
    void whatIsWrittenReadsBackAsTheSame() throws ProblemException {
        WindowSettings settings = WindowSettings.defaults()
                .withDistance(1850)
                .withEyeLine(0.25)
                .withMirrored(true)
                .withUpsideDown(true)
                .withCues(Set.of(Cue.PACE, Cue.SOUND))
                .withCountIn(3)
                .withSize(72.5)
                .withColumnWords(8)
                .withKeys(KeyMap.usual().with("F13", Action.HOLD).with("Page Up", Action.MARK_PICKUP));
        assertThat(over(SettingsText.of(settings))).isEqualTo(settings);
        assertThat(over(SettingsText.of(WindowSettings.defaults())).columnWords())
                .isEqualTo(WindowSettings.defaults().columnWords());
    }

    @Test
    void aTypeSizeThatWasGivenUpIsNotSetAgain() throws ProblemException {
        Map<String, String> byDistance = SettingsText.of(WindowSettings.defaults());
        WindowSettings sized = WindowSettings.defaults().withSize(60);
        assertThat(SettingsText.over(sized, byDistance, "window.txt").size()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"distance-cm, near", "count-in, 40", "mirror, maybe", "hide, clouds", "colour, red", "key F13, dance"})
    void whatIsWrongIsNamedWithItsPlace(String name, String value) {
        assertThatThrownBy(() -> over(Map.of(name, value)))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining(name + ": " + value)
                .hasMessageContaining("window.txt");
    }

    private static WindowSettings over(Map<String, String> values) throws ProblemException {
        return SettingsText.over(WindowSettings.defaults(), values, "window.txt");
    }
}
