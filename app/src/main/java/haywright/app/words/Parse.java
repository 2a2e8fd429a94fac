package haywright.app.words;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Month;
import java.time.MonthDay;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What a person typed, understood: a number with or without its unit, a date. Anything that could mean two things is
 * refused with a question, never guessed.
 */
public final class Parse {
    private static final double TOO_LARGE = 1e12;
    private static final Pattern NUMBER_THEN_UNIT = Pattern.compile("([-−+]?)\\s*(\\$?)\\s*([0-9.,'’ ]*[0-9.,])(.*)");
    static final Pattern PLAIN = Pattern.compile("[0-9]+(\\.[0-9]*)?|\\.[0-9]+");
    static final Pattern GROUPED = Pattern.compile("[0-9]{1,3}(,[0-9]{3})+(\\.[0-9]*)?");
    /** What says only that a figure is rounded. */
    private static final Pattern ABOUT =
            Pattern.compile("^(?:about|around|approx\\.?|approximately|~|≈)\\s*", Pattern.CASE_INSENSITIVE);
    /** {@code 5½}, {@code 5 1/2}, {@code 5-1/2}, {@code 3/4}; the rest is its unit. */
    private static final Pattern FRACTION = Pattern.compile(
            "([-−+]?)\\s*(?:([0-9]+)\\s*([½¼¾⅓⅔⅛⅜⅝⅞])|([½¼¾⅓⅔⅛⅜⅝⅞])|(?:([0-9]+)(?:\\s+|-))?([0-9]{1,2})/(16|2|3|4|8))(?![0-9/½¼¾⅓⅔⅛⅜⅝⅞])(.*)");

    private static final String FRACTIONS = "½¼¾⅓⅔⅛⅜⅝⅞";
    private static final double[] SHARES = {
        1.0 / 2, 1.0 / 4, 3.0 / 4, 1.0 / 3, 2.0 / 3, 1.0 / 8, 3.0 / 8, 5.0 / 8, 7.0 / 8
    };
    private static final Pattern CENTS = Pattern.compile("^(?:¢|cents?\\b|c(?=/))\\s*");
    /** A capital T beside a price or tons is the ton of 2,000 lb, a small one the metric ton. */
    private static final Pattern CAPITAL_T = Pattern.compile("(^|[\\s/])T$");

    private static final Pattern COUNTED = Pattern.compile(
            "(?:hd|head|cows?|heifers?|calves|calf|bulls?|steers?|cattle|bales?|bags?)", Pattern.CASE_INSENSITIVE);
    private static final Pattern WEEKDAY = Pattern.compile("^(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*\\.?,?\\s+");
    private static final Pattern ISO = Pattern.compile("([0-9]{4})[-/.]([0-9]{1,2})[-/.]([0-9]{1,2})");
    private static final Pattern SLASHED = Pattern.compile("([0-9]{1,2})[/.-]([0-9]{1,2})[/.-]'?([0-9]{4}|[0-9]{2})");
    private static final Pattern YEARLESS = Pattern.compile("([0-9]{1,2})[/.-]([0-9]{1,2})");
    private static final Pattern BAG = Pattern.compile("(?i)\\b(bag|bags|sack|sacks)\\b");

    private static final Pattern EXPONENT = Pattern.compile("[eE][-−+]?[0-9]+");
    private static final Pattern MONTH_DAY =
            Pattern.compile("([a-z]{3,9})\\.?[\\s-]*([0-9]{1,2})(?:st|nd|rd|th)?(?:[\\s,-]+'?([0-9]{4}|[0-9]{2}))?");
    private static final Pattern DAY_MONTH =
            Pattern.compile("([0-9]{1,2})(?:st|nd|rd|th)?[\\s-]*([a-z]{3,9})\\.?(?:[\\s,-]+'?([0-9]{4}|[0-9]{2}))?");

    private Parse() {}

