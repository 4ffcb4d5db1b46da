package org.bookholder.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;

/** A hand-off that a test has written. */
public final class ExampleHandOff implements DeskHandOff {
    public final List<Boolean> asked = new CopyOnWriteArrayList<>();
    private final Path folder;
    private volatile HandOffStatus now;

    ExampleHandOff(Path folder) {
        this.folder = folder;
        now = new HandOffStatus(HandOffStatus.Step.IDLE, folder.toString(), List.of(), "");
    }

    /** Files lie there. */
    public void holds(String... names) {
        List<HandOffStatus.Entry> files =
                List.of(names).stream().map(n -> new HandOffStatus.Entry(n, 7)).toList();
        now = new HandOffStatus(HandOffStatus.Step.WRITTEN, folder.toString(), files, "3 clips");
    }

    @Override
    public HandOffStatus now() {
        return now;
    }

    @Override
    public Optional<String> ask(boolean replace) {
        asked.add(replace);
        return Optional.empty();
    }

    @Override
    public Optional<Path> file(String name) {
        return now.files().stream()
                .filter(f -> f.name().equals(name))
                .map(f -> folder.resolve(name))
                .findFirst();
    }
}
