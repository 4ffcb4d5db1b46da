package org.bookholder.script.normalize;

import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Unit symbols and how they are said. */
final class Units {
    /** How one symbol is said: in the singular, in the plural, and in other ways for either. */
    record Unit(String one, String many, SpokenForms besides) {
        SpokenForms forms(boolean single) {
            return SpokenForms.of(single ? one : many).or(besides).or(single ? many : one);
        }
    }

    /** Symbol = one; many ("s" is added where it is left out); besides... An underscore stands for a space */
    private static final String TABLE = """
        kg kgs=kilogram;;kilo;kilos
        g=gram
        mg=milligram
        t=tonne
        lb lbs=pound
        oz=ounce
        km=kilometer;;k
        m=meter
        cm=centimeter
        mm=millimeter;;mil
        µm μm=micrometer;;micron;microns
        nm=nanometer
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
        pts=point
        cts=carat;;cent;cents
        °C=degree celsius;degrees celsius;degrees;degrees c;degrees centigrade
        °F=degree fahrenheit;degrees fahrenheit;degrees;degrees f
        °=degree
        mph=mile per hour;miles per hour;miles an hour
        km/h kph=kilometer per hour;kilometers per hour;kilometers an hour;k p h
        m/s=meter per second;meters per second
        wpm=word per minute;words per minute;words a minute
        rpm=revolution per minute;revolutions per minute;r p m
        bpm=beat per minute;beats per minute;b p m
        fps=frame per second;frames per second;f p s
        dpi=dot per inch;dots per inch;d p i
        ppm=part per million;parts per million;p p m
        px=pixel
        MP=megapixel;;m p
        Hz=hertz;hertz
        kHz=kilohertz;kilohertz
        MHz=megahertz;megahertz
        GHz=gigahertz;gigahertz
        bit=bit
        KB kB=kilobyte;;k b;k
        MB=megabyte;;megs;meg;m b
        GB=gigabyte;;gigs;gig;g b
        TB=terabyte;;t b
        bps=bit per second;bits per second;basis points;basis point;b p s
        kbps=kilobit per second;kilobits per second
        mbps Mbps Mb/s=megabit per second;megabits per second;megabits
        gbps Gbps Gb/s=gigabit per second;gigabits per second
        V=volt
        mV=millivolt
        W=watt
        kW=kilowatt
        kWh=kilowatt hour
        mA=milliamp
        mAh=milliamp hour;;m a h
        dB=decibel;;d b
        cal=calorie
        kcal=kilocalorie;;calories
        psi=pound per square inch;pounds per square inch;p s i
        sqft sq.ft. sq_ft sq._ft. ft²=square foot;square feet
        sq_m=square meter
        sq_mi mi²=square mile
        cu_ft ft³=cubic foot;cubic feet
        ha=hectare
        Ω=ohm
        kΩ=kiloohm;;kilohms
        kPa=kilopascal
        lm=lumen
        kJ=kilojoule
        m² m2=square meter;;meters squared
        m³ m3=cubic meter;;meters cubed
        cm²=square centimeter
        cm³=cubic centimeter
        km²=square kilometer
        %=percent;percent;per cent
        """;

    private static final Map<String, Unit> UNITS = read();

    /** Part of a pattern: a unit symbol, the longer ones first. */
    static final String SYMBOL = UNITS.keySet().stream()
            .sorted((a, b) -> b.length() - a.length())
            .map(Pattern::quote)
            .collect(Collectors.joining("|", "(", ")"));

    private Units() {}

    static @Nullable Unit of(String symbol) {
        return UNITS.get(symbol);
    }

    private static Map<String, Unit> read() {
        Map<String, Unit> units = new HashMap<>();
        for (String row : TABLE.lines().toList()) {
            int equals = row.indexOf('=');
            String[] said = row.substring(equals + 1).split(";", -1);
            String many = said.length > 1 && !said[1].isEmpty() ? said[1] : said[0] + "s";
            SpokenForms besides = SpokenForms.NONE;
            for (int i = 2; i < said.length; i++) {
                besides = besides.or(said[i]);
            }
            if (said[0].contains("meter") || said[0].contains("liter")) {
                besides = besides.or(many.replace("meter", "metre").replace("liter", "litre"))
                        .or(said[0].replace("meter", "metre").replace("liter", "litre"));
            }
            for (String symbol : row.substring(0, equals).split(" ", -1)) {
                units.put(symbol.replace('_', ' '), new Unit(said[0], many, besides));
            }
        }
        return Map.copyOf(units);
    }
}
