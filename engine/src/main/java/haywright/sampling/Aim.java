package haywright.sampling;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the answer must be good for.
 *
 * @param rule how the number is chosen; null takes the material's default
 * @param analyte the one the half-width is about: "cp"
 * @param halfWidth wanted, in the analyte's unit, or percent of its value for minerals and nitrate
 * @param own this ranch's own spread; null takes the book's
 */
public record Aim(
        @Nullable Rule rule,
        String analyte,
        double halfWidth,
        double confidencePercent,
        Purpose purpose,
        long seed,
        @Nullable Spread own) {
    /** Percent of its value. */
    private static final double NITRATE_HALF_WIDTH = 20;

    /** Half a point of protein, right 19 times in 20. */
    public static final Aim USUAL = new Aim(null, "cp", 0.5, 95, Purpose.NUTRIENTS, 1, null);

    /**
     * What a sample of this is most likely for.
     *
     * <p>Half a point of protein; a twentieth of it where its spread is known in percent of the value only.
     *
     * @param nitrateDanger whether its nitrate is a danger until it is tested: then that is asked first, to a fifth of
     *     its value
     */
    public static Aim usual(Subject subject, boolean nitrateDanger) {
        if (subject.material() == Material.STOCK_WATER) {
            return USUAL.with(Purpose.WATER);
        }
        var crop = subject.crop();
        return nitrateDanger && crop != null && Spread.analytes(crop).contains("no3n")
                ? new Aim(null, "no3n", NITRATE_HALF_WIDTH, 95, Purpose.NITRATE, 1, null)
                : Spread.ofBook(subject.cropOrUsual(), USUAL.analyte).ofValue()
                        ? new Aim(null, USUAL.analyte, 5, 95, Purpose.NUTRIENTS, 1, null)
                        : USUAL;
    }

    /** Counted for what its purpose is about, whatever else was asked for; page and topic come through here. */
    Aim fitted(Subject subject) {
        boolean known =
                List.of(Spread.analytes(subject.cropOrUsual()).split(", ")).contains("no3n");
        return purpose == Purpose.NITRATE && known && !analyte.equals("no3n") && own == null
                ? new Aim(rule, "no3n", NITRATE_HALF_WIDTH, confidencePercent, purpose, seed, own)
                : this;
    }

    public Aim with(Purpose other) {
        return new Aim(rule, analyte, halfWidth, confidencePercent, other, seed, own);
    }

    public Aim withSeed(long other) {
        return new Aim(rule, analyte, halfWidth, confidencePercent, purpose, other, own);
    }

    public Aim withRule(Rule other) {
        return new Aim(other, analyte, halfWidth, confidencePercent, purpose, seed, own);
    }
}
