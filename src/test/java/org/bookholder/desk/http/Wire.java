package org.bookholder.desk.http;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/** Sends raw HTTP, valid or not. */
final class Wire {
    private final int port;

    Wire(int port) {
        this.port = port;
    }

    /** A connection that says nothing by itself. */
    Socket open() throws IOException {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), port);
        socket.setSoTimeout(20_000);
        return socket;
    }

    /** Sends lines as they are and gives the whole answer. */
    String say(String... lines) throws IOException {
        return raw(String.join("\r\n", lines) + "\r\n\r\n");
    }

    String raw(String text) throws IOException {
        try (Socket socket = open()) {
            socket.getOutputStream().write(text.getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().flush();
            return answer(socket.getInputStream());
        }
    }

    /** A request of a page of ours. */
    String get(String path, String cookie, String... more) throws IOException {
        return say(
                "GET " + path + " HTTP/1.1",
                "Host: 127.0.0.1:" + port,
                "Cookie: " + cookie,
                "Connection: close" + (more.length == 0 ? "" : "\r\n" + String.join("\r\n", more)));
    }

    String post(String path, String cookie, String body) throws IOException {
        return raw("POST " + path + " HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\nOrigin: http://127.0.0.1:" + port
                + "\r\nCookie: " + cookie + "\r\nContent-Type: application/json\r\nContent-Length: " + body.length()
                + "\r\nConnection: close\r\n\r\n" + body);
    }

    private static String answer(InputStream in) throws IOException {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        in.transferTo(all);
        return all.toString(StandardCharsets.ISO_8859_1);
    }

    static int status(String answer) {
        return Integer.parseInt(answer.substring(9, 12));
    }
}
