package org.bookholder.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/**
 * Makes the events that are left of a damaged journal fit together again: the beginning of the session and of each take is put
 * back if it is missing, by the copy of the script and by the recordings in the session's folder; what still does not fit is
 * left out.
 */
final class EventMender {
    private final Path folder;
    private final List<SessionEvent> events;
    private boolean scriptCopied;
    private final List<Integer> takesPutBack = new ArrayList<>();
    private int unfitting;

    private EventMender(Path folder, List<SessionEvent> events) {
        this.folder = folder;
        this.events = new ArrayList<>(events);
    }

    /**
     * What came of it.
     *
     * @param events events that lead to a state
     * @param scriptCopied whether the script is that of its copy in the folder
     * @param takesPutBack the takes whose beginning was put back
     * @param unfitting how many events were left out because they do not fit
     */
    record Mended(List<SessionEvent> events, boolean scriptCopied, List<Integer> takesPutBack, int unfitting) {}

    /** Mends the events of the session in {@code folder}. */
    static Mended mend(Path folder, List<SessionEvent> events) {
        EventMender mender = new EventMender(folder, events);
        mender.putScriptBack();
        mender.putTakesBack();
        mender.leaveOutWhatDoesNotFit();
        return new Mended(
                List.copyOf(mender.events), mender.scriptCopied, List.copyOf(mender.takesPutBack), mender.unfitting);
    }

    private void putScriptBack() {
        boolean nothing = events.isEmpty() && !TakeFile.holdsSound(SessionFolder.takeFile(folder, 1));
        if (nothing || Replay.firstOpened(events).isPresent()) {
            return;
        }
        for (String name : SessionFolder.SCRIPT_COPIES) {
            Path copy = folder.resolve(name);
            if (Files.isRegularFile(copy) && !scriptCopied) {
                opened(copy).ifPresent(event -> {
                    events.add(0, event);
                    scriptCopied = true;
                });
            }
        }
    }

    private Optional<SessionEvent> opened(Path copy) {
        try {
            String text = ScriptReader.text(copy);
            String source = copy.toAbsolutePath().toString();
            Script script = ScriptReader.parse(text, source, Format.of(source));
            return Optional.of(new SessionEvent.Opened(StreamTime.ZERO, began(copy), script.title(), source, text));
        } catch (ProblemException | IOException e) {
            return Optional.empty();
        }
    }

    /** Time of day of the first event that has one, else of the copy of the script. */
    private Instant began(Path copy) throws IOException {
        Optional<Instant> first =
                events.stream().flatMap(event -> timeOfDay(event).stream()).findFirst();
        return first.isPresent() ? first.get() : Files.getLastModifiedTime(copy).toInstant();
    }

    private void putTakesBack() {
        int last = events.stream()
                .flatMapToInt(event -> take(event).stream())
                .max()
                .orElse(0);
        while (TakeFile.holdsSound(SessionFolder.takeFile(folder, last + 1))) {
            last++;
        }
        for (int take = 1; take <= last; take++) {
            if (startOf(take) < 0) {
                putBack(take);
                takesPutBack.add(take);
            }
        }
    }

    private void putBack(int take) {
        int index = placeFor(take);
        StreamTime at = StreamTime.ZERO;
        Instant when = Instant.EPOCH;
        for (SessionEvent event : events.subList(0, index)) {
            when = timeOfDay(event).orElse(when);
            at = StreamTime.max(at, event.at());
        }
        boolean recorded = TakeFile.holdsSound(SessionFolder.takeFile(folder, take));
        events.add(
                index,
                new SessionEvent.TakeStarted(at, take, when, recorded ? "recording" : "", ReadingPosition.START));
    }

    /** Behind the end of the take before, else before what is known of it or of a later take. */
    private int placeFor(int take) {
        int first = events.size();
        for (int i = events.size() - 1; i >= 0; i--) {
            SessionEvent event = events.get(i);
            if (event instanceof SessionEvent.TakeEnded ended && ended.take() == take - 1) {
                return Math.min(i + 1, first);
            }
            OptionalInt about = take(event);
            boolean later = about.isPresent() && about.getAsInt() >= take;
            first = later ? i : first;
        }
        return first;
    }

    private int startOf(int take) {
        for (int i = 0; i < events.size(); i++) {
            if (events.get(i) instanceof SessionEvent.TakeStarted started && started.take() == take) {
                return i;
            }
        }
        return -1;
    }

    private void leaveOutWhatDoesNotFit() {
        Optional<SessionEvent.Opened> opened = Replay.firstOpened(events);
        if (opened.isEmpty()) {
            return;
        }
        SessionState state;
        try {
            state = Session.begin(opened.get().script(), FatigueLimits.defaults());
        } catch (ProblemException noScript) {
            return;
        }
        if (after(state, events).isPresent()) {
            return;
        }
        List<SessionEvent> fitting = new ArrayList<>();
        for (SessionEvent event : events) {
            Optional<SessionState> next = after(state, List.of(event));
            if (next.isPresent()) {
                state = next.get();
                fitting.add(event);
            }
        }
        unfitting = events.size() - fitting.size();
        events.clear();
        events.addAll(fitting);
    }

    /** Empty if the events contradict each other: that one is missing between them may show in any way. */
    private static Optional<SessionState> after(SessionState state, List<SessionEvent> events) {
        try {
            return Optional.of(Session.apply(state, events));
        } catch (RuntimeException contradiction) {
            return Optional.empty();
        }
    }

    private static OptionalInt take(SessionEvent event) {
        if (event instanceof SessionEvent.TakeStarted started) {
            return OptionalInt.of(started.take());
        }
        if (event instanceof SessionEvent.TakeEnded ended) {
            return OptionalInt.of(ended.take());
        }
        if (event instanceof SessionEvent.TakeSettled settled) {
            return OptionalInt.of(settled.take());
        }
        return event instanceof SessionEvent.AttemptSettled settled
                ? OptionalInt.of(settled.attempt().take())
                : OptionalInt.empty();
    }

    private static Optional<Instant> timeOfDay(SessionEvent event) {
        if (event instanceof SessionEvent.Opened opened) {
            return Optional.of(opened.when());
        }
        if (event instanceof SessionEvent.TakeStarted started) {
            return Optional.of(started.when());
        }
        return event instanceof SessionEvent.TakeEnded ended ? Optional.of(ended.when()) : Optional.empty();
    }
}
