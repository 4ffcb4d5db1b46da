package org.bookholder.view.input;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which key does what: the usual keys, and above them those that a presenter has taught. A key goes by the name that people
 * read on it, as {@code H}, {@code ListPage Down} or {@code Shift W}; one that bears no name by its number.
 *
 * @param taught what keys were taught, the earliest first
 */
public record KeyMap(Map<String, Action> taught) {
    private static final String SHIFT = "Shift ";

    private static final Map<String, Action> USUAL = usualKeys();

    /** Copies the map, and keeps its order. */
    public KeyMap {
        taught = Collections.unmodifiableMap(new LinkedHashMap<>(taught));
    }

    /** The usual keys. */
    public static KeyMap usual() {
        return new KeyMap(Map.of());
    }

    /** What a key does; with Shift the same as without, unless it has a use of its own. */
    public Optional<Action> action(String key) {
        Optional<Action> own = known(key);
        return own.isPresent() || !key.startsWith(SHIFT) ? own : known(key.substring(SHIFT.length()));
    }

    /** All keys that do something, the usual ones first. */
    public List<String> keys(Action action) {
        List<String> keys = new ArrayList<>();
        USUAL.forEach((key, does) -> {
            if (does == action && !taught.containsKey(key)) {
                keys.add(key);
            }
        });
        taught.forEach((key, does) -> {
            if (does == action) {
                keys.add(key);
            }
        });
        return keys;
    }

    /** The keys to tell of: the first usual one, and those that were taught. */
    List<String> shown(Action action) {
        List<String> keys = keys(action);
        return keys.stream()
                .filter(key -> key.equals(keys.get(0)) || taught.containsKey(key))
                .toList();
    }

    /** The key to tell of in a sentence. */
    public String first(Action action) {
        List<String> keys = keys(action);
        return keys.isEmpty() ? "" : keys.get(0);
    }

    /** With another key that does {@code action}; a key that does so usually needs no teaching. */
    public KeyMap with(String key, Action action) {
        Map<String, Action> more = new LinkedHashMap<>(taught);
        more.remove(key);
        if (USUAL.get(key) != action) {
            more.put(key, action);
        }
        return new KeyMap(more);
    }

    private Optional<Action> known(String key) {
        Action own = taught.get(key);
        return Optional.ofNullable(own == null ? USUAL.get(key) : own);
    }

    /** Clickers send Page Up and Page Down, F5 to start, and a full stop or a B for a blank screen. */
    private static Map<String, Action> usualKeys() {
        Map<String, Action> keys = new LinkedHashMap<>();
        put(keys, Action.HOLD, "H", "F5");
        put(keys, Action.BACK_LINE, "Page Up");
        put(keys, Action.FORWARD_LINE, "Page Down");
        put(keys, Action.BACK_PARAGRAPH, "Home");
        put(keys, Action.ROW_UP, "Up");
        put(keys, Action.ROW_DOWN, "Down");
        put(keys, Action.MARK_PICKUP, "P", "B", ".");
        put(keys, Action.NEXT_TAKE, "N");
        put(keys, Action.PREVIOUS_TAKE, "Shift N");
        put(keys, Action.CUT, "C");
        put(keys, Action.PICKUPS, "L");
        put(keys, Action.ROUND, "R");
        put(keys, Action.WAY, "M");
        put(keys, Action.LARGER, "+", "=", "Keypad +");
        put(keys, Action.SMALLER, "-", "Keypad -");
        put(keys, Action.WIDER, "W");
        put(keys, Action.NARROWER, "Shift W");
        put(keys, Action.GLASS, "G");
        put(keys, Action.UPSIDE_DOWN, "U");
        put(keys, Action.CUES, "E");
        put(keys, Action.CUE_PACE, "1");
        put(keys, Action.CUE_PICKUPS, "2");
        put(keys, Action.CUE_TIME, "3");
        put(keys, Action.CUE_BREAK, "4");
        put(keys, Action.CUE_SOUND, "5");
        put(keys, Action.CUE_FOOTLIGHTS, "6");
        put(keys, Action.FULL_SCREEN, "F");
        put(keys, Action.MONITOR, "S");
        put(keys, Action.TEACH, "T");
        put(keys, Action.KEYS, "K", "F1");
        put(keys, Action.QUIT, "Esc");
        return Collections.unmodifiableMap(keys);
    }

    private static void put(Map<String, Action> keys, Action action, String... names) {
        for (String name : names) {
            keys.put(name, action);
        }
    }
}
