package org.bookholder.journal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.journal.event.EventCodec;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/**
 * A folder in a second place for what a session's own folder could not take: stretches of sound, each a WAV file that names its take
 * and its first sample ({@code take-001-from-480000.wav}), and events ({@link OverflowNotes}). {@code overflow.json} names the
 * session. {@link OverflowMerge} takes all of it into the session.
 *
 * @param path the folder
 * @param session the session's folder, absolute; it need not exist
 */
public record OverflowFolder(Path path, Path session) {
    private static final String DESCRIPTION = "overflow.json";
    private static final Pattern STRETCH = Pattern.compile("take-(\\d{3,9})-from-(\\d{1,15})\\.wav");
    private static final JsonMapper MAPPER = new JsonMapper();

    /**
     * A stretch of a take's sound.
     *
     * @param take take number, from 1
     * @param first its first sample, counted from the take's first, which is 0
     * @param file its file
     */
    record Stretch(int take, long first, Path file) {}

    /**
     * Begins one in an empty private folder.
     *
     * @throws ProblemException if it cannot be written
     */
    public static OverflowFolder begin(Path path, Path session) throws ProblemException {
        OverflowFolder begun = new OverflowFolder(path, session.toAbsolutePath().normalize());
        begun.describe("", Optional.empty());
        return begun;
    }

    /** The one in a folder; empty if there is none, or it cannot be read. */
    public static Optional<OverflowFolder> in(Path path) {
        try {
            String session = description(path).path("session").asText("");
            return session.isEmpty() ? Optional.empty() : Optional.of(new OverflowFolder(path, Path.of(session)));
        } catch (IOException | java.nio.file.InvalidPathException none) {
            return Optional.empty();
        }
    }

    /**
     * Begins the recording of a stretch.
     *
     * @param takeStart when the take's first sample sounds, on the session's audio
     * @param first the stretch's first sample, counted from the take's first, which is 0
     */
    public TakeRecording record(int take, int rate, StreamTime takeStart, long first) throws ProblemException {
        Path file = path.resolve(String.format(Locale.ROOT, "take-%03d-from-%d.wav", take, first));
        return TakeRecording.create(file, rate, takeStart.plus(StreamTime.ofSamples(first, rate)));
    }

    /** The stretches of sound, in the order in which they are to be taken in. */
    List<Stretch> stretches() throws ProblemException {
        List<Stretch> stretches = new ArrayList<>();
        for (Path file : SessionFiles.in(path)) {
            Matcher name = STRETCH.matcher(String.valueOf(file.getFileName()));
            if (name.matches() && TakeFile.holdsSound(file)) {
                stretches.add(new Stretch(Integer.parseInt(name.group(1)), Long.parseLong(name.group(2)), file));
            }
        }
        stretches.sort(Comparator.comparingInt(Stretch::take).thenComparingLong(Stretch::first));
        return stretches;
    }

    /** The events that are kept here, in order. */
    List<SessionEvent> events() throws ProblemException {
        String set = description().path("events").asText("");
        return set.isEmpty() ? List.of() : OverflowNotes.read(path, set);
    }

    /** The event that they follow, as its text; empty if it is not known. */
    String after() throws ProblemException {
        return description().path("after").asText("");
    }

    /** Whether all notes of the session are here, so that it can be made again from them. */
    public boolean whole() throws ProblemException {
        return after().isEmpty() && Replay.firstOpened(events()).isPresent();
    }

    /** How much is kept here. Bytes. */
    public long bytes() throws ProblemException {
        return SessionFiles.in(path).stream()
                .mapToLong(file -> file.toFile().length())
                .sum();
    }

    /** Deletes the folder; to be called when all of it is in the session. */
    public void delete() throws ProblemException {
        try {
            // The description goes last: what is left without it would not be found again.
            List<Path> files = new ArrayList<>(SessionFiles.in(path));
            files.sort(Comparator.comparing(file -> file.endsWith(DESCRIPTION)));
            for (Path file : files) {
                Files.deleteIfExists(file);
            }
            Files.deleteIfExists(path);
        } catch (IOException e) {
            throw DiskProblems.writing(path, e);
        }
    }

    /**
     * Says which events are kept here, in one step.
     *
     * @param set the name of the set; empty if there is none
     * @param after the last event of the session's journal that they follow; empty if there is none, or it is not known
     */
    void describe(String set, Optional<SessionEvent> after) throws ProblemException {
        ObjectNode description = JsonNodeFactory.instance
                .objectNode()
                .put("session", session.toString())
                .put("events", set);
        after.ifPresent(event -> description.put("after", EventCodec.encode(event)));
        Path file = path.resolve(DESCRIPTION);
        try {
            new AtomicFiles(Access.OWNER).write(file, description.toPrettyString() + "\n");
        } catch (IOException e) {
            throw DiskProblems.writing(file, e);
        }
    }

    private JsonNode description() throws ProblemException {
        try {
            return description(path);
        } catch (IOException e) {
            throw DiskProblems.reading(path.resolve(DESCRIPTION), e);
        }
    }

    private static JsonNode description(Path path) throws IOException {
        return MAPPER.readTree(Files.readString(path.resolve(DESCRIPTION)));
    }
}
