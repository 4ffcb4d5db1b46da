package org.bookholder.script.source;

import java.util.List;
import java.util.stream.Collectors;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.testing.Golden;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * All that is accepted where numbers, signs and short forms are written, word by word, the likeliest first. What is one too many
 * lets a misreading pass, and what is missing makes a good reading a pickup. Read the golden file by eye when it changes.
 */
final class AcceptedReadingsTest {
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "numbers | 0; 1; 7; 10; 12; 99; 100; 101; 110; 200; 250; 999; 1000; 1001; 1100; 1150; 1905; 1999;"
                        + " 2000; 2007; 2026; 2099; 2100; 2500; 9999; 10000; 10500; 1,000; 1,100; 1,234; 12,345;"
                        + " 1,000,000; 007; 0001; 1234567890123456",
                "decimals | 0.5; .5; 0.25; 0.75; 0.05; 1.5; 2.25; 2.50; 2.05; 3.14; 3.75; 10.1; 100.5; 1,000.5;"
                        + " 1000.5; 99.99",
                "ordinals | 1st; 2nd; 21st; 100th; 101st; 1000th; 1905th",
                "years | 1066; 1900s; 1980s; '80s; the '90s; 1998–2003; 1999-2000",
                "money | $1; $0; $0.02; $.01; $1.00; $1.01; $1.05; $1.25; $2.00; $20.50; $20.5; $100; $1,250; $2.5"
                        + " million; $3k; $4M; $5bn; $2.567; $5-10; $5-10 million; a $20 bill; $20 today; £1; £1.01;"
                        + " £2.20; €3.40; ¥500; ¥5.5; ₹9.50; R$2.10; USD 5; 20€; 20 GBP; 50¢; 1¢; 99c; CHF 4.20; $5-a-day;"
                        + " a $5-10 note",
                "times | 1pm; 5 p.m.; 12am; 1:05 a.m.; 1:59 p.m.; 2:15pm; 2:30pm; 2:45pm; 12:45 pm; 3:20 am; 3:40 am;"
                        + " 0:00; 01:00; 12:00; 13:00; 13:15; 23:05; 24:00; 25:00; 1:01:01; 0:05:09; 10:20:30; 2-5pm;"
                        + " 9am-5pm; 9:30-10:15; 9:30 to 10 am; 1h 5m; 2h 1m; 16:9; 4:3",
                "units | 1 kg; 12kg; 5 m; 4 g; 2-3 mins; 1 sec; 20%; 2°C; 1°C; 425°F; 400°F; 105°F; 10°F; 6 mg/l; 1"
                        + " m/s; 1920x1080; 3x; 2x; 4 1/2 lbs; 1/2 cup; 0.5 kg; 0.25 mm; 0.1 s; 0.01 mm; 0.001 s; 5'10\";"
                        + " 6\"; 1\"; 12 in.; 50 ms - 2 s; 50 cm - 80 cm; 10 - 3; 10 \u2212 3; 8-3=5; 20-30; 30-20; 7.5"
                        + " hours",
                "fractions | 1/2; 1/3; 2/3; 3/4; 5/8; 1/8; 1/10; 7/100; 2 1/2; 10 3/4; ½; 2½; ⅓; 24/7; 1/125 s; 1/60"
                        + " sec; 1/80 s; 1/800 second",
                "dates | July 25; 25 July; July 25, 2012; 25 July 2012; Jan. 1; 2006-08-05; 7/25/98; 07/12;"
                        + " 06/21/2027; Sept.–Nov.; Tue-Thu",
                "abbreviations | Mr. Smith; Dr. Jones; Elm St. north; St. Mary; Mt. Hood; e.g. this; i.e. that; etc.;"
                        + " vs. them; approx. five; No. 5; No. it is; Fig. 3; p. 7; pp. 7; incl. tax; U.S.; a.m.; Inc.;"
                        + " dept. of; Ave. A; Jan. was",
                "pieces | MP3; C++; F#; #1; and/or; km/h; n/a; /; a/b/c; cart.py; info@example.com;"
                        + " https://example.com/a; 12-inch; co-op; pre-heat; well-known; x_1; _; f(x); (x); 3*4; *; -5;"
                        + " x=-5; a-5; 3-4-5; v2.14.3; 1.2.3; 10.0.0.7; 10⁶; 10⁻³; x⁴; x²; note²; √9; CO₂; 4K; R2-D2;"
                        + " 1428A; 5G; SQL; ID; NASA; Ctrl+C; Ctrl-Alt-Del; ⌘S; Rocky IV; Part II",
                "telephones | 555-0123; (555) 555-0123; 1-888-555-0143; 1-900-555-0143; 0161 496 0123",
            })
    void areTheseAndNoOthers(String kind, String written) throws ProblemException {
        StringBuilder all = new StringBuilder();
        for (String text : written.split(";\\s*", -1)) {
            all.append(text).append('\n');
            words(text)
                    .forEach(word -> all.append("    ").append(accepted(word)).append('\n'));
        }
        Golden.assertMatches("script/accepted-" + kind + ".txt", all.toString());
    }

    private static String accepted(ScriptWord word) {
        return word.spoken().stream()
                .map(form -> form.isEmpty() ? "(nothing)" : String.join(" ", form))
                .collect(Collectors.joining(" / ", word.written() + ": ", ""));
    }

    private static List<ScriptWord> words(String text) throws ProblemException {
        List<ScriptWord> sentence = ScriptReader.parse(
                        "---\nlines: as-written\n---\nNow " + text + " then.", "x.txt", Format.PLAIN_TEXT)
                .lines()
                .get(0)
                .words();
        return sentence.subList(1, sentence.size() - 1);
    }
}
