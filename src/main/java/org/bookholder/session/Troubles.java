package org.bookholder.session;

import java.util.List;
import java.util.stream.Stream;

/**
 * What is wrong now.
 *
 * @param all at most one of each kind, in the order of the kinds
 */
public record Troubles(List<Trouble> all) {
    /** Nothing is wrong. */
    public static final Troubles NONE = new Troubles(List.of());

    /** Copies the list. */
    public Troubles {
        all = List.copyOf(all);
    }

    /** Whether nothing is wrong. */
    public boolean isEmpty() {
        return all.isEmpty();
    }

    /** The same with one more; it replaces one of the same kind. */
    public Troubles with(Trouble trouble) {
        return new Troubles(Stream.concat(without(trouble.kind()).all.stream(), Stream.of(trouble))
                .sorted((a, b) -> a.kind().compareTo(b.kind()))
                .toList());
    }

    /** The same when a take starts, with a microphone or without one. */
    Troubles takeStarted(boolean heard) {
        Troubles recording = without(Trouble.Kind.NOT_RECORDED);
        return heard ? recording.sourceFound() : recording;
    }

    /** The same when the microphone that was meant is heard. */
    Troubles sourceFound() {
        return without(Trouble.Kind.NO_SOUND).without(Trouble.Kind.OTHER_MICROPHONE);
    }

    /** The same when the presenter is understood badly, or well again. */
    Troubles understood(SessionEvent.Understood event) {
        return event.badly()
                ? with(new Trouble(Trouble.Kind.HEARD_BADLY, String.valueOf(Math.round(100 * event.share()))))
                : without(Trouble.Kind.HEARD_BADLY);
    }

    /** The same without the trouble of this kind. */
    public Troubles without(Trouble.Kind kind) {
        return all.stream().noneMatch(t -> t.kind() == kind)
                ? this
                : new Troubles(all.stream().filter(t -> t.kind() != kind).toList());
    }
}
