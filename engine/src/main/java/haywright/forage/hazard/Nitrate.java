package haywright.forage.hazard;

import haywright.forage.Analyte;
import haywright.forage.Say;
import haywright.quantity.Kind;
import haywright.quantity.Unit;
import haywright.workings.Caution;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Nitrate of a feed on dry matter, in whichever of its three forms a laboratory prints it. Never compare two figures
 * before they are in one form: the same hay is 1,000 ppm NO3-N, 4,427 ppm NO3 and 7,218 ppm KNO3.
 *
 * <pre>
 * NO3-N = NO3·14.007 / 62.005 = KNO3·14.007 / 101.10      molar masses, g per mol
 * 1 % = 10,000 ppm
 * </pre>
 *
 * @param value 0 or more
 * @param unit a share: percent or ppm of dry matter
 */
public record Nitrate(double value, Form as, Unit unit) implements Worked {
    private static final Source MOLAR_MASSES =
            new Source("molar masses: N 14.007, NO3 62.005, KNO3 101.10", Source.Known.ARITHMETIC);

    /** What the laboratory printed. */
    public enum Form {
        NO3_N("NO3N", 14.007),
        NO3("NO3", 62.005),
        KNO3("KNO3", 101.10);

        private final String symbol;
        private final double molarMass;

        Form(String symbol, double molarMass) {
            this.symbol = symbol;
            this.molarMass = molarMass;
        }

        public String id() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public Nitrate {
        if (unit.kind() != Kind.SHARE) {
            throw new Refused("unit", unit.symbol(), "nitrate is a share of dry matter", "Is it % or ppm?");
        }
        double no3n = ppm(value, unit) * Form.NO3_N.molarMass / as.molarMass;
        if (!Analyte.NO3N.possible().holds(no3n)) { // also refuses NaN
            throw new Refused(
                    "value",
                    Say.number(value) + " " + unit.symbol() + " " + as.symbol,
                    "nitrate is a number from 0 to %s ppm NO3-N"
                            .formatted(Say.number(Analyte.NO3N.possible().high())),
                    "Is the unit %s right, and the form %s?".formatted(unit.symbol(), as.symbol));
        }
    }

    /**
     * Of a report that prints the other forms: the form that says more, so that where two disagree by a little neither
     * chance nor the safe side decides. Disagreement by more is an error of the report's own.
     *
     * @param printed percent of dry matter
     */
    public static Optional<Analyte> strictest(Map<Analyte, Double> printed) {
        return Stream.of(Analyte.NO3, Analyte.KNO3)
                .filter(printed::containsKey)
                .max(Comparator.comparingDouble(form -> of(form, printed).no3n()));
    }

    /** @param form NO3 or KNO3 */
    public static Nitrate of(Analyte form, Map<Analyte, Double> printed) {
        return new Nitrate(
                Objects.requireNonNull(printed.get(form)), form == Analyte.NO3 ? Form.NO3 : Form.KNO3, form.unit());
    }

    private static double ppm(double value, Unit unit) {
        return unit.to(Unit.PPM, value);
    }

    /** ppm of dry matter in one form. */
    public double ppm(Form form) {
        return ppm(value, unit) * form.molarMass / as.molarMass;
    }

    public double no3n() {
        return ppm(Form.NO3_N);
    }

    /** Above half of the first caution line one bale may pass it: then bales are asked for one by one. */
    public boolean asksForSingleBales() {
        return no3n() > NitrateClass.safeForPregnant().safeUpTo() / 2;
    }

    /** What each published source says of this figure: always all of them, never one alone. */
    public List<NitrateClass> classes() {
        return NitrateClass.of(no3n());
    }

    /** Empty below every published limit. */
    public List<Caution> cautions() {
        var cautions = new ArrayList<Caution>();
        double here = no3n();
        if (here > NitrateClass.doNotFeed().lower()) {
            cautions.add(new Caution(
                    "Nitrate this high can kill cattle within hours. Do not feed it, mixed or not, before the laboratory has "
                            + "confirmed it and a veterinarian or your extension office has said how.",
                    NitrateClass.doNotFeed().source()));
        } else if (here > NitrateClass.safeForPregnant().safeUpTo()) {
            cautions.add(new Caution(
                    "Above the strictest published limit for pregnant cattle. The sources differ; ask a veterinarian and "
                            + "follow local advice before it is fed, count the nitrate of the water in, and never feed it to hungry cattle.",
                    NitrateClass.safeForPregnant().source()));
        }
        return List.copyOf(cautions);
    }

    @Override
    public List<Line> lines() {
        var lines = new ArrayList<Line>();
        double factor = unit.to(Unit.PPM, 1);
        var times = factor == 1 ? "" : "·" + Say.number(factor);
        var input = Input.typed("printed", value, unit);
        for (var form : Form.values()) {
            var formula = form == as
                    ? "printed" + times
                    : "printed%s·%s / %s".formatted(times, Say.number(form.molarMass), Say.number(as.molarMass));
            lines.add(Line.of(form.symbol, formula, ppm(form), Unit.PPM, MOLAR_MASSES, input));
        }
        return lines;
    }
}
