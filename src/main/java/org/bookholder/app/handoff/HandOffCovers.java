package org.bookholder.app.handoff;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.lists.CoverFiles;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.footage.ffmpeg.StillFile;
import org.bookholder.handoff.timeline.CoverMedia;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Script;

/** Finds the author's own pictures and clips for an editor's timeline. */
final class HandOffCovers {
    private HandOffCovers() {}

    /**
     * Those that a script names and that lie beside it.
     *
     * @param remarks takes a sentence for each that is left out
     */
    static List<CoverMedia> of(Script script, List<String> remarks) {
        List<CoverMedia> covers = new ArrayList<>();
        for (Cover cover : script.covers()) {
            Optional<Path> file = CoverFiles.of(script, cover);
            try {
                if (file.isPresent()) {
                    covers.add(new CoverMedia(
                            cover,
                            file.get(),
                            StillFile.isStill(file.get())
                                    ? Optional.empty()
                                    : Optional.of(FootageFile.look(file.get()).length())));
                } else {
                    remarks.add(cover.file() + " is not beside the script: the timeline is without it");
                }
            } catch (ProblemException e) {
                remarks.add(cover.file() + " " + e.what() + ": the timeline is without it");
            }
        }
        return covers;
    }
}
