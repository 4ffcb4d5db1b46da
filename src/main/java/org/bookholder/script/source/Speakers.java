package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.script.model.Speaker;
import org.bookholder.script.normalize.Typography;
import org.jspecify.annotations.Nullable;

/**
 * The speakers whose names stand before their lines: "HOST: Welcome", "Guest - Thank you". A part such as "Host" is
 * always a speaker. A name in capitals is one if it, or another name in capitals, stands before several lines, any other name if,
 * besides, somebody else speaks; so "Note: keep it level" and "USB: a plug" stay spoken. {@link ProductionCues} are no names. Several may speak at once: "HOST & GUEST: Goodbye",
 * "ALL: Goodbye".
 */
final class Speakers {
    private static final String NAME =
            "\\p{L}[\\p{L}\\p{M}\\p{N}.'/]{0,20}(?: [\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N}.'/]{0,20}){0,2}";

    private static final String BEHIND_NAME = "(?<cue> ?\\([^()]{1,40}\\))?(?<mark>:| [-–—])(?: |$)";
    private static final Pattern LABEL = Pattern.compile("(?<name>" + NAME + ")" + BEHIND_NAME);

    /** Names of several who speak at once; those joined by "and" or a slash look like one. */
    private static final Pattern TOGETHER =
            Pattern.compile("(?<name>" + NAME + "(?: ?[&+,] ?" + NAME + "){0,3})" + BEHIND_NAME);

    private static final Pattern JOIN = Pattern.compile(" ?[&+,/] ?| and ");

