package org.bookholder.app.session;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.course.lists.SetUpList;
import org.bookholder.film.FilmStill;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;

/** Pictures out of the camera's files of a session, kept in its folder of films. */
public final class SessionPictures {
    private static final String FOLDER = "film";

    private SessionPictures() {}

    /**
     * A picture from the middle of the last take that the last camera's file shows; made unless it is there.
     *
     * @return empty if no camera's file was matched with the session, or none is there any more
     * @throws ProblemException if it cannot be made
     */
    public static Optional<Path> still(Path session) throws ProblemException {
        Optional<PlacedFootage> film = SetUpList.filmed(session);
        if (film.isEmpty()) {
            return Optional.empty();
        }
        PlacedFootage placed = film.get();
        Placement take = placed.placements().get(placed.placements().size() - 1);
        StreamTime middle = new StreamTime((take.from().ticks() + take.to().ticks()) / 2);
        double seconds = new StreamTime(Math.max(0, take.inFile(middle))).seconds();
        Path camera = placed.footage().file();
        String name = String.format(Locale.ROOT, "still-%08x.jpg", (camera + "@" + seconds).hashCode());
        Path still = session.resolve(FOLDER).resolve(name);
        FilmStill.make(camera, seconds, still);
        return Optional.of(still);
    }
}
