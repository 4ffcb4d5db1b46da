package org.bookholder.script.normalize;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Unit symbols and how they are said. */
final class Units {
    /** How one symbol is said: in the singular, in the plural, and in other ways for either. */
    private record Unit(String one, String many, SpokenForms besides) {
        SpokenForms forms(boolean single) {
            return SpokenForms.of(single ? one : many).or(besides).or(single ? many : one);
        }
    }

    /** Symbol = one; many ("s" is added where it is left out); besides... An underscore stands for a space */
    private static final String TABLE = """
        kg kgs=kilogram;;kilo;kilos
        t=tonne
        lb lbs=pound
        oz=ounce
        km=kilometer;;k
        cm=centimeter
        mm=millimeter;;mil
        µm μm=micrometer;;micron;microns
        nmi=nautical mile
        kn kt kts=knot
        ac=acre
        hp=horsepower;horsepower;h p
        mpg=mile per gallon;miles per gallon;m p g
        ppi PPI=pixel per inch;pixels per inch;p p i
        lpi=line per inch;lines per inch;l p i
        BTU Btu=b t u;b t us
        atm=atmosphere
        mmHg=millimeter of mercury;millimeters of mercury
        bar=bar
        mbar=millibar
        rad=radian;;rad
        d=day
        dpt=diopter
        doz=dozen;dozen
        ft=foot;feet
        yd yds=yard
        mi=mile
        l L=liter
        gal gals=gallon
        qt qts=quart
        fl_oz fl._oz.=fluid ounce
        ml mL=milliliter;;mil;mils;mills
        cl cL=centiliter
        dl dL=deciliter
        tsp=teaspoon;;teaspoons of
        tbsp=tablespoon;;tablespoons of
        s sec secs=second
        ms=millisecond
        min mins=minute
        h hr hrs=hour
        wk wks=week
        mo mos=month
        yr yrs=year
        pt pts=point;;pint;pints
        sts=stitch;stitches
        cts=carat;;cent;cents
        °C=degree celsius;degrees celsius;degrees;celsius;degrees c;degrees centigrade;c
        °F=degree fahrenheit;degrees fahrenheit;degrees;fahrenheit;degrees f;f
        °=degree
        C=degree celsius;degrees celsius;degrees;celsius;coulomb;coulombs
        F=degree fahrenheit;degrees fahrenheit;degrees;fahrenheit;farad;farads
        mph MPH=mile per hour;miles per hour;miles an hour;m p h
        km/h kph KPH kmh=kilometer per hour;kilometers per hour;kilometers an hour;k p h
        wpm WPM=word per minute;words per minute;words a minute;w p m
        rpm RPM=revolution per minute;revolutions per minute;r p m
        bpm BPM=beat per minute;beats per minute;b p m
        fps FPS=frame per second;frames per second;f p s
        dpi DPI=dot per inch;dots per inch;d p i
        ppm PPM=part per million;parts per million;p p m
        px=pixel
        MP=megapixel;;m p
        KB kB=kilobyte;;k b;k
        MB=megabyte;;megs;meg;m b
        GB=gigabyte;;gigs;gig;g b
        TB=terabyte;;t b
        bps=bit per second;bits per second;basis points;basis point;b p s;bips
        kbps=kilobit per second;kilobits per second;k b p s
        mbps Mbps Mb/s=megabit per second;megabits per second;megabits;m b p s
        gbps Gbps Gb/s=gigabit per second;gigabits per second
        mAh=milliamp hour;;m a h
        dB=decibel;;d b
        dBFS=decibel full scale;decibels full scale;d b f s;d b full scale
        dBA=decibel a;decibels a;d b a
        dBu=decibel u;decibels u;d b u
        dBV=decibel v;decibels v;d b v
        LUFS=loudness unit full scale;loudness units full scale;lufs;l u f s
        Nm N_m=newton meter
        ft-lb ft_lb ft-lbs ft_lbs lb-ft lb_ft=foot pound
        in-lb in_lb in-lbs lb-in=inch pound
        kHz=kilohertz;kilohertz;k
        kΩ=kilohm;;kilo ohm;kilo ohms;k ohm;k ohms
        MΩ=megohm;;mega ohm;mega ohms;meg ohms
        T=tesla;tesla;t;tooth;teeth
        ″=inch;inches
        ′=foot;feet
        kcal=kilocalorie;;calories
        psi PSI=pound per square inch;pounds per square inch;p s i
        sqft sq.ft. sq._ft.=square foot;square feet
        ha=hectare
        ch=chain
        c.=cup
        %=percent;percent;per cent
        """;

