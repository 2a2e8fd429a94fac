package haywright.season.given;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/** What things cost on the way through a winter: one rule for what plans, what judges and what bounds. */
public final class Prices {
    private static final int MARCH = 3;
    private static final int MIDDLE = 15;
    private static final double MOST = 1.5;
    private static final double HARDEST = 2;

    private final Season season;
    private final double toMarch;

    public Prices(Season season) {
        this.season = season;
        var march = LocalDate.of(season.today().getYear(), MARCH, MIDDLE);
        if (season.today().isAfter(march)) {
            march = march.plusYears(1);
        }
        toMarch = Math.max(1, ChronoUnit.DAYS.between(season.today(), march) / (double) Season.DAYS_A_WEEK);
    }

    /** Dollars a kg as fed in the yard, bought in a week, in full loads. @param hardSoFar standard deviations */
    public double buy(int feed, double week, double hardSoFar) {
        var of = season.feeds().get(feed);
        if (!of.isTracked()) {
            return of.price();
        }
        var supply = of.supply();
        double late = supply.latePercent() / 100 * Math.min(MOST, week / toMarch);
        double cold = supply.hardPercent() / 100 * Math.max(0, Math.min(HARDEST, hardSoFar));
        double freight = supply.freightPerKg();
        return (of.price() - freight) * (1 + late) * (1 + cold) + freight;
    }

    /** Dollars for each kg of dry matter that the storm reserve is short of. */
    public double storm() {
        var hay = season.feeds().get(season.emergency());
        return Facts.value("storm_usd") * hay.price() / hay.priced().dryMatterPercent() * 100;
    }

    /** Dollars for each kg as fed and week that what is kept clean for calving is short of. */
    public double kept(int feed) {
        return storm() * season.feeds().get(feed).priced().dryMatterPercent() / 100;
    }

    /** kg as fed of a feed to lie there at the end of a week, clean for calving; none once that has begun. */
    public double keep(int feed, int afterWeek) {
        return afterWeek <= season.calvingWeek()
                ? season.feeds().get(feed).meant().keep()
                : 0;
    }

    /** kg of dry matter of hay and silage to lie there at the end of a week; none in the end. */
    public double stormReserve(int afterWeek) {
        double daysLeft = Math.max(0, Season.DAYS_A_WEEK * (season.weeks() - afterWeek));
        double days = Math.min(Facts.value("storm_days"), daysLeft);
        double aDay = 0;
        for (var eater : season.eaters()) {
            aDay += eater.head()
                    * eater.stages().get(0).diet().need().intake(USUAL_NEM).kilograms();
        }
        return days * aDay;
    }

    /** Mcal of NEm in a kg of forage of 56 % TDN (judgment). */
    private static final double USUAL_NEM = 1.2;
}
