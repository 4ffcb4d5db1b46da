package org.bookholder.delivery;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.footage.Film;
import org.bookholder.sound.LoudnessReading;

/**
 * The result of checking an export.
 *
 * @param film the film's metadata
 * @param modified when the file was last changed
 * @param checked when the check ended
 * @param profile the name of the profile
 * @param script the script that its words were checked against, if any
 * @param compared how much of its sound was compared with takes, if its words were followed
 * @param loudness how loud it is, if it has sound
 * @param findings what was found
 */
public record CheckReport(
        Film film,
        Instant modified,
        Instant checked,
        String profile,
        Optional<String> script,
        Optional<ComparedSound> compared,
        Optional<LoudnessReading> loudness,
        List<Finding> findings) {
    /** Copies the list. */
    public CheckReport {
        findings = List.copyOf(findings);
    }

    /**
     * Makes the report of a film whose picture and sound were checked and, if there is a script, its words.
     *
     * @param others what was found by its words and its takes
     */
    public static CheckReport of(
            FilmCheck.Result result,
            Optional<String> script,
            Optional<ComparedSound> compared,
            List<Finding> others,
            Profile profile,
            Instant modified,
            Instant checked) {
        List<Finding> all = new ArrayList<>(result.findings());
        all.addAll(others);
        return new CheckReport(
                result.film(), modified, checked, profile.name(), script, compared, result.loudness(), all);
    }

    /** How many findings have a given grade. */
    public long count(Grade grade) {
        return findings.stream().filter(f -> f.grade() == grade).count();
    }

    /** The gravest grade of all findings; empty if there are no findings. */
    public Optional<Grade> gravest() {
        return findings.stream().map(Finding::grade).max(Comparator.naturalOrder());
    }
}
