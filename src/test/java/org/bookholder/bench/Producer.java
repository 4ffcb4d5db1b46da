package org.bookholder.bench;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.locks.LockSupport;
import org.bookholder.testing.Browser;
import org.bookholder.testing.Relay;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebDriverException;

/**
 * A producer at a browser of their own, whose network fails now and then. What they do is chosen by chance; their page writes it
 * down. Confined to the thread in {@link #work}, except for {@link #ask}, {@link #asked}, {@link #leave} and {@link #told}.
 */
final class Producer implements AutoCloseable {
    private static final String KNOWN = "window.deskState && deskState.model.known";

    private final Browser browser = new Browser();
    private final Relay network;
    private final String name;
    private final Random random;
    private final double speed;
    private final double rest;
    private final BlockingQueue<Runnable> duties = new LinkedBlockingQueue<>();
    private volatile boolean leaving;
    private int notes;

    /** How many acts go by until the network is there again; 0 if it is. */
    private int away;

    /**
     * A producer who has not opened the desk's page yet.
     *
     * @param name begins each note
     * @param port the desk's, on this machine
     * @param speed how many times as fast the page's own time runs
     * @param rest the longest rest before an act, in seconds
     */
    Producer(String name, int port, double speed, double rest, Random random) throws IOException {
        this.rest = rest;
        this.name = name;
        this.random = random;
        this.speed = speed;
        network = new Relay(port);
    }

    /** Opens the desk's page. */
    void open(String key, boolean phone) throws IOException {
        browser.size(phone ? 390 : 1440, phone ? 844 : 900);
        browser.beforeThePage(recorder());
        browser.open("http://localhost:" + network.port() + "/#" + key);
        browser.until(KNOWN);
    }

    /** The script with which the page writes down what is done on it. */
    private String recorder() throws IOException {
        try (InputStream script = Producer.class.getResourceAsStream("/bench/page-acts.js")) {
            return new String(Objects.requireNonNull(script).readAllBytes(), StandardCharsets.UTF_8)
                    .replace("SPEED", Double.toString(speed));
        }
    }

    /** Does what it is asked, until {@link #leave}. */
    void work() {
        try {
            while (!leaving || !duties.isEmpty()) {
                duties.take().run();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Has the producer do something after what they were asked before; a failure ends {@link #work}. */
    void ask(Runnable duty) {
        duties.add(duty);
    }

    /** The same, and tells when it is done. */
    CompletableFuture<Void> asked(Runnable duty) {
        CompletableFuture<Void> done = new CompletableFuture<>();
        duties.add(() -> {
            try {
                duty.run();
                done.complete(null);
            } catch (RuntimeException | AssertionError failure) {
                done.completeExceptionally(failure);
            }
        });
        return done;
    }

    /** Ends {@link #work} after all that was asked. */
    void leave() {
        duties.add(() -> leaving = true);
    }

    /** One act by chance. A page that goes over to the next lesson meanwhile may swallow it, and then has not written it down. */
    void act() {
        rest((long) (random.nextDouble() * rest * 1e9));
        try {
            fail();
            int lines = ((Long) browser.value("deskState.model.lines.length")).intValue();
            switch (random.nextInt(8)) {
                case 0, 1, 2 -> mark(1 + random.nextInt(lines));
                case 3 -> browser.press("p");
                case 4, 5 -> note(random.nextBoolean());
                case 6 -> browser.press("u");
                default -> markAndUndo(1 + random.nextInt(lines));
            }
        } catch (WebDriverException | NullPointerException goingOver) {
            browser.until(KNOWN);
        }
    }

    /** Sends the position to a line, as the reading goes on by itself only in a window. */
    void read(int line) {
        choose(line);
        lead("j", "deskState.model.at.line === " + line);
    }

    private static void rest(long nanos) {
        long end = System.nanoTime() + nanos;
        for (long left = nanos; left > 0; left = end - System.nanoTime()) {
            LockSupport.parkNanos(left);
        }
    }

    private void mark(int line) {
        choose(line);
        browser.press("p");
    }

    private void choose(int line) {
        browser.value("deskState.model.lines.length && document.querySelector(\"[data-line='" + line + "']\").click()");
    }

    private void markAndUndo(int line) {
        mark(line);
        browser.press("u");
    }

    /** Types letter by letter while the reading goes on; some press Enter twice. */
    private void note(boolean twice) {
        browser.press("a");
        String text = name + " " + ++notes;
        text.chars().forEach(letter -> browser.press(Character.toString(letter)));
        browser.press(twice ? Keys.chord(Keys.ENTER) + Keys.ENTER : Keys.ENTER);
        browser.press(Keys.ESCAPE);
    }

    /** Now and then the network is cut, or goes dead for some acts. */
    private void fail() {
        if (away > 0 && --away == 0) {
            network.live();
        } else if (away == 0 && random.nextInt(12) == 0) {
            away = 1 + random.nextInt(4);
            network.die();
        } else if (random.nextInt(12) == 0) {
            cut();
        }
    }

    private void cut() {
        try {
            network.cut();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Has a network again, and waits until the page has noticed and all that it kept was sent. */
    void comeBack() {
        away = 0;
        network.live();
        until("!document.querySelector('#link').classList.contains('lost')"
                + " || !/lost|reached|kept/i.test(document.querySelector('#link').textContent)");
        browser.until("(import('./outbox.js').then((m) => { window.left = m.waits(); }), window.left === 0)");
    }

    /** Presses a key until it has brought something about; again whenever it was answered and nothing has come of it. */
    void lead(CharSequence key, String then) {
        String named = key.toString().contentEquals(Keys.ENTER)
                ? "ENTER"
                : key.toString().toUpperCase(Locale.ROOT);
        String answers = "JSON.parse(" + kept("answers") + ").length";
        String acts = "JSON.parse(" + kept("acts") + ").length";
        while (true) {
            until("(" + then + ") || document.querySelector('#foot [data-key=" + named + "]')?.disabled === false");
            if (Boolean.TRUE.equals(browser.value("Boolean(" + KNOWN + " && (" + then + "))"))) {
                return;
            }
            Object answered = browser.value(answers);
            Object made = browser.value(acts);
            browser.press(key);
            // The act may have become impossible just before the key was pressed.
            until("(" + then + ") || " + answers + " > " + answered + " || " + acts + " === " + made);
        }
    }

    /** Presses a key and waits for nothing. */
    void press(CharSequence key) {
        browser.press(key);
    }

    /** Waits until something is true of the page, also over a change of lessons. */
    void until(String expression) {
        try {
            browser.until(KNOWN + " && (" + expression + ")");
        } catch (AssertionError never) {
            throw new AssertionError(name + " waits for " + expression + "; the page said " + written("said"), never);
        }
    }

    /** The value of an expression on the page. May be called on another thread: the driver takes one command at a time. */
    String told(String expression) {
        return String.valueOf(browser.value(expression));
    }

    /** What the page has written down, as JSON. */
    String written(String kind) {
        return String.valueOf(browser.value(kept(kind)));
    }

    /** The expression for what the page has written down. */
    private static String kept(String kind) {
        return "sessionStorage.getItem('" + kind + "') ?? '[]'";
    }

    /** Whose acts they are. */
    String author() {
        return String.valueOf(browser.value("localStorage.getItem('author')"));
    }

    @Override
    public void close() throws IOException {
        browser.close();
        network.close();
    }
}
