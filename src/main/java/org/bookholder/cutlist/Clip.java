package org.bookholder.cutlist;

import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.Attempt;
import org.bookholder.session.FilmChoices;
import org.bookholder.timing.StreamTime;

/**
 * A part of a take that is used.
 *
 * @param take take number, from 1
 * @param in where it begins, in the session's audio
 * @param out where it ends
 * @param quietFrom start of the silence before it: the clip can be extended back to here
 * @param quietTo end of the silence after it
 * @param attempts its attempts, one for each of its lines, in script order; at least one
 * @param markers notes for the editor
 * @param framing how close someone wants it framed
 * @param camera the name of the file of the camera that someone wants; empty if nobody chose one
 */
public record Clip(
        int take,
        StreamTime in,
        StreamTime out,
        StreamTime quietFrom,
        StreamTime quietTo,
        List<Attempt> attempts,
        List<CutMarker> markers,
        FilmChoices.Framing framing,
        Optional<String> camera)
        implements CutItem {
    /** Copies the lists and checks the order. */
    public Clip {
        attempts = List.copyOf(attempts);
        markers = List.copyOf(markers);
        if (attempts.isEmpty() || !in.isBefore(out)) {
            throw new IllegalArgumentException("a clip (" + in + " to " + out + ") must hold an attempt");
        }
    }

    @Override
    public int firstLine() {
        return attempts.get(0).line();
    }

    @Override
    public int lastLine() {
        return attempts.get(attempts.size() - 1).line();
    }

    @Override
    public StreamTime length() {
        return out.since(in);
    }

    @Override
    public Optional<Clip> clip() {
        return Optional.of(this);
    }
}
