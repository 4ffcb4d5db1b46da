package org.bookholder.view.page;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.follow.model.Outcome;
import org.bookholder.view.SampleState;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.Test;

final class PagesTest {
    private static final Geometry GEOMETRY = Geometry.of(WindowSettings.defaults(), 0, 1080, 1920, 1080);

    private final Pages pages = new Pages();
    private final SampleState reading = SampleState.lesson();

    @Test
    void showsNothingWhileALessonIsRead() {
        pass(reading, 5);
        assertThat(pages.view()).isEmpty();
    }

    @Test
    void fadesInAndOut() {
        pages.toggle(Pages.Kind.KEYS);
        pass(reading, 0.1);
        assertThat(light()).isBetween(0.1, 0.6);
        pass(reading, 1);
        assertThat(light()).isEqualTo(1);
        pages.toggle(Pages.Kind.KEYS);
        pass(reading, 0.1);
        assertThat(light()).isBetween(0.4, 0.9);
        pass(reading, 1);
        assertThat(pages.view()).isEmpty();
    }

    @Test
    void theListOfKeysGoesAwayWithTheFirstWord() {
        pages.toggle(Pages.Kind.KEYS);
        pass(reading.rolling(false), 1);
        assertThat(heading()).isEqualTo("Keys");
        pass(reading, 1);
        assertThat(pages.view()).isEmpty();
        pages.toggle(Pages.Kind.KEYS);
        pass(reading, 1);
        assertThat(heading()).as("opened in mid-take").isEqualTo("Keys");
    }

    @Test
    void theListOpensByItselfShortlyAfterTheLesson() {
        SampleState over = reading.at(11, 1);
        pass(over, 1);
        assertThat(pages.view()).isEmpty();
        pass(over, 1);
        assertThat(heading()).isEqualTo("Nothing to pick up");
    }

    @Test
    void theListClosesByItselfWhenTheReadingContinues() {
        pass(reading.at(11, 1), 3);
        pass(reading.at(4, 1), 1);
        assertThat(pages.view()).isEmpty();
    }

    @Test
    void aClosedListStaysClosed() {
        SampleState over = reading.at(11, 1);
        pass(over, 3);
        pages.toggle(Pages.Kind.PICKUPS);
        pass(over, 5);
        assertThat(pages.view()).isEmpty();
    }

    @Test
    void keysThatAreBeingReadAreNotReplacedByTheList() {
        pages.toggle(Pages.Kind.KEYS);
        pass(reading.at(11, 1), 5);
        assertThat(heading()).isEqualTo("Keys");
    }

    @Test
    void aLongListCanBeScrolledToItsEndAndNoFurther() {
        SampleState many = reading;
        for (int line = 1; line <= 10; line++) {
            many = many.outcome(line, Outcome.SKIPPED);
        }
        Geometry small = Geometry.of(WindowSettings.defaults(), 0, 360, 640, 360);
        pages.toggle(Pages.Kind.PICKUPS);
        pages.advance(many.state(), 1, small, false);
        pages.advance(many.state(), 1, small, false);
        pages.scroll(1e6, small);
        double end = pages.view().orElseThrow().scroll();
        assertThat(end).isPositive().isLessThan(12 * small.pitch());
        pages.scroll(-1e6, small);
        assertThat(pages.view().orElseThrow().scroll()).isZero();
    }

    @Test
    void eachPickupHasItsNumberFirstWordsAndOutcome() {
        pages.toggle(Pages.Kind.PICKUPS);
        pass(reading.outcome(4, Outcome.SKIPPED), 1);
        ListPage page = pages.view().orElseThrow().page();
        assertThat(page.heading()).isEqualTo("One line to pick up");
        assertThat(page.entries())
                .containsExactly(new ListPage.Entry("4", "That is a wet dough, and …", "skipped", ""));
    }

    private void pass(SampleState state, double seconds) {
        for (double t = 0; t < seconds; t += 0.05) {
            pages.advance(state.state(), 0.05, GEOMETRY, false);
        }
    }

    private double light() {
        return pages.view().orElseThrow().light();
    }

    private String heading() {
        return pages.view().orElseThrow().page().heading();
    }
}
