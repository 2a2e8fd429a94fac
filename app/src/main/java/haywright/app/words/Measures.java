package haywright.app.words;

import haywright.quantity.Preset;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.ranch.RanchWeather;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.EnumSet;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The units in which a ranch reads and types: which they are, what they are called, and what a U.S. figure is in them.
 *
 * <p>One request is about one ranch and is answered on one thread, so that the preset is that of the thread:
 * {@link #of(Ranch)} where a page of a ranch begins, {@link #usual} where a request does. What works in the background
 * never sets one, and what it keeps holds no units in words.
 */
public final class Measures {
    private static final ThreadLocal<Preset> NOW = ThreadLocal.withInitial(() -> Preset.US);

    /** Units that no U.S. box asks for. */
    private static final Set<Unit> ELSEWHERE =
            EnumSet.of(Unit.TONNE, Unit.DOLLAR_PER_TONNE, Unit.CELSIUS, Unit.KILOMETER_AN_HOUR);

    private Measures() {}

    /** From here on this thread speaks of this ranch. */
    public static void of(Ranch ranch) {
        NOW.set(ranch.settings().measures());
    }

    /** From here on this thread speaks of no ranch: U.S. units. */
    public static void usual() {
        NOW.remove();
    }

    /** What is said of one ranch among several. */
    public static <T> T in(Ranch ranch, Supplier<T> said) {
        return in(ranch.settings().measures(), said);
    }

    /** What is said of a box that asks for this unit. */
    public static <T> T in(Unit asked, Supplier<T> said) {
        return in(ELSEWHERE.contains(asked) ? Preset.WESTERN_CANADA : Preset.US, said);
    }

    private static <T> T in(Preset preset, Supplier<T> said) {
        var before = NOW.get();
        NOW.set(preset);
        try {
            return said.get();
        } finally {
            NOW.set(before);
        }
    }

    private static boolean isUs() {
        return NOW.get() == Preset.US;
    }

    // Units

    /** Of stacks, loads and purchases. */
    public static Unit mass() {
        return of(Unit.TON);
    }

    public static Unit price() {
        return of(Unit.DOLLAR_PER_TON);
    }

    public static Unit temperature() {
        return of(Unit.FAHRENHEIT);
    }

    /** The unit in which this preset shows and asks for what the U.S. has in that one. */
    public static Unit of(Unit us) {
        return isUs()
                ? us
                : switch (us) {
                    case TON -> Unit.TONNE;
                    case DOLLAR_PER_TON -> Unit.DOLLAR_PER_TONNE;
                    case FAHRENHEIT -> Unit.CELSIUS;
                    case MILE_AN_HOUR -> Unit.KILOMETER_AN_HOUR;
                    default -> us;
                };
    }

    /** As it was typed; where that is a unit of another preset, a price to the cent, a wind whole, a weight to four digits. */
    static Quantity shown(Quantity typed) {
        var unit = of(typed.unit());
        if (unit == typed.unit()) {
            return typed;
        }
        var exact = BigDecimal.valueOf(typed.in(unit));
        return new Quantity(
                (switch (unit.kind()) {
                            case PRICE -> exact.setScale(2, RoundingMode.HALF_UP);
                            case TEMPERATURE -> exact.setScale(1, RoundingMode.HALF_UP);
                            case SPEED -> exact.setScale(0, RoundingMode.HALF_UP);
                            default -> exact.round(new MathContext(4, RoundingMode.HALF_UP));
                        })
                        .doubleValue(),
                unit);
    }

    // Figures that the engine has in U.S. units

    public static double ofTons(double tons) {
        return Unit.TON.to(mass(), tons);
    }

    public static double ofDollarsATon(double dollars) {
        return Unit.DOLLAR_PER_TON.to(price(), dollars);
    }

    /** A difference of temperatures, or degree-days, from °F. */
    public static double ofDegrees(double fahrenheit) {
        return isUs() ? fahrenheit : fahrenheit * 5 / 9;
    }

    /** A temperature as a line of arithmetic has it: whole °F, or tenths of °C. */
    static double rounded(double celsius) {
        double shown = temperature().fromBase(celsius);
        return isUs() ? Math.rint(shown) : Math.rint(10 * shown) / 10;
    }

    /** Of {@link #rounded}. */
    static int decimals() {
        return isUs() ? 0 : 1;
    }

    static String exactly(double rounded) {
        return Show.number(rounded, decimals()) + " " + degree();
    }

    /** A difference of temperatures as shown, in °F. */
    public static double inFahrenheit(double shown) {
        return isUs() ? shown : shown * 1.8;
    }

    /** How many degrees go with a pound: whole °F, or halves of °C. */
    static double step(double fahrenheit) {
        return isUs() ? Math.rint(fahrenheit) : Math.rint(2 * ofDegrees(fahrenheit)) / 2;
    }

    /** Percent of maintenance that a degree costs by the rule of thumb. */
    static String aDegree(boolean wet) {
        return isUs() ? wet ? "Wet, two" : "One" : wet ? "Wet, 3.6" : "1.8";
    }

    /** A step of temperature that is easily counted by: 10 °F, 5 °C. */
    public static double ofTen() {
        return isUs() ? 10 : 5;
    }

    // Words

    /** {@code ton}, {@code tonne}. */
    public static String ton() {
        return isUs() ? "ton" : "tonne";
    }

    /** {@code tons}, {@code tonnes}. */
    public static String tons() {
        return ton() + "s";
    }

    /** {@code °F}, {@code °C}. */
    public static String degree() {
        return temperature().symbol();
    }

    /** What a tonne or ton is: {@code 1 ton is 2,000 lb.} */
    private static String whatItIs() {
        return isUs() ? "1 ton is 2,000 lb." : "1 tonne is 1,000 kg, 2,204.6 lb.";
    }

    /** What names tons and no figure, as the ranch calls them. */
    public static String inWords(String text) {
        return isUs() ? text : TON.matcher(text).replaceAll("$1onne");
    }

    private static final Pattern TON = Pattern.compile("\\b([Tt])on(?=s?\\b)");

    private static final Pattern FIGURE = Pattern.compile("\\{(tons|usd_per_ton):([0-9.]+)}");

    /** What is kept or printed with U.S. figures in braces: {@code {tons:40}} is 40 tons, {@code {usd_per_ton:140}} $140. */
    private static String figures(String kept) {
        return FIGURE.matcher(kept)
                .replaceAll(found -> Matcher.quoteReplacement(
                        found.group(1).equals("tons")
                                ? Show.withUnit(Show.number(ofTons(Double.parseDouble(found.group(2))), 0), mass())
                                : "$" + Show.number(ofDollarsATon(Double.parseDouble(found.group(2))), 0)));
    }

    /** A label with {@code {ton}}, {@code {tons}}, {@code {Tons}}, {@code {°}} or {@code {1 ton}} in it, which is what a ton is. */
    public static String say(String label) {
        return label.indexOf('{') < 0
                ? label
                : figures(label)
                        .replace("{ton}", ton())
                        .replace("{tons}", tons())
                        .replace("{Tons}", Show.capital(tons()))
                        .replace("{°}", degree())
                        .replace("{1 ton}", whatItIs())
                        .replace("{percent a degree}", isUs() ? "1 % a °F, 2 % when wet" : "1.8 % a °C, 3.6 % when wet")
                        .replace("{usual wind}", Show.quantity(RanchWeather.USUAL_WIND))
                        .replace("{other}", isUs() ? "°C" : "°F")
                        .replace("{-6 C}", isUs() ? "-6 C" : "20 F");
    }
}
