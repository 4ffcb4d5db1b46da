package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.bookholder.follow.model.Attempt;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.speech.wav.WavSource;

/**
 * How long after its end each attempt was first settled, in the audio's own time: what a kill would leave to be listened to again.
 *
 * <p>Arguments: scripts, each with its recording beside it ({@code a.md a.wav}).
 *
 * @param attempt the attempt as it was settled in the end
 * @param seconds how long after its end; infinite if only with the take
 */
record SettlingDelay(Attempt attempt, double seconds) {
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

    /** Reads and prints. */
    public static void main(String[] args) throws IOException, ProblemException {
        try (VoskEars ears = VoskEars.load(KilledReading.MODEL)) {
            for (String name : args) {
                Path script = Path.of(name);
                Path sound = Path.of(name.replaceFirst("\\.[^.]*$", ".wav"));
                List<SettlingDelay> delays =
                        of(ReadingRun.read(Files.readString(script), WavSource.open(sound), ears)
                                        .events())
                                .stream()
                                .sorted(Comparator.comparingDouble(SettlingDelay::seconds))
                                .toList();
                SettlingDelay worst = delays.get(delays.size() - 1);
                System.out.printf(
                        Locale.ROOT,
                        "%s: %d attempts, median %.1f s, 90 %% %.1f s, worst %.1f s (line %d, which ends at %.1f s)%n",
                        script.getFileName(),
                        delays.size(),
                        delays.get(delays.size() / 2).seconds(),
                        delays.get(delays.size() * 9 / 10).seconds(),
                        worst.seconds(),
                        worst.attempt().line(),
                        worst.attempt().end().seconds());
            }
        }
    }
}
