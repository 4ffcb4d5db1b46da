package org.bookholder.wording;

import java.util.List;
import java.util.Locale;
import org.bookholder.sound.Hum;
import org.bookholder.sound.SoundCheck;
import org.bookholder.sound.SoundFinding;
import org.bookholder.sound.SoundFinding.Grade;

/**
 * One finding of a sound check in words.
 *
 * @param about the aspect, in one or two words
 * @param figure what was measured, with its unit
 * @param advice what to try, an imperative phrase without a full stop; empty where nothing needs to be done
 */
public record SoundText(String about, String figure, String advice) {
    /** Sources of the limits, one sentence each. */
    public static final List<String> SOURCES = List.of(
            "Peaks from -12 to -6 dBFS: what oral history archives advise (Boyd, Oral History Association).",
            "Speech level: ITU-T P.56. Limits for the room, noise, hum, offset: our own, in the range of common"
                    + " practice.");

    /** The peak that a change of the gain should lead to, in dBFS: the middle of the range. */
    private static final double WANTED_PEAK = (SoundCheck.LOWEST_PEAK + SoundCheck.HIGHEST_PEAK) / 2;

    private static final String QUIETER_ROOM = "switch off fans and machines, shut the window, hang up something soft";

    /** Describes a finding of a check. */
    public static SoundText of(SoundCheck check, SoundFinding finding) {
        String advice = finding.grade() == Grade.GOOD ? "" : advice(check, finding);
        return new SoundText(about(finding), figure(check, finding), advice);
    }

    /** The word for a grade. */
    public static String of(Grade grade) {
        return switch (grade) {
            case GOOD -> "good";
            case FAIR -> "fair";
            case POOR -> "poor";
        };
    }

    /** What to do now, one or two sentences, by the worst grade. */
    public static String verdict(Grade grade) {
        return switch (grade) {
            case GOOD -> "The sound is good: begin.";
            case FAIR -> "The sound will do. Whatever is marked fair can be better.";
            case POOR -> "Don't record yet. Fix whatever is marked poor, then check again.";
        };
    }

    private static String about(SoundFinding finding) {
        return switch (finding.kind()) {
            case NO_SIGNAL -> "sound";
            case NO_VOICE -> "voice";
            case LEVEL_RIGHT, LEVEL_TOO_HIGH, LEVEL_TOO_LOW -> "level";
            case NO_CLIPPING, CLIPPING -> "clipping";
            case VOICE_TO_ROOM -> "voice to room";
            case ROOM_NOISE, ROOM_DISTURBED -> "room noise";
            case NO_HUM, HUM -> "hum";
            case OFFSET -> "offset";
        };
    }

    private static String figure(SoundCheck check, SoundFinding finding) {
        return switch (finding.kind()) {
            case NO_SIGNAL -> "nothing comes in";
            case NO_VOICE -> "none was heard";
            case LEVEL_RIGHT, LEVEL_TOO_HIGH, LEVEL_TOO_LOW ->
                text(
                        "peaks at %.1f dBFS, speech at %.1f dBFS",
                        check.voice().peak(), check.voice().speech().level());
            case NO_CLIPPING, NO_HUM -> "none";
            case CLIPPING -> check.voice().clipped() + " samples cut off at full scale";
            case VOICE_TO_ROOM -> text("%.0f dB", check.ratio());
            case ROOM_NOISE -> text("%.1f dBFS", check.room().floor());
            case ROOM_DISTURBED ->
                text(
                        "%.1f dBFS, but once %.1f dBFS",
                        check.room().floor(), check.room().loudest());
            case HUM -> hum(check.room().hum().orElseThrow());
            case OFFSET -> offset(Math.abs(check.room().offset()));
        };
    }

    private static String hum(Hum hum) {
        return text("%d Hz and its multiples, %.1f dBFS", hum.hertz(), hum.level());
    }

    private static String offset(double share) {
        return share < 0.0005 ? "none" : text("%.1f %% of full scale", 100 * share);
    }

    private static String advice(SoundCheck check, SoundFinding finding) {
        double peak = check.voice().peak();
        return switch (finding.kind()) {
            case NO_SIGNAL -> "check the cable, the mute switch, and that the right microphone is chosen";
            case NO_VOICE -> "read aloud while the voice is measured, or choose another microphone";
            case LEVEL_TOO_HIGH -> text("turn the gain down by about %.0f dB", peak - WANTED_PEAK);
            case LEVEL_TOO_LOW ->
                text("turn the gain up by about %.0f dB, or go closer to the microphone", WANTED_PEAK - peak);
            case CLIPPING -> "turn the gain down until none is; what is cut off can't be restored later";
            case VOICE_TO_ROOM -> "go closer to the microphone, or make the room quieter";
            case ROOM_NOISE -> QUIETER_ROOM;
            case ROOM_DISTURBED -> "find out what made the noise, and measure again";
            case HUM -> "move cables away from power supplies, try another socket, a balanced cable or the battery";
            case OFFSET -> "try another input or sound card; a high-pass filter removes it later";
            case LEVEL_RIGHT, NO_CLIPPING, NO_HUM -> "";
        };
    }

    private static String text(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
