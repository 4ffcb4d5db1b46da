package org.bookholder.testing;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * A network between a page and the desk that can go dead: what is sent is swallowed and nobody is told, as when a radio link
 * is lost. Connections that were open then, or were opened meanwhile, stay dead for good.
 */
public final class Relay implements AutoCloseable {
    private final ServerSocket server;
    private final int to;
    private final List<Link> links = new ArrayList<>();
    private boolean dead;

    private record Link(Socket page, Socket desk, AtomicBoolean lost) {}

    /** Forwards connections to a port of this machine. */
    public Relay(int to) throws IOException {
        this.to = to;
        server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        run(this::accept);
    }

    /** Where pages are to connect. */
    public int port() {
        return server.getLocalPort();
    }

    public synchronized void die() {
        dead = true;
        links.forEach(link -> link.lost().set(true));
    }

    public synchronized void live() {
        dead = false;
    }

    private void accept() throws IOException {
        while (true) {
            Link link = add(server.accept(), new Socket(InetAddress.getLoopbackAddress(), to));
            run(() -> pump(link.page(), link.desk(), link.lost()));
            run(() -> pump(link.desk(), link.page(), link.lost()));
        }
    }

    /** Closes each connection that is open, as a router does that is started again; new ones are let through. */
    public synchronized void cut() throws IOException {
        for (Link link : links) {
            link.page().close();
            link.desk().close();
        }
        links.clear();
    }

    private synchronized Link add(Socket page, Socket desk) {
        Link link = new Link(page, desk, new AtomicBoolean(dead));
        links.add(link);
        return link;
    }

    private static void pump(Socket from, Socket to, AtomicBoolean lost) throws IOException {
        InputStream in = from.getInputStream();
        byte[] buffer = new byte[16_384];
        for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
            if (!lost.get()) {
                to.getOutputStream().write(buffer, 0, read);
            }
        }
        if (!lost.get()) {
            to.close();
        }
    }

    @Override
    public synchronized void close() throws IOException {
        server.close();
        for (Link link : links) {
            link.page().close();
            link.desk().close();
        }
    }

    private interface Work {
        void run() throws IOException;
    }

    private static void run(Work work) {
        Thread thread = new Thread(() -> {
            try {
                work.run();
            } catch (IOException over) {
                // An end was closed.
            }
        });
        thread.setDaemon(true);
        thread.start();
    }
}
