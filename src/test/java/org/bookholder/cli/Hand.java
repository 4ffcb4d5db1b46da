package org.bookholder.cli;

import org.bookholder.testing.Browser;
import org.openqa.selenium.Keys;

/** How somebody works the program's page. */
enum Hand {
    /** Without a mouse: by the keys that the page names, and by Tab. */
    KEYS {
        @Override
        void room(Browser browser, String key, String link) {
            browser.press(key);
        }

        @Override
        void press(Browser browser, String button) {
            browser.enter(button);
        }

        @Override
        void tick(Browser browser, String box) {
            browser.tabTo(box);
            browser.press(Keys.SPACE);
        }

        @Override
        void nextOf(Browser browser, String group) {
            browser.tabTo(group + " input");
            browser.press(Keys.ARROW_DOWN);
        }
    },

    /** By clicks alone. */
    MOUSE {
        @Override
        void room(Browser browser, String key, String link) {
            browser.click(link);
        }

        @Override
        void press(Browser browser, String button) {
            browser.click(button);
        }

        @Override
        void tick(Browser browser, String box) {
            browser.click(box);
        }

        @Override
        void nextOf(Browser browser, String group) {
            browser.click(group + " label:nth-of-type(2) input");
        }
    };

    /** Goes to a room by its key, or by what leads there. */
    abstract void room(Browser browser, String key, String link);

    /** Presses a button or follows a link. */
    abstract void press(Browser browser, String button);

    /** Ticks a box. */
    abstract void tick(Browser browser, String box);

    /** Chooses the second of some choices, of which the first is chosen. */
    abstract void nextOf(Browser browser, String group);
}
