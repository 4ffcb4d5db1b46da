package org.bookholder.script.normalize;

import java.util.Map;
import java.util.stream.Collectors;

/**
 * How commands and signs of LaTeX are said in a formula; after Chang, "Handbook for Spoken Mathematics" (1983), and common
 * practice, from memory.
 */
final class LatexSymbols {
    /** Commands that stand for a symbol, with the ways to say it. */
    private static final Map<String, SpokenForms> SAID = """
            times=times;by
            cdot=times;dot
            ast=times;star
            div=divided by;over
            pm=plus or minus;plus minus
            mp=minus or plus;minus plus
            le=is less than or equal to;less than or equal to;is at most
            leq=is less than or equal to;less than or equal to;is at most
            ge=is greater than or equal to;greater than or equal to;is at least
            geq=is greater than or equal to;greater than or equal to;is at least
            lt=is less than;less than
            gt=is greater than;greater than
            ll=is much less than;much less than
            gg=is much greater than;much greater than
            ne=is not equal to;does not equal;not equal to
            neq=is not equal to;does not equal;not equal to
            approx=is approximately;is approximately equal to;is about;approximately equals
            equiv=is equivalent to;is identical to
            sim=is similar to;tilde
            propto=is proportional to;varies as
            infty=infinity
            to=to;goes to;tends to
            rightarrow=to;goes to;tends to
            Rightarrow=implies
            implies=implies
            iff=if and only if
            mapsto=maps to
            in=in;is in;is an element of;belongs to
            notin=not in;is not in;is not an element of
            subset=is a subset of;subset of
            subseteq=is a subset of;subset of
            cup=union
            cap=intersection;intersect
            setminus=without;minus
            emptyset=the empty set
            forall=for all;for every
            exists=there exists;there is
            land=and
            lor=or
            neg=not
            partial=partial;del;d
            nabla=nabla;del
            angle=angle
            perp=is perpendicular to;perpendicular to
            parallel=is parallel to;parallel to
            circ=degrees
            degree=degrees
            prime=prime
            ldots=and so on;dot dot dot;
            cdots=and so on;dot dot dot;
            dots=and so on;dot dot dot;
            sum=the sum of;sum of
            prod=the product of;product of
            int=the integral of;integral of
            sin=sine;sine of
            cos=cosine;cosine of
            tan=tangent;tangent of;tan
            cot=cotangent;cotangent of
            arcsin=arc sine;arc sine of
            arccos=arc cosine;arc cosine of
            arctan=arc tangent;arc tangent of;arc tan
            sinh=hyperbolic sine;hyperbolic sine of
            cosh=hyperbolic cosine;hyperbolic cosine of
            log=log;log of;the log of;the logarithm of
            ln=natural log;natural log of;the natural log of;l n
            exp=e to the;exponential of;the exponential of
            max=max;the maximum of;maximum
            min=min;the minimum of;minimum
            lim=the limit of;limit of
            det=determinant of;the determinant of
            gcd=g c d of;the greatest common divisor of
            mod=mod;modulo
            bmod=mod;modulo
            hbar=h bar
            ell=l
            %=percent;per cent
            &=and
            $=dollars;dollar
            #=number
            |=norm;
            """.lines()
            .map(row -> row.split("=", -1))
            .collect(Collectors.toUnmodifiableMap(row -> row[0], row -> SpokenForms.of(row[1].split(";", -1))));

    /** What stands before or behind its argument: "x hat". */
    private static final Map<String, String> ACCENTS =
            Map.of("hat", "hat", "bar", "bar", "overline", "bar", "tilde", "tilde", "dot", "dot", "ddot", "double dot");

    private static final Map<String, SpokenForms> SIGNS = Map.ofEntries(
            Map.entry("+", SpokenForms.of("plus")),
            Map.entry("-", SpokenForms.of("minus")),
            Map.entry("\u2212", SpokenForms.of("minus")),
            Map.entry("/", SpokenForms.of("over", "divided by")),
            Map.entry("*", SpokenForms.of("times", "star")),
            Map.entry("<", SpokenForms.of("is less than", "less than")),
            Map.entry(">", SpokenForms.of("is greater than", "greater than")),
            Map.entry("!", SpokenForms.of("factorial")),
            Map.entry("'", SpokenForms.of("prime")),
            Map.entry(",", SpokenForms.of("", "comma")),
            Map.entry(";", SpokenForms.of("")),
            Map.entry(".", SpokenForms.of("")),
            Map.entry(":", SpokenForms.of("", "colon", "to")),
            Map.entry(")", SpokenForms.of("")),
            Map.entry("]", SpokenForms.of("")),
            Map.entry("[", SpokenForms.of("")));

    private static final String GREEK =
            " alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi pi rho sigma tau upsilon phi chi psi omega ";

    private LatexSymbols() {}

    /** The ways to say a command without arguments, without its backslash; none if it is not known. */
    static SpokenForms command(String name) {
        String letter = Typography.lower(name.startsWith("var") ? name.substring(3) : name);
        if (GREEK.contains(" " + letter + " ")) {
            boolean capital = Character.isUpperCase(name.charAt(0));
            return capital ? SpokenForms.of(letter, "capital " + letter) : SpokenForms.of(letter);
        }
        return SAID.getOrDefault(name, SpokenForms.NONE);
    }

    /** The ways to say a sign; none if it is not known. */
    static SpokenForms sign(String sign) {
        SpokenForms known = SIGNS.get(sign);
        SpokenForms other = Symbols.of(sign);
        return known != null ? known : other.equals(SpokenForms.SILENT) ? SpokenForms.NONE : other;
    }

    /** What is said behind the argument of an accent; empty if it is none. */
    static String accent(String name) {
        return ACCENTS.getOrDefault(name, "");
    }
}