    /**
     * A number in the unit asked for, or in another unit of the same kind that was typed behind it: {@code 1,300 lb},
     * {@code 590 kg}, {@code 12.5 %}, {@code $185}, {@code $185/ton}, {@code 20 lb} where pounds a day were asked for.
     *
     * @param field name carried into the problem
     * @throws Refused with one problem: not a number, a comma that could mean two things, or a unit of another kind
     */
    public static Quantity quantity(String field, String text, Unit asked) {
        var typed = decimal(
                ABOUT.matcher(text.replace('\u00a0', ' ').replace('\u202f', ' ').strip())
                        .replaceFirst(""));
        var found = NUMBER_THEN_UNIT.matcher(typed);
        if (!found.matches()) {
            throw notANumber(field, text, asked);
        }
        double size = digits(field, text, found.group(3).strip());
        double value = found.group(1).equals("-") || found.group(1).equals("−") ? -size : size;
        var word = found.group(4).strip();
        boolean dollars = !found.group(2).isEmpty();
        var cents = CENTS.matcher(word);
        if (!dollars && isMoney(asked) && cents.find()) {
            return unit(word.substring(cents.end()), false, asked)
                    .map(u -> new Quantity(value / 100, u))
                    .orElseThrow(() -> notAUnit(field, text, word, asked));
        }
        if (asked == Unit.NONE && !dollars && COUNTED.matcher(word).matches()) {
            return new Quantity(value, asked);
        }
        if (word.isEmpty() && (!dollars || isMoney(asked))) {
            return new Quantity(value, asked);
        }
        if (EXPONENT.matcher(word).matches()) {
            throw notANumber(field, text, asked);
        }
        return unit(word, dollars, asked)
                .map(u -> new Quantity(value, u))
                .orElseThrow(() -> notAUnit(field, text, (dollars ? "$" : "") + word, asked));
    }

    private static Refused notAUnit(String field, String text, String word, Unit asked) {
        return new Refused(
                field,
                text,
                "“%s” is not a unit of what is asked here".formatted(word.strip()),
                word.startsWith("$") && BAG.matcher(word).find()
                        ? "Divide by what a bag weighs: $38 for 50 lb is $0.76/lb."
                        : asked.symbol().isEmpty()
                                ? "Write the number alone."
                                : "Write it in %s, or in %s.".formatted(asked.symbol(), others(asked)));
    }

    /** A fraction as a decimal; anything else as it is. */
    private static String decimal(String typed) {
        var found = FRACTION.matcher(typed);
        if (!found.matches()) {
            return typed;
        }
        var whole = found.group(2) != null ? found.group(2) : found.group(5);
        var sign = found.group(3) != null ? found.group(3) : found.group(4);
        double share = sign != null
                ? SHARES[FRACTIONS.indexOf(sign)]
                : Double.parseDouble(found.group(6)) / Double.parseDouble(found.group(7));
        return share >= 1
                ? typed
                : "%s%s %s"
                        .formatted(
                                found.group(1),
                                BigDecimal.valueOf((whole == null ? 0 : Double.parseDouble(whole)) + share)
                                        .toPlainString(),
                                found.group(8));
    }

    /** A plain number without any unit. */
    public static double number(String field, String text) {
        return quantity(field, text, Unit.NONE).value();
    }

    /** A whole number: {@code 210}, {@code 1,240}, {@code 45 head}, {@code 63 days} where weeks are asked for. */
    public static int count(String field, String text, Unit asked) {
        double value = quantity(field, text, asked).in(asked);
        if (value != Math.rint(value)) {
            throw new Refused(field, text, "a whole number is needed", "Write it without a part after the point.");
        }
        if (Math.abs(value) > 1_000_000_000) {
            throw new Refused(field, text, "nothing is counted in billions here", "Is a digit too many in it?");
        }
        return (int) value;
    }

    /**
     * A date: {@code Nov 15, 2026}, {@code 15 November 2026}, {@code 2026-11-15}, {@code 11/15/26} (month first, as
     * ranches here write it). A date without its year is asked about.
     */
    public static LocalDate date(String field, String text) {
        return date(field, text, null);
    }

