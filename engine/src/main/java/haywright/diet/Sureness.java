package haywright.diet;

import haywright.chance.Normal;
import haywright.workings.Refused;

/**
 * How surely each need and each danger is to be kept, in percent of the ways that the feeds may be made. At 50 the
 * expected figures count and nothing is added.
 *
 * @param energyPercent of energy rows: reserves buffer what is missed, and condition shows it in time
 * @param othersPercent of protein and minerals
 * @param dangersPercent of what may hurt them; nitrate counts at its upper 90 % already and gets no second margin
 */
public record Sureness(double energyPercent, double othersPercent, double dangersPercent) {
    /** As expected: half the time more, half the time less. */
    public static final Sureness EXPECTED = new Sureness(50, 50, 50);

    /** What is wanted where nobody says otherwise (judgment). */
    public static final Sureness USUAL = new Sureness(75, 90, 99);

    private static final double MOST = 99.9;

    public Sureness {
        for (double percent : new double[] {energyPercent, othersPercent, dangersPercent}) {
            if (!(percent >= 50 && percent <= MOST)) {
                throw new Refused(
                        "sureness",
                        percent + " %",
                        "a ration is made sure from 50 % (what is expected) to " + MOST + " %",
                        "No mix is sure to the last case, and below 50 % it would be planned to fall short.");
            }
        }
    }

    /** Needs surer, or less sure, by a factor on their standard deviations; dangers as they are. */
    public Sureness needs(double factor) {
        return new Sureness(
                Math.min(MOST, part(energyPercent, factor)),
                Math.min(MOST, part(othersPercent, factor)),
                dangersPercent);
    }

    /** The same of everything. */
    public static Sureness of(double percent) {
        return new Sureness(percent, percent, percent);
    }

    /** Part of the way from what is expected to this. @param share of its standard deviations, 0 to 1 */
    public Sureness part(double share) {
        return new Sureness(part(energyPercent, share), part(othersPercent, share), part(dangersPercent, share));
    }

    private static double part(double percent, double share) {
        return share == 1 ? percent : 100 * Normal.cumulative(share * z(percent));
    }

    /** Standard deviations that a row takes off; 0 for what counts no spread. */
    public double z(DietRow row) {
        if (row.law().counted() != Law.Counted.SURE) {
            return 0;
        }
        if (row.kind() == DietRow.Kind.DANGER) {
            return z(dangersPercent);
        }
        return row.id().startsWith("nem") ? energy() : z(othersPercent);
    }

    /** The same of protein and minerals alone, all else as it is expected. */
    public Sureness ofOthers() {
        return new Sureness(EXPECTED.energyPercent, othersPercent, EXPECTED.dangersPercent);
    }

    /** For energy. */
    double energy() {
        return z(energyPercent);
    }

    private static double z(double percent) {
        return percent == 50 ? 0 : Normal.quantile(percent / 100);
    }
}
