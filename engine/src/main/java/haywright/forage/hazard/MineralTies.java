package haywright.forage.hazard;

import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.Say;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Minerals that keep each other from the animal: what ties up copper, what brings grass tetany, calcium against
 * phosphorus. Each is looked at only where its minerals are known. Where the limits in use lie apart, the stricter counts
 * and the other is said.
 *
 * <pre>
 * copper   Cu / Mo below 4 (others 3); Mo above 1 ppm (others 2); S above 0.3 %; Fe above 250 ppm (others 400)
 * tetany   charges of K over those of Ca and Mg above 2.2; Mg below 0.20 %; K above 2.5 % (others 3)
 * Ca / P   from 1 to 7 is borne where phosphorus is enough; 1.5 to 2 is aimed at
 * </pre>
 *
 * All but the ratio of charges is from memory.
 *
 * @param made on dry matter
 * @see MineralBalance
 */
public record MineralTies(Composition made) {
    private static final Source COPPER = Source.memory("limits in use for what ties up copper in cattle");
    private static final Source TETANY = Source.memory("limits in use for grass tetany");
    private static final Source RATIO = Source.memory("calcium to phosphorus that cattle bear");

    /** What is touched. */
    public enum Tie {
        COPPER,
        TETANY,
        CALCIUM
    }

    /**
     * @param words "copper to molybdenum 2.5 to 1, below 4 to 1 (others say 3)"
     * @param clear whether it lies beyond the looser limit too
     */
    public record Finding(Tie tie, String words, boolean clear, Source source) {}

    /** What lies beyond a limit; empty where nothing does or nothing is known. */
    public List<Finding> findings() {
        var findings = new ArrayList<Finding>();
        var copper = made.value(Analyte.CU);
        var molybdenum = made.value(Analyte.MO);
        if (copper.isPresent() && molybdenum.orElse(0) > 0) {
            double ratio = copper.getAsDouble() / molybdenum.getAsDouble();
            if (ratio < 4) {
                findings.add(new Finding(
                        Tie.COPPER,
                        "copper to molybdenum %s to 1, below 4 to 1 (others say 3)".formatted(Say.rounded(ratio, 1)),
                        ratio < 3,
                        COPPER));
            }
        }
        above(findings, Tie.COPPER, Analyte.MO, 1, 2, COPPER);
        above(findings, Tie.COPPER, Analyte.S, 0.3, 0.3, COPPER);
        above(findings, Tie.COPPER, Analyte.FE, 250, 400, COPPER);
        tetanyRatio().ifPresent(ratio -> {
            if (ratio > MineralBalance.TETANY_RISK) {
                findings.add(new Finding(
                        Tie.TETANY,
                        "charges of potassium against calcium and magnesium %s, above 2.2"
                                .formatted(Say.rounded(ratio, 2)),
                        true,
                        MineralBalance.SOURCE));
            }
        });
        made.value(Analyte.MG).ifPresent(mg -> {
            if (mg < 0.20) {
                findings.add(new Finding(
                        Tie.TETANY, "magnesium %s %%, below 0.20 %%".formatted(Say.rounded(mg, 2)), false, TETANY));
            }
        });
        above(findings, Tie.TETANY, Analyte.K, 2.5, 3, TETANY);
        calcium(findings);
        return List.copyOf(findings);
    }

    private void above(List<Finding> findings, Tie tie, Analyte analyte, double strict, double loose, Source source) {
        made.value(analyte).ifPresent(value -> {
            if (value > strict) {
                findings.add(new Finding(
                        tie,
                        "%s %s, above %s%s"
                                .formatted(
                                        analyte.words().toLowerCase(Locale.ROOT),
                                        Say.with(value, analyte.unit()),
                                        Say.with(strict, analyte.unit()),
                                        loose > strict ? " (others say %s)".formatted(Say.number(loose)) : ""),
                        value > loose,
                        source));
            }
        });
    }

    private void calcium(List<Finding> findings) {
        var known = calciumToPhosphorus();
        if (known.isEmpty()) {
            return;
        }
        double ratio = known.getAsDouble();
        if (ratio < 1 || ratio > 7) {
            findings.add(new Finding(
                    Tie.CALCIUM,
                    "calcium to phosphorus %s to 1, %s"
                            .formatted(Say.rounded(ratio, ratio < 1 ? 2 : 1), ratio < 1 ? "below 1" : "above 7"),
                    true,
                    RATIO));
        }
    }

    /** Kilograms of calcium to one of phosphorus; empty where either is not known. */
    public OptionalDouble calciumToPhosphorus() {
        var calcium = made.value(Analyte.CA);
        var phosphorus = made.value(Analyte.P);
        return calcium.isEmpty() || phosphorus.orElse(0) <= 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(calcium.getAsDouble() / phosphorus.getAsDouble());
    }

    /** Charges of potassium to those of calcium and magnesium; empty where one of the three is not known. */
    public OptionalDouble tetanyRatio() {
        var k = made.value(Analyte.K);
        var ca = made.value(Analyte.CA);
        var mg = made.value(Analyte.MG);
        return k.isPresent() && ca.isPresent() && mg.isPresent() && ca.getAsDouble() + mg.getAsDouble() > 0
                ? new MineralBalance(k.getAsDouble(), ca.getAsDouble(), mg.getAsDouble(), null, null, null)
                        .tetanyRatio()
                : OptionalDouble.empty();
    }
}
