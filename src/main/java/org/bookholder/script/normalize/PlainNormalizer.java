package org.bookholder.script.normalize;

import com.ibm.icu.text.RuleBasedNumberFormat;
import com.ibm.icu.util.ULocale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * For languages that we have no rules for: leaves words as they are and spells whole numbers by ICU's rules (Unicode
 * CLDR).
 */
final class PlainNormalizer implements TextNormalizer {
    private static final Pattern PIECE =
            Pattern.compile("\\d{1,15}|[\\p{L}\\p{M}]{1,99}(?:'[\\p{L}\\p{M}]{1,30}){0,3}");

    private final RuleBasedNumberFormat spell;

    PlainNormalizer(String language) {
        this.spell = new RuleBasedNumberFormat(ULocale.forLanguageTag(language), RuleBasedNumberFormat.SPELLOUT);
    }

    @Override
    public SpokenSpan at(String text, int from, int chunkEnd, int to) {
        StringBuilder said = new StringBuilder();
        Matcher piece = PIECE.matcher(text.substring(from, chunkEnd));
        while (piece.find()) {
            String written = piece.group();
            String words = Character.isDigit(written.charAt(0)) ? number(written) : Typography.word(written);
            if (words.codePoints().anyMatch(Character::isLetter)) {
                said.append(words).append(' ');
            }
        }
        SpokenForms forms = SpokenForms.of(said.toString());
        return new SpokenSpan(
                chunkEnd, forms.or(Typography.withoutMarks(said.toString())).spoken());
    }

    private String number(String digits) {
        return Typography.lower(spell.format(Long.parseLong(digits)))
                .replace("\u00ad", "")
                .replaceAll("[^\\p{L}\\p{M}' ]", " ");
    }
}
