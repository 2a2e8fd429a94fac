package haywright.forage;

import haywright.quantity.Unit;
import java.util.Locale;

/**
 * What a laboratory can report of a feed, each with the unit the house keeps it in (on dry matter where it is a
 * concentration of the feed). Names, synonyms and limits: {@code analytes.csv}.
 */
public enum Analyte {
    DM(Unit.PERCENT),
    MOISTURE(Unit.PERCENT),
    CP(Unit.PERCENT),
    N(Unit.PERCENT),
    SP(Unit.PERCENT),
    ADICP(Unit.PERCENT),
    NDICP(Unit.PERCENT),
    ACP(Unit.PERCENT),
    RDP(Unit.PERCENT),
    RUP(Unit.PERCENT),
    NPN(Unit.PERCENT),
    ADF(Unit.PERCENT),
    NDF(Unit.PERCENT),
    CF(Unit.PERCENT),
    LIGNIN(Unit.PERCENT),
    NDFD(Unit.PERCENT),
    UNDF(Unit.PERCENT),
    IVTD(Unit.PERCENT),
    FAT(Unit.PERCENT),
    TFA(Unit.PERCENT),
    ASH(Unit.PERCENT),
    AIA(Unit.PERCENT),
    STARCH(Unit.PERCENT),
    WSC(Unit.PERCENT),
    ESC(Unit.PERCENT),
    NFC(Unit.PERCENT),
    NSC(Unit.PERCENT),
    TDN(Unit.PERCENT),
    DDM(Unit.PERCENT),
    NEM(Unit.MCAL_PER_KG),
    NEG(Unit.MCAL_PER_KG),
    NEL(Unit.MCAL_PER_KG),
    ME(Unit.MCAL_PER_KG),
    DE(Unit.MCAL_PER_KG),
    RFV(Unit.NONE),
    RFQ(Unit.NONE),
    CA(Unit.PERCENT),
    P(Unit.PERCENT),
    MG(Unit.PERCENT),
    K(Unit.PERCENT),
    NA(Unit.PERCENT),
    S(Unit.PERCENT),
    CL(Unit.PERCENT),
    CU(Unit.PPM),
    ZN(Unit.PPM),
    MN(Unit.PPM),
    FE(Unit.PPM),
    MO(Unit.PPM),
    SE(Unit.PPM),
    CO(Unit.PPM),
    AL(Unit.PPM),
    NO3(Unit.PERCENT),
    NO3N(Unit.PPM),
    KNO3(Unit.PERCENT),
    HCN(Unit.PPM),
    PH(Unit.NONE),
    LACTIC(Unit.PERCENT),
    ACETIC(Unit.PERCENT),
    PROPIONIC(Unit.PERCENT),
    BUTYRIC(Unit.PERCENT),
    ETHANOL(Unit.PERCENT),
    NH3N(Unit.PERCENT),
    AFLATOXIN(Unit.PPB),
    DON(Unit.PPM),
    FUMONISIN(Unit.PPM),
    ZEA(Unit.PPM),
    T2(Unit.PPM),
    ERGOT(Unit.PPB),
    DCAD(Unit.MEQ_PER_KG),
    TDS(Unit.MILLIGRAM_PER_LITRE),
    SO4W(Unit.MILLIGRAM_PER_LITRE);

    private final Unit unit;

    Analyte(Unit unit) {
        this.unit = unit;
    }

    /** The unit of every value of this analyte inside the house. */
    public Unit unit() {
        return unit;
    }

    /** As documents and topics write it: {@code cp}. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
