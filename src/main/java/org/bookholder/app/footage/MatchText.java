package org.bookholder.app.footage;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.course.Text;
import org.bookholder.footage.Footage;
import org.bookholder.footage.FootageMatcher;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.footage.RecordingJoiner;
import org.bookholder.footage.WholeRecording;
import org.bookholder.timing.StreamTime;

/** Says in words where a file lies in a session. */
public final class MatchText {
    private MatchText() {}

    /** One line for each take that can be heard in the file, without the file's name. */
    public static List<String> of(PlacedFootage placed) {
        return placed.placements().stream().map(MatchText::of).toList();
    }

    private static String of(Placement placement) {
        double start = (double) placement.start() / StreamTime.TICKS_PER_SECOND;
        return String.format(
                Locale.ROOT,
                "take %d begins %s, clock %+.1f ppm, confidence %.2f",
                placement.take(),
                start < 0
                        ? String.format(Locale.ROOT, "%.3f s before the file", -start)
                        : String.format(Locale.ROOT, "at %.3f s", start),
                placement.driftPpm(),
                placement.confidence());
    }

    /** A take that should be in the file, and why it may not have been found. */
    public static String of(MissedTake missed) {
        String head = String.format(Locale.ROOT, "take %d (%.0f s): not found in it", missed.take(), missed.seconds());
        return missed.seconds() < FootageMatcher.SHORTEST
                ? head + "; it is too short to be compared"
                : head + ", though the file ran then; listen to it at about "
                        + Text.clock(Math.max(0, missed.about()))
                        + ": the voice may be too faint there, or drowned";
    }

    /** That files were taken for one recording. */
    public static String joined(WholeRecording recording) {
        return recording.name() + " are one recording, so they are one take";
    }

    /**
     * That files were not joined that may be one recording, and what can be done.
     *
     * @param byNumbers how a person asks for files to be joined by their numbers, as a phrase
     */
    public static String apart(RecordingJoiner.Apart files, String byNumbers) {
        String names = files.first().name() + " and " + files.then().name();
        return switch (files.reason()) {
            case NO_TIME ->
                names
                        + " are numbered one after the other, but don't both say at what time they were recorded, so each is a"
                        + " take of its own; if a camera split one recording, log them again " + byNumbers;
            case SOUND ->
                names
                        + " seem to be one recording by their numbers, but the sound doesn't go on from one to the other, so"
                        + " each is a take of its own; listen to the line at the border";
        };
    }

    /** What to know before the file is edited; empty if there is nothing. */
    public static Optional<String> caution(Footage footage) {
        return footage.picture()
                .filter(Footage.Picture::variable)
                .map(picture -> footage.file()
                        + ": its frame rate varies, so that frame numbers may be out; convert it to a constant"
                        + " rate before it is edited");
    }
}
