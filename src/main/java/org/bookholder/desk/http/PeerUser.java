package org.bookholder.desk.http;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Which user of this machine is at the other end of a connection from it. Only Linux tells, in {@code /proc/net/tcp} and
 * {@code tcp6} (proc(5)): numbers in hexadecimal, addresses and ports with a colon between them, the user in the eighth column. The
 * second has those who speak to an address of IPv4 through a socket of IPv6.
 *
 * @param tables the system's tables of connections; one that is not there holds none
 * @param own the folder of this process in {@code /proc}, which belongs to its user
 */
record PeerUser(List<Path> tables, Path own) {
    private static final int LOCAL = 1;
    private static final int REMOTE = 2;
    private static final int USER = 7;

    /** Asks this machine. */
    static final PeerUser OF_MACHINE =
            new PeerUser(List.of(Path.of("/proc/net/tcp"), Path.of("/proc/net/tcp6")), Path.of("/proc/self"));

    /** Copies the list. */
    PeerUser {
        tables = List.copyOf(tables);
    }

    /**
     * Whether a connection from this machine was made by another user.
     *
     * @param theirs the port at the other end
     * @param ours the port at this end
     * @return false also where the system does not tell
     */
    boolean isAnother(int theirs, int ours) {
        try {
            Optional<Long> user = user(theirs, ours);
            Object me = Files.getAttribute(own, "unix:uid");
            return user.isPresent() && me instanceof Integer uid && user.get() != uid.longValue();
        } catch (IOException | IllegalArgumentException | UnsupportedOperationException notTold) {
            return false;
        }
    }

    private Optional<Long> user(int theirs, int ours) throws IOException {
        for (Path table : tables) {
            Optional<Long> user =
                    Files.exists(table) ? user(Files.readAllLines(table), theirs, ours) : Optional.empty();
            if (user.isPresent()) {
                return user;
            }
        }
        return Optional.empty();
    }

    private static Optional<Long> user(List<String> rows, int theirs, int ours) {
        for (String row : rows) {
            String[] columns = row.strip().split("\\s+", -1);
            if (columns.length > USER && ends(columns[LOCAL], theirs) && ends(columns[REMOTE], ours)) {
                return Optional.of(Long.valueOf(columns[USER]));
            }
        }
        return Optional.empty();
    }

    private static boolean ends(String address, int port) {
        int colon = address.indexOf(':');
        return colon > 0 && Integer.parseInt(address.substring(colon + 1), 16) == port;
    }
}
