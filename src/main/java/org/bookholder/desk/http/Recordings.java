package org.bookholder.desk.http;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.problem.ProblemException;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/** Serves recordings and films, whole or a range of its bytes (RFC 9110, section 14), also while they are being written. */
final class Recordings {
    /** The longest answer to a range, which may be shorter than asked for: seeking in a take costs little memory. */
    private static final int MOST_BYTES = 512 * 1024;

    private static final Pattern RANGE = Pattern.compile("bytes=(\\d{1,18})-(\\d{0,18})");

    private Recordings() {}

    static void serve(StoredFile file, String type, Request request, Response response, Callback callback)
            throws ProblemException {
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, type);
        response.getHeaders().put(HttpHeader.ACCEPT_RANGES, "bytes");
        String asked = request.getHeaders().get(HttpHeader.RANGE);
        Matcher range = RANGE.matcher(asked == null ? "" : asked);
        if (request.getMethod().equals("HEAD") || !range.matches()) {
            Downloads.whole(file.path(), file.length(), request, response, callback);
            return;
        }
        long from = Long.parseLong(range.group(1));
        if (from >= file.length()) {
            response.getHeaders().put(HttpHeader.CONTENT_RANGE, "bytes */" + file.length());
            PlainResponses.answer(response, callback, HttpStatus.RANGE_NOT_SATISFIABLE_416, "it is shorter");
            return;
        }
        long last = range.group(2).isEmpty() ? file.length() - 1 : Long.parseLong(range.group(2));
        if (last < from) {
            Downloads.whole(file.path(), file.length(), request, response, callback);
            return;
        }
        int count = (int) Math.min(MOST_BYTES, Math.min(last, file.length() - 1) - from + 1);
        response.setStatus(HttpStatus.PARTIAL_CONTENT_206);
        response.getHeaders()
                .put(HttpHeader.CONTENT_RANGE, "bytes " + from + "-" + (from + count - 1) + "/" + file.length());
        response.getHeaders().put(HttpHeader.CONTENT_LENGTH, count);
        response.write(true, file.reader().read(from, count), callback);
    }
}
