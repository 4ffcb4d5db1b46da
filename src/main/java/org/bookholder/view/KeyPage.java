package org.bookholder.view;

/** The keys as a page. */
final class KeyPage {
    private KeyPage() {}

    static Page page(KeyMap keys) {
        return new Page(
                "Keys",
                "A clicker’s Page Up, Page Down, start and blank buttons: back, forward, hold, pickup",
                KeyGuide.entries(keys).stream()
                        .map(guide -> new Page.Entry(guide.keys(), guide.does(), "", ""))
                        .toList(),
                true);
    }
}
