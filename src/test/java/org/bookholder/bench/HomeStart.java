package org.bookholder.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Browser;
import org.bookholder.testing.Folders;

/**
 * Measures what the program's own page costs with a course of real size: the processor time until the course is shown, at the
 * first start and at the next one, and when the page first shows something, beside an empty page of the same server.
 *
 * <p>Arguments: how many lessons (default 60), how many sessions of twenty minutes (default 200).
 */
public final class HomeStart {
    private static final int STARTS = 3;
    private static final int LOADS = 9;
    private static final String PAINT = "performance.getEntriesByName('first-contentful-paint')[0]?.startTime";

    private static final String WEIGHT = "[...performance.getEntriesByType('navigation'),"
            + " ...performance.getEntriesByType('resource')].reduce((sum, file) => sum + file.encodedBodySize, 0) / 1e3";

    private HomeStart() {}

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, InterruptedException, ProblemException {
        int lessons = args.length > 0 ? Integer.parseInt(args[0]) : 60;
        int sessions = args.length > 1 ? Integer.parseInt(args[1]) : 200;
        Path user = Files.createTempDirectory("bookholder-home");
        try (Browser browser = new Browser()) {
            Path course = Files.createDirectories(user.resolve("course"));
            RecordedLessons.write(course, lessons, user.resolve("data/bookholder/sessions"), sessions);
            for (int start = 1; start <= STARTS; start++) {
                measure(user, course, browser, start);
            }
        } finally {
            Folders.delete(user);
        }
    }

    private static void measure(Path user, Path course, Browser browser, int start) throws IOException {
        long begun = System.nanoTime();
        Process program = started(user, course);
        try (BufferedReader out = program.inputReader(StandardCharsets.UTF_8)) {
            String address = String.valueOf(out.readLine()).replace("Home: ", "");
            double addressed = (System.nanoTime() - begun) / 1e9;
            browser.open(address);
            browser.until("window.homeState && homeState.courses");
            double shown = (System.nanoTime() - begun) / 1e9;
            browser.until("homeState.course.today && !homeState.course.looking");
            double whole = (System.nanoTime() - begun) / 1e9;
            double processor =
                    program.info().totalCpuDuration().map(Duration::toMillis).orElseThrow() / 1e3;
            System.out.printf(
                    Locale.ROOT,
                    "start %d: address after %.1f s, page with its courses after %.1f s, the course whole after %.1f s;"
                            + " %.1f s of processor time%n",
                    start,
                    addressed,
                    shown,
                    whole,
                    processor);
            System.out.printf(
                    Locale.ROOT, "  files of the page: %.0f kB%n", ((Number) browser.value(WEIGHT)).doubleValue());
            String page = String.valueOf(browser.value("location.href"));
            System.out.printf(
                    Locale.ROOT,
                    "  first paint: %.0f ms, of an empty page %.0f ms (medians of %d)%n",
                    paint(browser, page),
                    paint(browser, page.replaceFirst("\\?.*$", "") + "nothing"),
                    LOADS);
        } finally {
            program.destroy();
            program.onExit().join();
        }
    }

    private static Process started(Path user, Path course) throws IOException {
        List<String> command = new ArrayList<>(Commands.program());
        command.addAll(List.of("--no-browser", course.toString()));
        ProcessBuilder builder = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment().put("XDG_DATA_HOME", user.resolve("data").toString());
        builder.environment().put("XDG_CONFIG_HOME", user.resolve("settings").toString());
        return builder.start();
    }

    /** When a page first shows something, in milliseconds after it was asked for. */
    private static double paint(Browser browser, String page) {
        List<Double> times = new ArrayList<>();
        for (int i = 0; i < LOADS; i++) {
            browser.open(page);
            browser.until(PAINT);
            times.add(((Number) browser.value(PAINT)).doubleValue());
        }
        times.sort(null);
        return times.get(LOADS / 2);
    }
}
