package org.bookholder.app.film;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.bookholder.testing.Mediainfo;

/** What mediainfo, which shares no code with FFmpeg, must say of a film. */
final class MediainfoReads {
    private MediainfoReads() {}

    /** A film of 25 pictures a second with captions and a chapter "The second part". */
    static void asPlanned(FilmResult result) {
        Path film = result.made().file();
        assertThat(Mediainfo.tracks(film, "General")).singleElement().satisfies(all -> {
            assertThat(all.path("Format").asText()).isEqualTo("MPEG-4");
            assertThat(all.path("IsStreamable").asText()).isEqualTo("Yes");
        });
        assertThat(Mediainfo.tracks(film, "Video")).singleElement().satisfies(video -> {
            assertThat(video.path("Format").asText()).isEqualTo("AVC");
            assertThat(video.path("FrameRate_Mode").asText()).isEqualTo("CFR");
            assertThat(video.path("FrameRate").asDouble()).isEqualTo(25);
            assertThat(video.path("FrameCount").asLong())
                    .isEqualTo(result.plan().frames());
            assertThat(video.path("matrix_coefficients").asText()).isEqualTo("BT.709");
        });
        assertThat(Mediainfo.tracks(film, "Audio")).singleElement().satisfies(audio -> {
            assertThat(audio.path("Format").asText()).isEqualTo("AAC");
            assertThat(audio.path("SamplingRate").asInt()).isEqualTo(48_000);
        });
        assertThat(Mediainfo.tracks(film, "Text"))
                .singleElement()
                .satisfies(text -> assertThat(text.path("Language").asText()).isEqualTo("en"));
        assertThat(Mediainfo.tracks(film, "Menu").toString()).contains("The second part");
    }
}
