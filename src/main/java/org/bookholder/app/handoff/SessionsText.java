package org.bookholder.app.handoff;

import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.bookholder.app.handoff.HandOffSource.Part;
import org.bookholder.course.Text;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.timeline.Media;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Take;

/**
 * What whoever edits a lesson of several sessions has to know of them: how their takes are counted, and which files are whose.
 *
 * @param handOff the hand-off
 * @param parts its sessions, the oldest first; none if it is of one session alone
 */
record SessionsText(HandOff handOff, List<Part> parts) {
    private static final DateTimeFormatter BEGAN = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

    /** The text as a file of the hand-off. */
    HandOffFile file() {
        return HandOffFile.text(handOff.name() + "-sessions.txt", out -> out.append(text()));
    }

    /** One sentence for each session. */
    List<String> takes() {
        return parts.stream().map(this::takes).toList();
    }

    private String text() {
        List<String> rows = new ArrayList<>();
        rows.add(handOff.state().script().title());
        rows.add("");
        rows.add("This hand-off is of " + Text.count(parts.size(), "session")
                + ". Each line is taken from the last session in which it was read clean.");
        rows.add(
                "Takes are counted on from one session to the next, in all files. Two files of one name have two reels.");
        for (Part part : parts) {
            rows.add("");
            rows.add(takes(part));
            rows.add("  folder: " + part.kept().folder().path().toAbsolutePath().normalize());
            lines(part).forEach((reel, files) -> rows.add("  " + reel + ": " + files));
            List<Integer> gone = gone(part);
            if (!gone.isEmpty()) {
                rows.add("  not in this hand-off, because the lesson has another text there now: " + Text.lines(gone)
                        + " of that session");
            }
        }
        return String.join("\n", rows) + "\n";
    }

    private String takes(Part part) {
        List<Take> own = part.kept().state().takes().all();
        String began = own.isEmpty()
                ? "in which nothing was recorded"
                : "of " + BEGAN.format(own.get(0).when().atZone(handOff.zone()));
        String folder = String.valueOf(part.kept().folder().path().getFileName());
        int first = part.joined().take(1);
        int last = part.joined().take(own.size());
        String named = first == last ? "Take " + first : "Takes " + first + " to " + last;
        String there = first == last ? "take 1" : "takes 1 to " + own.size();
        return own.isEmpty()
                ? "The session " + folder + ", " + began
                : named + ": " + there + " of the session " + folder + ", " + began;
    }

    /** Each file with takes of a session, by its reel. */
    private Map<String, String> lines(Part part) {
        Map<String, List<Media>> reels = new LinkedHashMap<>();
        handOff.media().stream()
                .filter(media -> part.joined().has(media.placement().take()))
                .forEach(media -> reels.computeIfAbsent(media.reel(), none -> new ArrayList<>())
                        .add(media));
        Map<String, String> lines = new LinkedHashMap<>();
        reels.forEach((reel, media) -> {
            Path file = media.get(0).file();
            String takes = media.stream()
                    .map(m -> Integer.toString(m.placement().take()))
                    .collect(Collectors.joining(", "));
            lines.put(reel, file + (media.get(0).kind() == Media.Kind.TAKE ? "" : " (take " + takes + ")"));
        });
        return lines;
    }

    /** The lines of a session that were read and that the lesson does not have any more, by the session's numbers. */
    private static List<Integer> gone(Part part) {
        return part.kept().state().lines().all().stream()
                .filter(notes -> !notes.attempts().isEmpty())
                .map(LineNotes::line)
                .filter(line -> !part.joined().numbers().containsKey(line))
                .toList();
    }
}
