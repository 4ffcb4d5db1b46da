package org.bookholder.view.input;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One entry in the reading window's list of keys.
 *
 * @param keys the keys, by the names that people know
 * @param does what they do, in one phrase
 * @param actions the actions behind them
 */
public record KeyGuide(String keys, String does, List<Action> actions) {
    private static final List<Work> WORK = List.of(
            work("hold the take, go on", Action.HOLD),
            work("back a line, forward a line", Action.BACK_LINE, Action.FORWARD_LINE),
            work("back a paragraph", Action.BACK_PARAGRAPH),
            work("move by hand", Action.ROW_UP, Action.ROW_DOWN),
            work("mark the line as a pickup", Action.MARK_PICKUP),
            work("undo the last mark", Action.UNDO),
            work("next take, from this line", Action.NEXT_TAKE),
            work("redo this take, or the one before", Action.PREVIOUS_TAKE),
            work("cut", Action.CUT),
            work("list of pickups", Action.PICKUPS),
            work("pickup round: begin, end", Action.ROUND),
            work("next lesson", Action.NEXT_LESSON),
            work("break: begin, end", Action.BREAK),
            work("aim at the pace you read at", Action.OWN_PACE),
            work("moved by voice, steadily, by hand", Action.WAY),
            work("text larger, smaller", Action.LARGER, Action.SMALLER),
            work("column wider, narrower", Action.WIDER, Action.NARROWER),
            work("mirrored for glass", Action.GLASS),
            work("upside down", Action.UPSIDE_DOWN),
            work("cues at the edges on, off", Action.CUES),
            work("pace, pickups, time: on, off", Action.CUE_PACE, Action.CUE_PICKUPS, Action.CUE_TIME),
            work("break, sound, footlights: on, off", Action.CUE_BREAK, Action.CUE_SOUND, Action.CUE_FOOTLIGHTS),
            work("full screen, window", Action.FULL_SCREEN),
            work("another screen", Action.MONITOR),
            work("teach a button", Action.TEACH),
            work("these keys", Action.KEYS),
            work("end the session", Action.QUIT));

    /** Copies the list. */
    public KeyGuide {
        actions = List.copyOf(actions);
    }

    /** Entries for the default keys, most important first. */
    public static List<KeyGuide> entries() {
        return entries(KeyMap.usual());
    }

    /** Entries for all keys, most important first. */
    public static List<KeyGuide> entries(KeyMap keys) {
        return WORK.stream()
                .map(work -> new KeyGuide(keys(work, keys), work.does, work.actions))
                .toList();
    }

    private static String keys(Work work, KeyMap keys) {
        List<String> shown = new ArrayList<>();
        work.actions.forEach(action -> shown.addAll(keys.shown(action)));
        if (work.actions.contains(Action.ROW_DOWN)) {
            shown.add("wheel");
        }
        return String.join("  ", shown);
    }

    private static Work work(String does, Action... actions) {
        return new Work(does, Arrays.asList(actions));
    }

    private record Work(String does, List<Action> actions) {}
}
