package haywright.app.web.lab;

import haywright.app.words.Said;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.NotMeasured;
import haywright.forage.lab.Tested.Method;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What the sheets of a lot print of one analyte, to set beside the book's figure and the one that is used. */
final class AsPrinted {
    private AsPrinted() {}

    /** One line a report, the newest first: "12.1 %, NIR". @param newestFirst on one lot */
    static List<String> of(Analyte analyte, List<LabReport> newestFirst) {
        var lines = new ArrayList<String>();
        for (var report : newestFirst) {
            figure(analyte, report)
                    .or(() -> none(analyte, report))
                    .map(said -> newestFirst.size() == 1 ? said : said + ", " + day(report))
                    .ifPresent(lines::add);
        }
        return lines;
    }

    /** On dry matter where the sheet prints that, else as it prints it. */
    private static Optional<String> figure(Analyte analyte, LabReport report) {
        return report.readings().stream()
                .filter(r -> r.analyte() == analyte)
                .min(Comparator.comparing(r -> r.basis() != Basis.DRY_MATTER))
                .map(r ->
                        Show.withUnit(Show.significant(r.value(), 6), r.unit()).replace(' ', '\u00a0')
                                + basis(analyte, r.basis())
                                + by(r.method(), report.method()));
    }

    private static Optional<String> none(Analyte analyte, LabReport report) {
        return report.notMeasured().stream()
                .filter(n -> n.analyte() == analyte)
                .findFirst()
                .map(n -> said(n) + basis(analyte, n.basis()) + by(n.method(), report.method()));
    }

    private static String said(NotMeasured none) {
        var limit = none.limit();
        var unit = none.unit();
        return Said.typed(
                none,
                limit == null || unit == null
                        ? ""
                        : Show.withUnit(Show.significant(limit, 6), unit).replace(' ', '\u00a0'));
    }

    private static String basis(Analyte analyte, @Nullable Basis basis) {
        return basis == null || basis == Basis.DRY_MATTER || !analyte.hasBasis()
                ? ""
                : basis == Basis.NINETY_PCT ? " at 90\u00a0% dry matter" : " as received";
    }

    private static String by(@Nullable Method own, @Nullable Method ofReport) {
        return Stream.of(Optional.ofNullable(own), Optional.ofNullable(ofReport))
                .flatMap(Optional::stream)
                .findFirst()
                .map(method -> switch (method) {
                    case NIR -> ", NIR";
                    case WET -> ", wet chemistry";
                    case UNKNOWN -> "";
                })
                .orElse("");
    }

    private static String day(LabReport report) {
        var day = report.reported() == null ? report.sampled() : report.reported();
        return day != null ? Show.date(day) : report.laboratory().isBlank() ? "day not known" : report.laboratory();
    }
}
