package org.bookholder.course;

import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.settled;
import static org.bookholder.testing.Readings.swapped;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.journal.Replay;
import org.bookholder.script.model.Script;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.Readings;

/** Sessions of imagined readings. */
public final class Sessions {
    /** A second for each word: 60 words a minute. */
    private static final double SECONDS_PER_LINE = 10;

    private Sessions() {}

    /**
     * A session of one take in which lines from the first on were read, ten seconds each.
     *
     * @param outcomes a letter for each line: c clean, m misread, s skipped; the lines after them were not come to
     */
    public static RecordedSession of(Script script, Instant when, String outcomes) {
        List<SessionEvent> events = new ArrayList<>(List.of(Readings.rolled(1, 0, when)));
        int ordinal = 0;
        double at = 0;
        for (int i = 0; i < outcomes.length(); i++) {
            int line = i + 1;
            int words = script.lines().get(i).words().size();
            if (outcomes.charAt(i) != 's') {
                for (int word = 1; word <= words; word++) {
                    boolean last = word == words;
                    events.add(Readings.moved(
                            at + word * SECONDS_PER_LINE / words, last ? line + 1 : line, last ? 1 : word + 1, 1));
                }
                at += SECONDS_PER_LINE;
                events.add(settled(
                        outcomes.charAt(i) == 'c'
                                ? complete(1, ++ordinal, line, words, at - SECONDS_PER_LINE, at)
                                : complete(
                                        1, ++ordinal, line, words, at - SECONDS_PER_LINE, at, swapped(1, "a", "b"))));
            } else {
                events.add(Readings.moved(at + 0.001, line + 1, 1, 0));
            }
        }
        events.add(Readings.cut(1, at, when.plus(s(at).toDuration())));
        return new RecordedSession(
                Path.of("session"),
                Replay.state(Session.begin(script, FatigueLimits.defaults()), events, Session::apply));
    }
}
