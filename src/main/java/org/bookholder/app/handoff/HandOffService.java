package org.bookholder.app.handoff;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.session.ChosenReadings;
import org.bookholder.app.session.StoredSession;
import org.bookholder.course.Text;
import org.bookholder.cutlist.CutItem;
import org.bookholder.cutlist.CutList;
import org.bookholder.cutlist.CutPlanner;
import org.bookholder.cutlist.CutRules;
import org.bookholder.cutlist.PunchIn;
import org.bookholder.cutlist.TakeSound;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.HandOffWriter;
import org.bookholder.handoff.captions.CaptionsPart;
import org.bookholder.handoff.captions.Chapter;
import org.bookholder.handoff.sound.TakesPart;
import org.bookholder.handoff.timeline.CoverMedia;
import org.bookholder.handoff.timeline.Media;
import org.bookholder.handoff.timeline.MediaList;
import org.bookholder.handoff.timeline.Timeline;
import org.bookholder.handoff.timeline.TimelineBuilder;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.Timecode;
import org.bookholder.wording.TakeSourcesText;

/** Writes the hand-off of a session, or of all sessions of a lesson. */
public final class HandOffService {
    /** The kind of the text that says which takes are whose. */
    private static final String SESSIONS = "sessions";

    private final Environment here;
    private final HandOffRequest request;
    private final Interruption stop;

    /** Creates a hand-off that can be stopped until its files are written. */
    public HandOffService(Environment here, HandOffRequest request, Interruption stop) {
        this.here = here;
        this.request = request;
        this.stop = stop;
    }

    /**
     * What was written.
     *
     * @param summary the cut, in one line
     * @param folder where the files are
     * @param files the files in order
     * @param remarks what is wrong with them, one line each
     * @param notes what else is worth knowing of them, one line each
     */
    public record Written(String summary, Path folder, List<Path> files, List<String> remarks, List<String> notes) {}

    /** Writes the files of a session; if that fails, nothing is changed. */
    public Written write(Path session) throws ProblemException {
        try (StoredSession kept = StoredSession.open(here, session)) {
            return write(HandOffSource.of(kept), request.folder(session), List.of(session));
        }
    }

    /**
     * Writes the files of a lesson as one hand-off; if that fails, nothing is changed.
     *
     * @param lesson the lesson, as it is now
     * @param sessions the folders of its sessions, the oldest first, at least one
     */
    public Written write(Script lesson, List<Path> sessions) throws ProblemException {
        List<StoredSession> open = new ArrayList<>();
        try {
            for (Path session : sessions) {
                open.add(StoredSession.open(here, session));
            }
            return write(HandOffSource.of(lesson, open, rules()), request.folder(sessions), sessions);
        } finally {
            open.forEach(StoredSession::close);
        }
    }

    private Written write(HandOffSource source, Path folder, List<Path> sessions) throws ProblemException {
        List<String> remarks = new ArrayList<>();
        List<HandOffPart> possible = possible(request.parts(), source, remarks);
        HandOff handOff = handOff(source, possible, folder, remarks);
        Map<String, List<HandOffFile>> kinds = new LinkedHashMap<>();
        SessionsText joined = new SessionsText(handOff, source.parts());
        if (!source.parts().isEmpty()) {
            kinds.put(SESSIONS, List.of(joined.file()));
        }
        possible.forEach(part -> kinds.put(
                part.name(), part.files(handOff).stream().map(this::stoppable).toList()));
        List<HandOffFile> files = kinds.values().stream().flatMap(List::stream).toList();
        List<Path> written = new HandOffWriter().write(folder, files, request.replace());
        tidy(folder, kinds, new WrittenFiles(sessions), written).ifPresent(remarks::add);
        if (source.rolling()) {
            remarks.add("the session is still running; this is how far it has come");
        }
        ChosenReadings.remark(source.passedOver()).ifPresent(remarks::add);
        List<String> notes = new ArrayList<>(joined.takes());
        notes.addAll(notes(handOff, possible));
        return new Written(summary(handOff), folder, written, remarks, notes);
    }

    /**
     * Removes what an earlier hand-off wrote of the same kinds, if it is to be replaced. Says which files are still of the earlier one: of
     * other kinds if it was to be replaced, and of the same kinds if not.
     */
    private Optional<String> tidy(
            Path folder, Map<String, List<HandOffFile>> kinds, WrittenFiles notes, List<Path> written) {
        List<String> left = new ArrayList<>();
        for (WrittenFiles.Note note : notes.earlier(folder, written)) {
            boolean same = kinds.containsKey(note.kind()) || note.kind().equals(SESSIONS);
            boolean gone = request.replace() && same && removed(Path.of(note.file()));
            if (!gone && (request.replace() || same)) {
                left.add(String.valueOf(Path.of(note.file()).getFileName()));
            }
        }
        Map<String, List<Path>> places = new LinkedHashMap<>();
        kinds.forEach((kind, files) -> places.put(
                kind, files.stream().map(file -> folder.resolve(file.name())).toList()));
        notes.keep(places);
        return left.isEmpty()
                ? Optional.empty()
                : Optional.of("of an earlier hand-off, and not written anew: "
                        + String.join(", ", left.stream().sorted().toList()));
    }

