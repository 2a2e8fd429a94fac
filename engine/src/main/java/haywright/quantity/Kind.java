package haywright.quantity;

/** What a unit measures. Two units convert into each other when their kinds are the same. */
public enum Kind {
    NUMBER,
    MASS,
    MASS_A_DAY,
    LENGTH,
    AREA,
    VOLUME,
    TEMPERATURE,
    SPEED,
    TIME,
    ENERGY,
    ENERGY_DENSITY,
    /** Percent is the base: 12.5 means 12.5 parts in 100. */
    SHARE,
    /** Vitamins are counted by what they do, in international units. */
    VITAMIN,
    VITAMIN_DENSITY,
    CHARGE_DENSITY,
    BULK_DENSITY,
    /** Concentration in water; not a share, because a liter is not a kilogram of dry matter. */
    WATER_CONCENTRATION,
    CONDUCTIVITY,
    YIELD,
    MONEY,
    PRICE,
    HEAD
}
