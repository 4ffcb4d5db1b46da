package org.bookholder.script.source;

import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.AgeingFact;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.model.ScriptWord.Emphasis;
import org.bookholder.script.model.Speaker;
import org.bookholder.script.model.TakenBracket;
import org.bookholder.script.normalize.TextNormalizer;
import org.jspecify.annotations.Nullable;

/** Builds a script: takes in source lines and directions in order and numbers the resulting lines and paragraphs. */
final class ScriptBuilder {
    static final String EMPTY = "the script is empty";
    static final String ONLY_OUTLINE = "nothing in the script is spoken, it holds only headings and directions";

    private static final String UNSAID =
            "a formula that is shown but not listened for; write how you say it: [$...$](say:...)";

    private static final int MOST_LINES_OF_A_REMARK = 8;

    private final String source;
    private final WordSplitter splitter;
    private final LineSentences divided;
    private final List<ScriptElement> elements = new ArrayList<>();
    private final AgeingFacts facts = new AgeingFacts();
    private final CoverPlaces covers = new CoverPlaces();
    private final List<LeftOut> leftOut = new ArrayList<>();
    private final List<TakenBracket> taken = new ArrayList<>();
    private final SquareBrackets brackets;
    private final Speakers speakers;
    private final SpeakerParts parts;
    private final boolean english;
    /** Lines from a bracket on that is not closed yet. */
    private final List<SourceLine> open = new ArrayList<>();

    private int paragraph;
    private int inParagraph;
    private int lines;
    private int spoken;
    private @Nullable String heading;
    private @Nullable ProblemException problem;

    /**
     * An empty script.
     *
     * @param speakers those whose names stand before their lines; the lines of those who aren't wanted are directions
     * @param marks the marks of comments and notes
     */
    ScriptBuilder(String source, ScriptSettings settings, Speakers speakers, NoteMarks marks) {
        this.source = source;
        this.speakers = speakers;
        this.parts = new SpeakerParts(speakers);
        this.english = settings.english();
        this.splitter = new WordSplitter(TextNormalizer.of(settings.language()));
        this.divided = new LineSentences(settings, splitter);
        this.brackets = new SquareBrackets(marks);
    }

    /** Begins a new paragraph, unless the current one is still empty. */
    void paragraph() {
        release();
        endParagraph();
        parts.paragraph();
    }

    /** The same between two lines of one paragraph of the file: a remark in brackets goes on over it. */
    void lineOfItsOwn() {
        if (open.isEmpty()) {
            endParagraph();
        }
    }

    private void endParagraph() {
        if (inParagraph > 0) {
            paragraph++;
            inParagraph = 0;
        }
    }

    /** Takes one source line; each of its sentences becomes a line, and what is meant for the eyes a direction. */
    void line(MarkedSourceLine text, int sourceLine) {
        line(text, sourceLine, null);
    }

    /** The same for the first line of an item of a list. */
    void line(MarkedSourceLine text, int sourceLine, @Nullable ListMark mark) {
        text.dropped().forEach(symbol -> leftOut.add(new LeftOut(sourceLine, symbol, "a symbol that nobody says")));
        if (text.text().isEmpty() || !mayTake(text.text(), sourceLine)) {
            return;
        }
        if (text.text().contains("](say:")) {
            problem("the spoken form in '" + brief(text.text()) + "' is not closed", sourceLine, "end it with )");
        }
        SourceLine taken = new SourceLine(text, sourceLine, mark);
        if (open.isEmpty() && StageRemarks.openBracket(text) < 0) {
            take(taken);
            return;
        }
        open.add(taken);
        if (open.size() > 1 && text.text().indexOf(']') >= 0) {
            List<SourceLine> parts = SourceLine.closed(open);
            open.clear();
            parts.forEach(this::take);
        } else if (open.size() > MOST_LINES_OF_A_REMARK) {
            release();
        }
    }

