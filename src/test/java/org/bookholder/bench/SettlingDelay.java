package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.speech.wav.WavSource;

/**
 * How long after its end each attempt was first settled, in the audio's own time: what a kill would leave to be listened to again.
 *
 * <p>Arguments: scripts, each with its recording beside it ({@code a.md a.wav}), or folders of sessions that were read from a recording.
 *
 * @param attempt the attempt as it was settled in the end
 * @param seconds how long after its end; infinite if only with the take
 */
record SettlingDelay(Attempt attempt, double seconds) {
    /** What comes later than this, in seconds, is listed. */
    private static final double LATE = 4;

    /** The delays of all attempts of a reading with one take. */
    static List<SettlingDelay> of(List<SessionEvent> events) {
        Map<Integer, Double> first = new HashMap<>();
        List<Attempt> attempts = new ArrayList<>();
        for (SessionEvent event : events) {
            if (event instanceof SessionEvent.AttemptSettled settled) {
                first.putIfAbsent(settled.attempt().ordinal(), settled.at().seconds());
            } else if (event instanceof SessionEvent.TakeSettled settled) {
                attempts.addAll(settled.attempts());
            }
        }
        return attempts.stream()
                .map(attempt -> new SettlingDelay(
                        attempt,
                        first.getOrDefault(attempt.ordinal(), Double.POSITIVE_INFINITY)
                                - attempt.end().seconds()))
                .toList();
    }

    /** How long after their end the asides of a reading with one take were first told. */
    static List<Double> ofAsides(List<SessionEvent> events) {
        List<Double> delays = new ArrayList<>();
        for (Aside aside : asides(events)) {
            double told = events.stream()
                    .filter(SessionEvent.AsidesHeard.class::isInstance)
                    .map(SessionEvent.AsidesHeard.class::cast)
                    .filter(heard -> heard.asides().stream().anyMatch(early -> overlaps(early, aside)))
                    .mapToDouble(heard -> heard.at().seconds())
                    .findFirst()
                    .orElse(Double.POSITIVE_INFINITY);
            delays.add(told - aside.end().seconds());
        }
        return delays;
    }

    private static List<Aside> asides(List<SessionEvent> events) {
        return events.stream()
                .filter(SessionEvent.TakeSettled.class::isInstance)
                .flatMap(event -> ((SessionEvent.TakeSettled) event).asides().stream())
                .toList();
    }

    private static boolean overlaps(Aside a, Aside b) {
        return a.start().isBefore(b.end()) && b.start().isBefore(a.end());
    }

    /** Reads and prints. */
    public static void main(String[] args) throws IOException, ProblemException {
        List<Double> lines = new ArrayList<>();
        List<Double> asides = new ArrayList<>();
        for (String name : args) {
            List<SessionEvent> events = events(Path.of(name));
            List<SettlingDelay> delays = of(events);
            delays.stream()
                    .filter(delay -> delay.seconds() > LATE)
                    .forEach(delay -> System.out.printf(
                            Locale.ROOT,
                            "%s: line %d, said %.1f to %.1f s, %s, settled %.1f s after it%n",
                            Path.of(name).getFileName(),
                            delay.attempt().line(),
                            delay.attempt().start().seconds(),
                            delay.attempt().end().seconds(),
                            delay.attempt().outcome(),
                            delay.seconds()));
            delays.forEach(delay -> lines.add(delay.seconds()));
            asides.addAll(ofAsides(events));
        }
        print("lines", lines);
        print("asides", asides);
    }

    /** The events of a session that was read, or of a script that is read now from its recording. */
    private static List<SessionEvent> events(Path place) throws IOException, ProblemException {
        if (SessionFolder.isSession(place)) {
            try (SessionFolder session = SessionFolder.openForReading(place)) {
                return session.events();
            }
        }
        Path sound = Path.of(place.toString().replaceFirst("\\.[^.]*$", ".wav"));
        try (VoskEars ears = VoskEars.load(KilledReading.MODEL)) {
            return ReadingRun.read(Files.readString(place), WavSource.open(sound), ears)
                    .events();
        }
    }

    private static void print(String what, List<Double> delays) {
        if (delays.isEmpty()) {
            return;
        }
        List<Double> sorted = delays.stream().sorted().toList();
        System.out.printf(
                Locale.ROOT,
                "%d %s: median %.1f s, 90 %% %.1f s, 95 %% %.1f s, 99 %% %.1f s, worst %.1f s%n",
                sorted.size(),
                what,
                at(sorted, 0.5),
                at(sorted, 0.9),
                at(sorted, 0.95),
                at(sorted, 0.99),
                at(sorted, 1));
    }

    private static double at(List<Double> sorted, double share) {
        return sorted.get((int) Math.min(sorted.size() - 1, Math.floor(share * sorted.size())));
    }
}
