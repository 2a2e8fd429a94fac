package haywright.season.given;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * What a plan may expect of the weather, from a record without the winter that is played.
 * <pre>
 * need(t) = mean(t) + φ^(t − now + 1)·z·sd(t) + h·Cov(need(t), S) / sd(S)
 * </pre>
 * S is what all groups need together from now to grass, z how many standard deviations the last week's need of all lay
 * above its mean, φ the correlation of one week with the next. So h is hardness on the whole sum: a quantile in each week
 * would be a winter that comes once in hundreds of years.
 */
public final class Forecast {
    private static final int FEWEST = 3;

    private final Season season;
    private final int weeks;
    /** Mcal a head and day, and factor on intake, by group and week. */
    private final double[][] mean;

    private final double[][] factor;
    private final double[][] sd;
    /** By first week, group and week. */
    private final double[][][] hardness;

    private final double[][][] hardFactor;
    private final double[] herdMean;
    private final double[] herdSd;
    private final double persistence;
    private final double lateMean;
    private final double lateSd;

    /** @param without the winter that is not in it; −1 for all */
    public Forecast(Season season, int without) {
        this.season = season;
        var record = season.record();
        int[] of = IntStream.range(0, record.size()).filter(w -> w != without).toArray();
        weeks = season.allWeeks();
        int eaters = season.eaters().size();
        mean = new double[eaters][weeks];
        factor = new double[eaters][weeks];
        sd = new double[eaters][weeks];
        hardness = new double[weeks][eaters][weeks];
        hardFactor = new double[weeks][eaters][weeks];
        herdMean = new double[weeks];
        herdSd = new double[weeks];
        if (of.length < FEWEST) {
            usual();
            persistence = 0;
            lateMean = 0;
            lateSd = 0;
            return;
        }
        for (int e = 0; e < eaters; e++) {
            for (int t = 0; t < weeks; t++) {
                for (int w : of) {
                    mean[e][t] += record.need(w, e, t).nem() / of.length;
                    factor[e][t] += record.need(w, e, t).factor() / of.length;
                }
                for (int w : of) {
                    sd[e][t] += Math.pow(record.need(w, e, t).nem() - mean[e][t], 2);
                }
                sd[e][t] = Math.sqrt(sd[e][t] / of.length);
            }
        }
        var herd = new double[of.length][weeks];
        for (int i = 0; i < of.length; i++) {
            for (int t = 0; t < weeks; t++) {
                herd[i][t] = herd(of[i], t);
                herdMean[t] += herd[i][t] / of.length;
            }
        }
        for (int t = 0; t < weeks; t++) {
            for (var one : herd) {
                herdSd[t] += Math.pow(one[t] - herdMean[t], 2) / of.length;
            }
            herdSd[t] = Math.sqrt(herdSd[t]);
        }
        persistence = persistence(herd);
        for (int from = 0; from < season.weeks(); from++) {
            harden(from, of, herd);
        }
        var late = record.lateness(without);
        lateMean = late[0];
        lateSd = late[1];
    }

    private void usual() {
        for (int e = 0; e < mean.length; e++) {
            for (int t = 0; t < weeks; t++) {
                var stage = season.eaters().get(e).stages().get(t);
                mean[e][t] = stage.nem();
                factor[e][t] = stage.factor();
                herdMean[t] += season.eaters().get(e).head() * stage.nem();
            }
        }
    }

    /** Mcal a day of all head in one winter. */
    private double herd(int winter, int week) {
        double sum = 0;
        for (int e = 0; e < season.eaters().size(); e++) {
            sum += season.eaters().get(e).head()
                    * season.record().need(winter, e, week).nem();
        }
        return sum;
    }

    private double persistence(double[][] herd) {
        double both = 0;
        double one = 0;
        for (var winter : herd) {
            for (int t = 1; t < season.weeks(); t++) {
                if (herdSd[t] > 0 && herdSd[t - 1] > 0) {
                    double before = (winter[t - 1] - herdMean[t - 1]) / herdSd[t - 1];
                    both += before * (winter[t] - herdMean[t]) / herdSd[t];
                    one += before * before;
                }
            }
        }
        return one > 0 ? Math.max(0, Math.min(0.9, both / one)) : 0;
    }

    private void harden(int from, int[] of, double[][] herd) {
        var sums = new double[of.length];
        for (int i = 0; i < sums.length; i++) {
            for (int t = from; t < season.weeks(); t++) {
                sums[i] += herd[i][t] - herdMean[t];
            }
        }
        double spread = Math.sqrt(Arrays.stream(sums).map(s -> s * s).sum() / sums.length);
        if (spread == 0) {
            return;
        }
        var record = season.record();
        for (int e = 0; e < mean.length; e++) {
            for (int t = from; t < weeks; t++) {
                double nem = 0;
                double eats = 0;
                for (int i = 0; i < sums.length; i++) {
                    nem += sums[i] * (record.need(of[i], e, t).nem() - mean[e][t]);
                    eats += sums[i] * (record.need(of[i], e, t).factor() - factor[e][t]);
                }
                hardness[from][e][t] = nem / sums.length / spread;
                hardFactor[from][e][t] = eats / sums.length / spread;
            }
        }
    }

    /** Standard deviations by which a week of one winter lay above what is usual then. */
    public double departs(int winter, int week) {
        return herdSd[week] > 0 ? (herd(winter, week) - herdMean[week]) / herdSd[week] : 0;
    }

    /** Standard deviations by which a winter's needs up to a week were harder than usual, from one week alone to all. */
    public double hardSoFar(int winter, int to) {
        double departs = 0;
        double variance = 0;
        for (int t = 0; t < Math.min(to, season.weeks()); t++) {
            departs += herd(winter, t) - herdMean[t];
            variance += herdSd[t] * herdSd[t];
        }
        // weeks that go together make sums spread by more than weeks that do not
        double together = (1 + persistence) / (1 - persistence);
        return variance > 0 ? departs / Math.sqrt(variance * together) : 0;
    }

    /**
     * @param now the week that is planned first
     * @param departed standard deviations of the week before
     * @param h hardness
     */
    public double nem(int eater, int week, int now, double departed, double h) {
        return mean[eater][week]
                + Math.pow(persistence, week - now + 1) * departed * sd[eater][week]
                + h * hardness[Math.min(now, weeks - 1)][eater][week];
    }

    public double factor(int eater, int week, int now, double h) {
        return factor[eater][week] + h * hardFactor[Math.min(now, weeks - 1)][eater][week];
    }

    /** Days that grass is planned to come late. @param atLeast what is seen already */
    public double late(double h, int atLeast) {
        double planned = Math.max(0, lateMean + h * lateSd);
        return Math.min(Facts.value("latest_days"), Math.max(planned, atLeast));
    }
}
