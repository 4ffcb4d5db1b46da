package org.bookholder.script.normalize;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Says the formulae of LaTeX that people say in words: powers, roots, fractions, Greek letters, sums, functions. Not thread-safe. */
final class LatexWords {
    private static final Pattern TOKEN = Pattern.compile("\\\\[A-Za-z]{1,30}|\\\\.|\\d{1,15}(?:\\.\\d{1,9})?|\\S");

    /** Longer ones nobody reads out as they are written. */
    private static final int MOST_TOKENS = 60;

    private static final Set<String> SPACES = Set.of(
            "\\,",
            "\\;",
            "\\:",
            "\\!",
            "\\ ",
            "\\quad",
            "\\qquad",
            "\\left",
            "\\right",
            "\\big",
            "\\Big",
            "\\displaystyle",
            "\\limits",
            "~");
    private static final Set<String> FRACTIONS = Set.of("\\frac", "\\dfrac", "\\tfrac");
    private static final Set<String> WORDS = Set.of("\\text", "\\textbf", "\\operatorname");
    private static final Set<String> LETTERS =
            Set.of("\\mathrm", "\\mathbf", "\\mathbb", "\\mathcal", "\\boldsymbol", "\\vec");

    /** What goes over a range, which stands below and above it. */
    private static final Set<String> OVER = Set.of("\\sum", "\\prod", "\\int", "\\lim");

    private final NumberWords numbers;
    private final Fractions fractions;

    LatexWords(NumberWords numbers, Fractions fractions) {
        this.numbers = numbers;
        this.fractions = fractions;
    }

    /** The ways to say what stands between the dollar signs; none if that is better said by its author. */
    SpokenForms of(String formula) {
        List<String> tokens = new ArrayList<>();
        Matcher token = TOKEN.matcher(formula);
        while (token.find()) {
            if (!SPACES.contains(token.group())) {
                tokens.add(token.group());
            }
        }
        if (tokens.isEmpty() || tokens.size() > MOST_TOKENS) {
            return SpokenForms.NONE;
        }
        try {
            Reading reading = new Reading(tokens, formula);
            SpokenForms said = reading.until("");
            return said.spoken();
        } catch (UnsayableException unsayable) {
            return SpokenForms.NONE;
        }
    }

    /** The formula has something that no rule here can say. */
    private static final class UnsayableException extends RuntimeException {
        private static final long serialVersionUID = 1;
    }

    /** The way through one formula. */
    private final class Reading {
        private final List<String> tokens;
        private final String whole;
        private int at;
        private boolean inLimit;

        Reading(List<String> tokens, String whole) {
            this.tokens = tokens;
            this.whole = whole;
        }

        private String peek() {
            return at < tokens.size() ? tokens.get(at) : "";
        }

        private boolean take(String token) {
            boolean there = peek().equals(token);
            at += there ? 1 : 0;
            return there;
        }

        /** All up to a closing token, which is taken. */
        SpokenForms until(String close) {
            SpokenForms all = SpokenForms.SILENT;
            String before = "";
            while (!peek().equals(close)) {
                if (peek().isEmpty()) {
                    throw new UnsayableException();
                }
                String first = peek();
                all = all.then(scripts(atom(before)));
                before = first;
            }
            at++;
            return all;
        }

        /** An atom with what stands below and above it. */
        private SpokenForms scripts(SpokenForms atom) {
            String base = tokens.get(at - 1);
            if (OVER.contains(base)) {
                return over(base, atom);
            }
            SpokenForms said = atom;
            if (take("_")) {
                said = said.then("sub", "").then(argument());
            }
            while (peek().equals("'")) {
                at++;
                said = said.then("prime");
            }
            return take("^") ? said.then(power()) : said;
        }

        /** A sum, a product, an integral or a limit. */
        private SpokenForms over(String base, SpokenForms plain) {
            inLimit = base.equals("\\lim");
            SpokenForms from = take("_") ? argument() : SpokenForms.NONE;
            inLimit = false;
            SpokenForms to = take("^") ? argument() : SpokenForms.NONE;
            if (from.isEmpty() && to.isEmpty()) {
                return plain;
            }
            if (base.equals("\\lim")) {
                return SpokenForms.of("the limit as", "limit as").then(from).then("of", "");
            }
            String name = base.equals("\\sum") ? "sum" : base.equals("\\prod") ? "product" : "integral";
            SpokenForms start = SpokenForms.of("the " + name, name);
            return to.isEmpty()
                    ? start.then("over").then(from).then("of")
                    : start.then("from")
                            .then(from.isEmpty() ? SpokenForms.SILENT : from)
                            .then("to")
                            .then(to)
                            .then("of");
        }

        /** What stands in braces, or the next token. */
        private SpokenForms argument() {
            return take("{") ? until("}") : atom("^");
        }