    /** Who speaks when all do; common practice. */
    private static final Set<String> ALL = Set.of("ALL", "BOTH", "TOGETHER", "EVERYONE");

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
                            + " ingredients tools materials update spoiler usb ps pps nb faq diy pdf url qa api cpu sql html css ok")
                    .split(" "));

    private static final Pattern VOWEL = Pattern.compile("[aeiouy\\P{ASCII}]");
    private static final Pattern SENTENCE = Pattern.compile("(?s)[\"'(]?\\p{Lu}.*[.!?\u2026][\"')]{0,2}");

    /** What is said to somebody who is there. */
    private static final Pattern GREETING = Pattern.compile(
            "(?i)(?:hello|hi|hey|thanks|thank you|welcome|goodbye|good (?:morning|afternoon|evening))\\b.*");

    private static final Pattern STRESS = Pattern.compile("[*_]{1,3}");
    private static final Pattern BEFORE = Pattern.compile("^[\\s>#•-]{1,9}|^\\d{1,2}[.)]\\s");

    private final Map<String, Integer> counts = new HashMap<>();
    private final Set<String> shouted = new LinkedHashSet<>();

    /** Those that may as well tell of a script's making: "WRITER: ...". */
    private final Set<String> sheet = new HashSet<>();

    private final List<String> wanted;

    /**
     * The label of a line.
     *
     * @param text the label without its cue, as written
     * @param names the speakers, as written; empty if all speak
     * @param cue what stands in brackets behind the name; empty if nothing does
     * @param end index at which the speaker's words begin
     */
    record Label(String text, List<String> names, String cue, int end) {
        Label {
            names = List.copyOf(names);
        }
    }

    private Speakers(List<String> wanted) {
        this.wanted = List.copyOf(wanted);
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
            if (!ProductionCues.isCue(start)
                    && label.lookingAt()
                    && (remark ? speakers.isNamed(label) : speakers.mayBe(label))) {
                String name = label.group("name");
                speakers.counts.merge(key(name), 1, Integer::sum);
                if (ProductionCues.isSheet(start)) {
                    speakers.sheet.add(key(name));
                }
                if (name.equals(name.toUpperCase(Locale.ROOT)) && name.length() > 1) {
                    speakers.shouted.add(key(name));
                }
            }
        });
        boolean dialogue = speakers.shouted.stream().anyMatch(name -> !isCommon(name) && speakers.stands(name, 2))
                || speakers.talk(body);
        speakers.counts
                .keySet()
                .removeIf(name -> !speakers.isNamed(name)
                        && (isCommon(name)
                                || !(speakers.stands(name, 2)
                                        || (dialogue
                                                && speakers.shouted.contains(name)
                                                && !speakers.sheet.contains(name)))));
        return speakers;
    }

    /** Whether two or more names in capitals stand before whole sentences, and one greets, or one asks and another answers. */
    private boolean talk(String body) {
        Set<String> names = new HashSet<>();
        boolean toSomebody = false;
        String asking = "";
        for (String row : body.lines().toList()) {
            Matcher label = LABEL.matcher(STRESS.matcher(Typography.plain(row)).replaceAll(""));
            String name = label.lookingAt() ? key(label.group("name")) : "";
            if (!shouted.contains(name)
                    || isCommon(name)
                    || sheet.contains(name)
                    || !VOWEL.matcher(name).find()) {
                continue;
            }
            String said = row.strip().substring(row.strip().indexOf(':') + 1).strip();
            if (!SENTENCE.matcher(said).matches()) {
                return false;
            }
            boolean asks = said.endsWith("?");
            toSomebody |= GREETING.matcher(said).matches() || (!asks && !asking.isEmpty() && !asking.equals(name));
            asking = asks ? name : "";
            names.add(name);
        }
        return names.size() > 1 && toSomebody;
    }

    /** Whether a name stands before so many lines at least. */
    private boolean stands(String name, int times) {
        return counts.getOrDefault(name, 0) >= times;
    }

    private static boolean hasColon(Matcher bracketed) {
        return !bracketed.group(2).isEmpty() || !bracketed.group(3).isEmpty();
    }

    /** Whether this is a speaker whatever else stands in the script. */
    private boolean isNamed(Matcher label) {
        return isNamed(label.group("name"));
    }

    private boolean isNamed(String name) {
        return PART.matcher(name).matches() || isOneOf(wanted, name);
    }

    private static boolean isOneOf(List<String> names, String name) {
        return names.stream().anyMatch(other -> same(name, other));
    }

    /** Whether this looks like a speaker's name; names other than parts begin with a capital. */
    private boolean mayBe(Matcher label) {
        boolean colon = label.group("mark").equals(":");
        boolean capital = Character.isUpperCase(label.group("name").codePointAt(0));
        return (capital && colon) || ((capital || colon) && isNamed(label));
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
        return wanted.isEmpty() || isOneOf(wanted, name);
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
        return wanted.stream()
                .filter(name -> !isOneOf(List.copyOf(heard), name))
                .toList();
    }

    /** The label at the start of a line, null if there is none. */
    @Nullable Label at(String plain) {
        return label(plain, 0);
    }

    /** The label in square brackets at the start of a line, null if there is none: any other remark in brackets is no label. */
    @Nullable Label bracketedAt(String plain) {
        Matcher bracketed = BRACKETED.matcher(plain);
        return bracketed.find() ? label(bracketed.group(1) + ":", bracketed.end()) : null;
    }

    private @Nullable Label label(String plain, int end) {
        Matcher several = TOGETHER.matcher(plain);
        if (several.lookingAt()) {
            String text = several.group("name");
            List<String> names = List.of(JOIN.split(text, -1));
            if (ALL.contains(text) && counts.size() > 1) {
                return label(several, List.of(), end);
            } else if (names.size() > 1 && names.stream().allMatch(this::isSpeaker)) {
                return label(several, names, end);
            }
        }
        Matcher one = LABEL.matcher(plain);
        return one.lookingAt() && mayBe(one) && isSpeaker(one.group("name"))
                ? label(one, List.of(one.group("name")), end)
                : null;
    }

    private static Label label(Matcher found, List<String> names, int end) {
        @Nullable String cue = found.group("cue");
        return new Label(
                found.group("name"),
                names,
                cue == null ? "" : cue.strip().substring(1, cue.strip().length() - 1),
                Math.max(end, found.end()));
    }

    private boolean isSpeaker(String name) {
        return isNamed(name) || isRepeated(name);
    }

    /** Whether the name stands before several lines, and either in capitals or with other speakers beside it. */
    private boolean isRepeated(String name) {
        return counts.containsKey(key(name)) && (shouted.contains(key(name)) || counts.size() > 1);
    }
}
