package haywright.forage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.forage.book.Prior;
import haywright.forage.hazard.Fermentation;
import haywright.forage.hazard.HazardClass;
import haywright.forage.hazard.HazardClass.Hazard;
import haywright.forage.hazard.HazardClass.Level;
import haywright.forage.hazard.SoilInFeed;
import haywright.forage.lab.Issue;
import haywright.forage.lab.Reading;
import haywright.forage.lab.ReportCheck;
import haywright.workings.Origin;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Classes of what harms, as their sources print them, each source named at its row. */
class HazardsTest {
    private static Level worst(Hazard hazard, double value) {
        return HazardClass.of(hazard, value).get(0).level();
    }

    // Kansas State 2024 (aflatoxin, fumonisin), Purdue 2024, Saskatchewan Research Council (water), FDA 2010 (DON),
    // National
    // Research Council 1974 (nitrate of water), laboratories' classes of prussic acid: edges as printed there.
    @ParameterizedTest(name = "{0} of {1} is {2}")
    @CsvSource({
        "AFLATOXIN, 19, SAFE",
        "AFLATOXIN, 20, DANGER",
        "FUMONISIN, 14.9, SAFE",
        "FUMONISIN, 15, WATCH",
        "FUMONISIN, 30, DANGER",
        "DON, 9.9, SAFE",
        "DON, 10, DANGER",
        "ERGOT, 199, SAFE",
        "ERGOT, 300, WATCH",
        "HCN, 499, SAFE",
        "HCN, 500, WATCH",
        "HCN, 1000, DANGER",
        "TDS, 2999, SAFE",
        "TDS, 3000, WATCH",
        "TDS, 7000, DANGER",
        "SO4W, 499, SAFE",
        "SO4W, 500, WATCH",
        "SO4W, 2000, DANGER",
        "NO3W, 44, SAFE",
        "NO3W, 133, WATCH",
        "NO3W, 221, DANGER"
    })
    void theStricterClassComesFirst(Hazard hazard, double value, Level expected) {
        assertThat(worst(hazard, value)).isEqualTo(expected);
    }

    @ParameterizedTest
    @EnumSource(Hazard.class)
    void everySourceHasOneClassForEveryFigureItSpeaksOf(Hazard hazard) {
        for (double value : new double[] {0, 19.99, 20, 44.5, 132.5, 499, 500, 999, 1000, 2500, 6000, 9999, 1e6}) {
            var seen = new HashSet<List<String>>();
            var here = HazardClass.of(hazard, value);
            assertThat(here).as("%s %s", hazard, value).isNotEmpty();
            here.forEach(c -> assertThat(seen.add(List.of(c.whom(), c.source().cite())))
                    .as("%s %s twice of %s", hazard, value, c.source())
                    .isTrue());
        }
    }

    @Test
    void moreOfItIsNeverSafer() {
        for (var hazard : Hazard.values()) {
            var before = Level.SAFE;
            for (double value = 0; value < 20_000; value = value < 100 ? value + 1 : value * 1.01) {
                var now = worst(hazard, value);
                assertThat(now).as("%s at %s", hazard, value).isGreaterThanOrEqualTo(before);
                before = now;
            }
        }
    }

    private static Fermentation silage(FeedClass feedClass, Object... pairs) {
        var values = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        for (int i = 0; i < pairs.length; i += 2) {
            values.put((Analyte) pairs[i], new Composition.Known((double) pairs[i + 1], Origin.TYPED));
        }
        return new Fermentation(feedClass, new Composition(values));
    }

    // Hoard's Dairyman, What fermentation analysis can tell us: 30 % dry matter with 1.5 % butyric acid and 18 % of the
    // nitrogen as
    // ammonia is poor; none and 9 is good.
    @Test
    void thePrintedPoorSilageIsOutsideAndTheGoodOneInside() {
        var poor = silage(FeedClass.CEREAL_SILAGE, Analyte.DM, 30.0, Analyte.BUTYRIC, 1.5, Analyte.NH3N, 18.0);
        assertThat(poor.findings()).hasSize(2).noneMatch(Fermentation.Finding::isUsual);
        var good = silage(FeedClass.CEREAL_SILAGE, Analyte.DM, 30.0, Analyte.BUTYRIC, 0.0, Analyte.NH3N, 9.0);
        assertThat(good.findings()).hasSize(2).allMatch(Fermentation.Finding::isUsual);
        assertThat(silage(FeedClass.GRASS_HAY, Analyte.PH, 5.0).findings()).isEmpty();
    }

    // Kung and Shaver: pH of legume silage 4.3 to 4.7 at 30 to 40 % dry matter, 4.7 to 5.0 at 45 to 55.
    @ParameterizedTest
    @CsvSource({"35, 4.9, false", "50, 4.9, true", "35, 4.5, true", "50, 4.5, false"})
    void theBandIsThatOfItsDryness(double dryMatter, double ph, boolean usual) {
        assertThat(silage(FeedClass.LEGUME_SILAGE, Analyte.DM, dryMatter, Analyte.PH, ph)
                        .findings())
                .singleElement()
                .satisfies(f -> assertThat(f.isUsual()).isEqualTo(usual));
    }

    @Test
    void lacticAcidLeadsWhenItIsThreeTimesTheOthers() {
        assertThat(silage(FeedClass.CORN_SILAGE, Analyte.LACTIC, 6.0, Analyte.ACETIC, 2.0)
                        .lacticLeads())
                .isTrue();
        assertThat(silage(FeedClass.CORN_SILAGE, Analyte.LACTIC, 5.9, Analyte.ACETIC, 2.0)
                        .lacticLeads())
                .isFalse();
    }

    // Undersander: alfalfa with 8 % ash is clean; what is above is about soil.
    @Test
    void soilIsWhatAshThePlantHasNot() {
        var soil = new SoilInFeed(true, 13, Optional.empty());
        assertThat(soil.percent()).isCloseTo(5, within(1e-12));
        assertThat(new SoilInFeed(true, 8, Optional.empty()).percent()).isZero();
        FormulaCheck.reEvaluates(soil);
    }

    /** Clean alfalfa of the source has 8 % ash, lots of its kind 10 give or take 1.6: 12 is no soil there, 14 is 4 of it. */
    @Test
    void ashIsSoilOnlyAboveWhatTheKindHas() {
        var kind = Prior.named("alfalfa_hay").orElseThrow().cells().stream()
                .filter(c -> c.analyte() == Analyte.ASH)
                .findFirst();
        assertThat(new SoilInFeed(true, 12, kind).percent()).isZero();
        assertThat(new SoilInFeed(true, 14, kind).percent()).isCloseTo(4, within(1e-9));
        haywright.FormulaCheck.reEvaluates(new SoilInFeed(true, 12, kind));
        haywright.FormulaCheck.reEvaluates(new SoilInFeed(true, 14, kind));
    }

    /** 135 ppb of selenium in the column of ppm: forages hold 0.02 to 5 ppm. */
    @Test
    void seleniumOf135PpmIsAsked() {
        for (var feedClass : FeedClass.values()) {
            var checked = ReportCheck.check(
                    feedClass,
                    Optional.empty(),
                    java.util.List.of(new Reading(Analyte.SE, 135, haywright.quantity.Unit.PPM, Basis.DRY_MATTER)));
            assertThat(checked.issues().stream().anyMatch(i -> i.field() == Analyte.SE && i.level() == Issue.Level.W))
                    .as(feedClass.id())
                    .isEqualTo(feedClass != FeedClass.MINERAL);
        }
    }
}
