package org.bookholder.view.page;

import java.util.Optional;
import org.bookholder.session.SessionState;
import org.bookholder.view.input.KeyMap;
import org.bookholder.view.layout.Geometry;
import org.jspecify.annotations.Nullable;

/**
 * Decides which page is shown in place of the script. The pickup list opens by itself when the lesson is over; every
 * page can be opened and closed by key. Confined to one thread.
 */
public final class Pages {
    private static final double FADE_SECONDS = 0.35;
    private static final double RESTING_SECONDS = 1.2;

    private Kind wanted = Kind.NONE;
    private KeyMap keys = KeyMap.usual();
    private boolean over;
    private boolean begunBefore = true;
    private double overFor;
    private @Nullable ListPage page;
    private Kind shown = Kind.NONE;
    private double light;
    private double scroll;
    private Optional<PageView> view = Optional.empty();
    private Kind written = Kind.NONE;
    private KeyMap writtenKeys = keys;
    private @Nullable SessionState writtenState;

    /** The kinds of page. */
    public enum Kind {
        NONE,
        PICKUPS,
        KEYS
    }

    /** Sets the keys that the list of keys shows. */
    public void useKeys(KeyMap newKeys) {
        keys = newKeys;
    }

    /** Opens a page, or closes it if it is open. */
    public void toggle(Kind kind) {
        wanted = wanted == kind ? Kind.NONE : kind;
        scroll = 0;
    }

    /** Opens a page. */
    public void show(Kind kind) {
        if (wanted != kind) {
            toggle(kind);
        }
    }

    /** Closes a page; returns whether it was open. */
    public boolean putAway(Kind kind) {
        boolean shows = wanted == kind;
        if (shows) {
            toggle(kind);
        }
        return shows;
    }

    public boolean isShown() {
        return wanted != Kind.NONE;
    }

    public void scroll(double pixels, Geometry geometry) {
        double longest = page == null ? 0 : page.longestScroll(geometry);
        scroll = Math.max(0, Math.min(longest, scroll + pixels));
        show();
    }

    /** Advances by {@code seconds}; the pickup list does not open by itself while {@code busy}. */
    public void advance(SessionState state, double seconds, Geometry geometry, boolean busy) {
        if (busy) {
            over = false;
            overFor = 0;
        } else {
            watchTheEnd(state, seconds);
        }
        putKeysAway(state);
        double step = seconds / FADE_SECONDS;
        if (shown == wanted) {
            light = wanted == Kind.NONE ? 0 : Math.min(1, light + step);
        } else {
            light -= step;
            if (light <= 0 || shown == Kind.NONE) {
                light = 0;
                shown = wanted;
            }
        }
        if (shown != Kind.NONE) {
            fill(state);
        }
        scroll(0, geometry);
    }

    /** The page that is shown now. */
    public Optional<PageView> view() {
        return view;
    }

    /** Rebuilds the page when its contents have changed. */
    @SuppressWarnings("ReferenceEquality")
    private void fill(SessionState state) {
        boolean known = shown == written && keys == writtenKeys && (shown == Kind.KEYS || state == writtenState);
        if (!known) {
            page = shown == Kind.PICKUPS ? PickupPage.of(state, keys) : KeyPage.page(keys);
            written = shown;
            writtenKeys = keys;
            writtenState = state;
        }
    }

    @SuppressWarnings("ReferenceEquality")
    private void show() {
        if (page == null || shown == Kind.NONE) {
            view = Optional.empty();
            return;
        }
        boolean same = view.isPresent()
                && view.get().page() == page
                && view.get().scroll() == scroll
                && view.get().light() == light;
        if (!same) {
            view = Optional.of(new PageView(page, scroll, light));
        }
    }

    /** Nobody reads the list of keys and the script at once: it goes with the first word of a take. */
    private void putKeysAway(SessionState state) {
        boolean begun = state.takes().rolling() && state.takes().begun();
        if (begun && !begunBefore) {
            putAway(Kind.KEYS);
        }
        begunBefore = begun;
    }

    /** The lesson is over only after a moment at its end, because the last word may still be being spoken. */
    private void watchTheEnd(SessionState state, double seconds) {
        boolean readToTheEnd =
                state.following().position().line() > state.lines().count();
        boolean ended = !state.takes().all().isEmpty()
                && (!state.takes().rolling() || (readToTheEnd && !state.takes().held()));
        overFor = ended ? overFor + seconds : 0;
        if (!over && overFor >= RESTING_SECONDS) {
            over = true;
            if (wanted == Kind.NONE) {
                toggle(Kind.PICKUPS);
            }
        } else if (over && !ended) {
            over = false;
            if (wanted == Kind.PICKUPS) {
                toggle(Kind.PICKUPS);
            }
        }
    }
}
