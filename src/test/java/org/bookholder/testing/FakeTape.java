package org.bookholder.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.Tape;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;

/** A tape in memory, which can be made to fail. */
public final class FakeTape implements Tape {
    private final List<AudioBlock> blocks = new ArrayList<>();
    private int room = Integer.MAX_VALUE;
    private int synced;
    private boolean syncFails;
    private boolean closed;
    private boolean readerClosed;

    public void room(int blockCount) {
        room = blockCount;
    }

    public void syncFails(boolean fails) {
        syncFails = fails;
    }

    public List<AudioBlock> blocks() {
        return blocks;
    }

    public int synced() {
        return synced;
    }

    public boolean closed() {
        return closed;
    }

    public boolean readerClosed() {
        return readerClosed;
    }

    @Override
    public void append(AudioBlock block) throws ProblemException {
        if (room == 0) {
            throw new ProblemException("the disk is full", "take-001.wav", "make room");
        }
        room--;
        blocks.add(block);
    }

    @Override
    public void sync() throws ProblemException {
        if (syncFails) {
            throw new ProblemException("the disk is gone", "take-001.wav", "look for it");
        }
        synced++;
    }

    @Override
    public void close() {
        closed = true;
    }

    /** As in a file, what is left out between two blocks is silence. */
    @Override
    public Optional<AudioBlock> read(long first, int samples) {
        long end = 0;
        for (AudioBlock block : blocks) {
            StreamTime origin = blocks.get(0).start();
            long at = block.start().since(origin).samples(block.rate());
            if (at == first) {
                return Optional.of(block);
            }
            if (first >= end && first < at) {
                StreamTime start = origin.plus(StreamTime.ofSamples(first, block.rate()));
                return Optional.of(new AudioBlock(start, block.rate(), new short[(int) Math.min(samples, at - first)]));
            }
            end = at + block.samples().length;
        }
        return Optional.empty();
    }

    @Override
    public void closeReader() {
        readerClosed = true;
    }
}
