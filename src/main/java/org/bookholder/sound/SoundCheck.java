package org.bookholder.sound;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.sound.SoundFinding.Grade;

/**
 * Result of a sound check: how good room and voice are, and what to improve.
 *
 * <p>Oral history archives advise that speech should peak between -12 and -6 dBFS (Boyd, Oral History Association). No
 * standard covers noise, offset and hum; those limits are our own, within common practice.
 *
 * @param room the room alone
 * @param voice the voice in that room
 */
public record SoundCheck(RoomReading room, VoiceReading voice) {
    /** Peaks of speech belong between these, in dBFS. */
    public static final double LOWEST_PEAK = -12;

    /** Peaks of speech belong between these, in dBFS. */
    public static final double HIGHEST_PEAK = -6;

    /** Sources of the limits, one sentence each. */
    public static final List<String> SOURCES = List.of(
            "Peaks from -12 to -6 dBFS: what oral history archives advise (Boyd, Oral History Association).",
            "Speech level: ITU-T P.56. Limits for the room, noise, hum, offset: our own, in the range of common"
                    + " practice.");

    private static final double TOO_LOUD = -1;
    private static final double TOO_LOW = -24;
    private static final double SILENT = -90;

    /** How much louder the voice is than the room, in dB. */
    public double ratio() {
        return voice.speech().level() - room.floor();
    }

    /** Whether apparently nobody spoke. */
    public boolean unspoken() {
        return voice.speech().level() < room.floor() + 6 || voice.speech().activity() < 0.1;
    }

    /** The worst of all grades. */
    public Grade grade() {
        return remarks().stream()
                .map(SoundFinding::grade)
                .max(Comparator.naturalOrder())
                .orElse(Grade.GOOD);
    }

    /** The findings, in the order in which to fix them. */
    public List<SoundFinding> remarks() {
        if (voice.peak() <= SILENT) {
            return List.of(new SoundFinding(
                    Grade.POOR,
                    "sound",
                    "nothing comes in",
                    "check the cable, the mute switch, and that the right microphone is chosen"));
        }
        List<SoundFinding> remarks = new ArrayList<>();
        if (unspoken()) {
            remarks.add(new SoundFinding(
                    Grade.POOR,
                    "voice",
                    "none was heard",
                    "read aloud while the voice is measured, or choose another microphone"));
        } else {
            remarks.add(level());
            remarks.add(clipping());
            remarks.add(toRoom());
        }
        remarks.add(noise());
        remarks.add(hum());
        remarks.add(offset());
        return remarks;
    }

    private SoundFinding level() {
        double peak = voice.peak();
        String figure = figure(
                "peaks at %.1f dBFS, speech at %.1f dBFS", peak, voice.speech().level());
        if (peak > HIGHEST_PEAK) {
            Grade grade = peak > TOO_LOUD ? Grade.POOR : Grade.FAIR;
            return new SoundFinding(grade, "level", figure, figure("turn the gain down by about %.0f dB", peak + 9));
        }
        if (peak < LOWEST_PEAK) {
            Grade grade = peak < TOO_LOW ? Grade.POOR : Grade.FAIR;
            String advice = figure("turn the gain up by about %.0f dB, or go closer to the microphone", -9 - peak);
            return new SoundFinding(grade, "level", figure, advice);
        }
        return new SoundFinding(Grade.GOOD, "level", figure, "");
    }

    private SoundFinding clipping() {
        return voice.clipped() == 0
                ? new SoundFinding(Grade.GOOD, "clipping", "none", "")
                : new SoundFinding(
                        Grade.POOR,
                        "clipping",
                        voice.clipped() + " samples cut off at full scale",
                        "turn the gain down until none is; what is cut off cannot be mended later");
    }

    private SoundFinding toRoom() {
        Grade grade = ratio() >= 35 ? Grade.GOOD : ratio() >= 25 ? Grade.FAIR : Grade.POOR;
        return new SoundFinding(
                grade,
                "voice to room",
                figure("%.0f dB", ratio()),
                grade == Grade.GOOD ? "" : "go closer to the microphone, or make the room quieter");
    }

    private SoundFinding noise() {
        Grade grade = room.floor() <= -60 ? Grade.GOOD : room.floor() <= -50 ? Grade.FAIR : Grade.POOR;
        String figure = figure("%.1f dBFS", room.floor());
        boolean disturbed = room.loudest() > Math.max(room.floor() + 15, -55);
        if (disturbed) {
            return new SoundFinding(
                    grade == Grade.GOOD ? Grade.FAIR : grade,
                    "room noise",
                    figure + figure(", but once %.1f dBFS", room.loudest()),
                    "find out what made the noise, and measure again");
        }
        return new SoundFinding(
                grade,
                "room noise",
                figure,
                grade == Grade.GOOD ? "" : "switch off fans and machines, shut the window, hang up something soft");
    }

    private SoundFinding hum() {
        Optional<Hum> found = room.hum();
        if (found.isEmpty()) {
            return new SoundFinding(Grade.GOOD, "hum", "none", "");
        }
        double below = voice.speech().level() - found.get().level();
        Grade grade = below >= 55 ? Grade.GOOD : below >= 45 ? Grade.FAIR : Grade.POOR;
        return new SoundFinding(
                grade,
                "hum",
                figure(
                        "%d Hz and its multiples, %.1f dBFS",
                        found.get().hertz(), found.get().level()),
                grade == Grade.GOOD
                        ? ""
                        : "move cables away from power supplies, try another socket, a balanced cable or the battery");
    }

    private SoundFinding offset() {
        double share = Math.abs(room.offset());
        Grade grade = share <= 0.01 ? Grade.GOOD : share <= 0.05 ? Grade.FAIR : Grade.POOR;
        return new SoundFinding(
                grade,
                "offset",
                share < 0.0005 ? "none" : figure("%.1f %% of full scale", 100 * share),
                grade == Grade.GOOD ? "" : "try another input or sound card; a high-pass filter mends it later");
    }

    private static String figure(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