    /** Takes the lines behind a bracket that was opened and is not closed: they are ordinary lines. */
    private void release() {
        List<SourceLine> held = List.copyOf(open);
        open.clear();
        held.forEach(this::take);
    }

    private void take(SourceLine source) {
        int at = source.number();
        MarkedSourceLine text = source.text();
        if (brackets.isNote(text.text())) {
            leaveOut(text.text(), "the text of a comment or a note", at);
            return;
        }
        if (lines == 0
                && !text.hasSaid()
                && ProductionCues.isSheet(text.plain())
                && speakers.at(text.plain()) == null) {
            addDirection(text.text(), at, false);
            return;
        }
        Speakers.@Nullable Label label = speakers.bracketedAt(text.plain());
        StageRemarks remarks;
        if (label != null) {
            remarks = StageRemarks.of(text.part(label.end(), text.text().length()), at, brackets);
        } else {
            remarks = StageRemarks.of(text, at, brackets);
            label = speakers.at(remarks.spoken().plain());
            remarks = label == null ? remarks : remarks.behind(label.end());
        }
        leftOut.addAll(remarks.leftOut());
        taken.addAll(remarks.brackets());
        if (label != null) {
            addDirection(parts.begin(label), at, false);
        }
        String spoken = remarks.spoken().text();
        parts.take(spoken, at).ifPresent(leftOut::add);
        if (parts.othersSpeak() || spoken.isEmpty()) {
            addDirection(spoken, at, false);
            remarks.remarks().forEach(remark -> addDirection(remark.text(), at, false));
        } else {
            sentences(remarks, source);
        }
    }

    /** Those who speak, in the order in which they first do. */
    List<Speaker> speakers() {
        return parts.speakers();
    }

    private void sentences(StageRemarks parts, SourceLine source) {
        MarkedSourceLine text = parts.spoken();
        List<StageRemarks.Remark> remarks = new ArrayList<>(parts.remarks());
        List<ScriptLine> added = new ArrayList<>();
        for (LineSentences.Sentence sentence : divided.in(text)) {
            while (!remarks.isEmpty() && remarks.get(0).at() < sentence.end()) {
                addDirection(remarks.remove(0).text(), source.number(), false);
            }
            List<ScriptWord> words = new ArrayList<>(sentence.words());
            if (source.mark() != null && added.isEmpty()) {
                words.set(0, source.mark().before(words.get(0), readings(source.mark())));
            }
            ScriptLine line = new ScriptLine(++lines, words, paragraph, source.number(), this.parts.speaker());
            elements.add(line);
            added.add(line);
            spoken += words.size();
            inParagraph++;
        }
        if (spoken > ScriptLimits.MOST_WORDS) {
            problem("the script is too long (over 60,000 words)", source.number(), "split it into lessons");
        }
        facts.place(added, lines);
        covers.settle(source.number(), added, this::words);
        List<String> unsaid = divided.unsaidFormulae(text);
        unsaid.forEach(formula -> leaveOut(formula, UNSAID, source.number()));
        if (added.isEmpty() && (!unsaid.isEmpty() || text.text().codePoints().anyMatch(c -> c > 0x2fff))) {
            addDirection(text.text(), source.number(), false);
        } else if (added.isEmpty()) {
            leaveOut(text.text(), "it has nothing to say", source.number());
        }
        remarks.forEach(remark -> addDirection(remark.text(), source.number(), false));
    }

