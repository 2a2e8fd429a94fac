package haywright.season.given;

import haywright.diet.Diet;
import haywright.forage.Analyte;
import haywright.ration.PricedFeed;

/**
 * A feed through one winter.
 *
 * @param priced as rations have it; its kilograms at hand are those of the day the winter is looked at
 * @param kg as fed, lying on the ranch
 * @param sd of these kilograms, as a share of them
 * @param lossADay share of what lies there that storage takes a day
 * @param carry share of its price that a ton left at turnout is worth
 * @param canBuy kg as fed that can be bought; infinite for no limit
 * @param meant what is done with it beside feeding
 * @param supply how it comes where it is bought
 * @param isEmergency whether it is hay found at a high price when nothing else is left
 */
public record SeasonFeed(
        PricedFeed priced,
        double kg,
        double sd,
        double lossADay,
        double carry,
        double canBuy,
        Meant meant,
        Supply supply,
        boolean isEmergency) {
    public String id() {
        return priced.feed().id();
    }

    public String name() {
        return priced.feed().name();
    }

    /** Whether its tons are followed from week to week; what has no end is bought as it is fed. */
    public boolean isTracked() {
        return priced.own() || Double.isFinite(canBuy);
    }

    /** Hay or silage. */
    public boolean isForage() {
        return priced.isHayOrSilage();
    }

    /** kg of dry matter eaten of a kg as fed put out. */
    public double eaten() {
        return priced.eaten(1);
    }

    /** Dollars a kg as fed on the first day. */
    public double price() {
        return priced.pricePerKgAsFed();
    }

    /** Dollars a kg as fed that is left at turnout. */
    public double carryValue() {
        return carry * price();
    }

    public double value(Analyte analyte) {
        return Diet.value(priced.feed(), priced.feed().composition(), analyte);
    }
}
