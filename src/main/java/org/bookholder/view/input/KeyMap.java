package org.bookholder.view.input;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which key does what: the default keys, overridden by those that a presenter has assigned. A key is identified by the
 * name printed on it, such as {@code H}, {@code Page Down} or {@code Shift W}; a key without a name by its number.
 *
 * @param taught the keys that the presenter has assigned, earliest first
 */
public record KeyMap(Map<String, Action> taught) {
    private static final String SHIFT = "Shift ";

    private static final Map<String, Action> USUAL = usualKeys();

    /** Copies the map in the same order. */
    public KeyMap {
        taught = Collections.unmodifiableMap(new LinkedHashMap<>(taught));
    }

    /** The default keys. */
    public static KeyMap usual() {
        return new KeyMap(Map.of());
    }

    /** The action of a key. With Shift it is the same as without, unless that combination has its own action. */
    public Optional<Action> action(String key) {
        Optional<Action> own = known(key);
        return own.isPresent() || !key.startsWith(SHIFT) ? own : known(key.substring(SHIFT.length()));
    }

    /** All keys with this action, default keys first. */
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

    /** The keys to show to people: the first default key, and the assigned ones. */
    List<String> shown(Action action) {
        List<String> keys = keys(action);
        return keys.stream()
                .filter(key -> key.equals(keys.get(0)) || taught.containsKey(key))
                .toList();
    }

    /** The one key to name in a sentence. */
    public String first(Action action) {
        List<String> keys = keys(action);
        return keys.isEmpty() ? "" : keys.get(0);
    }

    /** Adds a key for {@code action}; does nothing if the key has this action by default. */
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

    /** Clickers send Page Up and Page Down, F5 to start, and a full stop or B for a blank screen. */
    private static Map<String, Action> usualKeys() {
        Map<String, Action> keys = new LinkedHashMap<>();
        put(keys, Action.HOLD, "H", "F5");
        put(keys, Action.BACK_LINE, "Page Up");
        put(keys, Action.FORWARD_LINE, "Page Down");
        put(keys, Action.BACK_PARAGRAPH, "Home");
        put(keys, Action.ROW_UP, "Up");
        put(keys, Action.ROW_DOWN, "Down");
        put(keys, Action.MARK_PICKUP, "P", "B", ".");
        put(keys, Action.UNDO, "U");
        put(keys, Action.NEXT_TAKE, "N");
        put(keys, Action.PREVIOUS_TAKE, "Shift N");
        put(keys, Action.CUT, "C");
        put(keys, Action.PICKUPS, "L");
        put(keys, Action.ROUND, "R");
        put(keys, Action.NEXT_LESSON, "Enter", "Keypad Enter");
        put(keys, Action.BREAK, "Z");
        put(keys, Action.OWN_PACE, "O");
        put(keys, Action.WAY, "V");
        put(keys, Action.LARGER, "+", "=", "Keypad +");
        put(keys, Action.SMALLER, "-", "Keypad -");
        put(keys, Action.WIDER, "W");
        put(keys, Action.NARROWER, "Shift W");
        put(keys, Action.GLASS, "G");
        put(keys, Action.UPSIDE_DOWN, "Shift G");
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
