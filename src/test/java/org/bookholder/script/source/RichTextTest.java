package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.Charset;
import java.util.Map;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;

/** Rich Text Format 1.9.1. */
final class RichTextTest {
    private static final Charset BYTES = Charset.forName("windows-1252");

    /** A drawn shape is written as properties, each with a name and a value, and as an older drawing beside them. */
    @Test
    void ofATextBoxOnlyItsTextIsNamed() throws ProblemException {
        ConvertedDocument box = convert("Turn it.\\par {\\shp{\\*\\shpinst\\shpleft0{\\sp{\\sn shapeType}{\\sv 202}}"
                + "{\\shptxt Keep it dry.\\par }}{\\shprslt{\\*\\do Keep}Keep it dry.\\par }}Go on.\\par ");
        assertThat(box.text()).isEqualToNormalizingWhitespace("Turn it. Go on.");
        assertThat(box.leftOut())
                .singleElement()
                .satisfies(left -> assertThat(left.what()).isEqualTo("Keep it dry."));
    }

    @Test
    void aLargeParagraphBehindATableIsAHeading() throws ProblemException {
        String text = convert(
                        "\\trowd\\cellx900\\pard\\intbl Hub\\cell\\row\\pard{\\b\\fs36 The rim\\par}\\pard It is round.\\par ")
                .text();
        assertThat(text).contains("# **The rim**");
    }

    /** What is brought in is saved as text, which is refused if it holds control characters. */
    @Test
    void noControlCharacterIsBroughtIn() throws ProblemException {
        assertThat(convert("Turn\\'01 it\u0002 now.\\par ").text()).doesNotContainPattern("[\\p{Cc}&&[^\\n]]");
    }

    @Test
    void lettersThatStandThereAsBytesAreRead() throws ProblemException {
        assertThat(convert("It\u2019s a caf\u00e9.\\par ").text()).contains("It\u2019s a caf\u00e9.");
    }

    private static ConvertedDocument convert(String body) throws ProblemException {
        return ScriptReader.convert(("{\\rtf1\\ansi\\ansicpg1252 " + body + "}").getBytes(BYTES), "a.rtf", Map.of());
    }
}
