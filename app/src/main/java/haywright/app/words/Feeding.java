package haywright.app.words;

import haywright.quantity.Unit;
import java.util.Optional;

/**
 * Amounts as somebody who feeds can weigh or count them, from the engine's kilograms as fed. Coarse where coarse is
 * near enough: what is written is at most a twentieth off, above a tenth of a pound or of an ounce.
 */
public final class Feeding {
    private static final double NEAR_ENOUGH = 0.05;
    private static final int LONGEST_WAIT_DAYS = 14;

    private Feeding() {}

    /** For one head and day: {@code 24 lb}, {@code 7½ lb}, {@code 1.2 lb}, {@code 3 oz}. */
    public static String aHead(double kg) {
        double pounds = Unit.POUND.fromBase(kg);
        return pounds < 0.975 ? coarse(Unit.OUNCE.fromBase(kg)) + " oz" : coarse(pounds) + " lb";
    }

    /** For the group: {@code 5,760 lb a day}. */
    public static String aDay(double kg) {
        double pounds = Unit.POUND.fromBase(kg);
        double step = pounds >= 1000 ? 10 : pounds >= 100 ? 5 : 0;
        return (step == 0 ? coarse(pounds) : Show.number(step * Math.round(pounds / step), 0)) + " lb a day";
    }

    /**
     * Bales for the group: {@code 7½ bales a day}; where half bales a day are too coarse {@code 9 bales a week} or
     * {@code 1 bale every 5 days}. Empty where none of these is near enough, or pounds serve better.
     *
     * @param weighs whether the outfit loads over a scale, and can so take part of a bale
     */
    public static Optional<String> bales(double aDay, boolean weighs) {
        double halves = Math.round(2 * aDay) / 2.0;
        if (isNear(halves, aDay)) {
            return Optional.of(halves(halves) + (halves <= 1 ? " bale a day" : " bales a day"));
        }
        if (weighs) {
            return Optional.empty();
        }
        double aWeek = Math.rint(7 * aDay);
        if (aWeek > 1 && isNear(aWeek, 7 * aDay)) {
            return Optional.of(Show.number(aWeek, 0) + " bales a week");
        }
        double days = Math.rint(1 / aDay);
        if (days > 1 && days <= LONGEST_WAIT_DAYS && isNear(1 / days, aDay)) {
            return Optional.of("1 bale every %s days".formatted(Show.number(days, 0)));
        }
        return Optional.empty();
    }

    private static boolean isNear(double written, double exact) {
        return Math.abs(written - exact) <= NEAR_ENOUGH * exact;
    }

    private static String coarse(double value) {
        return value >= 10 ? Show.number(value, 0) : value >= 5 ? halves(Math.round(2 * value) / 2.0) : tenths(value);
    }

    private static String tenths(double value) {
        var figure = Show.number(value, value < 0.95 ? 2 : 1); // below that a tenth is more than a twentieth of it
        return figure.replaceAll("(\\.\\d*?)0+$", "$1").replaceAll("\\.$", "");
    }

    /** {@code 7½}, {@code ½}, {@code 8}. */
    private static String halves(double value) {
        double whole = Math.floor(value);
        return (whole > 0 ? Show.number(whole, 0) : "") + (value > whole ? "½" : "");
    }
}
