package org.bookholder.view;

import java.util.List;

/**
 * One entry of the list of keys, as the reading window shows it and the command line prints it.
 *
 * @param keys the keys, for people
 * @param does what they do, one phrase
 * @param actions the actions behind them
 */
public record KeyGuide(String keys, String does, List<Action> actions) {
    private static final List<KeyGuide> ENTRIES = List.of(
            entry("H", "hold the take, go on", Action.HOLD),
            entry("Page Up  Page Down", "back a line, forward a line", Action.BACK_LINE, Action.FORWARD_LINE),
            entry("Home", "back a paragraph", Action.BACK_PARAGRAPH),
            entry("Up  Down  wheel", "move by hand", Action.ROW_UP, Action.ROW_DOWN),
            entry("P", "mark the line as a pickup", Action.MARK_PICKUP),
            entry("N", "next take, from this line", Action.NEXT_TAKE),
            entry("C", "cut", Action.CUT),
            entry("L", "list of pickups", Action.PICKUPS),
            entry("R", "pickup round: begin, end", Action.ROUND),
            entry("M", "moved by voice, steadily, by hand", Action.WAY),
            entry("+  -", "text larger, smaller", Action.LARGER, Action.SMALLER),
            entry("W  Shift W", "column wider, narrower", Action.WIDER, Action.NARROWER),
            entry("G", "mirrored for glass", Action.GLASS),
            entry("U", "upside down", Action.UPSIDE_DOWN),
            entry("E", "cues at the edges on, off", Action.CUES),
            entry("F", "full screen, window", Action.FULL_SCREEN),
            entry("K", "these keys", Action.KEYS),
            entry("Esc", "end the session", Action.QUIT));

    /** Copies the list. */
    public KeyGuide {
        actions = List.copyOf(actions);
    }

    /** All keys, the most needed first. */
    public static List<KeyGuide> entries() {
        return ENTRIES;
    }

    private static KeyGuide entry(String keys, String does, Action... actions) {
        return new KeyGuide(keys, does, List.of(actions));
    }
}
