package org.bookholder.runtime.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.UnsavedSound.Piece;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/**
 * A take's sound on its way to disk. What the disk refuses waits in memory and is tried again every second; when the disk
 * takes it, it goes to its true place in the take's file. Each time that the disk still refuses it, what waits is copied to a second
 * place, so that it outlasts a kill. When half of the memory is used, the oldest sound is in the second place alone. Only what
 * neither memory nor the second place has room for is lost, and is silence.
 *
 * <p>Threads: the capture appends and finishes; another thread syncs and, once the take is finished, retries; the open ear
 * reads. Nobody waits while the file is forced to disk.
 */
public final class RecordedTake {
    private static final long RETRY_NANOS = 1_000_000_000L;

    /** Catching up 25 times a second, this writes two minutes of sound in a second, and never keeps the capture long. */
    private static final int PIECES_AT_ONCE = 128;

    private final int number;
    private final int rate;
    private final StreamTime start;
    private final Tapes tapes;
    private final UnsavedSound memory;
    private final LongSupplier nanoTime;
    private final OverflowSound elsewhere;
    private final LostStretch lost = new LostStretch();
    private final Object writing = new Object();
    private volatile @Nullable Tape tape;
    private volatile String syncFailure = "";
    private volatile boolean saved;
    private volatile boolean readerClosed;

    /** The second place has all that waits before this sample. */
    private volatile long copiedTo;

    // Guarded by writing.
    private String failure = "";
    private long triedAt;
    private boolean refused;
    private boolean elsewhereRefused;
    private long next;
    private final List<SoundNews> news = new ArrayList<>();
    private String told = "";

    /** Confined to the reading thread. */
    private long readTo;

    RecordedTake(int number, int rate, StreamTime start, Tapes tapes, UnsavedSound memory, LongSupplier nanoTime) {
        this.number = number;
        this.rate = rate;
        this.start = start;
        this.tapes = tapes;
        this.memory = memory;
        this.elsewhere = new OverflowSound(number, rate, start, tapes.overflow());
        this.nanoTime = nanoTime;
        synchronized (writing) {
            catchUp(1);
        }
    }

    /** Take number, from 1. */
    public int number() {
        return number;
    }

    /** Samples per second. */
    public int rate() {
        return rate;
    }

    /** Where the take's audio begins in the session's. */
    public StreamTime start() {
        return start;
    }

    /** Adds a block, in session time; a gap before it becomes silence. */
    public void append(AudioBlock block) {
        synchronized (writing) {
            if (memory.crowded() && !elsewhereRefused) {
                copyElsewhere();
            }
            memory.add(place(block)).forEach(piece -> piece.take().dropped(piece));
            if (!refused) {
                catchUp(PIECES_AT_ONCE);
            } else if (nanoTime.getAsLong() - triedAt >= RETRY_NANOS) {
                catchUp(PIECES_AT_ONCE);
                copyElsewhere();
            }
        }
    }

    /** Memory has no room for this piece. */
    private void dropped(Piece piece) {
        if (piece.first() >= copiedTo) {
            lost.add(piece.block().start(), piece.block().end());
        }
    }

    /** Samples are counted, since times are rounded; only a gap of more than one sample is one. */
    private Piece place(AudioBlock block) {
        long at = block.start().since(start).samples(rate);
        long first = at > next + 1 ? at : next;
        next = first + block.samples().length;
        return new Piece(this, first, block);
    }

    /** Writes so many pieces that wait, if the disk takes them. */
    private void catchUp(int most) {
        triedAt = nanoTime.getAsLong();
        try {
            Tape open = open();
            Optional<Piece> piece = memory.oldest(this);
            for (int i = 0; i < most && piece.isPresent(); i++) {
                open.append(piece.get().block());
                memory.written(piece.get());
                lost.tell().ifPresent(news::add);
                piece = memory.oldest(this);
            }
            refused = false;
            failure = piece.isPresent() ? failure : "";
        } catch (ProblemException e) {
            refused = true;
            failure = e.getMessage();
        }
    }

