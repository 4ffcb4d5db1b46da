package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Command;
import org.bookholder.session.Mover;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.TakeCommand;
import org.bookholder.testing.Needs;
import org.bookholder.view.Frame;
import org.bookholder.view.SampleState;
import org.bookholder.view.StandIn;
import org.bookholder.view.settings.Cue;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Every key, pressed by xdotool in a window on the display. */
@Timeout(240)
final class LiveKeysTest {
    private static final long PATIENCE_NANOS = 20_000_000_000L;

    private final StandIn session = new StandIn(SampleState.lesson());
    private final Deque<Step> steps = new ArrayDeque<>();
    private final List<String> done = new ArrayList<>();
    private long since;
    private int before;

    /** Press what xdotool calls {@code press}, then wait until something has come of it. */
    private record Step(String press, BooleanSupplier effect) {}

    @Test
    void everyKeyDoesWhatTheHelpSheetSays() throws ProblemException {
        Needs.display();
        Needs.program("xdotool", "Debian package xdotool");
        SampleState sample = session.sample();
        try (ReadingWindow window =
                ReadingWindow.open(WindowSettings.defaults(), sample.script(), WindowPlace.windowed(960, 540))) {
            takes(window);
            places();
            looks(window);
            pages(window);
            steps.add(new Step("key Escape", () -> shows(window, v -> caption(v, "Esc again ends the session"))));
            steps.add(new Step("key Escape", () -> false));
            since = System.nanoTime();
            focus();
            window.run(session::state, session::tell, System::nanoTime, this::next);
        }
        assertThat(session.told()).last().isEqualTo(new TakeCommand.Quit());
        assertThat(steps).hasSize(1);
    }

    private void takes(ReadingWindow window) {
        told("key h", c -> c instanceof TakeCommand.Hold);
        told("key F5", c -> c instanceof TakeCommand.Resume);
        told("key p", LiveKeysTest::marks);
        told("key period", LiveKeysTest::marks);
        told("key b", LiveKeysTest::marks);
        steps.add(new Step("key u", () -> shows(window, v -> caption(v, "nothing to undo"))));
        told("key c", c -> c instanceof TakeCommand.Cut);
        told("key n", c -> c instanceof TakeCommand.NextTake);
        told("key shift+n", c -> c instanceof TakeCommand.NextTake);
        steps.add(new Step("key v", () -> window.settings().way() == Mover.STEADY));
        told("key h", c -> c instanceof TakeCommand.Hold);
        told("key h", c -> c instanceof TakeCommand.Resume);
        steps.add(new Step("key v", () -> window.settings().way() == Mover.HAND));
        steps.add(new Step("key v", () -> window.settings().way() == Mover.VOICE));
    }

    private void places() {
        told("key Prior", c -> c instanceof TakeCommand.GoTo);
        told("key Next", c -> c instanceof TakeCommand.GoTo);
        told("key Home", c -> c instanceof TakeCommand.GoTo);
        told("key Down", c -> c instanceof TakeCommand.GoTo);
        told("key Up", c -> c instanceof TakeCommand.GoTo);
        told("click --repeat 3 5", c -> c instanceof TakeCommand.GoTo);
        told("click --repeat 3 4", c -> c instanceof TakeCommand.GoTo);
    }

