package org.bookholder.film;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.UnusedName;
import org.bookholder.problem.ProblemException;

/**
 * Shows the beginning of a film while the rest is being made: as much as there is, as a film of its own. A longer one is put together
 * when there is nearly twice as much, so that all of them together cost about twice what putting the film together costs. They are
 * removed when the film is there, or when its making is stopped. Confined to one thread.
 */
final class Beginning implements AutoCloseable {
    /** The first has at least so many seconds. */
    private static final double FIRST = 4;

    /** Each next one is at least so many times as long as the one before. */
    private static final double MORE = 1.8;

    /** The ninth has at least 440 seconds; what is made after that is seen with the whole film. */
    private static final int MOST = 9;

    private final Path folder;
    private final FilmOrder order;
    private final Muxer muxer;
    private int made;
    private double next = FIRST;

    /** Puts the beginning of a film together. */
    @FunctionalInterface
    interface Muxer {
        /** Writes a film of so many seconds from the first clips, and returns where it is. */
        Path film(List<Path> clips, double seconds) throws ProblemException, IOException;
    }

    /**
     * Begins.
     *
     * @param folder where the beginnings go, on the disk of the work
     */
    Beginning(FilmOrder order, Path folder, Muxer muxer) {
        this.order = order;
        this.folder = folder;
        this.muxer = muxer;
        // A killed run may have left some.
        remove();
    }

    /**
     * Takes in how far the pictures are.
     *
     * @param clips the first clips of the film, all whole
     * @param frames how many pictures they have
     */
    void ready(List<Path> clips, long frames) throws ProblemException {
        double seconds = order.plan().rate().length(frames).seconds();
        if (seconds < next || frames >= order.plan().frames() || made == MOST) {
            return;
        }
        Path file = file(++made);
        try {
            UnusedName.move(muxer.film(clips, seconds), file);
            next = MORE * seconds;
        } catch (IOException e) {
            throw DiskProblems.writing(file, e);
        }
    }

    private Path file(int number) {
        return folder.resolve("begun-" + number + "." + order.format().container());
    }

    @Override
    public void close() {
        remove();
    }

    private void remove() {
        for (int number = 1; number <= MOST; number++) {
            try {
                Files.deleteIfExists(file(number));
            } catch (IOException e) {
                // Windows keeps a film that is being played; the next draft removes it.
            }
        }
    }
}
