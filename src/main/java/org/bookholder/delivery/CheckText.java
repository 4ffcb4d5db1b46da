package org.bookholder.delivery;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.footage.Film;

/** A report as text for people. */
public final class CheckText {
    private static final String FLASHES =
            "flashing light looked for (WCAG 2.2, 2.3.1), but not stripes; this is a check, not a certificate";

    private CheckText() {}

    /** The report's lines, as a terminal shows them. */
    public static List<String> of(CheckReport report) {
        List<String> lines = new ArrayList<>();
        lines.add(report.film().name() + ": " + verdict(report));
        facts(report).forEach(fact -> lines.add("  " + fact));
        lines.add("  limits from the profile: " + report.profile()
                + "; where the usual ones are from: bookholder check --show-profile");
        for (Finding finding : report.findings()) {
            lines.add(String.format(
                    Locale.ROOT,
                    "  %-4s  %-9s  %-11s  %s",
                    of(finding.grade()),
                    time(finding),
                    finding.kind(),
                    finding.what()));
            lines.add(String.format(Locale.ROOT, "  %31s%s", "", finding.remedy()));
        }
        return lines;
    }

    /** What the film is and what it was checked against, line by line, without its profile. */
    public static List<String> facts(CheckReport report) {
        List<String> lines = new ArrayList<>();
        lines.add(facts(report.film()));
        report.loudness()
                .filter(l -> Double.isFinite(l.integrated()))
                .ifPresent(l -> lines.add(String.format(
                        Locale.ROOT,
                        "loudness %.1f LUFS, range %.1f LU, true peak %.1f dBTP (ITU-R BS.1770, EBU R 128)",
                        l.integrated(),
                        l.range(),
                        l.truePeak())));
        report.film().picture().ifPresent(picture -> lines.add(FLASHES));
        lines.add(report.script()
                .map(script -> "words checked against " + script)
                .orElse("words not checked: no script was read"));
        report.compared().ifPresent(compared -> lines.add(compared.fact()));
        return lines;
    }

    /** What to do about a finding, in a word. */
    public static String of(Grade grade) {
        return switch (grade) {
            case LOOK -> "look";
            case MEND -> "mend";
        };
    }

    /** The time of a finding; empty if it is about the whole film. */
    public static String time(Finding finding) {
        return finding.place().map(place -> Times.clock(place.start())).orElse("");
    }

    /** What must be fixed, one line each, with its time. */
    public static List<String> toMend(CheckReport report) {
        return report.findings().stream()
                .filter(finding -> finding.grade() == Grade.MEND)
                .map(finding -> finding.place()
                                .map(place -> Times.clock(place.start()) + "  ")
                                .orElse("")
                        + finding.what())
                .toList();
    }

    /** How many findings there are of each grade; "fine" if there are none. */
    public static String verdict(CheckReport report) {
        long mend = report.count(Grade.MEND);
        long look = report.count(Grade.LOOK);
        if (mend + look == 0) {
            return "fine";
        }
        String toMend = mend == 0 ? "" : mend + " to mend";
        String toLook = look == 0 ? "" : look + " to look at";
        return toMend + (mend > 0 && look > 0 ? ", " : "") + toLook;
    }

    private static String facts(Film film) {
        List<String> facts = new ArrayList<>();
        facts.add(film.container());
        facts.add(Times.clock(film.length()));
        facts.add(String.format(Locale.ROOT, "%.1f MB", film.bytes() / 1e6));
        film.picture()
                .ifPresent(p -> facts.add(p.codec() + " " + p.width() + "x" + p.height() + " at "
                        + p.rate().label()));
        film.sound().ifPresent(s -> facts.add(s.codec() + " " + s.rate() + " Hz, " + s.channels() + " ch"));
        return String.join(", ", facts);
    }
}
