package org.bookholder.sound;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.bookholder.sound.SoundFinding.Grade;
import org.bookholder.sound.SoundFinding.Kind;

/**
 * Result of a sound check: how good room and voice are. {@code wording} says what to improve.
 *
 * <p>The level is judged by {@link PeakLevel}. A room for teaching should go on for 0.6 s at most (ANSI/ASA S12.60). No standard covers
 * noise, offset and hum; those limits are our own, within common practice.
 *
 * @param room the room alone
 * @param voice the voice in that room
 * @param spectrum the room's noise over frequency
 * @param path what lies between the voice and the program
 */
public record SoundCheck(RoomReading room, VoiceReading voice, RoomNoise spectrum, SoundPath path) {
    private static final double ECHO_GOOD = 0.6;
    private static final double ECHO_FAIR = 0.9;

    private static final int TELEPHONE_HERTZ = 4000;

    /** A check of which only room and voice are known. */
    public SoundCheck(RoomReading room, VoiceReading voice) {
        this(room, voice, RoomNoise.UNKNOWN, SoundPath.PLAIN);
    }

    /** The same check, by a microphone that is not the one that was chosen. */
    public SoundCheck by(SoundPath.OtherMicrophone other) {
        return new SoundCheck(room, voice, spectrum, path.with(other));
    }

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
        List<SoundFinding> findings = new ArrayList<>();
        path.other().ifPresent(other -> findings.add(new SoundFinding(Grade.FAIR, Kind.OTHER_MICROPHONE)));
        if (PeakLevel.of(voice.peak()) == PeakLevel.NONE) {
            findings.add(new SoundFinding(Grade.POOR, Kind.NO_SIGNAL));
            return findings;
        }
        if (unspoken()) {
            findings.add(new SoundFinding(Grade.POOR, Kind.NO_VOICE));
        } else {
            ofVoice(findings);
        }
        findings.add(noise());
        findings.add(hum());
        spectrum.tone()
                .map(tone -> new SoundFinding(besideVoice(tone.level()), Kind.TONE))
                .filter(finding -> finding.grade() != Grade.GOOD)
                .ifPresent(findings::add);
        findings.add(new SoundFinding(atMost(Math.abs(room.offset()), 0.01, 0.05), Kind.OFFSET));
        return findings;
    }

    private void ofVoice(List<SoundFinding> findings) {
        switch (path.sides()) {
            case OPPOSED -> findings.add(new SoundFinding(Grade.POOR, Kind.SIDES_OPPOSED));
            case LEFT_ONLY, RIGHT_ONLY -> findings.add(new SoundFinding(Grade.FAIR, Kind.ONE_SIDE));
            case BOTH, QUIET -> {}
        }
        path.limit()
                .ifPresent(limit -> findings.add(
                        new SoundFinding(limit <= TELEPHONE_HERTZ ? Grade.POOR : Grade.FAIR, Kind.NARROW)));
        findings.add(level());
        findings.add(clipping());
        path.echo()
                .ifPresent(seconds -> findings.add(new SoundFinding(atMost(seconds, ECHO_GOOD, ECHO_FAIR), Kind.ECHO)));
        findings.add(new SoundFinding(atLeast(ratio(), 35, 25), Kind.VOICE_TO_ROOM));
    }

    private SoundFinding level() {
        PeakLevel level = PeakLevel.of(voice.peak());
        Kind kind = switch (level) {
            case NONE, TOO_LOW, LOW -> Kind.LEVEL_TOO_LOW;
            case RIGHT -> Kind.LEVEL_RIGHT;
            case HIGH, TOO_HIGH -> Kind.LEVEL_TOO_HIGH;
        };
        return new SoundFinding(level.grade(), kind);
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
                .map(hum -> new SoundFinding(besideVoice(hum.level()), Kind.HUM))
                .orElseGet(() -> new SoundFinding(Grade.GOOD, Kind.NO_HUM));
    }

    private Grade besideVoice(double tones) {
        return atLeast(voice.speech().level() - tones, 55, 45);
    }

    private static Grade atLeast(double value, double good, double fair) {
        return value >= good ? Grade.GOOD : value >= fair ? Grade.FAIR : Grade.POOR;
    }

    private static Grade atMost(double value, double good, double fair) {
        return value <= good ? Grade.GOOD : value <= fair ? Grade.FAIR : Grade.POOR;
    }
}
