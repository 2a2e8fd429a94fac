package haywright.app.web.lab;

import haywright.app.web.Page;
import haywright.forage.Analyte;
import haywright.outlook.SameHay;
import haywright.outlook.TestedFor;
import haywright.outlook.Yard;
import haywright.ranch.Lot;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Lots side by side, a column each: the figures that are used, where they lie nine times in ten, what they cost.
 *
 * @param all every lot of the ranch, to pick from
 */
public record LotsBeside(List<Lot> all, List<Column> lots, List<Row> rows) {
    /** More columns than a page of paper holds. */
    private static final int MOST = 6;

    /** As many as a screen holds. */
    private static final int AT_FIRST = 4;

    private static final List<Analyte> SHOWN = List.of(
            Analyte.DM,
            Analyte.CP,
            Analyte.ADF,
            Analyte.NDF,
            Analyte.TDN,
            Analyte.NEM,
            Analyte.NEG,
            Analyte.RFV,
            Analyte.CA,
            Analyte.P,
            Analyte.MG,
            Analyte.K,
            Analyte.S,
            Analyte.NO3N);

    /** @param tested "Tested for protein, fiber", "Not tested" */
    public record Column(Lot lot, String tested) {}

    /** One figure of every lot. @param cells in the order of the lots */
    public record Row(String name, List<Cell> cells) {
        private boolean isEmpty() {
            return cells.stream().allMatch(c -> c.figure.isEmpty());
        }
    }

    /** @param figure empty where it is not known. @param small its range or what else is to be said */
    public record Cell(String figure, String small) {}

    public boolean has(Lot lot) {
        return lots.stream().anyMatch(c -> c.lot.id().equals(lot.id()));
    }

    static LotsBeside of(Page page) {
        var all = List.copyOf(page.ranch().lots().values());
        var asked = page.http().queryParams("lot");
        var picked = all.stream()
                .filter(lot -> asked.isEmpty() || asked.contains(lot.id().toString()))
                .limit(asked.isEmpty() ? AT_FIRST : MOST)
                .toList();
        var yard = page.yard();
        var rows = new LinkedHashMap<String, List<Cell>>();
        for (var lot : picked) {
            cells(yard, lot)
                    .forEach((name, cell) ->
                            rows.computeIfAbsent(name, n -> new ArrayList<>()).add(cell));
        }
        return new LotsBeside(
                all,
                picked.stream().map(lot -> new Column(lot, tested(yard, lot))).toList(),
                rows.entrySet().stream()
                        .map(e -> new Row(e.getKey(), e.getValue()))
                        .filter(row -> !row.isEmpty())
                        .toList());
    }

    private static String tested(Yard yard, Lot lot) {
        return TestedFor.of(yard.ranch(), lot).words();
    }

    /** The same names in the same order for every lot. */
    private static Map<String, Cell> cells(Yard yard, Lot lot) {
        var lotMade = yard.composition(lot);
        var made = lotMade.composition();
        var ranges = Trust.of(lot, lotMade, SameHay.counted(yard.ranch(), lot.id()))
                .map(Trust::ranges)
                .orElse(Map.of());
        var cells = new LinkedHashMap<String, Cell>();
        for (var analyte : SHOWN) {
            var value = made.value(analyte);
            var range = ranges.get(analyte);
            cells.put(
                    Readings.name(analyte),
                    value.isEmpty()
                            ? new Cell("", analyte == Analyte.NO3N ? "not tested" : "")
                            : new Cell(Figures.say(analyte, value.getAsDouble()), range == null ? "" : range.now()));
        }
        for (var number : LotWorth.of(lot, made)) {
            cells.put(number.what(), new Cell(number.value(), ""));
        }
        return cells;
    }
}
