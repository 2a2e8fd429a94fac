package haywright.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.LiveWeight;
import haywright.cattle.RequirementSystem;
import haywright.cattle.need.Need;
import haywright.cattle.need.Requirement;
import haywright.diet.DietOptions;
import haywright.diet.Feed;
import haywright.diet.Sureness;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.forage.lab.Tested;
import haywright.forage.lot.LotComposition;
import haywright.forage.lot.LotDistribution;
import haywright.forage.lot.LotEstimate;
import haywright.quantity.Unit;
import haywright.sampling.Design;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the doubt about a ration is made of, and what it costs to be surer. Feeds and prices are invented. */
class DoubtsTest {
    private static final Need DRY_COW =
            new Requirement(Animal.matureCow(new LiveWeight(590, false)), RequirementSystem.NRC_1996);
    private static final Need HEIFER = new Requirement(
            new Animal(AnimalClass.GROWING, Breed.AVERAGE, new LiveWeight(230, false), 5, null, null, 0.5, 560, 20),
            RequirementSystem.NRC_1996);

    private static PricedFeed lot(String id, FeedClass kind, double price, LabReport... reports) {
        var row = FeedBook.published().usual(kind);
        var made = LotComposition.of(
                kind,
                row,
                List.of(reports),
                Prior.of(kind, row)
                        .map(prior -> LotEstimate.of(
                                prior,
                                Stream.of(reports)
                                        .map(one -> Tested.of(kind, row, one, "", Design.of(20, 1, 1), 100))
                                        .toList())));
        var feed = new Feed(id, id, kind, made.composition(), false, Optional.of(LotDistribution.of(made)));
        return new PricedFeed(feed, price, PricedFeed.dryMatterOf(feed), 5);
    }

    private static LabReport tested(double protein, double adf) {
        return new LabReport(
                new UUID(0, 1),
                new UUID(0, 2),
                "north",
                "",
                null,
                null,
                LabReport.HowSampled.PLAN,
                List.of(
                        new Reading(Analyte.CP, protein, Unit.PERCENT, Basis.DRY_MATTER),
                        new Reading(Analyte.ADF, adf, Unit.PERCENT, Basis.DRY_MATTER)),
                List.of(),
                Tested.Method.WET,
                List.of());
    }

    private static final List<PricedFeed> FEEDS = List.of(
            lot("grass", FeedClass.GRASS_HAY, 0.13, tested(9, 36)),
            lot("alfalfa", FeedClass.LEGUME_HAY, 0.2, tested(17, 33)),
            lot("straw", FeedClass.STRAW, 0.06),
            lot("barley", FeedClass.GRAIN, 0.26),
            lot("distillers", FeedClass.DISTILLERS_GRAINS, 0.27));

    private static LeastCostRation asked(Need need, Sureness sureness) {
        return new LeastCostRation(FEEDS, need, DietOptions.USUAL, sureness, LeastCostRation.Amounts.EXACT);
    }

    /** Draws through the equations themselves are the check: another road to how surely each row is kept. */
    @Test
    void aRowIsAsSureAsDrawsSay() {
        for (var need : List.of(DRY_COW, HEIFER)) {
            var ration = (Ration) asked(need, new Sureness(75, 85, 99)).solve();
            var drawn = ration.chance().byRow();
            var doubts = Doubts.of(ration);
            assertThat(doubts).isNotEmpty();
            for (var doubt : doubts) {
                assertThat(doubt.surePercent())
                        .as(doubt.row().id())
                        .isCloseTo(drawn.get(doubt.row().id()), within(4.0));
                assertThat(doubt.parts().stream()
                                .mapToDouble(Doubts.Doubt::sharePercent)
                                .sum())
                        .isCloseTo(100, within(1e-6));
                assertThat(doubt.parts()).allMatch(part -> part.surePercentWithout() >= doubt.surePercent() - 1e-9);
            }
            assertThat(doubts).isSortedAccordingTo(Comparator.comparingDouble(Doubts::surePercent));
            double leastDrawn = drawn.values().stream().min(Double::compare).orElseThrow();
            assertThat(doubts.get(0).surePercent()).isCloseTo(leastDrawn, within(4.0));
        }
    }

    @Test
    void eachDoubtSaysWhatShrinksIt() {
        var ration = (Ration) asked(DRY_COW, new Sureness(75, 85, 99)).solve();
        for (var doubt : Doubts.of(ration)) {
            for (var part : doubt.parts()) {
                var shared = part.shared().map(s -> s.of()).orElse("");
                assertThat(part.shrinks())
                        .isEqualTo(
                                part.feed().isPresent()
                                        ? Doubts.Shrinks.SAMPLE
                                        : shared.equals("north")
                                                ? Doubts.Shrinks.OTHER_LABORATORY
                                                : Doubts.Shrinks.CONDITION_SCORES);
            }
        }
        var energy = Doubts.of(ration).stream()
                .filter(d -> d.row().id().equals("nem"))
                .findFirst()
                .orElseThrow();
        assertThat(energy.parts())
                .extracting(Doubts.Doubt::shrinks)
                .contains(Doubts.Shrinks.SAMPLE, Doubts.Shrinks.CONDITION_SCORES);
    }

    /** Walked up in one open program, each point costs what a program made for it alone costs; surer never costs less. */
    @Test
    void aPointOfTheCurveIsTheRationMadeForItAlone() {
        for (var need : List.of(DRY_COW, HEIFER)) {
            var question = asked(need, new Sureness(75, 85, 99));
            var ration = (Ration) question.solve();
            var curve = SurenessCurve.of(question, ration);
            assertThat(curve.points()).hasSizeGreaterThan(10);
            double before = 0;
            for (var point : curve.points()) {
                var alone = (Ration) asked(need, new Sureness(point.percent(), point.percent(), 99))
                        .solve();
                assertThat(point.weighed()).isCloseTo(alone.weighed(), within(1e-5 * alone.weighed()));
                assertThat(point.cost()).isCloseTo(alone.cost(), within(1e-5 * alone.cost()));
                assertThat(point.weighed()).isGreaterThanOrEqualTo(before * (1 - 1e-7));
                before = point.weighed();
            }
            var points = curve.points();
            curve.kink()
                    .ifPresent(kink -> assertThat(kink.percent())
                            .isBetween(50.1, points.get(points.size() - 1).percent()));
        }
    }

    @Test
    void aTargetOnEverythingAtOnceIsHeldByItsPointAndNotByTheOneBelow() {
        var question = asked(DRY_COW, new Sureness(75, 85, 99));
        var curve = SurenessCurve.of(question, (Ration) question.solve());
        var chances = curve.points().stream()
                .mapToDouble(point -> curve.chance(point).percent())
                .toArray();
        double target = (chances[3] + chances[chances.length - 1]) / 2;
        var holding = curve.holding(target).orElseThrow();
        int at = curve.points().indexOf(holding);
        assertThat(chances[at]).isGreaterThanOrEqualTo(target);
        assertThat(chances[at - 1]).isLessThan(target);
        assertThat(curve.holding(Arrays.stream(chances).max().orElseThrow() + 1))
                .isEmpty();
    }
}
