package org.bookholder.app.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.handoff.HandOffRequest;
import org.bookholder.app.handoff.HandOffService;
import org.bookholder.desk.DeskHandOff;
import org.bookholder.desk.HandOffStatus;
import org.bookholder.desk.HandOffStatus.Entry;
import org.bookholder.desk.HandOffStatus.Step;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.BackgroundTasks;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.session.SessionState;

/** Writes the same files as {@code bookholder handoff}, to the same place, for the desk. */
final class SessionHandOff implements DeskHandOff {
    private static final int MOST_FILES = 500;

    private final Environment here;
    private final Path session;
    private final Path folder;
    private final Supplier<SessionState> state;
    private final boolean live;
    private final BackgroundTasks errands;
    private final Latest<HandOffStatus> latest;

    /**
     * Creates the hand-off of a session.
     *
     * @param session its folder
     * @param live whether takes can be rolled in it
     */
    SessionHandOff(
            Environment here, Path session, Supplier<SessionState> state, boolean live, BackgroundTasks errands) {
        this.here = here;
        this.session = session;
        this.folder = HandOffRequest.usualFolder(session).toAbsolutePath().normalize();
        this.state = state;
        this.live = live;
        this.errands = errands;
        this.latest = new Latest<>(standing(Step.IDLE, ""));
    }

    @Override
    public HandOffStatus now() {
        return latest.get();
    }

    @Override
    public synchronized Optional<String> ask(boolean replace) {
        if (now().step() == Step.WRITING) {
            return Optional.of("the files are being written");
        }
        if (live && state.get().takes().rolling()) {
            return Optional.of("a take is rolling; cut it first");
        }
        latest.set(standing(Step.WRITING, ""));
        errands.ask(() -> latest.set(write(replace)));
        return Optional.empty();
    }

    @Override
    public Optional<Path> file(String name) {
        return files().stream()
                .filter(entry -> entry.name().equals(name))
                .map(entry -> folder.resolve(entry.name()))
                .filter(SessionHandOff::isPlain)
                .findFirst();
    }

    private HandOffStatus write(boolean replace) {
        if (!replace && !files().isEmpty()) {
            return standing(Step.IN_THE_WAY, "files are there already, and nothing was written");
        }
        try {
            HandOffService.Written written = new HandOffService(
                            here, HandOffRequest.usual(here.equipment().handOffParts(), replace), Interruption.NONE)
                    .write(session);
            return standing(
                    Step.WRITTEN,
                    String.join(
                            "; ",
                            Stream.concat(Stream.of(written.summary()), written.remarks().stream())
                                    .toList()));
        } catch (ProblemException e) {
            // The page shows the folder already, and the remedy is meant for the command line.
            return standing(Step.FAILED, e.named());
        } catch (RuntimeException e) {
            return standing(Step.FAILED, "a fault of the program stopped it (" + e + "); please report it");
        }
    }

    private HandOffStatus standing(Step step, String said) {
        return new HandOffStatus(step, folder.toString(), files(), said);
    }

    private List<Entry> files() {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.filter(SessionHandOff::isPlain)
                    .sorted()
                    .limit(MOST_FILES)
                    .map(file -> new Entry(
                            file.getFileName().toString(), file.toFile().length()))
                    .toList();
        } catch (IOException none) {
            return List.of();
        }
    }

    /** Whether it is a plain file: not a link, which could lead out of the folder, and not a temporary file. */
    private static boolean isPlain(Path file) {
        return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                && !file.getFileName().toString().startsWith(".");
    }
}
