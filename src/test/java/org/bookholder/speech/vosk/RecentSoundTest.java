package org.bookholder.speech.vosk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

final class RecentSoundTest {
    @Test
    void theLastSamplesComeBackOnce() {
        RecentSound sound = new RecentSound(4);
        sound.add(new short[] {1, 2, 3});
        sound.add(new short[] {4, 5, 6});
        assertThat(sound.takeBack(3)).containsExactly(4, 5, 6);
        assertThat(sound.count()).isEqualTo(3);
        sound.add(new short[] {4, 5, 6});
        assertThat(sound.takeBack(6)).isEmpty();
        assertThat(sound.takeBack(2)).containsExactly(3, 4, 5, 6);
    }

    @Test
    void samplesThatAreNotKeptAreRefused() {
        RecentSound sound = new RecentSound(4);
        sound.add(new short[] {1, 2, 3, 4, 5, 6});
        assertThrows(IllegalArgumentException.class, () -> sound.takeBack(1));
        assertThrows(IllegalArgumentException.class, () -> sound.takeBack(7));
    }
}
