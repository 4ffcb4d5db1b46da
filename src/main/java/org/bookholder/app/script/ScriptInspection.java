package org.bookholder.app.script;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.session.CourseHabits;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.course.prepare.HardStretch;
import org.bookholder.course.prepare.HardStretches;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.PreparedScript.UnknownWord;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.Speaker;
import org.bookholder.script.model.TakenBracket;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.script.pronounce.Vocabulary;
import org.bookholder.script.source.ConvertedDocument;
import org.bookholder.script.source.ExplainedScript;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.script.source.SpeakerChoice;

/**
 * How a text is taken as a script: what is spoken, what is a direction, what is left out, and what in it is hard to say or to hear.
 *
 * @param script the lines and directions
 * @param leftOut what is neither spoken nor shown
 * @param brackets how remarks in square brackets were taken
 * @param unknown the words that the recogniser does not know; empty if there is none to ask
 * @param wordsChecked whether there was a recogniser to ask
 * @param unheard what to say because no model hears the script's language; empty if one does
 * @param speakers those whose names stand before lines
 * @param hard what is hard to say, other than unknown words
 * @param sayings how numbers and the like are said in the script's course
 */
public record ScriptInspection(
        Script script,
        List<LeftOut> leftOut,
        List<TakenBracket> brackets,
        List<UnknownWord> unknown,
        boolean wordsChecked,
        Optional<String> unheard,
        List<Speaker> speakers,
        List<HardStretch> hard,
        List<CourseHabits.Saying> sayings) {
    /** Copies the lists. */
    public ScriptInspection {
        leftOut = List.copyOf(leftOut);
        brackets = List.copyOf(brackets);
        unknown = List.copyOf(unknown);
        speakers = List.copyOf(speakers);
        hard = List.copyOf(hard);
        sayings = List.copyOf(sayings);
    }

    /**
     * Inspects a script's file.
     *
     * @throws ProblemException if it can't be read
     */
    public static ScriptInspection of(Path file, KnownWords words) throws ProblemException {
        return of(file, List.of(), words);
    }

    /** The same with those whose lines are read; nobody is named if the script's own setting counts. */
    public static ScriptInspection of(Path file, List<String> speakers, KnownWords words) throws ProblemException {
        ConvertedDocument document = ScriptReader.convert(file);
        return of(SpeakerChoice.in(document.text(), speakers), file.toString(), words)
                .alsoLeavingOut(document.leftOut());
    }

    /** The same of a document of which this is left out, too. */
    public ScriptInspection alsoLeavingOut(List<LeftOut> before) {
        List<LeftOut> all = new ArrayList<>(before);
        all.addAll(leftOut);
        return new ScriptInspection(script, all, brackets, unknown, wordsChecked, unheard, speakers, hard, sayings);
    }

    /** The same with the pace at which it is to be read. */
    public ScriptInspection aimed(TargetPaces paces) {
        return with(paces.aimed(script, Path.of(script.source())), sayings);
    }

    /** The same with those forms first in which things are said in the script's course. */
    public ScriptInspection said(CourseHabits.Known known) {
        return with(known.habits().in(script), known.sayings());
    }

    /** The pictures and clips that it asks for and that cannot be shown, in order. */
    public List<AuthorPicture.Missing> missingPictures() {
        return AuthorPicture.missing(script);
    }

    private ScriptInspection with(Script changed, List<CourseHabits.Saying> known) {
        return new ScriptInspection(changed, leftOut, brackets, unknown, wordsChecked, unheard, speakers, hard, known);
    }

    /**
     * Inspects a text.
     *
     * @param source the name of its file, which says how it is marked up
     * @throws ProblemException if something in it must be mended before it can be read
     */
    public static ScriptInspection of(String text, String source, KnownWords words) throws ProblemException {
        ExplainedScript read = ScriptReader.explain(text, source, Format.of(source));
        boolean english = read.script().settings().english();
        Optional<String> unheard = words.missing(read.script());
        return words.use(vocabulary -> of(read, vocabulary.filter(any -> english), unheard));
    }

    private static ScriptInspection of(
            ExplainedScript read, Optional<Vocabulary> vocabulary, Optional<String> unheard) {
        return new ScriptInspection(
                read.script(),
                read.leftOut(),
                read.brackets(),
                vocabulary.isEmpty()
                        ? List.of()
                        : ScriptPreparer.prepare(read.script(), vocabulary.get())
                                .unknown(),
                vocabulary.isPresent(),
                unheard,
                read.speakers(),
                HardStretches.in(read.script(), Optional.empty()),
                List.of());
    }
}
