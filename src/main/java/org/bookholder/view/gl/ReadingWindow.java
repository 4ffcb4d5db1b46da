package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.GLFW_MOD_SHIFT;
import static org.lwjgl.glfw.GLFW.GLFW_RELEASE;
import static org.lwjgl.glfw.GLFW.GLFW_REPEAT;
import static org.lwjgl.glfw.GLFW.glfwGetKeyName;
import static org.lwjgl.glfw.GLFW.glfwPollEvents;
import static org.lwjgl.glfw.GLFW.glfwSetKeyCallback;
import static org.lwjgl.glfw.GLFW.glfwSetMonitorCallback;
import static org.lwjgl.glfw.GLFW.glfwSetScrollCallback;
import static org.lwjgl.glfw.GLFW.glfwSetWindowPosCallback;
import static org.lwjgl.glfw.GLFW.glfwSetWindowRefreshCallback;
import static org.lwjgl.glfw.GLFW.glfwSetWindowShouldClose;
import static org.lwjgl.glfw.GLFW.glfwSwapBuffers;
import static org.lwjgl.glfw.GLFW.glfwWaitEventsTimeout;
import static org.lwjgl.glfw.GLFW.glfwWindowShouldClose;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.session.Command;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.view.DisplayLostException;
import org.bookholder.view.Frame;
import org.bookholder.view.Scene;
import org.bookholder.view.Scene.Screen;
import org.bookholder.view.input.Action;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;
import org.jspecify.annotations.Nullable;
import org.lwjgl.glfw.GLFWMonitorCallback;

/**
 * The presenter's window. Open it, {@link #run} it and close it, all on one thread: the main thread, or on Linux any other.
 *
 * <p>It draws when something has changed, at most at the monitor's refresh rate, and never waits for the session:
 * before each frame it takes the newest state, and it passes commands on without waiting for their effect.
 */
public final class ReadingWindow implements AutoCloseable {
    private static final double NANOS = 1e9;
    private static final double ROWS_PER_NOTCH = 0.5;

    /**
     * Waiting for this share of the monitor's period leaves the rest to the buffer swap, which the display paces if it
     * can.
     */
    private static final double WAITING_SHARE = 0.8;

    private final Window window;
    private final DisplayWatch display;
    private WindowSettings settings;
    private final Fonts fonts;
    private final ContextWatch context;
    private final Texts texts;
    private final Canvas canvas;
    private final Painter painter;
    private final Shaper shaper;
    private final Deque<Consumer<SessionState>> inputs = new ArrayDeque<>();
    private @Nullable Scene scene;
    private @Nullable Frame drawn;
    private boolean stale = true;

    private ReadingWindow(Window window, WindowSettings settings, ContextWatch context) {
        this.window = window;
        this.context = context;
        display = window.display();
        this.settings = settings;
        fonts = new Fonts(SystemFonts::find);
        shaper = new Shaper(fonts);
        texts = new Texts(shaper);
        canvas = new Canvas();
        painter = new Painter(canvas, texts);
        listen();
    }

    /**
     * Opens the window.
     *
     * @param abandon called inside a call of a system library that finds the X server gone. If it returns, so does the call, and a driver
     *     that draws in software may crash the program; whoever can, gives this thread up and goes on on another.
     * @throws ProblemException if there is no display, or none with OpenGL 3.3; reading is still possible without a
     *     window
     */
    public static ReadingWindow open(WindowSettings settings, Script script, WindowPlace place, Runnable abandon)
            throws ProblemException {
        DisplayWatch display = Glfw.start(abandon);
        try {
            Window window = Window.open(display, script.title(), place);
            return new ReadingWindow(window, settings, ContextWatch.ofCurrent());
        } catch (RuntimeException fault) {
            if (!display.answers()) {
                throw Glfw.gone();
            }
            throw fault;
        }
    }

    /** The same on a thread that is not given up. */
    static ReadingWindow open(WindowSettings settings, Script script, WindowPlace place) throws ProblemException {
        return open(settings, script, place, () -> {});
    }