    /** Copies what waits and is still refused to the second place, if there is one; what it has need not crowd the memory. */
    private void copyElsewhere() {
        if (!refused) {
            return;
        }
        try {
            copyAll();
            elsewhereRefused = false;
        } catch (ProblemException alsoFull) {
            // It stays in memory. If there is no room there either, the loss is told.
            elsewhereRefused = true;
        }
        while (memory.crowded() && letGoOfCopied()) {
            // Until there is room.
        }
    }

    private void copyAll() throws ProblemException {
        Optional<Piece> piece = memory.from(this, copiedTo);
        while (piece.isPresent()) {
            elsewhere.add(piece.get().first(), piece.get().block());
            copiedTo = piece.get().end();
            lost.tell().ifPresent(news::add);
            piece = memory.from(this, copiedTo);
        }
    }

    /** Forgets the oldest piece if the second place has it; false if it has not. */
    private boolean letGoOfCopied() {
        Optional<Piece> piece = memory.oldest(this).filter(oldest -> oldest.first() < copiedTo);
        piece.ifPresent(memory::written);
        return piece.isPresent();
    }

    private Tape open() throws ProblemException {
        Tape open = tape;
        if (open == null) {
            open = tapes.begin(number, rate, start);
            tape = open;
        }
        return open;
    }

    /** What has changed since this was asked last, in order. */
    public List<SoundNews> news() {
        synchronized (writing) {
            String trouble = trouble();
            if (!trouble.equals(told)) {
                told = trouble;
                news.add(trouble.isEmpty() ? new SoundNews.SavedAgain() : new SoundNews.Refused(trouble));
            }
            List<SoundNews> all = List.copyOf(news);
            news.clear();
            return all;
        }
    }

    private String trouble() {
        if (failure.isEmpty()) {
            return syncFailure;
        }
        return failure
                + meanwhile()
                + lost.since()
                        .map(from -> "; memory is full, and what was said from " + Clocks.minutes(from)
                                + " on is being lost")
                        .orElse("");
    }

    private String meanwhile() {
        if (elsewhereRefused && tapes.overflow() != Overflow.NONE) {
            return "; nowhere else is room for the sound, so that it is in memory only";
        }
        return elsewhere.isEmpty()
                ? ""
                : "; the sound is kept in " + tapes.overflow().place() + " meanwhile";
    }

    /** Makes what has been added safe against loss of power. */
    public void sync() {
        if (!saved) {
            syncFailure = inBothPlaces(elsewhere::sync, Tape::sync);
        }
    }

    private interface Step {
        void run() throws ProblemException;
    }

    private interface TapeStep {
        void on(Tape tape) throws ProblemException;
    }

    /** Does both, whatever becomes of the first; returns why one failed, or nothing. */
    private String inBothPlaces(Step second, TapeStep first) {
        Tape open = tape;
        String failed = failure(second);
        String failedHere = open == null ? "" : failure(() -> first.on(open));
        return failedHere.isEmpty() ? failed : failedHere;
    }

    private static String failure(Step step) {
        try {
            step.run();
            return "";
        } catch (ProblemException e) {
            return e.getMessage();
        }
    }

    /** No more is added: all that waits is written, if the disk takes it. To be called again while it is not {@link #saved}. */
    public void finish() {
        synchronized (writing) {
            if (saved) {
                return;
            }
            catchUp(Integer.MAX_VALUE);
            copyElsewhere();
            lost.tell().ifPresent(news::add);
            sync();
            if (failure.isEmpty() && syncFailure.isEmpty()) {
                close();
            }
        }
    }

    private void close() {
        String failed = inBothPlaces(elsewhere::close, Tape::close);
        if (failed.isEmpty()) {
            saved = true;
        } else {
            syncFailure = failed;
        }
        closeFinishedReader();
    }

