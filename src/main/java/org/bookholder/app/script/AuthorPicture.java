package org.bookholder.app.script;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.course.lists.CoverFiles;
import org.bookholder.footage.PictureFacts;
import org.bookholder.footage.ffmpeg.PictureFile;
import org.bookholder.footage.ffmpeg.StillFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.Script;

/**
 * A picture or clip of the author's that a script asks for, as it lies beside the script.
 *
 * @param cover where the script asks for it
 * @param file its file
 * @param facts how its picture is stored
 * @param still whether it is a still, and no clip
 */
public record AuthorPicture(Cover cover, Path file, PictureFacts facts, boolean still) {
    /** One that cannot be shown. */
    public record Missing(Cover cover, ProblemException why) {}

    /**
     * Looks for one, without decoding it.
     *
     * @throws ProblemException if it is not there or cannot be read, with its line in the script
     */
    public static AuthorPicture of(Script script, Cover cover) throws ProblemException {
        try {
            Path file = CoverFiles.of(script, cover)
                    .orElseThrow(() -> new ProblemException("there is no such file", cover.file(), ""));
            boolean still = StillFile.isStill(file);
            return new AuthorPicture(cover, file, still ? StillFile.look(file) : PictureFile.look(file), still);
        } catch (ProblemException e) {
            throw new ProblemException(
                    cover.file() + " cannot be shown: " + e.what(),
                    script.source() + (cover.sourceLine() > 0 ? ":" + cover.sourceLine() : ""),
                    "put a PNG, JPEG, WebP, MP4 or MOV there, or take it out of the script",
                    e);
        }
    }

    /** Those of a script that cannot be shown, in its order. */
    public static List<Missing> missing(Script script) {
        List<Missing> missing = new ArrayList<>();
        for (Cover cover : script.covers()) {
            try {
                of(script, cover);
            } catch (ProblemException e) {
                missing.add(new Missing(cover, e));
            }
        }
        return List.copyOf(missing);
    }
}
