package haywright.quantity;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Every unit the house knows: how it is written for a reader, how it ends a name in JSON, and its factor to the base of
 * its kind. Base values are what the engine computes with: kg, Mcal, °C, m, percent.
 *
 * <p>{@code base = value · factor + offset}. 1 ton is 2,000 lb and 1 t is 1,000 kg; the two are never mixed.
 *
 * @see "International Yard and Pound Agreement 1959: 1 lb = 0.45359237 kg, 1 ft = 0.3048 m exactly"
 * @see "Thermochemical calorie: 1 cal = 4.184 J exactly"
 */
public enum Unit {
    NONE(Kind.NUMBER, "", "", 1),

    KILOGRAM(Kind.MASS, "kg", "kg", 1),
    GRAM(Kind.MASS, "g", "g", 0.001),
    POUND(Kind.MASS, "lb", "lb", 0.45359237),
    OUNCE(Kind.MASS, "oz", "oz", 0.45359237 / 16),
    TON(Kind.MASS, "ton", "ton", 907.18474),
    TONNE(Kind.MASS, "t", "t", 1000),

    KILOGRAM_A_DAY(Kind.MASS_A_DAY, "kg a day", "kg_per_day", 1),
    GRAM_A_DAY(Kind.MASS_A_DAY, "g a day", "g_per_day", 0.001),
    POUND_A_DAY(Kind.MASS_A_DAY, "lb a day", "lb_per_day", 0.45359237),

    METER(Kind.LENGTH, "m", "m", 1),
    CENTIMETER(Kind.LENGTH, "cm", "cm", 0.01),
    FOOT(Kind.LENGTH, "ft", "ft", 0.3048),
    INCH(Kind.LENGTH, "in", "in", 0.0254),
    YARD(Kind.LENGTH, "yd", "yd", 0.9144),
    KILOMETER(Kind.LENGTH, "km", "km", 1000),
    MILE(Kind.LENGTH, "mi", "mi", 1609.344),

    SQUARE_METER(Kind.AREA, "m²", "m2", 1),
    SQUARE_FOOT(Kind.AREA, "ft²", "ft2", 0.09290304),
    HECTARE(Kind.AREA, "ha", "ha", 10_000),
    ACRE(Kind.AREA, "acres", "acre", 4046.8564224),

    CUBIC_METER(Kind.VOLUME, "m³", "m3", 1),
    CUBIC_FOOT(Kind.VOLUME, "ft³", "ft3", 0.028316846592),
    LITER(Kind.VOLUME, "L", "l", 0.001),
    GALLON(Kind.VOLUME, "gal", "gal", 0.003785411784),

    CELSIUS(Kind.TEMPERATURE, "°C", "c", 1),
    FAHRENHEIT(Kind.TEMPERATURE, "°F", "f", 5.0 / 9, -160.0 / 9),

    KILOMETER_AN_HOUR(Kind.SPEED, "km/h", "kmh", 1),
    METER_A_SECOND(Kind.SPEED, "m/s", "ms", 3.6),
    MILE_AN_HOUR(Kind.SPEED, "mph", "mph", 1.609344),

    DAY(Kind.TIME, "days", "days", 1),
    WEEK(Kind.TIME, "weeks", "weeks", 7),

    MEGACALORIE(Kind.ENERGY, "Mcal", "mcal", 1),
    MEGAJOULE(Kind.ENERGY, "MJ", "mj", 1 / 4.184),

    MCAL_PER_KG(Kind.ENERGY_DENSITY, "Mcal/kg", "mcal_per_kg", 1),
    MCAL_PER_LB(Kind.ENERGY_DENSITY, "Mcal/lb", "mcal_per_lb", 1 / 0.45359237),
    MCAL_PER_CWT(Kind.ENERGY_DENSITY, "Mcal/cwt", "mcal_per_cwt", 0.01 / 0.45359237),
    MJ_PER_KG(Kind.ENERGY_DENSITY, "MJ/kg", "mj_per_kg", 1 / 4.184),

    PERCENT(Kind.SHARE, "%", "pct", 1),
    FRACTION(Kind.SHARE, "", "fraction", 100),
    POUND_PER_TON(Kind.SHARE, "lb/ton", "lb_per_ton", 0.05),
    GRAM_PER_KG(Kind.SHARE, "g/kg", "g_per_kg", 0.1),
    PPM(Kind.SHARE, "ppm", "ppm", 0.0001),
    MILLIGRAM_PER_KG(Kind.SHARE, "mg/kg", "mg_per_kg", 0.0001),
    PPB(Kind.SHARE, "ppb", "ppb", 0.0000001),

    IU(Kind.VITAMIN, "IU", "iu", 1),
    IU_PER_KG(Kind.VITAMIN_DENSITY, "IU/kg", "iu_per_kg", 1),
    IU_PER_LB(Kind.VITAMIN_DENSITY, "IU/lb", "iu_per_lb", 1 / 0.45359237),

    MEQ_PER_KG(Kind.CHARGE_DENSITY, "mEq/kg", "meq_per_kg", 1),
    MEQ_PER_100G(Kind.CHARGE_DENSITY, "mEq/100 g", "meq_per_100g", 10),

