package org.bookholder.testing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.bookholder.app.environment.Equipment;
import org.bookholder.app.environment.FileWish;
import org.bookholder.cli.Installed;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.session.Command;
import org.bookholder.session.SessionState;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.Ears;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.view.settings.Display;
import org.bookholder.view.settings.WindowSettings;
import org.bookholder.view.settings.WindowWish;

/** A machine with the devices that a test gives it; without any at first, and with no display. */
public final class FakeEquipment implements Equipment {
    private static final long PATIENCE_SECONDS = 60;

    private final Deque<AudioSource> microphones = new ConcurrentLinkedDeque<>();
    private final List<AudioSource> pluggedIn = new CopyOnWriteArrayList<>();
    private Optional<AudioSource> checked = Optional.empty();
    private Optional<String> deadMicrophone = Optional.empty();
    private Ears ears = new FakeEars(List.of());
    private boolean realEars;
    private final BlockingQueue<Path> shown = new LinkedBlockingQueue<>();
    private Optional<Consumer<Consumer<Command>>> presenter = Optional.empty();
    private final List<String> lessonsShown = new ArrayList<>();
    private boolean staysToTheEnd;
    private boolean opensOneWindow;
    private Optional<Function<FileWish, List<Path>>> chooser = Optional.empty();
    private Runnable dialogCloses = () -> {};
    private List<Display> displays = List.of();
    private int windowsClosed;
    private Optional<WindowWish> wish = Optional.empty();
    private Optional<WindowWish> left = Optional.empty();

    /** What the recogniser will be. */
    public void hears(Ears fake) {
        ears = fake;
    }

    /** The recogniser will be the real one, with whatever model is asked for. */
    public void hearsForReal() {
        realEars = true;
    }

    /** A microphone that is opened once, after those given before it. */
    public void hasMicrophone(AudioSource source) {
        microphones.add(source);
    }

    /** A microphone that can be opened by its name as often as one likes. */
    public void staysPluggedIn(AudioSource source) {
        pluggedIn.add(source);
    }

    /** What a check of the sound hears, whichever microphone it asks for. */
    public void isCheckedWith(AudioSource source) {
        checked = Optional.of(source);
    }

    /** A microphone is listed that cannot be opened. */
    public void hasDeadMicrophone(String name) {
        deadMicrophone = Optional.of(name);
    }

    /** There is a display, and somebody at it who gives commands and then closes the window. */
    public void hasPresenter(Consumer<Consumer<Command>> somebody) {
        presenter = Optional.of(somebody);
    }

    /** After the first window none can be opened any more: that is a fault of the program. */
    public void opensOneWindow() {
        opensOneWindow = true;
    }

    /** The presenter leaves the window open until the session has ended. */
    public void staysToTheEnd() {
        staysToTheEnd = true;
    }

    /** The titles that the windows were opened with and turned to. */
    public List<String> lessonsShown() {
        return List.copyOf(lessonsShown);
    }

    /** How the presenter will leave the window. */
    public void leavesWindow(WindowWish changed) {
        left = Optional.of(changed);
    }

    /** How often a window was closed. */
    public int windowsClosed() {
        return windowsClosed;
    }

    /** How the window was wanted. */
    public Optional<WindowWish> wish() {
        return wish;
    }

    @Override
    public Ears ears(Path model) throws ProblemException {
        return realEars ? VoskEars.load(model) : ears;
    }

    @Override
    public List<String> microphones() {
        return Stream.concat(
                        deadMicrophone.stream(),
                        Stream.concat(pluggedIn.stream(), microphones.stream()).map(AudioSource::name))
                .toList();
    }

    @Override
    public AudioSource microphone(Optional<String> name, LongSupplier nanoTime) throws ProblemException {
        if (deadMicrophone.isPresent()) {
            throw new ProblemException("no microphone can be opened", deadMicrophone.get(), "plug another one in");
        }
        Optional<AudioSource> known = pluggedIn.stream()
                .filter(source -> name.isPresent() && source.name().equals(name.get()))
                .findFirst();
        return known.or(() -> Optional.ofNullable(microphones.poll()))
                .orElseThrow(() -> new ProblemException("there is no microphone", "microphone", "plug one in"));
    }

    @Override
    public AudioSource microphoneWithSides(Optional<String> name, LongSupplier nanoTime) throws ProblemException {
        return checked.isPresent() ? checked.get() : microphone(name, nanoTime);
    }

    @Override
    public List<HandOffPart> handOffParts() {
        return Installed.handOffParts();
    }

    @Override
    public void showFolder(Path folder) {
        shown.add(folder);
    }

    @Override
    public boolean showsFileDialogs() {
        return chooser.isPresent();
    }

    @Override
    public List<Path> choose(FileWish wish) {
        return chooser.orElseThrow().apply(wish);
    }

    @Override
    public void closeFileDialogs() {
        dialogCloses.run();
    }

    /** What closing a dialog for files does. */
    public void whenDialogCloses(Runnable action) {
        dialogCloses = action;
    }

    /** There is a dialog for files, and somebody who chooses in it. */
    public void hasChooser(Function<FileWish, List<Path>> somebody) {
        chooser = Optional.of(somebody);
    }

    /** The next folder that is shown, which is waited for. */
    public Path nextShown() throws InterruptedException {
        return Objects.requireNonNull(shown.poll(PATIENCE_SECONDS, TimeUnit.SECONDS), "no folder was shown");
    }

    /** The folders that were shown and not yet asked for. */
    public List<Path> shown() {
        return List.copyOf(shown);
    }

    /** These monitors are connected. */
    public void hasDisplays(Display... connected) {
        displays = List.of(connected);
    }

    @Override
    public List<Display> displays() throws ProblemException {
        if (displays.isEmpty()) {
            throw new ProblemException("there is no display", "reading window", "plug one in");
        }
        return displays;
    }

    @Override
    public Window window(WindowWish wanted, Script script) throws ProblemException {
        if (opensOneWindow && wish.isPresent()) {
            throw new IllegalStateException("a planted fault of the opening");
        }
        wish = Optional.of(wanted);
        lessonsShown.add(script.title());
        Consumer<Consumer<Command>> somebody = presenter.orElseThrow(
                () -> new ProblemException("there is no display", "reading window", "read with --no-window"));
        return new Window() {
            @Override
            public void run(
                    Supplier<SessionState> state,
                    Consumer<Command> commands,
                    LongSupplier nanoTime,
                    BooleanSupplier ended) {
                somebody.accept(commands);
                while (staysToTheEnd && !ended.getAsBoolean()) {
                    Thread.onSpinWait();
                }
            }

            @Override
            public void turnTo(Script other, WindowSettings settings) {
                lessonsShown.add(other.title());
            }

            @Override
            public WindowWish wish() {
                return left.orElse(wanted);
            }

            @Override
            public void close() {
                windowsClosed++;
            }
        };
    }
}
