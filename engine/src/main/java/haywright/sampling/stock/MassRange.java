package haywright.sampling.stock;

import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.PublishedTable;
import haywright.workings.Source;

/**
 * The least and the most a lot may weigh.
 *
 * @param words where the doubt comes from
 */
public record MassRange(double lowKg, double highKg, String words, Source source) {
    private static final PublishedTable DENSITIES = PublishedTable.read(MassRange.class, "densities.csv");
    private static final double MISS_LARGE_KG = Unit.POUND.toBase(100);
    private static final double MISS_SMALL_KG = Unit.POUND.toBase(10);
    private static final double SCALE = 0.01;

    /** A guess of bale weight is wrong the same way for the whole lot, so the miss is not shared out over the bales. */
    static MassRange ofGuessedBales(Stock.BaleKind bale, int count, Quantity baleWeight) {
        boolean small = bale == Stock.BaleKind.SMALL_SQUARE;
        double miss = Math.min(small ? MISS_SMALL_KG : MISS_LARGE_KG, baleWeight.base() / 2);
        return new MassRange(
                count * (baleWeight.base() - miss),
                count * (baleWeight.base() + miss),
                "If the bale weight was guessed: guesses typically miss by %s lb.".formatted(small ? "10" : "100"),
                small
                        ? Source.judgment("a tenth of what large bales are missed by")
                        : Source.read(
                                "Blazek and Wiegand (Univ. Wisconsin Ext.), 34 lots on 16 farms: 100 lb a bale, in Hay and"
                                        + " Forage Grower"));
    }

    /** The published range of density round the one that was taken. */
    static MassRange ofDensity(String what, double kg, Quantity density) {
        var row = DENSITIES.row("what", what);
        double low = Unit.LB_PER_FT3.toBase(row.number("low").orElseThrow());
        double high = Unit.LB_PER_FT3.toBase(row.number("high").orElseThrow());
        double taken = density.base();
        return new MassRange(
                kg * Math.min(low, taken) / taken,
                kg * Math.max(high, taken) / taken,
                "Published densities: %s to %s lb of %s per cubic foot."
                        .formatted(row.text("low"), row.text("high"), row.text("basis")),
                Source.read(row.text("source")));
    }

    static MassRange ofScale(double kg) {
        return judged(kg, SCALE, "A legal-for-trade scale is right to about 1 in 100.");
    }

    static MassRange judged(double kg, double share, String words) {
        return new MassRange(kg * (1 - share), kg * (1 + share), words, Source.judgment(words));
    }
}
