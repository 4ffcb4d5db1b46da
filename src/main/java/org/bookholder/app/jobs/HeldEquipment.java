package org.bookholder.app.jobs;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.bookholder.app.environment.Equipment;
import org.bookholder.app.environment.FileWish;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.pronounce.Vocabulary;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.Ear;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Ears;
import org.bookholder.speech.Grammar;
import org.bookholder.speech.Hypothesis;
import org.bookholder.view.settings.Display;
import org.bookholder.view.settings.WindowWish;

/**
 * The machine's equipment for a job: while the job is held its ears wait before they hear the next block. A job that listens
 * has threads of its own, which its service does not stop in the middle.
 *
 * @param equipment the machine's
 * @param hold waits while the job is held
 */
public record HeldEquipment(Equipment equipment, Runnable hold) implements Equipment {
    @Override
    public Ears ears(Path model) throws ProblemException {
        return new HeldEars(equipment.ears(model), hold);
    }

    @Override
    public List<String> microphones() throws ProblemException {
        return equipment.microphones();
    }

    @Override
    public AudioSource microphone(Optional<String> name, LongSupplier nanoTime) throws ProblemException {
        return equipment.microphone(name, nanoTime);
    }

    @Override
    public AudioSource microphoneWithSides(Optional<String> name, LongSupplier nanoTime) throws ProblemException {
        return equipment.microphoneWithSides(name, nanoTime);
    }

    @Override
    public List<Display> displays() throws ProblemException {
        return equipment.displays();
    }

    @Override
    public Window window(WindowWish wish, Script script) throws ProblemException {
        return equipment.window(wish, script);
    }

    @Override
    public List<HandOffPart> handOffParts() {
        return equipment.handOffParts();
    }

    @Override
    public void showFolder(Path folder) throws ProblemException {
        equipment.showFolder(folder);
    }

    @Override
    public boolean showsFileDialogs() {
        return equipment.showsFileDialogs();
    }

    @Override
    public List<Path> choose(FileWish wish) {
        return equipment.choose(wish);
    }

    @Override
    public void closeFileDialogs() {
        equipment.closeFileDialogs();
    }

    private record HeldEars(Ears ears, Runnable hold) implements Ears {
        @Override
        public Vocabulary vocabulary() {
            return ears.vocabulary();
        }

        @Override
        public Ear scriptEar(Grammar grammar, int rate) {
            return new HeldEar(ears.scriptEar(grammar, rate), hold);
        }

        @Override
        public Ear openEar(int rate) {
            return new HeldEar(ears.openEar(rate), hold);
        }

        @Override
        public void close() {
            ears.close();
        }
    }

    private record HeldEar(Ear ear, Runnable hold) implements Ear {
        @Override
        public EarKind kind() {
            return ear.kind();
        }

        @Override
        public List<Hypothesis> hear(AudioBlock block) {
            hold.run();
            return ear.hear(block);
        }

        @Override
        public List<Hypothesis> finish() {
            return ear.finish();
        }

        @Override
        public void close() {
            ear.close();
        }
    }
}
