package org.bookholder.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

final class KeyGuideTest {
    @Test
    void tellsOfEveryActionOnce() {
        List<Action> told =
                KeyGuide.entries().stream().flatMap(e -> e.actions().stream()).toList();
        assertThat(told).containsExactlyInAnyOrder(Action.values());
    }

    @Test
    void noTwoEntriesNameTheSameKey() {
        assertThat(KeyGuide.entries()).extracting(KeyGuide::keys).doesNotHaveDuplicates();
    }

    @Test
    void fitsOnOnePageOfTwoColumns() {
        Geometry geometry = Geometry.of(WindowSettings.defaults(), 0, 720, 1280, 720);
        Page page = KeyPage.page(KeyMap.usual());
        double height = page.headHeight(geometry) + Math.ceil(page.entries().size() / 2.0) * page.entryHeight(geometry);
        assertThat(height).isLessThan(geometry.footTop() - 2 * geometry.margin());
    }
}
