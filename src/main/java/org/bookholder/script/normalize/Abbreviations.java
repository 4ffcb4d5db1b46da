package org.bookholder.script.normalize;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/** Abbreviations and what they stand for. */
final class Abbreviations {
    /** Said as written here, with or without the full stop. */
    static final Map<String, String[]> ALWAYS = table("""
        mr=mister
        mrs=missus;misses;mrs
        ms=miss;ms
        messrs=messers
        dr=doctor
        prof=professor
        vs=versus;against;verses
        etc=et cetera;etcetera;and so on;and so forth
        e.g=for example;e g;for instance
        eg=for example;e g
        i.e=that is;i e
        ie=that is;i e
        a.k.a=also known as;a k a
        aka=also known as;a k a
        approx=approximately;approx;about;roughly
        ph.d=p h d
        phd=p h d
        a.m=a m;am
        p.m=p m;pm
        cf=compare;c f
        viz=namely
        w/=with
        w/o=without
        b/c=because
        o.c=on center;on centre;o c
        n.b=n b;note well;nota bene
        nb=n b;note well;nota bene
        b.i.d=b i d;twice a day;twice daily
        t.i.d=t i d;three times a day;three times daily
        q.i.d=q i d;four times a day;four times daily
        p.r.n=p r n;as needed;when required
        c/o=care of
        p.a=per annum;a year;p a
        incl=including;included;inclusive of;inclusive
        sq=square
        hwy=highway
        blvd=boulevard
        pkwy=parkway
        govt=government
        qty=quantity
        excl=excluding;exclusive of;not including
        """);

    /** Said as written here only with the full stop. */
    static final Map<String, String[]> DOTTED = table("""
        ave=avenue
        ln=lane
        ct=court
        pl=place;plural
        cir=circle
        ter=terrace
        apt=apartment
        ste=suite
        bldg=building
        fl=floor
        rm=room
        avg=average
        std=standard
        misc=miscellaneous
        esp=especially
        assn=association
        assoc=association;associates
        univ=university
        intl=international
        natl=national
        ctr=center
        pkg=package
        doz=dozen
        ea=each
        yr=year
        yrs=years
        mo=month
        mos=months
        wk=week
        wks=weeks
        hr=hour
        hrs=hours
        mins=minutes
        secs=seconds
        lb=pound
        lbs=pounds
        oz=ounces;ounce
        tbsp=tablespoon;tablespoons
        tsp=teaspoon;teaspoons
        sat=saturday
        sun=sunday
        rd=road
        mt=mount
        ft=fort;foot;feet
        jr=junior
        sr=senior
        inc=incorporated;inc
        ltd=limited
        co=company
        corp=corporation
        bros=brothers
        dept=department
        est=established;estimated;e s t;eastern;eastern time
        gen=general
        gov=governor
        capt=captain
        lt=lieutenant
        sgt=sergeant
        col=colonel
        rev=reverend;revision
        hon=honorable
        sen=senator
        rep=representative
        pres=president
        tel=telephone
        ext=extension
        min=minimum;minute;minutes;minimum of
        max=maximum;maximum of
        temp=temperature
        mon=monday
        tue=tuesday
        tues=tuesday
        wed=wednesday
        thu=thursday
        thurs=thursday
        fri=friday
        jan=january
        feb=february
        mar=march
        apr=april
        jun=june
        jul=july
        aug=august
        sep=september
        sept=september
        oct=october
        nov=november
        dec=december
        """);

    /** With a full stop behind them these may be words at the end of a sentence, too, as in "out in the sun". */
    static final Set<String> WORDS = Set.of("sat", "sun", "wed", "rep", "max", "min", "temp");

    /** Said as written here only with the full stop and before a number. */
    static final Map<String, String[]> BEFORE_NUMBER = table("""
        p=page
        no=number
        nos=numbers
        pt=part
        bk=book
        ex=example;exercise
        app=appendix
        para=paragraph
        pp=pages
        ch=chapter
        fig=figure
        figs=figures
        chs=chapters
        vols=volumes
        vol=volume
        sec=section
        art=article
        eq=equation
        ed=edition
        par=paragraph
        ver=version
        v=version
        ca=circa;about;around
        c=circa;about;around
        """);

    /** Said as written here behind an ordinal number: "the 19th c.". */
    static final Map<String, String[]> CENTURY = table("""
        c=century
        cent=century
        ed=edition
        """);

    /** Said in full with the full stop, but also as written: "the dim. chord". */
    static final Map<String, String[]> CUT = table("""
        adj=adjective;adjustable
        adv=adverb
        amt=amount
        anon=anonymous
        arr=arrives;arrival
        asst=assistant
        attn=attention
        bal=balance
        cat=category;catalogue;catalog
        cert=certificate
        choc=chocolate
        conj=conjunction
        cont=continued
        contd=continued
        def=definition;definite
        deg=degrees;degree
        dep=departs;departure
        det=detached;determiner
        dia=diameter
        diag=diagram;diagonal
        diam=diameter
        dim=diminished;dimension
        dist=distance;district
        div=division
        elec=electric;electrical;electricity
        elev=elevation
        encl=enclosed
        eng=engine;english;engineering
        equip=equipment
        exc=except;excluding
        fem=feminine
        freq=frequency;frequent
        fwd=forward
        hist=history
        horiz=horizontal
        hosp=hospital
        ht=height
        illus=illustrated;illustration
        imp=imperative;important
        inst=instrument;institute
        intro=introduction
        lab=laboratory
        lang=language
        lg=large
        lge=large
        maint=maintenance
        masc=masculine
        med=medium;medicine;medical
        mfr=manufacturer
        mgr=manager
        mod=module;modification;moderate
        mtg=meeting
        neg=negative
        obj=object
        obs=observations
        opp=opposite
        opt=optional
        orig=original
        perm=permanent
        pers=person;personal
        plur=plural
        pos=positive;position
        poss=possible;possessive
        prep=preposition;preparation
        prev=previous
        pron=pronoun;pronounced;pronunciation
        pub=published;publication
        rec=recommended
        recd=received
        ref=reference
        refs=references
        reg=regular;registered;registration
        req=required;requires
        res=resolution
        rnd=round
        sched=schedule
        sect=section
        ser=series
        sgl=single
        sing=singular
        sm=small
        spec=specification
        specs=specifications
        subj=subject
        tab=tablet
        tabs=tablets
        tech=technical;technician
        temps=temperatures
        trans=transitive;translation
        vert=vertical
        vocab=vocabulary
        wt=weight
        """);

    /** Said as written without a full stop, but also in full: "check the temp". */
    static final Map<String, String[]> UNDOTTED = table("""
        avg=average
        dept=department
        dia=diameter
        ht=height
        info=information
        intro=introduction
        max=maximum
        min=minimum
        mtg=meeting
        obs=observations
        ref=reference
        rec=recommended
        spec=specification
        specs=specifications
        tabs=tablets
        temp=temperature
        temps=temperatures
        vocab=vocabulary
        wt=weight
        """);

    private Abbreviations() {}

    private static Map<String, String[]> table(String rows) {
        Map<String, String[]> table = new HashMap<>();
        for (String row : rows.lines().toList()) {
            int equals = row.indexOf('=');
            table.put(row.substring(0, equals), row.substring(equals + 1).split(";", -1));
        }
        return Map.copyOf(table);
    }
}