    /** Whether the take is finished, and all of it that is not lost is on disk: in its file, or in the second place. */
    public boolean saved() {
        return saved;
    }

    /** How much sound waits in memory. */
    public StreamTime waiting() {
        long samples = memory.all(this).stream()
                .mapToLong(piece -> piece.block().samples().length)
                .sum();
        return StreamTime.ofSamples(samples, rate);
    }

    /** Why it is not saved, for people; empty if nothing is wrong. */
    public String reason() {
        synchronized (writing) {
            return failure.isEmpty() ? syncFailure : failure;
        }
    }

    /**
     * Reads on, behind the capture, on disk and in memory.
     *
     * @param samples how many at most, 1 or more
     * @return empty if there is nothing more for now
     */
    public Optional<AudioBlock> read(int samples) throws ProblemException {
        // Memory is asked first: a piece leaves it only when it is on disk.
        Optional<Piece> piece = memory.from(this, readTo);
        Optional<AudioBlock> block = piece.filter(p -> p.first() <= readTo).map(p -> p.part(readTo, samples));
        if (block.isEmpty()) {
            block = elsewhere.read(readTo, samples);
        }
        Tape open = tape;
        if (block.isEmpty() && open != null) {
            // What lies in the second place is a hole here.
            long next = elsewhere.nextAfter(readTo).orElse(Long.MAX_VALUE);
            block = open.read(readTo, (int) Math.min(samples, next - readTo));
        }
        if (block.isEmpty()) {
            block = piece.map(p -> p.part(readTo, samples));
        }
        block.ifPresent(b -> readTo += b.samples().length);
        return block;
    }

    /** Ends the reading. */
    public void closeReader() {
        readerClosed = true;
        closeFinishedReader();
    }

    private void closeFinishedReader() {
        Tape open = tape;
        // What is not saved may have to be read once more, to be saved elsewhere.
        if (readerClosed && saved) {
            elsewhere.closeReader();
            if (open != null) {
                open.closeReader();
            }
        }
    }

    /**
     * Saves in the second place what the session's folder has not taken; to be called when nobody uses the take any more.
     *
     * @throws ProblemException if the second place does not take it; what it did take stays there
     */
    void keepElsewhere() throws ProblemException {
        synchronized (writing) {
            try {
                // It comes first: nothing else has it.
                copyAll();
            } finally {
                while (letGoOfCopied()) {
                    // Until none is left that the second place has.
                }
            }
            Tape open = tape;
            if (open != null && !syncFailure.isEmpty()) {
                // Its file may have been deleted or moved. Where it can still be read, all of it is kept.
                copy(open);
            }
            elsewhere.sync();
            close();
            saved = true;
            closeFinishedReader();
        }
    }

    private void copy(Tape from) throws ProblemException {
        long at = elsewhere.endFrom(0);
        Optional<AudioBlock> block = read(from, at);
        while (block.isPresent()) {
            elsewhere.add(at, block.get());
            at = elsewhere.endFrom(at);
            block = read(from, at);
        }
    }

    /** What the session's file has from a sample on, up to the next stretch that is in the second place already. */
    private Optional<AudioBlock> read(Tape from, long at) {
        long next = elsewhere.nextAfter(at).orElse(Long.MAX_VALUE);
        try {
            return from.read(at, (int) Math.min(rate, next - at));
        } catch (ProblemException unreadable) {
            return Optional.empty();
        }
    }

    /** How much of it is in the second place. */
    StreamTime elsewhere() {
        return elsewhere.length();
    }

    /** Forgets what could not be saved and lets go of the file; to be called when nobody uses the take any more. */
    void letGo() {
        synchronized (writing) {
            memory.all(this).forEach(memory::written);
            readerClosed = true;
            if (!saved) {
                close();
                saved = true;
            }
            closeFinishedReader();
        }
    }
}
