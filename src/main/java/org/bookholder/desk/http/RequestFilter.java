package org.bookholder.desk.http;

import java.util.Locale;
import java.util.Set;
import java.util.function.IntSupplier;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.jspecify.annotations.Nullable;

/**
 * Refuses requests that no page of this program makes: for other host names (which a hostile page could have pointed at
 * this machine), from pages of other origins, with other methods or with large bodies.
 */
final class RequestFilter extends Handler.Wrapper {
    /** Actions are small. */
    static final int MOST_BODY_BYTES = 4096;

    /** What rooms of the program's own page ask for can hold the scripts of a course. */
    static final int MOST_ASKED_BYTES = 16 << 20;

    /** A file that was dropped on the page: what a script's file may have. */
    static final int MOST_FILE_BYTES = 16 << 20;

    private static final Set<String> METHODS = Set.of("GET", "HEAD", "POST");

    private final DeskAddress door;
    private final Set<String> ownNames;
    private final IntSupplier port;

    RequestFilter(DeskAddress door, IntSupplier port, Handler next) {
        super(next);
        this.door = door;
        this.ownNames = door.ownNames();
        this.port = port;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        int refused = refusal(request);
        if (refused != 0) {
            PlainResponses.answer(response, callback, refused, "this desk does not take such a request");
            return true;
        }
        PlainResponses.addHeaders(response);
        return super.handle(request, response, callback);
    }

    /** The status to refuse a request with; 0 if it passes. */
    private int refusal(Request request) {
        String host = request.getHeaders().get(HttpHeader.HOST);
        if (host == null || !isOurs(host.toLowerCase(Locale.ROOT))) {
            return HttpStatus.MISDIRECTED_REQUEST_421;
        }
        if (!METHODS.contains(request.getMethod())) {
            return HttpStatus.METHOD_NOT_ALLOWED_405;
        }
        boolean post = request.getMethod().equals("POST");
        String origin = request.getHeaders().get(HttpHeader.ORIGIN);
        boolean other = otherSite(request.getHeaders().get("Sec-Fetch-Site")) && !linked(request);
        if (!fromOurPage(origin, host, post) || other) {
            return HttpStatus.FORBIDDEN_403;
        }
        return post ? refusalOfBody(request, DevicePlace.inside(request)) : 0;
    }

    private static int refusalOfBody(Request request, String path) {
        long length = request.getLength();
        if (length < 0) {
            return HttpStatus.LENGTH_REQUIRED_411;
        }
        boolean file = path.equals(HomeRoutes.DROPPED);
        long most = file ? MOST_FILE_BYTES : path.equals(HomeRoutes.ASK) ? MOST_ASKED_BYTES : MOST_BODY_BYTES;
        if (length > most) {
            return HttpStatus.PAYLOAD_TOO_LARGE_413;
        }
        // Neither type can be sent by a form of another site without the browser asking first.
        String wanted = file ? "application/octet-stream" : "application/json";
        String type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
        boolean right = type != null && type.toLowerCase(Locale.ROOT).startsWith(wanted);
        return right ? 0 : HttpStatus.UNSUPPORTED_MEDIA_TYPE_415;
    }

    private boolean isOurs(String host) {
        int colon = host.lastIndexOf(':');
        String name = colon < 0 ? host : host.substring(0, colon);
        if (door.names().contains(name)) {
            return true;
        }
        return colon >= 0
                && ownNames.contains(name)
                && host.substring(colon + 1).equals(Integer.toString(port.getAsInt()));
    }

    /** Browsers send the origin with every POST; a request without it does not come from a page. */
    private static boolean fromOurPage(@Nullable String origin, String host, boolean post) {
        if (origin == null) {
            return !post;
        }
        return origin.equalsIgnoreCase("http://" + host) || origin.equalsIgnoreCase("https://" + host);
    }

    /**
     * Whether a link of a page at another port of this machine was followed to the page itself: the desk of a course leads to that of a
     * reading. The page is the same for everyone and lets nobody in.
     */
    private static boolean linked(Request request) {
        HttpFields headers = request.getHeaders();
        return request.getMethod().equals("GET")
                && DevicePlace.inside(request).equals("/")
                && "same-site".equals(headers.get("Sec-Fetch-Site"))
                && "navigate".equals(headers.get("Sec-Fetch-Mode"))
                && "document".equals(headers.get("Sec-Fetch-Dest"));
    }

    private static boolean otherSite(@Nullable String site) {
        return site != null && !site.equals("same-origin") && !site.equals("none");
    }
}
