package org.bookholder.course.prepare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.bookholder.course.prepare.HardStretch.Kind;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.script.pronounce.Vocabulary;

/** Finds what is hard to say in a script. */
public final class HardStretches {
    /** Readers took a breath after 18 syllables on average (17.95; 18 women reading a passage, JAKO 200804748556267, 2008). */
    public static final int BREATH_SYLLABLES = 18;

    /** Common practice in plain writing; from memory. */
    public static final int SENTENCE_WORDS = 25;

    private static final int NUMBERS = 3;
    private static final int ONSETS = 4;
    private static final int ALIKE = 3;
    private static final String BREATH = ",;:.!?\u2026\u2013\u2014)-";
    private static final String CLOSING = "\"'\u201d\u2019)";
    private static final Set<String> JOINING = Set.of("and", "or", "to", "by", "from", "of", "plus", "times", "minus");

    /** Short words that nobody stumbles over. */
    private static final Set<String> LIGHT = Set.of("""
        a an the of to in on at by for from with and or but so as if is are was were be it its i you he she we they
        my your his her our their this that these those not no do does did has have had will would can could up out
        there then than when what which who where\
        """.split("\\s+"));

    private final Script script;
    private final KnownSounds sounds;
    private final List<HardStretch> found = new ArrayList<>();

    private HardStretches(Script script, KnownSounds sounds) {
        this.script = script;
        this.sounds = sounds;
    }

    /**
     * The hard stretches of a script, in script order.
     *
     * @param vocabulary the recogniser's vocabulary; empty if there is no recogniser
     */
    public static List<HardStretch> in(Script script, Optional<Vocabulary> vocabulary) {
        return in(script, vocabulary, new KnownSounds());
    }

    private static List<HardStretch> in(Script script, Optional<Vocabulary> vocabulary, KnownSounds sounds) {
        HardStretches stretches = new HardStretches(script, sounds);
        script.lines().forEach(stretches::look);
        vocabulary.ifPresent(stretches::lookForUnknown);
        stretches.found.sort(Comparator.comparingInt(HardStretch::line));
        return List.copyOf(stretches.found);
    }

    /**
     * How many stretches of a script are hard to say, for each hundred words. Words that a recogniser does not know don't count.
     *
     * @param sounds those of the words of other scripts, to which this one's are added
     */
    public static double perHundredWords(Script script, KnownSounds sounds) {
        int words = script.spokenWords();
        return words == 0 ? 0 : 100.0 * in(script, Optional.empty(), sounds).size() / words;
    }

    private void look(ScriptLine line) {
        if (line.spokenWords() > SENTENCE_WORDS) {
            add(Kind.LONG, line, line.words(), line.spokenWords());
        }
        List<ScriptWord> breath = new ArrayList<>();
        for (ScriptWord word : line.words()) {
            breath.add(word);
            if (isBreathAfter(word.written())) {
                lookAtBreath(line, breath);
                breath.clear();
            }
        }
        lookAtBreath(line, breath);
        lookForNumbers(line);
    }

    /** Whether a mark ends the word behind which one may breathe, but for quotation marks and brackets that close behind it. */
    private static boolean isBreathAfter(String written) {
        int last = written.length() - 1;
        while (last >= 0 && BREATH.indexOf(written.charAt(last)) < 0 && CLOSING.indexOf(written.charAt(last)) >= 0) {
            last--;
        }
        return last >= 0 && BREATH.indexOf(written.charAt(last)) >= 0;
    }

    private void lookAtBreath(ScriptLine line, List<ScriptWord> breath) {
        int syllables = syllables(breath);
        if (syllables > BREATH_SYLLABLES) {
            add(Kind.BREATH, line, breath, syllables);
        }
        lookForOnsets(line, breath);
    }

    /** Finds three numbers with nothing but a joining word between them. */
    private void lookForNumbers(ScriptLine line) {
        List<ScriptWord> run = new ArrayList<>();
        int numbers = 0;
        for (ScriptWord word : line.words()) {
            boolean number = number(word);
            if (number) {
                numbers++;
                run.add(word);
            } else if (!run.isEmpty() && JOINING.contains(first(word)) && number(run.get(run.size() - 1))) {
                run.add(word);
            } else {
                addNumbers(line, run, numbers);
                run.clear();
                numbers = 0;
            }
        }
        addNumbers(line, run, numbers);
    }

    private void addNumbers(ScriptLine line, List<ScriptWord> run, int numbers) {
        if (numbers >= NUMBERS) {
            boolean joined = number(run.get(run.size() - 1));
            add(Kind.NUMBERS, line, joined ? run : run.subList(0, run.size() - 1), numbers);
        }
    }

    private static boolean number(ScriptWord word) {
        String written = word.written();
        for (int i = 0; i < written.length(); i++) {
            if (written.charAt(i) >= '0' && written.charAt(i) <= '9') {
                return true;
            }
        }
        return false;
    }

    /**
     * Finds four words in one breath that begin with the same sound, ignoring light words; three are enough if they
     * begin with two consonants or with a hissing sound, where s and sh count as the same ("she sells sea shells").
     * This is our own rule.
     */
    private void lookForOnsets(ScriptLine line, List<ScriptWord> breath) {
        List<ScriptWord> run = new ArrayList<>();
        String onset = "";
        for (ScriptWord word : breath) {
            if (LIGHT.contains(first(word))) {
                continue;
            }
            String own = number(word) ? "" : alike(sounds.onset(first(word)));
            if (!own.equals(onset)) {
                addOnsets(line, run, onset);
                run.clear();
                onset = own;
            }
            if (run.isEmpty() || !first(run.get(run.size() - 1)).equals(first(word))) {
                run.add(word);
            }
        }
        addOnsets(line, run, onset);
    }

    private void addOnsets(ScriptLine line, List<ScriptWord> run, String onset) {
        boolean heavy = onset.length() > 1 || onset.equals("s");
        if (!onset.isEmpty() && run.size() >= (heavy ? ALIKE : ONSETS)) {
            add(Kind.ONSETS, line, run, run.size());
        }
    }

    private static String alike(String onset) {
        return onset.equals("S") || onset.equals("z") ? "s" : onset;
    }

    private void lookForUnknown(Vocabulary vocabulary) {
        Set<String> told = new HashSet<>();
        ScriptPreparer.prepare(script, vocabulary).unknown().stream()
                // "kite's" is as easy as "kite"
                .filter(word -> !vocabulary.contains(word.spoken().replaceFirst("['\\u2019]s$", "")))
                .filter(word -> told.add(word.spoken()))
                .forEach(word -> found.add(new HardStretch(Kind.UNKNOWN, word.line(), word.spoken(), 1)));
    }

    private void add(Kind kind, ScriptLine line, List<ScriptWord> words, int count) {
        String text = words.stream().map(ScriptWord::written).collect(Collectors.joining(" "));
        found.add(new HardStretch(kind, line.number(), text, count));
    }

    private static String first(ScriptWord word) {
        return word.spoken().get(0).get(0);
    }

    private int syllables(List<ScriptWord> words) {
        int syllables = 0;
        for (ScriptWord word : words) {
            for (String spoken : word.spoken().get(0)) {
                syllables += sounds.syllables(spoken);
            }
        }
        return syllables;
    }
}
