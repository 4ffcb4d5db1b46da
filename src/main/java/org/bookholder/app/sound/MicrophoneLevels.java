package org.bookholder.app.sound;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.SoundLevel;

/**
 * How loud each microphone is now, so that a person can choose one by speaking. Microphones are open only while somebody looks, and
 * never while something else listens.
 *
 * <p>A stage; {@link #watch}, {@link #levels} and {@link #letGo} are safe for use by several threads.
 */
public final class MicrophoneLevels implements Stage {
    /** A page that looks says so more often than this. */
    private static final long WATCHED_NANOS = 6_000_000_000L;

    private static final long TOLD_NANOS = 100_000_000L;
    private static final double FULL_SCALE = 32_768;

    private final Environment here;
    private final BooleanSupplier elsewhere;
    private final Latest<List<Level>> levels = new Latest<>(List.of());
    private final Latest<List<String>> refused = new Latest<>(List.of());
    private final Map<String, Open> open = new LinkedHashMap<>();
    private boolean watched;
    private long watchedSince;
    private long told;

    /**
     * The level of one microphone.
     *
     * @param name its name
     * @param peak the loudest sample of the last tenth of a second or so, in dBFS
     * @param trouble why it can't be heard; empty if it can
     */
    public record Level(String name, double peak, String trouble) {}

    /** An open microphone, or one that could not be opened. */
    private static final class Open implements AudioRead.Reader {
        private final Optional<AudioSource> source;
        private String trouble;
        private int peak;

        Open(Optional<AudioSource> source, String trouble) {
            this.source = source;
            this.trouble = trouble;
        }

        @Override
        public int samples(AudioBlock block) {
            for (short sample : block.samples()) {
                peak = Math.max(peak, Math.abs((int) sample));
            }
            return 1;
        }

        @Override
        public int ended() {
            return gone("it gives no more sound");
        }

        @Override
        public int gone(String reason) {
            trouble = reason;
            return 0;
        }
    }

    /**
     * Listens to the microphones in {@code here}.
     *
     * @param elsewhere whether something else listens now
     */
    public MicrophoneLevels(Environment here, BooleanSupplier elsewhere) {
        this.here = here;
        this.elsewhere = elsewhere;
    }

    /** Somebody looks: the microphones are listened to for the next seconds. */
    public synchronized void watch() {
        watched = true;
        watchedSince = here.nanoTime().getAsLong();
    }

    /** Closes the microphones, so that something else can open one, and returns when that is done. */
    public synchronized void letGo() {
        watched = false;
        closeAll();
    }

    /** The levels, in the system's order; empty while nobody looks. */
    public List<Level> levels() {
        return levels.get();
    }

    /** The names of those that could not be opened when somebody looked last, in the system's order. */
    public List<String> refused() {
        return refused.get();
    }

    @Override
    public String role() {
        return "microphone levels";
    }

    @Override
    public Criticality criticality() {
        return Criticality.RESTARTABLE;
    }

    @Override
    public synchronized int doWork() {
        long now = here.nanoTime().getAsLong();
        if (!watched || now - watchedSince > WATCHED_NANOS || elsewhere.getAsBoolean()) {
            watched = false;
            closeAll();
            return 0;
        }
        openNew();
        int heard = 0;
        for (Open microphone : open.values()) {
            heard += microphone.trouble.isEmpty() && microphone.source.isPresent()
                    ? microphone.source.get().read().to(microphone)
                    : 0;
        }
        if (now - told >= TOLD_NANOS) {
            told = now;
            tell();
        }
        return heard;
    }

    private void openNew() {
        if (!open.isEmpty()) {
            return;
        }
        try {
            for (String name : here.equipment().microphones()) {
                open.put(name, open(name));
            }
            refused.set(open.entrySet().stream()
                    .filter(entry -> entry.getValue().source.isEmpty())
                    .map(Map.Entry::getKey)
                    .toList());
        } catch (ProblemException none) {
            // The page says so beside the list of microphones.
            watched = false;
        }
    }

    private Open open(String name) {
        try {
            return new Open(Optional.of(here.equipment().microphone(Optional.of(name), here.nanoTime())), "");
        } catch (ProblemException e) {
            return new Open(Optional.empty(), e.what());
        }
    }

    private void tell() {
        List<Level> all = new ArrayList<>();
        open.forEach((name, microphone) -> {
            all.add(new Level(name, decibels(microphone.peak), microphone.trouble));
            microphone.peak = 0;
        });
        levels.set(List.copyOf(all));
    }

    private static double decibels(int peak) {
        return peak == 0 ? SoundLevel.SILENCE : 20 * Math.log10(peak / FULL_SCALE);
    }

    private void closeAll() {
        if (!open.isEmpty()) {
            open.values().forEach(microphone -> microphone.source.ifPresent(AudioSource::close));
            open.clear();
            levels.set(List.of());
        }
    }

    @Override
    public synchronized void onClose() {
        closeAll();
    }
}
