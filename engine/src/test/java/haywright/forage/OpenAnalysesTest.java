package haywright.forage;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.lab.Tested;
import haywright.forage.lot.LotEstimate;
import haywright.forage.lot.ResultError;
import haywright.sampling.Design;
import haywright.workings.PublishedTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Analyses of real plots: one analyte is hidden, the others are told, and what is then said of the hidden one is held
 * against what the kind alone would have said. The tables and their licenses: open-data-licenses.txt. The figures are
 * those of docs/how-far-to-trust.md, which must be true.
 */
class OpenAnalysesTest {
    private static final List<Analyte> FIBER = List.of(Analyte.CP, Analyte.ADF, Analyte.NDF);
    private static final List<Analyte> AND_ASH = List.of(Analyte.CP, Analyte.ADF, Analyte.NDF, Analyte.ASH);

    /** A plot is cut whole, so that nothing of its result comes from sampling. */
    private static final Design WHOLE = Design.of(1_000_000, 1, 1);

    private record Hidden(Prior prior, Analyte analyte, double before, double after, double inside) {
        private String row() {
            return "| %s | %s | %.1f | %.1f | %.0f | %s |"
                    .formatted(
                            prior.words(),
                            analyte.words().toLowerCase(java.util.Locale.ROOT),
                            before,
                            after,
                            inside,
                            after < before ? "better" : "**worse**");
        }
    }

    @Test
    void aRightKindSaysMoreOfWhatWasNotMeasured() {
        var hidden = new ArrayList<>(hide("open_alfalfa_cuts.csv", "alfalfa_hay", FIBER));
        hidden.addAll(hide("open_sown_swards.csv", "green_pasture", AND_ASH));
        assertThat(hidden)
                .hasSize(7)
                .allSatisfy(h -> assertThat(h.after).as(h.row()).isLessThan(h.before));
        isInTheDocument(hidden);
    }

    /** Young swards taken for mixed hay: NDF is then said worse than by the kind alone. */
    @Test
    void aWrongKindCanSayLess() {
        var hidden = hide("open_sown_swards.csv", "alfalfa_grass_hay", AND_ASH);
        assertThat(hidden)
                .filteredOn(h -> h.after >= h.before)
                .extracting(Hidden::analyte)
                .containsExactly(Analyte.NDF);
        isInTheDocument(hidden);
    }

    /**
     * What a rancher picks, and nothing measured yet: the range must hold nine of ten plots where no maturity is said.
     * With a maturity said that is not the plots', it holds far fewer, which the page says.
     */
    @Test
    void legumeHayOfWhichNothingIsSaidHoldsNineOfTen() {
        var asPicked = picked("");
        assertThat(asPicked)
                .hasSize(3)
                .allSatisfy(p -> assertThat(p.inside).as(p.row()).isGreaterThanOrEqualTo(90));
        var rows = new ArrayList<>(asPicked.stream().map(Picked::row).toList());
        for (var said : List.of("C139", "C153", "C154")) {
            picked(said).forEach(p -> rows.add(p.row()));
        }
        assertInDocument(rows);
    }

    private record Picked(String said, Analyte analyte, double low, double high, double inside) {
        private String row() {
            return "| %s | %s | %.0f to %.0f | %.0f |"
                    .formatted(said, analyte.words().toLowerCase(java.util.Locale.ROOT), low, high, inside);
        }
    }

    /** @param bookRow as a lot names it; empty for legume hay and nothing more */
    private static List<Picked> picked(String bookRow) {
        var prior = Prior.of(FeedClass.LEGUME_HAY, bookRow).orElseThrow();
        var said = bookRow.isEmpty()
                ? "nothing"
                : FeedBook.published().row(bookRow).orElseThrow().feed();
        var rows = PublishedTable.read(OpenAnalysesTest.class, "open_alfalfa_cuts.csv")
                .rows();
        var picked = new ArrayList<Picked>();
        for (var analyte : FIBER) {
            var bell = prior.cells().get(prior.index(analyte)).marginal();
            int inside = 0;
            for (var row : rows) {
                double measured = row.number(analyte.id()).orElseThrow();
                double error = ResultError.of(prior, analyte, plot(Map.of(analyte, measured)))
                        .laboratory();
                double sd = Math.sqrt(bell.sd() * bell.sd() + error);
                inside += Math.abs(measured - bell.center()) <= 1.6448536269514722 * sd ? 1 : 0;
            }
            picked.add(new Picked(said, analyte, bell.low90(), bell.high90(), 100.0 * inside / rows.size()));
        }
        return picked;
    }

    private static void isInTheDocument(List<Hidden> hidden) {
        assertInDocument(hidden.stream().map(Hidden::row).toList());
    }

    private static void assertInDocument(List<String> rows) {
        try {
            assertThat(Files.readString(Path.of("..", "docs", "how-far-to-trust.md")))
                    .contains(rows);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static List<Hidden> hide(String table, String kind, List<Analyte> analytes) {
        var prior = Prior.named(kind).orElseThrow();
        var rows = PublishedTable.read(OpenAnalysesTest.class, table).rows();
        var hidden = new ArrayList<Hidden>();
        for (var analyte : analytes) {
            double before = 0;
            double after = 0;
            int inside = 0;
            for (var row : rows) {
                var values = new EnumMap<Analyte, Double>(Analyte.class);
                analytes.forEach(a -> values.put(a, row.number(a.id()).orElseThrow()));
                double measured = values.remove(analyte);
                var said = LotEstimate.of(prior, List.of(plot(values))).estimates().stream()
                        .filter(e -> e.analyte() == analyte)
                        .findFirst()
                        .orElseThrow();
                before += Math.pow(measured - said.before().center(), 2) / rows.size();
                after += Math.pow(measured - said.now().center(), 2) / rows.size();
                // What is held against it was read by NIR as well, with its own error.
                double error = ResultError.of(prior, analyte, plot(Map.of(analyte, measured)))
                        .laboratory();
                double sd = Math.sqrt(said.now().sd() * said.now().sd() + error);
                inside += Math.abs(measured - said.now().center()) <= 1.6448536269514722 * sd ? 1 : 0;
            }
            hidden.add(new Hidden(prior, analyte, Math.sqrt(before), Math.sqrt(after), 100.0 * inside / rows.size()));
        }
        return hidden;
    }

    private static Tested plot(Map<Analyte, Double> values) {
        return new Tested("", Tested.Method.NIR, "", WHOLE, 0, values);
    }
}
