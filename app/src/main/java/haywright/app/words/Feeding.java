package haywright.app.words;

import haywright.quantity.Unit;
import haywright.ration.Weighable;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a feeder reads of one feed. Everything comes from the pounds a head as they are printed: times the head they are
 * the pounds of the group as printed, and these by the pounds of a bale as printed are the bales.
 *
 * @param kgAHead as fed, a head and day: of a ration {@link Weighable}, else as it was typed
 * @param baleKg of one bale; empty for what is not baled
 */
public record Feeding(double kgAHead, int head, OptionalDouble baleKg) {
    private static final double NEAR_ENOUGH = 0.05;
    private static final int LONGEST_WAIT_DAYS = 14;
    /** Bales a day, halfway between two in three days and one a day. */
    private static final double NEARLY_ONE = 5.0 / 6;

    private boolean isLittle() {
        return Unit.POUND.fromBase(kgAHead) < Weighable.LEAST_POUNDS;
    }

    /** As printed, to a hundredth of a pound, or of an ounce where it is little. */
    private double written() {
        var unit = isLittle() ? Unit.OUNCE : Unit.POUND;
        return Math.rint(100 * unit.fromBase(kgAHead)) / 100;
    }

    /** {@code 24 lb}, {@code 7½ lb}, {@code 1.2 lb}, {@code 3 oz}. */
    public String aHead() {
        return figure(written()) + (isLittle() ? " oz" : " lb");
    }

    private double pounds() {
        return written() * head / (isLittle() ? 16 : 1);
    }

    /** For the group: {@code 5,760 lb a day}. */
    public String aDay() {
        return plain(groupPounds()) + " lb a day";
    }

    /** For the group, a day, as printed. */
    public double groupPounds() {
        return Math.rint(10 * pounds()) / 10;
    }

    /** Pounds of a bale: {@code 1,200 lb}; empty for what is not baled. */
    public Optional<String> bale() {
        return baleKg.isPresent() ? Optional.of(Show.number(balePounds(), 0) + " lb") : Optional.empty();
    }

    private double balePounds() {
        return Math.max(1, Math.rint(Unit.POUND.fromBase(baleKg.orElseThrow())));
    }

    /**
     * Bales for the group: {@code 7½ bales a day}, {@code 19 bales a week}, {@code 1 bale every 5 days} where one of
     * these is what a division comes to, else tenths of a bale: {@code 5.7 bales a day}. Empty for what is not baled,
     * for a bale that lasts long, and where pounds serve better.
     *
     * @param weighs whether the outfit loads over a scale, and can so take part of a bale
     */
    public Optional<String> bales(boolean weighs) {
        if (baleKg.isEmpty()) {
            return Optional.empty();
        }
        double aDay = pounds() / balePounds();
        double halves = Math.rint(2 * aDay) / 2;
        if (comesTo(halves, aDay)) {
            return Optional.of(figure(halves) + (halves <= 1 ? " bale a day" : " bales a day"));
        }
        if (weighs) {
            return Optional.empty();
        }
        double aWeek = Math.rint(7 * aDay);
        if (aWeek > 1 && comesTo(aWeek, 7 * aDay)) {
            return Optional.of(figure(aWeek) + " bales a week");
        }
        double days = Math.rint(1 / aDay);
        if (days > 1 && days <= LONGEST_WAIT_DAYS && comesTo(days, 1 / aDay)) {
            return Optional.of("1 bale every %s days".formatted(figure(days)));
        }
        if (aDay >= 1) {
            return Optional.of(Show.number(aDay, 1) + " bales a day");
        }
        return 7 * aDay >= 1 ? Optional.of(Show.number(7 * aDay, 1) + " bales a week") : Optional.empty();
    }

    /**
     * The same as people count bales, for beside the pounds: halves a day, {@code about 4½ bales a day}, else whole days,
     * {@code about a bale every 3 days}. Empty for what is not baled, and for a bale that lasts long.
     */
    public Optional<String> aboutBales() {
        if (baleKg.isEmpty()) {
            return Optional.empty();
        }
        double aDay = pounds() / balePounds();
        double halves = Math.rint(2 * aDay) / 2;
        var about = comesTo(halves, aDay) ? "" : "about ";
        if (aDay >= NEARLY_ONE) {
            return Optional.of(about + half(halves) + (halves == 1 ? " bale a day" : " bales a day"));
        }
        double days = Math.rint(1 / aDay);
        return days > LONGEST_WAIT_DAYS
                ? Optional.empty()
                : Optional.of(
                        days <= 1
                                ? "about 2 bales every 3 days"
                                : "about a bale every %s days".formatted(figure(days)));
    }

    private static String half(double value) {
        double whole = Math.floor(value);
        return Show.number(whole, 0) + (value > whole ? "½" : "");
    }

    /** Whether a division that is carried to tenths comes to this. */
    private static boolean comesTo(double written, double exact) {
        return Show.number(written, 1).equals(Show.number(exact, 1))
                && Math.abs(written - exact) <= NEAR_ENOUGH * exact;
    }

    /** {@code 5,760}, {@code 7½}, {@code 3.5}, {@code 1.25}, {@code 8}. */
    private static String figure(double value) {
        double whole = Math.floor(value);
        if (value - whole == 0.5 && (value >= 5 || value < 1)) {
            return (whole > 0 ? Show.number(whole, 0) : "") + "½";
        }
        return plain(value);
    }

    private static String plain(double value) {
        var text = Show.number(value, 2);
        return text.replaceAll("(\\.\\d*?)0+$", "$1").replaceAll("\\.$", "");
    }
}
