package haywright.forage.lot;

import haywright.chance.Conditional;
import haywright.forage.book.Prior;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * How a lot's estimate was weighed together, analyte by analyte: the kind's own figure, moved by every result as far as
 * its weight allows. On the logarithm where the analyte stands on it.
 */
record Weighing(Prior prior, Seen seen, Conditional told, List<LotEstimate.Estimate> estimates) implements Worked {
    private static final Source WEIGHTS = new Source(
            "weights of correlated results, from their spreads and correlations: K = Σ·Hᵀ·(H·Σ·Hᵀ + R)⁻¹",
            Source.Known.ARITHMETIC);

    private static final Source LIMIT = new Source(
            "what counts for “less than” its limit: the value with the same mean and spread", Source.Known.ARITHMETIC);

    /** A weight below this moves no figure by a digit that is shown. */
    private static final double NOTHING = 1e-9;

    @Override
    public List<Line> lines() {
        var lines = new ArrayList<Line>();
        for (var estimate : estimates) {
            center(estimate, lines);
            spread(estimate, lines);
        }
        return lines;
    }

    private void center(LotEstimate.Estimate estimate, List<Line> lines) {
        int i = prior.index(estimate.analyte());
        var unit = estimate.analyte().unit();
        var formula = new StringBuilder(onScale(estimate.cell(), symbol(estimate.cell()) + "_kind"));
        var inputs = new ArrayList<Input>();
        inputs.add(kind(estimate.cell()));
        for (int k = 0; k < seen.results().size(); k++) {
            if (Math.abs(told.gain(i, k)) < NOTHING) {
                continue; // results that say nothing of this one would bury those that do
            }
            var result = seen.results().get(k);
            var cell = prior.cells().get(result.index());
            var value = symbol(cell) + (result.limit() ? "_below_" : "_report_") + (result.report() + 1);
            var weight = "w_" + symbol(estimate.cell()) + "_by_" + value;
            formula.append(
                    " + %s·(%s − %s)".formatted(weight, onScale(cell, value), onScale(cell, symbol(cell) + "_kind")));
            inputs.add(Input.published(weight, told.gain(i, k), Unit.NONE, WEIGHTS));
            inputs.add(
                    result.limit()
                            ? Input.published(
                                    value, result.value(), cell.analyte().unit(), LIMIT)
                            : Input.typed(value, result.value(), cell.analyte().unit()));
            inputs.add(kind(cell));
        }
        boolean log = estimate.now().log();
        lines.add(new Line(
                symbol(estimate.cell()),
                log ? "exp(" + formula + ")" : formula.toString(),
                estimate.now().center(),
                unit,
                WEIGHTS,
                inputs.stream().distinct().toList()));
    }

    private static void spread(LotEstimate.Estimate estimate, List<Line> lines) {
        var name = symbol(estimate.cell());
        boolean log = estimate.now().log();
        var unit = log ? Unit.NONE : estimate.analyte().unit();
        lines.add(Line.of(
                "s_" + name,
                "sqrt(lot_%1$s + sampling_%1$s + laboratory_%1$s)".formatted(name),
                estimate.now().sd(),
                unit,
                WEIGHTS,
                Input.published(
                        "lot_" + name,
                        estimate.lot(),
                        Unit.NONE,
                        estimate.cell().source()),
                Input.published("sampling_" + name, estimate.sampling(), Unit.NONE, WEIGHTS),
                Input.published("laboratory_" + name, estimate.laboratory(), Unit.NONE, WEIGHTS)));
        if (log) {
            lines.add(Line.of(
                    "mean_" + name,
                    "%1$s·exp(s_%1$s^2 / 2)".formatted(name),
                    estimate.now().mean(),
                    estimate.analyte().unit(),
                    Source.ARITHMETIC));
        }
    }

    private static Input kind(Prior.Cell cell) {
        return Input.published(
                symbol(cell) + "_kind", cell.marginal().center(), cell.analyte().unit(), cell.source());
    }

    private static String onScale(Prior.Cell cell, String symbol) {
        return cell.marginal().log() ? "ln(" + symbol + ")" : symbol;
    }

    private static String symbol(Prior.Cell cell) {
        return cell.analyte().name().toLowerCase(Locale.ROOT);
    }
}
