package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.bookholder.app.environment.Equipment;
import org.bookholder.app.environment.FileWish;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;
import org.jspecify.annotations.Nullable;

/**
 * Shows the system's own dialog for files, one at a time, on a thread of its own that waits for the person. The page asks now and then
 * whether they have chosen. What they choose may be named by the page from then on. Safe for use by several threads.
 */
final class FileDialogs implements Stage {
    private static final int KEPT = 20;

    private final Equipment equipment;
    private final AllowedPaths paths;
    private final BooleanSupplier reading;
    private final Map<Integer, List<Path>> chosen = new LinkedHashMap<>();
    private @Nullable FileWish wish;
    private int last;
    private boolean open;

    /** Shows dialogs unless a lesson is being {@code reading}: one would cover the text. */
    FileDialogs(Equipment equipment, AllowedPaths paths, BooleanSupplier reading) {
        this.equipment = equipment;
        this.paths = paths;
        this.reading = reading;
    }

    @Override
    public String role() {
        return "file dialog";
    }

    @Override
    public Criticality criticality() {
        return Criticality.RESTARTABLE;
    }

    /**
     * Answers what the page asks: {@code own} if it has to show a list of its own, else the {@code id} of a dialog; and of that whether it
     * is still {@code open}, or the {@code paths} that were chosen.
     */
    ObjectNode answer(JsonNode asked) throws ProblemException {
        return switch (asked.path("do").asText()) {
            case "begin" -> begin(asked);
            case "result" -> result(asked.path("id").asInt());
            default -> throw new ProblemException("there is no such action", "files", "load the page again");
        };
    }

    private synchronized ObjectNode begin(JsonNode asked) {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        if (open || reading.getAsBoolean() || !equipment.showsFileDialogs()) {
            return json.put("own", true);
        }
        String kind = asked.path("kind").asText();
        wish = new FileWish(
                asked.path("one").asBoolean() || kind.isEmpty() ? title(kind) : title(kind) + "s",
                kind.isEmpty(),
                FolderList.endings(kind),
                !asked.path("one").asBoolean(),
                from(asked.path("from").asText()));
        open = true;
        last++;
        return json.put("id", last);
    }

    /** The page's own words are not passed on to another program. */
    private static String title(String kind) {
        return switch (kind) {
            case "film" -> "Choose film or sound file";
            case "packed" -> "Choose packed session";
            case "script" -> "Choose script";
            default -> "Choose a folder";
        };
    }

    private Optional<Path> from(String folder) {
        try {
            return folder.isEmpty() ? Optional.empty() : Optional.of(paths.path(folder));
        } catch (ProblemException goneOrForbidden) {
            return Optional.empty();
        }
    }

    private synchronized ObjectNode result(int id) {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        List<Path> found = chosen.remove(id);
        if (found == null && open && id == last) {
            return json.put("open", true);
        }
        ArrayNode list = json.putArray("paths");
        if (found != null) {
            found.forEach(path -> list.add(path.toString()));
        }
        return json;
    }

    /** Closes the dialog that is open, so that the program need not wait for somebody to do so. */
    void close() {
        boolean waits;
        synchronized (this) {
            wish = null;
            waits = open;
        }
        if (waits) {
            equipment.closeFileDialogs();
        }
    }

    @Override
    public int doWork() {
        FileWish wanted;
        synchronized (this) {
            wanted = wish;
            wish = null;
        }
        if (wanted == null) {
            return 0;
        }
        try {
            List<Path> found = equipment.choose(wanted);
            paths.admit(found);
            keep(found);
        } finally {
            synchronized (this) {
                open = false;
            }
        }
        return 1;
    }

    private synchronized void keep(List<Path> found) {
        chosen.put(last, found);
        if (chosen.size() > KEPT) {
            chosen.remove(chosen.keySet().iterator().next());
        }
    }
}
