package org.bookholder.cli;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.bookholder.app.environment.Equipment;
import org.bookholder.app.environment.FileWish;
import org.bookholder.handoff.Exporter;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.NotesJsonExporter;
import org.bookholder.handoff.PickupListExporter;
import org.bookholder.handoff.TraceExporter;
import org.bookholder.handoff.captions.CaptionsPart;
import org.bookholder.handoff.edit.CutTablePart;
import org.bookholder.handoff.edit.EdlPart;
import org.bookholder.handoff.edit.OtioPart;
import org.bookholder.handoff.pickups.PickupPart;
import org.bookholder.handoff.pickups.TakeLogPart;
import org.bookholder.handoff.sound.ListenPart;
import org.bookholder.handoff.sound.SyncedSoundPart;
import org.bookholder.handoff.sound.TakesPart;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.CompletionLatch;
import org.bookholder.script.model.Script;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.Ears;
import org.bookholder.speech.microphone.Microphone;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.view.gl.FileDialog;
import org.bookholder.view.settings.Display;
import org.bookholder.view.settings.WindowWish;

/**
 * The single list of exporters, hand-off files and devices. A new exporter or audio source is added here and nowhere
 * else.
 */
public final class Installed {
    private static final List<Exporter> EXPORTERS =
            List.of(new PickupListExporter(ZoneId.systemDefault()), new NotesJsonExporter(), new TraceExporter());

    private static final List<HandOffPart> HAND_OFF_PARTS = List.of(
            new PickupPart(),
            new TakeLogPart(),
            new CaptionsPart(),
            new EdlPart(),
            new OtioPart(),
            new CutTablePart(),
            new ListenPart(),
            new TakesPart(),
            new SyncedSoundPart());

    private Installed() {}

    /**
     * Every export format, in the order in which the command line lists them; the first is the one for people to read.
     */
    public static List<Exporter> exporters() {
        return EXPORTERS;
    }

    /** Every kind of file in a hand-off, in the order in which they are written. */
    public static List<HandOffPart> handOffParts() {
        return HAND_OFF_PARTS;
    }

    /** The export format with this name. */
    static Exporter exporter(String name) {
        return EXPORTERS.stream()
                .filter(exporter -> exporter.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("name (" + name + ") must be that of an exporter"));
    }

    /** The real devices. */
    static final class OnThisMachine implements Equipment {
        private final WindowsOfMachine windows = new WindowsOfMachine();

        @Override
        public Ears ears(Path model) throws ProblemException {
            return VoskEars.load(model);
        }

        @Override
        public List<String> microphones() throws ProblemException {
            return Microphone.names();
        }

        @Override
        public AudioSource microphone(Optional<String> name, LongSupplier nanoTime) throws ProblemException {
            return Microphone.open(name, Microphone.PREFERRED_RATE, nanoTime);
        }

        @Override
        public AudioSource microphoneWithSides(Optional<String> name, LongSupplier nanoTime) throws ProblemException {
            return Microphone.openWithSides(name, Microphone.PREFERRED_RATE, nanoTime);
        }

        @Override
        public List<HandOffPart> handOffParts() {
            return HAND_OFF_PARTS;
        }

        @Override
        public void showFolder(Path folder) throws ProblemException {
            if (!SystemBrowser.ofMachine().open(folder.toString(), new CompletionLatch()::await)) {
                throw new ProblemException("this folder can't be shown here", folder.toString(), "open it yourself");
            }
        }

        @Override
        public boolean showsFileDialogs() {
            return DialogPrograms.onThisMachine();
        }

        @Override
        public List<Path> choose(FileWish wish) {
            String from = wish.from().map(Path::toString).orElse("");
            return wish.folder()
                    ? FileDialog.folder(wish.title(), from)
                    : FileDialog.files(wish.title(), from, wish.endings(), wish.several());
        }

        @Override
        public void closeFileDialogs() {
            DialogPrograms.endThoseOf(ProcessHandle.current());
        }

        @Override
        public List<Display> displays() throws ProblemException {
            return windows.displays();
        }

        @Override
        public Window window(WindowWish wish, Script script) throws ProblemException {
            return windows.open(wish, script);
        }
    }
}