    /** The same with another watch over its context, for tests. */
    static ReadingWindow open(WindowSettings settings, Script script, WindowPlace place, ContextWatch context)
            throws ProblemException {
        return new ReadingWindow(Window.open(Glfw.start(), script.title(), place), settings, context);
    }

    /** The reason why this machine cannot show a reading window; empty if it can. */
    public static Optional<String> unavailable() {
        try {
            Window.open(Glfw.start(), "", WindowPlace.hidden(16, 16)).close();
            return Optional.empty();
        } catch (ProblemException e) {
            return Optional.of(e.what());
        }
    }

    /**
     * Shows the session until the presenter ends it; the last command passed on is then {@link TakeCommand.Quit}.
     *
     * @param state returns the newest state without waiting
     * @param commands accepts the presenter's commands without waiting
     * @param nanoTime a clock in nanoseconds that never goes back
     * @throws DisplayLostException if the display is gone
     * @throws IllegalStateException if the graphics driver has lost the picture; another window can be opened
     */
    public void run(Supplier<SessionState> state, Consumer<Command> commands, LongSupplier nanoTime) {
        run(state, commands, nanoTime, () -> false);
    }

    /**
     * The same, but also returns, without a last command, when {@code ended} says that the program should end.
     *
     * @param ended checked before each frame
     */
    public void run(
            Supplier<SessionState> state, Consumer<Command> commands, LongSupplier nanoTime, BooleanSupplier ended) {
        display.check();
        try {
            show(state, commands, nanoTime, ended);
        } catch (DisplayLostException e) {
            throw e;
        } catch (RuntimeException fault) {
            // A display that has just gone breaks a picture in any way; another window must not be opened then.
            if (!display.answers()) {
                throw new DisplayLostException(fault);
            }
            throw fault;
        }
    }

    private void show(
            Supplier<SessionState> state, Consumer<Command> commands, LongSupplier nanoTime, BooleanSupplier ended) {
        long last = nanoTime.getAsLong();
        while (!ended.getAsBoolean()) {
            long now = nanoTime.getAsLong();
            glfwPollEvents();
            checkDisplay();
            boolean shown = frame(state.get(), (now - last) / NANOS);
            checkDisplay();
            last = now;
            if (scene != null) {
                scene.drainTo(commands);
                if (scene.closing()) {
                    return;
                }
            }
            context.check();
            waitForNext(now, nanoTime, shown);
        }
    }

    /** Turns to another lesson: its text, and nothing of what the window knew of the one before. */
    public void turnTo(Script script, WindowSettings own) {
        settings = own;
        scene = null;
        stale = true;
        if (display.answers()) {
            // What was pressed between the two lessons was meant for the one before.
            glfwPollEvents();
            window.setTitle(script.title());
        }
        inputs.clear();
    }

    /** Performs the action of one key press before the next frame. */
    public void act(Action action) {
        inputs.add(state -> perform(action, state));
    }

    /** Draws a still picture of a state, with all motion finished. */
    public Snapshot snapshot(SessionState state) {
        Scene current = scene(state);
        takeInputs(state);
        return picture(current.settle(state));
    }

    /** Draws the picture that follows {@code seconds} after the previous one. */
    public Snapshot snapshot(SessionState state, double seconds) {
        Scene current = scene(state);
        takeInputs(state);
        return picture(current.advance(state, seconds));
    }

    private void checkDisplay() {
        if (display.lost()) {
            throw new DisplayLostException();
        }
    }

    /** Closes the window and frees everything it holds; if the display is gone, the end of the program does that. */
    @Override
    public void close() {
        if (!display.answers()) {
            return;
        }
        freeOld(glfwSetMonitorCallback(null));
        texts.close();
        canvas.close();
        fonts.close();
        window.close();
    }

    /** The presenter's current window settings. */
    public WindowSettings settings() {
        Scene current = scene;
        return current == null ? settings : current.settings();
    }

