package org.bookholder.script.normalize;

import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Formulae of chemistry: said letter by letter, and by the name of what they are. */
final class Formulae {
    /** IUPAC, Periodic Table of the Elements. */
    private static final Set<String> ELEMENTS = Set.of(
            ("H He Li Be B C N O F Ne Na Mg Al Si P S Cl Ar K Ca Sc Ti V Cr Mn Fe Co Ni Cu Zn Ga Ge As Se Br Kr Rb Sr Y Zr"
                            + " Nb Mo Tc Ru Rh Pd Ag Cd In Sn Sb Te I Xe Cs Ba La Ce Pr Nd Pm Sm Eu Gd Tb Dy Ho Er Tm Yb Lu Hf"
                            + " Ta W Re Os Ir Pt Au Hg Tl Pb Bi Po At Rn Fr Ra Ac Th Pa U Np Pu Am")
                    .split(" ", -1));

    /** Names in common use and those of IUPAC's Nomenclature of Inorganic Chemistry; formula = name; name. */
    private static final String TABLE = """
        CO2=c o two;carbon dioxide
        CO=c o;carbon monoxide
        H2O=h two o;water
        H2O2=h two o two;hydrogen peroxide
        O2=o two;oxygen
        O3=o three;ozone
        N2=n two;nitrogen
        H2=h two;hydrogen
        Cl2=c l two;chlorine
        N2O=n two o;nitrous oxide;laughing gas
        NO2=n o two;nitrogen dioxide
        SO2=s o two;sulfur dioxide
        SiO2=s i o two;silicon dioxide;silica
        CH4=c h four;methane
        C2H5OH=c two h five o h;ethanol
        C2H6O=c two h six o;ethanol
        C6H12O6=c six h twelve o six;glucose
        NH3=n h three;ammonia
        NH4NO3=n h four n o three;ammonium nitrate
        H2SO4=h two s o four;sulfuric acid;sulphuric acid
        HCl=h c l;hydrochloric acid;hydrogen chloride
        HNO3=h n o three;nitric acid
        H3PO4=h three p o four;phosphoric acid
        NaCl=sodium chloride;n a c l;salt
        NaOH=n a o h;sodium hydroxide
        KOH=k o h;potassium hydroxide
        NaHCO3=n a h c o three;sodium bicarbonate;sodium hydrogen carbonate;baking soda
        Na2CO3=n a two c o three;sodium carbonate
        CaCO3=c a c o three;calcium carbonate
        CaO=c a o;calcium oxide
        CaCl2=c a c l two;calcium chloride
        KCl=k c l;potassium chloride
        MgSO4=m g s o four;magnesium sulfate;magnesium sulphate
        CuSO4=c u s o four;copper sulfate;copper sulphate
        Fe2O3=f e two o three;iron oxide
        TiO2=t i o two;titanium dioxide
        AgNO3=a g n o three;silver nitrate
        KMnO4=k m n o four;potassium permanganate
        """;

    private static final Map<String, SpokenForms> NAMED = TABLE.lines()
            .map(row -> row.split("=", -1))
            .collect(Collectors.toUnmodifiableMap(row -> row[0], row -> SpokenForms.of(row[1].split(";", -1))));

    private static final Pattern FORMULA = Pattern.compile("(?:[A-Z][a-z]?\\d{0,2}){2,12}");
    private static final Pattern ATOM = Pattern.compile("([A-Z][a-z]?)(\\d{0,2})");
    private static final Pattern TELLING = Pattern.compile("[A-Z][a-z]?\\d.*[A-Z]|[a-z].*[A-Z]|[A-Z].*[A-Z][a-z]$");

    private Formulae() {}

    /** How a formula that has a name is said; none for any other text. */
    static SpokenForms named(String written) {
        return NAMED.getOrDefault(written, SpokenForms.NONE);
    }

    /** A formula letter by letter, with plain digits; none if it is not one, or as well may be a word or initials. */
    static SpokenForms spelled(String written) {
        if (!FORMULA.matcher(written).matches() || !TELLING.matcher(written).find()) {
            return SpokenForms.NONE;
        }
        NumberWords numbers = new NumberWords();
        SpokenForms forms = SpokenForms.SILENT;
        Matcher atom = ATOM.matcher(written);
        while (atom.find()) {
            if (!ELEMENTS.contains(atom.group(1))) {
                return SpokenForms.NONE;
            }
            forms = forms.then(LetterForms.spell(atom.group(1)));
            forms = atom.group(2).isEmpty()
                    ? forms
                    : forms.then(numbers.counted(atom.group(2)).preferred());
        }
        return forms;
    }
}
