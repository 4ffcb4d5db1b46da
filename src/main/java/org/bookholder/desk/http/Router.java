package org.bookholder.desk.http;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.IntSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.desk.AccessControl;
import org.bookholder.desk.AccessControl.Role;
import org.bookholder.desk.Actions;
import org.bookholder.desk.DeskCourse;
import org.bookholder.desk.ServedSession;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.problem.ProblemException;
import org.eclipse.jetty.http.HttpCookie;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Promise;

/** Routes requests. Everything except the pages themselves needs a valid token. */
final class Router extends Handler.Abstract {
    /** Each session of a course has its own path; below it, everything is as at a desk for one session. */
    private static final Pattern SESSION = Pattern.compile("/session/([0-9a-z]{1,40})(/.{0,200})");

    private static final JsonMapper MAPPER = new JsonMapper();

    private final SessionDirectory shelf;
    private final AccessControl admission;
    private final IntSupplier port;
    private final Assets assets = new Assets();
    private final EventStreams streams = new EventStreams();

    Router(SessionDirectory shelf, AccessControl admission, IntSupplier port) {
        this.shelf = shelf;
        this.admission = admission;
        this.port = port;
    }

    @Override
    protected void doStart() throws Exception {
        super.doStart();
        streams.beatWith(getServer().getScheduler());
    }

    @Override
    protected void doStop() throws Exception {
        streams.endAll();
        super.doStop();
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        String path = Request.getPathInContext(request);
        Matcher inSession = SESSION.matcher(path);
        String name = inSession.matches() ? inSession.group(1) : SessionDirectory.ONLY;
        String rest = inSession.matches() ? inSession.group(2) : path;
        boolean post = request.getMethod().equals("POST");
        if (post && rest.equals("/join")) {
            body(request, response, callback, text -> join(text, request, response, callback));
            return true;
        }
        boolean ofCourse = name.equals(SessionDirectory.ONLY) && shelf.course().isPresent();
        Optional<Assets.Asset> asset =
                post ? Optional.empty() : assets.find(ofCourse && rest.equals("/") ? "/course.html" : rest);
        if (asset.isPresent()) {
            response.getHeaders().put(HttpHeader.CONTENT_TYPE, asset.get().type());
            response.getHeaders().put(HttpHeader.CACHE_CONTROL, "no-cache");
            PlainResponses.send(response, callback, asset.get().bytes().duplicate());
            return true;
        }
        Optional<Role> role = admission.role(token(request));
        if (role.isEmpty()) {
            PlainResponses.answer(response, callback, HttpStatus.UNAUTHORIZED_401, admission.asks());
        } else if (post && role.get() != Role.ACT) {
            PlainResponses.answer(response, callback, HttpStatus.FORBIDDEN_403, "you were let in to look, not to act");
        } else if (ofCourse) {
            course(rest, role.get(), post, request, response, callback);
        } else {
            session(name, rest, role.get(), post, request, response, callback);
        }
        return true;
    }

    private String who(Role role) {
        return "{\"acts\":" + (role == Role.ACT) + ",\"course\":"
                + shelf.course().isPresent() + "}";
    }

    private void session(
            String name, String rest, Role role, boolean post, Request request, Response response, Callback callback)
            throws Exception {
        Optional<ServedSession> place;
        try {
            place = shelf.session(name);
        } catch (ProblemException e) {
            PlainResponses.answer(response, callback, HttpStatus.CONFLICT_409, String.valueOf(e.getMessage()));
            return;
        }
        if (place.isEmpty() || (post && !rest.equals("/act"))) {
            PlainResponses.answer(response, callback, HttpStatus.NOT_FOUND_404, "there is nothing here");
        } else if (post) {
            ServedSession known = place.get();
            body(request, response, callback, text -> act(known.actions(), text, response, callback));
        } else if (rest.equals("/who")) {
            PlainResponses.json(response, callback, who(role));
        } else {
            new SessionRoutes(place.get(), streams).get(rest, role, request, response, callback);
        }
    }

