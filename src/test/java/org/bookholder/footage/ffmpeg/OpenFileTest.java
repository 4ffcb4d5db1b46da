package org.bookholder.footage.ffmpeg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.footage.Footage;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Which files FFmpeg is let read. */
final class OpenFileTest {
    @TempDir
    private Path folder;

    private Path sound;

    @BeforeEach
    void record() {
        sound = Wav.write(folder.resolve("secret.wav"), 16_000, Wav.sine(200, 0.1, 16_000, 1));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                """
                #EXTM3U
                #EXT-X-TARGETDURATION:1
                #EXTINF:1,
                SOUND
                #EXT-X-ENDLIST
                """,
                "#EXTM3U\n#EXT-X-TARGETDURATION:1\n#EXTINF:1,\nhttp://127.0.0.1:1/x.ts\n#EXT-X-ENDLIST\n",
                "ffconcat version 1.0\nfile 'secret.wav'\n",
                """
                v=0
                o=- 0 0 IN IP4 127.0.0.1
                s=x
                c=IN IP4 127.0.0.1
                t=0 0
                m=audio 5004 RTP/AVP 97
                a=rtpmap:97 MPEG4-GENERIC/48000
                """,
                "<?xml version=\"1.0\"?>\n<MPD xmlns=\"urn:mpeg:dash:schema:mpd:2011\" profiles=\"x:dash:profile\"/>\n"
            })
    void filesThatOnlyPointToOtherFilesAreRefusedInOneLine(String text) throws IOException {
        for (String name : new String[] {"list.m3u8", "film.mp4"}) {
            Path list = Files.writeString(folder.resolve(name), text.replace("SOUND", sound.toString()));
            assertThatThrownBy(() -> FootageFile.look(list))
                    .isInstanceOf(ProblemException.class)
                    .hasMessageMatching("\\Q" + list + "\\E: (this kind of file is not read as film or sound; "
                            + "name a film or sound file itself, such as MP4, MOV, MXF, MKV, MTS, AVI, WAV or FLAC"
                            + "|cannot be read as film or sound \\(Invalid data .*)");
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "x.wav", "x.w64", "x.aiff", "x.caf", "x.flac", "x.ogg", "x.mp4", "x.m4a", "x.mov", "x.mkv", "x.mxf",
                "x.ts", "x.mpg", "x.avi", "x.aac", "x.wmv"
            })
    void filesOfCamerasRecordersAndEditorsAreRead(String name) throws ProblemException {
        boolean film = name.matches(".*\\.(mxf|mpg|avi|wmv|mov)");
        Path file = film
                ? Ffmpeg.make(
                        folder.resolve(name),
                        "-f",
                        "lavfi",
                        "-i",
                        "color=size=720x576:rate=25:duration=1",
                        "-i",
                        sound.toString(),
                        "-ar",
                        "48000",
                        "-strict",
                        "-2")
                : Ffmpeg.make(folder.resolve(name), "-i", sound.toString(), "-ar", "48000", "-strict", "-2");
        assertThat(FootageFile.look(file).sound()).isPresent();
    }

    @Test
    void aPictureWithoutWidthCountsAsNone() throws ProblemException, IOException {
        Path sized = Ffmpeg.make(
                folder.resolve("sized.avi"),
                "-f",
                "lavfi",
                "-i",
                "color=size=64x48:rate=25:duration=1",
                "-i",
                sound.toString(),
                "-c:v",
                "rawvideo",
                "-pix_fmt",
                "bgr24");
        assertThat(FootageFile.look(sized).picture()).get().returns(64, Footage.Picture::width);
        byte[] film = Files.readAllBytes(sized);
        // Of the picture's format (BITMAPINFOHEADER, the first one in an AVI file) the second four bytes are the width.
        int width = new String(film, StandardCharsets.ISO_8859_1).indexOf("strf") + 12;
        assertThat(film[width]).isEqualTo((byte) 64);
        film[width] = 0;
        Footage found = FootageFile.look(Files.write(folder.resolve("unsized.avi"), film));
        assertThat(found.picture()).isEmpty();
        assertThat(found.sound()).isPresent();
    }
}
