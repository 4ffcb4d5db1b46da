package org.bookholder.app.footage;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.SessionRemarks;
import org.bookholder.app.session.SessionSources;
import org.bookholder.app.session.StoredSession;
import org.bookholder.course.Text;
import org.bookholder.cutlist.TakeSources;
import org.bookholder.cutlist.TakeSources.Source;
import org.bookholder.footage.Channels;
import org.bookholder.footage.Footage;
import org.bookholder.footage.Hearing;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Act;
import org.bookholder.session.FilmChange;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.Remark;

/** Shows which files give picture and sound of a session's takes, and lets a person choose others. */
public final class SourceChoices {
    /** Stands for what the program chooses. */
    public static final String AUTOMATIC = "auto";

    /** Stands for the take's own recording. */
    public static final String OWN = "take";

    /** Files with up to so many channels have all their pairs in a list. */
    private static final int FEW = 4;

    private final Environment here;

    /** Creates one for sessions on this machine. */
    public SourceChoices(Environment here) {
        this.here = here;
    }

    /**
     * What someone wants.
     *
     * @param takes the takes that it is about, by their numbers; none for all
     * @param picture a matched file, or {@link #AUTOMATIC}; empty to leave the picture as it is
     * @param sound a matched file, with some of its channels behind a colon or without, {@link #OWN}, or {@link #AUTOMATIC}; empty to
     *     leave the sound as it is
     */
    public record Wish(List<Integer> takes, Optional<String> picture, Optional<String> sound) {
        /** Copies the list. */
        public Wish {
            takes = List.copyOf(takes);
        }

        /** Whether nothing is wanted. */
        public boolean isEmpty() {
            return picture.isEmpty() && sound.isEmpty();
        }
    }

    /**
     * What is used for each take.
     *
     * @param takes the takes
     * @param undo the last choice, which can be taken back; empty if there is none
     */
    public record Shown(List<TakeSources> takes, Optional<Act> undo) {
        /** Copies the list. */
        public Shown {
            takes = List.copyOf(takes);
        }
    }

    /**
     * What is used for each take of a session.
     *
     * @throws ProblemException if the session cannot be read
     */
    public Shown show(Path session) throws ProblemException {
        try (StoredSession kept = StoredSession.open(here, session)) {
            return new Shown(SessionSources.of(kept).takes(), last(kept));
        }
    }

    /**
     * Chooses other files. They are kept with the session, until that is undone or something else is chosen.
     *
     * @throws ProblemException if there is no such take, file or channel, or the session is open elsewhere; then nothing is changed
     */
    public void choose(Path session, Wish wish) throws ProblemException {
        try (StoredSession kept = StoredSession.open(here, session)) {
            SessionSources sources = SessionSources.of(kept);
            List<FilmChange> changes = new ArrayList<>();
            checkTakes(wish.takes(), sources, session);
            if (wish.picture().isPresent()) {
                changes.add(new FilmChange.SeenBy(picture(wish.picture().get(), wish.takes(), sources)));
            }
            if (wish.sound().isPresent()) {
                changes.add(new FilmChange.HeardFrom(sound(wish.sound().get(), wish.takes(), sources)));
            }
            List<Remark> remarks = new ArrayList<>();
            for (FilmChange change : changes) {
                if (wish.takes().isEmpty()) {
                    remarks.add(new Remark.Filmed(0, change));
                }
                for (int take : wish.takes()) {
                    remarks.add(new Remark.Filmed(0, new FilmChange.OfTake(take, change)));
                }
            }
            SessionRemarks.write(session, kept.state(), remarks, here);
        }
    }

    /**
     * Takes back the last choice.
     *
     * @throws ProblemException if there is none, or the session is open elsewhere
     */
    public void undo(Path session) throws ProblemException {
        try (StoredSession kept = StoredSession.open(here, session)) {
            Act act = last(kept)
                    .orElseThrow(() -> new ProblemException(
                            "no picture or sound was chosen in it", session.toString(), "choose one first"));
            SessionRemarks.write(session, kept.state(), List.of(new Remark.Retracted(act.number())), here);
        }
    }

    private static Optional<Act> last(StoredSession kept) {
        return kept.state().remarks().acts().standing().stream()
                .filter(act -> act.author().equals(SessionRemarks.FILM))
                .filter(act -> act.change() instanceof Act.Filmed filmed
                        && filmed.line() == 0
                        && !(filmed.what() instanceof FilmChange.KeptPoint))
                .reduce((first, second) -> second);
    }

    private static void checkTakes(List<Integer> takes, SessionSources sources, Path session) throws ProblemException {
        int count = sources.takes().size();
        for (int take : takes) {
            if (take < 1 || take > count) {
                throw new ProblemException(
                        "there is no take " + take,
                        session.toString(),
                        count == 1 ? "it has take 1" : "it has takes 1 to " + count);
            }
        }
    }

    /** The name under which a choice of picture is kept. */
    private static String picture(String text, List<Integer> takes, SessionSources sources) throws ProblemException {
        if (text.equals(AUTOMATIC)) {
            return "";
        }
        PlacedFootage placed = file(text, sources.footage());
        if (placed.footage().picture().isEmpty()) {
            throw new ProblemException("has no picture", text, "choose a camera's file");
        }
        covers(placed, text, takes);
        return TakeSources.name(placed, sources.footage());
    }

