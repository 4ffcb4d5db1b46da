package org.bookholder.script.normalize;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Keys that are pressed together: "Ctrl-Shift-T", "Alt+F4", "⌘C", "Ctrl/⌘+S". */
final class ShortcutRule implements NormalizationRule {
    private static final String MODIFIER =
            "(?:Ctrl|CTRL|Control|Cmd|CMD|Command|Alt|ALT|Opt|Option|Shift|SHIFT|Win|Fn|[⌘⌥⇧⌃])";

    /** Words such as "Opt-in" and "Win-win". */
    private static final String NO_WORD = "(?!(?:Opt|Win)-(?!click|drag|tab)[a-z]{2})";

    private static final Pattern SHORTCUT = Pattern.compile(NO_WORD + MODIFIER + "(?:/" + MODIFIER + ")?(?:[-+ ]?"
            + MODIFIER + "){0,3}(?:[-+](?:F\\d{1,2}|[A-Za-z]{1,9}|\\d{1,2})|(?<=[⌘⌥⇧⌃])(?:[A-Z]|\\d))" + END);

    private static final Pattern PIECE = Pattern.compile("[⌘⌥⇧⌃/]|F(?=\\d)|[A-Za-z]{1,9}|\\d{1,2}");

    private static final Map<String, String> NAMES = Map.ofEntries(
            Map.entry("ctrl", "control"),
            Map.entry("cmd", "command"),
            Map.entry("opt", "option"),
            Map.entry("win", "windows"),
            Map.entry("fn", "function"),
            Map.entry("del", "delete"),
            Map.entry("esc", "escape"),
            Map.entry("⌘", "command"),
            Map.entry("⌥", "option"),
            Map.entry("⇧", "shift"),
            Map.entry("⌃", "control"),
            Map.entry("/", "or"));

    private final NumberWords numbers;

    ShortcutRule(NumberWords numbers) {
        this.numbers = numbers;
    }

    /** How a key with a short name is said; null for any other. */
    static @Nullable String name(String key) {
        return NAMES.get(Typography.lower(key));
    }

    @Override
    public boolean mayBegin(char first) {
        return "CAOSWF⌘⌥⇧⌃".indexOf(first) >= 0;
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher shortcut = NormalizationRule.match(SHORTCUT, text, from, to);
        if (shortcut == null) {
            return null;
        }
        List<String> said = new ArrayList<>();
        Matcher piece = PIECE.matcher(shortcut.group());
        while (piece.find()) {
            String key = piece.group();
            String lower = Typography.lower(key);
            said.add(
                    Character.isDigit(key.charAt(0))
                            ? String.join(" ", numbers.counted(key).first())
                            : NAMES.getOrDefault(lower, lower));
        }
        String all = String.join(" ", said);
        SpokenForms forms = SpokenForms.of(
                all,
                String.join(" plus ", said).replace(" plus or plus ", " or ").replaceAll("\\bf plus (?=\\w+$)", "f "));
        return new SpokenSpan(
                shortcut.end(),
                all.contains(" or ")
                        ? forms.or(all.replaceFirst("\\S+ or ", ""), all.replaceFirst(" or \\S+", ""))
                        : forms);
    }
}
