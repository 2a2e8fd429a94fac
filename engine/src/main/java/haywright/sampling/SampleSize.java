package haywright.sampling;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How many units, cores and analyses: every rule's answer side by side.
 *
 * <pre>
 * R  = (d² − z²·Vl/k)/t²               variance left for the sampling itself
 * n0 = (Vb + Vw/c) / (R + Vb/N)        units needed, before rounding up; without Vb/N where N is unknown
 * c0 = sqrt(Cu·Vw / (Cc·Vb))           cores a unit that cost least
 * </pre>
 *
 * The cheapest design starts from c0 and is then searched exactly over c and k.
 *
 * @param lotUnits units in the lot, N; 0 where they cannot be counted
 * @param halfWidth the half-width wanted, d, in the analyte's unit (percent of the value where the spread is)
 */
public record SampleSize(
        Material material, int lotUnits, Spread spread, double halfWidth, double confidencePercent, Costs costs)
        implements Worked {
    private static final int MOST_ANALYSES = 8;
    private static final int MOST_INCREMENTS = 20;
    /** Where units cannot be counted, more than this is no longer one person's day. */
    private static final int MOST_UNITS = 400;

    private static final int FEWEST_BALES =
            Integer.parseInt(PublishedRule.named("R083").low());

    /** Of 1 to 4 bags. */
    private static final int FEWEST_FROM_BAGS = 5;

    private static final Source FORMULA =
            new Source("the variance of a composite's mean, solved for n", Source.Known.ARITHMETIC);

    public SampleSize {
        if (!(halfWidth > 0 && Double.isFinite(halfWidth))) {
            throw new Refused(
                    "halfWidth",
                    String.valueOf(halfWidth),
                    "plus or minus is above 0",
                    "Half a point of protein is usual.");
        }
        if (lotUnits < 0 || lotUnits > Design.MOST_UNITS) {
            throw new Refused(
                    "units",
                    String.valueOf(lotUnits),
                    "a lot has at least 1 and at most " + Design.MOST_UNITS + " " + material.units(),
                    "Enter how many, or leave it out if they can't be counted.");
        }
    }

    /** Every rule that means something for this material, the default first. */
    public List<Choice> sideBySide() {
        var all = new ArrayList<Choice>();
        if (material.isCounted()) {
            all.add(of(Rule.TWENTY_CORES));
            if (lotUnits > 0) {
                all.add(of(Rule.TEN_PERCENT));
            }
        } else {
            all.add(of(Rule.PUBLISHED));
        }
        all.add(of(Rule.CHEAPEST));
        return List.copyOf(all);
    }

    public Choice of(Rule rule) {
        return switch (rule) {
            case TEN_PERCENT -> tenPercent();
            case TWENTY_CORES -> twentyCores();
            case NITRATE_SHARE -> nitrateShare();
            case PUBLISHED -> published();
            case CHEAPEST -> cheapest();
        };
    }

    private Choice tenPercent() {
        if (!material.isCounted() || lotUnits == 0) {
            throw new Refused(
                    "rule",
                    Rule.TEN_PERCENT.words(),
                    "ten percent needs a count of bales; " + material.words() + " has none",
                    "Enter how many bales, or choose another rule.");
        }
        int n = Math.max((lotUnits + 9) / 10, Math.min(10, lotUnits));
        int c = (int) material.takeIfAny("increments_ten_percent").orElse(1);
        return choice(
                Rule.TEN_PERCENT,
                Design.of(n, c, 1),
                "A tenth of the bales, at least ten, or all of fewer"
                        + (c > 1 ? "; " + c + " cores each, as commonly done." : "."),
                Source.read(PublishedRule.named("R010").source().cite() + "; floor of ten: common practice"));
    }

    private Choice nitrateShare() {
        if (!material.isCounted()) {
            throw new Refused(
                    "rule",
                    Rule.NITRATE_SHARE.words(),
                    "a share of the bales needs bales; %s is not counted in bales".formatted(material.words()),
                    "Choose another rule.");
        }
        int n = lotUnits == 0 ? 20 : Math.max((lotUnits + 4) / 5, Math.min(12, lotUnits));
        return choice(
                Rule.NITRATE_SHARE,
                Design.of(n, 1, 1),
                "A fifth of the bales, at least 12, or all of fewer: nitrate differs more between bales than"
                        + " protein does. The same source says up to two fifths"
                        + (lotUnits == 0 ? "." : ", here %d %s.".formatted((2 * lotUnits + 4) / 5, material.units())),
                Source.read(PublishedRule.named("R080").source().cite() + "; "
                        + PublishedRule.named("R081").source().cite()));
    }

    private Choice twentyCores() {
        int n = lotUnits == 0 ? 20 : Math.min(20, lotUnits);
        int c = (20 + n - 1) / n;
        return choice(
                Rule.TWENTY_CORES,
                Design.of(n, c, 1),
                c == 1
                        ? "One core each from 20 " + material.units() + ": the same 20 cores from more "
                                + material.units() + " tell more than more cores in fewer."
                        : "All " + n + " " + material.units() + ", " + c + " cores each, to make at least 20.",
                PublishedRule.named("R005").source());
    }

    private Choice published() {
        int usual = (int) material.take("usual_units");
        int n = lotUnits == 0 ? usual : Math.min(usual, lotUnits);
        int c = (int) material.take("usual_increments");
        if (material == Material.BAGGED_FEED) {
            return choice(
                    Rule.PUBLISHED,
                    Design.of(n, Math.max(c, (FEWEST_FROM_BAGS + n - 1) / n), 1),
                    "All of ten bags or fewer, ten of more; with few bags, enough from each that five come"
                            + " together.",
                    PublishedRule.named(n < usual ? "R055" : "R056").source());
        }
        return choice(
                Rule.PUBLISHED,
                Design.of(n, c, 1),
                "The upper end of the published counts for this material.",
                material.method().source());
    }

    private Choice cheapest() {
        var best = Optional.<Design>empty();
        for (int k = 1; k <= MOST_ANALYSES; k++) {
            for (int c = 1;
                    c <= Math.max(MOST_INCREMENTS, (int) Math.ceil(Math.min(1000, cheapestIncrements())));
                    c++) {
                var n = unitsFor(c, k);
                if (n.isPresent()) {
                    var design = Design.of(n.get(), c, k);
                    if (best.isEmpty() || costs.of(design) < costs.of(best.get())) {
                        best = Optional.of(design);
                    }
                }
            }
        }
        return best.map(design -> choice(
                        Rule.CHEAPEST,
                        design,
                        "The cheapest numbers of %s, cores and analyses for the accuracy asked for%s; time at $%.0f an hour, an analysis at $%.0f."
                                .formatted(
                                        material.units(),
                                        material.isCounted()
                                                ? ", from six %s or more, the fewest published"
                                                        .formatted(material.units())
                                                : "",
                                        60 * Costs.USD_PER_MINUTE,
                                        costs.perAnalysis()),
                        costs.source()))
                .orElseGet(this::widest);
    }

    private Choice widest() {
        int all = lotUnits == 0 ? MOST_UNITS : lotUnits;
        return choice(
                Rule.CHEAPEST,
                Design.of(all, 1, MOST_ANALYSES),
                "Not even " + all + " " + (all == 1 ? material.unit() : material.units()) + ", " + MOST_INCREMENTS
                        + " from each, and " + MOST_ANALYSES
                        + " analyses are accurate enough. Ask for a wider plus or minus.",
                spread.source());
    }

    private Choice choice(Rule rule, Design design, String why, Source source) {
        var precision = new Precision(spread, design, lotUnits, confidencePercent);
        // The search solves for n; the comparison must not fail on its last digit.
        boolean reached = precision.halfWidth() <= halfWidth * (1 + 1e-12);
        return new Choice(rule, design, precision, costs.of(design), reached, why, source);
    }

    /** c0; 1 where units differ and cores do not, and without end where it is the other way round. */
    double cheapestIncrements() {
        return spread.within() == 0
                ? 1
                : Math.sqrt(costs.perUnit() * spread.within() / (costs.perIncrement() * spread.between()));
    }

    private Optional<Integer> unitsFor(int c, int k) {
        double left = left(k);
        double denominator = left + (lotUnits == 0 ? 0 : spread.between() / lotUnits);
        if (left < 0 || denominator <= 0) {
            return Optional.empty();
        }
        int most = lotUnits == 0 ? MOST_UNITS : lotUnits;
        double needed = (spread.between() + spread.within() / c) / denominator;
        int n = Math.max(fewest(), (int) Math.ceil(needed * (1 - 1e-12)));
        return n <= most ? Optional.of(n) : Optional.empty();
    }

    /** However alike a few cores were, no published rule stops at fewer bales. */
    private int fewest() {
        return !material.isCounted() ? 1 : lotUnits == 0 ? FEWEST_BALES : Math.min(FEWEST_BALES, lotUnits);
    }

    private double left(int k) {
        double z = Precision.normal(confidencePercent);
        double t = Precision.estimated(spread, confidencePercent);
        return (halfWidth * halfWidth - z * z * spread.laboratory() / k) / (t * t);
    }

    /** The workings of the cheapest answer. */
    @Override
    public List<Line> lines() {
        var answer = cheapest();
        int k = answer.design().analyses();
        int c = answer.design().increments();
        double left = left(k);
        double denominator = left + (lotUnits == 0 ? 0 : spread.between() / lotUnits);
        var from = new Origin.Published(spread.source());
        var d = Input.typed("d", halfWidth, Unit.NONE);
        var lines = new ArrayList<Line>();
        lines.add(Line.of(
                "R",
                "(d^2 − z^2·Vl/k)/t^2",
                left,
                Unit.NONE,
                FORMULA,
                d,
                Input.computed("z", Precision.normal(confidencePercent), Unit.NONE, answer.precision()),
                Input.computed("t", Precision.estimated(spread, confidencePercent), Unit.NONE, answer.precision()),
                new Input("Vl", spread.laboratory(), Unit.NONE, from),
                Input.typed("k", k, Unit.NONE)));
        if (left > 0 && denominator > 0) {
            var between = new Input("Vb", spread.between(), Unit.NONE, from);
            var within = new Input("Vw", spread.within(), Unit.NONE, from);
            double needed = (spread.between() + spread.within() / c) / denominator;
            var cores = Input.typed("c", c, Unit.NONE);
            lines.add(
                    lotUnits == 0
                            ? Line.of("n0", "(Vb + Vw/c)/R", needed, Unit.NONE, FORMULA, between, within, cores)
                            : Line.of(
                                    "n0",
                                    "(Vb + Vw/c)/(R + Vb/N)",
                                    needed,
                                    Unit.NONE,
                                    FORMULA,
                                    between,
                                    within,
                                    cores,
                                    Input.typed("N", lotUnits, Unit.NONE)));
        }
        lines.addAll(answer.precision().lines());
        return List.copyOf(lines);
    }
}
