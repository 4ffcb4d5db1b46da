package org.bookholder.desk.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rows as proc(5) and the kernel's Documentation/networking/proc_net_tcp.rst show them. */
final class PeerUserTest {
    private static final int OURS = 0x1F90;
    private static final int THEIRS = 0xC001;

    @TempDir
    private Path folder;

    private PeerUser peers(int stranger) throws IOException {
        int own = (Integer) Files.getAttribute(folder, "unix:uid");
        Path table = Files.writeString(folder.resolve("tcp"), String.format(Locale.ROOT, """
              sl  local_address rem_address   st tx_queue rx_queue tr tm->when retrnsmt   uid  timeout inode
               0: 0100007F:1F90 00000000:0000 0A 00000000:00000000 00:00000000 00000000 %1$d 0 41 1 0 100 0 0 10 0
               1: 0100007F:1F90 0100007F:C001 01 00000000:00000000 00:00000000 00000000 %1$d 0 42 1 0 20 4 30 10 -1
               2: 0100007F:C001 0100007F:1F90 01 00000000:00000000 00:00000000 00000000 %2$d 0 43 1 0 20 4 30 10 -1
            """, own, own + stranger));
        return new PeerUser(List.of(table), folder);
    }

    @Test
    void theUserAtTheOtherEndIsFoundByBothPorts() throws IOException {
        assertThat(peers(1).isAnother(THEIRS, OURS)).isTrue();
        assertThat(peers(0).isAnother(THEIRS, OURS)).isFalse();
    }

    /** As Linux shows a socket of IPv6 that has connected to {@code ::ffff:127.0.0.1}. */
    @Test
    void aUserWhoComesThroughASocketOfIpv6IsFound() throws IOException {
        int own = (Integer) Files.getAttribute(folder, "unix:uid");
        Path mapped = Files.writeString(folder.resolve("tcp6"), String.format(Locale.ROOT, """
              sl  local_address                         remote_address                        st tx_queue rx_queue tr tm->when retrnsmt   uid  timeout inode
               0: 0000000000000000FFFF00000100007F:C002 0000000000000000FFFF00000100007F:1F90 01 00000000:00000000 00:00000000 00000000 %d 0 44 1 0 20 4 30 10 -1
            """, own + 1));
        Path other = Files.writeString(folder.resolve("tcp"), "  sl  local_address rem_address\n");
        assertThat(new PeerUser(List.of(other, mapped), folder).isAnother(0xC002, OURS))
                .isTrue();
        assertThat(new PeerUser(List.of(folder.resolve("none"), mapped), folder).isAnother(0xC002, OURS))
                .isTrue();
        assertThat(new PeerUser(List.of(other), folder).isAnother(0xC002, OURS)).isFalse();
    }

    @Test
    void whereTheSystemDoesNotTellNobodyIsCalledAStranger() throws IOException {
        assertThat(peers(1).isAnother(0xC002, OURS)).isFalse();
        Files.writeString(folder.resolve("tcp"), "not a table\n0: x y z a b c d e\n");
        assertThat(new PeerUser(List.of(folder.resolve("tcp")), folder).isAnother(THEIRS, OURS))
                .isFalse();
        assertThat(new PeerUser(List.of(folder.resolve("none")), folder).isAnother(THEIRS, OURS))
                .isFalse();
    }
}
