package org.bookholder.footage;

import java.util.List;
import java.util.Optional;

/**
 * How a take is heard in a file of footage.
 *
 * @param take take number, from 1
 * @param channels the channels in which it is clearest
 * @param clear how far the voice rises there out of what is heard between the words, in dB
 * @param levels how loud each of the file's first channels is where the take has its voice, in dBFS; none if that was not measured
 */
public record Hearing(int take, Channels channels, double clear, List<Double> levels) {
    /** Copies the list. */
    public Hearing {
        levels = List.copyOf(levels);
    }

    /** How loud it is in the loudest of some channels, in dBFS; empty if that was not measured. */
    public Optional<Double> level(Channels heard) {
        if (heard.first() == 0) {
            return levels.stream().max(Double::compare);
        }
        return level(heard.first())
                .flatMap(first -> heard.pair()
                        ? level(heard.second()).map(second -> Math.max(first, second))
                        : Optional.of(first));
    }

    private Optional<Double> level(int channel) {
        return channel <= levels.size() ? Optional.of(levels.get(channel - 1)) : Optional.empty();
    }
}
