package haywright.forage.lot;

import haywright.chance.Below;
import haywright.chance.Conditional;
import haywright.chance.Gaussian;
import haywright.forage.Analyte;
import haywright.forage.book.Prior;
import haywright.forage.lab.Tested;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * The results of all reports on one lot in a row, with the covariance of their errors.
 *
 * @param site of a result that is only known to be less than a limit, the error that its matched value is as if seen with;
 *     0 for a figure
 * @param sampling of the part that comes from sampling
 * @param laboratory of the part that comes from the laboratory
 */
record Seen(List<Result> results, double[] site, double[][] sampling, double[][] laboratory) {
    /**
     * @param index where its analyte stands in the prior
     * @param value as measured; of a limit what stands for it, once it is matched
     * @param limit whether it is only known to be less
     */
    record Result(
            int index, Analyte analyte, double value, int report, Tested tested, ResultError error, boolean limit) {
        private boolean sharesSample(Result other) {
            return report == other.report
                    || !tested.composite().isBlank() && tested.composite().equals(other.tested.composite());
        }

        /** The same for all results of one laboratory by one method; reports without a laboratory count as of one. */
        Shared bias() {
            return new Shared(
                    "bias",
                    String.join(
                            "|",
                            tested.laboratory().strip().toLowerCase(Locale.ROOT),
                            tested.method(analyte).name().toLowerCase(Locale.ROOT),
                            analyte.id()));
        }
    }

    static Seen of(Prior prior, List<Tested> tested, List<String> notes) {
        var results = new ArrayList<Result>();
        for (int report = 0; report < tested.size(); report++) {
            var one = tested.get(report);
            for (var entry : one.values().entrySet()) {
                var analyte = entry.getKey();
                int index = prior.index(analyte);
                double value = entry.getValue();
                if (index < 0) {
                    continue;
                }
                if (!ResultError.isMeasurement(analyte, one.method(analyte))) {
                    notes.add("Nitrate by NIR is left out: it takes chemistry to find it.");
                } else if (!ResultError.isKnown(prior, analyte)) {
                    notes.add("%s is left out: nobody says how far one sample of %s lies from the lot in it."
                            .formatted(analyte.words(), prior.words()));
                } else if (prior.cells().get(index).marginal().log() && value <= 0) {
                    notes.add("%s of 0 is left out: it means less than the laboratory can find, not how much less."
                            .formatted(analyte.words()));
                } else {
                    results.add(
                            new Result(index, analyte, value, report, one, ResultError.of(prior, analyte, one), false));
                }
            }
        }
        for (int report = 0; report < tested.size(); report++) {
            var one = tested.get(report);
            for (var entry : one.below().entrySet()) {
                int index = prior.index(entry.getKey());
                if (index >= 0
                        && entry.getValue() > 0
                        && ResultError.isMeasurement(entry.getKey(), one.method(entry.getKey()))
                        && ResultError.isKnown(prior, entry.getKey())) {
                    var error = ResultError.of(prior, entry.getKey(), one);
                    results.add(new Result(index, entry.getKey(), entry.getValue(), report, one, error, true));
                }
            }
        }
        return of(prior, results);
    }

    private static Seen of(Prior prior, List<Result> results) {
        int n = results.size();
        var sampling = new double[n][n];
        var laboratory = new double[n][n];
        for (int k = 0; k < n; k++) {
            for (int l = 0; l < n; l++) {
                var a = results.get(k);
                var b = results.get(l);
                if (a.sharesSample(b)) {
                    sampling[k][l] =
                            prior.correlation(a.index, b.index) * Math.sqrt(a.error.sampling() * b.error.sampling());
                }
                if (a.bias().equals(b.bias())) {
                    laboratory[k][l] = Math.sqrt(a.error.bias() * b.error.bias()) + (k == l ? a.error.repeat() : 0);
                }
            }
        }
        return new Seen(results, new double[n], sampling, laboratory).matched(prior);
    }

