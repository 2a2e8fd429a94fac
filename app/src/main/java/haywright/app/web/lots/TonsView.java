package haywright.app.web.lots;

import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.outlook.LotTons;
import haywright.ranch.Lot;
import haywright.sampling.stock.MassRange;
import haywright.sampling.stock.Stock;
import haywright.workings.Worked;
import java.util.List;

/**
 * What a lot weighs, every way beside the other.
 *
 * @param tons of the way that is used
 * @param range of the same; empty where nothing is known
 * @param canBeWeighed what still stands in a field cannot
 */
public record TonsView(Lot lot, String tons, String range, String why, List<Row> rows, boolean canBeWeighed) {
    /**
     * @param doubt where its range comes from
     * @param used whether it is the one that counts
     */
    public record Row(String how, String tons, String range, String doubt, boolean used, Worked workings) {}

    public static TonsView of(Lot lot) {
        var all = LotTons.of(lot);
        var used = all.used();
        return new TonsView(
                lot,
                used == null ? "not known" : Show.tons(used.kg()),
                used == null ? "" : range(used.range()),
                all.why(),
                all.ways().stream().map(way -> row(way, way == used)).toList(),
                !(lot.stock() instanceof Stock.Standing));
    }

    private static Row row(LotTons.Way way, boolean used) {
        var on = way.on();
        var doubt = way.range();
        return new Row(
                way.how() + (on == null ? "" : " on " + Show.date(on)),
                Show.tons(way.kg()),
                range(doubt),
                "%s %s (%s)"
                        .formatted(
                                doubt.words(),
                                doubt.source().cite(),
                                doubt.source().known().words()),
                used,
                way.workings());
    }

    private static String range(MassRange range) {
        if (Show.tonsNumber(range.lowKg()).equals(Show.tonsNumber(range.highKg()))) {
            return "%s to %s %s"
                    .formatted(
                            Show.number(Measures.mass().fromBase(range.lowKg()), 1),
                            Show.number(Measures.mass().fromBase(range.highKg()), 1),
                            Measures.tons());
        }
        return "%s to %s".formatted(Show.tonsNumber(range.lowKg()), Show.tons(range.highKg()));
    }
}
