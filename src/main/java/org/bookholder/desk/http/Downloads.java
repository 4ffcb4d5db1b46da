package org.bookholder.desk.http;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/** Sends a file as a download under its own name (RFC 6266), piece by piece as the client reads it. */
final class Downloads {
    private Downloads() {}

    static void serve(Path file, Request request, Response response, Callback callback) {
        // RFC 8187: every character but plain letters, digits and some marks is written as the bytes of its UTF-8.
        String name = URLEncoder.encode(String.valueOf(file.getFileName()), StandardCharsets.UTF_8)
                .replace("+", "%20")
                .replace("*", "%2A");
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, "application/octet-stream");
        response.getHeaders().put("Content-Disposition", "attachment; filename*=UTF-8''" + name);
        whole(file, file.toFile().length(), request, response, callback);
    }

    /** Sends the first {@code length} bytes of a file. */
    static void whole(Path file, long length, Request request, Response response, Callback callback) {
        response.getHeaders().put(HttpHeader.CONTENT_LENGTH, length);
        if (request.getMethod().equals("HEAD")) {
            callback.succeeded();
        } else {
            Content.copy(Content.Source.from(file, 0, length), response, callback);
        }
    }
}
