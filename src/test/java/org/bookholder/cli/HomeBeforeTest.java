package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.SteadySource;
import org.bookholder.view.settings.Display;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;

/** What should be right before a lesson is read: microphone, sound, and the reading window. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class HomeBeforeTest {
    private static final int RATE = 16_000;

    private final FakeEquipment equipment = new FakeEquipment();
    private final SteadySource near = new SteadySource("Desk microphone", 9000);

    @TempDir
    private Path folder;

    @AutoClose
    private PageAtHome page;

    private Browser browser;

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        equipment.staysPluggedIn(near);
        equipment.staysPluggedIn(new SteadySource("Camera", 40));
        equipment.hasDisplays(
                new Display(1, "Laptop", 0, 300, 1920, 1080, 194), new Display(2, "Glass", 1920, 0, 2560, 1440, 335));
        page = PageAtHome.start(folder, equipment, Optional.empty());
        browser = page.show();
    }

    @Test
    void microphoneSoundAndWindowAreSetBeforeReading() throws IOException {
        browser.press("b");
        browser.until("document.querySelectorAll('.mic').length === 3 && homeState.levels.length === 2");
        browser.until("document.querySelector('[data-name=\"Desk microphone\"]').style.width === '82%'"
                + " || parseFloat(document.querySelector('[data-name=\"Desk microphone\"]').style.width) > 70");
        assertThat(browser.text("#choose-microphone")).contains("Desk microphone", "heard", "Camera", "quiet");
        browser.click("#mic-0");
        browser.until("homeState.before.microphone === 'Desk microphone'");
        assertThat(folder.resolve("settings/home.txt")).content().contains("microphone: Desk microphone");

        browser.until("document.querySelectorAll('.screen').length === 2 && document.querySelector('.window-small')");
        browser.click("label[for=monitor-2]");
        browser.click("#w-mirror");
        assertThat(browser.value("document.querySelector('#w-full-screen').checked"))
                .as("the first window is full screen")
                .isEqualTo(true);
        browser.click("#w-full-screen");
        browser.until("document.querySelector('.window-small g').getAttribute('transform')?.includes('scale(-1 1)')");
        browser.press(Keys.TAB);
        browser.until("homeState.settings.find((group) => group.name === 'window')"
                + ".fields.find((field) => field.name === 'full-screen').value === 'no'");
        assertThat(folder.resolve("settings/window.txt"))
                .content()
                .contains("monitor: 2", "mirror: yes", "full-screen: no");
        browser.lookAtEverySize("before-room");

        browser.until("document.querySelector('#sound-begin')");
        equipment.isCheckedWith(roomAndVoice());
        browser.click("#sound-begin");
        browser.until("homeState.sound.step === 'DONE'");
        assertThat(near.closed()).isTrue();
        browser.until("document.querySelector('.sound-picture')");
        assertThat(browser.text("#sound-check")).contains("checked at", "room noise", "good");
        browser.lookAtEverySize("before-sound");
        assertThat(browser.errors()).isEmpty();
    }

    @Test
    void theMicrophonesAreClosedWhenTheRoomIsLeft() {
        browser.press("b");
        browser.until("homeState.levels.length === 2");
        browser.press("1");
        browser.until("homeState.levels.length === 0");
        assertThat(near.closed()).isTrue();
    }

    /** A quiet room for seven seconds, and then a voice. */
    private static FakeAudioSource roomAndVoice() {
        Random random = new Random(9);
        short[] samples = new short[RATE * 24];
        for (int i = 0; i < samples.length; i++) {
            double voice =
                    i < RATE * 6.5 ? 0 : 9000 * Math.sin(2 * Math.PI * 180 * i / RATE) * Math.abs(Math.sin(i / 3000.0));
            samples[i] = (short) (voice + 12 * random.nextGaussian());
        }
        return FakeAudioSource.of(RATE, Arrays.copyOf(samples, samples.length));
    }
}
