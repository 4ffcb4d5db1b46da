package org.bookholder.handoff.edit;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.cutlist.PunchIn;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.timeline.Media;
import org.bookholder.handoff.timeline.Source;
import org.bookholder.handoff.timeline.Timeline;
import org.bookholder.handoff.timeline.TimelineEvent;
import org.bookholder.wording.MarkerText;

/**
 * The cut list as an edit decision list in the CMX 3600 form (SMPTE 258M).
 *
 * <p>Layout from the source and samples of the OpenTimelineIO adapter for it (otio-cmx3600-adapter): eight fields, out
 * points exclusive, each record in the record out before it; markers as {@code * LOC:} comments. A gap is an event of the
 * reel {@code BL} (black).
 */
public final class EdlPart implements HandOffPart {
    /** Longer titles are cut off; the format has 70 characters for them. */
    private static final int LONGEST_TITLE = 70;

    private static final String BLACK = "BL";

    @Override
    public String name() {
        return "edl";
    }

    @Override
    public String description() {
        return "the cut list as a CMX 3600 edit decision list";
    }

    @Override
    public List<HandOffFile> files(HandOff handOff) {
        return List.of(HandOffFile.text(handOff.name() + ".edl", out -> write(handOff, out)));
    }

    private static void write(HandOff handOff, Appendable out) throws IOException {
        Timeline timeline = handOff.timeline();
        out.append("TITLE: ").append(title(handOff.state().script().title())).append('\n');
        out.append("FCM: ")
                .append(timeline.timecode().drop() ? "DROP FRAME" : "NON-DROP FRAME")
                .append('\n');
        out.append('\n');
        int number = 1;
        for (TimelineEvent event : timeline.events()) {
            out.append(line(timeline, event, number++)).append('\n');
            for (String comment : comments(handOff, event)) {
                out.append("* ").append(comment).append('\n');
            }
        }
    }

    private static String line(Timeline timeline, TimelineEvent event, int number) {
        Optional<Source> source = event.source();
        return String.format(
                Locale.ROOT,
                "%03d  %-8s %-5s C        %s %s %s %s",
                number,
                source.map(s -> s.media().reel()).orElse(BLACK),
                source.map(s -> channels(s.media())).orElse("V"),
                timeline.timecode().label(source.map(Source::in).orElse(0L)),
                timeline.timecode().label(source.map(Source::out).orElse(event.frames())),
                timeline.label(event.in()),
                timeline.label(event.out()));
    }

    private static String channels(Media media) {
        if (media.picture().isEmpty()) {
            return "A";
        }
        return media.sounding() ? "B" : "V";
    }

    private static List<String> comments(HandOff handOff, TimelineEvent event) {
        Timeline timeline = handOff.timeline();
        List<String> comments = new ArrayList<>();
        event.source().ifPresent(source -> {
            comments.add("FROM CLIP NAME:  " + oneLine(source.media().name()));
            comments.add("SOURCE FILE: " + oneLine(source.media().file().toString()));
        });
        comments.add("LINES: " + event.item().lines());
        if (event.framing() != PunchIn.FULL) {
            comments.add("FRAMING: " + event.framing() + " PER CENT");
        }
        for (Timeline.PlacedMarker placed : timeline.markers(event)) {
            comments.add(String.format(
                    Locale.ROOT,
                    "LOC: %s %-7s %s",
                    timeline.label(placed.frame()),
                    MarkerLook.of(placed.marker()).colour(),
                    plain(MarkerText.of(handOff.state(), placed.marker()))));
        }
        return comments;
    }

    private static String title(String title) {
        String line = oneLine(title);
        return line.length() <= LONGEST_TITLE ? line : line.substring(0, LONGEST_TITLE);
    }

    /** Replaces typographic marks by characters that every reader of such files knows; letters stay as they are. */
    private static String plain(String text) {
        return oneLine(text)
                .replaceAll("[\u201c\u201d]", "\"")
                .replaceAll("[\u2018\u2019]", "'")
                .replace("\u2026", "...");
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\s+", " ").strip();
    }
}
