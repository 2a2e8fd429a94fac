package haywright.app.exchange.csv;

import haywright.app.exchange.lab.Heading;
import haywright.app.words.Said;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Tested.Method;
import haywright.forage.lot.LotComposition;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** What a ranch's reports say, and what its lots are made of, as tables for other programs. */
public final class ReportsOut {
    private static final List<String> REPORTS = List.of(
            "report",
            "lot",
            "sample",
            "laboratory",
            "sampled",
            "reported",
            "how sampled",
            "method",
            "analyte",
            "value",
            "unit",
            "basis");

    private ReportsOut() {}

    /** One line a figure, as printed, with what stands in place of figures; {@link ReportCsv} takes it in again. */
    public static String reports(Ranch ranch) {
        var lines = new ArrayList<List<String>>();
        int number = 0;
        for (var report : ranch.reports().values()) {
            var head = head(ranch, report, ++number);
            for (var r : report.readings()) {
                // a fraction has no sign of its own to write
                var unit = r.unit() == Unit.FRACTION ? Unit.PERCENT : r.unit();
                lines.add(
                        line(by(head, r.method()), r.analyte(), plain(r.unit().to(unit, r.value())), unit, r.basis()));
            }
            for (var said : report.notMeasured()) {
                var limit = said.limit();
                var typed = Said.typed(said, limit == null ? "" : plain(limit));
                lines.add(line(by(head, said.method()), said.analyte(), typed, said.unit(), said.basis()));
            }
        }
        return TableCsv.of(REPORTS, lines);
    }

    private static List<String> head(Ranch ranch, LabReport report, int number) {
        var lot = ranch.lots().get(report.lot());
        return List.of(
                String.valueOf(number),
                lot == null ? "" : lot.name(),
                report.sampleCode(),
                report.laboratory(),
                day(report.sampled()),
                day(report.reported()),
                report.howSampled().words(),
                words(report.method()));
    }

    /** A figure that was measured another way than its report says so in its own line. */
    private static List<String> by(List<String> head, @Nullable Method own) {
        if (own == null) {
            return head;
        }
        var line = new ArrayList<>(head);
        line.set(REPORTS.indexOf("method"), words(own));
        return line;
    }

    private static String words(@Nullable Method method) {
        return method == null
                ? ""
                : switch (method) {
                    case WET -> "wet chemistry";
                    case NIR -> "NIR";
                    case UNKNOWN -> "";
                };
    }

    private static List<String> line(
            List<String> head, Analyte analyte, String value, @Nullable Unit unit, @Nullable Basis basis) {
        var line = new ArrayList<>(head);
        line.add(analyte.words());
        line.add(value);
        line.add(unit == null ? "" : Heading.unitWords(analyte, unit));
        line.add(basis == null || !analyte.hasBasis() ? "" : words(basis));
        return line;
    }

    private static String words(Basis basis) {
        return switch (basis) {
            case AS_RECEIVED -> "as received";
            case DRY_MATTER -> "dry matter";
            case NINETY_PCT -> "90 % dry matter";
        };
    }

    private static String day(@Nullable LocalDate day) {
        return day == null ? "" : day.toString();
    }

    private static String plain(double value) {
        return new BigDecimal(value, new MathContext(12)).stripTrailingZeros().toPlainString();
    }

    /** Nine times in ten it lies between these. */
    private record Range(double low, double high) {}

    /** One line a lot, what it is made of now, and where a range is known its two ends. */
    public static String lots(Yard yard, long seed) {
        var made = new ArrayList<LotComposition>();
        var analytes = new TreeSet<Analyte>();
        for (var lot : yard.ranch().lots().values()) {
            made.add(yard.composition(lot));
            analytes.addAll(made.get(made.size() - 1).composition().values().keySet());
        }
        var ranges = made.stream().map(lot -> ranges(lot, seed)).toList();
        var ranged = new TreeSet<Analyte>();
        ranges.forEach(known -> ranged.addAll(known.keySet()));
        var headings = new ArrayList<>(List.of("lot", "feed", "reports"));
        for (var analyte : analytes) {
            var unit = unit(analyte);
            headings.add(analyte.words() + unit);
            if (ranged.contains(analyte)) {
                headings.add(analyte.words() + ", likely from" + unit);
                headings.add(analyte.words() + ", likely to" + unit);
            }
        }
        var lines = new ArrayList<List<String>>();
        for (var lot : yard.ranch().lots().values()) {
            int at = lines.size();
            var line = new ArrayList<>(start(yard, lot));
            for (var analyte : analytes) {
                line.add(shown(made.get(at), analyte));
                if (ranged.contains(analyte)) {
                    var range = ranges.get(at).get(analyte);
                    line.add(range == null ? "" : plain(range.low));
                    line.add(range == null ? "" : plain(range.high));
                }
            }
            lines.add(line);
        }
        return TableCsv.of(headings, lines);
    }

    /** A limit that stands for a figure stays one: "<0.02". */
    private static String shown(LotComposition lot, Analyte analyte) {
        var known = lot.composition().values().get(analyte);
        if (known == null) {
            return "";
        }
        var below = known.below();
        return below == null ? plain(known.value()) : "<" + plain(below);
    }

    private static List<String> start(Yard yard, Lot lot) {
        return List.of(
                lot.name(),
                lot.feedClass().words(),
                String.valueOf(yard.ranch().reportsOn(lot.id()).size()));
    }

    private static Map<Analyte, Range> ranges(LotComposition lot, long seed) {
        var ranges = new EnumMap<Analyte, Range>(Analyte.class);
        lot.estimate()
                .ifPresent(estimate -> estimate.estimates()
                        .forEach(e -> ranges.put(
                                e.analyte(), new Range(e.now().low90(), e.now().high90()))));
        if (lot.estimate().isPresent()) {
            lot.derived(seed).forEach(d -> ranges.put(d.analyte(), new Range(d.low90(), d.high90())));
        }
        ranges.keySet().retainAll(lot.composition().values().keySet());
        return ranges;
    }

    /** ", % DM" */
    private static String unit(Analyte analyte) {
        var unit = analyte.unit().symbol() + (analyte.hasBasis() ? " DM" : "");
        return unit.isBlank() ? "" : ", " + unit.strip();
    }
}
