package org.bookholder.film;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleConsumer;
import java.util.stream.Collectors;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.DiskRoom;
import org.bookholder.files.FileNames;
import org.bookholder.files.PrivateFiles;
import org.bookholder.files.RunFolder;
import org.bookholder.files.UnusedName;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.film.picture.ClipStore;
import org.bookholder.film.picture.FilmPictures;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.program.FfmpegRun;
import org.bookholder.film.program.Pause;
import org.bookholder.film.sound.FilmSound;
import org.bookholder.film.sound.SoundFinish;
import org.bookholder.film.words.FilmWords;
import org.bookholder.handoff.captions.FilmTexts;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.CompletionLatch;

/**
 * Makes a film: its pictures clip by clip, its sound meanwhile, at last one file of both. It works in a folder beside the film's,
 * which goes when it is done or stopped; the film gets its name only when it is whole. Confined to one thread.
 */
public final class FilmMaker {
    private static final String FONT = "font.otf";
    private static final String FONT_RESOURCE = "/com/formdev/flatlaf/fonts/inter/Inter-Regular.otf";

    /** The parts of the work that sound and pictures take, about. */
    private static final double SOUND = 0.1;

    private static final double PICTURES = 0.86;

    private static final long LOOK_MILLIS = 40;

    /** Bytes for each second of film that its sound takes while it is made: six times 32 bits for each sample. */
    private static final long SOUND_BYTES = 6L * 4 * 48_000;

    /** Room that is left to others, in bytes. */
    private static final long SPARE = 100_000_000;

    private final FilmOrder order;
    private final Optional<ClipStore> kept;
    private final int atOnce;
    private final DoubleConsumer listener;

    /**
     * Begins.
     *
     * @param kept where the pictures of clips are kept for the next film; empty if they go with the work
     * @param atOnce how many clips are made at once: one for each core is quickest
     * @param listener is told the part of the work that is done, 0 to 1, several times a second; may end it by throwing
     */
    public FilmMaker(FilmOrder order, Optional<ClipStore> kept, int atOnce, DoubleConsumer listener) {
        this.order = order;
        this.kept = kept;
        this.atOnce = atOnce;
        this.listener = listener;
    }

    /**
     * Makes it.
     *
     * @throws ProblemException if a source cannot be read, or there is no room; then nothing is left behind
     */
    public FilmMade make() throws ProblemException {
        Path parent = Objects.requireNonNull(order.wanted().toAbsolutePath().getParent());
        try {
            Files.createDirectories(parent);
            checkRoom(order.plan(), order.format(), parent);
            try (RunFolder work = RunFolder.create(parent)) {
                return make(work.path());
            }
        } catch (IOException e) {
            throw DiskProblems.writing(order.wanted(), e);
        }
    }

    /**
     * Looks whether there is room for a film, and for what it is made of while it is made.
     *
     * @param folder where it is to lie; need not be there yet
     * @throws ProblemException if there is none
     */
    public static void checkRoom(FilmPlan plan, FilmFormat format, Path folder) throws ProblemException {
        long needed = (long) (plan.length().seconds() * (2 * format.bytesPerSecond() + SOUND_BYTES)) + SPARE;
        Path there = folder.toAbsolutePath();
        while (!Files.isDirectory(there) && there.getParent() != null) {
            there = there.getParent();
        }
        checkRoom(DiskRoom.free(there), needed, folder);
    }

    static void checkRoom(long usable, long needed, Path folder) throws ProblemException {
        if (usable < needed) {
            throw new ProblemException(
                    "there is no room for the film: it takes about " + (needed >> 20) + " MB while it is made, and "
                            + (usable >> 20) + " MB are free",
                    folder.toString(),
                    "free some space, or name a file on another disk with --out");
        }
    }

    private FilmMade make(Path work) throws ProblemException, IOException {
        ClipStore store = kept.orElseGet(() -> new ClipStore(work.resolve("clips")));
        PrivateFiles.createFolder(store.folder());
        FilmWords words = FilmWords.of(order.plan(), order.script());
        SoundFinish.Finished sound;
        Path whole;
        // Its folder beside the clips tells other films, until this one is whole, that its clips are needed.
        try (RunFolder place = RunFolder.create(store.folder());
                FilmPictures pictures = pictures(store, place.path())) {
            // FFmpeg makes pictures while the sound is mixed here.
            sound = sound(work, pictures);
            Mux mux = new Mux(work, sound, words);
            List<String> clips = clips(pictures, store, mux);
            whole = mux.film(files(store, clips));
            store.keepOnly(Set.copyOf(clips), place.path());
        }
        Path file = UnusedName.move(whole, order.wanted().toAbsolutePath());
        return new FilmMade(
                file,
                beside(work, file, words.texts()),
                order.plan().length().seconds(),
                sound.reading(),
                sound.held());
    }