    /**
     * What the figures of one more report would likely read, each on the scale of its bell, given all that was seen
     * before: how lots of the kind lie, the errors of sampling and laboratory, and what its results share with those
     * before. What was only less than a limit before stands as it was matched then.
     *
     * @param next whose values say what is asked for and about where they lie; no limits
     */
    static NextReport next(Prior prior, List<Tested> tested, Tested next) {
        var before = of(prior, tested, new ArrayList<>());
        var all = new ArrayList<>(tested);
        all.add(next);
        var with = of(prior, all, new ArrayList<>());
        var errors = with.errors();
        int n = errors.length;
        var mean = new double[n];
        for (int k = 0; k < n; k++) {
            mean[k] = prior.gaussian().mean(with.results.get(k).index);
            for (int l = 0; l < n; l++) {
                errors[k][l] += prior.gaussian().covariance(with.results.get(k).index, with.results.get(l).index);
            }
        }
        var isNew = IntStream.range(0, n)
                .filter(k -> with.results.get(k).report == tested.size())
                .toArray();
        var wasSeen = IntStream.range(0, n)
                .filter(k -> with.results.get(k).report < tested.size())
                .toArray();
        var values = new double[wasSeen.length];
        var open = new double[wasSeen.length][wasSeen.length];
        for (int k = 0; k < values.length; k++) {
            values[k] = before.onScale(prior, k);
            open[k][k] = before.site[k];
        }
        // of what was seen itself nothing is open any more, so it is no part of what is left
        var told = new Conditional(new Gaussian(mean, errors), wasSeen, values, open);
        var covariance = new double[isNew.length][isNew.length];
        for (int k = 0; k < isNew.length; k++) {
            for (int l = 0; l < isNew.length; l++) {
                covariance[k][l] = told.fromItself(isNew[k], isNew[l]) + told.fromError(isNew[k], isNew[l], open);
            }
        }
        return new NextReport(
                IntStream.of(isNew).mapToObj(k -> with.results.get(k).analyte).toList(),
                IntStream.of(isNew)
                        .mapToObj(k -> prior.cells()
                                .get(with.results.get(k).index)
                                .marginal()
                                .log())
                        .toList(),
                new Gaussian(IntStream.of(isNew).mapToDouble(told::mean).toArray(), covariance));
    }

    /** With every limit in place of the value that has its first two moments. */
    private Seen matched(Prior prior) {
        var limits = IntStream.range(0, results.size())
                .filter(k -> results.get(k).limit)
                .toArray();
        if (limits.length == 0) {
            return this;
        }
        var figures = IntStream.range(0, results.size())
                .filter(k -> !results.get(k).limit)
                .toArray();
        var errors = errors();
        var mean = new double[results.size()];
        var covariance = new double[results.size()][results.size()];
        for (int k = 0; k < mean.length; k++) {
            mean[k] = prior.gaussian().mean(results.get(k).index);
            for (int l = 0; l < mean.length; l++) {
                covariance[k][l] =
                        prior.gaussian().covariance(results.get(k).index, results.get(l).index) + errors[k][l];
            }
        }
        var seen = new Conditional(
                new Gaussian(mean, covariance),
                figures,
                IntStream.of(figures).mapToDouble(k -> onScale(prior, k)).toArray(),
                new double[figures.length][figures.length]);
        var before = new double[limits.length];
        var between = new double[limits.length][limits.length];
        for (int i = 0; i < limits.length; i++) {
            before[i] = seen.mean(limits[i]);
            for (int j = 0; j < limits.length; j++) {
                between[i][j] = seen.fromItself(limits[i], limits[j]);
            }
        }
        var below = new Below(
                new Gaussian(before, between),
                IntStream.of(limits).mapToDouble(k -> onScale(prior, k)).toArray());
        var matched = new ArrayList<>(results);
        var site = new double[results.size()];
        for (int i = 0; i < limits.length; i++) {
            var one = results.get(limits[i]);
            boolean log = prior.cells().get(one.index).marginal().log();
            double value = log ? StrictMath.exp(below.value(i)) : below.value(i);
            matched.set(limits[i], new Result(one.index, one.analyte, value, one.report, one.tested, one.error, true));
            site[limits[i]] = below.variance(i);
        }
        return new Seen(matched, site, sampling, laboratory);
    }

    private double onScale(Prior prior, int k) {
        var result = results.get(k);
        return prior.cells().get(result.index).marginal().onScale(result.value);
    }

    /** Of sampling and laboratory, without what a limit leaves open. */
    private double[][] errors() {
        int n = results.size();
        var errors = new double[n][n];
        for (int k = 0; k < n; k++) {
            for (int l = 0; l < n; l++) {
                errors[k][l] = sampling[k][l] + laboratory[k][l];
            }
        }
        return errors;
    }

    /** What a limit leaves open, as an error: it comes from the laboratory. */
    double[][] fromLaboratory() {
        var with = new double[site.length][];
        for (int k = 0; k < site.length; k++) {
            with[k] = laboratory[k].clone();
            with[k][k] += site[k];
        }
        return with;
    }

    Conditional given(Prior prior) {
        int n = results.size();
        var which = new int[n];
        var values = new double[n];
        var noise = errors();
        for (int k = 0; k < n; k++) {
            which[k] = results.get(k).index;
            values[k] = onScale(prior, k);
            noise[k][k] += site[k];
        }
        return new Conditional(prior.gaussian(), which, values, noise);
    }

    /** What is known of θ: what a laboratory's results by one method share is kept apart from what is the lot's own. */
    Theta theta(Conditional told) {
        int n = results.size();
        var own = new double[n][n];
        var shared = new TreeMap<Shared, double[]>();
        int size = told.size();
        for (int k = 0; k < n; k++) {
            own[k] = sampling[k].clone();
            var one = results.get(k);
            own[k][k] += one.error.repeat() + site[k];
            var moves = shared.computeIfAbsent(one.bias(), b -> new double[size]);
            for (int i = 0; i < size; i++) {
                moves[i] += told.gain(i, k) * Math.sqrt(one.error.bias());
            }
        }
        return new Theta(told.posterior(own), shared);
    }
}
