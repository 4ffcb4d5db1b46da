package org.bookholder.film.format;

import java.util.List;

/** The ways in which the FFmpeg that comes with the program can store a picture. */
public enum Encoding {
    /** H.264 by Cisco's OpenH264. It makes no pictures that depend on later ones, so each clip ends where it should. */
    H264("h264", "mp4 mov mkv", "yuv420p", "-c:v libopenh264 -profile:v high -allow_skip_frames 0 -g 100"),
    /** AV1 by SVT-AV1. */
    AV1("av1", "mp4 mkv", "yuv420p yuv420p10le", "-c:v libsvtav1 -preset 10 -g 100"),
    /** VP9 by libvpx. */
    VP9("vp9", "mkv mp4", "yuv420p", "-c:v libvpx-vp9 -deadline realtime -cpu-used 6 -g 100"),
    /** ProRes 422 HQ, each picture on its own. */
    PRORES("prores", "mov mkv", "yuv422p10le", "-c:v prores_ks -profile:v hq"),
    /** DNxHR HQ, each picture on its own. */
    DNXHD("dnxhd", "mov", "yuv422p", "-c:v dnxhd -profile:v dnxhr_hq");

    private final String label;
    private final String containers;
    private final String pixels;
    private final String arguments;

    Encoding(String label, String containers, String pixels, String arguments) {
        this.label = label;
        this.containers = containers;
        this.pixels = pixels;
        this.arguments = arguments;
    }

    /** Its name in a delivery profile. */
    public String label() {
        return label;
    }

    List<String> containers() {
        return List.of(containers.split(" ", -1));
    }

    /** The kinds of pixels that it can store, the most common first. */
    List<String> pixels() {
        return List.of(pixels.split(" ", -1));
    }

    /** The arguments of FFmpeg's program that choose it. */
    public List<String> arguments() {
        return List.of(arguments.split(" ", -1));
    }

    /** Whether it is told how many bits a second to use; the others need as many as the pictures take. */
    public boolean hasBitRate() {
        return this != PRORES && this != DNXHD;
    }
}
