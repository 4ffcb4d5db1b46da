package org.bookholder.desk.http;

import java.time.Duration;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.DoSHandler;
import org.eclipse.jetty.util.Callback;

/** How many requests one address may make: Jetty's leaking bucket, and a plain answer where it is full. */
final class RateLimit {
    /** Twenty pages opened at once from one machine stay below this. */
    static final int AT_ONCE = 600;

    /** So many requests a second can go on for ever. */
    static final int PER_SECOND = 100;

    /** An address that asks for nothing for so long is forgotten. */
    private static final Duration FORGOTTEN = Duration.ofSeconds(10);

    /** Addresses that are remembered at the same time; further ones are refused. */
    private static final int ADDRESSES = 10_000;

    private RateLimit() {}

    /** Hands on what is within the limit. */
    static Handler before(Handler next) {
        return new DoSHandler(
                next,
                DoSHandler.ID_FROM_REMOTE_ADDRESS,
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
