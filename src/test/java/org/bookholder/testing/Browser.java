package org.bookholder.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.Keys;
import org.openqa.selenium.Rectangle;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.interactions.PointerInput;
import org.openqa.selenium.interactions.Sequence;

/** Debian's Chromium without a window, driven by its own driver; nothing is downloaded. Each is alone with its cookies and stores. */
public final class Browser implements AutoCloseable {
    private static final Path PICTURES = Path.of("target", "desk-pictures");

    /** Hundreds of pictures that only people look at are taken if they ask for them with {@code -Dpictures}. */
    private static final boolean WANTED = System.getProperty("pictures") != null;

    /** The rules of axe-core that colours decide about; the others find the same in every dress of a page. */
    private static final String OF_COLOURS = "['color-contrast', 'link-in-text-block']";

    /** The rules of WCAG 2.2 A and AA. */
    private static final String ALL = "['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']";

    private static final int MOST_TABS = 150;
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    /** Between two looks at a page, the first and at most: many looks a second keep a processor busy, and most waits are long. */
    private static final long SHORTEST_PAUSE_NANOS = 20_000_000;

    private static final long LONGEST_PAUSE_NANOS = 320_000_000;

    private final ChromeDriver driver;
    private final boolean shared;

    public Browser() {
        this(Drivers.take(), true);
    }

    private Browser(ChromeDriver driver, boolean shared) {
        this.driver = driver;
        this.shared = shared;
        // A person, too, waits for a button to be there before pressing it.
        driver.manage().timeouts().scriptTimeout(PATIENCE).implicitlyWait(PATIENCE);
    }

    /** One in which a tab is hidden while another one covers it. It is slower, and for one test alone. */
    public static Browser withTabs() {
        return new Browser(Drivers.startWithFrame(), false);
    }

    /** Skips a test where there is no browser. */
    public static void needed() {
        Needs.file(Drivers.CHROMIUM, "Debian package chromium-headless-shell");
        Needs.file(Drivers.DRIVER, "Debian package chromium-driver");
    }

    public void open(String address) {
        driver.get(address);
    }

    /** Runs a script in each page that is opened from now on, before the page's own. */
    public void beforeThePage(String script) {
        driver.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", script));
    }

    /** What a script returns in the page that is open. */
    public Object result(String script, Object... arguments) {
        return Objects.requireNonNull(driver.executeScript(script, arguments));
    }

    /** Opens one more page, in a tab that covers the others. */
    public void openTab(String address) {
        driver.switchTo().newWindow(WindowType.TAB);
        open(address);
    }

    /** Goes back to the first tab. */
    public void firstTab() {
        driver.switchTo().window(driver.getWindowHandles().iterator().next());
    }

    /** The value of an expression on the page. */
    public Object value(String expression) {
        return ((JavascriptExecutor) driver).executeScript("return " + expression);
    }

    /** The final value of an expression on the page. */
    public Object awaited(String promise) {
        return ((JavascriptExecutor) driver)
                .executeAsyncScript("const done = arguments[arguments.length - 1]; (" + promise + ").then(done)");
    }

    /** The text that is to be seen; if the page was laid anew meanwhile, what stands there now. */
    public String text(String selector) {
        By thing = By.cssSelector(selector);
        try {
            return driver.findElement(thing).getText();
        } catch (StaleElementReferenceException laidAnew) {
            return driver.findElement(thing).getText();
        }
    }

