package org.bookholder.view;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.fatigue.AdviceFigures;
import org.bookholder.fatigue.BreakAdvice;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.fatigue.FatigueLimits.Limit;
import org.bookholder.fatigue.FatigueReport;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.pace.PaceReading;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptElement;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.model.ScriptWord.Emphasis;
import org.bookholder.session.Following;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Lines;
import org.bookholder.session.Measures;
import org.bookholder.session.Mover;
import org.bookholder.session.SessionState;
import org.bookholder.session.Sound;
import org.bookholder.session.Take;
import org.bookholder.session.Takes;
import org.bookholder.session.Trouble;
import org.bookholder.session.Troubles;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;

/** A session state made by hand for pictures; each {@code with} gives another. */
public record SampleState(
        Script script,
        ReadingPosition position,
        Mover mover,
        FollowState follow,
        boolean rolling,
        boolean held,
        double live,
        Urgency urgency,
        List<LineNotes> lines,
        Troubles troubles,
        Sound sound) {
    private static final Sound USUAL_SOUND = new Sound(-24, -9, 0, StreamTime.ZERO);

    /** A lesson of two paragraphs and a direction, read up to its eighth line, on pace. */
    public static SampleState lesson() {
        Script script = lessonScript();
        List<LineNotes> clean = script.lines().stream()
                .map(l -> notes(l.number(), l.number() < 5 ? Outcome.CLEAN : Outcome.SKIPPED, l.number() < 5))
                .toList();
        return new SampleState(
                script,
                new ReadingPosition(5, 4),
                Mover.VOICE,
                FollowState.FOLLOWING,
                true,
                false,
                101,
                Urgency.NONE,
                clean,
                Troubles.NONE,
                USUAL_SOUND);
    }

    /** The same of another script, at its start. */
    public static SampleState of(Script script) {
        List<LineNotes> unread = script.lines().stream()
                .map(l -> notes(l.number(), Outcome.SKIPPED, false))
                .toList();
        return lesson().with(script, unread).at(1, 1);
    }

    public SampleState at(int line, int word) {
        return new SampleState(
                script,
                new ReadingPosition(line, word),
                mover,
                follow,
                rolling,
                held,
                live,
                urgency,
                lines,
                troubles,
                sound);
    }

    public SampleState movedBy(Mover value) {
        return new SampleState(script, position, value, follow, rolling, held, live, urgency, lines, troubles, sound);
    }

    public SampleState follow(FollowState value) {
        return new SampleState(script, position, mover, value, rolling, held, live, urgency, lines, troubles, sound);
    }

    public SampleState rolling(boolean value) {
        return new SampleState(script, position, mover, follow, value, held, live, urgency, lines, troubles, sound);
    }

    public SampleState held(boolean value) {
        return new SampleState(script, position, mover, follow, rolling, value, live, urgency, lines, troubles, sound);
    }

    public SampleState live(double value) {
        return new SampleState(script, position, mover, follow, rolling, held, value, urgency, lines, troubles, sound);
    }

    public SampleState urgency(Urgency value) {
        return new SampleState(script, position, mover, follow, rolling, held, live, value, lines, troubles, sound);
    }

    public SampleState trouble(Trouble value) {
        return new SampleState(
                script, position, mover, follow, rolling, held, live, urgency, lines, Troubles.NONE.with(value), sound);
    }

    /** The same with a peak in dBFS and clipped samples up to now. */
    public SampleState sounding(double peak, long clipped) {
        Sound other = new Sound(peak - 15, peak, clipped, StreamTime.ZERO);
        return new SampleState(script, position, mover, follow, rolling, held, live, urgency, lines, troubles, other);
    }

    /** The same with another outcome of one line. */
    public SampleState outcome(int line, Outcome outcome, Deviation... deviations) {
        List<LineNotes> changed = new ArrayList<>(lines);
        changed.set(line - 1, notes(line, outcome, true, deviations));
        return new SampleState(script, position, mover, follow, rolling, held, live, urgency, changed, troubles, sound);
    }

    /** The same with one more attempt at a line, which decides its outcome. */
    public SampleState secondAttempt(int line, Outcome outcome, Deviation... deviations) {
        LineNotes fresh = notes(line, outcome, true, deviations);
        List<Attempt> attempts = new ArrayList<>(lines.get(line - 1).attempts());
        attempts.addAll(fresh.attempts());
        List<LineNotes> changed = new ArrayList<>(lines);
        changed.set(
                line - 1,
                new LineNotes(
                        line, outcome, true, attempts, fresh.best(), List.of(), Optional.empty(), Optional.empty()));
        return new SampleState(script, position, mover, follow, rolling, held, live, urgency, changed, troubles, sound);
    }

    /** As long as the program's own limits ask for this urgency. */
    private Duration sinceBreak() {
        return Duration.ofMinutes(
                switch (urgency) {
                    case NONE -> 20;
                    case COMING -> 28;
                    case DUE -> 36;
                    case OVERDUE -> 46;
                });
    }

    public SessionState state() {
        Take take = new Take(2, StreamTime.ofSeconds(60), StreamTime.ofSeconds(254), Instant.EPOCH, "microphone");
        Duration read = sinceBreak();
        Limit voice = FatigueLimits.defaults().voice();
        BreakAdvice advice = new BreakAdvice(
                BreakAdvice.Reason.VOICE, urgency, voice.due().minus(read), new AdviceFigures.Clock(read, voice, true));
        FatigueReport fatigue =
                new FatigueReport(read, read.plusMinutes(9), read.plusMinutes(9), read, 1, 1, List.of(advice));
        return new SessionState(
                script,
                StreamTime.ofSeconds(254),
                Takes.of(List.of(take), rolling, held ? Optional.of(StreamTime.ofSeconds(250)) : Optional.empty()),
                new Following(position, mover, follow),
                Lines.of(lines),
                new Measures(
                        new PaceReading(live, 99, 140, StreamTime.ofSeconds(400), StreamTime.ofSeconds(131)),
                        fatigue,
                        sound),
                troubles);
    }

    /** A lesson for pictures: two paragraphs, a direction, a number, a stressed word. */
    public static Script lessonScript() {
        List<ScriptElement> elements = new ArrayList<>();
        line(elements, 0, "A loaf begins with four things: flour, water, salt, and time.");
        line(elements, 0, "Weigh the flour first, and tare the bowl before the water goes in.");
        line(elements, 0, "For one loaf take 500 grams of flour and 350 of water.");
        line(elements, 0, "That is a wet dough, and it will stick to your hands.");
        line(elements, 0, "Do *not* add flour to stop it; wet your fingers instead.");
        elements.add(new Direction("Turn the bowl to the lens, then fold the dough once.", 1, 6));
        line(elements, 2, "Fold from the far edge to the near one, and turn the bowl a quarter.");
        line(elements, 2, "Four folds make one round.");
        line(elements, 2, "Rest it for 30 minutes under a damp cloth, and do it again.");
        line(elements, 3, "By the third round the dough holds its shape.");
        line(elements, 3, "Press it with a wet finger, and it springs back slowly.");
        return new Script(
                "Your first loaf",
                "first-loaf.md",
                new ScriptSettings(100, "en-US", ScriptSettings.LineBreaks.SENTENCES, ScriptSettings.Wording.FREE),
                elements);
    }

    static LineNotes notes(int line, Outcome outcome, boolean reached, Deviation... deviations) {
        boolean complete = outcome == Outcome.CLEAN || outcome == Outcome.MISREAD;
        Attempt attempt = new Attempt(
                2,
                line,
                line,
                StreamTime.ofSeconds(60 + line),
                StreamTime.ofSeconds(61 + line),
                complete,
                List.of(),
                List.of(deviations));
        List<Attempt> attempts = outcome == Outcome.SKIPPED ? List.of() : List.of(attempt);
        Optional<Attempt> best = complete ? Optional.of(attempt) : Optional.empty();
        return new LineNotes(line, outcome, reached, attempts, best, List.of(), Optional.empty(), Optional.empty());
    }

    private SampleState with(Script other, List<LineNotes> notes) {
        return new SampleState(other, position, mover, follow, rolling, held, live, urgency, notes, troubles, sound);
    }

    private static void line(List<ScriptElement> elements, int paragraph, String text) {
        int number =
                1 + (int) elements.stream().filter(ScriptLine.class::isInstance).count();
        List<ScriptWord> words = new ArrayList<>();
        for (String written : text.split(" ", -1)) {
            boolean stressed = written.startsWith("*");
            ScriptWord plain = Scripts.word(written.replace("*", ""));
            words.add(new ScriptWord(plain.written(), plain.spoken(), stressed ? Emphasis.LIGHT : Emphasis.NONE));
        }
        elements.add(new ScriptLine(number, words, paragraph, elements.size() + 1));
    }
}
