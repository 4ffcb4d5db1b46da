package org.bookholder.view.page;

import java.util.List;
import org.bookholder.view.input.KeyGuide;
import org.bookholder.view.input.KeyMap;

/** Builds the page that lists the keys. */
public final class KeyPage {
    private KeyPage() {}

    public static ListPage page(KeyMap keys) {
        return new ListPage(
                "Keys",
                "A clicker’s Page Up, Page Down, start and blank buttons: back, forward, hold, pickup",
                List.of(),
                List.of(),
                KeyGuide.entries(keys).stream()
                        .map(guide -> new ListPage.Entry(guide.keys(), guide.does(), "", ""))
                        .toList(),
                true);
    }
}
