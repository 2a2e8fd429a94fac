package haywright.season.given;

import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import org.jspecify.annotations.Nullable;

/**
 * How a feed that is bought comes, and what waiting costs.
 *
 * @param loadKg as fed in a full load; 0 where it comes by the kilogram
 * @param freight dollars a load, whatever is on it
 * @param aWeek most kg as fed that come in a week
 * @param latePercent that its price without freight is higher in mid-March than today
 * @param hardPercent that it is higher for each standard deviation by which the winter so far was harder than usual
 * @param isWaitingSaid whether both are what somebody said
 */
public record Supply(
        double loadKg, double freight, double aWeek, double latePercent, double hardPercent, boolean isWaitingSaid) {
    /** A load is ordered once more than this share of it is asked for: less is bought with the next one (judgment). */
    private static final double LEAST_OF_A_LOAD = 0.05;

    private static final double HAIR = 1e-9;

    /** Where nobody said anything. */
    static final Supply USUAL =
            new Supply(0, 0, Double.POSITIVE_INFINITY, Facts.value("late_premium"), Facts.value("cold_premium"), false);

    static Supply of(@Nullable FeedForSale sale) {
        if (sale == null) {
            return USUAL;
        }
        var load = sale.load();
        var terms = sale.terms();
        var aWeek = terms == null ? null : terms.aWeek();
        var later = terms == null ? null : terms.later();
        var hard = terms == null ? null : terms.hardPercent();
        return new Supply(
                load == null ? 0 : load.base(),
                sale.freightALoad(),
                aWeek == null ? USUAL.aWeek : aWeek.base(),
                later == null
                        ? USUAL.latePercent
                        : 100 * (later.in(Unit.DOLLAR_PER_KG) / sale.price().in(Unit.DOLLAR_PER_KG) - 1),
                hard == null ? USUAL.hardPercent : hard,
                later != null && hard != null);
    }

    /** Whether somebody said what makes a difference when it is bought, so that its tons are followed. */
    static boolean isSaid(FeedForSale sale) {
        return sale.load() != null || sale.terms() != null;
    }

    public boolean isByLoad() {
        return loadKg > 0;
    }

    /** Dollars a kg of a full load. */
    public double freightPerKg() {
        return isByLoad() ? freight / loadKg : 0;
    }

    /** Loads that are ordered where so many kg are asked for by a plan: whole ones, rounded up. */
    public int ordered(double kg) {
        return (int) Math.max(0, Math.ceil(kg / loadKg - LEAST_OF_A_LOAD));
    }

    /** Loads without which so many kg are not there. */
    public int needed(double kg) {
        return (int) Math.max(0, Math.ceil(kg / loadKg - HAIR));
    }

    /**
     * What can come of so many loads.
     *
     * @param kg that can still be had, this week and in all
     * @return kg: whole loads, and of the last that there is what is left of it
     */
    public double comes(int loads, double aWeekLeft, double canBuy) {
        double whole = Math.min(loads, Math.floor(aWeekLeft / loadKg + HAIR)) * loadKg;
        return Math.max(0, Math.min(whole, canBuy));
    }

    /** Dollars of freight that are paid beside those of full loads, for the one that is not full. */
    public double notFull(double kg) {
        return isByLoad() ? needed(kg) * freight - kg * freightPerKg() : 0;
    }
}
