package org.bookholder.desk;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.desk.AccessControl.Role;
import org.bookholder.desk.Devices.Device;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;

/**
 * Where a desk keeps which devices may come back after a restart. It holds no secret in clear.
 *
 * @param folder the desk's folder; empty for a desk to which nobody comes back
 */
public record DeviceFile(Optional<Path> folder) {
    private static final String FILE = "desk-devices.json";
    private static final JsonMapper MAPPER = new JsonMapper();

    /** A desk that knows nobody after a restart. */
    public static DeviceFile none() {
        return new DeviceFile(Optional.empty());
    }

    /** Kept beside the desk's keys. */
    public static DeviceFile in(Path folder) {
        return new DeviceFile(Optional.of(folder));
    }

    /** Lets those who were in at another desk come back to this one, too. */
    public void takeOver(DeviceFile other) {
        write(other.read());
    }

    /** Those that were kept; none if the file is not there or can't be read. */
    List<Device> read() {
        List<Device> devices = new ArrayList<>();
        if (folder.isPresent()) {
            try {
                for (JsonNode row :
                        MAPPER.readTree(Files.readString(folder.get().resolve(FILE)))) {
                    devices.add(device(row));
                }
            } catch (IOException | IllegalArgumentException | DateTimeException none) {
                return List.of();
            }
        }
        return devices;
    }

    private static Device device(JsonNode row) {
        return new Device(
                row.path("id").asText(),
                row.path("place").asText(),
                Role.valueOf(row.path("role").asText()),
                row.path("owner").asBoolean(),
                row.path("mark").asText(),
                row.path("name").asText(),
                Instant.parse(row.path("since").asText()),
                Instant.parse(row.path("seen").asText()),
                row.path("mayReturn").asText());
    }

    /** Keeps them. If that fails, these devices need a code after a restart, and nothing else is lost. */
    void write(List<Device> devices) {
        if (folder.isEmpty()) {
            return;
        }
        ArrayNode rows = MAPPER.createArrayNode();
        for (Device device : devices) {
            rows.addObject()
                    .put("id", device.id())
                    .put("place", device.place())
                    .put("role", device.role().name())
                    .put("owner", device.owner())
                    .put("mark", device.mark())
                    .put("name", device.name())
                    .put("since", device.since().toString())
                    .put("seen", device.seen().toString())
                    .put("mayReturn", device.mayReturn());
        }
        try {
            new AtomicFiles(Access.OWNER).write(folder.get().resolve(FILE), MAPPER.writeValueAsString(rows));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("devices must have a JSON form", e);
        } catch (IOException e) {
            // See above.
        }
    }
}
