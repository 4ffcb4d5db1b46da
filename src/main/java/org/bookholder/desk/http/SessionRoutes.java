package org.bookholder.desk.http;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.desk.AccessControl.Role;
import org.bookholder.desk.Devices.Device;
import org.bookholder.desk.ServedSession;
import org.bookholder.desk.Waveform;
import org.bookholder.journal.TakeFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Take;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;
import org.eclipse.jetty.util.URIUtil;
import org.jspecify.annotations.Nullable;

/** Answers GET requests of the page of one session. */
final class SessionRoutes {
    private static final Pattern TAKE = Pattern.compile("/takes/(\\d{1,6})\\.wav");

    /** A film, or a picture out of one, is named by its file in the folder of films, or in one of the folders there. */
    private static final Pattern FILM = Pattern.compile("/film/((?:[^/\\\\]{1,60}/)?[^/\\\\]{1,120}\\.(?:mp4|jpg))");

    private final ServedSession place;
    private final EventStreams streams;

    SessionRoutes(ServedSession place, EventStreams streams) {
        this.place = place;
        this.streams = streams;
    }

    /** Answers a GET of {@code path}, which is relative to the session's own address. */
    void get(String path, Device device, Request request, Response response, Callback callback)
            throws IOException, ProblemException {
        Matcher take = TAKE.matcher(path);
        Matcher film = FILM.matcher(path);
        if (path.equals("/events")) {
            String page = Request.extractQueryParameters(request).getValue("page");
            if (!streams.add(
                    page == null ? "" : page,
                    device.id(),
                    () -> EventStream.begin(place.feed(), request, response, callback))) {
                PlainResponses.answer(
                        response, callback, HttpStatus.SERVICE_UNAVAILABLE_503, "too many pages are open");
            }
        } else if (path.equals("/peaks")) {
            peaks(Request.extractQueryParameters(request), response, callback);
        } else if (path.equals("/pickups.pdf")) {
            ByteArrayOutputStream pdf = new ByteArrayOutputStream();
            place.session().writePickups(pdf);
            response.getHeaders().put(HttpHeader.CONTENT_TYPE, "application/pdf");
            PlainResponses.send(response, callback, ByteBuffer.wrap(pdf.toByteArray()));
        } else if (path.equals("/handoff")) {
            handedOff(
                    device.role(),
                    Request.extractQueryParameters(request).getValue("name"),
                    request,
                    response,
                    callback);
        } else if (film.matches()) {
            film(URIUtil.decodePath(film.group(1)), request, response, callback);
        } else if (take.matches()) {
            recording(Integer.parseInt(take.group(1)), request, response, callback);
        } else {
            PlainResponses.answer(response, callback, HttpStatus.NOT_FOUND_404, "there is nothing here");
        }
    }

    private void handedOff(Role role, @Nullable String name, Request request, Response response, Callback callback) {
        Optional<Path> file =
                name == null ? Optional.empty() : place.session().handOff().file(name);
        if (role != Role.ACT) {
            PlainResponses.answer(response, callback, HttpStatus.FORBIDDEN_403, "you were let in to look, not to act");
        } else if (file.isEmpty()) {
            PlainResponses.answer(response, callback, HttpStatus.NOT_FOUND_404, "there is no such file");
        } else {
            Downloads.serve(file.get(), request, response, callback);
        }
    }

    private void film(String name, Request request, Response response, Callback callback) throws ProblemException {
        Path films = place.session().films();
        Path file = films.resolve(name).normalize();
        if (!file.startsWith(films.normalize()) || !Files.isRegularFile(file)) {
            PlainResponses.answer(response, callback, HttpStatus.NOT_FOUND_404, "there is no such film");
        } else {
            String type = name.endsWith(".jpg") ? "image/jpeg" : "video/mp4";
            Recordings.serve(StoredFile.of(file), type, request, response, callback);
        }
    }

    private void recording(int number, Request request, Response response, Callback callback) throws ProblemException {
        Optional<Path> file =
                take(number).map(t -> place.session().recording(number)).filter(Files::isRegularFile);
        if (file.isEmpty()) {
            PlainResponses.answer(response, callback, HttpStatus.NOT_FOUND_404, "this take was not recorded");
        } else {
            TakeFile take = TakeFile.of(file.get());
            Recordings.serve(
                    new StoredFile(take.path(), take.length(), take::read), "audio/wav", request, response, callback);
        }
    }

    private void peaks(Fields asked, Response response, Callback callback) throws ProblemException {
        try {
            Optional<Take> take = take(Integer.parseInt(asked.getValue("take")));
            Optional<Path> file =
                    take.map(t -> place.session().recording(t.number())).filter(Files::isRegularFile);
            if (file.isEmpty()) {
                PlainResponses.answer(response, callback, HttpStatus.NOT_FOUND_404, "this take was not recorded");
                return;
            }
            double from = Double.parseDouble(asked.getValue("from"));
            double to = Double.parseDouble(asked.getValue("to"));
            int points = Integer.parseInt(asked.getValue("points"));
            String json = Waveform.of(file.get(), take.orElseThrow().start(), from, to, points)
                    .toString();
            PlainResponses.json(response, callback, json);
        } catch (IllegalArgumentException | NullPointerException e) {
            PlainResponses.answer(
                    response, callback, HttpStatus.BAD_REQUEST_400, "take, from, to and points are asked for");
        }
    }

    private Optional<Take> take(int number) {
        List<Take> takes = place.session().state().takes().all();
        return takes.stream().filter(t -> t.number() == number).findFirst();
    }
}
