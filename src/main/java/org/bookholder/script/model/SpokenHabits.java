package org.bookholder.script.model;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * How the author of a course says what can be said in several ways, "kilos" for kg: what they chose for the course, and what they said before
 * at least {@value #OFTEN} times and more often than anything else. A habit reaches from one word to others by what it puts in place of the
 * preferred form ("kilograms" becomes "kilos"), but only to forms that are allowed there anyway. It makes a form the preferred one and
 * forbids none; only a choice for the very word may add one.
 *
 * @param chosen forms that were chosen for the course, by the written word as {@link #key} gives it
 * @param heard what was said in the course's sessions
 */
public record SpokenHabits(Map<String, String> chosen, List<SpokenHabit> heard) {
    /** No habits. */
    public static final SpokenHabits NONE = new SpokenHabits(Map.of(), List.of());

    /** How often something must have been said to be a habit. */
    public static final int OFTEN = 2;

    /** Copies both. */
    public SpokenHabits {
        chosen = Collections.unmodifiableMap(new LinkedHashMap<>(chosen));
        heard = List.copyOf(heard);
    }

    private static final int LONGEST_FORM = 200;

    /**
     * What a habit puts in place of words of the preferred form.
     *
     * @param usual words of the preferred form, at least one
     * @param said what is said in their place; may be nothing
     */
    private record Change(List<String> usual, List<String> said) {
        /** The difference of two forms; empty if there is none. */
        static Optional<Change> between(List<String> usual, List<String> said) {
            int from = 0;
            while (from < usual.size() && from < said.size() && usual.get(from).equals(said.get(from))) {
                from++;
            }
            int to = 0;
            while (to < Math.min(usual.size(), said.size()) - from
                    && usual.get(usual.size() - 1 - to).equals(said.get(said.size() - 1 - to))) {
                to++;
            }
            if (from + to == usual.size()) {
                if (usual.size() == said.size()) {
                    return Optional.empty();
                }
                // What is only added is known by the word before it.
                from = Math.max(0, from - 1);
            }
            return Optional.of(
                    new Change(usual.subList(from, usual.size() - to), said.subList(from, said.size() - to)));
        }

        /** The form with this change; empty if there is nothing to change in it. */
        Optional<List<String>> in(List<String> form) {
            int at = usual.isEmpty() ? -1 : Collections.indexOfSubList(form, usual);
            if (at < 0) {
                return Optional.empty();
            }
            List<String> changed = new ArrayList<>(form.subList(0, at));
            changed.addAll(said);
            changed.addAll(form.subList(at + usual.size(), form.size()));
            return Optional.of(changed);
        }
    }

    /** A written word as habits know it: without the punctuation around it, in lower case. */
    public static String key(ScriptWord word) {
        return word.plain().toLowerCase(Locale.ROOT);
    }

    /** A form as words in lower case with single spaces between them; empty if it can't be said, as with digits or signs in it. */
    public static Optional<String> form(String text) {
        String words =
                text.strip().toLowerCase(Locale.ROOT).replace('\u2019', '\'').replaceAll("[\\s-]+", " ");
        boolean isSaid = words.matches("['\\p{L}\\p{M}]+(?: ['\\p{L}\\p{M}]+)*") && words.length() <= LONGEST_FORM;
        return isSaid ? Optional.of(words) : Optional.empty();
    }

    /** A script whose words have the forms first that this author uses. */
    public Script in(Script script) {
        List<ScriptElement> elements = new ArrayList<>();
        for (ScriptElement element : script.elements()) {
            elements.add(
                    element instanceof ScriptLine line
                            ? new ScriptLine(
                                    line.number(),
                                    line.words().stream().map(this::of).toList(),
                                    line.paragraph(),
                                    line.sourceLine(),
                                    line.speaker())
                            : element);
        }
        return new Script(
                script.title(), script.source(), script.settings(), elements, script.facts(), script.covers());
    }

    /** The word with the form that this author uses first. */
    public ScriptWord of(ScriptWord word) {
        String own = chosen.get(key(word));
        if (own != null) {
            return first(word, words(own));
        }
        if (!word.hasChoice() || (chosen.isEmpty() && heard.isEmpty())) {
            return word;
        }
        Optional<List<String>> same = mostSaid(key(word)).filter(word.spoken()::contains);
        return same.isPresent() ? first(word, same.get()) : changed(word);
    }

    /** What this author said for the very word, often enough; empty if nothing. */
    private Optional<List<String>> mostSaid(String key) {
        List<SpokenHabit> own =
                heard.stream().filter(habit -> habit.written().equals(key)).toList();
        int all = own.stream().mapToInt(SpokenHabit::times).sum();
        return own.stream()
                .filter(habit -> habit.times() >= OFTEN && 2 * habit.times() > all)
                .findFirst()
                .map(habit -> words(habit.said()));
    }

    /** Applies what is said for other words. */
    private ScriptWord changed(ScriptWord word) {
        List<String> form = word.spoken().get(0);
        for (Change change : changes(word)) {
            form = change.in(form).filter(word.spoken()::contains).orElse(form);
        }
        return first(word, form);
    }

    /** The changes that concern a word, those that were chosen first. */
    private List<Change> changes(ScriptWord word) {
        List<Change> changes = new ArrayList<>();
        Map<Change, Integer> votes = new LinkedHashMap<>();
        for (SpokenHabit habit : heard) {
            Change.between(words(habit.usual()), words(habit.said()))
                    .filter(change -> change.in(word.spoken().get(0)).isPresent())
                    .ifPresent(change -> votes.merge(change, habit.times(), Integer::sum));
        }
        votes.forEach((change, times) -> {
            if (times >= OFTEN && 2 * times > opportunities(change)) {
                changes.add(change);
            }
        });
        return changes;
    }

    /** How often the words were to be said that a change replaces. */
    private int opportunities(Change change) {
        return heard.stream()
                .filter(habit -> change.in(words(habit.usual())).isPresent())
                .mapToInt(SpokenHabit::times)
                .sum();
    }

    private static ScriptWord first(ScriptWord word, List<String> form) {
        if (word.spoken().get(0).equals(form)) {
            return word;
        }
        List<List<String>> forms = new ArrayList<>();
        forms.add(form);
        word.spoken().stream().filter(other -> !other.equals(form)).forEach(forms::add);
        return new ScriptWord(word.written(), forms, word.emphasis());
    }

    private static List<String> words(String form) {
        return List.of(form.split(" ", -1));
    }
}
