package haywright.forage.hazard;

import haywright.forage.Percent;
import haywright.quantity.Unit;
import haywright.workings.Caution;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Charges of the minerals against each other. Each answer needs its own minerals; what is given is used.
 *
 * <pre>
 * tetany = K·255.74 / (Ca·499.00 + Mg·822.64)                    ratio of charges, never of percents
 * EB     = Na·434.98 + K·255.74 − Cl·282.06                      mEq per kg of dry matter
 * DCAD   = Na·434.98 + K·255.74 − Cl·282.06 − S·623.75           mEq per kg of dry matter
 * </pre>
 *
 * @param k percent of dry matter, as are the others; null where not known
 * @see "Oetzel 1993, mEq per kg for 1 %, as reprinted in a review of potassium tetany ratios (engormix.com, n13889)"
 */
public record MineralBalance(
        @Nullable Double k,
        @Nullable Double ca,
        @Nullable Double mg,
        @Nullable Double na,
        @Nullable Double cl,
        @Nullable Double s)
        implements Worked {
    static final Source SOURCE = Source.read(
            "Oetzel 1993, mEq per kg for 1 %, as reprinted in a review of potassium tetany ratios (engormix.com, n13889)");

    /** Above this, 6.66 % of 1,908 animals fell ill against 0.77 % of 4,658 below (same review). */
    static final double TETANY_RISK = 2.2;

    public MineralBalance {
        var problems = new ArrayList<Problem>();
        check(problems, "k", "K", k);
        check(problems, "ca", "Ca", ca);
        check(problems, "mg", "Mg", mg);
        check(problems, "na", "Na", na);
        check(problems, "cl", "Cl", cl);
        check(problems, "s", "S", s);
        if (problems.isEmpty()
                && !(k != null && (ca != null && mg != null && ca + mg > 0 || na != null && cl != null))) {
            problems.add(new Problem(
                    "k",
                    "too few minerals",
                    "the tetany ratio needs potassium, calcium and magnesium; the charge balance needs sodium, potassium and "
                            + "chloride, and sulfur with it",
                    "Which of them does the report give?"));
        }
        Refused.unlessEmpty(problems);
    }

    private static void check(List<Problem> problems, String field, String name, @Nullable Double value) {
        if (value != null) {
            Percent.check(problems, field, name, value);
        }
    }

    public OptionalDouble tetanyRatio() {
        return k == null || ca == null || mg == null || ca + mg == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(k * 255.74 / (ca * 499.00 + mg * 822.64));
    }

    public OptionalDouble electrolyteBalance() {
        return na == null || k == null || cl == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(na * 434.98 + k * 255.74 - cl * 282.06);
    }

    public OptionalDouble dcad() {
        return na == null || k == null || cl == null || s == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(na * 434.98 + k * 255.74 - cl * 282.06 - s * 623.75);
    }

    public List<Caution> cautions() {
        return tetanyRatio().orElse(0) <= TETANY_RISK
                ? List.of()
                : List.of(new Caution(
                        "A tetany ratio above 2.2 brought grass tetany, mostly to cows in milk. Ask a veterinarian about "
                                + "magnesium before this is the main feed.",
                        SOURCE));
    }

    @Override
    public List<Line> lines() {
        var lines = new ArrayList<Line>();
        tetanyRatio()
                .ifPresent(ratio -> lines.add(new Line(
                        "tetany",
                        "K·255.74 / (Ca·499.00 + Mg·822.64)",
                        ratio,
                        Unit.NONE,
                        SOURCE,
                        inputs("K", k, "Ca", ca, "Mg", mg))));
        electrolyteBalance()
                .ifPresent(balance -> lines.add(new Line(
                        "EB",
                        "Na·434.98 + K·255.74 − Cl·282.06",
                        balance,
                        Unit.MEQ_PER_KG,
                        SOURCE,
                        inputs("Na", na, "K", k, "Cl", cl))));
        dcad().ifPresent(dcad ->
                lines.add(new Line("DCAD", "EB − S·623.75", dcad, Unit.MEQ_PER_KG, SOURCE, inputs("S", s))));
        return lines;
    }

    /** Symbol and value in turn. */
    private static List<Input> inputs(@Nullable Object... pairs) {
        var inputs = new ArrayList<Input>();
        for (int i = 0; i < pairs.length; i += 2) {
            if (pairs[i] instanceof String symbol && pairs[i + 1] instanceof Double value) {
                inputs.add(Input.typed(symbol, value, Unit.PERCENT));
            }
        }
        return inputs;
    }
}
