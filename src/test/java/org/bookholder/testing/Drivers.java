package org.bookholder.testing;

import java.io.File;
import java.nio.file.Path;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/**
 * Browsers that are used by one test after the other, as starting one takes longer than most tests. Each test has one for itself
 * that knows nothing of the tests before: another window, no cookies, nothing stored.
 */
final class Drivers {
    static final Path DRIVER = Path.of("/usr/bin/chromedriver");

    /**
     * Chromium without any window of its own: half the processor time of the one for people, which also draws its frame where nobody sees
     * it. The program itself, as the one in /usr/bin is a shell script that leaves it running when it is ended.
     */
    static final Path CHROMIUM = Path.of("/usr/lib/chromium/chromium-headless-shell");

    private static final Path WITH_FRAME = Path.of("/usr/bin/chromium");

    private static final Deque<ChromeDriver> IDLE = new ConcurrentLinkedDeque<>();

    /** Held, so that its level stays: Selenium warns at each start that Debian's Chromium is newer than itself. */
    private static final Logger DEVTOOLS = Logger.getLogger("org.openqa.selenium.devtools");

    static {
        Runtime.getRuntime().addShutdownHook(new Thread(() -> IDLE.forEach(ChromeDriver::quit), "end of the browsers"));
    }

    private Drivers() {}

    /** A browser that nobody else has. */
    static ChromeDriver take() {
        for (ChromeDriver idle = IDLE.poll(); idle != null; idle = IDLE.poll()) {
            if (answers(idle)) {
                return idle;
            }
        }
        return start();
    }

    /** Whether a browser is still there; one that has come to an end meanwhile is given up. */
    private static boolean answers(ChromeDriver driver) {
        try {
            return !driver.getWindowHandle().isEmpty();
        } catch (WebDriverException gone) {
            driver.quit();
            return false;
        }
    }

    /** Takes one back; one that cannot be made like a new one is ended. */
    static void giveBack(ChromeDriver driver) {
        try {
            makeLikeNew(driver);
            IDLE.push(driver);
        } catch (WebDriverException unusable) {
            driver.quit();
        }
    }

    static void makeLikeNew(ChromeDriver driver) {
        List<String> old = List.copyOf(driver.getWindowHandles());
        String fresh = driver.switchTo().newWindow(WindowType.WINDOW).getWindowHandle();
        for (String window : old) {
            driver.switchTo().window(window).close();
        }
        driver.switchTo().window(fresh);
        driver.executeCdpCommand("Network.clearBrowserCookies", Map.of());
        driver.executeCdpCommand("Network.clearBrowserCache", Map.of());
        driver.executeCdpCommand("Storage.clearDataForOrigin", Map.of("origin", "*", "storageTypes", "all"));
        driver.manage().logs().get("browser");
    }

    private static ChromeDriver start() {
        return start(CHROMIUM, "--headless");
    }

    /** One as people have it, with a frame that nobody sees: only there does a tab that covers another one hide it. */
    static ChromeDriver startWithFrame() {
        return start(WITH_FRAME, "--headless=new");
    }

    private static ChromeDriver start(Path program, String unseen) {
        ChromeOptions options = new ChromeOptions();
        options.setBinary(program.toFile());
        options.addArguments(
                unseen,
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-extensions",
                "--disable-background-networking",
                "--no-first-run",
                "--hide-scrollbars",
                "--autoplay-policy=no-user-gesture-required");
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(new File(DRIVER.toString()))
                .usingAnyFreePort()
                .build();
        DEVTOOLS.setLevel(Level.SEVERE);
        return new ChromeDriver(service, options);
    }
}
