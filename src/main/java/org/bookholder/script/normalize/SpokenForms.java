package org.bookholder.script.normalize;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * The ways to say something, the preferred one first; each is a sequence of words as spoken.
 *
 * <p>At most {@value #MOST} are kept, because combining many alternatives would grow without limit; the first ones are
 * the most likely.
 */
public record SpokenForms(List<List<String>> all) {
    static final int MOST = 60;

    /** No way to say it. */
    public static final SpokenForms NONE = new SpokenForms(List.of());

    /** One way: to say nothing. The neutral element of {@link #then(SpokenForms)}. */
    public static final SpokenForms SILENT = new SpokenForms(List.of(List.of()));

    public SpokenForms {
        all = List.copyOf(all);
    }

    /** Ways given as phrases; spaces and hyphens separate words. An empty phrase means silence. */
    public static SpokenForms of(String... phrases) {
        Set<List<String>> forms = new LinkedHashSet<>();
        for (String phrase : phrases) {
            forms.add(words(phrase));
        }
        return new SpokenForms(List.copyOf(forms));
    }

    private static List<String> words(String phrase) {
        List<String> words = new ArrayList<>();
        int start = 0;
        for (int i = 0; i <= phrase.length(); i++) {
            if (i == phrase.length() || phrase.charAt(i) == ' ' || phrase.charAt(i) == '-') {
                if (i > start) {
                    words.add(phrase.substring(start, i));
                }
                start = i + 1;
            }
        }
        return List.copyOf(words);
    }

    public boolean isEmpty() {
        return all.isEmpty();
    }

    public List<String> first() {
        return all.get(0);
    }

    /** These ways, then those of {@code other}. */
    SpokenForms or(SpokenForms other) {
        Set<List<String>> forms = new LinkedHashSet<>(all);
        forms.addAll(other.all);
        return new SpokenForms(forms.stream().limit(MOST).toList());
    }

    SpokenForms or(String... phrases) {
        return or(of(phrases));
    }

    /** These ways and {@code rare} ones, for which half of the places are kept at most. */
    SpokenForms besides(SpokenForms rare) {
        int places = Math.min(rare.all.size(), MOST / 2);
        return first(MOST - places).or(rare.first(places));
    }

    /** Each of these ways followed by each of {@code next}, more likely pairs first. */
    public SpokenForms then(SpokenForms next) {
        if (all.size() == 1 && next.all.size() == 1) {
            return new SpokenForms(List.of(join(first(), next.first())));
        }
        Set<List<String>> forms = new LinkedHashSet<>();
        for (int sum = 0; sum <= all.size() + next.all.size() - 2; sum++) {
            for (int i = Math.min(sum, all.size() - 1); i >= 0; i--) {
                int j = sum - i;
                if (j < next.all.size() && forms.size() < MOST) {
                    forms.add(join(all.get(i), next.all.get(j)));
                }
            }
        }
        return new SpokenForms(List.copyOf(forms));
    }

    public SpokenForms then(String... phrases) {
        return then(of(phrases));
    }

    /** The first {@code count} ways. */
    SpokenForms first(int count) {
        return new SpokenForms(all.stream().limit(count).toList());
    }

    /** The preferred way alone. */
    public SpokenForms preferred() {
        return isEmpty() ? this : new SpokenForms(List.of(first()));
    }

    /** Without the ways that say nothing. */
    public SpokenForms spoken() {
        return new SpokenForms(all.stream().filter(form -> !form.isEmpty()).toList());
    }

    private static List<String> join(List<String> a, List<String> b) {
        if (a.isEmpty()) {
            return b;
        }
        List<String> joined = new ArrayList<>(a.size() + b.size());
        joined.addAll(a);
        joined.addAll(b);
        return joined;
    }
}