    /**
     * Symbol = one; many; besides = prefixes; a dash if the symbol alone is not taken for the unit. By the SI brochure (BIPM, 9th edition, tables 2 to 8), as far as lessons use them, and
     * IEC 80000-13 for bits and bytes.
     */
    private static final String METRIC = """
        m=meter=k, h, d, c, m, µ, μ, n
        g=gram=k, m, µ, μ, n
        L=liter=h, d, c, m, µ, μ
        l=liter=h, d, c, m, µ, μ
        s=second=m, µ, μ, n
        A=amp;;ampere;amperes=k, m, µ, μ
        Ah=amp hour=m, k
        K=kelvin;kelvin=-, m
        mol=mole=m, µ, μ
        cd=candela;candela
        Hz=hertz;hertz=k, M, G, T, m
        N=newton;;newton=k, M, m
        Pa=pascal=k, M, G, h
        J=joule=k, M, G, m
        W=watt=k, M, G, T, m, µ, μ
        Wh=watt hour=k, M, G, T
        VA=volt amp=k, M
        V=volt=k, M, m, µ, μ
        C=coulomb=-, m, µ, μ
        F=farad=-, m, µ, μ, n, p
        Ω=ohm=k, M, G, m
        H=henry;henries=-, m, µ, μ
        T=tesla;tesla=-, m, µ, μ
        lm=lumen
        lx=lux;lux=k
        Bq=becquerel=k, M, G
        Gy=gray=m
        Sv=sievert=m, µ, μ
        eV=electronvolt=k, M, G, T
        cal=calorie
        bit=bit=k, M, G, T, Ki, Mi, Gi
        B=byte=-, P, E, Ki, Mi, Gi, Ti
        """;

    private static final Map<String, String> PREFIXES = Map.ofEntries(
            Map.entry("E", "exa"),
            Map.entry("P", "peta"),
            Map.entry("T", "tera"),
            Map.entry("G", "giga"),
            Map.entry("M", "mega"),
            Map.entry("k", "kilo"),
            Map.entry("h", "hecto"),
            Map.entry("d", "deci"),
            Map.entry("c", "centi"),
            Map.entry("m", "milli"),
            Map.entry("µ", "micro"),
            Map.entry("μ", "micro"),
            Map.entry("n", "nano"),
            Map.entry("p", "pico"),
            Map.entry("Ki", "kibi"),
            Map.entry("Mi", "mebi"),
            Map.entry("Gi", "gibi"),
            Map.entry("Ti", "tebi"));

    private static final Map<String, Unit> UNITS = read();

    /** All names of units that are one word. */
    private static final Set<String> NAMES = UNITS.values().stream()
            .flatMap(unit -> unit.forms(true).all().stream())
            .filter(name -> name.size() == 1 && name.get(0).length() > 2)
            .map(name -> name.get(0))
            .collect(Collectors.toUnmodifiableSet());

    /** Part of a pattern: a unit symbol, the longer ones first. */
    static final String SYMBOL = UNITS.keySet().stream()
            .sorted((a, b) -> b.length() - a.length())
            .map(Pattern::quote)
            .collect(Collectors.joining("|", "(", ")"));

