package org.bookholder.view;

/** The keys as a page. */
final class KeyPage {
    private KeyPage() {}

    static Page page() {
        return new Page(
                "Keys",
                "Page Up and Page Down are a clicker’s buttons, too",
                KeyGuide.entries().stream()
                        .map(guide -> new Page.Entry(guide.keys(), guide.does(), "", ""))
                        .toList(),
                true);
    }
}
