package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.bookholder.bench.DamagedJournal.Damage;
import org.bookholder.bench.DamagedJournal.Outcome;
import org.bookholder.problem.ProblemException;

/**
 * Damages journals in every way that {@link DamagedJournal} knows, repairs them, and prints how much of what was still whole in
 * their files came back.
 *
 * <p>Arguments: how many of each kind (default 200), the first seed (default 1), and the kinds of damage (default all).
 */
public final class DamagedJournals {
    private static final int DIFFERENT = 10;

    private DamagedJournals() {}

    /** Damages, repairs and prints. */
    public static void main(String[] args) throws IOException, ProblemException {
        int count = args.length > 0 ? Integer.parseInt(args[0]) : 200;
        long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
        Path folder = Files.createTempDirectory("damaged");
        List<KeptJournal> kept = new ArrayList<>();
        for (int i = 0; i < DIFFERENT; i++) {
            kept.add(KeptJournal.of(folder, seed + i));
        }
        System.out.printf(
                "%-12s %8s %10s %10s %10s %8s %8s %8s%n",
                "damage", "journals", "events", "whole", "back", "changed", "told", "refused");
        List<Damage> kinds = args.length > 2
                ? Arrays.stream(args).skip(2).map(Damage::valueOf).toList()
                : List.of(Damage.values());
        for (Damage damage : kinds) {
            Total total = new Total();
            for (int i = 0; i < count; i++) {
                DamagedJournal journal =
                        new DamagedJournal(kept.get(i % kept.size()), folder.resolve(damage + "-" + i), seed + i);
                total.add(seed + i, journal.repair(damage));
            }
            total.print(damage);
        }
    }

    /** The sums over many journals. */
    private static final class Total {
        private int journals;
        private long events;
        private long whole;
        private long back;
        private long changed;
        private long told;
        private int refused;

        void add(long seed, Outcome outcome) {
            journals++;
            events += outcome.events();
            whole += outcome.whole();
            back += outcome.back();
            changed += outcome.changed();
            told += outcome.told();
            refused += outcome.refused() ? 1 : 0;
            if (outcome.back() < outcome.whole() || outcome.told() < outcome.changed()) {
                System.out.println("seed " + seed + ": " + outcome);
            }
        }

        void print(Damage damage) {
            System.out.printf(
                    Locale.ROOT,
                    "%-12s %8d %10d %10d %10d %8d %8d %8d%n",
                    damage,
                    journals,
                    events,
                    whole,
                    back,
                    changed,
                    told,
                    refused);
        }
    }
}
