package org.bookholder.app.home;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.app.desk.DeskElsewhere;
import org.bookholder.app.environment.Environment;

/**
 * The home that another process of this user has open.
 *
 * @param desk its page
 */
public record RunningHome(DeskElsewhere desk) {
    private static final JsonMapper MAPPER = new JsonMapper();

    /** Finds it by the credentials that it has noted. */
    public static Optional<RunningHome> find(Environment here) throws InterruptedException {
        return DeskElsewhere.of(Home.folder(here)).map(RunningHome::new);
    }

    /**
     * What it answers to a second start.
     *
     * @param address the address of its page for a browser that is started with it
     * @param refused why it did not open the course; empty if it did, or none was given
     */
    public record Shown(String address, String refused) {}

    /**
     * Asks it for its page, and to open a course.
     *
     * @param course the course's folder, if one is to be opened
     * @return empty if it has just ended
     */
    public Optional<Shown> show(Optional<Path> course) throws InterruptedException {
        ObjectNode asked = MAPPER.createObjectNode();
        course.ifPresent(folder ->
                asked.put("course", folder.toAbsolutePath().normalize().toString()));
        return desk.ticket(asked)
                .map(given -> new Shown(
                        desk.address(given.path("ticket").asText()),
                        given.path("refused").asText("")));
    }

    /** The address of its page; whoever has it may use it until that process ends. */
    public String address() {
        return desk.address(desk.keys().key());
    }
}
