package org.bookholder.app.film;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.bookholder.course.Text;
import org.bookholder.delivery.CheckText;
import org.bookholder.film.plan.FilmPlan;

/** Says to people what came of making a film. */
public final class FilmText {
    private FilmText() {}

    /** The film in one sentence. */
    public static String said(FilmResult result) {
        if (result.already()) {
            return result.made().file().getFileName() + " is this film already. Nothing has changed since it was made.";
        }
        return String.format(
                Locale.ROOT,
                "%s: %s, %s",
                result.made().file().getFileName(),
                Text.clock(result.made().seconds()),
                Text.count(result.plan().joins(), "join"));
    }

    /** The figures and what a person should know, one line each. */
    public static List<String> of(FilmResult result) {
        List<String> lines = new ArrayList<>();
        lines.add(String.format(
                Locale.ROOT,
                "Sound: %s, %.1f LUFS, true peak %.1f dBTP%s",
                soundSources(result.plan()),
                result.made().loudness().integrated(),
                result.made().loudness().truePeak(),
                result.made().held() ? ", loud peaks held down" : ""));
        lines.addAll(result.heard());
        if (!result.plan().missing().isEmpty()) {
            lines.add("A card stands for " + Text.lines(result.plan().missing()) + ": nothing to use yet");
        }
        lines.addAll(result.marked());
        lines.addAll(result.remarks());
        result.check().ifPresent(report -> lines.add("Checked: " + CheckText.verdict(report)));
        return lines;
    }

    static String soundSources(FilmPlan plan) {
        String sources = plan.clips().stream()
                .flatMap(clip -> clip.heard().stream())
                .map(heard -> heard.kind().label())
                .distinct()
                .collect(Collectors.joining(" and "));
        return sources.isEmpty() ? "none" : sources;
    }
}
