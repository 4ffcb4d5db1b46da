package org.bookholder.delivery;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import java.util.stream.Collectors;
import org.bookholder.problem.ProblemException;

/**
 * A profile as a text that people write: on each line a name, a colon and what is allowed. A line that begins with a {@code
 * #} is a comment, as is what follows one after a space. What is left out is not checked.
 */
public final class ProfileText {
    private static final String NUMBER = "(-?\\d{1,9}(?:\\.\\d{1,6})?)";
    private static final Pattern RANGE = Pattern.compile(NUMBER + "\\s+to\\s+" + NUMBER);
    private static final Pattern LEAST = Pattern.compile("at least\\s+" + NUMBER);
    private static final Pattern MOST = Pattern.compile("at most\\s+" + NUMBER);

    private ProfileText() {}

    /** The profile that is used unless another is named. */
    public static Profile usual() {
        Map<Setting, Limit> limits = new EnumMap<>(Setting.class);
        try {
            for (Setting setting : Setting.values()) {
                limits.put(setting, limit(setting, setting.usual(), setting.label()));
            }
        } catch (ProblemException e) {
            throw new IllegalStateException("a default must read back", e);
        }
        return new Profile("the program's own", limits);
    }

    /**
     * Reads a profile.
     *
     * @param source where the text comes from, for messages
     * @throws ProblemException if a name is not known or given twice, or what is allowed cannot be understood
     */
    public static Profile parse(String text, String source) throws ProblemException {
        Map<Setting, Limit> limits = new EnumMap<>(Setting.class);
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).replaceFirst("(^|\\s)#.*", "").strip();
            if (!line.isEmpty()) {
                take(line, source + ":" + (i + 1), limits);
            }
        }
        if (limits.isEmpty()) {
            throw new ProblemException(
                    "sets nothing", source, "begin with what bookholder check --show-profile prints");
        }
        return new Profile(source, limits);
    }

    /** The text that reads back as {@code profile}, with a comment on each line. */
    public static List<String> of(Profile profile) {
        List<String> lines = new ArrayList<>();
        for (Setting setting : Setting.values()) {
            Limit limit = profile.limits().get(setting);
            if (limit != null) {
                lines.add(String.format(
                        Locale.ROOT, "%-40s # %s", setting.label() + ": " + limit.text(), setting.comment()));
            }
        }
        return lines;
    }

    private static void take(String line, String where, Map<Setting, Limit> limits) throws ProblemException {
        int colon = line.indexOf(':');
        String name = (colon < 0 ? line : line.substring(0, colon)).strip();
        Setting setting = Setting.named(name)
                .orElseThrow(() -> new ProblemException(
                        "there is no setting '" + name + "'",
                        where,
                        "write one of "
                                + Arrays.stream(Setting.values())
                                        .map(Setting::label)
                                        .collect(Collectors.joining(", "))));
        String value = colon < 0 ? "" : line.substring(colon + 1).strip();
        if (value.isEmpty()) {
            throw new ProblemException(
                    "'" + name + "' says nothing", where, setting.form().remedy() + ", or leave the line out");
        }
        if (limits.put(setting, limit(setting, value, where)) != null) {
            throw new ProblemException("'" + name + "' is given twice", where, "leave one of them");
        }
    }

    private static Limit limit(Setting setting, String value, String where) throws ProblemException {
        return switch (setting.form()) {
            case WORDS ->
                new Limit.OneOf(Arrays.stream(value.split(",", -1))
                        .map(word -> word.strip().toLowerCase(Locale.ROOT))
                        .filter(word -> !word.isEmpty())
                        .toList());
            case RANGE -> range(setting, value, where);
            case PATTERN -> pattern(setting, value, where);
        };
    }

    private static Limit range(Setting setting, String value, String where) throws ProblemException {
        Matcher both = RANGE.matcher(value);
        Matcher least = LEAST.matcher(value);
        Matcher most = MOST.matcher(value);
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        if (both.matches()) {
            low = Double.parseDouble(both.group(1));
            high = Double.parseDouble(both.group(2));
        } else if (least.matches()) {
            low = Double.parseDouble(least.group(1));
        } else if (most.matches()) {
            high = Double.parseDouble(most.group(1));
        } else {
            throw new ProblemException(
                    "'" + value + "' is no range for '" + setting.label() + "'",
                    where,
                    setting.form().remedy());
        }
        if (low > high) {
            throw new ProblemException(
                    "the range of '" + setting.label() + "' is empty", where, "write the smaller number first");
        }
        return new Limit.Between(low, high);
    }

    private static Limit pattern(Setting setting, String value, String where) throws ProblemException {
        try {
            return new Limit.Matching(Pattern.compile(value));
        } catch (PatternSyntaxException e) {
            throw new ProblemException(
                    "'" + setting.label() + "' is no regular expression (" + e.getDescription() + ")",
                    where,
                    "write for instance " + setting.usual(),
                    e);
        }
    }
}
