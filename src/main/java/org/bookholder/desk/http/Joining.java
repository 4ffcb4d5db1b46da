package org.bookholder.desk.http;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntSupplier;
import java.util.function.UnaryOperator;
import org.bookholder.desk.AccessControl;
import org.bookholder.desk.AccessControl.Refusal;
import org.bookholder.desk.Devices.Device;
import org.bookholder.desk.Devices.Entry;
import org.eclipse.jetty.http.HttpCookie;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;

/** Lets devices in and out, and shows which are in. */
final class Joining {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final int MOST_MARK = 60;
    private static final int MOST_CHALLENGE = 100;

    private final AccessControl admission;
    private final IntSupplier port;
    private final PeerUser peers;
    private final EventStreams streams;

    Joining(AccessControl admission, IntSupplier port, PeerUser peers, EventStreams streams) {
        this.admission = admission;
        this.port = port;
        this.peers = peers;
        this.streams = streams;
    }

    /** The device that sends a request; empty if it was not let in. */
    Optional<Device> device(Request request) {
        return Request.getCookies(request).stream()
                .filter(cookie -> cookie.getName().equals(cookieName()))
                .map(HttpCookie::getValue)
                .flatMap(token -> admission.devices().holder(token).stream())
                .findFirst();
    }

    /** The port at which this program is reached. */
    int port() {
        return port.getAsInt();
    }

    /** Browsers share cookies between all ports of a host, so each desk uses its own cookie name. */
    private String cookieName() {
        return "desk-" + port.getAsInt();
    }

    /**
     * Answers a code with a cookie and with the address at which the pages now are.
     *
     * @param ownUserOnly whether people of this machine come in only if they are the program's own user
     */
    void join(String body, boolean ownUserOnly, Request request, Response response, Callback callback) {
        if (ownUserOnly && peers.isAnother(Request.getRemotePort(request), port.getAsInt())) {
            PlainResponses.answer(
                    response, callback, HttpStatus.FORBIDDEN_403, "this page belongs to another user of this machine");
            return;
        }
        JsonNode asked = read(body);
        String mark = asked.path("mark").asText("");
        AccessControl.Caller caller = new AccessControl.Caller(
                Request.getRemoteAddr(request),
                mark.length() > MOST_MARK ? "" : mark,
                name(request.getHeaders().get(HttpHeader.USER_AGENT)));
        AccessControl.Answer answer = admission.join(asked.path("code").asText(""), caller);
        if (answer.entry().isPresent()) {
            enter(answer.entry().get(), response, callback);
        } else {
            int status =
                    answer.refusal() == Refusal.WAIT ? HttpStatus.TOO_MANY_REQUESTS_429 : HttpStatus.UNAUTHORIZED_401;
            PlainResponses.answer(response, callback, status, answer.refusal().text());
        }
    }

    private void enter(Entry entry, Response response, Callback callback) {
        String place = DevicePlace.of(entry.place());
        HttpCookie cookie = HttpCookie.build(cookieName(), entry.token())
                .httpOnly(true)
                .sameSite(HttpCookie.SameSite.STRICT)
                .path(place + "/")
                .build();
        Response.addCookie(response, cookie);
        PlainResponses.json(response, callback, "{\"place\":\"" + place + "\"}");
    }

    /** Proves to a device that was in before a restart that this is the same program. Says whether that was asked. */
    boolean proved(String path, boolean post, Request request, Response response, Callback callback) {
        if (post || !path.endsWith("/proof")) {
            return false;
        }
        Fields asked = Request.extractQueryParameters(request);
        String device = asked.getValue("device");
        if (device == null) {
            return false;
        }
        Optional<String> challenge = device.length() > MOST_MARK ? Optional.empty() : challenge(asked);
        String host = String.valueOf(request.getHeaders().get(HttpHeader.HOST));
        prove(challenge, given -> admission.proofTo(device, given, host), response, callback);
        return true;
    }

    /** The challenge of a request that asks for a proof; longer ones are no use to anyone. */
    static Optional<String> challenge(Fields asked) {
        return Optional.ofNullable(asked.getValue("challenge")).filter(given -> given.length() <= MOST_CHALLENGE);
    }

    /** Answers a challenge with its proof. */
    static void prove(Optional<String> challenge, UnaryOperator<String> proof, Response response, Callback callback) {
        if (challenge.isEmpty()) {
            PlainResponses.answer(response, callback, HttpStatus.BAD_REQUEST_400, "a challenge is asked for");
        } else {
            PlainResponses.json(response, callback, "{\"proof\":\"" + proof.apply(challenge.get()) + "\"}");
        }
    }

    /** Adds what an open page needs to come back after a restart; it keeps this in memory only. */
    void addReturn(ObjectNode who, Device device) {
        who.put("device", device.id())
                .put("prover", admission.prover(device))
                .put("comesBackWith", admission.devices().comesBackWith(device));
    }

    /** Shows which devices are in, or lets one out; for the owner's own browser only. */
    void devices(Device self, boolean post, Request request, Response response, Callback callback) {
        if (!self.owner()) {
            PlainResponses.answer(
                    response, callback, HttpStatus.FORBIDDEN_403, "only the program's own page shows who is in");
        } else if (post) {
            Router.body(request, response, callback, text -> {
                String id = read(text).path("out").asText("");
                admission.letOut(id);
                streams.endOf(id);
                PlainResponses.json(response, callback, list(self));
            });
        } else {
            PlainResponses.json(response, callback, list(self));
        }
    }

    private String list(Device self) {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        admission.actCode().ifPresent(code -> json.put("joinCode", code));
        admission.lookCode().ifPresent(code -> json.put("lookCode", code));
        ArrayNode rows = json.putArray("devices");
        for (Device device : admission.devices().all()) {
            rows.addObject()
                    .put("id", device.id())
                    .put("name", device.name())
                    .put("own", device.owner())
                    .put("acts", device.role() == AccessControl.Role.ACT)
                    .put("self", device.id().equals(self.id()))
                    .put("since", device.since().toEpochMilli())
                    .put("seen", device.seen().toEpochMilli());
        }
        return json.toString();
    }

    private static JsonNode read(String body) {
        try {
            return MAPPER.readTree(body);
        } catch (JsonProcessingException e) {
            return MAPPER.missingNode();
        }
    }

    /** What a browser calls itself, shortened to what people know it by. */
    static String name(String agent) {
        String text = agent == null ? "" : agent;
        String browser =
                first(text, "Edg", "Edge", "OPR", "Opera", "Firefox", "Firefox", "Chrom", "Chrome", "Safari", "Safari");
        String system = first(
                text, "iPad", "iPad", "iPhone", "iPhone", "Android", "Android", "Windows", "Windows", "Mac OS", "a Mac",
                "Linux", "Linux");
        return system.isEmpty() ? (browser.isEmpty() ? "A browser" : browser) : browser + " on " + system;
    }

    /** The second of the first pair of which the text holds the first. */
    private static String first(String text, String... pairs) {
        for (int i = 0; i + 1 < pairs.length; i += 2) {
            if (text.toLowerCase(Locale.ROOT).contains(pairs[i].toLowerCase(Locale.ROOT))) {
                return pairs[i + 1];
            }
        }
        return "";
    }
}
