package haywright.forage;

import haywright.quantity.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers inside the sentences of this room: five decimals at most, no needless zeros. */
public final class Say {
    private Say() {}

    public static String number(double value) {
        if (!Double.isFinite(value)) {
            return Double.isNaN(value) ? "not a number" : value > 0 ? "infinity" : "−infinity";
        }
        var text = BigDecimal.valueOf(value)
                .setScale(Math.abs(value) >= 100 ? 1 : 3, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
        return text.startsWith("-") ? "−" + text.substring(1) : text;
    }

    /** A figure with its unit, as a sentence has it. */
    public static String with(double value, Unit unit) {
        return unit.symbol().isEmpty() ? number(value) : number(value) + " " + unit.symbol();
    }

    /** Worked-out figures, to as many decimals as a reader can use. */
    public static String rounded(double value, int decimals) {
        double scale = Math.pow(10, decimals);
        return number(Math.round(value * scale) / scale);
    }

    /** A straight line as a formula: "88.9 − 0.779·ADF", "0.0132·TDN − 0.132". */
    public static String line(double intercept, double slope, String symbol) {
        return intercept < 0
                ? "%s·%s − %s".formatted(plain(slope), symbol, plain(-intercept))
                : "%s %s %s·%s".formatted(plain(intercept), slope < 0 ? "−" : "+", plain(Math.abs(slope)), symbol);
    }

    private static String plain(double coefficient) {
        return BigDecimal.valueOf(coefficient).stripTrailingZeros().toPlainString();
    }
}
