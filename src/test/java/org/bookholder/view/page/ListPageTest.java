package org.bookholder.view.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.settings.TypeSize;
import org.bookholder.view.settings.WindowSettings;
import org.bookholder.wording.Cautions;
import org.junit.jupiter.api.Test;

final class ListPageTest {
    private static final Geometry WIDE = Geometry.of(WindowSettings.defaults(), 300, 1080, 1920, 1080);
    private static final Geometry SMALL = Geometry.of(WindowSettings.defaults(), 300, 1080, 700, 700);
    private static final Geometry NARROW = Geometry.of(WindowSettings.defaults(), 530, 1920, 1080, 1920);

    @Test
    void textsThatAreTooLongAreBrokenBetweenWordsAndNothingIsLost() {
        String caution = Cautions.brief().get(0);
        List<String> rows = new ArrayList<>();
        int end;
        for (int at = 0; at < caution.length(); at = end + 1) {
            end = ListPage.rowEnd(caution, at, 30);
            rows.add(caution.substring(at, end));
        }
        assertThat(rows).allMatch(row -> row.length() <= 30).hasSizeGreaterThan(2);
        assertThat(String.join(" ", rows)).isEqualTo(caution);
        assertThat(ListPage.rowEnd("unbreakable", 0, 4)).isEqualTo(4);
    }

    @Test
    void aNarrowPageHasAHigherHead() {
        ListPage page = new ListPage("7 lines to pick up", "", List.of(), Cautions.brief(), List.of(), false);
        assertThat(rows(page, WIDE)).isBetween(2.0, 3.0);
        assertThat(rows(page, NARROW)).isBetween(4.0, 5.0);
    }

    /** NUREG-0700 rev. 2, item 1.3.1-4: 20 to 22 minutes preferred; the cautions and choices stand on this page. */
    @Test
    void cautionsChoicesAndFiguresReachThePreferredSize() {
        ListPage page = new ListPage("7 lines to pick up", "", List.of(), Cautions.brief(), List.of(), false);
        double capital = page.smallSize(WIDE) * TypeSize.CAPITAL_EMS * 300 / 1080;
        assertThat(TypeSize.arcMinutes(WindowSettings.defaults().distance(), capital))
                .isGreaterThan(20 - 0.01);
        assertThat(page.textSize(WIDE)).isGreaterThanOrEqualTo(page.smallSize(WIDE));
    }

    @Test
    void theListStandsAboveTheCautionsWhereTheyWouldPushItAway() {
        ListPage page = new ListPage(
                "3 lines to pick up",
                "57 of 60 lines read",
                List.of("R: pick up these 3 now", "Z: break  ·  Esc: end the session"),
                Cautions.brief(),
                List.of(new ListPage.Entry("4", "Turn the wheel", "skipped", "")),
                false);
        assertThat(page.headRows(WIDE)).containsAll(Cautions.brief());
        assertThat(page.footRows(WIDE)).isEmpty();
        assertThat(page.headRows(SMALL)).endsWith(Cautions.shortest()).doesNotContainAnyElementsOf(Cautions.brief());
        assertThat(page.footRows(SMALL)).isEqualTo(Cautions.brief());
        assertThat(page.headHeight(SMALL)).isLessThan(0.7 * SMALL.footTop());
    }

    /** Rows below the heading, with the distance to the first entry. */
    private static double rows(ListPage page, Geometry geometry) {
        return (page.headHeight(geometry) - page.headTop(geometry)) / page.headRow(geometry);
    }
}
