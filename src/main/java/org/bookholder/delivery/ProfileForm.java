package org.bookholder.delivery;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.Form;
import org.bookholder.settings.SettingsFile;
import org.bookholder.settings.SettingsText.Values;

/**
 * The text form of a profile, as people write it: what is allowed for each setting. Settings that are left out are not
 * checked.
 */
public final class ProfileForm {
    private static final String NUMBER = "(-?\\d{1,9}(?:\\.\\d{1,6})?)";
    private static final Pattern RANGE = Pattern.compile(NUMBER + "\\s+to\\s+" + NUMBER);
    private static final Pattern LEAST = Pattern.compile("at least\\s+" + NUMBER);
    private static final Pattern MOST = Pattern.compile("at most\\s+" + NUMBER);

    /** What can be set. */
    public static final Form<Limit> FORM = new Form<>(
            "setting",
            Arrays.stream(ProfileSetting.values())
                    .map(setting -> new Form.Field<>(
                            setting.label(), setting.comment(), given -> limit(setting, given.text(), given.where())))
                    .toList());

    private ProfileForm() {}

    /** The default profile. */
    public static Profile usual() {
        Map<ProfileSetting, Limit> limits = new EnumMap<>(ProfileSetting.class);
        for (ProfileSetting setting : ProfileSetting.values()) {
            limits.put(setting, usual(setting));
        }
        return new Profile("the program's own", limits);
    }

    /**
     * The profile described by a text. A setting whose value is not understood is checked by its default, so that
     * nothing goes out unchecked by mistake.
     *
     * @param source where the text comes from, for messages
     * @throws ProblemException if nothing is set
     */
    public static Profile of(Values<Limit> values, String source) throws ProblemException {
        Map<ProfileSetting, Limit> limits = new EnumMap<>(ProfileSetting.class);
        values.misread().forEach(name -> ProfileSetting.named(name).ifPresent(s -> limits.put(s, usual(s))));
        values.values()
                .forEach((name, limit) -> limits.put(ProfileSetting.named(name).orElseThrow(), limit));
        if (limits.isEmpty()) {
            throw new ProblemException(
                    "sets nothing", source, "begin with what bookholder check --show-profile prints");
        }
        return new Profile(source, limits);
    }

    /** The lines that read back as {@code profile}, with a comment on each. */
    public static List<String> lines(Profile profile) {
        return FORM.lines(
                name -> ProfileSetting.named(name).map(profile.limits()::get).map(Limit::text));
    }

    /** How a profile sets one of them; empty if it does not check that. */
    public static String value(Profile profile, String name) {
        return ProfileSetting.named(name)
                .flatMap(setting -> Optional.ofNullable(profile.limits().get(setting)))
                .map(Limit::text)
                .orElse("");
    }

    /**
     * Changes one setting of a profile in a file; an empty one is left out, so it is not checked any more.
     *
     * @throws ProblemException if the value is not understood, nothing would be left to check, or the file cannot be read or
     *     written; it stays as it was then
     */
    public static void set(SettingsFile file, String name, String value) throws ProblemException {
        if (value.isEmpty() && ProfileSetting.named(name).isPresent()) {
            Values<Limit> values = file.readOnly(FORM);
            if (values.misread().isEmpty()
                    && Set.of(name).equals(values.values().keySet())) {
                throw new ProblemException(
                        "a profile checks at least one thing", file.path().toString(), "set another one first");
            }
            file.change(FORM, Map.of(), Set.of(name));
        } else {
            file.set(FORM, name, value);
        }
    }

    private static Limit usual(ProfileSetting setting) {
        try {
            return limit(setting, setting.usual(), setting.label());
        } catch (ProblemException e) {
            throw new IllegalStateException("a default must read back", e);
        }
    }

    private static Limit limit(ProfileSetting setting, String value, String where) throws ProblemException {
        if (value.isEmpty()) {
            throw new ProblemException(
                    "'" + setting.label() + "' says nothing",
                    where,
                    setting.form().remedy() + ", or leave the line out");
        }
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

    private static Limit range(ProfileSetting setting, String value, String where) throws ProblemException {
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
                    "'" + value + "' is not a range for '" + setting.label() + "'",
                    where,
                    setting.form().remedy());
        }
        if (low > high) {
            throw new ProblemException(
                    "the range of '" + setting.label() + "' is empty", where, "write the smaller number first");
        }
        return new Limit.Between(low, high);
    }

    private static Limit pattern(ProfileSetting setting, String value, String where) throws ProblemException {
        try {
            return Limit.Matching.of(value);
        } catch (PatternSyntaxException e) {
            throw new ProblemException(
                    "'" + setting.label() + "' is neither a form of a name nor a regular expression ("
                            + e.getDescription() + ")",
                    where,
                    "write for instance " + setting.usual(),
                    e);
        }
    }
}
