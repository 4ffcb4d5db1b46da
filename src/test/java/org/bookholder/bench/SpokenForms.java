package org.bookholder.bench;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.bookholder.problem.ProblemException;

/**
 * Measures how many of the ways to say what is written are allowed, and prints those that are not.
 *
 * <p>Arguments: names of lists in the test resources {@code spoken}.
 */
public final class SpokenForms {
    private SpokenForms() {}

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, ProblemException {
        for (String name : List.of(args)) {
            SpokenList list = SpokenList.read(name);
            int named = 0;
            int missed = 0;
            int whole = 0;
            int strange = 0;
            int understood = 0;
            for (SpokenList.Item item : list.items()) {
                List<String> missing = item.missed();
                named += item.forms().size();
                missed += missing.size();
                whole += missing.isEmpty() ? 1 : 0;
                List<String> unknown = item.strange();
                strange += unknown.size();
                understood += unknown.isEmpty() ? 1 : 0;
                missing.forEach(form -> System.out.println(
                        (unknown.contains(form) ? "" : "(understood) ") + item.written() + " => " + form));
            }
            int items = list.items().size();
            System.out.printf(
                    Locale.ROOT,
                    "%s: %d of %d forms (%.1f %%), %d of %d items whole (%.1f %%);"
                            + " with what is understood freely %.1f %% and %.1f %%%n",
                    name,
                    named - missed,
                    named,
                    100.0 * (named - missed) / named,
                    whole,
                    items,
                    100.0 * whole / items,
                    100.0 * (named - strange) / named,
                    100.0 * understood / items);
        }
    }
}