    private static boolean removed(Path file) {
        try {
            Files.delete(file);
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    private CutRules rules() {
        return CutRules.defaults().withMisread(request.useMisread());
    }

    /** The same file; writing it ends if the hand-off is stopped. */
    private HandOffFile stoppable(HandOffFile file) {
        return new HandOffFile(
                file.name(),
                out -> file.content().write(new FilterOutputStream(out) {
                    @Override
                    public void write(byte[] bytes, int from, int length) throws IOException {
                        stop.check();
                        out.write(bytes, from, length);
                    }
                }));
    }

    /** Leaves out what cannot be written: without recordings, everything else can still be handed off. */
    private List<HandOffPart> possible(List<HandOffPart> parts, HandOffSource source, List<String> remarks) {
        if (source.recorded()) {
            source.silent().forEach(take -> remarks.add("take " + take + " has no sound that can be read"));
            return parts;
        }
        if (request.chosen()) {
            return parts;
        }
        remarks.add("no take was recorded; the files that need sound are left out");
        return parts.stream().filter(part -> !part.needsSound()).toList();
    }

    private HandOff handOff(HandOffSource source, List<HandOffPart> parts, Path out, List<String> remarks)
            throws ProblemException {
        String name = HandOffRequest.name(source.state().script());
        List<PlacedFootage> footage = source.footage();
        Timecode timecode = timecode(MediaList.usual(footage));
        remarks.addAll(FootageRemarks.of(footage, timecode));
        boolean takesToo = parts.stream().anyMatch(TakesPart.class::isInstance);
        List<Media> files = MediaList.of(
                source.state(),
                timecode,
                footage,
                new MediaList.TakeFiles(
                        take -> takesToo
                                ? out.toAbsolutePath().resolve(TakesPart.fileName(name, take))
                                : source.files().apply(take).toAbsolutePath(),
                        // Only the takes of a hand-off carry the time of day.
                        takesToo ? Optional.of(here.zone()) : Optional.empty()));
        List<Media> media = MediaList.preferred(files, source.sources());
        source.sources()
                .forEach(take -> Stream.concat(take.picture().stream(), take.sound().stream())
                        .map(missed -> TakeSourcesText.remark(take, missed))
                        .forEach(remarks::add));
        TakeSound sound = stop.over(source.sound());
        CutList cut = CutPlanner.plan(source.state(), rules(), sound);
        Timeline timeline = TimelineBuilder.build(cut, timecode, media, punchIn(footage));
        List<CoverMedia> covers = HandOffCovers.of(source.state().script(), remarks);
        return new HandOff(
                out, name, source.state(), source.events(), cut, timeline, media, covers, sound, here.zone());
    }

    private Timecode timecode(Timecode usual) throws ProblemException {
        FrameRate rate = request.rate().orElse(usual.rate());
        if (request.dropFrame().orElse(false) && !rate.canDrop()) {
            throw new ProblemException(
                    "there is no drop-frame timecode at " + rate.label() + " frames a second",
                    "the timecode",
                    "leave drop-frame out, or choose 29.97 or 59.94 frames a second");
        }
        boolean byRate = request.rate().isPresent() ? rate.canDrop() : usual.drop();
        return new Timecode(rate, request.dropFrame().orElse(byRate));
    }

    private PunchIn punchIn(List<PlacedFootage> footage) {
        int width = request.deliveryWidth();
        int height = request.deliveryHeight();
        int most = footage.stream()
                .map(PlacedFootage::footage)
                .flatMap(f -> f.picture().stream())
                .mapToInt((Footage.Picture p) -> PunchIn.most(p.width(), p.height(), width, height))
                .min()
                .orElse(PunchIn.FULL);
        return new PunchIn(PunchIn.DEFAULT_STEP, most);
    }

    private static List<String> notes(HandOff handOff, List<HandOffPart> parts) {
        boolean captions = parts.stream().anyMatch(CaptionsPart.class::isInstance);
        return captions && !Chapter.wanted(handOff.state().script()) ? List.of(Chapter.NONE) : List.of();
    }

    private static String summary(HandOff handOff) {
        List<Integer> gaps = handOff.cut().items().stream()
                .filter(item -> item.clip().isEmpty())
                .map(CutItem::firstLine)
                .toList();
        Timecode timecode = handOff.timeline().timecode();
        return Text.count(handOff.cut().clips().size(), "clip") + ", " + Text.count(gaps.size(), "gap")
                + (gaps.isEmpty() ? "" : " (" + Text.lines(gaps) + ")") + ", "
                + timecode.label(handOff.timeline().frames()) + " at "
                + timecode.rate().label() + (timecode.drop() ? " drop-frame" : "");
    }
}
