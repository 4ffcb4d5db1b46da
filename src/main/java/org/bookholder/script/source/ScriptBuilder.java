package org.bookholder.script.source;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.AgeingFact;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.script.model.ScriptSettings.LineBreaks;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.normalize.TextNormalizer;
import org.jspecify.annotations.Nullable;

/** Builds a script: takes in source lines and directions in order and numbers the resulting lines and paragraphs. */
final class ScriptBuilder {
    private final String source;
    private final LineBreaks lineBreaks;
    private final SentenceSplitter sentences;
    private final WordSplitter splitter;
    private final List<ScriptElement> elements = new ArrayList<>();
    private final List<AgeingFact> facts = new ArrayList<>();
    private final List<AgeingFact> factsOfThisLine = new ArrayList<>();
    private final List<LeftOut> leftOut = new ArrayList<>();
    private int paragraph;
    private int inParagraph;
    private int lines;
    private int spoken;
    private @Nullable String heading;
    private @Nullable ProblemException problem;

    ScriptBuilder(String source, ScriptSettings settings) {
        this.source = source;
        this.lineBreaks = settings.lineBreaks();
        this.sentences = new SentenceSplitter(settings.language());
        this.splitter = new WordSplitter(TextNormalizer.of(settings.language()));
    }

    /** Begins a new paragraph, unless the current one is still empty. */
    void paragraph() {
        if (inParagraph > 0) {
            paragraph++;
            inParagraph = 0;
        }
    }

    /** Takes one source line; each of its sentences becomes a line. */
    void line(MarkedSourceLine text, int sourceLine) {
        if (!mayTake(text.text(), sourceLine)) {
            return;
        }
        if (text.text().contains("](say:")) {
            problem("the spoken form in '" + brief(text.text()) + "' is not closed", sourceLine, "end it with )");
        }
        List<Integer> ends =
                lineBreaks == LineBreaks.AS_WRITTEN ? List.of(text.text().length()) : sentences.ends(text);
        List<List<ScriptWord>> found = new ArrayList<>();
        int start = 0;
        int lastStart = 0;
        for (int end : ends) {
            List<ScriptWord> words = splitter.split(text, start, end);
            if (!words.isEmpty()) {
                found.add(words);
                lastStart = start;
                start = end;
            } else if (!found.isEmpty()) {
                // characters after the last sentence belong to it
                found.set(found.size() - 1, splitter.split(text, lastStart, end));
                start = end;
            }
        }
        int before = lines;
        for (List<ScriptWord> words : found) {
            elements.add(new ScriptLine(++lines, words, paragraph, sourceLine));
            spoken += words.size();
            inParagraph++;
        }
        if (spoken > ScriptLimits.MOST_WORDS) {
            problem("the script is too long (over 60,000 words)", sourceLine, "split it into lessons");
        }
        placeFacts(before);
        if (found.isEmpty() && text.text().codePoints().anyMatch(c -> c > 0x2fff)) {
            direction(text.text(), sourceLine);
        } else if (found.isEmpty()) {
            leaveOut(text.text(), "it has nothing to say", sourceLine);
        }
    }

    /** Whether the script is still to be read on and {@code text} is not too long for it. */
    private boolean mayTake(String text, int sourceLine) {
        if (problem == null && ScriptLimits.hasEndlessWord(text)) {
            endlessWord(text, sourceLine);
        }
        return problem == null;
    }

    /** Notes that {@code text} has a word that is too long. */
    void endlessWord(String text, int sourceLine) {
        problem(
                "a word is too long (over 500 characters without a space): '" + brief(text) + "'",
                sourceLine,
                "put spaces between its words, or take it out");
    }

    /** Takes in a fact of the next source line that may become outdated. */
    void fact(String text, String due, int sourceLine) {
        try {
            LocalDate day = due.matches("\\d{4}-\\d{2}") ? YearMonth.parse(due).atDay(1) : LocalDate.parse(due);
            factsOfThisLine.add(new AgeingFact(MarkedSourceLine.plain(text).text(), day, 0));
        } catch (DateTimeException e) {
            problem(
                    "'" + brief(due) + "' is no day on which to check '" + brief(text) + "'",
                    sourceLine,
                    "write a month or a day, as in [$12](check:2027-03)");
        }
    }

    /** Assigns each fact to the first line after line {@code before} that contains it. */
    private void placeFacts(int before) {
        for (AgeingFact fact : factsOfThisLine) {
            int line = elements.stream()
                    .filter(ScriptLine.class::isInstance)
                    .map(ScriptLine.class::cast)
                    .filter(l -> l.number() > before && l.text().contains(fact.text()))
                    .mapToInt(ScriptLine::number)
                    .findFirst()
                    .orElse(Math.max(1, lines));
            facts.add(new AgeingFact(fact.text(), fact.due(), line));
        }
        factsOfThisLine.clear();
    }

    /** The facts that must be checked again some day. */
    List<AgeingFact> facts() {
        return facts;
    }

    /** Takes in text that is shown to the presenter but not spoken. */
    void direction(String text, int sourceLine) {
        direction(text, sourceLine, false);
    }

    private void direction(String text, int sourceLine, boolean ofPart) {
        String even = MarkedSourceLine.plain(text).text();
        if (mayTake(even, sourceLine) && !even.isEmpty()) {
            elements.add(new Direction(even, paragraph, sourceLine, ofPart));
            inParagraph++;
        }
    }

    /** Takes in a heading: the first may become the title if nothing is spoken before it; any other is a direction. */
    void heading(String text, int sourceLine, boolean titleWanted) {
        paragraph();
        if (heading == null && lines == 0 && titleWanted && !text.isBlank()) {
            heading = MarkedSourceLine.plain(text).text();
            if (heading.length() > ScriptLimits.LONGEST_TITLE) {
                problem("the title is too long (over 300 characters)", sourceLine, "shorten it");
            }
        } else {
            direction(text, sourceLine, true);
        }
        paragraph();
    }

    /** Notes that a piece of the file is neither spoken nor shown. */
    void leaveOut(String what, String why, int sourceLine) {
        String even = MarkedSourceLine.plain(what).text();
        if (!even.isEmpty()) {
            leftOut.add(new LeftOut(sourceLine, brief(even), why));
        }
    }

    /** What is neither spoken nor shown. */
    List<LeftOut> leftOut() {
        return leftOut;
    }

    /** Whether there is anything to say in {@code text}. */
    boolean says(String text) {
        return splitter.says(text);
    }

    /** Notes a problem that the author must fix; only the first one is reported. */
    void problem(String what, int sourceLine, String remedy) {
        if (problem == null) {
            problem = new ProblemException(what, source + ":" + sourceLine, remedy);
        }
    }

    /** The first heading, if it may be the title. */
    @Nullable String heading() {
        return heading;
    }

    /** The finished elements. */
    List<ScriptElement> finish() throws ProblemException {
        if (problem != null) {
            throw problem;
        }
        if (lines == 0) {
            boolean empty = elements.isEmpty() && heading == null;
            throw new ProblemException(
                    empty
                            ? "the script is empty"
                            : "nothing in the script is spoken, it holds only headings and directions",
                    source + ":1",
                    "write the words to be read as plain paragraphs");
        }
        return elements;
    }

    static String brief(String text) {
        return text.length() <= 40 ? text : text.substring(0, 39) + "\u2026";
    }
}