    /** Part of a pattern: one or several symbols with their powers; {@link #compound} says what its groups are. */
    static final String COMPOUND = "(sq\\.?\\s|cu\\.?\\s)?" + SYMBOL + "([²³]|(?<=m)[23])?([·⋅]" + SYMBOL
            + "([²³])?)?(?:/" + SYMBOL + "([²³])?(?:/(?:" + SYMBOL + "|(dose|minute|hour|day|week)))?)?";

    /** The name of a measure in full behind a number; group 1 is its singular. */
    static final Pattern MEASURE = Pattern.compile(
            "\\s(second|minute|hour|day|week|month|year|inch|foot|yard|mile|cup|teaspoon|tablespoon|pint|quart|gallon|pound"
                    + "|ounce|ton|degree|turn)(?:e?s|)\\b");

    private static final Pattern POINTS = Pattern.compile("pts?\\.?$");
    private static final Pattern SCORED = Pattern.compile(
            "(?i)\\b(?:scor\\p{L}*|games?|match|teams?|players?|w[io]ns?|lost|lead|led|league|quiz|bonus|exam|fonts?|type|typeface|text)\\b");
    private static final Pattern OF_DRINK =
            Pattern.compile("(?i)\\b(?:milk|beer|ale|cider|water|cream|stock|drinks?|drank|blood)\\b");

    private Units() {}

    /** The unit of a symbol that {@link #SYMBOL} matched. */
    private static Unit of(String symbol) {
        Unit unit = UNITS.get(symbol);
        if (unit == null) {
            throw new IllegalArgumentException("symbol (" + symbol + ") must be a known unit");
        }
        return unit;
    }

    /** Whether a word is the symbol of a unit. */
    static boolean isSymbol(String word) {
        return word.length() > 1 && UNITS.containsKey(word);
    }

    /** Whether a word is the name of a unit, in the singular or the plural. */
    static boolean isName(String word) {
        return NAMES.contains(word);
    }

    /** How a unit alone is said; {@code single} if the number before it is exactly one. */
    static SpokenForms said(String symbol, boolean single) {
        return of(symbol).forms(single);
    }

    /** Without pints where "pts." are points: of a game, of a letter's size. */
    static SpokenSpan withoutPints(SpokenSpan span, String text, int from) {
        boolean points = POINTS.matcher(text.substring(from, span.end())).find()
                && SCORED.matcher(text).find()
                && !OF_DRINK.matcher(text).find();
        return !points
                ? span
                : new SpokenSpan(
                        span.end(),
                        new SpokenForms(span.forms().all().stream()
                                .filter(form -> !form.contains("pint") && !form.contains("pints"))
                                .toList()));
    }

    private static Map<String, Unit> read() {
        Map<String, Unit> units = new HashMap<>();
        for (String row : TABLE.lines().toList()) {
            String[] parts = row.split("=", -1);
            for (String symbol : parts[0].split(" ", -1)) {
                units.put(symbol.replace('_', ' '), unit("", parts[1]));
            }
        }
        // what the table above says of a symbol counts
        for (String row : METRIC.lines().toList()) {
            String[] parts = row.split("=", -1);
            List<String> prefixes = new ArrayList<>(parts.length < 3 ? List.of() : List.of(parts[2].split(", ", -1)));
            if (!prefixes.remove("-")) {
                prefixes.add("");
            }
            for (String prefix : prefixes) {
                Unit unit = unit(PREFIXES.getOrDefault(prefix, ""), parts[1]);
                String symbol = prefix + parts[0];
                boolean letters = symbol.matches("[A-Za-z]{2,4}") && !symbol.matches("mm|cm|km|nm|mg|kg|ng|ms|ns");
                units.putIfAbsent(
                        symbol,
                        letters ? new Unit(unit.one, unit.many, unit.besides.or(LetterForms.spell(symbol))) : unit);
            }
        }
        return Map.copyOf(units);
    }

