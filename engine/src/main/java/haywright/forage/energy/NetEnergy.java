package haywright.forage.energy;

import haywright.forage.Analyte;
import haywright.forage.Say;
import haywright.quantity.Unit;
import haywright.workings.Caution;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;

/**
 * Energy of a feed from its TDN, Mcal per kg of dry matter.
 *
 * <pre>
 * DE  = 0.04409·TDN
 * ME  = 0.82·DE
 * NEm = 1.37·ME − 0.138·ME^2 + 0.0105·ME^3 − 1.12
 * NEg = 1.42·ME − 0.174·ME^2 + 0.0122·ME^3 − 1.65, never under 0
 * </pre>
 *
 * The cubic holds for ME 1.4 to 3.5. Below about 38 % TDN it gives a negative NEg: 0 is taken and said.
 *
 * @param tdn percent of dry matter: 58.0 means 58 %
 * @see "NRC, Nutrient Requirements of Beef Cattle, 7th edition, p. 126: DE and ME; the cubics are from memory and
 *     reproduce the NASEM 2016 grain rows of NDSU AS1609 to 0.006"
 */
public record NetEnergy(double tdn) implements Worked {
    private static final Source READ = Source.read("NRC, Nutrient Requirements of Beef Cattle, 7th edition, p. 126");
    private static final Source CUBIC = Source.reproduces(
            "NRC, Nutrient Requirements of Beef Cattle, 7th edition; reproduces NASEM 2016 rows in NDSU AS1609, Table 1");

    /** Under this share of TDN the cubic is used below the energy it was fitted to. */
    private static final double LOW_TDN = 40;

    public NetEnergy {
        refuseTdn(tdn);
    }

    static void refuseTdn(double tdn) {
        var possible = Analyte.TDN.possible();
        if (!possible.holds(tdn)) { // also refuses NaN
            throw new Refused(
                    "tdn",
                    "TDN %s %%".formatted(Say.number(tdn)),
                    "TDN of a feed is from %s to %s %% of dry matter"
                            .formatted(Say.number(possible.low()), Say.number(possible.high())),
                    tdn > 0 && tdn < 1
                            ? "Was it typed as a fraction?"
                            : "Is it as received, or another figure of the report?");
        }
    }

    public double de() {
        return 0.04409 * tdn;
    }

    public double me() {
        return 0.82 * de();
    }

    public double nem() {
        double me = me();
        return 1.37 * me - 0.138 * me * me + 0.0105 * me * me * me - 1.12;
    }

    public double neg() {
        return Math.max(0, cubicNeg());
    }

    private double cubicNeg() {
        double me = me();
        return 1.42 * me - 0.174 * me * me + 0.0122 * me * me * me - 1.65;
    }

    /** What a reader should know of a feed this poor; empty otherwise. */
    public List<Caution> cautions() {
        var cautions = new ArrayList<Caution>();
        if (tdn < LOW_TDN) {
            cautions.add(new Caution(
                    "TDN %s %% is below 40 %%, lower than the energy equations were fitted to: take its net energy as rough."
                            .formatted(Say.number(tdn)),
                    CUBIC));
        }
        if (cubicNeg() < 0) {
            cautions.add(new Caution(
                    "The equation gives a NEg below 0 for this feed; 0 is taken. Cattle do not gain on it alone.",
                    CUBIC));
        }
        return List.copyOf(cautions);
    }

    @Override
    public List<Line> lines() {
        var neg = "1.42·ME − 0.174·ME^2 + 0.0122·ME^3 − 1.65";
        return List.of(
                Line.of("DE", "0.04409·TDN", de(), Unit.MCAL_PER_KG, READ, Input.typed("TDN", tdn, Unit.PERCENT)),
                Line.of("ME", "0.82·DE", me(), Unit.MCAL_PER_KG, READ),
                Line.of("NEm", "1.37·ME − 0.138·ME^2 + 0.0105·ME^3 − 1.12", nem(), Unit.MCAL_PER_KG, CUBIC),
                Line.of("NEg", cubicNeg() < 0 ? "max(0, " + neg + ")" : neg, neg(), Unit.MCAL_PER_KG, CUBIC));
    }
}