    /**
     * The same; a date without its year ({@code Nov 15}, {@code 11/15}) is the first such day from {@code earliest} on.
     *
     * @param earliest null where a year is needed
     */
    public static LocalDate date(String field, String text, @Nullable LocalDate earliest) {
        var typed = WEEKDAY.matcher(text.strip().toLowerCase(Locale.ROOT))
                .replaceFirst("")
                .replaceFirst("^the ", "")
                .replaceFirst(" of ", " ");
        try {
            var iso = ISO.matcher(typed);
            if (iso.matches()) {
                return day(iso.group(1), Integer.parseInt(iso.group(2)), iso.group(3));
            }
            var slashed = SLASHED.matcher(typed);
            if (slashed.matches()) {
                return day(slashed.group(3), Integer.parseInt(slashed.group(1)), slashed.group(2));
            }
            var monthFirst = MONTH_DAY.matcher(typed);
            if (monthFirst.matches()) {
                return named(field, text, monthFirst.group(1), monthFirst.group(2), monthFirst.group(3), earliest);
            }
            var dayFirst = DAY_MONTH.matcher(typed);
            if (dayFirst.matches()) {
                return named(field, text, dayFirst.group(2), dayFirst.group(1), dayFirst.group(3), earliest);
            }
            var yearless = YEARLESS.matcher(typed);
            if (yearless.matches() && earliest != null) {
                return from(earliest, Integer.parseInt(yearless.group(1)), Integer.parseInt(yearless.group(2)));
            }
        } catch (DateTimeException e) {
            throw new Refused(field, text, "there is no such day", "Write it like Nov 15, 2026 or 11/15/2026.");
        }
        throw new Refused(field, text, "this is not a date that can be read", "Write it like Nov 15, 2026.");
    }

    private static LocalDate named(
            String field, String text, String month, String day, @Nullable String year, @Nullable LocalDate earliest) {
        if (year == null && earliest == null) {
            throw new Refused(field, text, "the year is missing", "Write it like Nov 15, 2026.");
        }
        for (var m : Month.values()) {
            if (m.name().toLowerCase(Locale.ROOT).startsWith(month) || (m == Month.SEPTEMBER && month.equals("sept"))) {
                return year == null
                        ? from(Objects.requireNonNull(earliest), m.getValue(), Integer.parseInt(day))
                        : day(year, m.getValue(), day);
            }
        }
        throw new Refused(field, text, "“" + month + "” is not a month", "Write it like Nov 15, 2026.");
    }

    private static LocalDate day(String year, int month, String day) {
        return LocalDate.of((year.length() == 2 ? 2000 : 0) + Integer.parseInt(year), month, Integer.parseInt(day));
    }

    /** February 29 is the next one there is. */
    private static LocalDate from(LocalDate earliest, int month, int day) {
        var monthDay = MonthDay.of(month, day);
        int year = earliest.getYear();
        while (!monthDay.isValidYear(year) || monthDay.atYear(year).isBefore(earliest)) {
            year++;
        }
        return monthDay.atYear(year);
    }

    static double digits(String field, String text, String digits) {
        if (PLAIN.matcher(digits).matches()) {
            return sized(field, text, Double.parseDouble(digits));
        }
        if (GROUPED.matcher(digits).matches()) {
            return sized(field, text, Double.parseDouble(digits.replace(",", "")));
        }
        if (digits.contains(",")) {
            var pointed = digits.replace(".", "").replace(',', '.');
            throw new Refused(
                    field,
                    text,
                    "the comma can mean two things",
                    PLAIN.matcher(pointed).matches()
                            ? "Did you mean %s? Write a point before the decimals; a comma only between thousands, as in 1,300."
                                    .formatted(pointed)
                            : "Write a point before the decimals; a comma only between thousands, as in 1,300.");
        }
        throw new Refused(field, text, "this is not one number", "Write the digits together, as in 1,300 or 12.5.");
    }

