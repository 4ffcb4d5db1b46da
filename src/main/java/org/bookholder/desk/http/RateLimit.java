package org.bookholder.desk.http;

import java.time.Duration;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.DoSHandler;
import org.eclipse.jetty.util.Callback;

/**
 * Limits the requests of one address, and those of each device that was let in: Jetty's leaky bucket, with a plain answer when it is
 * full. So a device is not kept out by other programs at its address.
 */
final class RateLimit {
    /** Size of a burst; twenty pages opened at once from one machine stay below it. */
    static final int AT_ONCE = 600;

    /** Sustained rate in requests per second. */
    static final int PER_SECOND = 100;

    /** An address without requests for this long is forgotten. */
    private static final Duration FORGOTTEN = Duration.ofSeconds(10);

    /** Most addresses remembered at the same time; further ones are refused. */
    private static final int ADDRESSES = 10_000;

    private RateLimit() {}

    /** Passes requests within the limit on to {@code next}; {@code device} says which device a request is from, if it was let in. */
    static Handler before(Handler next, Function<Request, Optional<String>> device) {
        return new DoSHandler(
                next,
                request -> device.apply(request).orElseGet(() -> Request.getRemoteAddr(request)),
                new DoSHandler.LeakingBucketTrackerFactory(PER_SECOND, AT_ONCE, FORGOTTEN),
                RateLimit::refuse,
                ADDRESSES);
    }

    private static boolean refuse(Request request, Response response, Callback callback) {
        response.getHeaders().put(HttpHeader.RETRY_AFTER, "5");
        PlainResponses.answer(response, callback, HttpStatus.TOO_MANY_REQUESTS_429, "too many requests; wait a little");
        return true;
    }
}
