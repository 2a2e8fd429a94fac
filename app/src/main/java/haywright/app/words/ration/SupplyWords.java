package haywright.app.words.ration;

import haywright.app.words.Show;
import haywright.feeding.Supply;
import haywright.quantity.Unit;

/** What a mix supplies of a need, in words. */
public final class SupplyWords {
    /** Percent of the ways that the feeds may be made, below which a need is tight. */
    private static final double TIGHT = 97;

    /** Share of a need over which even the low end leaves room. */
    private static final double ROOM = 1.2;

    private SupplyWords() {}

    /** {@code Energy}. */
    public static String name(Supply supply) {
        return switch (supply.id()) {
            case "nem" -> "Energy";
            case "growth" -> "Energy for gain";
            case "cp" -> "Protein";
            case "mp", "mp_rumen" -> "Metabolizable protein";
            default -> Show.capital(supply.name());
        };
    }

    /** {@code 1.83 lb}, {@code 10.9 Mcal}, {@code 17 g}. */
    public static String amount(Supply supply, double value) {
        return number(supply, value) + " " + unit(supply);
    }

    private static String number(Supply supply, double value) {
        return switch (supply.unit()) {
            case KILOGRAM_A_DAY -> Show.number(Unit.POUND.fromBase(value), 2);
            case MEGACALORIE -> Show.number(value, 1);
            default -> Show.number(value, 0);
        };
    }

    private static String unit(Supply supply) {
        return switch (supply.unit()) {
            case KILOGRAM_A_DAY -> "lb";
            case MEGACALORIE -> "Mcal";
            default -> "g";
        };
    }

    /** {@code needs 1.83 lb, likely gets 1.95 to 2.40}. */
    public static String figures(Supply supply) {
        var low = number(supply, supply.low());
        var high = number(supply, supply.high());
        return "needs %s, %s"
                .formatted(
                        amount(supply, supply.needed()),
                        low.equals(high) ? "gets " + low : "likely gets %s to %s".formatted(low, high));
    }

    /** {@code tight}, {@code enough}, {@code room to spare}, {@code short by 1.2 Mcal}. */
    public static String verdict(Supply supply) {
        if (isShort(supply)) {
            return "short by " + amount(supply, supply.needed() - supply.expected());
        }
        return supply.surePercent() < TIGHT
                ? "tight"
                : supply.low() >= ROOM * supply.needed() ? "room to spare" : "enough";
    }

    /** Below what is needed, by more than rounding to what can be weighed. */
    public static boolean isShort(Supply supply) {
        return !amount(supply, supply.expected()).equals(amount(supply, supply.needed()))
                && supply.expected() < supply.needed();
    }

    /** {@code enough 7 times in 10}, {@code not enough}. */
    public static String enough(double percent) {
        return percent > 0 ? "enough " + Show.timesInTen(percent) : "not enough";
    }
}
