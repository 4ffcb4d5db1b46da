package org.bookholder.speech.microphone;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;
import org.lwjgl.openal.AL10;
import org.lwjgl.openal.ALC10;
import org.lwjgl.openal.ALC11;
import org.lwjgl.openal.ALUtil;
import org.lwjgl.openal.EXTDisconnect;

/**
 * A microphone as an audio source, through OpenAL.
 *
 * <p>Confined to one thread, which must read every few milliseconds: the system buffers {@value #RING_SECONDS} s and
 * drops anything beyond that. Lost audio shows as a gap between blocks. If the device is unplugged, the source first
 * delivers the remaining samples and then ends with {@link AudioRead.Gone}. A sound server may instead go on with another
 * device; {@link #name} then changes, at most two seconds later.
 */
public final class Microphone implements AudioSource {
    /** The usual recording rate, in samples per second. */
    public static final int PREFERRED_RATE = 48_000;

    private static final int RING_SECONDS = 5;
    private static final int SHORTEST_BLOCKS_PER_SECOND = 50;
    private static final int LONGEST_BLOCKS_PER_SECOND = 10;
    private static final long SILENT_NANOS = 5_000_000_000L;
    private static final long LOOK_NANOS = 2_000_000_000L;
    private static final String REMEDY =
            "plug a microphone in and check that this program may use it, or read without one";

    private final long device;
    private final String opened;
    private String name;
    private final int rate;
    private final int channels;
    private final LongSupplier nanoTime;
    private @Nullable LossWatch watch;
    private long taken;
    private long position;
    private long lastSamplesNanos;
    private long lastLookNanos;
    private boolean overrun;

    /** Whether the device that was opened has been on the list of devices; only then its absence tells something. */
    private boolean listed;

    private boolean gone;
    private boolean closed;

    private Microphone(long device, String name, int rate, int channels, LongSupplier nanoTime) {
        this.device = device;
        this.opened = name;
        this.name = name;
        this.rate = rate;
        this.channels = channels;
        this.nanoTime = nanoTime;
        this.lastSamplesNanos = nanoTime.getAsLong();
        this.lastLookNanos = lastSamplesNanos;
        this.listed = names().contains(name);
    }

    /**
     * Names of the microphones connected now, as {@link #open} accepts them; empty if the system has no sound at all.
     */
    public static List<String> names() {
        try {
            AlsaMessages.dropped();
            List<String> names = ALUtil.getStringList(0, ALC11.ALC_CAPTURE_DEVICE_SPECIFIER);
            return names == null ? List.of() : List.copyOf(names);
        } catch (LinkageError e) {
            return List.of();
        }
    }

    /**
     * Opens a microphone and starts capturing.
     *
     * @param name its name, or a part of it that no other microphone's name contains, in upper or lower case; if empty,
     *     the system's default
     * @param rate samples per second, {@link #PREFERRED_RATE} unless there is a reason for another
     * @param nanoTime monotonic time in nanoseconds, used to detect lost samples
     * @throws ProblemException if there is no such microphone or it cannot be used
     */
    public static Microphone open(Optional<String> name, int rate, LongSupplier nanoTime) throws ProblemException {
        return open(name, rate, 1, nanoTime);
    }

    /**
     * The same, but its blocks keep two channels, {@link AudioBlock#sides}. The system gives those of a microphone with a single
     * channel as two that are the same.
     *
     * @throws ProblemException if there is no such microphone or it cannot be used
     */
    public static Microphone openWithSides(Optional<String> name, int rate, LongSupplier nanoTime)
            throws ProblemException {
        return open(name, rate, 2, nanoTime);
    }

    private static Microphone open(Optional<String> name, int rate, int channels, LongSupplier nanoTime)
            throws ProblemException {
        if (rate <= 0) {
            throw new IllegalArgumentException("rate (" + rate + ") must be positive");
        }
        String exact = name.isPresent() ? find(name.get(), names()) : usual();
        String where = exact == null ? "microphone" : exact;
        try {
            AlsaMessages.dropped();
            int format = channels == 1 ? AL10.AL_FORMAT_MONO16 : AL10.AL_FORMAT_STEREO16;
            long device = ALC11.alcCaptureOpenDevice(exact, rate, format, rate * RING_SECONDS);
            if (device == 0) {
                throw new ProblemException("no microphone can be opened", where, REMEDY);
            }
            ALC11.alcCaptureStart(device);
            String called = ALC10.alcGetString(device, ALC11.ALC_CAPTURE_DEVICE_SPECIFIER);
            return new Microphone(device, called == null ? where : called, rate, channels, nanoTime);
        } catch (LinkageError e) {
            throw new ProblemException("this machine has no sound library", where, REMEDY, e);
        }
    }

