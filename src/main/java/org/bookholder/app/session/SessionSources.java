package org.bookholder.app.session;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.cutlist.TakeSources;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.journal.FootageNotes;
import org.bookholder.journal.TakeFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Take;

/**
 * The files in which a stored session is seen and heard.
 *
 * @param footage the matched ones; one that was moved and matched again stands there once
 * @param takes which of them are used for each take, in order of takes
 */
public record SessionSources(List<PlacedFootage> footage, List<TakeSources> takes) {
    /** Copies the lists. */
    public SessionSources {
        footage = List.copyOf(footage);
        takes = List.copyOf(takes);
    }

    /**
     * Those of a session.
     *
     * @throws ProblemException if the notes on its footage cannot be read
     */
    public static SessionSources of(StoredSession kept) throws ProblemException {
        List<PlacedFootage> noted = FootageNotes.read(kept.folder().path());
        List<PlacedFootage> footage =
                noted.stream().filter(placed -> !superseded(placed, noted)).toList();
        List<TakeSources> takes = new ArrayList<>();
        for (Take take : kept.state().takes().all()) {
            takes.add(TakeSources.of(
                    take,
                    TakeFile.holdsSound(kept.folder().takeFile(take.number())),
                    footage,
                    kept.state().remarks().film(0),
                    Files::isRegularFile));
        }
        return new SessionSources(footage, takes);
    }

    /** Whether a file was moved and matched again where it is now. */
    private static boolean superseded(PlacedFootage placed, List<PlacedFootage> all) {
        return !Files.isRegularFile(placed.footage().file())
                && all.stream()
                        .map(PlacedFootage::footage)
                        .anyMatch(other ->
                                other.name().equals(placed.footage().name()) && Files.isRegularFile(other.file()));
    }
}
