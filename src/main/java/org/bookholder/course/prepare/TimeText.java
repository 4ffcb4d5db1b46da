package org.bookholder.course.prepare;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.bookholder.course.Measured;
import org.bookholder.course.Text;
import org.bookholder.wording.PaceText;

/** Running times as a text for a terminal of 80 columns. */
public final class TimeText {
    private static final int TITLE = 32;
    private static final int QUOTED = 46;
    private static final double STANDARD_EASE = 60;

    private TimeText() {}

    /**
     * The text, line by line.
     *
     * @param title the course's title; empty for a single script
     * @param vocabulary whether the recogniser's vocabulary was available
     */
    public static List<String> of(
            Optional<String> title, List<LessonTime> lessons, Measured measured, boolean vocabulary) {
        List<String> out = new ArrayList<>();
        title.ifPresent(t -> out.add(t + ": " + Text.count(lessons.size(), "lesson")));
        boolean own = measured.pace().isPresent();
        out.add(String.format(
                Locale.ROOT,
                "%-" + (TITLE + 4) + "s %6s %8s %7s%s  %5s",
                "lesson",
                "words",
                "pace",
                "runs",
                own ? "   yours" : "",
                "grade"));
        lessons.forEach(lesson -> out.add(row(lesson)));
        if (lessons.size() > 1) {
            out.add(all(lessons, own));
        }
        out.add("");
        for (String remark : remarks(lessons, measured, vocabulary)) {
            out.addAll(remark.startsWith(" ") ? List.of(remark) : Text.wrap(remark));
        }
        return out;
    }

    /** What is said below the table of lessons, one line for each remark; an empty line stands between the parts. */
    public static List<String> remarks(List<LessonTime> lessons, Measured measured, boolean vocabulary) {
        List<String> out = new ArrayList<>(notes(lessons, measured));
        out.addAll(hints(lessons));
        out.addAll(hard(lessons, vocabulary));
        return out;
    }

    private static String row(LessonTime lesson) {
        return String.format(
                Locale.ROOT,
                "%3d %s %6d %4d/min %7s%s  %5s",
                lesson.number(),
                Text.fit(lesson.title(), TITLE),
                lesson.words(),
                lesson.targetPace(),
                Text.clock(lesson.seconds()),
                own(lesson.ownSeconds()),
                lesson.readability()
                        .map(text -> String.format(Locale.ROOT, "%.1f", text.grade()))
                        .orElse("-"));
    }

    private static String all(List<LessonTime> lessons, boolean own) {
        double sum = lessons.stream().mapToDouble(LessonTime::seconds).sum();
        double ownSum =
                lessons.stream().mapToDouble(l -> l.ownSeconds().orElse(0)).sum();
        return String.format(
                Locale.ROOT,
                "    %s %6d %8s %7s%s",
                Text.fit("in all", TITLE),
                lessons.stream().mapToInt(LessonTime::words).sum(),
                "",
                Text.clock(sum),
                own(own ? OptionalDouble.of(ownSum) : OptionalDouble.empty()));
    }

    private static String own(OptionalDouble seconds) {
        return seconds.isPresent() ? String.format(Locale.ROOT, " %7s", Text.clock(seconds.getAsDouble())) : "";
    }

    private static List<String> notes(List<LessonTime> lessons, Measured measured) {
        List<String> notes = new ArrayList<>();
        notes.add("Words are counted as spoken. Runs = words / target pace, pauses included. "
                + PaceText.targets(lessons.stream()
                        .map(lesson -> PaceText.target(lesson.targetPace(), lesson.paceSource()))
                        .toList())
                + " " + PaceText.RULE);
        notes.add(PaceText.ORDINARY);
        if (measured.pace().isPresent()) {
            notes.add(String.format(
                    Locale.ROOT,
                    "Yours: at %.0f words a minute, as measured over %s of your own reading.",
                    measured.pace().getAsDouble(),
                    Text.clock(measured.reading().toMillis() / 1000.0)));
        } else {
            notes.add("Your own pace shows here once you have read a lesson with bookholder read.");
        }
        notes.add("Grade: Flesch-Kincaid, US school years; 7 to 8 is usual (common practice).");
        return notes;
    }

    private static List<String> hints(List<LessonTime> lessons) {
        List<String> hints = new ArrayList<>();
        String tooLong = lessons.stream()
                .filter(lesson -> lesson.likelySeconds() > LessonTime.WATCHED_SECONDS)
                .map(lesson -> lesson.name() + " (" + Text.clock(lesson.likelySeconds()) + ")")
                .collect(Collectors.joining(", "));
        if (!tooLong.isEmpty()) {
            hints.add("Long: " + tooLong + ". People stop watching after about 6 minutes (Guo, Kim and"
                    + " Rubin 2014); could it be two lessons?");
        }
        for (LessonTime lesson : lessons) {
            double ease = lesson.readability().map(Readability::ease).orElse(STANDARD_EASE);
            if (ease < STANDARD_EASE) {
                hints.add(String.format(
                        Locale.ROOT,
                        "%s is hard to follow by ear: Flesch reading ease %.0f; 60 to 70 is standard (Flesch).",
                        lesson.name(),
                        ease));
            }
        }
        if (!hints.isEmpty()) {
            hints.add(0, "");
        }
        return hints;
    }

    private static List<String> hard(List<LessonTime> lessons, boolean vocabulary) {
        List<String> out = new ArrayList<>();
        out.add("");
        long count = lessons.stream().mapToLong(l -> l.hard().size()).sum();
        out.add(count == 0 ? "No hard stretches." : "Hard stretches: " + count);
        for (LessonTime lesson : lessons) {
            if (!lesson.hard().isEmpty()) {
                out.add(lesson.name());
            }
            for (HardStretch stretch : lesson.hard()) {
                String what = stretch.kind() == HardStretch.Kind.UNKNOWN
                        ? stretch.kind().what()
                        : stretch.count() + " " + stretch.kind().what();
                out.add(String.format(
                        Locale.ROOT,
                        "  line %-3d %s: %s",
                        stretch.line(),
                        what,
                        Text.cut(stretch.words(), QUOTED - 10)));
            }
        }
        lessons.stream()
                .flatMap(l -> l.hard().stream())
                .map(HardStretch::kind)
                .distinct()
                .sorted()
                .forEach(kind -> out.add("To mend: " + kind.what() + ": " + kind.remedy() + "."));
        if (!vocabulary) {
            out.add("The recogniser could not be asked which words it knows.");
        }
        return out;
    }
}
