package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.bookholder.script.model.Speaker;
import org.bookholder.script.normalize.Typography;
import org.jspecify.annotations.Nullable;

/**
 * The speakers whose names stand before their lines: "HOST: Welcome", "Guest - Thank you". A part such as "Host" is
 * always a speaker. A name in capitals is one if it stands before several lines, any other name if, besides, somebody
 * else speaks; so "Note: keep it level" and "USB: a plug" stay spoken.
 */
final class Speakers {
    private static final Pattern LABEL = Pattern.compile("(?<name>\\p{L}[\\p{L}\\p{M}\\p{N}.'/]{0,20}"
            + "(?: [\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N}.'/]{0,20}){0,2})(?<cue> ?\\([^()]{1,40}\\))?"
            + "(?<mark>:| [-–—])(?: |$)");

    /** A name in brackets: "[HOST] Welcome", "[Guest]: Thank you". */
    private static final Pattern BRACKETED = Pattern.compile("^\\[([^\\[\\]:]{1,60})(:?)\\](:?)(?= |$)");

    /** Parts in scripts; common practice. */
    private static final Pattern PART = Pattern.compile("(?i)(?:(?:co-?)?host|guest|narrator|presenter|speaker|"
            + "interviewer|interviewee|instructor|teacher|tutor|student|moderator|announcer|anchor|caller|expert|"
            + "reporter|voice ?-?over|voice|v\\.?/?o\\.?|talent|on[- ]camera)(?: ?(?:\\d{1,2}|[A-F]|one|two|three))?");

    /** What often stands before a colon in text that is read aloud. */
    private static final Set<String> NO_SPEAKERS =
            Set.of(("note notes tip tips step warning caution important remember example examples question answer"
                            + " summary result results hint danger attention reminder conclusion introduction intro outro exercise"
                            + " task goal problem solution first second third next finally then today bonus fact pro con pros cons"
                            + " ingredients tools materials update spoiler")
                    .split(" "));

    private static final Pattern STRESS = Pattern.compile("[*_]{1,3}");
    private static final Pattern BEFORE = Pattern.compile("^[\\s>#•-]{1,9}|^\\d{1,2}[.)]\\s");

    private final Map<String, Integer> counts = new HashMap<>();
    private final Set<String> shouted = new LinkedHashSet<>();
    private final List<String> wanted;

    /**
     * The label of a line.
     *
     * @param name the speaker, as written
     * @param cue what stands in brackets behind the name; empty if nothing does
     * @param end index at which the speaker's words begin
     */
    record Label(String name, String cue, int end) {}

    private Speakers(List<String> wanted) {
        this.wanted = wanted.stream().map(Speakers::key).toList();
    }

    /**
     * Looks for names before the lines of a script.
     *
     * @param wanted those whose lines are to be read, who are speakers however their names are written
     */
    static Speakers in(String body, List<String> wanted) {
        Speakers speakers = new Speakers(wanted);
        body.lines().forEach(row -> {
            String plain = STRESS.matcher(Typography.plain(row)).replaceAll("");
            String start = BEFORE.matcher(plain).replaceFirst("");
            Matcher bracketed = BRACKETED.matcher(start);
            boolean remark = bracketed.find() && !hasColon(bracketed);
            Matcher label = LABEL.matcher(bracketed.replaceFirst("$1:"));
            if (label.lookingAt() && (remark ? speakers.isNamed(label) : speakers.mayBe(label))) {
                String name = label.group("name");
                speakers.counts.merge(key(name), 1, Integer::sum);
                if (name.equals(name.toUpperCase(Locale.ROOT)) && name.length() > 1) {
                    speakers.shouted.add(key(name));
                }
            }
        });
        speakers.counts
                .keySet()
                .removeIf(name -> !speakers.wanted.contains(name)
                        && !PART.matcher(name).matches()
                        && (speakers.counts.getOrDefault(name, 0) < 2 || isCommon(name)));
        return speakers;
    }

    private static boolean hasColon(Matcher bracketed) {
        return !bracketed.group(2).isEmpty() || !bracketed.group(3).isEmpty();
    }

    /** Whether this is a speaker whatever else stands in the script. */
    private boolean isNamed(Matcher label) {
        return isPart(label) || wanted.contains(key(label.group("name")));
    }

    /** Whether this looks like a speaker's name; names other than parts begin with a capital. */
    private boolean mayBe(Matcher label) {
        boolean colon = label.group("mark").equals(":");
        boolean capital = Character.isUpperCase(label.group("name").codePointAt(0));
        return (capital && colon) || ((capital || colon) && isNamed(label));
    }

    private static boolean isPart(Matcher label) {
        return PART.matcher(label.group("name")).matches();
    }

    private static boolean isCommon(String name) {
        return NO_SPEAKERS.contains(name.split(" ", -1)[0]);
    }

    private static String key(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }

    /** Whether two names are of the same speaker. */
    static boolean same(String one, String other) {
        return key(one).equals(key(other));
    }

    /** Whether a speaker is one of those whose lines are to be read. */
    boolean isWanted(String name) {
        return wanted.isEmpty() || wanted.contains(key(name));
    }

    /** The speakers behind names, each as first written. */
    List<Speaker> among(Set<String> heard) {
        List<Speaker> found = new ArrayList<>();
        heard.stream()
                .filter(name -> found.stream().noneMatch(other -> same(name, other.name())))
                .forEach(name -> found.add(new Speaker(name, isWanted(name))));
        return found;
    }

    /** Those of the wanted who don't speak. */
    List<String> missing(Set<String> heard) {
        Set<String> keys = heard.stream().map(Speakers::key).collect(Collectors.toSet());
        return wanted.stream().filter(name -> !keys.contains(name)).toList();
    }

    /** The label at the start of a line, null if there is none. */
    @Nullable Label at(String plain) {
        return label(LABEL.matcher(plain), 0);
    }

    /** The label in square brackets at the start of a line, null if there is none: any other remark in brackets is no label. */
    @Nullable Label bracketedAt(String plain) {
        Matcher bracketed = BRACKETED.matcher(plain);
        return bracketed.find() ? label(LABEL.matcher(bracketed.group(1) + ":"), bracketed.end()) : null;
    }

    private @Nullable Label label(Matcher label, int end) {
        if (!label.lookingAt() || !isSpeaker(label)) {
            return null;
        }
        @Nullable String cue = label.group("cue");
        return new Label(
                label.group("name"),
                cue == null ? "" : cue.strip().substring(1, cue.strip().length() - 1),
                Math.max(end, label.end()));
    }

    private boolean isSpeaker(Matcher label) {
        return mayBe(label) && (isNamed(label) || isRepeated(label));
    }

    /** Whether the name stands before several lines, and either in capitals or with other speakers beside it. */
    private boolean isRepeated(Matcher label) {
        String name = key(label.group("name"));
        return counts.containsKey(name) && (shouted.contains(name) || counts.size() > 1);
    }
}
