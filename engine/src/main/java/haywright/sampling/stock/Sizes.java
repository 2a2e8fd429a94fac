package haywright.sampling.stock;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Rules for what can be measured of a stock, and the lines its kinds share. */
final class Sizes {
    /** Rows, bales in a row or tiers of any stack. */
    static final int MOST_ALONG = 10_000;

    /** Kilograms a cubic meter of dry matter; above it silage would be denser than its own plants pressed dry. */
    private static final double MOST_DENSE = 800;

    private Sizes() {}

    /** Every one a length above 0. */
    static void lengths(List<String> fields, List<Quantity> lengths) {
        var problems = new ArrayList<Problem>();
        for (int i = 0; i < fields.size(); i++) {
            Refused.unlessOfKind(Kind.LENGTH, fields.get(i), lengths.get(i));
            positive(fields.get(i), lengths.get(i), "it has a length, a width and a height", "Pace it out.", problems);
        }
        Refused.unlessEmpty(problems);
    }

    /** Dry matter from volume and density, then as fed: what is stored there is heavier by its water. */
    static List<Line> packed(Line volume, Quantity density, double dryMatterPercent) {
        double dryMatter = volume.value() * density.base();
        return List.of(
                volume,
                Line.of(
                        "drymatter",
                        "volume·density",
                        dryMatter,
                        Unit.KILOGRAM,
                        Source.ARITHMETIC,
                        typed("density", density, Unit.KG_PER_M3)),
                Line.of(
                        "mass",
                        "drymatter·100/dm",
                        dryMatter * 100 / dryMatterPercent,
                        Unit.KILOGRAM,
                        Source.ARITHMETIC,
                        Input.typed("dm", dryMatterPercent, Unit.PERCENT)));
    }

    /** So many of them, each of a weight. */
    static Line counted(int count, Input weight) {
        return Line.of(
                "mass",
                "n·w",
                count * weight.value(),
                Unit.KILOGRAM,
                Source.ARITHMETIC,
                Input.typed("n", count, Unit.NONE),
                weight);
    }

    /** In the engine's unit, and saying what was really typed. */
    static Input typed(String symbol, Quantity quantity, Unit base) {
        var as = quantity.unit() == base ? Origin.TYPED : new Origin.Typed("entered as " + quantity.asTyped());
        return new Input(symbol, quantity.base(), base, as);
    }

    static void positive(String field, Quantity size, String rule, String fix, List<Problem> problems) {
        if (!(size.base() > 0)) {
            problems.add(new Problem(field, size.asTyped(), rule, fix));
        }
    }

    static void atLeastOne(String field, @Nullable Integer count, List<Problem> problems) {
        if (count != null && count < 1) {
            problems.add(new Problem(
                    field,
                    count.toString(),
                    "a stack has at least one",
                    "Leave all three empty if it is not stacked."));
        } else if (count != null && count > MOST_ALONG) {
            problems.add(new Problem(
                    field,
                    count.toString(),
                    "no stack has more than " + MOST_ALONG + " of them",
                    "Check for an extra digit."));
        }
    }

    static void silage(Quantity density, double dryMatterPercent, List<Problem> problems) {
        positive(
                "densityDryMatter",
                density,
                "packed silage has a density",
                "14 lb of dry matter per cubic foot is usual.",
                problems);
        if (density.base() > MOST_DENSE) {
            problems.add(new Problem(
                    "densityDryMatter",
                    density.asTyped(),
                    "nothing packs above 50 lb of dry matter per cubic foot",
                    "14 lb of dry matter per cubic foot is usual."));
        }
        dryMatter(dryMatterPercent, problems);
    }

    static void dryMatter(double percent, List<Problem> problems) {
        if (!(percent > 0 && percent <= 100)) {
            problems.add(new Problem(
                    "dryMatterPercent",
                    percent + " %",
                    "dry matter is above 0 and up to 100 %",
                    "Silage is mostly between 25 and 50."));
        }
    }
}
