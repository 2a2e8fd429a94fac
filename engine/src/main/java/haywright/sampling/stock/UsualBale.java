package haywright.sampling.stock;

import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.PublishedTable;
import haywright.workings.PublishedTable.Row;

/** What a bale usually weighs, taken where nobody said it; sizes differ so much that the range is wide. */
public final class UsualBale {
    private static final PublishedTable TABLE = PublishedTable.read(UsualBale.class, "usual_bales.csv");

    private UsualBale() {}

    /** As fed. */
    public static Quantity weight(Stock.BaleKind bale) {
        return Quantity.of(row(bale).number("lb").orElseThrow(), Unit.POUND);
    }

    static Input input(Stock.BaleKind bale) {
        return Input.published(
                "w", weight(bale).base(), Unit.KILOGRAM, row(bale).source());
    }

    /** Of so many. */
    static MassRange range(Stock.BaleKind bale, int count) {
        var row = row(bale);
        return new MassRange(
                count * Unit.POUND.toBase(row.number("low").orElseThrow()),
                count * Unit.POUND.toBase(row.number("high").orElseThrow()),
                "No bale weight was entered: bales of %s weigh %s to %s lb."
                        .formatted(row.text("size"), row.text("low"), row.text("high")),
                row.source());
    }

    private static Row row(Stock.BaleKind bale) {
        return TABLE.row("what", bale.name());
    }
}
