package org.bookholder.desk.http;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.IntSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.desk.Actions;
import org.bookholder.desk.Admission;
import org.bookholder.desk.Admission.Role;
import org.bookholder.desk.DeskSession;
import org.bookholder.desk.Feed;
import org.bookholder.desk.Waveform;
import org.bookholder.journal.TakeFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionState.Take;
import org.eclipse.jetty.http.HttpCookie;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;
import org.eclipse.jetty.util.Promise;

/** Brings each request to what answers it. All but the page itself is for those who were let in. */
final class Router extends Handler.Abstract {
    private static final Pattern TAKE = Pattern.compile("/takes/(\\d{1,6})\\.wav");
    private static final JsonMapper MAPPER = new JsonMapper();

    private final DeskSession session;
    private final Feed feed;
    private final Actions actions;
    private final Admission admission;
    private final IntSupplier port;
    private final Assets assets = new Assets();
    private final Streams streams = new Streams();

    Router(DeskSession session, Feed feed, Actions actions, Admission admission, IntSupplier port) {
        this.session = session;
        this.feed = feed;
        this.actions = actions;
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
        boolean post = request.getMethod().equals("POST");
        if (post && path.equals("/join")) {
            body(request, response, callback, text -> join(text, request, response, callback));
            return true;
        }
        Optional<Assets.Asset> asset = post ? Optional.empty() : assets.find(path);
        if (asset.isPresent()) {
            response.getHeaders().put(HttpHeader.CONTENT_TYPE, asset.get().type());
            response.getHeaders().put(HttpHeader.CACHE_CONTROL, "no-cache");
            Plainly.send(response, callback, asset.get().bytes().duplicate());
            return true;
        }
        Optional<Role> role = admission.role(token(request));
        if (role.isEmpty()) {
            Plainly.answer(response, callback, HttpStatus.UNAUTHORIZED_401, "the join code is asked for");
        } else if (post) {
            post(path, role.get(), request, response, callback);
        } else {
            get(path, role.get(), request, response, callback);
        }
        return true;
    }

    private void get(String path, Role role, Request request, Response response, Callback callback) throws Exception {
        Matcher take = TAKE.matcher(path);
        if (path.equals("/who")) {
            Plainly.json(response, callback, "{\"acts\":" + (role == Role.ACT) + "}");
        } else if (path.equals("/events")) {
            if (!streams.add(() -> EventStream.begin(feed, request, response, callback))) {
                Plainly.answer(response, callback, HttpStatus.SERVICE_UNAVAILABLE_503, "too many pages are open");
            }
        } else if (path.equals("/peaks")) {
            peaks(Request.extractQueryParameters(request), response, callback);
        } else if (path.equals("/pickups.pdf")) {
            ByteArrayOutputStream pdf = new ByteArrayOutputStream();
            session.writePickups(pdf);
            response.getHeaders().put(HttpHeader.CONTENT_TYPE, "application/pdf");
            Plainly.send(response, callback, ByteBuffer.wrap(pdf.toByteArray()));
        } else if (take.matches()) {
            recording(Integer.parseInt(take.group(1)), request, response, callback);
        } else {
            Plainly.answer(response, callback, HttpStatus.NOT_FOUND_404, "there is nothing here");
        }
    }

    private void post(String path, Role role, Request request, Response response, Callback callback) {
        if (!path.equals("/act")) {
            Plainly.answer(response, callback, HttpStatus.NOT_FOUND_404, "there is nothing here");
        } else if (role != Role.ACT) {
            Plainly.answer(response, callback, HttpStatus.FORBIDDEN_403, "you were let in to look, not to act");
        } else {
            body(request, response, callback, text -> {
                Optional<String> refused = actions.act(text);
                if (refused.isPresent()) {
                    Plainly.answer(response, callback, HttpStatus.BAD_REQUEST_400, refused.get());
                } else {
                    Plainly.json(response, callback, "{}");
                }
            });
        }
    }

    private void recording(int number, Request request, Response response, Callback callback) throws ProblemException {
        Optional<Take> take = take(number);
        Optional<Path> file = take.map(t -> session.recording(number)).filter(Files::isRegularFile);
        if (file.isEmpty()) {
            Plainly.answer(response, callback, HttpStatus.NOT_FOUND_404, "this take was not recorded");
        } else {
            Recordings.serve(TakeFile.of(file.get()), request, response, callback);
        }
    }

    private void peaks(Fields asked, Response response, Callback callback) throws ProblemException {
        try {
            Optional<Take> take = take(Integer.parseInt(asked.getValue("take")));
            Optional<Path> file = take.map(t -> session.recording(t.number())).filter(Files::isRegularFile);
            if (file.isEmpty()) {
                Plainly.answer(response, callback, HttpStatus.NOT_FOUND_404, "this take was not recorded");
                return;
            }
            double from = Double.parseDouble(asked.getValue("from"));
            double to = Double.parseDouble(asked.getValue("to"));
            int points = Integer.parseInt(asked.getValue("points"));
            String json = Waveform.of(file.get(), take.orElseThrow().start(), from, to, points)
                    .toString();
            Plainly.json(response, callback, json);
        } catch (IllegalArgumentException | NullPointerException e) {
            Plainly.answer(response, callback, HttpStatus.BAD_REQUEST_400, "take, from, to and points are asked for");
        }
    }

    private Optional<Take> take(int number) {
        List<Take> takes = session.state().takes();
        return takes.stream().filter(t -> t.number() == number).findFirst();
    }

    private void join(String body, Request request, Response response, Callback callback) {
        String address = Request.getRemoteAddr(request);
        if (admission.mustWait(address)) {
            Plainly.answer(response, callback, HttpStatus.TOO_MANY_REQUESTS_429, "too many wrong codes; wait a while");
            return;
        }
        Optional<String> token = admission.join(code(body), address);
        if (token.isEmpty()) {
            Plainly.answer(response, callback, HttpStatus.UNAUTHORIZED_401, "this code is not right");
            return;
        }
        HttpCookie cookie = HttpCookie.build(cookieName(), token.get())
                .httpOnly(true)
                .sameSite(HttpCookie.SameSite.STRICT)
                .path("/")
                .build();
        Response.addCookie(response, cookie);
        Plainly.json(response, callback, "{}");
    }

    private static String code(String body) {
        try {
            return MAPPER.readTree(body).path("code").asText("");
        } catch (JsonProcessingException e) {
            return "";
        }
    }

    /** Browsers keep one jar of cookies for all ports of a host; so each desk has a name of its own. */
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

    /** Takes the body in without holding a thread while it comes; its length was checked at the gate. */
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
