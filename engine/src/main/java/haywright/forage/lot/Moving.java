package haywright.forage.lot;

import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.Marginal;
import haywright.forage.Say;
import haywright.workings.Origin;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The figures of a lot moved to where its estimate has them; used once. */
final class Moving {
    /** A figure moved by less than this share of its kind's spread is said to stand as reported. */
    private static final double HARDLY = 0.01;

    private static final double A_LITTLE = 0.15;
    private static final double FAR = 0.5;

    private final LotEstimate lot;
    private final List<Joining.Told> newestFirst;
    private final Making made;

    /** @param made as reports and book say it; moved here */
    Moving(LotEstimate lot, List<Joining.Told> newestFirst, Making made) {
        this.lot = lot;
        this.newestFirst = newestFirst;
        this.made = made;
    }

    void weigh() {
        lot.estimates().forEach(this::weigh);
        if (lot.isMoved()) {
            made.notes.add(
                    "What was measured is weighed with how lots of %s lie: moved as far as its sample can miss the lot and"
                                    .formatted(lot.prior().words())
                            + " the laboratory can miss the sample, and no farther.");
        }
    }

    private void weigh(LotEstimate.Estimate estimate) {
        var analyte = estimate.analyte();
        var said = made.values.get(analyte);
        var now = estimate.now();
        if (analyte == Analyte.NO3N) {
            if (said != null && (estimate.measured() > 0 || estimate.below() != null)) {
                double apart = ResultError.ofOneUnit(lot.prior(), analyte);
                // A composite is the mean of its units, and most units of a skewed spread lie below their mean.
                var unit = Marginal.ofScale(
                        now.onScale(now.center()) - apart / 2, Math.sqrt(now.sd() * now.sd() + apart), now.log());
                made.values.put(analyte, new Composition.Known(said.value(), said.origin(), now, unit, said.below()));
            }
            if (said == null) {
                // before any figure: a report without nitrate must not make a lot look worse in nitrate
                made.expected.put(analyte, estimate.before());
            }
            return; // the nitrate of a lot that nobody tested is not known, whatever its kind usually has
        }
        var below = estimate.below();
        if (below != null) {
            made.values.put(
                    analyte,
                    new Composition.Known(
                            Math.min(now.mean(), below),
                            new Origin.Computed(new Weighed(
                                    lot, analyte, whose(analyte), "says less than " + Say.with(below, analyte.unit()))),
                            now,
                            null,
                            below));
            return;
        }
        boolean leftOut = estimate.measured() == 0 && said != null && isReported(said.origin());
        if (leftOut) {
            return;
        }
        made.values.put(
                analyte,
                said != null && !lot.isMoved()
                        ? new Composition.Known(said.value(), said.origin(), now, null, null)
                        : new Composition.Known(
                                now.mean(), new Origin.Computed(weighed(estimate, said)), now, null, null));
    }

    private static boolean isReported(Origin origin) {
        return !(origin instanceof Origin.Published);
    }

    private Weighed weighed(LotEstimate.Estimate estimate, Composition.@Nullable Known said) {
        var analyte = estimate.analyte();
        var kind = lot.prior().words();
        if (estimate.measured() == 0) {
            return new Weighed(
                    lot,
                    analyte,
                    said == null
                            ? "how lots of %s lie (%s)"
                                    .formatted(kind, estimate.cell().mark())
                            : "feed book",
                    lot.isMoved() ? "moved by what was measured" : "");
        }
        var newest = whose(analyte);
        if (said == null) {
            return new Weighed(lot, analyte, newest, "");
        }
        var says = "says " + Say.with(said.value(), analyte.unit());
        if (estimate.measured() > 1) {
            return new Weighed(
                    lot,
                    analyte,
                    newest,
                    "%s; weighed with %d more and its kind, %s".formatted(says, estimate.measured() - 1, kind));
        }
        return new Weighed(
                lot,
                analyte,
                newest,
                moved(estimate, said.value()).map(says::concat).orElse(""));
    }

    /** The newest report that speaks of it. */
    private String whose(Analyte analyte) {
        return newestFirst.stream()
                .filter(told -> told.readings().stream().anyMatch(r -> r.analyte() == analyte)
                        || told.below().containsKey(analyte))
                .findFirst()
                .orElse(newestFirst.get(0))
                .where();
    }

    /** How far from what was measured, and which way; empty where hardly at all. */
    private Optional<String> moved(LotEstimate.Estimate estimate, double measured) {
        var before = estimate.before();
        double kind = before.onScale(before.center());
        double said = before.onScale(Math.max(measured, Double.MIN_NORMAL));
        double now = estimate.now().onScale(estimate.now().center());
        double far = Math.abs(now - said) / before.sd();
        return far < HARDLY
                ? Optional.empty()
                : Optional.of("; moved %s%s"
                        .formatted(
                                far < A_LITTLE ? "a little " : far > FAR ? "far " : "",
                                (now - said) * (kind - said) > 0
                                        ? "toward its kind, " + lot.prior().words()
                                        : "by its other figures"));
    }
}
