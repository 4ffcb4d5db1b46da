package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.bookholder.delivery.Finding;
import org.bookholder.delivery.Limit;
import org.bookholder.delivery.Profile;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.delivery.ProfileSetting;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.CheckedFilm;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.Folders;

/**
 * Makes films in which nothing is wrong, as phones, cameras, screen recorders and editors store them, checks them, and prints what is found all
 * the same (docs/checks.md). The voice is the demo's reading or the file that is named. Needs FFmpeg with its usual encoders.
 */
public final class RightFilms {
    private static final int SECONDS = 12;

    /** A picture in which all moves a little, with a camera's grain. */
    private static final String CAMERA = "testsrc2=size=1920x1080:rate=25,noise=alls=8:allf=t";

    /** Slides: white with writing, another one every five seconds, and a pointer that moves. */
    private static final String SLIDES = "color=white:s=1920x1080:r=30,drawgrid=w=480:h=270:t=4:c=black@0.8,"
            + "drawbox=x=100:y=100:w=900:h=60:c=black:t=fill[slide];color=navy:s=500x400:r=30[panel];"
            + "color=black:s=14x20:r=30[pointer];[slide][panel]overlay=x='200+400*floor(t/5)':y=300[shown];"
            + "[shown][pointer]overlay=x='mod(137*t,1800)':y='mod(83*t,1000)'";

    /**
     * A way to make a film.
     *
     * @param name what is said of it
     * @param ending the ending of its file's name
     * @param picture FFmpeg's description of the picture
     * @param how arguments of FFmpeg's program
     */
    private record Way(String name, String ending, String picture, List<String> how) {
        static Way of(String name, String ending, String picture, String how) {
            return new Way(name, ending, picture, List.of(how.split(" ", -1)));
        }
    }

    private static final Set<ProfileSetting> OF_THE_FILE = EnumSet.of(
            ProfileSetting.CONTAINER,
            ProfileSetting.VIDEO,
            ProfileSetting.PIXELS,
            ProfileSetting.AUDIO,
            ProfileSetting.VIDEO_KBPS,
            ProfileSetting.AUDIO_KBPS,
            ProfileSetting.SAMPLE_RATE);

    private static final String H264 = "-c:v libx264 -preset veryfast -pix_fmt yuv420p ";