    /**
     * The system's default microphone; null if it has no name. It is opened by its name, because a stream without one
     * is moved by sound servers whenever the default changes, for example when a headset is plugged in.
     */
    private static @Nullable String usual() {
        try {
            return ALC10.alcGetString(0, ALC11.ALC_CAPTURE_DEFAULT_DEVICE_SPECIFIER);
        } catch (LinkageError e) {
            return null;
        }
    }

    /** Finds the name in {@code names} that {@code wanted} refers to. */
    static String find(String wanted, List<String> names) throws ProblemException {
        if (names.contains(wanted)) {
            return wanted;
        }
        String lower = wanted.toLowerCase(Locale.ROOT);
        List<String> like = names.stream()
                .filter(n -> n.toLowerCase(Locale.ROOT).contains(lower))
                .toList();
        if (like.size() == 1) {
            return like.get(0);
        }
        List<String> choice = like.isEmpty() ? names : like;
        throw new ProblemException(
                like.isEmpty() ? "there is no such microphone" : "several microphones have this in their names",
                wanted,
                choice.isEmpty() ? REMEDY : "choose one of: " + String.join(", ", choice));
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public int rate() {
        return rate;
    }

    @Override
    public AudioRead read() {
        if (closed) {
            throw new IllegalStateException("microphone is closed");
        }
        boolean connected = !gone && ALC10.alcGetInteger(device, EXTDisconnect.ALC_CONNECTED) != 0;
        int available = gone ? 0 : ALC10.alcGetInteger(device, ALC11.ALC_CAPTURE_SAMPLES);
        long now = nanoTime.getAsLong();
        if (connected && now - lastLookNanos >= LOOK_NANOS) {
            lastLookNanos = now;
            lookWhereFrom();
        }
        if (!connected && available <= 0) {
            return gone("the microphone was unplugged");
        }
        if (connected && available < rate / SHORTEST_BLOCKS_PER_SECOND) {
            return now - lastSamplesNanos > SILENT_NANOS
                    ? gone("the microphone gives no more sound")
                    : new AudioRead.NothingYet();
        }
        lastSamplesNanos = now;
        position += lost(now, available);
        return new AudioRead.Samples(take(Math.min(available, rate / LONGEST_BLOCKS_PER_SECOND)));
    }

    /** Nothing reports that the system has moved the stream to another device, but the one that was opened is gone. */
    private void lookWhereFrom() {
        List<String> there = names();
        String usual = usual();
        listed |= there.contains(opened);
        if (listed && !there.isEmpty()) {
            name = nowFrom(opened, there, usual == null ? "" : usual);
        }
    }

    /**
     * The device that a stream comes from: the one that was opened if it is there, otherwise the one that the system has
     * moved it to, which is its default.
     */
    static String nowFrom(String opened, List<String> there, String usual) {
        boolean moved = !there.contains(opened) && there.contains(usual);
        return moved ? usual : opened;
    }

    /**
     * Samples lost up to now. A full ring buffer has dropped everything after it, so once it is drained, the missing
     * samples will not arrive later.
     */
    private long lost(long now, int available) {
        overrun |= available >= rate * RING_SECONDS;
        if (watch == null) {
            watch = new LossWatch(rate, now, available);
        }
        if (overrun && available > rate / LONGEST_BLOCKS_PER_SECOND) {
            return 0;
        }
        long lost = watch.check(now, taken + available, overrun);
        overrun = false;
        return lost;
    }

    private AudioBlock take(int count) {
        short[] samples = new short[count * channels];
        ALC11.alcCaptureSamples(device, samples, count);
        StreamTime start = StreamTime.ofSamples(position, rate);
        AudioBlock block = channels == 1 ? new AudioBlock(start, rate, samples) : sides(start, samples);
        taken += count;
        position += count;
        return block;
    }

    private AudioBlock sides(StreamTime start, short[] frames) {
        short[] left = new short[frames.length / 2];
        short[] right = new short[left.length];
        for (int i = 0; i < left.length; i++) {
            left[i] = frames[2 * i];
            right[i] = frames[2 * i + 1];
        }
        return AudioBlock.ofSides(start, rate, left, right);
    }

    private AudioRead gone(String reason) {
        gone = true;
        return new AudioRead.Gone(reason);
    }

    /**
     * Releases the microphone. A device that is already gone is left to the system: stopping or closing a lost device
     * has been seen to hang for good, and leaking one handle each time someone pulls a plug costs less than a program
     * that hangs.
     */
    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        if (!gone && ALC10.alcGetInteger(device, EXTDisconnect.ALC_CONNECTED) != 0) {
            ALC11.alcCaptureStop(device);
            ALC11.alcCaptureCloseDevice(device);
        }
    }
}
