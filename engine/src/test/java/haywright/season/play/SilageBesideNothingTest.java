package haywright.season.play;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.sampling.stock.Stock;
import haywright.season.WinterPlan;
import haywright.season.given.Season;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Silage at 1,400 ppm of nitrate nitrogen and cows that carry calves: the whole of what they eat is to be at or below 678 ppm
 * (Manitoba Agriculture, Utilizing High Nitrate Feeds Safely). With hay and grain of none at all that is at most 678/1,400 =
 * 48 % silage, and hay that nobody has yet thins nothing. 300 tons of silage at 35 % are 105 tons dry, far more than 48 % of
 * what 20 tons of hay and little else come to.
 */
class SilageBesideNothingTest {
    private static final UUID SILAGE = new UUID(0, 3);
    private static final double PPM = 1400;
    private static final double SAFE = 678;

    private static Ranch ranch(double tons) {
        return Invented.ranch(tons, 0)
                .with(new Lot(
                        SILAGE,
                        "Oat silage",
                        FeedClass.CEREAL_SILAGE,
                        "",
                        "",
                        "",
                        null,
                        Lot.Storage.BUNKER,
                        new Stock.Weighed(Quantity.of(300, Unit.TON)),
                        Quantity.of(40, Unit.DOLLAR_PER_TON),
                        false,
                        "",
                        null,
                        null,
                        List.of()))
                .with(new LabReport(
                        new UUID(5, 5),
                        SILAGE,
                        "A",
                        "",
                        null,
                        Invented.DAY.minusDays(20),
                        LabReport.HowSampled.PLAN,
                        List.of(
                                new Reading(Analyte.CP, 10, Unit.PERCENT, Basis.DRY_MATTER),
                                new Reading(Analyte.ADF, 36, Unit.PERCENT, Basis.DRY_MATTER),
                                new Reading(Analyte.NO3N, PPM, Unit.PPM, Basis.DRY_MATTER)),
                        List.of()));
    }

    @Test
    void noSilageIsPlannedOnHayThatNobodyHas() {
        double fed = 0;
        double missing = 0;
        for (double tons : new double[] {20, 60}) {
            var yard = new Yard(ranch(tons), Invented.DAY);
            var season = Season.of(yard);
            var plan = WinterPlan.of(yard).orElseThrow().plan();
            int silage = IntStream.range(0, season.feeds().size())
                    .filter(f -> season.feeds().get(f).id().equals(SILAGE.toString()))
                    .findFirst()
                    .orElseThrow();
            missing += plan.emergencyKg();
            for (var stretch : plan.stretches()) {
                for (int e = 0; e < season.eaters().size(); e++) {
                    boolean isCarrying = season.eaters().get(e).group().id().equals(Invented.COWS)
                            && stretch.to().isBefore(Invented.DAY.plusWeeks(5));
                    double[] eaten = stretch.decision().eaten()[e];
                    fed += eaten[silage];
                    double real = IntStream.range(0, eaten.length)
                            .filter(f -> f != season.emergency())
                            .mapToDouble(f -> eaten[f])
                            .sum();
                    // of cattle that carry no calf the line is 1,000 ppm (practice limit L11b)
                    assertThat(eaten[silage] * PPM)
                            .as("%s tons, group %d from %s", tons, e, stretch.from())
                            .isLessThanOrEqualTo((isCarrying ? SAFE : 1000) * real + 1);
                }
            }
        }
        assertThat(fed).isPositive();
        assertThat(missing).isPositive();
    }
}
