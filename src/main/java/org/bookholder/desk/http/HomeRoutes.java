package org.bookholder.desk.http;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.ByteBuffer;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.bookholder.desk.AccessControl;
import org.bookholder.desk.AccessControl.Role;
import org.bookholder.desk.DeskHome;
import org.bookholder.desk.Devices.Device;
import org.bookholder.problem.ProblemException;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;
import org.eclipse.jetty.util.Promise;
import org.jspecify.annotations.Nullable;

/** Answers requests of the program's own page. It is for the owner only: a code that lets people look opens none of this. */
final class HomeRoutes {
    private static final JsonMapper MAPPER = new JsonMapper();

    /** Where rooms ask. */
    static final String ASK = "/ask";

    /** Where files are sent that were dropped on the page. */
    static final String DROPPED = "/dropped";

    private final DeskHome home;
    private final EventStreams streams;

    HomeRoutes(DeskHome home, EventStreams streams) {
        this.home = home;
        this.streams = streams;
    }

    /**
     * Answers what another process of the same user asks, which has no token: a proof that this is the program that wrote the
     * key, and then a ticket for its page. Says whether it was such a request.
     *
     * @param home the page at this address, if it is the program's own
     * @param port this program's
     */
    static boolean opened(
            Optional<DeskHome> home,
            AccessControl admission,
            int port,
            String path,
            boolean post,
            Request request,
            Response response,
            Callback callback) {
        if (!post && path.equals("/proof")) {
            Optional<String> challenge = Joining.challenge(Request.extractQueryParameters(request))
                    .filter(given -> given.endsWith("." + port));
            Joining.prove(challenge, admission::proof, response, callback);
            return true;
        }
        if (post && path.equals("/ticket")) {
            Router.body(request, response, callback, text -> ticket(home, admission, text, response, callback));
            return true;
        }
        return false;
    }

    private static void ticket(
            Optional<DeskHome> home, AccessControl admission, String body, Response response, Callback callback) {
        Optional<String> ticket = admission.ticket(text(body, "key"));
        if (ticket.isEmpty()) {
            PlainResponses.answer(response, callback, HttpStatus.UNAUTHORIZED_401, "this key is not right");
        } else {
            ObjectNode answer = JsonNodeFactory.instance.objectNode().put("ticket", ticket.get());
            String course = text(body, "course");
            if (!course.isEmpty()) {
                home.flatMap(page -> page.open(course)).ifPresent(refused -> answer.put("refused", refused));
            }
            PlainResponses.json(response, callback, answer.toString());
        }
    }

    private static String text(String body, String field) {
        try {
            return MAPPER.readTree(body).path(field).asText("");
        } catch (JsonProcessingException e) {
            return "";
        }
    }

    void answer(String path, Device device, boolean post, Request request, Response response, Callback callback) {
        if (device.role() != Role.ACT) {
            PlainResponses.answer(response, callback, HttpStatus.FORBIDDEN_403, "this page is for its owner");
            return;
        }
        home.seen();
        if (post && path.equals("/act")) {
            Router.body(request, response, callback, text -> act(text, response, callback));
        } else if (post && path.equals(ASK)) {
            Router.body(request, response, callback, text -> answer(response, callback, () -> home.ask(text)));
        } else if (post && path.equals(DROPPED)) {
            dropped(request, response, callback);
        } else if (!post && path.equals("/events")) {
            String page = Request.extractQueryParameters(request).getValue("page");
            if (!streams.add(
                    page == null ? "" : page,
                    device.id(),
                    () -> EventStream.begin(home.feed(), request, response, callback))) {
                PlainResponses.answer(
                        response, callback, HttpStatus.SERVICE_UNAVAILABLE_503, "too many pages are open");
            }
        } else if (!post && path.equals("/folder")) {
            Fields asked = Request.extractQueryParameters(request);
            folder(asked.getValue("path"), asked.getValue("find"), asked.getValue("size"), response, callback);
        } else {
            PlainResponses.answer(response, callback, HttpStatus.NOT_FOUND_404, "there is nothing here");
        }
    }

    private void folder(
            @Nullable String path, @Nullable String find, @Nullable String size, Response response, Callback callback) {
        boolean finds = find != null && size != null && size.matches("\\d{1,15}");
        answer(
                response,
                callback,
                () -> finds
                        ? home.find(String.valueOf(find), Long.parseLong(String.valueOf(size)))
                        : home.folder(path == null ? "" : path));
    }

    private void dropped(Request request, Response response, Callback callback) {
        Map<String, String> query = new LinkedHashMap<>();
        Request.extractQueryParameters(request).forEach(field -> query.put(field.getName(), field.getValue()));
        Content.Source.asByteBuffer(request, new Promise<ByteBuffer>() {
            @Override
            public void succeeded(ByteBuffer content) {
                byte[] bytes = new byte[content.remaining()];
                content.get(bytes);
                answer(response, callback, () -> home.dropped(query, bytes));
            }

            @Override
            public void failed(Throwable failure) {
                PlainResponses.answer(response, callback, HttpStatus.BAD_REQUEST_400, "the file did not arrive whole");
            }
        });
    }

    /** What a room answers. */
    @FunctionalInterface
    private interface Answer {
        String json() throws ProblemException;
    }

    private static void answer(Response response, Callback callback, Answer answer) {
        try {
            PlainResponses.json(response, callback, answer.json());
        } catch (ProblemException e) {
            PlainResponses.answer(response, callback, HttpStatus.CONFLICT_409, e.told());
        }
    }

    private void act(String text, Response response, Callback callback) {
        Optional<String> refused = home.act(text);
        if (refused.isPresent()) {
            PlainResponses.answer(response, callback, HttpStatus.CONFLICT_409, refused.get());
        } else {
            PlainResponses.json(response, callback, "{}");
        }
    }
}
