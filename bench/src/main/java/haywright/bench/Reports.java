package haywright.bench;

import haywright.chance.Draws;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.LotEstimate;
import haywright.forage.Prior;
import haywright.forage.Reading;
import haywright.forage.ReportCheck;
import haywright.forage.Tested;
import haywright.sampling.Design;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * 10,000 reports of eight figures, from lines of text to estimates: processor time of each step as a ratio to reading the
 * lines alone. Reports are drawn from the kind they are of.
 */
final class Reports {
    private static final int REPORTS = 10_000;
    private static final List<Analyte> PRINTED =
            List.of(Analyte.DM, Analyte.CP, Analyte.ADF, Analyte.NDF, Analyte.CA, Analyte.P, Analyte.MG, Analyte.K);
    private static final Prior KIND =
            Prior.of(FeedClass.MIXED_HAY, Optional.empty()).orElseThrow();

    private Reports() {}

    public static void main(String[] args) {
        var lines = lines();
        double read = time("read", lines, line -> readings(line).size());
        double checked = time("read and checked", lines, line -> check(line).size());
        double estimated = time(
                "read, checked and estimated",
                lines,
                line -> estimate(line).estimates().size());
        double derived = time(
                "all that, and energy drawn",
                lines,
                line -> estimate(line).derived(1).size());
        System.out.printf(
                "to reading alone: checked %.0f, estimated %.0f, with energy drawn %.0f%n",
                checked / read, estimated / read, derived / read);
    }

    private static double time(String what, List<String> lines, ToDoubleFunction<String> step) {
        double sum = 0;
        for (var line : lines.subList(0, 1_000)) {
            sum += step.applyAsDouble(line); // warm
        }
        double from = Cpu.seconds();
        for (var line : lines) {
            sum += step.applyAsDouble(line);
        }
        double took = Cpu.seconds() - from;
        System.out.printf("%s: %.2f s of processor for %d reports (%.0f)%n", what, took, lines.size(), sum);
        return took;
    }

    private static List<String> lines() {
        var draws = new Draws(1);
        var lines = new ArrayList<String>();
        for (int i = 0; i < REPORTS; i++) {
            var z = new double[KIND.gaussian().size()];
            for (int j = 0; j < z.length; j++) {
                z[j] = draws.normal();
            }
            var lot = KIND.gaussian().at(z);
            var line = new StringBuilder("S" + i);
            for (var analyte : PRINTED) {
                for (int j = 0; j < z.length; j++) {
                    var cell = KIND.cells().get(j);
                    if (cell.analyte() == analyte) {
                        line.append(',').append(cell.marginal().log() ? Math.exp(lot[j]) : lot[j]);
                    }
                }
            }
            lines.add(line.toString());
        }
        return lines;
    }

    private static List<Reading> readings(String line) {
        var cells = line.split(",");
        var readings = new ArrayList<Reading>();
        for (int i = 0; i < PRINTED.size(); i++) {
            var analyte = PRINTED.get(i);
            readings.add(new Reading(
                    analyte,
                    Double.parseDouble(cells[i + 1]),
                    analyte.unit(),
                    analyte == Analyte.DM ? Basis.AS_RECEIVED : Basis.DRY_MATTER));
        }
        return readings;
    }

    private static Map<Analyte, Double> check(String line) {
        return Tested.measured(ReportCheck.check(FeedClass.MIXED_HAY, Optional.empty(), readings(line)));
    }

    private static LotEstimate estimate(String line) {
        return LotEstimate.of(
                KIND, List.of(new Tested("A", Tested.Method.UNKNOWN, "", Design.of(20, 1, 1), 150, check(line))));
    }
}
