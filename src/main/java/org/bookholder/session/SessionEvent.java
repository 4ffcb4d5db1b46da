package org.bookholder.session;

import java.time.Instant;
import java.util.List;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.model.UnjudgedStretch;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.PaceSource;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.script.source.RecordedLines;
import org.bookholder.timing.StreamTime;

/**
 * Something that happened in a session. Everything that is shown or saved is derived from the events in order.
 *
 * <p>Times are positions in the session's audio. The machine's clock appears only as {@code when} in the events that
 * relate that audio to the time of day.
 */
public sealed interface SessionEvent {
    /** How much of the session's audio had been captured. */
    StreamTime at();

    /** Calls the handler's method for this event. */
    void to(SessionEventHandler handler);

    /**
     * The session began, or was opened again.
     *
     * @param at audio captured so far
     * @param when time of day
     * @param title the lesson's title
     * @param source the script's file, as given
     * @param scriptText the script's text, so that the session can be read without the file
     * @param lines into which lines it was divided, which a later version of the program may do in another way
     */
    record Opened(StreamTime at, Instant when, String title, String source, String scriptText, RecordedLines lines)
            implements SessionEvent {
        /** As earlier versions stored it: the text is divided as it is today. */
        public Opened(StreamTime at, Instant when, String title, String source, String scriptText) {
            this(at, when, title, source, scriptText, RecordedLines.UNKNOWN);
        }

        /** The opening of a session with a script. */
        public static Opened of(StreamTime at, Instant when, Script script, String scriptText) {
            return new Opened(at, when, script.title(), script.source(), scriptText, RecordedLines.of(script));
        }

        /**
         * The script with the lines that were read.
         *
         * @throws ProblemException if this version cannot read the text
         */
        public Script script() throws ProblemException {
            return lines.parse(scriptText, source);
        }

        @Override
        public void to(SessionEventHandler handler) {
            handler.opened(this);
        }
    }

