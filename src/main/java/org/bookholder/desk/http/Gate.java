package org.bookholder.desk.http;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.IntSupplier;
import java.util.function.LongSupplier;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.jspecify.annotations.Nullable;

/**
 * Turns away what no page of ours asks for: other hosts' names (which a hostile page could have pointed at this machine),
 * pages of other origins, other methods, large bodies, and floods.
 */
final class Gate extends Handler.Wrapper {
    /** Actions are small; nothing else has a body. */
    static final int MOST_BODY_BYTES = 4096;

    /** Twenty pages opened at once from one machine stay below. */
    private static final double MOST_AT_ONCE = 600;

    private static final double PER_SECOND = 100;
    private static final int ADDRESSES = 500;
    private static final Set<String> METHODS = Set.of("GET", "HEAD", "POST");

    private final DeskDoor door;
    private final Set<String> ownNames;
    private final IntSupplier port;
    private final LongSupplier nanoTime;
    private final Map<String, Allowance> allowances = new LinkedHashMap<>();

    Gate(DeskDoor door, IntSupplier port, LongSupplier nanoTime, Handler behind) {
        super(behind);
        this.door = door;
        this.ownNames = door.ownNames();
        this.port = port;
        this.nanoTime = nanoTime;
    }

    /** How many more requests an address may make now. */
    private record Allowance(double left, long at) {}

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        if (!allowed(Request.getRemoteAddr(request))) {
            response.getHeaders().put(HttpHeader.RETRY_AFTER, "5");
            Plainly.answer(response, callback, HttpStatus.TOO_MANY_REQUESTS_429, "too many requests; wait a little");
            return true;
        }
        int refused = refusal(request);
        if (refused != 0) {
            Plainly.answer(response, callback, refused, "not from here");
            return true;
        }
        Plainly.addHeaders(response);
        return super.handle(request, response, callback);
    }

    /** The status to refuse a request with; 0 if it may pass. */
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
        if (!fromOurPage(origin, host, post) || otherSite(request.getHeaders().get("Sec-Fetch-Site"))) {
            return HttpStatus.FORBIDDEN_403;
        }
        return post ? refusalOfBody(request) : 0;
    }

    private static int refusalOfBody(Request request) {
        long length = request.getLength();
        if (length < 0) {
            return HttpStatus.LENGTH_REQUIRED_411;
        }
        if (length > MOST_BODY_BYTES) {
            return HttpStatus.PAYLOAD_TOO_LARGE_413;
        }
        String type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
        boolean json = type != null && type.toLowerCase(Locale.ROOT).startsWith("application/json");
        return json ? 0 : HttpStatus.UNSUPPORTED_MEDIA_TYPE_415;
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

    /** Browsers name the origin of every request that is not a plain look; a command without one is not from a page. */
    private static boolean fromOurPage(@Nullable String origin, String host, boolean post) {
        if (origin == null) {
            return !post;
        }
        return origin.equalsIgnoreCase("http://" + host) || origin.equalsIgnoreCase("https://" + host);
    }

    private static boolean otherSite(@Nullable String site) {
        return site != null && !site.equals("same-origin") && !site.equals("none");
    }

    private synchronized boolean allowed(String address) {
        long now = nanoTime.getAsLong();
        Allowance before = allowances.remove(address);
        double left = MOST_AT_ONCE;
        if (before != null) {
            left = Math.min(MOST_AT_ONCE, before.left() + (now - before.at()) * 1e-9 * PER_SECOND);
        } else if (allowances.size() >= ADDRESSES) {
            allowances.remove(allowances.keySet().iterator().next());
        }
        boolean may = left >= 1;
        allowances.put(address, new Allowance(may ? left - 1 : left, now));
        return may;
    }
}
