package org.bookholder.app.reading;

import java.util.Optional;
import org.bookholder.desk.DeskCourse;
import org.bookholder.desk.ServedSession;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.runtime.stage.Latest;

/** What a desk shows that goes from lesson to lesson: the session that is being read. Safe for use by several threads. */
final class CurrentSession implements SessionDirectory {
    private final Latest<ServedSession> current;

    CurrentSession(ServedSession first) {
        current = new Latest<>(first);
    }

    /** Shows another session from now on; the pages of the one before come back and are shown this one. */
    void show(ServedSession next) {
        ServedSession before = current.get();
        current.set(next);
        before.feed().end();
    }

    @Override
    public Optional<ServedSession> session(String name) {
        return name.equals(ONLY) ? Optional.of(current.get()) : Optional.empty();
    }

    @Override
    public Optional<DeskCourse> course() {
        return Optional.empty();
    }
}
