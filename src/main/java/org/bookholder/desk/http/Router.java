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

    /**
     * A request, taken apart.
     *
     * @param path its path without the device's part
     * @param course the course at home that it names; empty if it names none
     * @param session the name of the session
     * @param rest the path below the course and the session
     * @param post whether something is to be done
     */
    private record Asked(
            String path,
            Optional<String> course,
            String session,
            String rest,
            boolean post,
            Request request,
            Response response,
            Callback callback) {
        static Asked of(Request request, Response response, Callback callback, boolean home) {
            String path = DevicePlace.inside(request);
            Matcher inCourse = COURSE.matcher(path);
            Optional<String> course = home && inCourse.matches() ? Optional.of(inCourse.group(1)) : Optional.empty();
            String inside = course.isPresent() ? inCourse.group(2) : path;
            Matcher inSession = SESSION.matcher(inside);
            boolean named = inSession.matches();
            return new Asked(
                    path,
                    course,
                    named ? inSession.group(1) : SessionDirectory.ONLY,
                    named ? inSession.group(2) : inside,
                    request.getMethod().equals("POST"),
                    request,
                    response,
                    callback);
        }

        void answer(int status, String text) {
            PlainResponses.answer(response, callback, status, text);
        }

        void refuse(ProblemException why) {
            answer(HttpStatus.CONFLICT_409, why.told());
        }

        void nothingHere() {
            answer(HttpStatus.NOT_FOUND_404, "there is nothing here");
        }

        void json(String json) {
            PlainResponses.json(response, callback, json);
        }

        /** Reads what was sent. */
        void body(Consumer<String> then) {
            Router.body(request, response, callback, then);
        }
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        Optional<DeskHome> home = shelf.home();
        Asked asked = Asked.of(request, response, callback, home.isPresent());
        boolean post = asked.post();
        if (post && asked.rest().equals("/join")) {
            asked.body(text -> joining.join(text, home.isPresent(), request, response, callback));
        } else if (!page(asked)
                && !joining.proved(asked.rest(), post, request, response, callback)
                && !HomeRoutes.opened(
                        home, admission, joining.port(), asked.path(), post, request, response, callback)) {
            Optional<Device> device = joining.device(request);
            if (device.isEmpty()) {
                asked.answer(
                        HttpStatus.UNAUTHORIZED_401, home.map(DeskHome::asks).orElseGet(admission::asks));
            } else {
                connections.letIn(request.getConnectionMetaData().getConnection());
                letIn(asked, device.get());
            }
        }
        return true;
    }

    /** Answers a device that was let in. */
    private void letIn(Asked asked, Device device) throws Exception {
        Optional<DeskHome> home = shelf.home();
        boolean ownPage = home.isPresent() && asked.course().isEmpty();
        if (asked.rest().equals("/devices")) {
            joining.devices(device, asked.post(), asked.request(), asked.response(), asked.callback());
        } else if (asked.post() && device.role() != Role.ACT) {
            asked.answer(HttpStatus.FORBIDDEN_403, "you were let in to look, not to act");
        } else if (!asked.post() && asked.rest().equals("/who") && ownPage) {
            home.get().seen();
            asked.json(who(device, shelf));
        } else if (ownPage) {
            new HomeRoutes(home.get(), streams)
                    .answer(asked.path(), device, asked.post(), asked.request(), asked.response(), asked.callback());
        } else {
            home.ifPresent(DeskHome::seen);
            room(asked, device);
        }
    }

    /** Sends one of the pages' files, if it is one. */
    private boolean page(Asked asked) {
        String file = asked.rest();
        if (file.equals("/") && asked.session().equals(SessionDirectory.ONLY)) {
            boolean ofCourse = asked.course().isPresent() || shelf.course().isPresent();
            file = ofCourse ? "/course.html" : shelf.home().isPresent() ? "/home.html" : file;
        }
        Optional<Assets.Asset> asset = asked.post() ? Optional.empty() : assets.find(file);
        asset.ifPresent(found -> {
            asked.response().getHeaders().put(HttpHeader.CONTENT_TYPE, found.type());
            asked.response().getHeaders().put(HttpHeader.CACHE_CONTROL, "no-cache");
            asked.response().getHeaders().put(HttpHeader.ETAG, found.tag());
            if (found.tag().equals(asked.request().getHeaders().get(HttpHeader.IF_NONE_MATCH))) {
                asked.response().setStatus(HttpStatus.NOT_MODIFIED_304);
                asked.callback().succeeded();
            } else {
                PlainResponses.send(
                        asked.response(), asked.callback(), found.bytes().duplicate());
            }
        });
        return asset.isPresent();
    }

    /** Answers what is asked of a course or a session; of a course at home if one is named. */
    private void room(Asked asked, Device device) throws Exception {
        Optional<SessionDirectory> shown;
        try {
            shown = asked.course().isEmpty()
                    ? Optional.of(shelf)
                    : shelf.home().orElseThrow().course(asked.course().get());
        } catch (ProblemException e) {
            asked.refuse(e);
            return;
        }
        if (shown.isEmpty()) {
            asked.nothingHere();
        } else if (asked.session().equals(SessionDirectory.ONLY)
                && shown.get().course().isPresent()) {
            course(asked, shown.get(), device);
        } else {
            session(asked, shown.get(), device);
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

    private void session(Asked asked, SessionDirectory shown, Device device) throws Exception {
        Optional<ServedSession> place;
        try {
            place = shown.session(asked.session());
        } catch (ProblemException e) {
            asked.refuse(e);
            return;
        }
        if (place.isEmpty() || (asked.post() && !asked.rest().equals("/act"))) {
            asked.nothingHere();
        } else if (asked.post()) {
            Actions actions = place.get().actions();
            asked.body(text -> act(asked, actions, text));
        } else if (asked.rest().equals("/who")) {
            asked.json(who(device, shown));
        } else {
            new SessionRoutes(place.get(), streams)
                    .get(asked.rest(), device, asked.request(), asked.response(), asked.callback());
        }
    }

    private void course(Asked asked, SessionDirectory shown, Device device) throws InterruptedException {
        DeskCourse course = shown.course().orElseThrow();
        if (asked.post() && asked.rest().equals("/act")) {
            asked.body(text -> act(asked, course, text));
        } else if (!asked.post() && asked.rest().equals("/elsewhere")) {
            elsewhere(asked, course, device);
        } else if (!asked.post() && asked.rest().equals("/who")) {
            asked.json(who(device, shown));
        } else if (!asked.post() && asked.rest().equals("/course")) {
            standing(asked, course);
        } else {
            asked.nothingHere();
        }
    }

    private static void standing(Asked asked, DeskCourse course) {
        try {
            DeskCourse.Standing now = course.now();
            String tag = '"' + now.revision() + '"';
            asked.response().getHeaders().put(HttpHeader.ETAG, tag);
            if (tag.equals(asked.request().getHeaders().get(HttpHeader.IF_NONE_MATCH))) {
                asked.response().setStatus(HttpStatus.NOT_MODIFIED_304);
                asked.callback().succeeded();
            } else {
                asked.json(now.json());
            }
        } catch (ProblemException e) {
            asked.refuse(e);
        }
    }

    /** Tells the owner's own browser where a session is read that another process has open. */
    private static void elsewhere(Asked asked, DeskCourse course, Device device) throws InterruptedException {
        if (!device.owner()) {
            asked.answer(HttpStatus.FORBIDDEN_403, "only the program's own page opens another desk");
            return;
        }
        String session = Request.extractQueryParameters(asked.request()).getValue("session");
        Optional<String> address = session == null ? Optional.empty() : course.deskElsewhere(session);
        if (address.isPresent()) {
            asked.json(JsonNodeFactory.instance
                    .objectNode()
                    .put("address", address.get())
                    .toString());
        } else {
            asked.answer(HttpStatus.NOT_FOUND_404, "that session has no desk, or is over");
        }
    }

    private static void act(Asked asked, DeskCourse course, String text) {
        Optional<String> refused = course.act(text);
        if (refused.isPresent()) {
            asked.answer(HttpStatus.CONFLICT_409, refused.get());
        } else {
            asked.json("{}");
        }
    }

    /** Passes an action on; it is answered once the session has reported the outcome. */
    private void act(Asked asked, Actions actions, String text) {
        try {
            actions.act(text, new ActReply(getServer().getThreadPool(), asked.response(), asked.callback()));
        } catch (IllegalArgumentException e) {
            asked.answer(HttpStatus.BAD_REQUEST_400, String.valueOf(e.getMessage()));
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