    private SoundFinish.Finished sound(Path work, FilmPictures pictures) throws ProblemException {
        Path mix = new FilmSound(order.plan(), work, part -> {
                    pictures.step();
                    tell(part * SOUND * 0.6, pictures.made());
                })
                .mix();
        FilmFormat format = order.format();
        return new SoundFinish(work, format.loudness(), format.truePeak(), () -> {
                    pictures.step();
                    tell(SOUND * 0.8, pictures.made());
                    rest();
                })
                .finish(mix);
    }

    private void tell(double sound, long pictures) {
        listener.accept(sound + PICTURES * pictures / Math.max(1, order.plan().frames()));
    }

    private FilmPictures pictures(ClipStore store, Path work) throws ProblemException, IOException {
        new AtomicFiles(Access.OWNER).writeAll(Map.of(work.resolve(FONT), out -> {
            try (InputStream font = FilmMaker.class.getResourceAsStream(FONT_RESOURCE)) {
                Objects.requireNonNull(font, FONT_RESOURCE).transferTo(out);
            }
        }));
        return new FilmPictures(order.plan(), order.format(), order.script(), order.draft(), FONT, store, work, atOnce);
    }

    /** Makes the pictures; meanwhile the beginning can be seen of a film that somebody looks at. */
    private List<String> clips(FilmPictures pictures, ClipStore store, Mux mux) throws ProblemException {
        if (order.beginnings().isEmpty()) {
            return pictures.make(made -> tell(SOUND, made), FilmMaker::rest);
        }
        Path folder = order.beginnings().get();
        try (Beginning beginning = new Beginning(
                order,
                folder,
                (clips, seconds) -> mux.beginning(clips, seconds, () -> {
                    pictures.step();
                    tell(SOUND, pictures.made());
                }))) {
            return pictures.make(made -> tell(SOUND, made), () -> {
                List<String> ready = pictures.ready();
                beginning.ready(files(store, ready), pictures.frames(ready.size()));
                rest();
            });
        }
    }

    private static List<Path> files(ClipStore store, List<String> clips) {
        return clips.stream().map(store::file).toList();
    }

    /** Puts pictures, sound and words together. */
    private final class Mux {
        private final Path work;
        private final SoundFinish.Finished sound;
        private final FilmWords words;

        Mux(Path work, SoundFinish.Finished sound, FilmWords words) {
            this.work = work;
            this.sound = sound;
            this.words = words;
        }

        Path film(List<Path> clips) throws ProblemException, IOException {
            return made("film", clips, order.plan().length().seconds(), frames -> {
                double all = Math.max(1, order.plan().frames());
                listener.accept(SOUND + PICTURES + (1 - SOUND - PICTURES) * frames / all);
            });
        }

        Path beginning(List<Path> clips, double seconds, Pause meanwhile) throws ProblemException, IOException {
            Files.deleteIfExists(work.resolve("beginning." + order.format().container()));
            return made("beginning", clips, seconds, frames -> meanwhile.rest());
        }

        private Path made(String stem, List<Path> clips, double seconds, Step step)
                throws ProblemException, IOException {
            AtomicFiles files = new AtomicFiles(Access.OWNER);
            String list = stem + ".txt";
            files.write(
                    work.resolve(list), clips.stream().map(FilmMaker::listed).collect(Collectors.joining()));
            files.write(work.resolve("notes.txt"), words.notes(order.script().title()));
            String captions = words.texts().subRip();
            if (!captions.isEmpty()) {
                files.write(work.resolve("captions.srt"), captions);
            }
            String name = stem + "." + order.format().container();
            MuxCommand command = new MuxCommand(
                    order.format(),
                    list,
                    SoundFinish.input(sound.file()),
                    captions.isEmpty() ? "" : "captions.srt",
                    "notes.txt",
                    order.language(),
                    seconds);
            try (FfmpegRun run = FfmpegRun.start("the film", command.to(name), work, stem + ".log")) {
                while (run.runs()) {
                    rest();
                    step.made(run.frames());
                }
                run.check();
            }
            return work.resolve(name);
        }
    }

    /** Is told how many pictures were put together. */
    @FunctionalInterface
    private interface Step {
        void made(long frames) throws ProblemException;
    }

    /** A file as FFmpeg's lists name it. */
    private static String listed(Path file) {
        return "file '" + file.toString().replace("'", "'\\''") + "'\n";
    }

    /** Captions and text of a film beside it, under its name. */
    private List<Path> beside(Path work, Path film, FilmTexts texts) throws IOException {
        String stem = FileNames.stem(film);
        List<Path> files = new ArrayList<>();
        for (Map.Entry<String, String> text : Map.of(
                        ".vtt", texts.webVtt(), ".srt", texts.subRip(), ".txt", texts.transcript())
                .entrySet()) {
            Path draft = work.resolve("beside" + text.getKey());
            new AtomicFiles(Access.KEPT).write(draft, text.getValue());
            files.add(UnusedName.move(draft, film.resolveSibling(stem + text.getKey())));
        }
        files.sort(null);
        return files;
    }

    private static void rest() {
        new CompletionLatch().await(LOOK_MILLIS);
    }
}
