package org.bookholder.desk.http;

import org.bookholder.session.Request;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.ThreadPool;

/** Answers a page's action once the session has reported the outcome. The session's thread never writes to a socket. */
record ActReply(ThreadPool threads, Response response, Callback callback) implements Request.Reply {
    @Override
    public void done() {
        later(() -> PlainResponses.json(response, callback, "{}"));
    }

    @Override
    public void refused(String why) {
        later(() -> PlainResponses.answer(response, callback, HttpStatus.CONFLICT_409, why));
    }

    @Override
    public void failed(String what) {
        later(() -> PlainResponses.answer(response, callback, HttpStatus.SERVICE_UNAVAILABLE_503, what));
    }

    private void later(Runnable answer) {
        try {
            threads.execute(answer);
        } catch (RuntimeException serverStops) {
            // The page's connection then fails, and the page says that the program does not answer.
        }
    }
}
