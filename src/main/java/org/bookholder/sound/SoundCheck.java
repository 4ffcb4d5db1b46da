package org.bookholder.sound;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.bookholder.sound.SoundFinding.Grade;
import org.bookholder.sound.SoundFinding.Kind;

/**
 * Result of a sound check: how good room and voice are. {@code wording} says what to improve.
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
        return findings().stream()
                .map(SoundFinding::grade)
                .max(Comparator.naturalOrder())
                .orElse(Grade.GOOD);
    }

    /** The findings, in the order in which to fix them. */
    public List<SoundFinding> findings() {
        if (voice.peak() <= SILENT) {
            return List.of(new SoundFinding(Grade.POOR, Kind.NO_SIGNAL));
        }
        List<SoundFinding> findings = new ArrayList<>();
        if (unspoken()) {
            findings.add(new SoundFinding(Grade.POOR, Kind.NO_VOICE));
        } else {
            findings.add(level());
            findings.add(clipping());
            findings.add(new SoundFinding(atLeast(ratio(), 35, 25), Kind.VOICE_TO_ROOM));
        }
        findings.add(noise());
        findings.add(hum());
        findings.add(new SoundFinding(atMost(Math.abs(room.offset()), 0.01, 0.05), Kind.OFFSET));
        return findings;
    }

    private SoundFinding level() {
        double peak = voice.peak();
        if (peak > HIGHEST_PEAK) {
            return new SoundFinding(peak > TOO_LOUD ? Grade.POOR : Grade.FAIR, Kind.LEVEL_TOO_HIGH);
        }
        if (peak < LOWEST_PEAK) {
            return new SoundFinding(peak < TOO_LOW ? Grade.POOR : Grade.FAIR, Kind.LEVEL_TOO_LOW);
        }
        return new SoundFinding(Grade.GOOD, Kind.LEVEL_RIGHT);
    }

    private SoundFinding clipping() {
        return voice.clipped() == 0
                ? new SoundFinding(Grade.GOOD, Kind.NO_CLIPPING)
                : new SoundFinding(Grade.POOR, Kind.CLIPPING);
    }

    private SoundFinding noise() {
        Grade grade = atMost(room.floor(), -60, -50);
        boolean disturbed = room.loudest() > Math.max(room.floor() + 15, -55);
        if (disturbed) {
            return new SoundFinding(grade == Grade.GOOD ? Grade.FAIR : grade, Kind.ROOM_DISTURBED);
        }
        return new SoundFinding(grade, Kind.ROOM_NOISE);
    }

    private SoundFinding hum() {
        return room.hum()
                .map(hum -> new SoundFinding(atLeast(voice.speech().level() - hum.level(), 55, 45), Kind.HUM))
                .orElseGet(() -> new SoundFinding(Grade.GOOD, Kind.NO_HUM));
    }

    private static Grade atLeast(double value, double good, double fair) {
        return value >= good ? Grade.GOOD : value >= fair ? Grade.FAIR : Grade.POOR;
    }

    private static Grade atMost(double value, double good, double fair) {
        return value <= good ? Grade.GOOD : value <= fair ? Grade.FAIR : Grade.POOR;
    }
}
