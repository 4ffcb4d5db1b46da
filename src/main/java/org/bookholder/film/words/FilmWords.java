package org.bookholder.film.words;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.follow.model.Attempt;
import org.bookholder.handoff.captions.Chapter;
import org.bookholder.handoff.captions.FilmTexts;
import org.bookholder.handoff.captions.SaidWords;
import org.bookholder.handoff.captions.SpokenLine;
import org.bookholder.handoff.captions.TimedWord;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.timing.StreamTime;

/**
 * What is said in a film, and when.
 *
 * @param texts its captions, transcript and chapters
 */
public record FilmWords(FilmTexts texts) {
    /** The words of a film of a lesson. */
    public static FilmWords of(FilmPlan plan, Script script) {
        List<SpokenLine> lines = new ArrayList<>();
        for (FilmClip clip : plan.clips()) {
            for (Attempt attempt : clip.attempts()) {
                // An attempt that goes on in the next piece is told where it begins.
                if (!attempt.start().isBefore(clip.in()) || lines.isEmpty()) {
                    List<TimedWord> words = inFilm(plan, clip, script.lines().get(attempt.line() - 1), attempt);
                    if (!words.isEmpty()) {
                        lines.add(new SpokenLine(attempt.line(), words));
                    }
                }
            }
        }
        return new FilmWords(new FilmTexts(script, lines, plan.length()));
    }

    private static List<TimedWord> inFilm(FilmPlan plan, FilmClip clip, ScriptLine line, Attempt attempt) {
        StreamTime start = new StreamTime(plan.tickOf(clip.start()));
        return SaidWords.of(line.words(), attempt).stream()
                .map(word -> new TimedWord(
                        word.text(),
                        start.plus(word.start().since(clip.in())),
                        start.plus(word.end().since(clip.in()))))
                .toList();
    }

    /** The chapters in FFmpeg's own form of notes on a film; the title first. */
    public String notes(String title) {
        List<Chapter> chapters = texts.chapters();
        StringBuilder text = new StringBuilder(";FFMETADATA1\ntitle=" + escaped(title) + "\n");
        for (int i = 0; i < chapters.size(); i++) {
            StreamTime end = i + 1 < chapters.size() ? chapters.get(i + 1).start() : texts.length();
            text.append("[CHAPTER]\nTIMEBASE=1/1000\nSTART=")
                    .append(millis(chapters.get(i).start()))
                    .append("\nEND=")
                    .append(millis(end))
                    .append("\ntitle=")
                    .append(escaped(chapters.get(i).title()))
                    .append('\n');
        }
        return text.toString();
    }

    private static long millis(StreamTime time) {
        return time.ticks() * 1000 / StreamTime.TICKS_PER_SECOND;
    }

    private static String escaped(String text) {
        return text.replaceAll("([=;#\\\\])", "\\\\$1").replaceAll("\\R", " ");
    }
}
