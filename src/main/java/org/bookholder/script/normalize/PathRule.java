package org.bookholder.script.normalize;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Paths of files, variables of a shell and signs of shares: "/etc/hosts", "~/bin", "$HOME/.ssh", "$ABCD". What is said of them is from memory. */
final class PathRule implements NormalizationRule {
    private static final Pattern PATH = Pattern.compile("(~|\\$[A-Z][A-Z_]{1,20})?((?:/[\\w.@+-]{1,40}){1,12}/?)" + END
            + "|(\\$(?:[A-Z]{1,20}_[A-Z_]{1,20}|HOME|PATH|USER|PWD|SHELL|TERM|EDITOR|PAGER|LANG|HOSTNAME|TMPDIR|DISPLAY))"
            + END + "|\\$([A-Z]{2,6})" + END);

    /** Letters that are not read as one word together with those behind them: "f s tab". */
    private static final Pattern SPELLED_START =
            Pattern.compile("([a-z&&[^aeiouy]]{2,4})([a-z&&[^aeiouy]][aeiouy][a-z]{1,8})");

    private final ChunkRule chunks;

    PathRule(ChunkRule chunks) {
        this.chunks = chunks;
    }

    @Override
    public boolean mayBegin(char first) {
        return first == '/' || first == '~' || first == '$';
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher m = NormalizationRule.match(PATH, text, from, to);
        if (m == null) {
            return null;
        }
        if (m.group(4) != null) {
            return new SpokenSpan(m.end(), LetterForms.of(m.group(4)).or(start("$" + m.group(4))));
        }
        String start = m.group(3) == null ? m.group(1) : m.group(3);
        SpokenForms forms = start == null ? SpokenForms.SILENT : start(start);
        if (m.group(2) == null) {
            return new SpokenSpan(m.end(), forms);
        }
        SpokenForms slashes = forms;
        for (String part : m.group(2).replaceAll("^/|/$", "").split("/", -1)) {
            SpokenForms said = part(part);
            slashes = slashes.then("slash").then(said);
            forms = forms.then(said);
        }
        slashes = m.group(2).endsWith("/") ? slashes.then("", "slash") : slashes;
        boolean one = start == null && m.group(2).indexOf('/', 1) < 0;
        return new SpokenSpan(m.end(), one ? forms.or(slashes) : slashes.besides(forms));
    }

    private static SpokenForms start(String written) {
        if (written.equals("~")) {
            return SpokenForms.of("tilde", "home");
        }
        SpokenForms name = LetterForms.of(written.substring(1))
                .or(LetterForms.of(Typography.lower(written.substring(1).replace("_", " "))));
        return SpokenForms.of("dollar", "", "dollar sign").then(name.first(3));
    }

    private SpokenForms part(String part) {
        SpokenForms forms = chunks.of(part);
        Matcher start = SPELLED_START.matcher(part);
        if (start.matches()) {
            forms = forms.or(LetterForms.spell(start.group(1)) + " " + start.group(2));
        }
        return part.matches("[a-z]{2,4}") ? forms.or(LetterForms.spell(part)) : forms.first(8);
    }
}
