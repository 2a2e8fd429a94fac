package haywright.forage;

import haywright.chance.Conditional;
import java.util.ArrayList;
import java.util.List;

/**
 * The results of all reports on one lot in a row, with the covariance of their errors.
 *
 * @param sampling of the part that comes from sampling
 * @param laboratory of the part that comes from the laboratory
 */
record Seen(List<Result> results, double[][] sampling, double[][] laboratory) {
    /** @param index where its analyte stands in the prior */
    record Result(int index, Analyte analyte, double value, int report, Tested tested, ResultError error) {
        private boolean sharesSample(Result other) {
            return report == other.report
                    || !tested.composite().isBlank() && tested.composite().equals(other.tested.composite());
        }

        private boolean sharesBias(Result other) {
            return index == other.index
                    && tested.method(analyte) == other.tested.method(analyte)
                    && tested.laboratory()
                            .strip()
                            .equalsIgnoreCase(other.tested.laboratory().strip());
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
                    results.add(new Result(index, analyte, value, report, one, ResultError.of(prior, analyte, one)));
                }
            }
        }
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
                if (a.sharesBias(b)) {
                    laboratory[k][l] = Math.sqrt(a.error.bias() * b.error.bias()) + (k == l ? a.error.repeat() : 0);
                }
            }
        }
        return new Seen(results, sampling, laboratory);
    }

    Conditional given(Prior prior) {
        int n = results.size();
        var which = new int[n];
        var values = new double[n];
        var noise = new double[n][n];
        for (int k = 0; k < n; k++) {
            var result = results.get(k);
            which[k] = result.index;
            values[k] = prior.cells().get(result.index).marginal().onScale(result.value);
            for (int l = 0; l < n; l++) {
                noise[k][l] = sampling[k][l] + laboratory[k][l];
            }
        }
        return new Conditional(prior.gaussian(), which, values, noise);
    }
}
