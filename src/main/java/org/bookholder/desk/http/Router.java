package org.bookholder.desk.http;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.desk.AccessControl;
import org.bookholder.desk.AccessControl.Role;
import org.bookholder.desk.Actions;
import org.bookholder.desk.DeskCourse;
import org.bookholder.desk.DeskHome;
import org.bookholder.desk.Devices.Device;
import org.bookholder.desk.ServedSession;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.problem.ProblemException;
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

    /** The courses at home lie at addresses of their own; below those, all is as at the desk of a course. */
    private static final Pattern COURSE = Pattern.compile("/course/([0-9a-z]{1,40})(/.{0,260})");

    private final SessionDirectory shelf;
    private final AccessControl admission;
    private final Joining joining;
    private final EventStreams streams;
    private final ConnectionLimiter connections;
    private final Assets assets = new Assets();

    Router(
            SessionDirectory shelf,
            AccessControl admission,
            Joining joining,
            EventStreams streams,
            ConnectionLimiter connections) {
        this.shelf = shelf;
        this.admission = admission;
        this.joining = joining;
        this.streams = streams;
        this.connections = connections;
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

    /** Tells all pages that the desk is closed in order. */
    void sayGoodbye() {
        streams.sayGoodbye();
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        Optional<DeskHome> home = shelf.home();
        String path = DevicePlace.inside(request);
        Matcher inCourse = COURSE.matcher(path);
        Optional<String> course =
                home.isPresent() && inCourse.matches() ? Optional.of(inCourse.group(1)) : Optional.empty();
        String inside = course.isPresent() ? inCourse.group(2) : path;
        Matcher inSession = SESSION.matcher(inside);
        String name = inSession.matches() ? inSession.group(1) : SessionDirectory.ONLY;
        String rest = inSession.matches() ? inSession.group(2) : inside;
        boolean post = request.getMethod().equals("POST");
        if (post && rest.equals("/join")) {
            body(
                    request,
                    response,
                    callback,
                    text -> joining.join(text, home.isPresent(), request, response, callback));
        } else if (!page(name, course.isPresent(), rest, post, response, callback)
                && !joining.proved(rest, post, request, response, callback)
                && !HomeRoutes.opened(home, admission, path, post, request, response, callback)) {
            Optional<Device> device = joining.device(request);
            if (device.isEmpty()) {
                String asks = home.map(DeskHome::asks).orElseGet(admission::asks);
                PlainResponses.answer(response, callback, HttpStatus.UNAUTHORIZED_401, asks);
            } else {
                connections.letIn(request.getConnectionMetaData().getConnection());
                letIn(course, path, name, rest, device.get(), post, request, response, callback);
            }
        }
        return true;
    }

    /** Answers a device that was let in. */
    private void letIn(
            Optional<String> course,
            String path,
            String name,
            String rest,
            Device device,
            boolean post,
            Request request,
            Response response,
            Callback callback)
            throws Exception {
        Optional<DeskHome> home = shelf.home();
        if (rest.equals("/devices")) {
            joining.devices(device, post, request, response, callback);
        } else if (post && device.role() != Role.ACT) {
            PlainResponses.answer(response, callback, HttpStatus.FORBIDDEN_403, "you were let in to look, not to act");
        } else if (!post && rest.equals("/who") && home.isPresent() && course.isEmpty()) {
            home.get().seen();
            ObjectNode who = JsonNodeFactory.instance.objectNode();
            who.put("acts", true).put("course", false).put("home", true);
            joining.addReturn(who, device);
            PlainResponses.json(response, callback, who.toString());
        } else if (home.isPresent() && course.isEmpty()) {
            new HomeRoutes(home.get(), streams).answer(path, device, post, request, response, callback);
        } else {
            home.ifPresent(DeskHome::seen);
            room(course, name, rest, device, post, request, response, callback);
        }
    }

    /** Sends one of the pages' files, if it is one. */
    private boolean page(
            String session, boolean inCourse, String rest, boolean post, Response response, Callback callback) {
        String file = rest;
        if (rest.equals("/") && session.equals(SessionDirectory.ONLY)) {
            boolean ofCourse = inCourse || shelf.course().isPresent();
            file = ofCourse ? "/course.html" : shelf.home().isPresent() ? "/home.html" : rest;
        }
        Optional<Assets.Asset> asset = post ? Optional.empty() : assets.find(file);
        asset.ifPresent(found -> {
            response.getHeaders().put(HttpHeader.CONTENT_TYPE, found.type());
            response.getHeaders().put(HttpHeader.CACHE_CONTROL, "no-cache");
            PlainResponses.send(response, callback, found.bytes().duplicate());
        });
        return asset.isPresent();
    }

    /** Answers what is asked of a course or a session; of a course at home if one is named. */
    private void room(
            Optional<String> course,
            String name,
            String rest,
            Device device,
            boolean post,
            Request request,
            Response response,
            Callback callback)
            throws Exception {
        Optional<SessionDirectory> shown;
        try {
            shown = course.isEmpty()
                    ? Optional.of(shelf)
                    : shelf.home().orElseThrow().course(course.get());
        } catch (ProblemException e) {
            PlainResponses.answer(response, callback, HttpStatus.CONFLICT_409, String.valueOf(e.getMessage()));
            return;
        }
        if (shown.isEmpty()) {
            PlainResponses.answer(response, callback, HttpStatus.NOT_FOUND_404, "there is nothing here");
        } else if (name.equals(SessionDirectory.ONLY) && shown.get().course().isPresent()) {
            course(shown.get(), rest, device, post, request, response, callback);
        } else {
            session(shown.get(), name, rest, device, post, request, response, callback);
        }
    }

    private String who(Device device, SessionDirectory shown) {
        ObjectNode who = JsonNodeFactory.instance.objectNode();
        who.put("acts", device.role() == Role.ACT).put("course", shown.course().isPresent());
        shown.running().ifPresent(name -> who.put("running", name));
        if (shelf.home().isPresent()) {
            who.put("home", true);
        }
        joining.addReturn(who, device);
        return who.toString();
    }

    private void session(
            SessionDirectory shown,
            String name,
            String rest,
            Device device,
            boolean post,
            Request request,
            Response response,
            Callback callback)
            throws Exception {
        Optional<ServedSession> place;
        try {
            place = shown.session(name);
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
            PlainResponses.json(response, callback, who(device, shown));
        } else {
            new SessionRoutes(place.get(), streams).get(rest, device, request, response, callback);
        }
    }

    private void course(
            SessionDirectory shown,
            String rest,
            Device device,
            boolean post,
            Request request,
            Response response,
            Callback callback) {
        DeskCourse course = shown.course().orElseThrow();
        if (post && rest.equals("/act")) {
            body(request, response, callback, text -> act(course, text, response, callback));
        } else if (!post && rest.equals("/who")) {
            PlainResponses.json(response, callback, who(device, shown));
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

    /** Reads the body without blocking a thread; {@link RequestFilter} has checked its length. */
    static void body(Request request, Response response, Callback callback, Consumer<String> then) {
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
