package haywright.app.words;

import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.stream.DoubleStream;

/**
 * Figures as a person reads them: pounds as fed, tons, dollars, degrees, dates, in the units of {@link Measures}. The
 * only place that rounds.
 * Every method takes the engine's unit (kg, °C, percent) unless its name says otherwise.
 */
public final class Show {
    private static final DateTimeFormatter LONG = DateTimeFormatter.ofPattern("MMM d, uuuu", Locale.US);
    private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("MMM d", Locale.US);

    private Show() {}

    /** Grouped by thousands, a true minus sign, exactly this many decimals. */
    public static String number(double value, int decimals) {
        var rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
        var text = String.format(Locale.US, "%,." + decimals + "f", rounded.abs());
        return rounded.signum() < 0 ? "−" + text : text;
    }

    /** At most this many significant digits, no zeros at the end: for workings, where nothing should be hidden. */
    public static String significant(double value, int digits) {
        if (value == 0) {
            return "0";
        }
        var rounded = BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_UP));
        var plain = rounded.stripTrailingZeros();
        return number(rounded.doubleValue(), Math.max(0, plain.scale()));
    }

    /** With its unit, as it was typed, or in the unit that this ranch reads it in: {@code 1,300 lb}. */
    public static String quantity(Quantity quantity) {
        return typed(Measures.shown(quantity));
    }

    /** As it was typed, with its unit, whatever the ranch reads. */
    public static String typed(Quantity quantity) {
        return withUnit(significant(quantity.value(), 12), quantity.unit());
    }

    /** A value of workings: up to six digits, with its unit. */
    public static String worked(double value, Unit unit) {
        return withUnit(significant(value, 6), unit);
    }

    public static String withUnit(String number, Unit unit) {
        return switch (unit) {
            case DOLLAR -> number.startsWith("−") ? "−$" + number.substring(1) : "$" + number;
            case PERCENT -> number + " %";
            case TON -> number + (number.equals("1") ? " ton" : " tons");
            case TONNE -> number + (number.equals("1") ? " tonne" : " tonnes");
            case DOLLAR_PER_TONNE -> "$" + number + " a tonne";
            default -> {
                var symbol = unit.symbol();
                if (symbol.startsWith("$/")) {
                    yield "$" + number + " a " + symbol.substring(2);
                }
                yield symbol.isEmpty() ? number : number + " " + symbol;
            }
        };
    }

    /** {@code 1,020 tons}, {@code 8.4 tons}. */
    public static String tons(double kg) {
        return withUnit(tonsNumber(kg), Measures.mass());
    }

    /**
     * The sum of amounts that stand beside it as {@link #tons}, so that it adds up with a pencil.
     *
     * @param kilograms of each
     */
    public static String totalTons(DoubleStream kilograms) {
        var shown = kilograms.mapToObj(Show::tonsNumber).toList();
        double sum = shown.stream()
                .mapToDouble(tons -> Double.parseDouble(tons.replace(",", "").replace('−', '-')))
                .sum();
        return withUnit(number(sum, shown.stream().anyMatch(tons -> tons.contains(".")) ? 1 : 0), Measures.mass());
    }

    /** Without the word, for a column that is headed with it. */
    public static String tonsNumber(double kg) {
        double tons = Measures.mass().fromBase(kg);
        return number(tons, Math.abs(tons) < 9.95 ? 1 : 0);
    }

    /** {@code 19.5 lb}, {@code 1,210 lb}. */
    public static String pounds(double kg) {
        return poundsNumber(kg) + " lb";
    }

    public static String poundsNumber(double kg) {
        double pounds = Unit.POUND.fromBase(kg);
        return number(pounds, Math.abs(pounds) < 99.95 ? 1 : 0);
    }

    /** {@code $1.38}, {@code $48.20}, {@code $1,250}: cents up to a hundred dollars. */
    public static String dollars(double dollars) {
        var text = number(Math.abs(dollars), Math.abs(dollars) < 99.995 ? 2 : 0);
        boolean zero = text.chars().noneMatch(c -> c >= '1' && c <= '9');
        return dollars < 0 && !zero ? "−$" + text : "$" + text;
    }

    /** {@code 9 ¢}; from a dollar up in dollars. */
    public static String cents(double dollars) {
        long cents = Math.round(100 * dollars);
        return Math.abs(cents) < 100 ? number(cents, 0) + " ¢" : dollars(dollars);
    }

    /** Cents, signed, for a difference: {@code +8 ¢}, {@code −21 ¢}. */
    public static String centsMore(double dollars) {
        var text = number(100 * dollars, 0);
        return (text.startsWith("−") || text.equals("0") ? text : "+" + text) + " ¢";
    }

    /** A price in words: {@code $185 a ton}. */
    public static String price(Quantity typed) {
        var price = Measures.shown(typed);
        int decimals = Math.max(
                0, BigDecimal.valueOf(price.value()).stripTrailingZeros().scale());
        return withUnit(number(price.value(), decimals == 0 ? 0 : Math.min(4, Math.max(2, decimals))), price.unit());
    }

    /** What a ton as fed costs says nothing without its water: {@code $75 a ton, 90 % dry matter}. */
    public static String price(Quantity price, double dryMatterPercent) {
        return price(price) + ", " + dryMatter(dryMatterPercent);
    }

    /** {@code 90 % dry matter}. */
    public static String dryMatter(double percent) {
        return number(percent, 0) + " % dry matter";
    }

    public static String temperature(double celsius) {
        return number(Measures.temperature().fromBase(celsius), 0) + " " + Measures.degree();
    }

    /** One decimal, as laboratories print it: {@code 12.5 %}. */
    public static String percent(double percent) {
        return number(percent, 1) + " %";
    }

    /** {@code 8 times in 10}, {@code less than once in 10}, {@code more than 9 times in 10}. */
    public static String timesInTen(double percent) {
        long inTen = Math.round(percent / 10);
        if (inTen == 0) {
            return percent > 0 ? "less than once in 10" : "never";
        }
        return inTen == 1
                ? "once in 10"
                : inTen == 10 && percent < 99.5 ? "more than 9 times in 10" : "%d times in 10".formatted(inTen);
    }

    public static String date(LocalDate date) {
        return LONG.format(date);
    }

    /** Without the year, where the page makes it plain. */
    public static String day(LocalDate date) {
        return SHORT.format(date);
    }

    /** With a capital, to begin a line; of at least one letter. */
    public static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.US) + words.substring(1);
    }

    /** {@code 1 lot}, {@code 9 lots}, {@code 1,240 bales}. */
    public static String count(long count, String one) {
        return number(count, 0) + " " + (count == 1 ? one : one + "s");
    }

    /**
     * A figure that is not known exactly, rounded as its range allows: {@code about 25 lb, likely 23 to 27}. The last
     * digit shown is the largest power of ten that is at most half of the range.
     */
    public static String about(double value, double low, double high, Unit unit) {
        double range = high - low;
        if (!(range > 0)) {
            return worked(value, unit);
        }
        int power = (int) Math.floor(Math.log10(range / 2));
        return "about %s, likely %s to %s"
                .formatted(withUnit(toPower(value, power), unit), toPower(low, power), toPower(high, power));
    }

    private static String toPower(double value, int power) {
        var rounded = BigDecimal.valueOf(value).setScale(-power, RoundingMode.HALF_UP);
        return number(rounded.doubleValue(), Math.max(0, -power));
    }

    /** The same amount in the other system, for an echo beside what was typed: {@code 590 kg} for 1,300 lb. */
    public static String twin(Quantity quantity) {
        var other = switch (quantity.unit()) {
            case POUND -> quantity.base() >= 2000 * 0.45359237 ? Measures.mass() : Unit.KILOGRAM;
            case KILOGRAM -> Unit.POUND;
            case TON -> Measures.mass() == Unit.TON ? Unit.POUND : Measures.mass();
            case TONNE -> Measures.mass() == Unit.TONNE ? Unit.POUND : Unit.TON;
            case POUND_A_DAY -> Unit.KILOGRAM_A_DAY;
            case KILOGRAM_A_DAY -> Unit.POUND_A_DAY;
            case FOOT -> Unit.METER;
            case METER -> Unit.FOOT;
            case INCH -> Unit.CENTIMETER;
            case CENTIMETER -> Unit.INCH;
            case FAHRENHEIT -> Unit.CELSIUS;
            case CELSIUS -> Measures.temperature() == Unit.CELSIUS ? null : Unit.FAHRENHEIT;
            case ACRE -> Unit.HECTARE;
            case HECTARE -> Unit.ACRE;
            case LB_PER_FT3 -> Unit.KG_PER_M3;
            case KG_PER_M3 -> Unit.LB_PER_FT3;
            case DOLLAR_PER_TON -> Measures.price() == Unit.DOLLAR_PER_TON ? Unit.DOLLAR_PER_LB : Measures.price();
            case DOLLAR_PER_TONNE ->
                Measures.price() == Unit.DOLLAR_PER_TONNE ? Unit.DOLLAR_PER_LB : Unit.DOLLAR_PER_TON;
            case DOLLAR_PER_LB, DOLLAR_PER_CWT, DOLLAR_PER_KG -> Measures.price();
            default -> null;
        };
        return other == null ? "" : withUnit(significant(quantity.in(other), 3), other);
    }
}
