package org.bookholder.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.CheckedFilm;
import org.bookholder.testing.Ffmpeg;
import org.bookholder.testing.Folders;

/**
 * Films that flash, made by FFmpeg's program and stored as H.264, and what a check says of each (docs/checks.md). What must be found is what
 * WCAG 2.2 says in 2.3.1 and in its "general flash and red flash thresholds".
 */
public final class FlashFilms {
    /** Flashes a second. Above 3 they must be found. */
    private static final List<Double> RATES = List.of(2.0, 2.5, 3.0, 3.5, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0);

    private static final double ALLOWED = 3;
    private static final String KIND = "flashing";
    private static final int SECONDS = 4;
    private static final String SIZE = "s=1024x768:r=60:d=" + SECONDS;

    /**
     * A kind of flash.
     *
     * @param name what is said of it
     * @param counts whether it counts as a flash, whatever its rate
     * @param picture FFmpeg's description of the picture; {@code ON} is 1 in the bright half of each flash, {@code RATE} its rate
     */
    private record Kind(String name, boolean counts, String picture) {}

    private static final List<Kind> KINDS = List.of(
            new Kind("black and white, the whole picture", true, box("black", "white", "iw", "ih")),
            new Kind(
                    "more than a tenth of the light: 000000 and 606060", true, box("0x000000", "0x606060", "iw", "ih")),
            new Kind("less: 000000 and 505050", false, box("0x000000", "0x505050", "iw", "ih")),
            new Kind("the darker one just below 0.80", true, box("0xe2e2e2", "0xffffff", "iw", "ih")),
            new Kind("the darker one above 0.80", false, box("0xeeeeee", "0xffffff", "iw", "ih")),
            new Kind("more than a quarter of a field of 341 by 256", true, box("0x202020", "white", "185", "139")),
            new Kind("less than a quarter", false, box("0x202020", "white", "160", "120")),
            new Kind("saturated red and black", true, box("black", "0xff0000", "iw", "ih")),
            new Kind("saturated red and a grey as light", true, box("0x7f7f7f", "0xff0000", "iw", "ih")),
            new Kind("blue and a grey as light", false, box("0x3a3a3a", "0x0000ff", "iw", "ih")),
            new Kind(
                    "fades to and fro",
                    true,
                    "color=gray:" + SIZE + ",eq=brightness='0.42*sin(2*PI*RATE*t)':eval=frame"),
            new Kind(
                    "hard changes in a picture with grain",
                    true,
                    box("0x202020", "0xc0c0c0", "iw", "ih") + ",noise=alls=12:allf=t"),
            new Kind(
                    "glitter: small parts that change apart",
                    false,
                    "color=gray:s=128x96:r=60:d=" + SECONDS
                            + ",geq=lum='if(lt(mod(RATE*T+mod(X*37+Y*71,97)/97,1),0.5),40,200)':cb=128:cr=128"
                            + ",scale=1024:768:flags=neighbor"));

    private FlashFilms() {}

    private static String box(String dark, String light, String wide, String high) {
        return "color=" + dark + ":" + SIZE + ",drawbox=x=(iw-w)/3:y=(ih-h)/3:w=" + wide + ":h=" + high + ":c=" + light
                + ":t=fill:enable='ON'";
    }

    /** Makes, checks and prints. */
    public static void main(String[] args) throws IOException, ProblemException {
        Path folder = Files.createTempDirectory("bookholder-flash");
        int right = 0;
        try {
            System.out.println("flashes a second " + RATES);
            for (Kind kind : KINDS) {
                StringBuilder row = new StringBuilder();
                for (double rate : RATES) {
                    boolean found = flashes(film(folder, kind, rate));
                    boolean asked = kind.counts() && rate > ALLOWED;
                    right += found == asked ? 1 : 0;
                    row.append(found ? " found" : " -").append(found == asked ? "" : "(WRONG)");
                }
                System.out.println(kind.name() + ":" + row);
            }
            System.out.println(right + " of " + KINDS.size() * RATES.size() + " films judged as WCAG 2.2 does");
        } finally {
            Folders.delete(folder);
        }
    }

    private static Path film(Path folder, Kind kind, double rate) {
        String number = String.format(Locale.ROOT, "%.1f", rate);
        String picture = kind.picture()
                .replace("ON", "lt(mod(" + number + "*t+0.001,1),0.5)")
                .replace("RATE", number);
        return Ffmpeg.make(
                folder.resolve("flash.mp4"),
                "-f",
                "lavfi",
                "-i",
                picture,
                "-c:v",
                "libx264",
                "-preset",
                "ultrafast",
                "-crf",
                "16",
                "-pix_fmt",
                "yuv420p",
                "-color_primaries",
                "bt709",
                "-colorspace",
                "bt709",
                "-color_trc",
                "bt709");
    }

    private static boolean flashes(Path film) throws ProblemException {
        return CheckedFilm.of(film, ProfileForm.usual()).findings().stream()
                .anyMatch(f -> f.kind().equals(KIND) && f.grade() == Grade.MEND);
    }
}