        private SpokenForms power() {
            int from = at;
            SpokenForms exponent = argument();
            String written = String.join("", tokens.subList(from, at)).replaceAll("[{}]", "");
            if (written.matches("\\\\circ|\\\\degree|\\\\prime")) {
                return exponent;
            }
            if (written.equals("T") || written.equals("\\top")) {
                return SpokenForms.of("transpose", "transposed", "to the t");
            }
            if (written.equals("*") || written.equals("\\ast")) {
                return SpokenForms.of("star");
            }
            if (written.matches("-?\\d{1,3}")) {
                boolean minus = written.startsWith("-");
                SpokenForms power = Powers.of(minus ? "-" : "", Integer.parseInt(written.replace("-", "")));
                return written.equals("-1") ? SpokenForms.of("inverse").or(power) : power;
            }
            SpokenForms forms =
                    SpokenForms.of("to the", "to the power of", "to the power").then(exponent);
            return written.matches("\\p{L}")
                    ? forms.or(SpokenForms.of("to the").then(exponent).then("th"))
                    : forms;
        }

        private SpokenForms atom(String before) {
            String token = peek();
            at++;
            if (token.equals("{")) {
                return until("}");
            }
            if (token.equals("(")) {
                return before.matches("\\p{L}") ? SpokenForms.of("of", "", "times") : SpokenForms.SILENT;
            }
            if (token.equals("-") || token.equals("\u2212")) {
                boolean sign = before.isEmpty() || before.matches("[-=(<>,^+]|\\\\[a-z]+");
                return sign ? SpokenForms.of("minus", "negative") : SpokenForms.of("minus");
            }
            if (Character.isDigit(token.charAt(0))) {
                return numbers.counted(token).first(2);
            }
            if (Character.isLetter(token.charAt(0))) {
                return letters();
            }
            return token.charAt(0) == '\\' && token.length() > 1 ? command(token) : sign(token);
        }

        /** One letter, or a function whose backslash was left out. */
        private SpokenForms letters() {
            for (String name : List.of("sin", "cos", "tan", "log", "exp", "max", "min", "mod")) {
                int end = at - 1 + name.length();
                if (end <= tokens.size()
                        && String.join("", tokens.subList(at - 1, end)).equals(name)
                        && whole.contains(name)) {
                    at = end;
                    return LatexSymbols.command(name);
                }
            }
            return LetterForms.of(tokens.get(at - 1));
        }

        private SpokenForms command(String command) {
            if (FRACTIONS.contains(command)) {
                return fraction();
            }
            if (command.equals("\\sqrt")) {
                return root();
            }
            if (WORDS.contains(command) || LETTERS.contains(command)) {
                return words(WORDS.contains(command));
            }
            String name = command.substring(1);
            if (name.equals("{") || name.equals("}")) {
                return SpokenForms.SILENT;
            }
            if (inLimit && (name.equals("to") || name.equals("rightarrow"))) {
                return SpokenForms.of("goes to", "approaches", "tends to", "to");
            }
            String accent = LatexSymbols.accent(name);
            SpokenForms said =
                    accent.isEmpty() ? LatexSymbols.command(name) : argument().then(accent);
            if (said.isEmpty()) {
                throw new UnsayableException();
            }
            return said;
        }

        private SpokenForms fraction() {
            int from = at;
            SpokenForms above = argument();
            SpokenForms below = argument();
            String written = String.join("", tokens.subList(from, at))
                    .replaceAll("\\}\\{", "/")
                    .replaceAll("[{}]", "");
            SpokenForms over = above.first(6).then("over", "divided by").then(below.first(6));
            SpokenSpan part = written.matches("\\d{1,2}/\\d{1,2}") ? fractions.at(written, 0, written.length()) : null;
            return part == null ? over : part.forms().or(over);
        }

        private SpokenForms root() {
            SpokenForms kind = SpokenForms.of("the square root of", "square root of", "root", "the root of");
            if (take("[")) {
                int from = at;
                SpokenForms index = until("]");
                String written = String.join("", tokens.subList(from, at - 1));
                kind = written.equals("3")
                        ? SpokenForms.of("the cube root of", "cube root of", "the third root of")
                        : written.matches("\\d{1,2}")
                                ? SpokenForms.of("the", "")
                                        .then(numbers.ordinal(Long.parseLong(written))
                                                .preferred())
                                        .then("root of")
                                : SpokenForms.of("the").then(index.preferred()).then("th root of", "root of");
            }
            return kind.then(argument());
        }

        /** Letters in braces, as words or one by one. */
        private SpokenForms words(boolean asWords) {
            if (!take("{")) {
                return atom("");
            }
            int from = at;
            until("}");
            String letters = String.join("", tokens.subList(from, at - 1));
            if (!letters.matches("\\p{L}{1,30}")) {
                throw new UnsayableException();
            }
            if (Units.isSymbol(letters)) {
                return Units.said(letters, false).or(LetterForms.of(letters));
            }
            return asWords || letters.length() < 3
                    ? LetterForms.of(letters)
                    : LetterForms.of(letters).or(LetterForms.spell(letters));
        }

        private SpokenForms sign(String sign) {
            SpokenForms said = LatexSymbols.sign(sign);
            if (said.isEmpty()) {
                throw new UnsayableException();
            }
            return said;
        }
    }
}
