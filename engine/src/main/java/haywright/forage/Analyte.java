package haywright.forage;

import haywright.quantity.Unit;
import haywright.workings.EditDistance;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

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
    TDS(Unit.MILLIGRAM_PER_LITER),
    SO4W(Unit.MILLIGRAM_PER_LITER);

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

    /** Its name in words: "Crude protein". */
    public String words() {
        return AnalyteTable.of(this).words();
    }

    /** Other names that reports use for it. */
    public List<String> synonyms() {
        return AnalyteTable.of(this).synonyms();
    }

    /** How laboratories measure it; empty where the table does not say. */
    public String method() {
        return AnalyteTable.of(this).method();
    }

    /** False for what is worked out from other figures: TDN, net energy, feed values, sums. */
    public boolean isMeasured() {
        return AnalyteTable.of(this).measured();
    }

    /** What a value of it can be at all, in {@link #unit()}. Outside is refused; set by judgment. */
    public Range possible() {
        return AnalyteTable.of(this).possible();
    }

    /** Lowest and highest value of the feed book's rows of this class; empty where the book has none. */
    public Optional<Range> usual(FeedClass feedClass) {
        return AnalyteTable.of(this).usual(feedClass);
    }

    /**
     * Whether it is a share of the feed, so that it has one value as received and another on dry matter. Ratios,
     * indices, shares of protein or fiber, dry matter itself and figures of water have one value only.
     */
    public boolean hasBasis() {
        return switch (this) {
            case DM, MOISTURE, SP, RDP, RUP, NDFD, RFV, RFQ, PH, NH3N, TDS, SO4W -> false;
            default -> true;
        };
    }

    /** Units it may be typed in, its own first. */
    public List<Unit> accepts() {
        var units = new ArrayList<>(List.of(unit));
        for (var other : Unit.of(unit.kind())) {
            if (other != unit && other != Unit.FRACTION) {
                units.add(other);
            }
        }
        return List.copyOf(units);
    }

    /** The analyte a report means by this name: id, name or synonym, in any case. */
    public static Optional<Analyte> find(String name) {
        return AnalyteTable.find(name);
    }

    /** @throws Refused for an unknown name, with a known one where one is near */
    public static Analyte named(String name) {
        return find(name)
                .orElseThrow(() -> new Refused(
                        "analyte",
                        name.isBlank() ? "no name" : name,
                        name.length() > EditDistance.LONGEST
                                ? "no name of an analyte has so many letters"
                                : "no analyte of this name is known",
                        nearest(name)
                                .map(near -> "Did you mean " + near + "?")
                                .orElse("Write it as the laboratory's sheet does, or as its abbreviation.")));
    }

    /** The known name that a misspelled or shortened one is near to; empty where none is. */
    public static Optional<String> nearest(String name) {
        return AnalyteTable.nearest(name);
    }

    /** Lowest and highest, both allowed. */
    public record Range(double low, double high) {
        public boolean holds(double value) {
            return value >= low && value <= high;
        }

        public Range with(Range other) {
            return new Range(Math.min(low, other.low), Math.max(high, other.high));
        }
    }
}
