package org.bookholder.handoff.edit;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.handoff.timeline.Media;

/**
 * Links from a hand-off to its media: relative if the media lies in the hand-off's folder or in the folder that holds it,
 * so that both can be moved together; otherwise absolute.
 *
 * @param folder the hand-off's folder
 */
record MediaLinks(Path folder) {
    /** The link as a path, with slashes if it is relative. */
    String path(Media media) {
        return beside(media.file())
                ? String.join("/", steps(media.file()))
                : media.file().toString();
    }

    /** The link as a URI reference (RFC 3986). */
    String uri(Media media) {
        return uri(media.file());
    }

    /** The same of any file. */
    String uri(Path file) {
        return beside(file)
                ? String.join("/", steps(file).stream().map(MediaLinks::escaped).toList())
                : file.toUri().toString();
    }

    private boolean beside(Path file) {
        Path here = folder.toAbsolutePath().normalize();
        Path around = here.getParent();
        // Everything lies below a root; that is not "beside".
        boolean whole = around == null || around.getParent() == null;
        return file.toAbsolutePath().normalize().startsWith(whole ? here : around);
    }

    private List<String> steps(Path file) {
        Path here = folder.toAbsolutePath().normalize();
        List<String> steps = new ArrayList<>();
        here.relativize(file.toAbsolutePath().normalize()).forEach(step -> steps.add(step.toString()));
        return steps;
    }

    private static String escaped(String step) {
        try {
            // With a slash before it, a colon in a name does not make it a scheme.
            return new URI(null, null, "/" + step, null)
                    .toASCIIString()
                    .substring(1)
                    .replace(":", "%3A");
        } catch (URISyntaxException e) {
            throw new IllegalStateException("a path must make a URI", e);
        }
    }
}
