package haywright.quantity;

import java.math.BigDecimal;

/**
 * A value with the unit it was typed in. Kept as typed, so that 1,300 lb stays 1,300 lb for ever and is converted anew
 * wherever kilograms are needed.
 */
public record Quantity(double value, Unit unit) {
    public Quantity {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a quantity needs a number, not " + value);
        }
    }

    public static Quantity of(double value, Unit unit) {
        return new Quantity(value, unit);
    }

    /** In the base unit of its kind: kg, Mcal, °C, m, percent. */
    public double base() {
        return unit.toBase(value);
    }

    public double in(Unit other) {
        return unit.to(other, value);
    }

    /** The number as it was typed, without a point where there was none, and its unit: {@code 1250 lb}. */
    public String asTyped() {
        var number = BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
        return (number + " " + unit.symbol()).strip();
    }
}