    KG_PER_M3(Kind.BULK_DENSITY, "kg/m³", "kg_per_m3", 1),
    LB_PER_FT3(Kind.BULK_DENSITY, "lb/ft³", "lb_per_ft3", 0.45359237 / 0.028316846592),

    MILLIGRAM_PER_LITER(Kind.WATER_CONCENTRATION, "mg/L", "mg_per_l", 1),
    GRAM_PER_LITER(Kind.WATER_CONCENTRATION, "g/L", "g_per_l", 1000),

    MICROMHO_PER_CM(Kind.CONDUCTIVITY, "µmho/cm", "umho_per_cm", 1),
    MILLIMHO_PER_CM(Kind.CONDUCTIVITY, "mmho/cm", "mmho_per_cm", 1000),

    KG_PER_HA(Kind.YIELD, "kg/ha", "kg_per_ha", 1),
    LB_PER_ACRE(Kind.YIELD, "lb/acre", "lb_per_acre", 0.45359237 / 0.40468564224),

    DOLLAR(Kind.MONEY, "$", "usd", 1),
    CENT(Kind.MONEY, "¢", "cents", 0.01),

    DOLLAR_PER_KG(Kind.PRICE, "$/kg", "usd_per_kg", 1),
    DOLLAR_PER_LB(Kind.PRICE, "$/lb", "usd_per_lb", 1 / 0.45359237),
    DOLLAR_PER_CWT(Kind.PRICE, "$/cwt", "usd_per_cwt", 0.01 / 0.45359237),
    DOLLAR_PER_TON(Kind.PRICE, "$/ton", "usd_per_ton", 1 / 907.18474),
    DOLLAR_PER_TONNE(Kind.PRICE, "$/t", "usd_per_t", 0.001),

    HEAD(Kind.HEAD, "head", "head", 1);

    private final Kind kind;
    private final String symbol;
    private final String suffix;
    private final double factor;
    private final double offset;

    Unit(Kind kind, String symbol, String suffix, double factor) {
        this(kind, symbol, suffix, factor, 0);
    }

    Unit(Kind kind, String symbol, String suffix, double factor, double offset) {
        this.kind = kind;
        this.symbol = symbol;
        this.suffix = suffix;
        this.factor = factor;
        this.offset = offset;
    }

    public Kind kind() {
        return kind;
    }

    /** As a reader sees it: {@code lb}, {@code °F}, {@code Mcal/lb}. Empty for a bare number. */
    public String symbol() {
        return symbol;
    }

    /** As a JSON name ends: {@code lb} in {@code body_weight_lb}. */
    public String suffix() {
        return suffix;
    }

    /** This unit's value in the base of its kind (kg, °C, Mcal, %). */
    public double toBase(double value) {
        return value * factor + offset;
    }

    public double fromBase(double base) {
        return (base - offset) / factor;
    }

    /**
     * The value in another unit of the same kind.
     *
     * @throws IllegalArgumentException if the kinds differ: a mistake of the program, never of the user
     */
    public double to(Unit other, double value) {
        if (kind != other.kind) {
            throw new IllegalArgumentException(
                    "%s is %s and %s is %s: they do not convert".formatted(name(), kind, other.name(), other.kind));
        }
        return this == other ? value : other.fromBase(toBase(value));
    }

    public static List<Unit> of(Kind kind) {
        var units = new ArrayList<Unit>();
        for (var unit : values()) {
            if (unit.kind == kind) {
                units.add(unit);
            }
        }
        return List.copyOf(units);
    }

    /** The unit a person or a file means by this word, of the given kind: symbol or suffix, in any case. */
    public static Optional<Unit> parse(String word, Kind kind) {
        var asked = word.strip().toLowerCase(Locale.ROOT);
        for (var unit : of(kind)) {
            if (asked.equals(unit.symbol.toLowerCase(Locale.ROOT)) || asked.equals(unit.suffix)) {
                return Optional.of(unit);
            }
        }
        return Optional.ofNullable(
                        switch (asked) {
                            case "lbs", "pounds", "pound", "#" -> Unit.POUND;
                            case "kgs", "kilos", "kilograms" -> Unit.KILOGRAM;
                            case "tons" -> Unit.TON;
                            case "tonnes", "tonne" -> Unit.TONNE;
                            case "feet", "foot", "'" -> Unit.FOOT;
                            case "yards", "yard" -> Unit.YARD;
                            case "miles", "mile" -> Unit.MILE;
                            case "metres", "meters", "metre", "meter" -> Unit.METER;
                            case "inches", "inch", "\"" -> Unit.INCH;
                            case "deg f", "fahrenheit" -> Unit.FAHRENHEIT;
                            case "deg c", "celsius" -> Unit.CELSIUS;
                            case "percent", "pct" -> Unit.PERCENT;
                            case "umho/cm", "umhos/cm", "µmhos/cm", "us/cm", "µs/cm" ->
                                Unit.MICROMHO_PER_CM; // micro sign
                            case "mmhos/cm", "ms/cm", "ds/m" -> Unit.MILLIMHO_PER_CM;
                            default -> null;
                        })
                .filter(unit -> unit.kind == kind);
    }
}
