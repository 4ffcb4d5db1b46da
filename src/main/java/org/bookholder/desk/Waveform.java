package org.bookholder.desk;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.journal.TakeAudio;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;

/** The waveform of a piece of a take: the peak of each of some hundred slices. */
public final class Waveform {
    /** The most slices of one waveform. */
    public static final int MOST_POINTS = 2000;

    /** The longest piece, in seconds. */
    public static final double LONGEST = 120;

    private static final int FULL_SCALE = 32768;

    private Waveform() {}

    /**
     * Computes the waveform of a piece, as far as it is on disk.
     *
     * @param recording the take's file
     * @param takeStart where the take begins in the session's audio
     * @param from session time of the beginning, in seconds
     * @param to session time of the end, at most {@value #LONGEST} s later
     * @param points number of slices, 1 to {@value #MOST_POINTS}
     * @return {@code from}, {@code to} as drawn and {@code peaks}, each 0 to 100 per cent of full scale
     * @throws ProblemException if the recording cannot be read
     */
    public static ObjectNode of(Path recording, StreamTime takeStart, double from, double to, int points)
            throws ProblemException {
        if (!(to > from && to - from <= LONGEST) || points < 1 || points > MOST_POINTS) {
            throw new IllegalArgumentException(
                    "from (" + from + "), to (" + to + ") and points (" + points + ") must be in range");
        }
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ArrayNode peaks = node.putArray("peaks");
        StreamTime begin = StreamTime.max(takeStart, StreamTime.ofSeconds(from));
        try (TakeAudio audio = TakeAudio.open(recording, takeStart)) {
            Optional<AudioBlock> block = audio.read(begin, StreamTime.ofSeconds(to));
            node.put("from", JsonFigures.seconds(block.map(AudioBlock::start).orElse(begin)));
            node.put("to", JsonFigures.seconds(block.map(AudioBlock::end).orElse(begin)));
            block.ifPresent(b -> draw(b.samples(), points, peaks));
        }
        return node;
    }

    private static void draw(short[] samples, int points, ArrayNode peaks) {
        int slices = Math.min(points, samples.length);
        for (int i = 0; i < slices; i++) {
            int beyond = (int) ((i + 1L) * samples.length / slices);
            int peak = 0;
            for (int k = (int) ((long) i * samples.length / slices); k < beyond; k++) {
                peak = Math.max(peak, Math.abs((int) samples[k]));
            }
            peaks.add(Math.round(100.0f * peak / FULL_SCALE));
        }
    }
}
