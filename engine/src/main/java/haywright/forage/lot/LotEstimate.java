package haywright.forage.lot;

import haywright.chance.ChiSquare;
import haywright.forage.Analyte;
import haywright.forage.Marginal;
import haywright.forage.Say;
import haywright.forage.book.Prior;
import haywright.forage.lab.Issue;
import haywright.forage.lab.Tested;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * A lot's composition and how far to trust it: what its kind is likely made of, moved by what was measured.
 *
 * <p>On the scale of each analyte's bell the lot's truth θ is N(μ, Σ) before, and a report gives y = Hθ + e. e has one
 * part for each composite, one for each laboratory and method, and one for each result; all three are carried as the
 * covariance of e, which gives the same as carrying them as unknowns. A core with more leaf has more protein and less
 * fiber at once, so the sampling error of a composite goes together between analytes as lots do (judgment); a
 * laboratory's errors do not. The order of the reports plays no part.
 *
 * @param estimates one for each analyte that the kind knows, TDN apart
 * @param theta what is known of θ after the reports, on the scales of the kind's cells
 * @param issues reports so far from the kind that class, column or lot may be wrong
 * @param notes which figures were no measurement, and why
 */
public record LotEstimate(
        Prior prior,
        List<Tested> tested,
        List<Estimate> estimates,
        Theta theta,
        List<Issue> issues,
        List<String> notes) {
    /** A report this unlikely is asked about: one in a thousand of its kind. */
    private static final double ASKED_ABOUT = 0.999;

    /**
     * One analyte.
     *
     * @param measured how many results of it there are
     * @param lot of the variance that is left, what comes from lots of a kind differing
     * @param sampling what comes from a sample not being the lot
     * @param laboratory what comes from the laboratory
     * @param below the least limit that a report found it to be under; null where none did, or a figure was measured
     */
    public record Estimate(
            Prior.Cell cell,
            Marginal now,
            int measured,
            double lot,
            double sampling,
            double laboratory,
            @Nullable Double below) {
        public Analyte analyte() {
            return cell.analyte();
        }

        public Marginal before() {
            return cell.marginal();
        }

        public double lotShare() {
            return lot / (lot + sampling + laboratory);
        }

        public double samplingShare() {
            return sampling / (lot + sampling + laboratory);
        }

        public double laboratoryShare() {
            return laboratory / (lot + sampling + laboratory);
        }
    }

    /** @param tested none for a lot that was never tested: then its kind speaks alone, visibly wide */
    public static LotEstimate of(Prior prior, List<Tested> tested) {
        var notes = new ArrayList<String>();
        var all = Seen.of(prior, tested, notes);
        var issues = new ArrayList<Issue>();
        for (var one : tested) {
            farFromItsKind(prior, Seen.of(prior, List.of(one.measuredOnly()), new ArrayList<>()))
                    .ifPresent(issues::add);
        }
        var told = all.given(prior);
        var estimates = new ArrayList<Estimate>();
        for (int i = 0; i < prior.cells().size(); i++) {
            var cell = prior.cells().get(i);
            if (cell.analyte() == Analyte.TDN) {
                continue;
            }
            int index = i;
            int measured = (int) all.results().stream()
                    .filter(r -> r.index() == index && !r.limit())
                    .count();
            double lot = told.fromItself(i, i);
            double sampling = told.fromError(i, i, all.sampling());
            double laboratory = told.fromError(i, i, all.fromLaboratory());
            estimates.add(new Estimate(
                    cell,
                    Marginal.ofScale(
                            told.mean(i),
                            Math.sqrt(lot + sampling + laboratory),
                            cell.marginal().log()),
                    measured,
                    lot,
                    sampling,
                    laboratory,
                    measured > 0 ? null : least(tested, cell.analyte())));
        }
        return new LotEstimate(prior, List.copyOf(tested), estimates, all.theta(told), issues, notes);
    }

    public LotEstimate {
        estimates = List.copyOf(estimates);
        issues = List.copyOf(issues);
        notes = List.copyOf(notes);
    }

    /**
     * What one more report would likely read.
     *
     * @param like how it would be taken and by whom; its values say what is tested and about where they lie
     */
    public NextReport next(Tested like) {
        return Seen.next(prior, tested, like.measuredOnly());
    }

    /** What one result alone says: its value, as far as it can be trusted. */
    public Marginal alone(Tested one, Analyte analyte) {
        var value = one.values().get(analyte);
        if (value == null) {
            throw new IllegalArgumentException("the report does not have " + analyte);
        }
        var error = ResultError.of(prior, analyte, one);
        boolean log = prior.cells().get(prior.index(analyte)).marginal().log();
        return new Marginal(value, Math.sqrt(error.sampling() + error.laboratory()), log);
    }

    public Optional<Estimate> estimate(Analyte analyte) {
        return estimates.stream().filter(e -> e.analyte() == analyte).findFirst();
    }

    /** As {@link #estimate}, and TDN with it where the kind has it among its cells. */
    Estimate of(Analyte analyte) {
        int i = prior.index(analyte);
        var cell = prior.cells().get(i);
        return estimate(analyte)
                .orElseGet(() -> new Estimate(
                        cell,
                        Marginal.ofScale(
                                theta.mean(i), theta.sd(i), cell.marginal().log()),
                        0,
                        theta.covariance(i, i),
                        0,
                        0,
                        null));
    }

    private static @Nullable Double least(List<Tested> tested, Analyte analyte) {
        return tested.stream()
                .map(one -> one.below().get(analyte))
                .filter(Objects::nonNull)
                .min(Double::compare)
                .orElse(null);
    }

    /** Whether anything was measured that could be weighed. */
    boolean isMoved() {
        return estimates.stream().anyMatch(e -> e.measured() > 0);
    }

    /** By the equations alone, as {@link #derivedBefore(OptionalDouble, long)}. */
    public List<Derived> derivedBefore(long seed) {
        return derivedBefore(OptionalDouble.empty(), seed);
    }

    /**
     * TDN, net energy and feed value, before any report.
     *
     * @param tdn as the feed book prints it; empty where the equation's own stands
     * @param seed the same seed gives the same figures
     */
    public List<Derived> derivedBefore(OptionalDouble tdn, long seed) {
        return Derived.of(LotDistribution.byEquations(prior, new Theta(prior.gaussian()), tdn, Optional.empty()), seed);
    }

    /**
     * TDN, net energy and feed value as they are known now, by the equations alone.
     *
     * @param seed the same seed gives the same figures
     */
    public List<Derived> derived(long seed) {
        return Derived.of(LotDistribution.byEquations(prior, theta, OptionalDouble.empty(), Optional.empty()), seed);
    }

    /** How the figures were weighed together. */
    public Worked weighing() {
        var seen = Seen.of(prior, tested, new ArrayList<>());
        return new Weighing(prior, seen, seen.given(prior), estimates);
    }

    private static Optional<Issue> farFromItsKind(Prior prior, Seen report) {
        if (report.results().isEmpty()) {
            return Optional.empty();
        }
        var told = report.given(prior);
        double limit = new ChiSquare(report.results().size()).quantile(ASKED_ABOUT);
        if (told.squaredDistance() <= limit) {
            return Optional.empty();
        }
        int most = 0;
        for (int k = 1; k < report.results().size(); k++) {
            most = told.sharedBy(k) > told.sharedBy(most) ? k : most;
        }
        var strange = report.results().get(most);
        var cell = prior.cells().get(strange.index());
        return Optional.of(Issue.warning(
                "far-from-kind",
                cell.analyte(),
                "Fewer than one lot of %s in a thousand looks like this report; most of all for its %s of %s, where such lots have %s to %s nine times in ten"
                        .formatted(
                                prior.words(),
                                cell.analyte().words().toLowerCase(Locale.ROOT),
                                Say.with(strange.value(), cell.analyte().unit()),
                                Say.rounded(cell.marginal().low90(), 2),
                                Say.with(
                                        Math.round(cell.marginal().high90() * 100) / 100.0,
                                        cell.analyte().unit())),
                "Is it another feed, the other column of the report, or the bag of another lot?"));
    }
}
