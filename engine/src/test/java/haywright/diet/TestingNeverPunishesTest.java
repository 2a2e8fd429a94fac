package haywright.diet;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.LiveWeight;
import haywright.cattle.Pregnancy;
import haywright.cattle.RequirementSystem;
import haywright.cattle.need.Need;
import haywright.cattle.need.Requirement;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.hazard.NitrateRisk;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.forage.lab.Tested;
import haywright.forage.lot.LotComposition;
import haywright.forage.lot.LotEstimate;
import haywright.sampling.Design;
import haywright.workings.Origin;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A report below what was expected never makes a lot less usable than no report: it may not be shut out where it was let
 * in, and no row of a danger may charge it more. Over every row of the feed book, every danger, every way of feeding, cattle
 * with a calf in them and without, a grab and a cored stack, clean water and bad.
 */
class TestingNeverPunishesTest {
    private static final FeedBook BOOK = FeedBook.published();

    private static final Need BRED = new Requirement(
            new Animal(
                    AnimalClass.MATURE_COW,
                    Breed.AVERAGE,
                    new LiveWeight(590, false),
                    5,
                    new Pregnancy(38, 200),
                    null,
                    0,
                    590,
                    20),
            RequirementSystem.NRC_1996);

    private static final Need OPEN =
            new Requirement(Animal.matureCow(new LiveWeight(590, false)), RequirementSystem.NRC_1996);

    private static final Need CALVES = new Requirement(
            new Animal(AnimalClass.GROWING, Breed.AVERAGE, new LiveWeight(230, false), 5, null, null, 0.5, 560, 20),
            RequirementSystem.NRC_1996);

    /** A lot that must be mixed, so that what others hold of the danger can be felt. */
    private static final double HOT = 1500;

    static Stream<FeedBook.Row> rows() {
        return BOOK.rows().stream().filter(r -> r.feedClass() != FeedClass.MINERAL && r.feedClass() != FeedClass.NPN);
    }

    /** Well below every line that a source calls safe: what anybody hopes for who knows nothing. */
    private static final Map<Analyte, double[]> HOPED_FOR = Map.of(
            Analyte.AFLATOXIN, new double[] {0, 2, 19},
            Analyte.DON, new double[] {0, 1, 9},
            Analyte.FUMONISIN, new double[] {0, 1, 14},
            Analyte.ERGOT, new double[] {0, 20, 190},
            Analyte.HCN, new double[] {0, 50, 480},
            Analyte.SE, new double[] {0.05, 0.3, 1.5});

    @ParameterizedTest
    @MethodSource("rows")
    void aResultBelowWhatWasExpectedNeverShutsALotOutNorChargesItMore(FeedBook.Row row) {
        boolean risk = NitrateRisk.isRisk(row.feedClass(), Optional.of(row));
        var untested = made(row, Map.of(), 1);
        double usual = Prior.of(row.feedClass(), Optional.of(row))
                .flatMap(kind -> kind.cells().stream()
                        .filter(c -> c.analyte() == Analyte.NO3N)
                        .findFirst())
                .map(c -> c.marginal().mean())
                .orElse(0.0);
        for (double share : new double[] {0.02, 0.3, 0.7, 1}) {
            for (int places : new int[] {1, 20}) {
                if (usual > 0) {
                    isNoLessUsable(row, risk, untested, made(row, Map.of(Analyte.NO3N, share * usual), places));
                }
            }
        }
        HOPED_FOR.forEach((analyte, values) -> {
            for (double value : values) {
                isNoLessUsable(row, risk, untested, made(row, Map.of(analyte, value), 20));
            }
        });
    }