    /** The window's current place. */
    public WindowPlace place() {
        return window.place();
    }

    /** The picture that is shown, for tests; empty if there is none yet. */
    Optional<Frame> shown() {
        return Optional.ofNullable(drawn);
    }

    /** Whether the window is where it can be seen, for tests. */
    boolean isOnAMonitor() {
        return window.isOnAMonitor();
    }

    /** How many texts are kept ready to draw, for tests of bounded memory. */
    int textsKept() {
        return texts.count();
    }

    /** Draws a frame if something has changed; returns whether a new picture was shown. */
    private boolean frame(SessionState state, double seconds) {
        if (glfwWindowShouldClose(window.handle())) {
            glfwSetWindowShouldClose(window.handle(), false);
            act(Action.QUIT);
        }
        window.followMonitors();
        Screen screen = window.screen();
        if (screen.width() == 0 || screen.height() == 0) {
            return false;
        }
        Scene current = scene(state);
        current.resize(screen);
        takeInputs(state);
        Frame view = current.advance(state, seconds);
        if (!view.takeChanged() && !stale) {
            return false;
        }
        painter.paint(view);
        glfwSwapBuffers(window.handle());
        drawn = view;
        stale = false;
        return true;
    }

    private Snapshot picture(Frame view) {
        painter.paint(view);
        stale = true;
        return Snapshot.read(view.geometry().width(), view.geometry().height());
    }

    private Scene scene(SessionState state) {
        Scene current = scene;
        if (current == null) {
            current = new Scene(
                    state.script(),
                    settings,
                    shaper,
                    window.screen(),
                    state.following().position());
            scene = current;
        }
        return current;
    }

    private void takeInputs(SessionState state) {
        while (!inputs.isEmpty()) {
            inputs.removeFirst().accept(state);
        }
    }

    private void perform(Action action, SessionState state) {
        switch (action) {
            case FULL_SCREEN -> window.toggleFullScreen();
            case MONITOR -> {
                if (!window.toNextMonitor()) {
                    scene(state).say("there is no other screen");
                }
            }
            default -> scene(state).act(action, state);
        }
    }

    private void press(String key, boolean repeated, SessionState state) {
        if (key.isEmpty()) {
            return;
        }
        Scene current = scene(state);
        if (repeated && current.teaching()) {
            return;
        }
        current.press(key)
                .filter(action -> !repeated || Keys.repeats(action))
                .ifPresent(action -> perform(action, state));
    }

    private void listen() {
        glfwSetKeyCallback(window.handle(), (handle, key, code, event, modifiers) -> {
            if (event != GLFW_RELEASE) {
                String name = Keys.name(key, code, glfwGetKeyName(key, code), (modifiers & GLFW_MOD_SHIFT) != 0);
                boolean repeated = event == GLFW_REPEAT;
                inputs.add(state -> press(name, repeated, state));
            }
        });
        glfwSetScrollCallback(window.handle(), (handle, across, down) -> {
            inputs.add(state -> scene(state).scroll(-down * ROWS_PER_NOTCH));
        });
        glfwSetWindowRefreshCallback(window.handle(), handle -> stale = true);
        glfwSetWindowPosCallback(window.handle(), (handle, x, y) -> window.moved());
        freeOld(glfwSetMonitorCallback((monitor, event) -> window.monitorsChanged()));
    }

    private static void freeOld(@Nullable GLFWMonitorCallback callback) {
        if (callback != null) {
            callback.free();
        }
    }

    /**
     * Waits for the next frame, because some displays do not pace the swap, and an unchanged picture was not swapped at
     * all.
     */
    private void waitForNext(long began, LongSupplier nanoTime, boolean shown) {
        double period = 1.0 / window.refreshRate() * (shown ? WAITING_SHARE : 1);
        double left = period - (nanoTime.getAsLong() - began) / NANOS;
        while (left > 0.0005) {
            glfwWaitEventsTimeout(left);
            checkDisplay();
            left = period - (nanoTime.getAsLong() - began) / NANOS;
        }
    }
}
