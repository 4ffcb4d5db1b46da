package org.bookholder.footage.ffmpeg;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.bookholder.files.DiskProblems;
import org.bookholder.footage.PictureFacts;
import org.bookholder.problem.ProblemException;
import org.bytedeco.ffmpeg.avformat.AVStream;

/** Reads stills: PNG, JPEG and WebP, by what they hold and not by their names. */
public final class StillFile {
    private static final int HEAD = 12;
    private static final String JPEG = "FFD8FF";
    private static final String PNG = "89504E470D0A1A0A";

    private StillFile() {}

    /** Whether a file begins like a still. */
    public static boolean isStill(Path path) throws ProblemException {
        return reader(path).isPresent();
    }

    /**
     * How a still is stored.
     *
     * @throws ProblemException if it cannot be read
     */
    public static PictureFacts look(Path path) throws ProblemException {
        try (OpenFile file = OpenFile.open(path, reader(path))) {
            AVStream stream = file.picture()
                    .filter(s -> s.codecpar().width() > 0 && s.codecpar().height() > 0)
                    .orElseThrow(() -> new ProblemException(
                            "cannot be read as a picture", path.toString(), "save it as PNG or JPEG again"));
            int width = stream.codecpar().width();
            int height = stream.codecpar().height();
            return new PictureFacts(width, height, false, PictureFacts.Light.STANDARD, "unknown", 0, true);
        }
    }

    /** The arguments by which FFmpeg's program reads a still, and nothing that such a file might point to. */
    static List<String> input(Path path) throws ProblemException {
        String reader = reader(path)
                .orElseThrow(() -> new ProblemException(
                        "is no PNG, JPEG or WebP any more", path.toString(), "put the picture back"));
        return List.of("-protocol_whitelist", "file", "-f", reader, "-i", "file:" + path.toAbsolutePath());
    }

    /** FFmpeg's reader for it; named, as by itself FFmpeg takes some names for those of numbered pictures. */
    private static Optional<String> reader(Path path) throws ProblemException {
        try (InputStream in = Files.newInputStream(path)) {
            byte[] head = in.readNBytes(HEAD);
            String hex = HexFormat.of().withUpperCase().formatHex(head);
            String text = new String(head, StandardCharsets.ISO_8859_1);
            if (hex.startsWith(PNG)) {
                return Optional.of("png_pipe");
            }
            if (hex.startsWith(JPEG)) {
                return Optional.of("jpeg_pipe");
            }
            return text.startsWith("RIFF") && text.endsWith("WEBP") ? Optional.of("webp_pipe") : Optional.empty();
        } catch (IOException e) {
            throw DiskProblems.reading(path, e);
        }
    }
}