    /** The same for sound. */
    private static String sound(String text, List<Integer> takes, SessionSources sources) throws ProblemException {
        if (text.equals(AUTOMATIC)) {
            return "";
        }
        if (text.equals(OWN) || text.equals(FilmChoices.TAKES)) {
            return recorded(text, takes, sources);
        }
        TakeSources.Wanted wanted = TakeSources.Wanted.of(
                text, name -> !files(name, sources.footage()).isEmpty());
        int colon = text.lastIndexOf(':');
        if (wanted.channels().isEmpty()
                && colon > 0
                && files(text, sources.footage()).isEmpty()
                && !files(text.substring(0, colon), sources.footage()).isEmpty()) {
            throw new ProblemException(
                    "'" + text.substring(colon + 1) + "' is no channel",
                    text,
                    "write its number, two as 1+2 (or 1-2 with the second inverted), or all");
        }
        PlacedFootage placed = file(wanted.file(), sources.footage());
        Footage.Sound sound = placed.footage()
                .sound()
                .orElseThrow(() -> new ProblemException("has no sound", text, "choose a file with sound"));
        if (wanted.channels().filter(some -> !some.in(sound.channels())).isPresent()) {
            throw new ProblemException(
                    "has no channel " + wanted.channels().get().text(),
                    wanted.file(),
                    "it has " + Text.count(sound.channels(), "channel"));
        }
        covers(placed, text, takes);
        return TakeSources.name(placed, sources.footage())
                + wanted.channels().map(Channels::text).map(some -> ":" + some).orElse("");
    }

    private static String recorded(String text, List<Integer> takes, SessionSources sources) throws ProblemException {
        for (TakeSources one : sources.takes()) {
            boolean meant = takes.contains(one.take().number());
            if (meant
                    && one.sounds().stream()
                            .noneMatch(source -> source.footage().isEmpty())) {
                throw new ProblemException(
                        "take " + one.take().number() + " has no recording of its own", text, "choose a matched file");
            }
        }
        return FilmChoices.TAKES;
    }

    private static void covers(PlacedFootage placed, String text, List<Integer> takes) throws ProblemException {
        for (int take : takes) {
            if (placed.placement(take).isEmpty()) {
                throw new ProblemException("has nothing of take " + take, text, "choose a file that has it");
            }
        }
    }

    private static List<PlacedFootage> files(String text, List<PlacedFootage> all) {
        Path given;
        try {
            given = Path.of(text);
        } catch (InvalidPathException e) {
            // Not every machine takes a colon, behind which channels stand.
            return List.of();
        }
        Path whole = given.toAbsolutePath().normalize();
        List<PlacedFootage> exact = all.stream()
                .filter(f -> f.footage().file().toAbsolutePath().normalize().equals(whole))
                .toList();
        return exact.isEmpty() && !text.isEmpty()
                ? all.stream().filter(f -> f.footage().file().endsWith(given)).toList()
                : exact;
    }

    private static PlacedFootage file(String text, List<PlacedFootage> all) throws ProblemException {
        List<PlacedFootage> found = files(text, all);
        String names =
                all.stream().map(f -> TakeSources.name(f, all)).distinct().collect(Collectors.joining(", "));
        if (found.isEmpty()) {
            throw new ProblemException(
                    "is not one of the matched files",
                    text,
                    names.isEmpty() ? "match it first" : "match it first, or choose one of: " + names);
        }
        if (found.size() > 1) {
            throw new ProblemException("is the name of several matched files", text, "choose one of: " + names);
        }
        if (!there(found.get(0))) {
            throw new ProblemException(
                    "is not there any more",
                    found.get(0).footage().file().toString(),
                    "put it back, or match it where it is now");
        }
        return found.get(0);
    }

    private static boolean there(PlacedFootage placed) {
        return Files.isRegularFile(placed.footage().file());
    }

    /** What can be chosen for the sound of a take besides what the program chooses, each as it is written and as it is said. */
    public static List<Choice> sounds(TakeSources take) {
        return take.sounds().stream()
                .filter(Source::there)
                .flatMap(source -> sounds(take, source))
                .toList();
    }

    /** The same for its picture. */
    public static List<Choice> pictures(TakeSources take) {
        return take.pictures().stream()
                .filter(Source::there)
                .map(source -> new Choice(source.name(), source.name()))
                .toList();
    }

    /**
     * Something that can be chosen.
     *
     * @param value as it is written
     * @param words as it is said
     */
    public record Choice(String value, String words) {}

    /** Of a file with many channels its pairs are too many for a list: then only those that are clearest or used. */
    private static Stream<Choice> sounds(TakeSources take, Source source) {
        int count = TakeSources.channels(source);
        if (source.footage().isEmpty() || count == 1) {
            return Stream.of(new Choice(value(source), source.name()));
        }
        Optional<Channels> clearest =
                source.footage().get().hearing(take.take().number()).map(Hearing::channels);
        return Channels.of(count).stream()
                .filter(some -> !some.pair()
                        || count <= FEW
                        || clearest.equals(Optional.of(some))
                        || source.channels().equals(Optional.of(some)))
                .map(some -> new Choice(
                        source.name() + ":" + some.text(),
                        source.name() + ", " + some.words()
                                + (clearest.equals(Optional.of(some)) ? " (the clearest)" : "")));
    }

    /** How a sound is written when it is chosen. */
    static String value(Source source) {
        if (source.footage().isEmpty()) {
            return OWN;
        }
        return TakeSources.channels(source) == 1
                ? source.name()
                : source.name() + ":" + source.channels().orElse(Channels.ALL).text();
    }
}