    /** Waits until an expression on the page is true. */
    public void until(String expression) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        long pause = SHORTEST_PAUSE_NANOS;
        while (!Boolean.TRUE.equals(value("Boolean(" + expression + ")"))) {
            assertThat(System.nanoTime() - end)
                    .as(() -> "nanoseconds past patience for " + expression + ", where the page reads "
                            + value("document.body.innerText"))
                    .isNegative();
            LockSupport.parkNanos(pause);
            pause = Math.min(2 * pause, LONGEST_PAUSE_NANOS);
        }
    }

    /**
     * Presses keys as a person does, on whatever has the focus. A thing that has just been hidden keeps it until the page is drawn
     * the next time, and the driver refuses to press a key on what can't be seen. If the page was laid anew between finding the
     * thing and pressing, no key was pressed, and what has the focus now gets it.
     */
    public void press(CharSequence keys) {
        try {
            pressOnce(keys);
        } catch (StaleElementReferenceException laidAnew) {
            pressOnce(keys);
        }
    }

    private void pressOnce(CharSequence keys) {
        until("document.activeElement?.checkVisibility()");
        driver.switchTo().activeElement().sendKeys(keys);
    }

    /** Goes on with Tab, as someone without a mouse does, until the focus is on a thing; it must be within reach. */
    public void tabTo(String selector) {
        String there = "document.activeElement.matches(" + quoted(selector) + ")";
        for (int i = 0; i < MOST_TABS && !Boolean.TRUE.equals(value(there)); i++) {
            new Actions(driver).sendKeys(Keys.TAB).perform();
        }
        assertThat(value(there)).as("Tab comes to " + selector).isEqualTo(true);
    }

    /** The same, and presses Enter there. */
    public void enter(String selector) {
        tabTo(selector);
        new Actions(driver).sendKeys(Keys.ENTER).perform();
    }

    private static String quoted(String text) {
        return "'" + text.replace("'", "\\'") + "'";
    }

    /** Clicks; if the page was laid anew between finding the thing and clicking, what stands there now. */
    public void click(String selector) {
        By thing = By.cssSelector(selector);
        try {
            driver.findElement(thing).click();
        } catch (StaleElementReferenceException laidAnew) {
            driver.findElement(thing).click();
        }
    }

    /** Chooses in a list by the value. */
    public void choose(String selector, String value) {
        driver.findElement(By.cssSelector(selector + " option[value='" + value + "']"))
                .click();
    }

    /** Moves a finger up on something, which scrolls it down by so many pixels. */
    public void swipe(String selector, int down) {
        driver.executeCdpCommand("Emulation.setTouchEmulationEnabled", Map.of("enabled", true));
        Rectangle box = driver.findElement(By.cssSelector(selector)).getRect();
        int x = box.x + box.width / 2;
        int y = box.y + (box.height + down) / 2;
        PointerInput finger = new PointerInput(PointerInput.Kind.TOUCH, "finger");
        PointerInput.Origin page = PointerInput.Origin.viewport();
        driver.perform(List.of(new Sequence(finger, 0)
                .addAction(finger.createPointerMove(Duration.ZERO, page, x, y))
                .addAction(finger.createPointerDown(PointerInput.MouseButton.LEFT.asArg()))
                .addAction(finger.createPointerMove(Duration.ofMillis(200), page, x, y - down))
                .addAction(finger.createPointerUp(PointerInput.MouseButton.LEFT.asArg()))));
    }

    /** Takes hold of something with the mouse, and moves it by so many pixels. */
    public void drag(String selector, int right) {
        drag(selector, right, 0);
    }

    /** The same to the right and down. */
    public void drag(String selector, int right, int down) {
        new Actions(driver)
                .dragAndDropBy(driver.findElement(By.cssSelector(selector)), right, down)
                .perform();
    }

    /**
     * Types over what stands in a field, as a person does. Emptying it first would be a change of its own, whose answer may lay the
     * page anew before anything is typed.
     */
    public void type(String selector, CharSequence... keys) {
        CharSequence[] all = Stream.concat(Stream.of(Keys.chord(Keys.CONTROL, "a")), Stream.of(keys))
                .toArray(CharSequence[]::new);
        driver.findElement(By.cssSelector(selector)).sendKeys(all);
    }

    /** Puts a value into a field in one go, as a choice of the browser's does. */
    public void set(String selector, String text) {
        ((JavascriptExecutor) driver)
                .executeScript(
                        "arguments[0].value = arguments[1];"
                                + " arguments[0].dispatchEvent(new Event('change', { bubbles: true }));",
                        driver.findElement(By.cssSelector(selector)),
                        text);
    }

    /** Chooses files in a field for files, or drops them there: the page can't tell the two apart. */
    public void upload(String selector, Path... files) {
        driver.findElement(By.cssSelector(selector))
                .sendKeys(Stream.of(files).map(Path::toString).collect(Collectors.joining("\n")));
    }

    /** Gives the page a size as a device of that width has it. */
    public void size(int width, int height) {
        driver.manage().window().setSize(new Dimension(width, height));
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 700));
    }

    /** Shows pages in colours chosen by the system, as for people who need strong contrast. */
    public void forcedColours() {
        forcedColours("light");
    }

    /** The same of a system that is set to light or dark. */
    public void forcedColours(String theme) {
        media(theme, "active");
    }

    /** Shows pages in their own colours on a system that is set to light or dark. */
    public void ordinaryColours(String theme) {
        media(theme, "none");
    }

    private void media(String theme, String forced) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of(
                        "features",
                        List.of(
                                Map.of("name", "forced-colors", "value", forced),
                                Map.of("name", "prefers-color-scheme", "value", theme))));
    }

    public void dress(String theme) {
        value("(localStorage.setItem('theme', '" + theme + "'), document.documentElement.dataset.theme = '" + theme
                + "')");
    }

    /** A picture of what is to be seen, for people to look at, if wanted. */
    public void picture(String name) throws IOException {
        if (WANTED) {
            taken(name, false);
        }
    }

    /** The same of the whole page, with what lies below the window. */
    public void wholePicture(String name) throws IOException {
        if (WANTED) {
            taken(name, true);
        }
    }

    /** A picture of what is to be seen, to be worked with. Stored quickly rather than small. */
    public Path taken(String name) throws IOException {
        return taken(name, false);
    }

    private Path taken(String name, boolean whole) throws IOException {
        Map<String, Object> shot = driver.executeCdpCommand(
                "Page.captureScreenshot",
                Map.of("format", "png", "optimizeForSpeed", true, "captureBeyondViewport", whole));
        Files.createDirectories(PICTURES);
        return Files.write(
                PICTURES.resolve(name + ".png"), Base64.getDecoder().decode(String.valueOf(shot.get("data"))));
    }

    /** Sees that the page fits at each size and has no serious fault, light and dark, and takes its picture. */
    public void lookAtEverySize(String name) throws IOException {
        List<String> themes = List.of("dark", "light");
        for (int width : new int[] {390, 1024, 1920}) {
            size(width, width == 390 ? 844 : width == 1024 ? 768 : 1080);
            assertThat(value("document.documentElement.scrollWidth <= innerWidth"))
                    .as(name + " fits in " + width + " pixels")
                    .isEqualTo(true);
            for (String theme : WANTED ? themes : List.<String>of()) {
                dress(theme);
                picture(name + "-" + theme + "-" + width);
            }
        }
        size(1440, 900);
        dress("light");
        assertThat(seriousFaults()).as(name + ", light").isEmpty();
        dress("dark");
        assertThat(faultsOfColour()).as(name + ", dark").isEmpty();
    }

    /** The page as a printer would get it; kept beside the pictures. */
    public byte[] pdf(String name) throws IOException {
        Map<String, Object> printed = driver.executeCdpCommand(
                "Page.printToPDF", Map.of("preferCSSPageSize", true, "printBackground", false));
        byte[] pdf = Base64.getDecoder().decode(String.valueOf(printed.get("data")));
        Files.write(Files.createDirectories(PICTURES).resolve(name + ".pdf"), pdf);
        return pdf;
    }

    /** What axe-core finds to be serious or critical on the page. */
    public List<String> seriousFaults() throws IOException {
        return faults("{type: 'tag', values: " + ALL + "}");
    }

    /** The same by the rules of colour alone, for a page that was looked at in another dress. */
    public List<String> faultsOfColour() throws IOException {
        return faults("{type: 'rule', values: " + OF_COLOURS + "}");
    }

    /** A fault is told by its HTML; to find a selector for each thing that was looked at takes longer than to look at it. */
    @SuppressWarnings("unchecked")
    private List<String> faults(String rules) throws IOException {
        if (!Boolean.TRUE.equals(value("Boolean(window.axe)"))) {
            try (InputStream axe = Browser.class.getResourceAsStream("/axe.min.js")) {
                assertThat(axe).isNotNull();
                driver.executeScript(new String(axe.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        return (List<String>) driver.executeAsyncScript("const done = arguments[arguments.length - 1];"
                + "axe.run(document, {selectors: false, runOnly: " + rules
                + ", resultTypes: ['violations']}).then(r => done(r.violations.filter(v =>"
                + " ['serious', 'critical'].includes(v.impact)).map(v => v.id + ': '+ v.nodes.slice(0,"
                + " 3).map(n => n.html.slice(0, 160) + ' ' + n.any.map(a => a.message)).join(' | '))))");
    }

    /** Errors that the page has logged. */
    public List<String> errors() {
        return driver.manage().logs().get("browser").getAll().stream()
                .filter(e -> e.getLevel().getName().equals("SEVERE"))
                .map(e -> e.getMessage())
                .toList();
    }

    @Override
    public void close() {
        if (shared) {
            Drivers.giveBack(driver);
        } else {
            driver.quit();
        }
    }
}
