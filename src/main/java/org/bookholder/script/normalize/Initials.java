package org.bookholder.script.normalize;

import java.util.Map;
import java.util.stream.Collectors;

/** Capitals that are also read in full: "BP", "RHS", "VAT". The letters themselves stay the likelier way. */
final class Initials {
    /** Those of doses are listed in the British National Formulary, "Abbreviations and symbols"; the others are from memory. */
    private static final String TABLE = """
        PO=by mouth;orally
        BD=twice a day;twice daily
        BID=twice a day;twice daily
        TDS=three times a day;three times daily
        TID=three times a day;three times daily
        QDS=four times a day;four times daily
        QID=four times a day;four times daily
        OD=once a day;once daily
        PRN=as needed;when required
        IV=intravenous;intravenously
        IM=intramuscular;intramuscularly
        SC=subcutaneous;subcutaneously
        NBM=nil by mouth
        NPO=nothing by mouth
        NS=normal saline;of normal saline
        BP=blood pressure
        HR=heart rate;human resources
        RR=respiratory rate
        BMI=body mass index
        GCS=glasgow coma scale
        CPR=cardiopulmonary resuscitation
        ECG=electrocardiogram
        ICU=intensive care unit
        ETA=estimated time of arrival
        ETD=estimated time of departure
        LHS=left hand side
        RHS=right hand side
        UK=united kingdom
        US=united states
        USA=united states of america
        EU=european union
        UN=united nations
        VAT=value added tax
        AGI=adjusted gross income
        IRA=individual retirement account
        APR=annual percentage rate
        ROI=return on investment
        P&L=profit and loss
        Q&A=questions and answers;question and answer
        T&C=terms and conditions
        T&Cs=terms and conditions
        CPU=central processing unit
        GPU=graphics processing unit
        RAM=random access memory
        OS=operating system
        UI=user interface
        UX=user experience
        AI=artificial intelligence
        IT=information technology
        PC=personal computer
        DB=database
        ID=identification;identity
        HQ=headquarters
        CEO=chief executive officer
        PIN=personal identification number
        ATM=cash machine
        AC=alternating current;air conditioning
        DC=direct current
        LED=light emitting diode
        OHLE=overhead line equipment;overhead line
        OLE=overhead line equipment;overhead line
        MC=moisture content
        DPC=damp proof course
        PVC=polyvinyl chloride
        ND=neutral density
        WB=white balance
        DOF=depth of field
        EV=electric vehicle;exposure value
        POV=point of view
        VO=voice over
        SFX=sound effects
        PPE=personal protective equipment
        H&S=health and safety
        DOB=date of birth
        FAO=for the attention of
        AKA=also known as
        BBQ=barbecue
        TBC=to be confirmed
        NB=note well;nota bene
        N/A=not applicable;not available
        """;

    private static final Map<String, SpokenForms> NAMED = TABLE.lines()
            .map(row -> row.split("=", -1))
            .collect(Collectors.toUnmodifiableMap(row -> row[0], row -> SpokenForms.of(row[1].split(";", -1))));

    private Initials() {}

    /** What the capitals stand for; none if they are not known. */
    static SpokenForms of(String capitals) {
        return NAMED.getOrDefault(capitals, SpokenForms.NONE);
    }
}
