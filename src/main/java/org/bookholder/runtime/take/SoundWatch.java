package org.bookholder.runtime.take;

import java.util.List;
import org.bookholder.runtime.stage.OptionalWork;
import org.bookholder.sound.Spoil;
import org.bookholder.sound.SpoilWatch;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.SoundLevel;
import org.bookholder.speech.SoundMeter;

/**
 * Monitors a take's sound: its levels and spoiled stretches. If it fails, the take continues without it. Confined to
 * one thread.
 */
final class SoundWatch {
    private final OptionalWork work;
    private final SoundMeter meter = new SoundMeter();
    private final SpoilWatch spoils = new SpoilWatch();

    SoundWatch(OptionalWork work) {
        this.work = work;
    }

    /** The levels of the seconds completed by a block. */
    List<SoundLevel> levels(AudioBlock block) {
        return work.get(() -> meter.hear(block), List.of());
    }

    /** The spoiled stretches found. */
    List<Spoil> spoiled(AudioBlock block) {
        return work.get(() -> spoils.hear(block), List.of());
    }
}
