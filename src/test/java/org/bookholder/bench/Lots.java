package org.bookholder.bench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

/** Chooses at random what happens to which line. Lines count from 0. */
final class Lots {
    /** Words that a line must have to be broken off or changed. */
    private static final int LONG_ENOUGH = 6;

    /** In this order: the hardest to place come first. */
    private static final List<Happening> ORDER = List.of(
            Happening.BACK,
            Happening.SKIP,
            Happening.PARTIAL,
            Happening.SWAP,
            Happening.DROP,
            Happening.EXTRA,
            Happening.RESTART,
            Happening.AGAIN);

    private final List<Utterance> body;
    private final Happening[] plan;
    private final boolean[] reserved;
    private final Map<Integer, Integer> asides = new HashMap<>();
    private final Set<Integer> pauses = new HashSet<>();

    /**
     * Makes the choice.
     *
     * @param others how many utterances there are for asides
     */
    Lots(List<Utterance> body, Recipe recipe, int others, Random random) {
        this.body = body;
        plan = new Happening[body.size()];
        reserved = new boolean[body.size()];
        List<Integer> free = new ArrayList<>();
        // The first lines and the last are read well: a reading begins and ends somewhere.
        int spared = body.size() > 10 ? 2 : 0;
        for (int i = spared; i < body.size() - 1; i++) {
            free.add(i);
        }
        Collections.shuffle(free, random);
        for (Happening happening : ORDER) {
            for (int i = 0; i < recipe.happenings().getOrDefault(happening, 0); i++) {
                place(happening, free);
            }
        }
        List<Integer> places = new ArrayList<>();
        for (int i = 1; i < body.size() - 2; i++) {
            places.add(i);
        }
        Collections.shuffle(places, random);
        for (int i = 0; i < Math.min(recipe.asides(), others); i++) {
            asides.put(places.get(i), random.nextInt(others));
        }
        Collections.shuffle(places, random);
        pauses.addAll(places.subList(0, Math.min(places.size(), recipe.pauses())));
    }

    private void place(Happening happening, List<Integer> free) {
        for (Integer line : free) {
            if (fits(happening, line)) {
                plan[line] = happening;
                reserve(happening, line);
                free.remove(line);
                return;
            }
        }
        throw new IllegalArgumentException("no line is left for " + happening);
    }

    private boolean fits(Happening happening, int line) {
        Utterance said = body.get(line);
        if (reserved[line]
                || (happening.needsLength() && said.words() < LONG_ENOUGH)
                || (happening.altersScript() && !ScriptChanger.canChange(said.text()))) {
            return false;
        }
        return switch (happening) {
            case BACK -> line >= 3 && plan[line - 1] == null && plan[line - 2] == null;
            case SKIP, PARTIAL -> plan[line - 1] == null && plan[line + 1] == null;
            default -> true;
        };
    }

    /** With two gaps side by side, or a jump into a gap, the truth about a line would be ambiguous. */
    private void reserve(Happening happening, int line) {
        if (happening == Happening.BACK) {
            reserved[line - 1] = true;
            reserved[line - 2] = true;
        }
        if (happening == Happening.SKIP || happening == Happening.PARTIAL) {
            reserved[line - 1] = true;
            reserved[line + 1] = true;
        }
    }

    Happening of(int line) {
        return plan[line] == null ? Happening.NOTHING : plan[line];
    }

    /** Which of the other utterances is said after a line, if any. */
    Optional<Integer> asideAfter(int line) {
        return Optional.ofNullable(asides.get(line));
    }

    boolean pauseAfter(int line) {
        return pauses.contains(line);
    }
}
