package org.bookholder.script.source;

import java.math.BigInteger;
import java.util.Optional;
import java.util.Set;
import org.apache.poi.xwpf.usermodel.XWPFAbstractNum;
import org.apache.poi.xwpf.usermodel.XWPFNum;
import org.apache.poi.xwpf.usermodel.XWPFNumbering;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFStyle;
import org.apache.poi.xwpf.usermodel.XWPFStyles;
import org.jspecify.annotations.Nullable;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTLvl;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTNumPr;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTPPrGeneral;

/**
 * The place of a paragraph in a list: its own, or else that of its style or of a style that this one is based on, as ECMA-376 part 1
 * (17.9.18, numPr) has it.
 *
 * @param list which list it is an item of
 * @param level how deep it lies, from 0
 * @param counted whether it has a number, not a bullet
 */
record WordNumbering(BigInteger list, int level, boolean counted) {
    private static final Set<String> NO_NUMBERS = Set.of("bullet", "none");

    /** Far more styles than are ever based on each other; a circle of styles ends there. */
    private static final int MOST_STYLES = 20;

    /** The place of a paragraph; empty if it is no item of a list. */
    static Optional<WordNumbering> of(XWPFParagraph paragraph) {
        @Nullable BigInteger own = paragraph.getNumID();
        if (own == null) {
            return ofStyle(paragraph);
        }
        @Nullable BigInteger level = paragraph.getNumIlvl();
        return of(own, level == null ? 0 : level.intValue(), paragraph.getNumFmt());
    }

    /** Number 0 takes a paragraph out of its style's list. */
    private static Optional<WordNumbering> of(BigInteger list, int level, @Nullable String format) {
        return list.signum() <= 0
                ? Optional.empty()
                : Optional.of(new WordNumbering(list, level, format != null && !NO_NUMBERS.contains(format)));
    }

    private static Optional<WordNumbering> ofStyle(XWPFParagraph paragraph) {
        @Nullable XWPFStyles styles = paragraph.getDocument().getStyles();
        @Nullable String id = paragraph.getStyle();
        for (int i = 0; i < MOST_STYLES && styles != null && id != null; i++) {
            @Nullable XWPFStyle style = styles.getStyle(id);
            if (style == null) {
                return Optional.empty();
            }
            @Nullable CTPPrGeneral format = style.getCTStyle().getPPr();
            if (format != null && format.isSetNumPr() && format.getNumPr().isSetNumId()) {
                CTNumPr place = format.getNumPr();
                int level = place.isSetIlvl() ? place.getIlvl().getVal().intValue() : 0;
                BigInteger list = place.getNumId().getVal();
                return of(list, level, format(paragraph.getDocument().getNumbering(), list, level));
            }
            id = style.getBasisStyleID();
        }
        return Optional.empty();
    }

    /** How a list counts on a level, as ECMA-376 calls it; null if that is not said. */
    private static @Nullable String format(@Nullable XWPFNumbering numbering, BigInteger list, int level) {
        if (numbering == null) {
            return null;
        }
        @Nullable XWPFNum num = numbering.getNum(list);
        @Nullable XWPFAbstractNum kind = num == null
                ? null
                : numbering.getAbstractNum(num.getCTNum().getAbstractNumId().getVal());
        if (kind != null) {
            for (CTLvl one : kind.getCTAbstractNum().getLvlList()) {
                if (one.getIlvl().intValue() == level && one.isSetNumFmt()) {
                    return one.getNumFmt().getVal().toString();
                }
            }
        }
        return null;
    }
}
