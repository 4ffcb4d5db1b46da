package org.bookholder.view.settings;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.bookholder.problem.ProblemException;
import org.bookholder.view.input.Action;

/**
 * Settings of the reading window by names and values that people can read and change. A name that is left out keeps what it
 * was.
 */
public final class SettingsText {
    private static final String KEY = "key ";

    private SettingsText() {}

    /** The settings by name, those of type size, column, place and picture; what moves the text is chosen anew each time. */
    public static Map<String, String> of(WindowSettings settings) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("distance-cm", number(settings.distance() / 10));
        values.put("eye-line-percent", number(settings.eyeLine() * 100));
        values.put("mirror", yes(settings.mirrored()));
        values.put("upside-down", yes(settings.upsideDown()));
        Set<Cue> hidden = EnumSet.allOf(Cue.class);
        hidden.removeAll(settings.cues());
        values.put("hide", hidden.stream().map(Cue::label).collect(Collectors.joining(", ")));
        values.put("count-in", Integer.toString(settings.countIn()));
        values.put("type-arc-minutes", number(settings.arcMinutes()));
        values.put(
                "type-pixels",
                settings.size().isPresent() ? number(settings.size().getAsDouble()) : "");
        values.put("words", Integer.toString(settings.columnWords()));
        settings.keys().taught().forEach((key, action) -> values.put(KEY + key, label(action)));
        return values;
    }

    /**
     * The settings with others, by name, laid over them.
     *
     * @param where they come from, for messages
     * @throws ProblemException if a name is not known or a value is out of range
     */
    public static WindowSettings over(WindowSettings settings, Map<String, String> values, String where)
            throws ProblemException {
        WindowSettings changed = settings;
        for (Map.Entry<String, String> value : values.entrySet()) {
            try {
                changed = with(changed, value.getKey(), value.getValue());
            } catch (IllegalArgumentException e) {
                throw new ProblemException(
                        "'" + value.getKey() + ": " + value.getValue() + "' does not do (" + e.getMessage() + ")",
                        where,
                        "correct the line or remove it",
                        e);
            }
        }
        return changed;
    }

    private static WindowSettings with(WindowSettings settings, String name, String value) {
        if (name.startsWith(KEY)) {
            return settings.withKeys(settings.keys().with(name.substring(KEY.length()), action(value)));
        }
        return switch (name) {
            case "distance-cm" -> settings.withDistance(10 * Double.parseDouble(value));
            case "eye-line-percent" -> settings.withEyeLine(Double.parseDouble(value) / 100);
            case "mirror" -> settings.withMirrored(isYes(value));
            case "upside-down" -> settings.withUpsideDown(isYes(value));
            case "hide" -> settings.withCues(shown(value));
            case "count-in" -> settings.withCountIn(Integer.parseInt(value));
            case "type-arc-minutes" -> settings.withArcMinutes(Double.parseDouble(value));
            case "type-pixels" ->
                value.isEmpty() ? settings.withoutSize() : settings.withSize(Double.parseDouble(value));
            case "words" -> settings.withColumnWords(Integer.parseInt(value));
            default -> throw new IllegalArgumentException("the name is not known");
        };
    }

    private static Set<Cue> shown(String hidden) {
        Set<Cue> shown = EnumSet.allOf(Cue.class);
        for (String label : hidden.split(",", -1)) {
            if (!label.isBlank() && !shown.removeIf(cue -> cue.label().equals(label.strip()))) {
                throw new IllegalArgumentException("there is no cue '" + label.strip() + "'");
            }
        }
        return shown;
    }

    private static Action action(String label) {
        return Arrays.stream(Action.values())
                .filter(action -> label(action).equals(label))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("there is no work '" + label + "'"));
    }

    private static String label(Action action) {
        return action.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String yes(boolean value) {
        return value ? "yes" : "no";
    }

    private static boolean isYes(String value) {
        return switch (value) {
            case "yes" -> true;
            case "no" -> false;
            default -> throw new IllegalArgumentException("it must be yes or no");
        };
    }

    /** No more digits than are of use. */
    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value);
        return text.replaceFirst("\\.?0+$", "");
    }
}