    private static double sized(String field, String text, double value) {
        if (Math.abs(value) >= TOO_LARGE) {
            var shown = text.length() > 40 ? text.substring(0, 40) + "…" : text;
            throw new Refused(field, shown, "nothing on a ranch is so large", "Is a digit too many in it?");
        }
        return value;
    }

    private static Optional<Unit> unit(String word, boolean dollars, Unit asked) {
        var kind = asked.kind();
        if (kind == Kind.PRICE || kind == Kind.MONEY) {
            return money(CAPITAL_T.matcher(word).replaceFirst("$1ton").toLowerCase(Locale.ROOT), asked);
        }
        if (dollars) {
            return Optional.empty();
        }
        var known = asked == Unit.TON && word.equals("T") ? Optional.of(asked) : Unit.parse(word, kind);
        if (known.isPresent()) {
            return known;
        }
        var bare = word.toLowerCase(Locale.ROOT)
                .replaceAll("\\.$", "")
                .replaceAll("\\s*(/|a|per)\\s*(day|head|head and day|head/day|hd/d)$", "")
                .strip();
        if (kind == Kind.MASS_A_DAY) {
            return Unit.parse(bare, Kind.MASS).flatMap(mass -> Unit.parse(mass.symbol() + " a day", kind));
        }
        if (kind == Kind.NUMBER) {
            return Optional.empty();
        }
        return switch (bare) {
            case "hd", "cows", "cattle" -> Optional.of(Unit.HEAD).filter(u -> u.kind() == kind);
            case "°", "deg", "degrees" -> Optional.of(asked).filter(u -> u.kind() == Kind.TEMPERATURE);
            case "acre", "ac" -> Optional.of(Unit.ACRE).filter(u -> u.kind() == kind);
            case "day", "d" -> Optional.of(Unit.DAY).filter(u -> u.kind() == kind);
            case "week", "wk", "wks" -> Optional.of(Unit.WEEK).filter(u -> u.kind() == kind);
            case "lb/cu ft", "lb per cubic foot", "lb/cubic foot", "lbs/ft3", "lb/ft3", "pcf" ->
                Optional.of(Unit.LB_PER_FT3).filter(u -> u.kind() == kind);
            default -> Unit.parse(bare, kind);
        };
    }

    /** {@code $185}, {@code 185 dollars a ton}, {@code /ton}, {@code per lb}. */
    private static Optional<Unit> money(String word, Unit asked) {
        var per = word.replaceAll("^(\\$|usd|dollars?)", "")
                .replaceAll("^\\s*(/|an?\\s|per\\s)", "")
                .replaceAll(",?\\s*delivered$", "")
                .strip();
        if (per.isEmpty()) {
            return Optional.of(asked);
        }
        if (asked.kind() == Kind.MONEY) {
            return Unit.parse(per, Kind.MONEY);
        }
        if (per.equals("cwt") || per.equals("hundredweight")) {
            return Optional.of(Unit.DOLLAR_PER_CWT);
        }
        return Unit.parse(per, Kind.MASS).flatMap(mass -> Unit.parse("$/" + mass.symbol(), Kind.PRICE));
    }

    private static boolean isMoney(Unit unit) {
        return unit.kind() == Kind.MONEY || unit.kind() == Kind.PRICE;
    }

    private static String others(Unit asked) {
        var others = Unit.of(asked.kind()).stream()
                .filter(u -> u != asked && !u.symbol().isEmpty())
                .map(Unit::symbol)
                .limit(2)
                .toList();
        return others.isEmpty() ? "no other unit" : String.join(" or ", others);
    }

    private static Refused notANumber(String field, String text, Unit asked) {
        var sample = List.of("$", "%").contains(asked.symbol()) ? "12.5" : "1,300";
        return new Refused(
                field,
                text,
                "this is not a number",
                asked.symbol().isEmpty()
                        ? "Write digits, as in %s.".formatted(sample)
                        : "Write digits, as in %s; the unit %s is understood.".formatted(sample, asked.symbol()));
    }
}