    private void looks(ReadingWindow window) {
        double minutes = WindowSettings.DEFAULT_ARC_MINUTES;
        steps.add(new Step("key plus", () -> window.settings().arcMinutes() > minutes));
        steps.add(new Step("key minus", () -> window.settings().arcMinutes() < minutes + 0.01));
        steps.add(new Step("key KP_Add", () -> window.settings().arcMinutes() > minutes));
        steps.add(new Step("key KP_Subtract", () -> window.settings().arcMinutes() < minutes + 0.01));
        steps.add(new Step("key w", () -> window.settings().columnWords() == 7));
        steps.add(new Step("key shift+w", () -> window.settings().columnWords() == 6));
        steps.add(new Step("key g", () -> shows(window, Frame::mirrored)));
        steps.add(new Step("key g", () -> shows(window, v -> !v.mirrored())));
        steps.add(new Step("key shift+g", () -> shows(window, Frame::upsideDown)));
        steps.add(new Step("key shift+g", () -> shows(window, v -> !v.upsideDown())));
        steps.add(new Step("key e", () -> shows(window, v -> v.reed().isEmpty())));
        steps.add(new Step("key e", () -> shows(window, v -> v.reed().isPresent())));
        List<Cue> cues = List.of(Cue.PACE, Cue.PICKUPS, Cue.TIME, Cue.BREAK, Cue.SOUND, Cue.FOOTLIGHTS);
        for (Cue cue : cues) {
            String key = "key " + (cues.indexOf(cue) + 1);
            steps.add(new Step(key, () -> !window.settings().cues().contains(cue)));
            steps.add(new Step(key, () -> window.settings().cues().contains(cue)));
        }
        steps.add(new Step("key f", () -> shows(window, v -> v.geometry().width() > 960)));
        steps.add(new Step("key f", () -> shows(window, v -> v.geometry().width() == 960)));
    }

    private void pages(ReadingWindow window) {
        steps.add(new Step("key k", () -> shows(window, v -> heading(v, "Keys"))));
        steps.add(new Step("key Escape", () -> shows(window, v -> v.page().isEmpty())));
        steps.add(new Step("key F1", () -> shows(window, v -> heading(v, "Keys"))));
        steps.add(new Step("key k", () -> shows(window, v -> v.page().isEmpty())));
        steps.add(new Step("key s", () -> shows(window, v -> caption(v, "no other screen"))));
        steps.add(new Step("key t", () -> shows(window, v -> caption(v, "press the button"))));
        steps.add(new Step("key Insert", () -> shows(window, v -> caption(v, "whose work"))));
        steps.add(new Step("key p", () -> shows(window, v -> caption(v, "Insert does what P does"))));
        steps.add(new Step("key k", () -> shows(window, v -> v.page().isEmpty())));
        told("key Insert", LiveKeysTest::marks);
        steps.add(new Step("key l", () -> shows(window, v -> heading(v, "to pick up"))));
        steps.add(new Step("key l", () -> shows(window, v -> v.page().isEmpty())));
    }

    private static boolean marks(Command command) {
        return command instanceof NoteCommand.Add add
                && add.remark() instanceof Remark.Signed signed
                && signed.remark() instanceof Remark.Noted noted
                && noted.pickup();
    }

    private void told(String press, Predicate<Command> command) {
        steps.add(new Step(press, () -> session.told().stream().skip(before).anyMatch(command)));
    }

    private static boolean shows(ReadingWindow window, Predicate<Frame> wanted) {
        return window.shown().filter(wanted).isPresent();
    }

    private static boolean heading(Frame view, String text) {
        return view.page()
                .filter(p -> p.light() > 0.9 && p.page().heading().contains(text))
                .isPresent();
    }

    private static boolean caption(Frame view, String text) {
        return view.captions().stream().anyMatch(c -> c.text().contains(text));
    }

    /** Called before each picture, on the window's own thread; says whether all has been done. */
    private boolean next() {
        Step step = steps.peek();
        if (step == null) {
            return true;
        }
        if (done.isEmpty() || !done.get(done.size() - 1).equals(name(step))) {
            done.add(name(step));
            since = System.nanoTime();
            before = session.told().size();
            xdotool(step.press().split(" "));
        }
        if (step.effect().getAsBoolean()) {
            steps.remove();
        } else if (System.nanoTime() - since > PATIENCE_NANOS) {
            fail("nothing came of " + step.press() + " after " + done + "; told: " + session.told());
        }
        return false;
    }

    private String name(Step step) {
        return steps.size() + " " + step.press();
    }

    private static void focus() {
        xdotool("search", "--sync", "--name", "Your first loaf", "windowfocus", "--sync", "mousemove", "960", "540");
    }

    private static void xdotool(String... arguments) {
        List<String> command = new ArrayList<>(List.of("xdotool"));
        command.addAll(Arrays.asList(arguments));
        try {
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(process.waitFor()).as(said).isZero();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