    /**
     * A unit.
     *
     * @param prefix its prefix as said; empty if it has none
     * @param names "one; many; besides..." of a row of a table
     */
    private static Unit unit(String prefix, String names) {
        List<String> said = Arrays.stream(names.split(";", -1))
                .map(name -> name.isEmpty() ? "" : prefix + name)
                .toList();
        String one = said.get(0);
        String many = said.size() > 1 && !said.get(1).isEmpty() ? said.get(1) : one + "s";
        SpokenForms besides = SpokenForms.NONE;
        for (String other : said.subList(Math.min(2, said.size()), said.size())) {
            besides = besides.or(other);
        }
        int per = many.indexOf(" per ");
        if (per >= 0) {
            String each = " " + article(many.substring(per + 5)) + " ";
            besides = besides.or(many.replace(" per ", each)).or(one.replace(" per ", each));
        }
        return one.contains("meter") || one.contains("liter")
                ? new Unit(one, many, besides.or(british(many)).or(british(one)))
                : new Unit(one, many, besides);
    }

    private static String british(String name) {
        return name.replace("meter", "metre").replace("liter", "litre");
    }

    /** "a" or "an" before a unit's name. */
    static String article(String name) {
        return "aeio".indexOf(name.charAt(0)) >= 0 || name.startsWith("hour") ? "an" : "a";
    }

    /**
     * How a compound of units is said, such as "kg/m³", "kW·h" or "mg/kg/day", matched by {@link #COMPOUND} as the groups from {@code first} on.
     *
     * @param single whether the number before it is exactly one
     */
    static SpokenForms compound(Matcher m, int first, boolean single) {
        SpokenForms forms = power(m.group(first + 1), m.group(first + 2), m.group(first), single);
        if (m.group(first + 4) != null) {
            SpokenForms one =
                    power(m.group(first + 4), m.group(first + 5), null, true).first(1);
            SpokenForms head = power(m.group(first + 1), m.group(first + 2), m.group(first), true)
                    .first(1);
            forms = head.then(power(m.group(first + 4), m.group(first + 5), null, single))
                    .or(head.then(one));
        }
        if (m.group(first + 6) == null) {
            return forms;
        }
        SpokenForms below = power(m.group(first + 6), m.group(first + 7), null, true);
        String plain = String.join(" ", said(m.group(first + 6), true).first());
        SpokenForms last = Optional.ofNullable(m.group(first + 8))
                .map(symbol -> said(symbol, true).first(2))
                .or(() -> Optional.ofNullable(m.group(first + 9)).map(SpokenForms::of))
                .orElse(SpokenForms.NONE);
        if (last.isEmpty()) {
            below = below.first(1).or(british(String.join(" ", below.first()))).or(behind(plain, m.group(first + 7)));
            return forms.first(3).then(per(plain)).then(below);
        }
        return forms.first(3)
                .then("per")
                .then(below.first(2))
                .then(per(String.join(" ", last.first())))
                .then(last);
    }

    private static SpokenForms per(String unit) {
        return SpokenForms.of("per", article(unit));
    }

    /** "centimeter cubed", "second per second"; none without a power. */
    private static SpokenForms behind(String unit, @Nullable String raised) {
        if (raised == null) {
            return SpokenForms.NONE;
        }
        SpokenForms forms = SpokenForms.of(unit + ("³3".contains(raised) ? " cubed" : " squared"));
        return unit.equals("second") ? forms.or("second per second") : forms;
    }

    /** A unit with a power: "square meters", "seconds squared". */
    private static SpokenForms power(String symbol, @Nullable String raised, @Nullable String area, boolean single) {
        SpokenForms forms = said(symbol, single);
        boolean cubic = raised != null ? "³3".contains(raised) : area != null && area.startsWith("cu");
        if (raised == null && area == null) {
            return forms;
        }
        SpokenForms before = SpokenForms.of(cubic ? "cubic" : "square").then(forms.first(3));
        SpokenForms behind = forms.first(1).then(cubic ? "cubed" : "squared");
        return symbol.equals("s") ? behind.or(before) : before.or(behind);
    }
}
