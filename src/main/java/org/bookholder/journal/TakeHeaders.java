package org.bookholder.journal;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.files.DiskProblems;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.speech.wav.WavHeader;
import org.bookholder.timing.StreamTime;

/**
 * The recordings of a session whose header is damaged. Only the number of samples a second has to be found out again: by what is
 * left of the header, else by the take's length in the journal, else by the session's other recordings.
 *
 * @param damaged the recordings, with their samples a second
 * @param lost recordings that cannot be saved, a sentence each
 */
record TakeHeaders(Map<Path, Integer> damaged, List<String> lost) {
    private static final Pattern NUMBER = Pattern.compile("take-(\\d+)");

    /** The rates of microphones and of recordings. */
    private static final List<Integer> USUAL_RATES =
            List.of(8_000, 11_025, 12_000, 16_000, 22_050, 24_000, 32_000, 44_100, 48_000, 88_200, 96_000, 192_000);

    /** A length in the journal may be off by so much: half the way to the nearest other rate. */
    private static final double TOLERANCE = 0.04;

    /** Looks at the recordings of a session; each holds more bytes than a header. */
    static TakeHeaders of(List<SessionEvent> events, List<Path> recordings) throws ProblemException {
        Map<Path, Integer> damaged = new TreeMap<>();
        List<String> lost = new ArrayList<>();
        List<Path> without = new ArrayList<>();
        Optional<Integer> others = Optional.empty();
        for (Path file : recordings) {
            Optional<Integer> rate = rate(file, WavHeader::rate);
            others = others.or(() -> rate);
            if (rate.isEmpty()) {
                without.add(file);
            }
        }
        for (Path file : without) {
            Optional<Integer> rate = rate(file, WavHeader::rateLeft).filter(USUAL_RATES::contains);
            if (rate.isEmpty()) {
                rate = byLength(events, file);
            }
            if (rate.isEmpty()) {
                rate = others;
            }
            rate.ifPresent(found -> damaged.put(file, found));
            if (rate.isEmpty()) {
                lost.add(file.getFileName() + " has no header, and nothing tells how many samples a second it has");
            }
        }
        return new TakeHeaders(damaged, lost);
    }

    /** Keeps the headers as they were. */
    void keep(Path copies) throws IOException {
        for (Path file : damaged.keySet()) {
            ByteBuffer header = ByteBuffer.allocate(WavHeader.BYTES);
            try (FileChannel channel = FileChannel.open(file)) {
                while (header.hasRemaining() && channel.read(header, header.position()) >= 0) {
                    // A read may return less than was asked for.
                }
            }
            Path copy = copies.resolve(file.getFileName() + ".header");
            try (RandomAccessFile out = new RandomAccessFile(copy.toFile(), "rw")) {
                out.write(header.array());
            }
        }
    }

    /** Writes new headers over them. */
    void write() throws ProblemException {
        for (Map.Entry<Path, Integer> entry : damaged.entrySet()) {
            Path file = entry.getKey();
            try (RandomAccessFile out = new RandomAccessFile(file.toFile(), "rw")) {
                long data =
                        Math.min(WavHeader.MAX_DATA, WavHeader.wholeSamples(out.length()) * WavHeader.BYTES_PER_SAMPLE);
                out.write(WavHeader.of(entry.getValue(), data));
                out.getChannel().force(false);
            } catch (IOException e) {
                throw DiskProblems.writing(file, e);
            }
        }
    }

    private interface Clue {
        Optional<Integer> rate(FileChannel file) throws IOException;
    }

    private static Optional<Integer> rate(Path file, Clue clue) throws ProblemException {
        try (FileChannel channel = FileChannel.open(file)) {
            return clue.rate(channel);
        } catch (IOException e) {
            throw DiskProblems.reading(file, e);
        }
    }

    private static Optional<Integer> byLength(List<SessionEvent> events, Path file) {
        Matcher number = NUMBER.matcher(file.getFileName().toString());
        double seconds = number.lookingAt() ? length(events, Integer.parseInt(number.group(1))) : 0;
        long samples = WavHeader.wholeSamples(file.toFile().length());
        return USUAL_RATES.stream()
                .filter(rate -> Math.abs(samples / (seconds * rate) - 1) < TOLERANCE)
                .findFirst();
    }

    /** The length of a take as the journal has it, in seconds; 0 if it has none. */
    private static double length(List<SessionEvent> events, int take) {
        Optional<StreamTime> start = Optional.empty();
        StreamTime end = StreamTime.ZERO;
        for (SessionEvent event : events) {
            if (event instanceof SessionEvent.TakeStarted started) {
                if (start.isPresent()) {
                    break;
                }
                start = started.take() == take ? Optional.of(started.at()) : Optional.empty();
            }
            end = start.isPresent() ? StreamTime.max(end, event.at()) : end;
            if (start.isPresent() && event instanceof SessionEvent.TakeEnded ended && ended.take() == take) {
                end = ended.at();
                break;
            }
        }
        return start.isPresent() ? end.since(start.get()).seconds() : 0;
    }
}
