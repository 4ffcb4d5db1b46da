package org.bookholder.film.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.film.format.FrameFit;
import org.bookholder.film.plan.Shot;
import org.bookholder.footage.PictureFacts;

/** Says to FFmpeg's program how a camera's pictures become those of a film. */
final class PictureFilter {
    /** A picture shows until the next one comes; times are rounded in the file by up to this many seconds. */
    private static final double SLACK = 0.002;

    /** From this height on a picture that does not say its colours is of high definition (ITU-R BT.709; below, BT.601). */
    private static final int HIGH_DEFINITION = 720;

    private static final String TO_709 = "transfer=bt709:matrix=bt709:primaries=bt709:range=limited";

    /** With full_chroma_int beside accurate_rnd FFmpeg takes its slow way: 2.6 times as long, for differences of one step of 255. */
    private static final String FINE = "lanczos+accurate_rnd";

    /** Of pictures that were interlaced the quicker way leaves traces in which FFmpeg's idet still sees fields. */
    private static final String FINEST = FINE + "+full_chroma_int";

    private final Shot shot;
    private final FilmFormat format;
    private final boolean quick;

    /**
     * Begins.
     *
     * @param quick whether quick scaling is good enough
     */
    PictureFilter(Shot shot, FilmFormat format, boolean quick) {
        this.shot = shot;
        this.format = format;
        this.quick = quick;
    }

    /**
     * The filters, in order, for pictures that were read from {@code lead} seconds before the clip on.
     */
    List<String> filters(double lead) {
        List<String> filters = new ArrayList<>();
        if (shot.picture().interlaced()) {
            filters.add("bwdif=mode=send_frame:deint=all");
        }
        filters.add(number("setpts=PTS-%.6f/TB", lead + (shot.steady() ? 0 : SLACK)));
        filters.add("fps=" + format.rate().fraction() + ":start_time=0:round=" + (shot.steady() ? "near" : "up"));
        // The last picture of a file may be shown a little longer than it says, that of the author's own clip as long
        // as it takes.
        filters.add("tpad=stop_mode=clone:stop_duration=" + (shot.kind() == Shot.Kind.CAMERA ? "1" : "36000"));
        colours(filters);
        finish(filters);
        return filters;
    }

    /** The filters for a still, which is decoded and scaled once. What is transparent in it is black. */
    List<String> still() {
        String shrink = number("min(1,min(%d/iw,%d/ih))", format.width(), format.height());
        List<String> filters = new ArrayList<>(List.of("format=rgba", "premultiply=inplace=1"));
        // By its own size, as FFmpeg has turned a photograph already that says it lies on its side.
        filters.add("scale=w='2*round(iw*" + shrink + "/2)':h='2*round(ih*" + shrink + "/2)'" + flags());
        filters.add("format=" + format.pixels());
        pad(filters);
        stored(filters);
        filters.add("loop=loop=-1:size=1:start=0");
        filters.add(
                "setpts=N*" + format.rate().denominator() + "/" + format.rate().numerator() + "/TB");
        return filters;
    }

    private void finish(List<String> filters) {
        if (shot.kind() == Shot.Kind.CAMERA) {
            geometry(filters);
        } else {
            whole(filters);
        }
        stored(filters);
    }

    private void stored(List<String> filters) {
        filters.add("format=" + format.pixels());
        filters.add("setsar=1");
        filters.add("setparams=range=limited:color_primaries=bt709:color_trc=bt709:colorspace=bt709");
    }

    private void pad(List<String> filters) {
        filters.add("pad=" + format.width() + ":" + format.height() + ":(ow-iw)/2:(oh-ih)/2:color=" + ClipCommand.CARD);
    }

    /** All of a picture of the author's, never blown up, on the colour of cards. */
    private void whole(List<String> filters) {
        filters.add(scaled(Math.min(1, fitting())));
        pad(filters);
    }

    /** The factor with which all of the picture just fits into that of the film. */
    private double fitting() {
        return Math.min(
                (double) format.width() / shot.picture().width(),
                (double) format.height() / shot.picture().height());
    }

    private String scaled(double factor) {
        return "scale=" + even(shot.picture().width() * factor) + ":"
                + even(shot.picture().height() * factor) + flags();
    }

    private String flags() {
        return ":flags=" + (quick ? "bilinear" : shot.picture().interlaced() ? FINEST : FINE)
                + ":in_range=auto:out_range=limited:out_color_matrix=bt709";
    }

    private void colours(List<String> filters) {
        PictureFacts picture = shot.picture();
        if (picture.light() != PictureFacts.Light.STANDARD) {
            filters.add("zscale=transfer=linear:npl=100");
            filters.add("format=gbrpf32le");
            filters.add("zscale=primaries=bt709");
            filters.add("tonemap=hable:desat=0");
            filters.add("zscale=" + TO_709);
            filters.add("format=yuv420p10le");
        } else if (picture.matrix().startsWith("bt2020")) {
            filters.add("zscale=" + TO_709);
        } else if (picture.matrix().equals("unknown") || picture.matrix().equals("reserved")) {
            boolean high = Math.min(picture.width(), picture.height()) >= HIGH_DEFINITION;
            filters.add("setparams=colorspace=" + (high ? "bt709" : "smpte170m"));
        }
    }

    private void geometry(List<String> filters) {
        PictureFacts picture = shot.picture();
        FrameFit fit = FrameFit.of(picture, (double) format.width() / format.height());
        if (fit.barred()) {
            filters.add(scaled(fitting()));
            filters.add("pad=" + format.width() + ":" + format.height() + ":(ow-iw)/2:(oh-ih)/2");
            return;
        }
        double closer = shot.scale() / 100.0;
        double width = fit.width() / closer / picture.width();
        double height = fit.height() / closer / picture.height();
        if (width < 1 || height < 1) {
            double left =
                    kept(fit.width() / picture.width(), width, shot.point().across());
            double top =
                    kept(fit.height() / picture.height(), height, shot.point().down());
            filters.add(number("crop=w=iw*%.6f:h=ih*%.6f:x=iw*%.6f:y=ih*%.6f", width, height, left, top));
        }
        filters.add("scale=" + format.width() + ":" + format.height() + flags());
    }

    /**
     * Where a part of the picture begins in which a point stays where it was, as a share of the picture.
     *
     * @param full the share that is shown of the picture as shot, in its middle
     * @param part the share that is shown of it closer
     * @param point the point, in thousandths of what is shown as shot
     */
    private static double kept(double full, double part, int point) {
        return (1 - full) / 2 + (full - part) * point / 1000.0;
    }

    private static int even(double size) {
        return 2 * (int) Math.round(size / 2);
    }

    private static String number(String form, Object... numbers) {
        return String.format(Locale.ROOT, form, numbers);
    }
}