    /** How the number before an item of a list may be read. */
    private List<List<String>> readings(ListMark mark) {
        if (mark.number() < 0) {
            return List.of();
        }
        List<List<String>> readings = new ArrayList<>(splitter.forms(String.valueOf(mark.number())));
        if (english) {
            readings.addAll(splitter.forms("#" + mark.number()));
            readings.addAll(splitter.forms(mark.number() + (mark.number() == 1 ? "st" : "th")));
        }
        return readings;
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

    /** Puts a word into a line whose author says how it is spoken. */
    void said(MarkedSourceLine.Builder line, String written, Emphasis emphasis, String said, int sourceLine) {
        if (ScriptLimits.hasEndlessWord(said)) {
            endlessWord(said, sourceLine);
        } else if (says(said)) {
            line.addSaid(written, emphasis, said);
        } else {
            problem(
                    "the spoken form of '" + brief(written) + "' is empty",
                    sourceLine,
                    "write what is said, as in [12](say:a dozen)");
        }
    }

    /** Takes in a fact of the next source line that may become outdated. */
    void fact(String text, String due, int sourceLine) {
        try {
            facts.add(text, due);
        } catch (DateTimeException e) {
            problem(
                    "'" + brief(due) + "' is no day on which to check '" + brief(text) + "'",
                    sourceLine,
                    "write a month or a day, as in [$12](check:2027-03)");
        }
    }

    /** The facts that must be checked again some day. */
    List<AgeingFact> facts() {
        return facts.all();
    }

    /**
     * Takes in a picture that is shown in the film from here on.
     *
     * @param before what stands before it on its source line
     */
    void cover(String file, String text, MarkedSourceLine before, int sourceLine) {
        covers.add(file, MarkedSourceLine.plain(text).text(), before, sourceLine);
    }

    private int words(MarkedSourceLine text) {
        MarkedSourceLine said = StageRemarks.of(text, 0, brackets).spoken();
        Speakers.@Nullable Label label = speakers.at(said.plain());
        return splitter.split(said, label == null ? 0 : label.end(), said.text().length())
                .size();
    }

    /** The pictures that are shown in the film over the voice. */
    List<Cover> covers() {
        return covers.covers();
    }

    /** Takes in text that is shown to the presenter but not spoken. */
    void direction(String text, int sourceLine) {
        release();
        addDirection(text, sourceLine, false);
    }

    private void addDirection(String text, int sourceLine, boolean ofPart) {
        String even = MarkedSourceLine.plain(text).text();
        if (mayTake(even, sourceLine) && !even.isEmpty()) {
            elements.add(new Direction(even, paragraph, sourceLine, ofPart));
            inParagraph++;
        }
    }

    /** Takes in a heading: the first may become the title if nothing is spoken before it; any other is a direction. */
    void heading(String text, int sourceLine, boolean titleWanted) {
        paragraph();
        parts.end();
        if (heading == null && lines == 0 && titleWanted && !text.isBlank()) {
            heading = MarkedSourceLine.plain(text).text();
            if (heading.length() > ScriptLimits.LONGEST_TITLE) {
                problem("the title is too long (over 300 characters)", sourceLine, "shorten it");
            }
        } else {
            addDirection(text, sourceLine, true);
        }
        endParagraph();
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

    /** How remarks in square brackets were taken. */
    List<TakenBracket> brackets() {
        return taken;
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
    Optional<String> heading() {
        return Optional.ofNullable(heading);
    }

    /** The finished elements. */
    List<ScriptElement> finish() throws ProblemException {
        release();
        List<String> missing = speakers.missing(parts.heard());
        if (problem == null && !missing.isEmpty()) {
            throw new ProblemException(
                    "nobody named '" + brief(missing.get(0)) + "' speaks in this script",
                    source,
                    parts.heard().isEmpty()
                            ? "put the name before each of the speaker's lines, as in HOST: Welcome"
                            : "name one of its speakers: "
                                    + speakers().stream().map(Speaker::name).collect(Collectors.joining(", ")));
        }
        if (problem != null) {
            throw problem;
        }
        if (lines == 0) {
            boolean empty = elements.isEmpty() && heading == null;
            throw new ProblemException(
                    empty ? EMPTY : ONLY_OUTLINE, source + ":1", "write the words to be read as plain paragraphs");
        }
        return elements;
    }

    static String brief(String text) {
        return text.length() <= 40 ? text : text.substring(0, 39) + "\u2026";
    }
}
