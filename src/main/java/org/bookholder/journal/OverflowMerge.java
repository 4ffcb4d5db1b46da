package org.bookholder.journal;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
import org.bookholder.journal.OverflowFolder.Stretch;
import org.bookholder.journal.event.EventCodec;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.speech.wav.WavHeader;

/**
 * Takes what an overflow folder holds into its session. Each stretch of sound is written at its place in the take, and only events
 * that the journal does not have yet are added: so it may be broken off and repeated without losing or doubling anything.
 */
public final class OverflowMerge {
    private OverflowMerge() {}

    /**
     * Takes all of it in; the overflow folder stays as it is.
     *
     * @param session the session, open for writing
     * @throws ProblemException if something could not be written or read, or the two do not fit together
     */
    public static void into(SessionFolder session, OverflowFolder overflow) throws ProblemException {
        List<SessionEvent> missing = missing(session, overflow);
        for (Stretch stretch : overflow.stretches()) {
            write(stretch, session.takeFile(stretch.take()));
        }
        if (!missing.isEmpty()) {
            session.journal().append(missing);
        }
    }

    /** Which of the events in the overflow folder the journal does not have. */
    private static List<SessionEvent> missing(SessionFolder session, OverflowFolder overflow) throws ProblemException {
        List<SessionEvent> kept = overflow.events();
        if (kept.isEmpty()) {
            return kept;
        }
        List<String> keptTexts = kept.stream().map(EventCodec::encode).toList();
        List<String> there =
                session.journal().events().stream().map(EventCodec::encode).toList();
        List<String> since = there.subList(follows(there, keptTexts.get(0), overflow), there.size());
        int same = 0;
        while (same < Math.min(since.size(), keptTexts.size())
                && since.get(same).equals(keptTexts.get(same))) {
            same++;
        }
        // All of it may have been taken in before, and the session gone on since.
        if (same < keptTexts.size() && same < since.size()) {
            throw new ProblemException(
                    "the session went on without the notes that are kept there",
                    overflow.path().toString(),
                    "keep that folder; its sound can be played");
        }
        return kept.subList(same, kept.size());
    }

    /** How many events of the journal lie before the first one that is kept. */
    private static int follows(List<String> there, String first, OverflowFolder overflow) throws ProblemException {
        String after = overflow.after();
        if (after.isEmpty()) {
            int known = there.lastIndexOf(first);
            return known >= 0 ? known : there.size();
        }
        int last = there.lastIndexOf(after);
        if (last < 0) {
            throw new ProblemException(
                    "the notes that are kept there do not belong to this session, or what came before them is gone",
                    overflow.path().toString(),
                    "put the session's folder back, or repair it first");
        }
        return last + 1;
    }

    private static void write(Stretch stretch, Path take) throws ProblemException {
        TakeFile kept = TakeFile.of(stretch.file());
        try {
            PrivateFiles.createIfMissing(take);
            try (RandomAccessFile file = new RandomAccessFile(take.toFile(), "rw");
                    FileChannel from = FileChannel.open(stretch.file(), StandardOpenOption.READ)) {
                if (file.length() < WavHeader.BYTES) {
                    file.write(WavHeader.of(kept.rate(), 0));
                }
                checkRate(file, kept, take);
                copy(from, kept.length(), file.getChannel(), stretch.first());
                WavHeader.repair(file);
                file.getChannel().force(false);
            }
        } catch (IOException e) {
            throw DiskProblems.writing(take, e);
        }
    }

    private static void checkRate(RandomAccessFile file, TakeFile kept, Path take)
            throws IOException, ProblemException {
        int rate = WavHeader.rate(file.getChannel()).orElse(kept.rate());
        if (rate != kept.rate()) {
            throw new ProblemException(
                    "has " + rate + " samples a second, and its missing sound has " + kept.rate(),
                    take.toString(),
                    "put the file back as Bookholder wrote it; the missing sound is in " + kept.path());
        }
    }

    private static void copy(FileChannel from, long length, FileChannel to, long first) throws IOException {
        long at = WavHeader.BYTES;
        long shift = first * WavHeader.BYTES_PER_SAMPLE;
        while (at < length) {
            to.position(at + shift);
            long copied = from.transferTo(at, length - at, to);
            if (copied <= 0) {
                throw new IOException("the file with the missing sound became shorter");
            }
            at += copied;
        }
    }
}
