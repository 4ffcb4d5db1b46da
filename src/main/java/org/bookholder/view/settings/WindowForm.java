package org.bookholder.view.settings;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.Form;
import org.bookholder.settings.Form.Field;
import org.bookholder.settings.Setting;
import org.bookholder.view.input.Action;

/**
 * The reading window's settings as people read and edit them: type size, column, place, picture and keys. What moves
 * the text is not among them; it is chosen anew each time.
 */
public final class WindowForm {
    /** Settings that are stored with a script, not with the machine. */
    public static final Set<String> OF_SCRIPT = Set.of("type-arc-minutes", "type-pixels", "words");

    /** All settings; each value is represented by the change it makes. */
    public static final Form<UnaryOperator<WindowWish>> FORM = new Form<>(
            "setting",
            List.of(
                    change(
                            "distance-cm",
                            "from your eyes to the screen",
                            (w, s) -> w.withDistance(10 * s.number(20, 2000, "cm"))),
                    change(
                            "eye-line-percent",
                            "of the height, from the top",
                            (w, s) -> w.withEyeLine(s.number(10, 80, "percent") / 100)),
                    change("mirror", "", (w, s) -> w.withMirrored(s.yes())),
                    change("upside-down", "", (w, s) -> w.withUpsideDown(s.yes())),
                    change("hide", "cues to leave out", (w, s) -> w.withCues(shown(s))),
                    change("count-in", "in seconds; 0 for none", (w, s) -> w.withCountIn(s.whole(0, 10, "seconds"))),
                    change(
                            "type-arc-minutes",
                            "height of capitals as you see them",
                            (w, s) -> w.withArcMinutes(s.number(16, 90, "minutes of arc"))),
                    change("type-pixels", "size of type, whatever the distance", WindowForm::size),
                    change("words", "to a row, about", (w, s) -> w.withColumnWords(s.whole(3, 12, "words"))),
                    change(
                            "key ",
                            "",
                            (w, s) -> w.withKeys(w.keys().with(s.name().substring("key ".length()), action(s)))),
                    place(
                            "full-screen",
                            "",
                            (p, s) -> s.yes()
                                    ? p.filled()
                                    : WindowPlace.windowed().on(p.monitor())),
                    place("monitor", "from 1", (p, s) -> p.on(s.whole(1, 99, "as its number")))));

    private WindowForm() {}

    @FunctionalInterface
    private interface Change<T> {
        T apply(T before, Setting setting) throws ProblemException;
    }

    private static Field<UnaryOperator<WindowWish>> change(String name, String meaning, Change<WindowSettings> change) {
        return new Field<>(name, meaning, setting -> {
            // Applied once here so that a value out of range is reported at once; ranges do not depend on other
            // settings.
            change.apply(WindowSettings.defaults(), setting);
            return wish -> new WindowWish(applied(change, wish.settings(), setting), wish.place());
        });
    }

    private static Field<UnaryOperator<WindowWish>> place(String name, String meaning, Change<WindowPlace> change) {
        return new Field<>(name, meaning, setting -> {
            change.apply(WindowPlace.windowed(), setting);
            return wish -> new WindowWish(wish.settings(), applied(change, wish.place(), setting));
        });
    }

    private static <T> T applied(Change<T> change, T before, Setting setting) {
        try {
            return change.apply(before, setting);
        } catch (ProblemException e) {
            throw new IllegalStateException("a value that was in range must stay so", e);
        }
    }

    /** The settings by name. */
    public static Map<String, String> values(WindowWish wish) {
        WindowSettings settings = wish.settings();
        Map<String, String> values = new LinkedHashMap<>();
        values.put("distance-cm", number(settings.distance() / 10));
        values.put("eye-line-percent", number(settings.eyeLine() * 100));
        values.put("mirror", yes(settings.mirrored()));
        values.put("upside-down", yes(settings.upsideDown()));
        Set<Cue> hidden = EnumSet.allOf(Cue.class);
        hidden.removeAll(settings.cues());
        // Advice on breaks is hidden for one session only.
        hidden.remove(Cue.BREAK);
        values.put("hide", hidden.stream().map(Cue::label).collect(Collectors.joining(", ")));
        values.put("count-in", Integer.toString(settings.countIn()));
        values.put("type-arc-minutes", number(settings.arcMinutes()));
        values.put(
                "type-pixels",
                settings.size().isPresent() ? number(settings.size().getAsDouble()) : "");
        values.put("words", Integer.toString(settings.columnWords()));
        settings.keys().taught().forEach((key, action) -> values.put("key " + key, label(action)));
        values.put("full-screen", yes(wish.place().fullScreen()));
        values.put("monitor", Integer.toString(wish.place().monitor()));
        return values;
    }

    private static WindowSettings size(WindowSettings settings, Setting setting) throws ProblemException {
        return setting.text().isEmpty() ? settings.withoutSize() : settings.withSize(setting.number(8, 1000, "pixels"));
    }

    private static Set<Cue> shown(Setting hidden) throws ProblemException {
        List<String> labels = Arrays.stream(Cue.values()).map(Cue::label).toList();
        Set<Cue> shown = EnumSet.allOf(Cue.class);
        for (Setting part : hidden.parts()) {
            String label = part.oneOf(labels);
            shown.removeIf(cue -> cue.label().equals(label));
        }
        return shown;
    }

    private static Action action(Setting setting) throws ProblemException {
        Map<String, Action> byLabel = new LinkedHashMap<>();
        for (Action action : Action.values()) {
            byLabel.put(label(action), action);
        }
        return Objects.requireNonNull(byLabel.get(setting.oneOf(List.copyOf(byLabel.keySet()))));
    }

    private static String label(Action action) {
        return action.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The names of the cues that can be left out for good. */
    public static List<String> cues() {
        return Arrays.stream(Cue.values())
                .filter(cue -> cue != Cue.BREAK)
                .map(Cue::label)
                .toList();
    }

    private static String yes(boolean value) {
        return value ? "yes" : "no";
    }

    /** Writes a number without needless digits. */
    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value);
        return text.replaceFirst("\\.?0+$", "");
    }
}
