package org.bookholder.app.handoff;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.timing.FrameRate;

/**
 * What a hand-off is to hold, and where it goes.
 *
 * @param out where the files go; empty for the usual folder in the session
 * @param parts the kinds of files, in the order in which they are written
 * @param chosen whether the kinds were chosen one by one; otherwise those that cannot be written are left out
 * @param rate frames a second; empty for the camera's
 * @param dropFrame whether to count in drop-frame timecode; empty for as the camera does
 * @param useMisread whether a misread attempt fills a line that has no clean one
 * @param deliveryWidth of the delivered picture, pixels; limits the punch-in
 * @param deliveryHeight of the delivered picture, pixels
 * @param replace whether files that are there already are replaced
 */
public record HandOffRequest(
        Optional<Path> out,
        List<HandOffPart> parts,
        boolean chosen,
        Optional<FrameRate> rate,
        Optional<Boolean> dropFrame,
        boolean useMisread,
        int deliveryWidth,
        int deliveryHeight,
        boolean replace) {
    private static final int FULL_HD_WIDTH = 1920;
    private static final int FULL_HD_HEIGHT = 1080;

    /** The whole hand-off in the usual folder, as the camera has it, for a picture of 1920 by 1080. */
    public static HandOffRequest usual(List<HandOffPart> parts, boolean replace) {
        return new HandOffRequest(
                Optional.empty(),
                parts,
                false,
                Optional.empty(),
                Optional.empty(),
                false,
                FULL_HD_WIDTH,
                FULL_HD_HEIGHT,
                replace);
    }

    /** Where a session's hand-off goes unless another folder is named. */
    public static Path usualFolder(Path session) {
        return session.resolve("handoff");
    }

    /** Where the files of a session go. */
    public Path folder(Path session) {
        return out.orElseGet(() -> usualFolder(session));
    }
}