    private static final List<Way> WAYS = List.of(
            Way.of("an editor's MP4", "mp4", CAMERA, H264 + "-b:v 12M -c:a aac -b:a 192k -movflags +faststart"),
            Way.of("the same at 29.97", "mp4", rate("30000/1001"), H264 + "-b:v 12M -c:a aac -b:a 192k"),
            Way.of("the same at 23.976", "mp4", rate("24000/1001"), H264 + "-b:v 12M -c:a aac -b:a 320k"),
            Way.of("the same at 50", "mov", rate("50"), H264 + "-b:v 16M -c:a aac -b:a 192k"),
            Way.of("the same at 59.94", "mp4", rate("60000/1001"), H264 + "-b:v 16M -c:a aac -b:a 128k"),
            Way.of(
                    "a phone's, turned by its flag",
                    "mp4",
                    CAMERA + ",hflip,vflip",
                    H264 + "-b:v 17M -metadata:s:v rotate=180 -c:a aac"),
            Way.of(
                    "a phone's HEVC",
                    "mov",
                    rate("30"),
                    "-c:v libx265 -preset ultrafast -x265-params log-level=none -tag:v hvc1 -b:v 10M -af pan=mono|c0=c0 -c:a aac"),
            Way.of(
                    "10 bit",
                    "mp4",
                    CAMERA,
                    "-c:v libx265 -preset ultrafast -x265-params log-level=none -pix_fmt yuv420p10le -b:v 10M -c:a aac"),
            Way.of("a camera's transport stream", "mts", CAMERA, H264 + "-b:v 24M -c:a ac3 -b:a 256k"),
            Way.of("ProRes", "mov", CAMERA, "-c:v prores_ks -profile:v 2 -pix_fmt yuv422p10le -c:a pcm_s24le"),
            Way.of("DNxHD", "mxf", CAMERA, "-c:v dnxhd -b:v 120M -pix_fmt yuv422p -c:a pcm_s16le -ar 48000"),
            Way.of(
                    "VP9 and Opus",
                    "webm",
                    CAMERA,
                    "-c:v libvpx-vp9 -deadline realtime -cpu-used 8 -b:v 8M -c:a libopus -b:a 128k"),
            Way.of("Matroska with FLAC", "mkv", CAMERA, H264 + "-b:v 12M -c:a flac"),
            Way.of("a fragmented MP4", "mp4", CAMERA, H264 + "-b:v 12M -c:a aac -movflags +frag_keyframe+empty_moov"),
            Way.of(
                    "full range",
                    "mp4",
                    CAMERA,
                    "-c:v libx264 -preset veryfast -pix_fmt yuvj420p -color_range pc -b:v 12M -c:a aac"),
            Way.of("slides from a screen", "mp4", SLIDES, H264 + "-crf 20 -g 300 -c:a aac"),
            Way.of("slides at a varying rate", "mp4", SLIDES + ",mpdecimate", H264 + "-crf 20 -fps_mode vfr -c:a aac"),
            Way.of(
                    "a fade from black and to black",
                    "mp4",
                    CAMERA + ",fade=in:0:25,fade=out:275:25",
                    H264 + "-b:v 12M -c:a aac"),
            Way.of(
                    "cuts closer and back",
                    "mp4",
                    CAMERA + ",crop='if(gt(mod(t,6),3),1600,1920)':ih:0:0,scale=1920:1080",
                    H264 + "-b:v 12M -c:a aac"),
            Way.of(
                    "a dim room with grain",
                    "mp4",
                    CAMERA + ",eq=brightness=-0.25:contrast=0.5,noise=alls=12:allf=t",
                    H264 + "-b:v 20M -c:a aac"),
            Way.of("a bright wall", "mp4", CAMERA + ",eq=brightness=0.3:contrast=0.4", H264 + "-b:v 12M -c:a aac"),
            Way.of(
                    "4K",
                    "mp4",
                    "testsrc2=size=3840x2160:rate=25,noise=alls=8:allf=t",
                    H264.replace("veryfast", "ultrafast") + "-b:v 40M -c:a aac"),
            Way.of(
                    "two channels, one a little softer",
                    "mp4",
                    CAMERA,
                    H264 + "-b:v 12M -af pan=stereo|c0=c0|c1=0.8*c1 -c:a aac"));

    /** The usual one, without what it asks of the file's kind: these films go to places that ask for others. */
    private static final Profile PROFILE = anyKind(ProfileForm.usual());

    private RightFilms() {}

    private static Profile anyKind(Profile usual) {
        Map<ProfileSetting, Limit> limits = new EnumMap<>(usual.limits());
        limits.keySet().removeAll(OF_THE_FILE);
        return new Profile(usual.name(), limits);
    }

    private static String rate(String rate) {
        return CAMERA.replace("rate=25", "rate=" + rate);
    }

    /** Measures and prints. */
    public static void main(String[] args) throws IOException, ProblemException {
        Path folder = Files.createTempDirectory("bookholder-right");
        try {
            // As loud as lessons are wanted, from the first words on.
            Path voice = Ffmpeg.make(
                    folder.resolve("voice.wav"),
                    "-i",
                    Recordings.namedOrDemo(args).get(0).toString(),
                    "-t",
                    Integer.toString(SECONDS),
                    "-af",
                    "pan=stereo|c0=c0|c1=c0,loudnorm=I=-16:TP=-2:LRA=7",
                    "-ar",
                    "48000");
            int right = 0;
            for (Way way : WAYS) {
                List<Finding> findings = findings(film(folder, voice, way));
                right += findings.isEmpty() ? 1 : 0;
                System.out.println((findings.isEmpty() ? "nothing  " : "FOUND    ") + way.name());
                findings.forEach(finding ->
                        System.out.println("    " + finding.grade() + " " + finding.kind() + ": " + finding.what()));
            }
            System.out.println(right + " of " + WAYS.size() + " films without a finding");
        } finally {
            Folders.delete(folder);
        }
    }

    private static Path film(Path folder, Path voice, Way way) {
        List<String> arguments = new ArrayList<>(
                List.of("-f", "lavfi", "-i", way.picture(), "-i", voice.toString(), "-t", Integer.toString(SECONDS)));
        arguments.addAll(way.how());
        return Ffmpeg.make(folder.resolve("film." + way.ending()), arguments.toArray(String[]::new));
    }

    private static List<Finding> findings(Path film) throws ProblemException {
        return CheckedFilm.of(film, PROFILE).findings();
    }
}
