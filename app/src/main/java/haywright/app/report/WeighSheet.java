package haywright.app.report;

import haywright.app.words.Show;
import haywright.outlook.LotTons;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ranch.SheetCode;
import haywright.sampling.stock.Layout;
import haywright.sampling.stock.Picks;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** What goes to the scale: which bales of a lot to weigh, in walking order, with boxes for a pencil. */
public record WeighSheet(Ranch ranch, Lot lot, LocalDate made) {
    private static final double POINTS = 10.5;
    private static final int MOST = 10;
    /** The same bales whenever the sheet is printed. */
    private static final long SEED = 1;

    public WeighSheet {
        if (lot.stock().bales() == 0) {
            throw new Refused(
                    "lot", lot.name(), "it is not baled", "Enter its weight on its own page, from the load tickets.");
        }
    }

    /** @param first whether it is one of those to weigh when time is short */
    public record Row(int order, String where, boolean first) {}

    /** Every second one is among the first, so that they too come from all round the stack. */
    public List<Row> rows() {
        var layout = Layout.of(lot.stock()).orElseThrow();
        var picked = Picks.of(layout, Math.min(MOST, layout.count()), SEED).inWalkingOrder();
        var rows = new ArrayList<Row>();
        for (var place : picked) {
            rows.add(new Row(rows.size() + 1, layout.words(place), picked.size() <= MOST / 2 || rows.size() % 2 == 0));
        }
        return rows;
    }

    public String thought() {
        return Show.withUnit(Show.poundsNumber(LotTons.baleKg(lot).orElseThrow()), Unit.POUND);
    }

    public String count() {
        return Show.count(lot.stock().bales(), "bale");
    }

    public String day() {
        return Show.date(made);
    }

    public String code() {
        return SheetCode.ofWeights(lot);
    }

    /** The same sheet as one file for a phone. */
    public String phonePage() {
        return new PhoneCounts(
                        "Weigh " + lot.name(),
                        code(),
                        ranch.name() + " · made " + day(),
                        "Weigh these, at least the ones with a star.",
                        "lb",
                        1,
                        rows().stream()
                                .map(r -> r.where() + (r.first() ? " *" : ""))
                                .toList(),
                        "Nobody under a lifted bale or between loader and stack; keep 33 ft (10 m) from power"
                                + " lines. Local rules first.")
                .page();
    }

    public Paper paper(Paper.Size size) {
        return Paper.of(
                "Weighing sheet, " + lot.name(),
                "Which bales of %s to weigh, with boxes to fill in".formatted(lot.name()),
                "haywright/app/report/weighSheet.jte",
                this,
                size,
                POINTS,
                made);
    }
}
