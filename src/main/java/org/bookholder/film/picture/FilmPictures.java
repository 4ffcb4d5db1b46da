package org.bookholder.film.picture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.course.Text;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.Shot;
import org.bookholder.film.program.FfmpegRun;
import org.bookholder.film.program.Pause;
import org.bookholder.follow.model.Attempt;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.timing.StreamTime;

/** Makes the pictures of a film, clip by clip, several at once; those that are kept already are not made again. Confined to one thread. */
public final class FilmPictures implements AutoCloseable {
    private static final int CARD_COLUMNS = 43;
    private static final int TITLE_COLUMNS = 26;

    private final FilmPlan plan;
    private final List<PicturePiece> pieces;
    private final Script script;
    private final boolean draft;
    private final ClipCommand commands;
    private final ClipStore store;
    private final Path folder;
    private final int atOnce;
    private final List<String> names = new ArrayList<>();
    private final List<Work> running = new ArrayList<>();
    private long done;

    /** How many of the first clips are known to be in the store. */
    private int whole;

    /** Is told how far the work is, in pictures made, several times a second; may end it by throwing. */
    @FunctionalInterface
    public interface Listener {
        /** So many pictures have been made. */
        void made(long frames);
    }

    /**
     * Begins.
     *
     * @param script the lesson, for what stands on cards
     * @param draft whether quick scaling is good enough, and the numbers of lines are burnt in
     * @param font name of the font's file in {@code folder}
     * @param store where clips are kept
     * @param folder where the work is done, on the same disk
     * @param atOnce how many clips are made at once
     */
    public FilmPictures(
            FilmPlan plan,
            FilmFormat format,
            Script script,
            boolean draft,
            String font,
            ClipStore store,
            Path folder,
            int atOnce) {
        this.plan = plan;
        this.pieces = PicturePiece.of(plan);
        this.script = script;
        this.draft = draft;
        this.commands = new ClipCommand(format, draft, font);
        this.store = store;
        this.folder = folder;
        this.atOnce = atOnce;
    }

    /** A piece that is being made. */
    private record Work(int piece, String name, FfmpegRun run) {}

    /**
     * Makes them.
     *
     * @return the names of the clips in the store, in order
     * @throws ProblemException if one cannot be made
     */
    public List<String> make(Listener listener, Pause pause) throws ProblemException {
        while (step()) {
            listener.made(made());
            pause.rest();
        }
        listener.made(made());
        return List.copyOf(names);
    }

    /**
     * Looks after what is being made, and begins what comes next; returns at once, so that other work can be done meanwhile.
     *
     * @return whether anything is left to be made
     * @throws ProblemException if a clip cannot be made
     */
    public boolean step() throws ProblemException {
        for (Work work : List.copyOf(running)) {
            if (!work.run().runs()) {
                running.remove(work);
                end(work);
                done += pieces.get(work.piece()).frames();
            }
        }
        while (names.size() < pieces.size() && running.size() < atOnce) {
            int number = names.size();
            PicturePiece piece = pieces.get(number);
            List<Overlay> overlays = overlays(piece);
            String name = name(piece, overlays);
            names.add(name);
            if (store.has(name) || running.stream().anyMatch(work -> work.name().equals(name))) {
                done += piece.frames();
            } else {
                running.add(new Work(number, name, start(piece, overlays, name)));
            }
        }
        return !running.isEmpty();
    }

    /** The names of the first clips that are whole. */
    public List<String> ready() {
        while (whole < names.size() && store.has(names.get(whole))) {
            whole++;
        }
        return List.copyOf(names.subList(0, whole));
    }

    /** How many pictures so many of the first clips have. */
    public long frames(int clips) {
        return pieces.stream().limit(clips).mapToLong(PicturePiece::frames).sum();
    }

    /** How many pictures have been made. */
    public long made() {
        return done + running.stream().mapToLong(work -> work.run().frames()).sum();
    }

    /** Ends what is still being made. */
    @Override
    public void close() {
        running.forEach(work -> work.run().close());
    }

    private void end(Work work) throws ProblemException {
        work.run().check();
        PicturePiece piece = pieces.get(work.piece());
        long made = work.run().frames();
        if (made < piece.frames()) {
            throw new ProblemException(
                    "the picture ends in the middle of " + lines(piece.clip()) + " (" + made + " of " + piece.frames()
                            + " pictures)",
                    piece.shot().map(shot -> shot.file().toString()).orElse("a card"),
                    "copy the file from the camera's card again, and match it again");
        }
        store.keep(folder.resolve(work.name()), work.name());
    }

    private String name(PicturePiece piece, List<Overlay> overlays) throws ProblemException {
        List<Path> source = piece.shot().map(Shot::file).stream().toList();
        return store.name(commands.of(piece, overlays, ""), source, commands.ending());
    }

    private FfmpegRun start(PicturePiece piece, List<Overlay> overlays, String file) throws ProblemException {
        return FfmpegRun.start(
                "the picture of " + lines(piece.clip()), commands.of(piece, overlays, file), folder, file + ".log");
    }

    private static String lines(FilmClip clip) {
        if (clip.isTitle()) {
            return "the title";
        }
        return clip.firstLine() == clip.lastLine()
                ? "line " + clip.firstLine()
                : "lines " + clip.firstLine() + " to " + clip.lastLine();
    }

    private List<Overlay> overlays(PicturePiece piece) throws ProblemException {
        FilmClip clip = piece.clip();
        List<Overlay> overlays = new ArrayList<>();
        double length = plan.rate().length(piece.frames()).seconds() + 1;
        if (clip.isTitle()) {
            overlays.add(new Overlay(written(title()), Overlay.Place.TITLE, 0, length));
        } else if (piece.shot().isEmpty()) {
            overlays.add(new Overlay(written(card(clip)), Overlay.Place.MIDDLE, 0, length));
        }
        double offset = plan.rate().length(piece.offset()).seconds();
        List<Attempt> attempts = clip.attempts();
        for (int i = 0; i < attempts.size() && draft; i++) {
            double from = i == 0 ? 0 : Math.max(0, since(clip, attempts.get(i).start()) - offset);
            double to =
                    i + 1 < attempts.size() ? since(clip, attempts.get(i + 1).start()) - offset : length;
            if (from < to) {
                String file = written("line " + attempts.get(i).line() + ", take " + clip.take());
                overlays.add(new Overlay(file, Overlay.Place.CORNER, from, to));
            }
        }
        return overlays;
    }

    private static double since(FilmClip clip, StreamTime time) {
        return time.since(clip.in()).seconds();
    }

    private String title() {
        return String.join("\n", Text.wrap(script.title(), TITLE_COLUMNS));
    }

    private String card(FilmClip clip) {
        StringBuilder text =
                new StringBuilder(clip.used() ? "Not filmed" : "Line " + clip.firstLine() + ": nothing to use yet");
        for (int line = clip.firstLine(); line <= clip.lastLine(); line++) {
            String words = script.lines().get(line - 1).text();
            text.append("\n\n").append(String.join("\n", Text.wrap(words, CARD_COLUMNS)));
        }
        return text.toString();
    }

    /** The file of a text, named by what it says. */
    private String written(String text) throws ProblemException {
        Path file = folder.resolve(store.name(List.of(text), List.of(), ".txt"));
        try {
            if (!Files.exists(file)) {
                new AtomicFiles(Access.OWNER).write(file, text);
            }
            return String.valueOf(file.getFileName());
        } catch (IOException e) {
            throw DiskProblems.writing(file, e);
        }
    }
}
