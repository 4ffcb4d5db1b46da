package org.bookholder.desk.http;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * Sends answers of one line of plain text with the common headers; also used when the web server itself refuses a
 * request.
 */
final class PlainResponses implements Request.Handler {
    /**
     * Allows only content served by this program, no frames, no guessing of types, and sends other sites no referrer.
     */
    private static final List<HttpField> HEADERS = List.of(
            new HttpField(
                    "Content-Security-Policy",
                    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; "
                            + "media-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; "
                            + "frame-ancestors 'none'"),
            new HttpField("X-Content-Type-Options", "nosniff"),
            new HttpField("X-Frame-Options", "DENY"),
            new HttpField("Referrer-Policy", "no-referrer"),
            new HttpField("Cross-Origin-Opener-Policy", "same-origin"),
            new HttpField("Cross-Origin-Resource-Policy", "same-origin"),
            new HttpField("Permissions-Policy", "camera=(), microphone=(), geolocation=()"));

    @Override
    public boolean handle(Request request, Response response, Callback callback) {
        int status = response.getStatus() < 400 ? HttpStatus.INTERNAL_SERVER_ERROR_500 : response.getStatus();
        answer(response, callback, status, "this cannot be answered");
        return true;
    }

    static void addHeaders(Response response) {
        HEADERS.forEach(response.getHeaders()::put);
        response.getHeaders().put(HttpHeader.CACHE_CONTROL, "no-store");
    }

    static void answer(Response response, Callback callback, int status, String text) {
        addHeaders(response);
        response.setStatus(status);
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, "text/plain; charset=utf-8");
        send(response, callback, StandardCharsets.UTF_8.encode(text));
    }

    static void json(Response response, Callback callback, String json) {
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, "application/json");
        send(response, callback, StandardCharsets.UTF_8.encode(json));
    }

    static void send(Response response, Callback callback, ByteBuffer bytes) {
        response.getHeaders().put(HttpHeader.CONTENT_LENGTH, bytes.remaining());
        response.write(true, bytes, callback);
    }
}
