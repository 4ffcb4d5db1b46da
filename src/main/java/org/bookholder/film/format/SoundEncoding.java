package org.bookholder.film.format;

import java.util.List;

/** The ways in which the FFmpeg that comes with the program can store sound. */
public enum SoundEncoding {
    /** AAC, low complexity. */
    AAC("aac", "aac", "mp4 mov mkv", 512),
    /** Opus. */
    OPUS("opus", "libopus", "mkv mp4", 510),
    /** Not compressed, 24 bit. */
    PCM_24("pcm_s24le", "pcm_s24le", "mov mkv", 0),
    /** Not compressed, 16 bit. */
    PCM_16("pcm_s16le", "pcm_s16le", "mov mkv", 0);

    private final String label;
    private final String encoder;
    private final String containers;
    private final int mostKbps;

    SoundEncoding(String label, String encoder, String containers, int mostKbps) {
        this.label = label;
        this.encoder = encoder;
        this.containers = containers;
        this.mostKbps = mostKbps;
    }

    /** Its name in a delivery profile. */
    public String label() {
        return label;
    }

    /** What FFmpeg's program calls its encoder. */
    public String encoder() {
        return encoder;
    }

    List<String> containers() {
        return List.of(containers.split(" ", -1));
    }

    /** The most kilobits a second that it takes; 0 if it is not told how many to use. */
    int mostKbps() {
        return mostKbps;
    }

    /** Whether it is told how many bits a second to use. */
    public boolean hasBitRate() {
        return mostKbps > 0;
    }
}
