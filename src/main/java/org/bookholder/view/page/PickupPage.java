package org.bookholder.view.page;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.model.Outcome;
import org.bookholder.session.LineCounts;
import org.bookholder.session.SessionState;
import org.bookholder.view.input.KeyMap;
import org.bookholder.wording.Cautions;
import org.bookholder.wording.Labels;
import org.bookholder.wording.LinesText;
import org.bookholder.wording.PaceText;
import org.bookholder.wording.Pickup;
import org.bookholder.wording.Pickups;

/** Builds the pickup list as a page large enough to read from the presenter's seat. */
final class PickupPage {
    private PickupPage() {}

    static ListPage of(SessionState state, KeyMap keys) {
        List<ListPage.Entry> entries =
                Pickups.of(state).stream().map(PickupPage::entry).toList();
        return new ListPage(
                heading(entries.size()), under(state), Choices.of(state, keys), Cautions.brief(), entries, false);
    }

    private static String heading(int count) {
        return switch (count) {
            case 0 -> "Nothing to pick up";
            case 1 -> "One line to pick up";
            default -> count + " lines to pick up";
        };
    }

    private static String under(SessionState state) {
        String lines = LinesText.of(LineCounts.of(state.lines().all()));
        return PaceText.measured(state).map(pace -> lines + "  ·  " + pace).orElse(lines);
    }

    private static ListPage.Entry entry(Pickup pickup) {
        boolean marked = pickup.outcome() == Outcome.CLEAN;
        return new ListPage.Entry(
                Integer.toString(pickup.line()),
                pickup.firstWords(),
                marked ? "marked" : Labels.of(pickup.outcome()),
                note(pickup));
    }

    private static String note(Pickup pickup) {
        List<String> parts = new ArrayList<>();
        if (!pickup.said().isEmpty() && pickup.outcome() != Outcome.SKIPPED) {
            parts.add(pickup.said());
        }
        if (pickup.attempts() > 1) {
            parts.add("tried " + pickup.attempts() + " times");
        }
        parts.addAll(pickup.written());
        return String.join("  ·  ", parts);
    }
}
