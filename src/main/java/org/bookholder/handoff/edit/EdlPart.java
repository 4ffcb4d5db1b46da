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
import org.bookholder.handoff.timeline.SourceTrack;
import org.bookholder.handoff.timeline.SourceTrack.Piece;
import org.bookholder.handoff.timeline.SourceTracks;
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
        return "the cut list as CMX 3600 edit decision lists";
    }

    @Override
    public List<HandOffFile> files(HandOff handOff) {
        List<SourceTrack> filmed = SourceTracks.each(handOff.timeline(), handOff.media()).stream()
                .filter(track -> track.kind() != Media.Kind.TAKE)
                .toList();
        List<HandOffFile> files = new ArrayList<>();
        files.add(HandOffFile.text(handOff.name() + ".edl", out -> write(handOff, cut(handOff), out)));
        if (filmed.size() > 1) {
            for (SourceTrack track : filmed) {
                String reel = track.media().get(0).reel().toLowerCase(Locale.ROOT);
                files.add(HandOffFile.text(
                        handOff.name() + "-" + reel + ".edl", out -> write(handOff, alone(track), out)));
            }
        }
        return files;
    }

    /** A line of a list: frames of a file, or black, on some channels. */
    private record Edit(String channels, Piece piece) {}

    /** The picture of each event with the best sound: one line if both are of one file, otherwise one for each. */
    private static List<Edit> cut(HandOff handOff) {
        Timeline timeline = handOff.timeline();
        List<Piece> sounds = SourceTracks.sound(timeline, handOff.media());
        String black = channels(
                handOff.media().stream().anyMatch(m -> m.picture().isPresent()),
                handOff.media().isEmpty() || handOff.media().stream().anyMatch(Media::sounding));
        List<Edit> edits = new ArrayList<>();
        for (TimelineEvent event : timeline.events()) {
            Piece whole = new Piece(event, event.source(), event.in(), event.out());
            if (event.source().isEmpty()) {
                edits.add(new Edit(black, whole));
                continue;
            }
            Media used = event.source().get().media();
            List<Piece> heard = sounds.stream()
                    .filter(piece ->
                            piece.event().equals(event) && piece.source().isPresent())
                    .toList();
            boolean together = heard.stream()
                    .allMatch(piece -> piece.source().orElseThrow().media().equals(used));
            if (used.picture().isPresent()) {
                edits.add(new Edit(channels(true, together && !heard.isEmpty()), whole));
            }
            if (used.picture().isEmpty() || !together) {
                heard.forEach(piece -> edits.add(new Edit(channels(false, true), piece)));
            }
        }
        return edits;
    }

    /** Everything that one camera or recorder has of the cut; black elsewhere. */
    private static List<Edit> alone(SourceTrack track) {
        String channels = channels(track.kind() == Media.Kind.CAMERA, track.sounding());
        return track.pieces().stream().map(piece -> new Edit(channels, piece)).toList();
    }

    private static String channels(boolean picture, boolean sound) {
        return picture ? (sound ? "B" : "V") : "A";
    }

    private static void write(HandOff handOff, List<Edit> edits, Appendable out) throws IOException {
        Timeline timeline = handOff.timeline();
        out.append("TITLE: ").append(title(handOff.state().script().title())).append('\n');
        out.append("FCM: ")
                .append(timeline.timecode().drop() ? "DROP FRAME" : "NON-DROP FRAME")
                .append('\n');
        out.append('\n');
        long told = -1;
        for (int i = 0; i < edits.size(); i++) {
            Piece piece = edits.get(i).piece();
            out.append(line(timeline, edits.get(i), i + 1)).append('\n');
            for (String comment :
                    comments(handOff, piece, !edits.get(i).channels().equals("V"), piece.in() > told)) {
                out.append("* ").append(comment).append('\n');
            }
            told = Math.max(told, piece.in());
        }
    }

    private static String line(Timeline timeline, Edit edit, int number) {
        Piece piece = edit.piece();
        Optional<Source> source = piece.source();
        return String.format(
                Locale.ROOT,
                "%03d  %-8s %-5s C        %s %s %s %s",
                number,
                source.map(s -> s.media().reel()).orElse(BLACK),
                edit.channels(),
                timeline.timecode().label(source.map(Source::in).orElse(0L)),
                timeline.timecode().label(source.map(Source::out).orElse(piece.frames())),
                timeline.label(piece.in()),
                timeline.label(piece.out()));
    }

    /** The comments of a line; the markers only if no line before it begins at the same frame. */
    private static List<String> comments(HandOff handOff, Piece piece, boolean sounds, boolean marked) {
        Timeline timeline = handOff.timeline();
        TimelineEvent event = piece.event();
        List<String> comments = new ArrayList<>();
        piece.source().ifPresent(source -> {
            comments.add("FROM CLIP NAME:  " + oneLine(source.media().name()));
            comments.add("SOURCE FILE: " + oneLine(new MediaLinks(handOff.folder()).path(source.media())));
        });
        piece.source()
                .filter(source -> sounds)
                .flatMap(source -> source.media().channelsHeard())
                .ifPresent(channels -> comments.add("AUDIO CHANNELS: " + channels));
        comments.add("LINES: " + event.item().lines());
        boolean picture =
                piece.source().filter(s -> s.media().picture().isPresent()).isPresent();
        if (event.framing() != PunchIn.FULL && picture) {
            comments.add("FRAMING: " + event.framing() + " PER CENT");
        }
        for (Timeline.PlacedMarker placed : marked ? timeline.markers(event) : List.<Timeline.PlacedMarker>of()) {
            if (piece.holds(placed.frame())) {
                comments.add(String.format(
                        Locale.ROOT,
                        "LOC: %s %-7s %s",
                        timeline.label(placed.frame()),
                        MarkerLook.of(placed.marker()).colour(),
                        plain(MarkerText.of(handOff.state(), placed.marker()))));
            }
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