    /** The case that was met: mixed hay of 250 ppm, no wagon. */
    @ParameterizedTest
    @EnumSource(Mixing.class)
    void aSafeResultNeedsNoWagon(Mixing mixing) {
        var row = BOOK.usual(FeedClass.MIXED_HAY).orElseThrow();
        var hay = feed("hay", row, false, made(row, Map.of(Analyte.NO3N, 250.0), 1));
        var options = new DietOptions(Set.of(), List.of(), 1, mixing);
        for (var need : List.of(BRED, OPEN, CALVES)) {
            assertThat(Diet.of(List.of(hay), need, options).feeds()).containsExactly(hay);
        }
        // Manitoba: up to 0.3 % NO3 (678 ppm NO3-N) is safe for all cattle
        var atTheLine = feed("hay", row, false, made(row, Map.of(Analyte.NO3N, 678.0), 1));
        var diet = Diet.of(List.of(atTheLine), BRED, options);
        assertThat(diet.feeds()).containsExactly(atTheLine);
        assertThat(diet.row("nitrate").margin(new double[] {10})).isGreaterThanOrEqualTo(0);
    }

    private static void isNoLessUsable(FeedBook.Row row, boolean risk, Composition untested, Composition tested) {
        for (var need : List.of(BRED, OPEN, CALVES)) {
            for (var mixing : Mixing.values()) {
                for (double water : new double[] {0, 20}) {
                    var options = new DietOptions(Set.of(), List.of(), 1, mixing).with(new DietOptions.Water(water, 0));
                    var before = Diet.of(List.of(feed("lot", row, risk, untested), hot()), need, options);
                    var after = Diet.of(List.of(feed("lot", row, risk, tested), hot()), need, options);
                    var isIn = before.feeds().stream().anyMatch(f -> f.id().equals("lot"));
                    if (isIn) {
                        assertThat(after.feeds())
                                .as(
                                        "%s, %s, %s",
                                        row.feed(), mixing, tested.values().keySet())
                                .extracting(Feed::id)
                                .contains("lot");
                        dangers(after)
                                .forEach((id, charge) -> assertThat(charge)
                                        .as("%s of %s, %s", id, row.feed(), mixing)
                                        .isLessThanOrEqualTo(dangers(before).getOrDefault(id, 0.0) + 1e-9));
                    }
                }
            }
        }
    }

    /** What a kilogram of the lot takes of each danger's room; below 0 where it makes room. */
    private static Map<String, Double> dangers(Diet diet) {
        int lot = diet.feeds().stream().map(Feed::id).toList().indexOf("lot");
        var charges = new java.util.HashMap<String, Double>();
        for (var row : diet.rows()) {
            if (row.kind() == DietRow.Kind.DANGER) {
                charges.put(row.id(), row.coefficients()[lot]);
            }
        }
        return charges;
    }

    private static Feed hot() {
        var row = BOOK.usual(FeedClass.CEREAL_HAY).orElseThrow();
        var values = new EnumMap<>(made(row, Map.of(), 1).values());
        values.put(Analyte.NO3N, new Composition.Known(HOT, new Origin.Typed("a report")));
        for (var toxin : List.of(Analyte.FUMONISIN, Analyte.ERGOT)) {
            values.put(toxin, new Composition.Known(toxin == Analyte.ERGOT ? 400 : 20, new Origin.Typed("a report")));
        }
        return new Feed("hot", "hot", FeedClass.CEREAL_HAY, new Composition(values), true);
    }

    private static Feed feed(String id, FeedBook.Row row, boolean risk, Composition made) {
        return new Feed(id, id, row.feedClass(), made, risk);
    }

    private static Composition made(FeedBook.Row row, Map<Analyte, Double> found, int places) {
        var readings = new ArrayList<Reading>();
        found.forEach((analyte, value) -> readings.add(new Reading(analyte, value, analyte.unit(), Basis.DRY_MATTER)));
        var report = new LabReport(
                new UUID(0, 1),
                new UUID(0, 2),
                "A",
                "",
                null,
                LocalDate.of(2026, 10, 14),
                LabReport.HowSampled.PLAN,
                readings,
                List.of());
        var tested = found.isEmpty()
                ? List.<Tested>of()
                : List.of(new Tested("A", Tested.Method.WET, "bag", Design.of(places, 1, 1), 0, found));
        return LotComposition.of(
                        row.feedClass(),
                        Optional.of(row),
                        found.isEmpty() ? List.of() : List.of(report),
                        Prior.of(row.feedClass(), Optional.of(row)).map(kind -> LotEstimate.of(kind, tested)))
                .composition();
    }
}
