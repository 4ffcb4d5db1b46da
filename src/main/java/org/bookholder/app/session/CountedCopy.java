package org.bookholder.app.session;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.security.MessageDigest;
import java.util.function.Consumer;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.environment.ProgressMeter;

/** Copies files of a known total size in pieces, with progress and checksums, and stops when asked to. Confined to one thread. */
final class CountedCopy {
    private static final int PIECE = 1 << 16;

    private final ProgressMeter meter;
    private final Interruption stop;
    private final long total;
    private final byte[] piece = new byte[PIECE];
    private long copied;

    /** Begins; {@code total} is the size of all files together, in bytes. */
    CountedCopy(Environment here, Consumer<Progress> progress, Interruption stop, long total) {
        this.meter = new ProgressMeter(here.nanoTime(), progress);
        this.stop = stop;
        this.total = Math.max(total, 1);
    }

    /** A source that could not be read, as opposed to a copy that could not be written. */
    static final class UnreadableSource extends Exception {
        private static final long serialVersionUID = 1L;

        private final IOException reason;

        UnreadableSource(IOException reason) {
            super(reason);
            this.reason = reason;
        }

        IOException reason() {
            return reason;
        }
    }

    /**
     * Copies a file, but not more than {@code most} bytes.
     *
     * @param what the file's name, for the progress
     * @return its digest
     * @throws UnreadableSource if it cannot be read, or is longer
     * @throws IOException if the copy cannot be written
     */
    MessageDigest copy(String what, InputStream from, long most, OutputStream to) throws UnreadableSource, IOException {
        MessageDigest digest = Checksums.digest();
        long left = most;
        for (int read = read(from); read >= 0; read = read(from)) {
            stop.check();
            left -= read;
            if (left < 0) {
                throw new UnreadableSource(new IOException("it is longer than it says"));
            }
            digest.update(piece, 0, read);
            to.write(piece, 0, read);
            copied += read;
            meter.reached(what, (double) copied / total);
        }
        return digest;
    }

    private int read(InputStream from) throws UnreadableSource {
        try {
            return from.read(piece);
        } catch (IOException e) {
            throw new UnreadableSource(e);
        }
    }
}
