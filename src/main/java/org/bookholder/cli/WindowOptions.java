package org.bookholder.cli;

import java.util.EnumSet;
import java.util.Set;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Mover;
import org.bookholder.view.settings.Cue;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;
import org.bookholder.view.settings.WindowWish;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options of the reading window. */
final class WindowOptions {
    @Option(names = "--full-screen", negatable = true, description = "Fill the monitor.")
    private @Nullable Boolean fullScreen;

    @Option(names = "--monitor", paramLabel = "N", description = "Fill monitor N, counted from 1.")
    private @Nullable Integer monitor;

    @Option(names = "--mirror", negatable = true, description = "Swap left and right, for reading in a pane of glass.")
    private @Nullable Boolean mirror;

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

    @Option(
            names = "--count-in",
            paramLabel = "S",
            description = "Hold each take at first and count S seconds before it is read, 1 to 10; the first when you "
                    + "press H. Default: no count.")
    private @Nullable Integer countIn;

    @Option(
            names = "--eye-line",
            paramLabel = "PERCENT",
            description = "Where the row being read stands, in percent of the height from the top. Default: 33.")
    private @Nullable Double eyeLine;

    @Option(
            names = "--hide",
            paramLabel = "CUE",
            split = ",",
            description = "Cues to leave out: pace, pickups, time, break, sound, footlights.")
    private Set<Cue> hidden = Set.of();

    /** What should move the text. */
    Mover move() {
        return move;
    }

    /** Seconds to count before each take of a reading without a window; 0 unless the option was given. */
    int countIn() throws ProblemException {
        return countIn == null ? 0 : (int) in("--count-in", countIn, 1, 10);
    }

    /** Refuses values out of range also where no window will open. */
    void check() throws ProblemException {
        over(WindowWish.defaults());
    }

    /** Applies the options to saved settings. */
    WindowWish over(WindowWish kept) throws ProblemException {
        WindowSettings settings = kept.settings().withWay(move);
        settings = mirror == null ? settings : settings.withMirrored(mirror);
        if (distance != null) {
            settings = settings.withDistance(10 * in("--distance", distance, 20, 2000));
        }
        if (size != null) {
            settings = settings.withSize(in("--size", size, 8, 1000));
        }
        if (words != null) {
            settings = settings.withColumnWords((int) in("--words", words, 3, 12));
        }
        if (countIn != null) {
            settings = settings.withCountIn((int) in("--count-in", countIn, 1, 10));
        }
        if (eyeLine != null) {
            settings = settings.withEyeLine(in("--eye-line", eyeLine, 10, 80) / 100);
        }
        if (!hidden.isEmpty()) {
            Set<Cue> shown = EnumSet.allOf(Cue.class);
            shown.removeAll(hidden);
            settings = settings.withCues(shown);
        }
        return new WindowWish(settings, place(kept.place()));
    }

    private WindowPlace place(WindowPlace kept) throws ProblemException {
        WindowPlace place = monitor == null ? kept : kept.on((int) in("--monitor", monitor, 1, 99));
        boolean filling = fullScreen == null ? monitor != null || kept.fullScreen() : fullScreen;
        return filling ? place.filled() : WindowPlace.windowed().on(place.monitor());
    }

    private static double in(String option, double value, double least, double most) throws ProblemException {
        if (!(value >= least && value <= most)) {
            throw new ProblemException(
                    "the value is out of range", option, "give a number from " + (long) least + " to " + (long) most);
        }
        return value;
    }
}
