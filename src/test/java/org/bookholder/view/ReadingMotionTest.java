package org.bookholder.view;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.session.Mover;
import org.bookholder.session.SessionState;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.layout.Layout;
import org.bookholder.view.layout.Row;
import org.bookholder.view.layout.Typesetter;
import org.bookholder.view.motion.Motion;
import org.bookholder.view.motion.PositionInterpolator;
import org.bookholder.view.motion.Steering;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How the text moves through whole readings of the demo's lessons, in virtual time, 60 pictures a second. */
final class ReadingMotionTest {
    private static final double FRAME = 1.0 / 60;
    static final int LESSONS = 3;
    static final int FIRST_COURSE = 7;
    static final int COURSES = 3;
    private static final Geometry GEOMETRY = Geometry.of(WindowSettings.defaults(), 0, 1080, 1920, 1080);

    /** What the position was from a moment on. */
    record Heard(double at, ReadingPosition position) {}

    /** One picture: rows are the unit of length. */
    record Picture(double at, double off, double moved, double speed, double push, boolean voiceWentBack) {}

    /** In each lesson of the demo, with several courses of recognition. */
    @ParameterizedTest
    @ValueSource(doubles = {80, 100, 130, 170, 200, 220})
    void theRowBeingReadStaysWithinHalfARowOfTheEyeLine(double pace) throws IOException, ProblemException {
        for (int number = 1; number <= LESSONS; number++) {
            for (int course = 0; course < COURSES; course++) {
                Script script = lesson(number);
                List<Heard> voice = read(script, pace);
                List<Picture> pictures = play(script, voice, recognised(voice, FIRST_COURSE + course));
                assertThat(share(pictures.stream().map(Picture::off).toList(), 0.95))
                        .as("lesson " + number + ", course " + course)
                        .isLessThan(0.5);
                assertThat(pictures).allMatch(p -> p.moved() >= 0);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {80, 100, 130, 170, 220})
    void theTextNeverMovesBackInAReadingWithoutJumps(double pace) throws IOException, ProblemException {
        assertThat(play(read(pace), recognised(read(pace)))).allMatch(p -> p.moved() >= 0);
    }

    /** Lines a minute differ from row to row, words differ in length: still the text glides nearly evenly. */
    @ParameterizedTest
    @ValueSource(doubles = {80, 100, 130, 170, 220})
    void theTextMovesEvenly(double pace) throws IOException, ProblemException {
        List<Picture> pictures = play(read(pace), recognised(read(pace)));
        double usual = share(pictures.stream().map(Picture::speed).toList(), 0.5);
        assertThat(share(pictures.stream().map(Picture::speed).toList(), 0.95)).isLessThan(2.2 * usual);
        // About a row a second and second: what is seen as a soft change of speed; twice as fast, all is four times
        // that.
        double quicker = Math.max(1, pace / 130);
        assertThat(share(pictures.stream().map(Picture::push).toList(), 0.9)).isLessThan(1.25 * quicker * quicker);
    }

    /** The demo's own reading, as it was followed: with a restart, an aside, a skipped line and a line broken off. */
    @Test
    void inAReadingWithMistakesTheTextGoesBackOnlyWhereTheVoiceDid() throws IOException, ProblemException {
        List<Picture> pictures = play(followed(), followed());
        assertThat(pictures.stream().filter(p -> p.moved() < 0)).allMatch(Picture::voiceWentBack);
        assertThat(pictures).anyMatch(p -> p.moved() < 0);
        double quickest = Motion.QUICK * Motion.LEAP_ROWS / Math.E;
        assertThat(pictures).allMatch(p -> Math.abs(p.speed()) < quickest + 2);
    }

    /** Seconds 42 to 46 of the demo's reading are an aside, in which three words are heard as the script's and withdrawn. */
    @Test
    void duringAnAsideTheTextComesToRest() throws IOException, ProblemException {
        List<Picture> aside = play(followed(), followed()).stream()
                .filter(p -> p.at() > 43 && p.at() < 45.9)
                .toList();
        assertThat(aside.stream().mapToDouble(p -> Math.abs(p.speed())).max().orElse(9))
                .isLessThan(1);
        assertThat(aside.stream().mapToDouble(p -> Math.abs(p.moved())).sum()).isLessThan(0.6);
        assertThat(aside.stream()
                        .filter(p -> p.at() > 45.4)
                        .mapToDouble(Picture::speed)
                        .map(Math::abs)
                        .max()
                        .orElse(9))
                .isLessThan(0.06);
    }

    private static List<Picture> play(List<Heard> voice, List<Heard> recognised) throws IOException, ProblemException {
        return play(lesson(1), voice, recognised);
    }

    static List<Picture> play(Script script, List<Heard> voice, List<Heard> recognised) {
        Layout layout = Typesetter.set(script, GEOMETRY, new Plain());
        Steering steering = new Steering(layout, Mover.VOICE, ReadingPosition.START, told -> {});
        Motion motion = Motion.restingAt(steering.aim().height());
        SampleState sample = SampleState.of(script);
        double pitch = GEOMETRY.pitch();
        double end = voice.get(voice.size() - 1).at();
        double wentBack = -10;
        ReadingPosition before = ReadingPosition.START;
        SessionState state = sample.at(1, 1).state();
        List<Picture> pictures = new ArrayList<>();
        for (double t = 0; t < end; t += FRAME) {
            ReadingPosition shown = at(recognised, t);
            wentBack = shown.compareTo(before) < 0 ? t : wentBack;
            state = shown.equals(before)
                    ? state
                    : sample.at(shown.line(), shown.word()).state();
            before = shown;
            steering.advance(state, FRAME);
            Motion next = Later.after(motion, steering.aim(), FRAME, pitch);
            Row row = layout.readRows().get(layout.readRowOf(at(voice, t)));
            if (next.veil() == 0) {
                pictures.add(new Picture(
                        t,
                        Math.abs(next.at() - row.middle()) / pitch,
                        (next.at() - motion.at()) / pitch,
                        next.speed() / pitch,
                        Math.abs(next.speed() - motion.speed()) / FRAME / pitch,
                        t - wentBack < PositionInterpolator.SLIP_SECONDS + 2));
            }
            motion = next;
        }
        return pictures;
    }

    private static ReadingPosition at(List<Heard> heard, double time) {
        ReadingPosition position = ReadingPosition.START;
        for (Heard next : heard) {
            if (next.at() > time) {
                break;
            }
            position = next.position();
        }
        return position;
    }

    private static double share(List<Double> values, double share) {
        List<Double> sorted = new ArrayList<>(values);
        sorted.sort(null);
        return sorted.get((int) (share * (sorted.size() - 1)));
    }

    /** The lesson read at an even pace in words a minute: when each word is begun. */
    private static List<Heard> read(double pace) throws IOException, ProblemException {
        return read(lesson(1), pace);
    }

    private static List<Heard> read(Script script, double pace) {
        List<Heard> heard = new ArrayList<>();
        double time = 0.5;
        for (ScriptLine line : script.lines()) {
            for (int word = 1; word <= line.words().size(); word++) {
                heard.add(new Heard(time, new ReadingPosition(line.number(), word)));
                time += line.words().get(word - 1).spoken().get(0).size() / (pace / 60);
            }
        }
        return heard;
    }

    /** The same as recognised: words show 0.08 s (median) and 0.28 s (90 %) after their end, looked at every 50 ms. */
    private static List<Heard> recognised(List<Heard> voice) {
        return recognised(voice, FIRST_COURSE);
    }

    static List<Heard> recognised(List<Heard> voice, int course) {
        Random random = new Random(course);
        List<Heard> heard = new ArrayList<>();
        double last = 0;
        for (Heard word : voice) {
            double late = 0.11 * -Math.log(1 - random.nextDouble()) + 0.01;
            last = Math.max(last, Math.ceil((word.at() + late) / 0.05) * 0.05);
            heard.add(new Heard(last, word.position()));
        }
        return heard;
    }

    /** What {@code bookholder notes --trace} gives of the demo's reading. */
    private static List<Heard> followed() throws IOException {
        List<Heard> heard = new ArrayList<>();
        ObjectMapper json = new ObjectMapper();
        for (String line : Files.readAllLines(Path.of("src/test/resources/readings/lesson-1.trace.jsonl"))) {
            JsonNode node = json.readTree(line);
            heard.add(new Heard(
                    node.get("at").asDouble(),
                    new ReadingPosition(
                            node.get("line").asInt(), node.get("word").asInt())));
        }
        return heard;
    }

    static Script lesson(int number) throws IOException, ProblemException {
        Path file = Path.of("demo-scripts/lesson-" + number + ".md");
        return ScriptReader.parse(ScriptReader.text(file), file.toString(), Format.of(file.toString()));
    }
}
