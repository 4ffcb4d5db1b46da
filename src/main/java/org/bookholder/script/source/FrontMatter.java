package org.bookholder.script.source;

import java.util.Arrays;
import java.util.IllformedLocaleException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.PaceSource;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.script.model.ScriptSettings.LineBreaks;
import org.bookholder.script.model.ScriptSettings.Wording;
import org.bookholder.settings.Setting;
import org.bookholder.settings.Settings;
import org.jspecify.annotations.Nullable;

/**
 * The YAML at the head of a script, between two lines of three dashes, perhaps behind blank lines. The names title, pace, language, lines,
 * contractions and speaker are read; other names are left to other programs, unless one looks like a typing mistake for one of
 * these.
 *
 * @param title the title, null if none is given
 * @param settings the given settings, with defaults for the rest
 * @param speakers those whose lines are read, empty if everybody's are
 * @param others the settings that are left to other programs
 * @param body the text below
 * @param bodyLine line of the file at which the body begins, from 1
 */
record FrontMatter(
        @Nullable String title,
        ScriptSettings settings,
        List<String> speakers,
        List<LeftOut> others,
        String body,
        int bodyLine) {
    private static final List<String> NAMES = List.of("title", "pace", "language", "lines", "contractions", "speaker");
    private static final Pattern OPENING = Pattern.compile("---[ \\t]*\\R|\\s{1,99}---[ \\t]*\\R(?=[a-z]{1,20}:)");
    private static final Pattern CLOSING = Pattern.compile("(?m)^(?:---|\\.\\.\\.)[ \\t]*$");

    static FrontMatter split(String whole, String source) throws ProblemException {
        SpeakerChoice choice = SpeakerChoice.of(whole);
        String text = choice.text();
        Matcher opening = OPENING.matcher(text);
        if (!opening.lookingAt()) {
            return new FrontMatter(null, ScriptSettings.defaults(), choice.names(), List.of(), text, 1);
        }
        Matcher closing = CLOSING.matcher(text);
        if (!closing.find(opening.end())) {
            throw new ProblemException(
                    "the front matter is not closed", source + ":1", "put a line of three dashes below it");
        }
        int before = (int) opening.group().lines().count();
        Settings given = Settings.parse(
                        text.substring(opening.end(), closing.start()), source, before, "the front matter")
                .refuseMistyped(NAMES);
        Optional<Setting> title = given.value("title");
        if (title.isPresent() && title.get().text().length() > ScriptLimits.LONGEST_TITLE) {
            throw title.get().problem("the title is too long (over 300 characters)", "shorten it");
        }
        int bodyLine = (int) text.substring(0, closing.end()).lines().count();
        return new FrontMatter(
                title.isPresent() ? MarkedSourceLine.plain(title.get().text()).text() : null,
                settings(given),
                choice.names().isEmpty()
                        ? given.value("speaker")
                                .map(Setting::text)
                                .map(SpeakerChoice::names)
                                .orElse(List.of())
                        : choice.names(),
                others(given),
                text.substring(closing.end()),
                bodyLine);
    }

    private static List<LeftOut> others(Settings given) {
        return given.names().stream()
                .filter(name -> !NAMES.contains(name))
                .map(name -> new LeftOut(
                        given.lineOf(name), ScriptBuilder.brief(name + ":"), "a setting for other programs"))
                .toList();
    }

    private static ScriptSettings settings(Settings given) throws ProblemException {
        ScriptSettings defaults = ScriptSettings.defaults();
        Optional<Setting> pace = given.value("pace");
        Optional<Setting> language = given.value("language");
        Optional<Setting> lines = given.value("lines");
        Optional<Setting> contractions = given.value("contractions");
        return new ScriptSettings(
                pace.isPresent() ? pace(pace.get()) : defaults.targetPace(),
                pace.isPresent() ? PaceSource.SCRIPT : defaults.paceSource(),
                language.isPresent() ? language(language.get()) : defaults.language(),
                lines.isPresent() ? lineBreaks(lines.get()) : defaults.lineBreaks(),
                contractions.isPresent() ? wording(contractions.get()) : defaults.contractions());
    }

    private static int pace(Setting pace) throws ProblemException {
        return pace.whole(ScriptSettings.MIN_PACE, ScriptSettings.MAX_PACE, "words per minute");
    }

    private static String language(Setting language) throws ProblemException {
        String remedy = "give one such as en-US";
        String written = language.text().strip().replace('_', '-');
        try {
            String tag =
                    new Locale.Builder().setLanguageTag(named(written)).build().toLanguageTag();
            if (!tag.equals("und")) {
                return tag;
            }
        } catch (IllformedLocaleException e) {
            throw new ProblemException(
                    "'" + ScriptBuilder.brief(language.text()) + "' is no language tag", language.where(), remedy, e);
        }
        throw language.problem("'" + ScriptBuilder.brief(language.text()) + "' is no language tag", remedy);
    }

    /** The tag of a language that is given by its name, in English or as its speakers call it; else what was given. */
    private static String named(String written) {
        return Arrays.stream(Locale.getISOLanguages())
                .filter(code -> isNamed(Locale.forLanguageTag(code), written))
                .findFirst()
                .orElse(written);
    }

    private static boolean isNamed(Locale language, String written) {
        return written.length() > 3
                && (language.getDisplayLanguage(Locale.ENGLISH).equalsIgnoreCase(written)
                        || language.getDisplayLanguage(language).equalsIgnoreCase(written));
    }

    private static Wording wording(Setting contractions) throws ProblemException {
        return contractions.oneOf(List.of("free", "as-written")).equals("free") ? Wording.FREE : Wording.AS_WRITTEN;
    }

    private static LineBreaks lineBreaks(Setting lines) throws ProblemException {
        return switch (lines.text()) {
            case "sentences" -> LineBreaks.SENTENCES;
            case "as-written" -> LineBreaks.AS_WRITTEN;
            default ->
                throw lines.problem(
                        "lines '" + ScriptBuilder.brief(lines.text()) + "' is not known",
                        "give 'sentences' or 'as-written'");
        };
    }
}
