package org.bookholder.follow.graph;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.model.ScriptSettings.Wording;
import org.bookholder.speech.RecognizedWord;

/**
 * A prepared script as a graph: its places lie between words and are connected by the recogniser's tokens.
 *
 * <p>Words are numbered through the whole script from 0. Place {@code w} (0 to {@link #words()}) lies before word
 * {@code w}; further places lie inside words whose forms have several tokens. Each form of a word is a chain of nodes
 * from the place before the word to the place after it; a node consumes one token.
 */
public final class ReadingGraph {
    /** About a third of the time per letter at a usual pace of 14 letters a second (figure from memory). */
    private static final double SECONDS_PER_LETTER = 0.025;

    /** The token id of a token that is not in the script. */
    static final int NO_TOKEN = -1;

    /** The token id of speech outside the grammar. */
    static final int UNKNOWN_TOKEN = 0;

    private final List<PreparedWord> prepared = new ArrayList<>();
    private final int[] lineOfWord;
    private final int[] firstWordOfLine;
    private final Map<String, Integer> tokenIds = new HashMap<>();
    private final List<String> texts = new ArrayList<>();
    private final IntList nodeToken = new IntList();
    private final IntList nodeWord = new IntList();
    private final IntList nodeAfter = new IntList();
    private final int[][] firstNodes;
    private final List<IntList> entries = new ArrayList<>();
    private final double[] surprise;
    private final boolean asWritten;

    public ReadingGraph(PreparedScript script) {
        firstWordOfLine = new int[script.lines().size() + 1];
        for (int line = 0; line < script.lines().size(); line++) {
            prepared.addAll(script.lines().get(line));
            firstWordOfLine[line + 1] = prepared.size();
        }
        lineOfWord = new int[prepared.size() + 1];
        for (int line = 0; line < script.lines().size(); line++) {
            Arrays.fill(lineOfWord, firstWordOfLine[line], firstWordOfLine[line + 1], line);
        }
        lineOfWord[prepared.size()] = script.lines().size();
        id(RecognizedWord.UNKNOWN);
        firstNodes = new int[prepared.size()][];
        for (int word = 0; word < prepared.size(); word++) {
            addWord(word);
        }
        surprise = surprise();
        asWritten = script.script().settings().contractions() == Wording.AS_WRITTEN;
    }

    private void addWord(int word) {
        List<List<String>> forms = prepared.get(word).forms();
        firstNodes[word] = new int[forms.size()];
        for (int form = 0; form < forms.size(); form++) {
            List<String> tokens = forms.get(form);
            firstNodes[word][form] = nodeToken.size();
            for (int i = 0; i < tokens.size(); i++) {
                int node = nodeToken.size();
                int token = id(tokens.get(i));
                nodeToken.add(token);
                nodeWord.add(word);
                nodeAfter.add(i + 1 == tokens.size() ? word + 1 : prepared.size() + 1 + node);
                if (i == 0) {
                    entries.get(token).add(node);
                }
            }
        }
    }

    private int id(String token) {
        return tokenIds.computeIfAbsent(token, t -> {
            entries.add(new IntList());
            texts.add(t);
            return tokenIds.size();
        });
    }

    private double[] surprise() {
        double[] count = new double[entries.size()];
        double total = 0;
        for (PreparedWord word : prepared) {
            for (String token : word.preferred()) {
                count[id(token)]++;
                total++;
            }
        }
        double[] result = new double[count.length];
        for (int token = 0; token < count.length; token++) {
            result[token] = -Math.log(Math.max(count[token], 0.5) / Math.max(total, 1));
        }
        return result;
    }

    /** Whether contractions, and words that could be contracted, must be read as written. */
    public boolean asWritten() {
        return asWritten;
    }

    /** How many words the script has. */
    public int words() {
        return prepared.size();
    }

    /** How many lines the script has. */
    public int lines() {
        return firstWordOfLine.length - 1;
    }

    public PreparedWord word(int word) {
        return prepared.get(word);
    }

    /** The line of a word, from 0; the number of lines for the place after the last word. */
    public int line(int word) {
        return lineOfWord[word];
    }

    /** The first word of a line; the number of words for the line after the last. */
    public int firstWord(int line) {
        return firstWordOfLine[line];
    }

    /** Whether the word begins a line; true for the place after the last word. */
    public boolean beginsLine(int word) {
        return firstWordOfLine[lineOfWord[word]] == word;
    }

    /** The shortest time in which a word can be said, in seconds. */
    public double shortest(int word) {
        return SECONDS_PER_LETTER
                * String.join("", word(word).word().spoken().get(0)).length();
    }

    /** Whether the recogniser cannot write anything that stands for this word. */
    public boolean unhearable(int word) {
        return firstNodes[word].length == 0;
    }

    /** The token's id, or {@link #NO_TOKEN}. */
    public int token(String text) {
        return tokenIds.getOrDefault(text, NO_TOKEN);
    }

    /** The word that is being read at a place, or will be read next. */
    public int wordAt(int place) {
        return place <= words() ? place : nodeWord.get(place - words() - 1);
    }

    /** Whether a place lies inside a word of several tokens. */
    public boolean insideWord(int place) {
        return place > words();
    }

    /** The nodes that can be consumed next from a place. */
    int[] nodesFrom(int place) {
        if (place < words()) {
            return firstNodes[place];
        }
        return insideWord(place) ? new int[] {place - words()} : new int[0];
    }

    /** What the recogniser writes for a node. */
    public String tokenText(int node) {
        return texts.get(nodeToken.get(node));
    }

    int tokenOf(int node) {
        return nodeToken.get(node);
    }

    public int wordOf(int node) {
        return nodeWord.get(node);
    }

    /** The place that is reached by consuming a node. */
    int after(int node) {
        return nodeAfter.get(node);
    }

    /** The nodes with this token that begin a form, in script order. */
    IntList entries(int token) {
        return entries.get(token);
    }

    /** How unexpected a token is in this script, in nats: the negative logarithm of its share of all tokens. */
    public double surprise(int token) {
        return token == NO_TOKEN ? Math.log(Math.max(2, 2.0 * words())) : surprise[token];
    }
}
