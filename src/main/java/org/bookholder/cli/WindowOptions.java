package org.bookholder.cli;

import org.bookholder.problem.ProblemException;
import org.bookholder.session.Mover;
import org.bookholder.view.WindowPlace;
import org.bookholder.view.WindowSettings;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options of the reading window. */
final class WindowOptions {
    @Option(names = "--full-screen", description = "Fill the monitor.")
    private boolean fullScreen;

    @Option(names = "--monitor", paramLabel = "N", description = "Fill monitor N, counted from 1.")
    private @Nullable Integer monitor;

    @Option(names = "--mirror", description = "Swap left and right, for reading in a pane of glass.")
    private boolean mirror;

    @Option(
            names = "--distance",
            paramLabel = "CM",
            description = "From your eyes to the screen in cm; sets the size of the type. Default: 150.")
    private @Nullable Double distance;

    @Option(names = "--size", paramLabel = "PX", description = "Size of the type in pixels, whatever the distance.")
    private @Nullable Double size;

    @Option(names = "--words", paramLabel = "N", description = "Words to a row, about. Default: 6.")
    private @Nullable Integer words;

    @Option(
            names = "--move",
            paramLabel = "WAY",
            description = "What moves the text: voice, steady (at the script's pace) or hand. Default: voice.")
    private Mover move = Mover.VOICE;

    /** What moves the text. */
    Mover move() {
        return move;
    }

    /** The wish that the options add up to. */
    WindowWish wish() throws ProblemException {
        WindowSettings settings = WindowSettings.defaults().withMirrored(mirror).withWay(move);
        if (distance != null) {
            settings = settings.withDistance(10 * in("--distance", distance, 20, 2000));
        }
        if (size != null) {
            settings = settings.withSize(in("--size", size, 8, 1000));
        }
        if (words != null) {
            settings = settings.withColumnWords((int) in("--words", words, 3, 12));
        }
        int where = monitor == null ? 1 : (int) in("--monitor", monitor, 1, 99);
        boolean filling = fullScreen || monitor != null;
        return new WindowWish(settings, filling ? WindowPlace.fullScreen(where) : WindowPlace.windowed());
    }

    private static double in(String option, double value, double least, double most) throws ProblemException {
        if (!(value >= least && value <= most)) {
            throw new ProblemException(
                    "the value is out of range", option, "give a number from " + (long) least + " to " + (long) most);
        }
        return value;
    }
}
