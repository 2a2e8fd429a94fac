package haywright.bench;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.chance.Draws;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.book.Prior;
import haywright.forage.lab.Reading;
import haywright.forage.lab.ReportCheck;
import haywright.forage.lab.Tested;
import haywright.forage.lot.LotEstimate;
import haywright.sampling.Design;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;

/**
 * 10,000 reports of eight figures in fifty CSV files, from text to estimates: processor time of each step as a ratio to
 * reading the CSV's cells as numbers, and the heap in use. Reports are drawn from the kind they are of.
 */
final class Reports {
    private static final int FILES = 50;
    private static final int A_FILE = 200;
    private static final List<Analyte> PRINTED =
            List.of(Analyte.DM, Analyte.CP, Analyte.ADF, Analyte.NDF, Analyte.CA, Analyte.P, Analyte.MG, Analyte.K);
    private static final String HEADINGS = "Sample,DM,CP DM %,ADF DM %,NDF DM %,Ca DM %,P DM %,Mg DM %,K DM %\n";
    private static final Prior KIND =
            Prior.of(FeedClass.MIXED_HAY, Optional.empty()).orElseThrow();

    private Reports() {}

    /** What is done with one file; how many figures came of it. */
    private interface Step {
        long figures(String csv) throws IOException;
    }

    public static void main(String[] args) throws IOException {
        var files = files();
        double read = time("cells read as numbers", files, Reports::cells);
        double brought = time(
                "brought in",
                files,
                csv -> samples(csv).stream().mapToLong(s -> s.cells().size()).sum());
        double checked = time(
                "brought in and checked",
                files,
                csv -> samples(csv).stream().mapToLong(s -> check(s).size()).sum());
        double estimated = time(
                "brought in, checked and estimated",
                files,
                csv -> samples(csv).stream()
                        .mapToLong(s -> estimate(s).tested().get(0).values().size())
                        .sum());
        double derived = time(
                "all that, and energy drawn",
                files,
                csv -> samples(csv).stream()
                        .mapToLong(s -> PRINTED.size()
                                * Math.min(1, estimate(s).derived(1).size()))
                        .sum());
        var kept = new ArrayList<LotEstimate>();
        for (var csv : files) {
            samples(csv).forEach(sample -> kept.add(estimate(sample)));
        }
        System.gc();
        var memory = Runtime.getRuntime();
        System.out.printf(
                "to reading alone: brought in %.0f, checked %.0f, estimated %.0f, with energy drawn %.0f; heap with all %d estimates kept %d MB of %d%n",
                brought / read,
                checked / read,
                estimated / read,
                derived / read,
                kept.size(),
                (memory.totalMemory() - memory.freeMemory()) >> 20,
                memory.maxMemory() >> 20);
    }

    private static double time(String what, List<String> files, Step step) throws IOException {
        for (var csv : files.subList(0, FILES / 10)) {
            step.figures(csv); // warm
        }
        long figures = 0;
        double from = Cpu.seconds();
        for (var csv : files) {
            figures += step.figures(csv);
        }
        double took = Cpu.seconds() - from;
        if (figures != (long) FILES * A_FILE * PRINTED.size()) {
            throw new IllegalStateException(what + " gave " + figures + " figures");
        }
        System.out.printf("%s: %.2f s of processor%n", what, took);
        return took;
    }

    private static List<String> files() {
        var draws = new Draws(1);
        var files = new ArrayList<String>();
        for (int file = 0; file < FILES; file++) {
            var csv = new StringBuilder(HEADINGS);
            for (int i = 0; i < A_FILE; i++) {
                csv.append('S').append(file).append('-').append(i);
                lot(draws).forEach(value -> csv.append(',').append(String.format(Locale.ROOT, "%.3f", value)));
                csv.append('\n');
            }
            files.add(csv.toString());
        }
        return files;
    }

    /** Drawn until it could be a hay: bells go on where hay does not. */
    private static List<Double> lot(Draws draws) {
        while (true) {
            var z = new double[KIND.gaussian().size()];
            for (int j = 0; j < z.length; j++) {
                z[j] = draws.normal();
            }
            var drawn = KIND.gaussian().at(z);
            var lot = new ArrayList<Double>();
            var readings = new ArrayList<Reading>();
            for (var analyte : PRINTED) {
                int at = index(analyte);
                double value = KIND.cells().get(at).marginal().log() ? Math.exp(drawn[at]) : drawn[at];
                lot.add(value);
                readings.add(new Reading(
                        analyte, value, analyte.unit(), analyte == Analyte.DM ? Basis.AS_RECEIVED : Basis.DRY_MATTER));
            }
            if (check(readings).size() == PRINTED.size()) {
                return lot;
            }
        }
    }

    private static int index(Analyte analyte) {
        for (int j = 0; j < KIND.cells().size(); j++) {
            if (KIND.cells().get(j).analyte() == analyte) {
                return j;
            }
        }
        throw new IllegalStateException(analyte.name());
    }

    private static long cells(String csv) throws IOException {
        long figures = 0;
        try (var parser = CSVFormat.RFC4180
                .builder()
                .setSkipHeaderRecord(true)
                .setHeader()
                .get()
                .parse(new StringReader(csv))) {
            for (var row : parser) {
                for (int i = 1; i < row.size(); i++) {
                    figures += Double.isFinite(Double.parseDouble(row.get(i))) ? 1 : 0;
                }
            }
        }
        return figures;
    }

    private static List<Understood.Sample> samples(String csv) {
        return ReportCsv.read(csv, Decimals.BY_SHEET, null, Vocabulary.HOUSE).samples();
    }

    private static Map<Analyte, Double> check(Understood.Sample sample) {
        var readings = new ArrayList<Reading>();
        for (var cell : sample.cells()) {
            readings.add(new Reading(
                    cell.analyte(),
                    Double.parseDouble(cell.text()),
                    Objects.requireNonNullElse(cell.unit(), cell.analyte().unit()),
                    Objects.requireNonNullElse(cell.basis(), Basis.AS_RECEIVED)));
        }
        return check(readings);
    }

    private static Map<Analyte, Double> check(List<Reading> readings) {
        return Tested.measured(ReportCheck.check(FeedClass.MIXED_HAY, Optional.empty(), readings));
    }

    private static LotEstimate estimate(Understood.Sample sample) {
        return LotEstimate.of(
                KIND, List.of(new Tested("A", Tested.Method.UNKNOWN, "", Design.of(20, 1, 1), 150, check(sample))));
    }
}
