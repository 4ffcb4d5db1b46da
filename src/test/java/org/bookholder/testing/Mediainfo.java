package org.bookholder.testing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The command-line mediainfo, which reads films by code of its own: another opinion than FFmpeg's. */
public final class Mediainfo {
    private Mediainfo() {}

    /** The tracks of one type in a film, such as {@code Video} or {@code Text}, with all that is said of each. */
    public static List<JsonNode> tracks(Path film, String type) {
        Needs.program("mediainfo", "Debian package mediainfo");
        try {
            Process process = new ProcessBuilder("mediainfo", "--Output=JSON", film.toString())
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            process.getOutputStream().close();
            JsonNode said = new ObjectMapper().readTree(process.getInputStream());
            List<JsonNode> tracks = new ArrayList<>();
            for (JsonNode track : said.at("/media/track")) {
                if (track.path("@type").asText().equals(type)) {
                    tracks.add(track);
                }
            }
            return tracks;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
