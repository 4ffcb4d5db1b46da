package org.bookholder.view.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.page.KeyPage;
import org.bookholder.view.page.ListPage;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class KeyGuideTest {
    @Test
    void listsEveryActionOnce() {
        List<Action> told =
                KeyGuide.entries().stream().flatMap(e -> e.actions().stream()).toList();
        assertThat(told).containsExactlyInAnyOrder(Action.values());
    }

    @Test
    void noTwoEntriesNameTheSameKey() {
        assertThat(KeyGuide.entries()).extracting(KeyGuide::keys).doesNotHaveDuplicates();
    }

    /** Full screen, in a window on a larger monitor, and in a small one. */
    @ParameterizedTest
    @CsvSource({
        "1920, 1080, 1080",
        "1280, 720, 720",
        "1280, 720, 1080",
        "960, 540, 1080",
        "1080, 1920, 1920",
        "800, 600, 2160"
    })
    void fitsOnOnePageOfTwoColumns(int width, int height, int monitor) {
        Geometry geometry = Geometry.of(WindowSettings.defaults(), 0, monitor, width, height);
        ListPage page = KeyPage.page(KeyMap.usual());
        double whole = page.headHeight(geometry)
                + Math.ceil(page.entries().size() / 2.0)
                        * page.entryHeight(page.entries().get(0), geometry);
        assertThat(whole).isLessThan(geometry.footTop() - 2 * geometry.margin());
        // In Inter a letter is about half an em wide; what a key does begins at 0.39 of a column of 0.44 of the width.
        double longest = page.entries().stream()
                        .limit((page.entries().size() + 1) / 2)
                        .mapToInt(entry -> entry.text().length())
                        .max()
                        .orElseThrow()
                * 0.5
                * 0.4
                * page.unit(geometry);
        assertThat(longest).isLessThan(0.61 * 0.44 * width);
    }
}
