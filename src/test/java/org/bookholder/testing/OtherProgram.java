package org.bookholder.testing;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * A program that listens at a port of this machine and prints what it is told: method, path, cookie and body of each request, with
 * bars between them. It knows nothing but the platform, so that another user can run it.
 */
public final class OtherProgram {
    private OtherProgram() {}

    /** Listens at the port that is named. */
    public static void main(String[] args) throws IOException {
        HttpServer server = HttpServer.create(
                new InetSocketAddress(InetAddress.getLoopbackAddress(), Integer.parseInt(args[0])), 10);
        server.createContext("/", exchange -> {
            String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
            List<String> cookies = exchange.getRequestHeaders().getOrDefault("Cookie", List.of());
            System.out.println(String.join(
                    "|",
                    exchange.getRequestMethod(),
                    exchange.getRequestURI().toString(),
                    String.join(";", cookies),
                    body));
            byte[] answer = "give your code".getBytes(StandardCharsets.UTF_8);
            exchange.sendResponseHeaders(exchange.getRequestURI().getPath().equals("/") ? 200 : 401, answer.length);
            exchange.getResponseBody().write(answer);
            exchange.close();
        });
        server.start();
        System.out.println("listening at " + server.getAddress().getPort());
    }
}
