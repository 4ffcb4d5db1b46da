package org.bookholder.delivery;

import java.util.Arrays;
import java.util.Optional;

/**
 * What a delivery profile can set, with its default.
 *
 * <p>Container, codecs, sampling and bit rates follow the upload requirements that course sites publish (1080p at 8
 * Mb/s, H.264 4:2:0, AAC 48 kHz; files below 2 or 5 GB); frame rates and picture size are those of ITU-R BT.709; the
 * loudness is that usual for spoken podcasts, within the range of AES TD1008. The limits for black, still and silent
 * stretches are common practice.
 */
public enum ProfileSetting {
    /** The kind of file. */
    CONTAINER("container", Form.WORDS, "mp4", "kinds of file: mp4, mov, mkv, ..."),
    /** How the picture is stored. */
    VIDEO("video", Form.WORDS, "h264", "how the picture is stored"),
    /** How a pixel is stored. */
    PIXELS("pixels", Form.WORDS, "yuv420p", "how a pixel is stored; yuv420p plays everywhere"),
    /** Progressive or interlaced. */
    SCAN("scan", Form.WORDS, "progressive", "whole pictures, or interlaced"),
    /** Height of the picture. */
    HEIGHT("height", Form.RANGE, "at least 1080", "of the picture in pixels; 1080p is 1920 by 1080 (ITU-R BT.709)"),
    /** Shape of the picture. */
    SHAPE("shape", Form.RANGE, "1.77 to 1.78", "width by height as shown; 16 by 9 is 1.778"),
    /** Pictures a second. */
    RATE("rate", Form.WORDS, "23.976, 24, 25, 29.97, 30, 50, 59.94, 60", "pictures a second (ITU-R BT.709)"),
    /** Bit rate of the picture. */
    VIDEO_KBPS("video-kbps", Form.RANGE, "500 to 20000", "bit rate of the picture in kb/s"),
    /** How the sound is stored. */
    AUDIO("audio", Form.WORDS, "aac", "how the sound is stored"),
    /** Samples a second. */
    SAMPLE_RATE("sample-rate", Form.WORDS, "44100, 48000", "samples a second"),
    /** Channels of sound. */
    CHANNELS("channels", Form.WORDS, "1, 2", "of the sound"),
    /** Bit rate of the sound. */
    AUDIO_KBPS("audio-kbps", Form.RANGE, "96 to 512", "bit rate of the sound in kb/s"),
    /** Size of the file. */
    SIZE("size-mb", Form.RANGE, "at most 2000", "of the file in millions of bytes"),
    /** Length of the film. */
    LENGTH("minutes", Form.RANGE, "at most 20", "length of the film"),
    /** The file's name. */
    NAME(
            "name",
            Form.PATTERN,
            "{lesson}.{ending}",
            "of the file; {lesson} stands for letters a to z, digits, - and _, or the script's own name; {ending} follows the dot"),
    /** Integrated loudness. */
    LOUDNESS(
            "loudness",
            Form.RANGE,
            "-18 to -14",
            "in LUFS, by ITU-R BS.1770; one channel counts as heard on two; around -16 for speech: common practice"),
    /** True peak. */
    TRUE_PEAK("true-peak", Form.RANGE, "at most -1", "in dBTP (EBU R 128)"),
    /** Black stretches inside the film. */
    BLACK("black", Form.RANGE, "at most 0.5", "seconds of black inside the film, at most 2 at its ends"),
    /** Stretches without motion. */
    FROZEN("frozen", Form.RANGE, "at most 3", "seconds without motion; leave this out if you show stills"),
    /** Silent stretches. */
    SILENT("silent", Form.RANGE, "at most 3", "seconds of silence"),
    /** Shots of one to three frames. */
    BLIPS("blips", Form.RANGE, "at most 0", "shots of one to three frames"),
    /** Clipped sound. */
    CLIPPED("clipped", Form.RANGE, "at most 0", "places where the sound is cut off at full scale"),
    /** Clicks. */
    CLICKS("clicks", Form.RANGE, "at most 0", "clicks in the sound"),
    /** Difference in length between picture and sound. */
    MISMATCH("mismatch", Form.RANGE, "at most 0.2", "seconds by which picture and sound differ in length");

    /** Black at the beginning and end is usual up to this many seconds (common practice). */
    static final double BLACK_AT_ENDS = 2;

    /** The form of a setting's value. */
    enum Form {
        /** Words with commas between them. */
        WORDS("write words with commas between them"),
        /** A range of numbers. */
        RANGE("write 'A to B', 'at least A' or 'at most B'"),
        /** A form of a name, or a regular expression. */
        PATTERN("write {lesson} where the lesson's name stands, as in {lesson}.mp4");

        private final String remedy;

        Form(String remedy) {
            this.remedy = remedy;
        }

        String remedy() {
            return remedy;
        }
    }

    private final String label;
    private final Form form;
    private final String usual;
    private final String comment;

    ProfileSetting(String label, Form form, String usual, String comment) {
        this.label = label;
        this.form = form;
        this.usual = usual;
        this.comment = comment;
    }

    /** Its name in a profile and in every file. */
    public String label() {
        return label;
    }

    Form form() {
        return form;
    }

    String usual() {
        return usual;
    }

    String comment() {
        return comment;
    }

    static Optional<ProfileSetting> named(String name) {
        return Arrays.stream(values()).filter(s -> s.label.equals(name)).findFirst();
    }
}