    private void course(String rest, Role role, boolean post, Request request, Response response, Callback callback) {
        DeskCourse course = shelf.course().orElseThrow();
        if (post && rest.equals("/act")) {
            body(request, response, callback, text -> act(course, text, response, callback));
        } else if (!post && rest.equals("/who")) {
            PlainResponses.json(response, callback, who(role));
        } else if (!post && rest.equals("/course")) {
            standing(course, request, response, callback);
        } else {
            PlainResponses.answer(response, callback, HttpStatus.NOT_FOUND_404, "there is nothing here");
        }
    }

    private static void standing(DeskCourse course, Request request, Response response, Callback callback) {
        try {
            DeskCourse.Standing now = course.now();
            String tag = '"' + now.revision() + '"';
            response.getHeaders().put(HttpHeader.ETAG, tag);
            if (tag.equals(request.getHeaders().get(HttpHeader.IF_NONE_MATCH))) {
                response.setStatus(HttpStatus.NOT_MODIFIED_304);
                callback.succeeded();
            } else {
                PlainResponses.json(response, callback, now.json());
            }
        } catch (ProblemException e) {
            PlainResponses.answer(response, callback, HttpStatus.CONFLICT_409, String.valueOf(e.getMessage()));
        }
    }

    private static void act(DeskCourse course, String text, Response response, Callback callback) {
        Optional<String> refused = course.act(text);
        if (refused.isPresent()) {
            PlainResponses.answer(response, callback, HttpStatus.CONFLICT_409, refused.get());
        } else {
            PlainResponses.json(response, callback, "{}");
        }
    }

    /** Passes an action on; it is answered once the session has reported the outcome. */
    private void act(Actions actions, String text, Response response, Callback callback) {
        try {
            actions.act(text, new ActReply(getServer().getThreadPool(), response, callback));
        } catch (IllegalArgumentException e) {
            PlainResponses.answer(response, callback, HttpStatus.BAD_REQUEST_400, String.valueOf(e.getMessage()));
        }
    }

    private void join(String body, Request request, Response response, Callback callback) {
        String address = Request.getRemoteAddr(request);
        if (admission.mustWait(address)) {
            PlainResponses.answer(
                    response, callback, HttpStatus.TOO_MANY_REQUESTS_429, "too many wrong codes; wait a while");
            return;
        }
        Optional<String> token = admission.join(code(body), address);
        if (token.isEmpty()) {
            PlainResponses.answer(response, callback, HttpStatus.UNAUTHORIZED_401, "this code is not right");
            return;
        }
        HttpCookie cookie = HttpCookie.build(cookieName(), token.get())
                .httpOnly(true)
                .sameSite(HttpCookie.SameSite.STRICT)
                .path("/")
                .build();
        Response.addCookie(response, cookie);
        PlainResponses.json(response, callback, "{}");
    }

    private static String code(String body) {
        try {
            return MAPPER.readTree(body).path("code").asText("");
        } catch (JsonProcessingException e) {
            return "";
        }
    }

    /** Browsers share cookies between all ports of a host, so each desk uses its own cookie name. */
    private String cookieName() {
        return "desk-" + port.getAsInt();
    }

    private String token(Request request) {
        return Request.getCookies(request).stream()
                .filter(c -> c.getName().equals(cookieName()))
                .map(HttpCookie::getValue)
                .findFirst()
                .orElse("");
    }

    /** Reads the body without blocking a thread; {@link RequestFilter} has checked its length. */
    private static void body(Request request, Response response, Callback callback, Consumer<String> then) {
        Content.Source.asString(request, StandardCharsets.UTF_8, new Promise<String>() {
            @Override
            public void succeeded(String text) {
                then.accept(text);
            }

            @Override
            public void failed(Throwable failure) {
                Response.writeError(request, response, callback, HttpStatus.BAD_REQUEST_400);
            }
        });
    }
}
