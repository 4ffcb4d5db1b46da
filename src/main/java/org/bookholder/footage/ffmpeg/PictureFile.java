package org.bookholder.footage.ffmpeg;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.bookholder.footage.PictureFacts;
import org.bookholder.footage.PictureFacts.Light;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.IntPointer;

/** Reads how a camera's picture is stored, without decoding it. */
public final class PictureFile {
    private static final int QUARTER = 90;

    private PictureFile() {}

    /**
     * How the picture of a file is stored.
     *
     * @throws ProblemException if the file is not there, cannot be read, or has no picture
     */
    public static PictureFacts look(Path path) throws ProblemException {
        try (OpenFile file = OpenFile.open(path)) {
            AVStream stream = file.picture()
                    .filter(s -> s.codecpar().width() > 0 && s.codecpar().height() > 0)
                    .orElseThrow(() -> new ProblemException(
                            "has no picture", path.toString(), "name the camera's file; this one holds sound only"));
            AVCodecParameters about = stream.codecpar();
            int wide = (int) Math.round(about.width() * squeeze(file, stream));
            boolean turned = quarterTurns(about) % 2 != 0;
            return new PictureFacts(
                    turned ? about.height() : wide,
                    turned ? wide : about.height(),
                    about.field_order() > avcodec.AV_FIELD_PROGRESSIVE,
                    light(about.color_trc()),
                    name(avutil.av_color_space_name(about.color_space())),
                    delay(file, stream),
                    !file.context()
                            .iformat()
                            .name()
                            .getString(StandardCharsets.UTF_8)
                            .startsWith("mpeg"));
        }
    }

    private static double squeeze(OpenFile file, AVStream stream) {
        AVRational pixel = avformat.av_guess_sample_aspect_ratio(file.context(), stream, null);
        return pixel.num() > 0 && pixel.den() > 0 ? (double) pixel.num() / pixel.den() : 1;
    }

    /** By how many quarters of a circle players turn the picture. */
    static int quarterTurns(AVCodecParameters about) {
        AVPacketSideData matrix = avcodec.av_packet_side_data_get(
                about.coded_side_data(), about.nb_coded_side_data(), avcodec.AV_PKT_DATA_DISPLAYMATRIX);
        if (matrix == null || matrix.isNull()) {
            return 0;
        }
        double degrees = avutil.av_display_rotation_get(new IntPointer(matrix.data()));
        return Double.isNaN(degrees) ? 0 : (int) Math.round(degrees / QUARTER);
    }

    private static Light light(int transfer) {
        if (transfer == avutil.AVCOL_TRC_ARIB_STD_B67) {
            return Light.HLG;
        }
        return transfer == avutil.AVCOL_TRC_SMPTE2084 ? Light.PQ : Light.STANDARD;
    }

    private static String name(BytePointer name) {
        return name == null || name.isNull() ? "unknown" : name.getString(StandardCharsets.UTF_8);
    }

    private static long delay(OpenFile file, AVStream stream) {
        long whole = file.context().start_time();
        if (whole == avutil.AV_NOPTS_VALUE || stream.start_time() == avutil.AV_NOPTS_VALUE) {
            return 0;
        }
        // The container counts in millionths of a second.
        long begins = Math.round(whole * (StreamTime.TICKS_PER_SECOND / 1e6));
        return Math.max(0, FootageFile.ticks(stream.start_time(), stream.time_base()) - begins);
    }
}
