package org.bookholder.wording;

import java.util.List;
import java.util.Locale;
import org.bookholder.sound.Hum;
import org.bookholder.sound.PeakLevel;
import org.bookholder.sound.RoomNoise;
import org.bookholder.sound.Sides;
import org.bookholder.sound.SoundCheck;
import org.bookholder.sound.SoundFinding;
import org.bookholder.sound.SoundFinding.Grade;
import org.bookholder.sound.SoundPath;

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
            "Speech level: ITU-T P.56; loudness: ITU-R BS.1770. Echo of the room: reverberation time after ISO 3382-2, judged from"
                    + " the pauses; at most 0.6 s by ANSI/ASA S12.60. Noise over frequency: thirds of an octave, IEC 61260-1.",
            "Limits for noise, hum, tones, channels, narrow sound and offset: our own, in the range of common practice.");

    /** The peak that a change of the gain should lead to, in dBFS: the middle of the range. */
    private static final double WANTED_PEAK = (PeakLevel.LOWEST + PeakLevel.HIGHEST) / 2;

    private static final String QUIETER_ROOM = "switch off fans and machines, shut the window, hang up something soft";

    private static final String AGAINST_HUM =
            "move cables away from power supplies, try another socket, a balanced cable or the battery";

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
            case TONE -> "tone";
            case OTHER_MICROPHONE -> "microphone";
            case SIDES_OPPOSED, ONE_SIDE -> "channels";
            case NARROW -> "voice band";
            case ECHO -> "room echo";
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
            case ROOM_NOISE -> text("%.1f dBFS", check.room().floor()) + mostly(check, finding);
            case ROOM_DISTURBED ->
                text(
                        "%.1f dBFS, but once %.1f dBFS",
                        check.room().floor(), check.room().loudest());
            case HUM -> hum(check.room().hum().orElseThrow());
            case TONE -> tone(check.spectrum().tone().orElseThrow());
            case OTHER_MICROPHONE -> other(check.path().other().orElseThrow());
            case SIDES_OPPOSED -> "left and right cancel each other";
            case ONE_SIDE -> "the voice comes in on the " + side(check) + " only";
            case NARROW -> text("nothing above %d kHz", check.path().limit().orElseThrow() / 1000);
            case ECHO -> text("the room goes on for %.1f s", check.path().echo().orElseThrow());
            case OFFSET -> offset(Math.abs(check.room().offset()));
        };
    }

    private static String hum(Hum hum) {
        return text("%d Hz and its multiples, %.1f dBFS", hum.hertz(), hum.level());
    }

    /** A part of a room's noise in plain words, with its place and level. */
    public static String of(RoomNoise.Part part) {
        return switch (part.kind()) {
            case HUM -> text("hum of the mains (%.0f Hz and its multiples), %.0f dBFS", part.from(), part.level());
            case TONE -> tone(part);
            case LOW -> text("low, broad noise, as of a fan, ventilation or traffic, %.0f dBFS", part.level());
            case HISS -> text("hiss, as of an amplifier or a computer's fan, %.0f dBFS", part.level());
        };
    }

    private static String mostly(SoundCheck check, SoundFinding finding) {
        return finding.grade() == Grade.GOOD || check.spectrum().parts().isEmpty()
                ? ""
                : ", mostly " + of(check.spectrum().parts().get(0));
    }

    private static String against(RoomNoise.Kind kind) {
        return switch (kind) {
            case HUM -> AGAINST_HUM;
            case TONE -> "look for a fridge, a motor, a charger or a screen, and switch it off";
            case LOW -> QUIETER_ROOM;
            case HISS -> "turn the gain down and go closer to the microphone, or switch off the computer's fan";
        };
    }

    private static String tone(RoomNoise.Part part) {
        return text(
                "a steady tone of %.0f Hz, as of a fridge, a motor or a charger, %.0f dBFS", part.from(), part.level());
    }

    private static String other(SoundPath.OtherMicrophone other) {
        return "this is " + other.heard() + "; " + other.chosen() + " is chosen for this machine";
    }

    private static String side(SoundCheck check) {
        return check.path().sides() == Sides.Kind.LEFT_ONLY ? "left" : "right";
    }

    private static String narrow(int limit) {
        return limit <= 4000
                ? "use another microphone: a telephone, or a headset in its mode for calls, sounds so"
                : "use another microphone, or set a wireless headset to its better mode, if that sounds dull";
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
            case ROOM_NOISE ->
                check.spectrum().parts().stream()
                        .map(part -> against(part.kind()))
                        .findFirst()
                        .orElse(QUIETER_ROOM);
            case ROOM_DISTURBED -> "find out what made the noise, and measure again";
            case HUM -> AGAINST_HUM;
            case TONE -> against(RoomNoise.Kind.TONE);
            case OTHER_MICROPHONE -> "check and read with the same one: choose it, or keep this one for the machine";
            case SIDES_OPPOSED ->
                "set the input to one channel (mono), or use another cable: a plug or a cable is wired the wrong way round";
            case ONE_SIDE -> "set the input to one channel (mono), so that the voice is not halved";
            case NARROW -> narrow(check.path().limit().orElseThrow());
            case ECHO ->
                "go closer to the microphone; hang up blankets or curtains, or read in a room with soft furniture";
            case OFFSET -> "try another input or sound card; a high-pass filter removes it later";
            case LEVEL_RIGHT, NO_CLIPPING, NO_HUM -> "";
        };
    }

    private static String text(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