    /**
     * The presenter has read in other sessions of the day before this one began or went on.
     *
     * @param at audio captured so far
     * @param day what was read on the day; it replaces what this session has counted
     */
    record DayCarried(StreamTime at, DaySoFar day) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.dayCarried(this);
        }
    }

    /** The pace, in words per minute, at which a script is to be read that sets none itself, and who says so. */
    record PaceAimed(StreamTime at, int pace, PaceSource source) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.paceAimed(this);
        }
    }

    /**
     * The script's text changed; lines with the same words keep their notes.
     *
     * @param at audio captured so far
     * @param scriptText the new text, in the same markup and from the same source as before
     * @param lines into which lines it was divided
     */
    record TextChanged(StreamTime at, String scriptText, RecordedLines lines) implements SessionEvent {
        /** As earlier versions stored it: the text is divided as it is today. */
        public TextChanged(StreamTime at, String scriptText) {
            this(at, scriptText, RecordedLines.UNKNOWN);
        }

        /** A change to the text of {@code script}. */
        public static TextChanged to(StreamTime at, Script script, String scriptText) {
            return new TextChanged(at, scriptText, RecordedLines.of(script));
        }

        /**
         * The new script with the lines that were read.
         *
         * @param source where the session's script came from
         * @throws ProblemException if this version cannot read the text
         */
        public Script script(String source) throws ProblemException {
            return lines.parse(scriptText, source);
        }

        /** The new script; its text can be read, because only a valid one becomes an event. What others aim at stays. */
        Script script(Script before) {
            ScriptSettings then = before.settings();
            try {
                Script now = script(before.source());
                return now.with(now.settings().aimed(then.targetPace(), then.paceSource()));
            } catch (ProblemException e) {
                throw new IllegalArgumentException("scriptText must be a script's: " + e.getMessage(), e);
            }
        }

        @Override
        public void to(SessionEventHandler handler) {
            handler.textChanged(this);
        }
    }

    /**
     * A take started.
     *
     * @param at audio captured so far: where the take's audio begins
     * @param take take number, from 1
     * @param when time of day of its first sample
     * @param audio name of the microphone or file; empty if there is none
     * @param from where reading begins
     */
    record TakeStarted(StreamTime at, int take, Instant when, String audio, ReadingPosition from)
            implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.takeStarted(this);
        }
    }

    /** A take ended; {@code when} is the time of day. */
    record TakeEnded(StreamTime at, int take, Instant when, TakeEnd reason) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.takeEnded(this);
        }
    }

    /**
     * The reading position changed.
     *
     * @param at audio captured
     * @param position the next word to read
     * @param mover who or what moved it
     * @param wordsRead number of spoken words read to get there, 0 for a jump or a step back
     */
    record PositionMoved(StreamTime at, ReadingPosition position, Mover mover, int wordsRead) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.positionMoved(this);
        }
    }

    /** The follower became more or less certain of its position. */
    record FollowChanged(StreamTime at, FollowState state) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.followChanged(this);
        }
    }

    /** An attempt was settled, or an earlier one with the same take and ordinal was corrected. */
    record AttemptSettled(StreamTime at, Attempt attempt) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.attemptSettled(this);
        }
    }

    /** The asides of a running take so far; they replace those of the take that were known before. */
    record AsidesHeard(StreamTime at, int take, List<Aside> asides) implements SessionEvent {
        /** Copies the list. */
        public AsidesHeard {
            asides = List.copyOf(asides);
        }

        @Override
        public void to(SessionEventHandler handler) {
            handler.asidesHeard(this);
        }
    }

    /** The final result for a whole take; it replaces everything settled in the take before. */
    record TakeSettled(StreamTime at, int take, List<Attempt> attempts, List<Aside> asides) implements SessionEvent {
        /** Copies the lists. */
        public TakeSettled {
            attempts = List.copyOf(attempts);
            asides = List.copyOf(asides);
        }

        @Override
        public void to(SessionEventHandler handler) {
            handler.takeSettled(this);
        }
    }

    /**
     * The program failed to judge a stretch of a take; following and recording went on.
     *
     * @param at audio captured
     * @param stretch the part that is not judged
     * @param log what went wrong, with the input needed to reproduce it
     */
    record NotJudged(StreamTime at, UnjudgedStretch stretch, String log) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.notJudged(this);
        }
    }

    /**
     * Speech recognition understands this reader badly, or well again.
     *
     * @param at audio captured
     * @param badly whether so few words are understood that single misread words can't be told
     * @param share the share of the words read that were heard as written, 0 to 1
     */
    record Understood(StreamTime at, boolean badly, double share) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.understood(this);
        }
    }

    /** Someone marked a line as a pickup by hand, or its sound was found to be unusable. */
    record PickupMarked(StreamTime at, int line, String note) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.pickupMarked(this);
        }
    }

    /**
     * The sound of the last second.
     *
     * @param at audio captured
     * @param rms root mean square in dBFS (a full-scale square wave is 0), -120 for digital silence
     * @param peak highest sample in dBFS, likewise
     * @param clipped number of samples at full scale in runs of three or more
     */
    record SoundMeasured(StreamTime at, double rms, double peak, int clipped) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.soundMeasured(this);
        }
    }

    /** Audio was lost during capture; the gap is filled with silence. */
    record SamplesLost(StreamTime at, StreamTime length) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.samplesLost(this);
        }
    }

    /** The microphone was lost; the take continues by hand. */
    record SourceLost(StreamTime at, String reason) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.sourceLost(this);
        }
    }

    /** A microphone works again. */
    record SourceFound(StreamTime at, String name) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.sourceFound(this);
        }
    }

    /**
     * Sound comes from another microphone than the one that was meant.
     *
     * @param name the microphone that is heard now
     * @param meant the one that was meant
     */
    record SourceMoved(StreamTime at, String name, String meant) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.sourceMoved(this);
        }

        Trouble trouble() {
            return new Trouble(Trouble.Kind.OTHER_MICROPHONE, name + " instead of " + meant);
        }
    }

    /** The take's audio cannot be written for now; following goes on, and the audio waits in memory. */
    record RecordingFailed(StreamTime at, String reason) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.recordingFailed(this);
        }
    }

    /** The take's audio can be written again, and what waited in memory is on disk. */
    record RecordingResumed(StreamTime at) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.recordingResumed(this);
        }
    }

    /** The audio of a stretch could not be saved, on disk or in memory; it is silence in the recording. */
    record SoundNotSaved(StreamTime at, UnsavedStretch stretch) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.soundNotSaved(this);
        }
    }

    /** The presenter or producer held the take. */
    record Held(StreamTime at) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.held(this);
        }
    }

    /** The take continued after a hold. */
    record Resumed(StreamTime at) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.resumed(this);
        }
    }

    /** The count-in of a held take waits to be begun ({@code seconds} is 0), or counts so many seconds. */
    record CountInStepped(StreamTime at, int seconds) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.countInStepped(this);
        }
    }

    /** The pickup round began, came to its next step, or ended. */
    record RoundMoved(StreamTime at, PickupRound round) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.roundMoved(this);
        }
    }

    /** A person at the desk added a remark. */
    record Remarked(StreamTime at, Remark remark) implements SessionEvent {
        @Override
        public void to(SessionEventHandler handler) {
            handler.remarked(this);
        }
    }
}
