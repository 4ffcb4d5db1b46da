package org.bookholder.app.session;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.app.environment.Environment;
import org.bookholder.files.PrivateFiles;
import org.bookholder.journal.OverflowFolder;
import org.bookholder.journal.OverflowMerge;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionSummary.Standing;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;

/** Finds what was kept in a second place because a session's folder could not be written, and takes it into the session. */
public final class Overflows {
    /** How the folders' names begin. */
    static final String PREFIX = "bookholder-overflow-";

    private Overflows() {}

    /** The folders in which second places are made, the better one first. */
    static List<Path> parents(Environment here) {
        return List.of(here.data().resolve("overflow"), Path.of(System.getProperty("java.io.tmpdir", ".")));
    }

    /** What is kept of a session in second places. */
    public static List<OverflowFolder> of(Environment here, Path session) {
        List<OverflowFolder> found = new ArrayList<>();
        for (Path parent : parents(here)) {
            try (DirectoryStream<Path> folders = Files.newDirectoryStream(parent, PREFIX + "*")) {
                for (Path folder : folders) {
                    if (isOwn(here, folder)) {
                        OverflowFolder.in(folder)
                                .filter(overflow -> same(overflow.session(), session))
                                .ifPresent(found::add);
                    }
                }
            } catch (IOException | DirectoryIteratorException none) {
                // There is no such folder, or it cannot be looked into: then nothing of this user's is in it.
            }
        }
        return found;
    }

    /** In a folder that all users share, another one may have made it. */
    private static boolean isOwn(Environment here, Path folder) {
        try {
            Path own = PrivateFiles.createFolder(here.data());
            return Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)
                    && Files.getOwner(folder, LinkOption.NOFOLLOW_LINKS).equals(Files.getOwner(own));
        } catch (IOException goneOrUnreadable) {
            return false;
        }
    }

    private static boolean same(Path one, Path other) {
        try {
            if (Files.exists(one) && Files.exists(other)) {
                return Files.isSameFile(one, other);
            }
        } catch (IOException unreadable) {
            // Their names decide.
        }
        return one.equals(other.toAbsolutePath().normalize());
    }

    /**
     * Takes what is kept of a session into it. If the session's folder is gone, it is made again. Does nothing while the session is
     * open somewhere.
     *
     * @return what was taken in, one sentence each
     * @throws ProblemException if it cannot be taken in now; nothing is lost then, and it can be tried again
     */
    public static List<String> takeIn(Environment here, Path session) throws ProblemException {
        return takeIn(here, session, of(here, session));
    }

    /** The same with a folder that is named, for example because it was moved. */
    public static List<String> takeIn(Environment here, Path session, Path kept) throws ProblemException {
        Optional<OverflowFolder> folder = OverflowFolder.in(kept);
        if (folder.isEmpty()) {
            throw new ProblemException(
                    "nothing of a session is kept there", kept.toString(), "name the folder that Bookholder named");
        }
        return takeIn(here, session, List.of(folder.get()));
    }

    private static List<String> takeIn(Environment here, Path session, List<OverflowFolder> kept)
            throws ProblemException {
        boolean there = SessionFolder.isSession(session);
        if (kept.isEmpty()
                || (there && SessionFolder.summary(session, here.locks()).standing() == Standing.OPEN)) {
            return List.of();
        }
        List<String> told = new ArrayList<>();
        try (SessionFolder folder = there ? SessionFolder.open(session, here.locks()) : made(here, session, kept)) {
            for (OverflowFolder overflow : kept) {
                OverflowMerge.into(folder, overflow);
            }
            if (!there) {
                keepScript(folder);
            }
        } catch (ProblemException e) {
            throw notNow(session, kept, e);
        }
        for (OverflowFolder overflow : kept) {
            told.add(String.format(
                    Locale.ROOT,
                    "%.1f MB that were kept in %s are in the session now",
                    overflow.bytes() / 1e6,
                    overflow.path()));
            overflow.delete();
        }
        return told;
    }

    private static ProblemException notNow(Path session, List<OverflowFolder> kept, ProblemException cause) {
        String places =
                kept.stream().map(overflow -> overflow.path().toString()).collect(Collectors.joining(" and "));
        return new ProblemException(
                "a part of this session is in " + places + " and cannot be taken in now (" + cause.where() + ": "
                        + cause.what() + ")",
                session.toString(),
                cause.remedy(),
                cause);
    }

    private static SessionFolder made(Environment here, Path session, List<OverflowFolder> kept)
            throws ProblemException {
        for (OverflowFolder overflow : kept) {
            if (overflow.whole()) {
                return SessionFolder.create(session, here.locks());
            }
        }
        throw new ProblemException(
                "the session's folder is gone, and this is not all of it",
                session.toString(),
                "put the folder back, or plug its disk in");
    }

    private static void keepScript(SessionFolder folder) throws ProblemException {
        List<SessionEvent> events = folder.events();
        Optional<SessionEvent.Opened> opened = Replay.firstOpened(events);
        if (opened.isPresent()) {
            folder.keepScript(
                    opened.get().source(),
                    Replay.lastText(events).orElse(opened.get().scriptText()));
        }
    }
}
