package haywright.app.web.herd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.app.document.TinLantern;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.HairCoat;
import haywright.cattle.cold.Hide;
import haywright.cattle.herd.Group;
import haywright.outlook.ColdDay;
import haywright.outlook.HayMeasure;
import haywright.outlook.HerdWeather;
import haywright.outlook.OwnRule;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.RanchWeather;
import haywright.ranch.Settings;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The demo's cows where every month has 68 °F: nothing is learned from the month before, so that the published rule (1 % of
 * maintenance a °F below 32 in a dry winter coat, 2 % below 55 in a wet one) stands alone.
 */
class ColdSnapTest {
    private static final LocalDate DAY = LocalDate.of(2027, 1, 20);
    private static final Group COWS =
            TinLantern.ranch().groups().values().iterator().next();
    private static final HayMeasure HAY = new HayMeasure("", "the hay", 1.2, 0.6, 1 / (0.9 * 0.85));

    private static Settings settings(double mph, boolean windbreak, ColdSystem system) {
        var weather = new RanchWeather(
                "invented",
                Collections.nCopies(12, Quantity.of(68, Unit.FAHRENHEIT)),
                Quantity.of(mph, Unit.MILE_AN_HOUR),
                Coat.WINTER,
                windbreak,
                system,
                null,
                List.of(),
                null);
        return TinLantern.ranch().settings().with(weather);
    }

    private static final Settings CALM = settings(0, false, ColdSystem.RULE_OF_THUMB);

    @Test
    void theRuleOfThumbThatComesOutIsTheOneThatWentIn() {
        var rule = OwnRule.of(CALM, COWS, DAY).orElseThrow();
        assertThat(Unit.FAHRENHEIT.fromBase(rule.begins())).isCloseTo(32, within(1e-6));
        double maintenance = new HerdWeather(CALM).need(COWS, DAY).nemMaintenance();
        assertThat(rule.perDegree() / 1.8).isCloseTo(0.01 * maintenance, within(1e-9));
        // by hand: 10 °F are a tenth of maintenance, over 1.2 Mcal/kg, 90 % dry and 15 % lost
        double pounds = 0.1 * maintenance / 1.2 / 0.9 / 0.85 / 0.45359237;
        var snap = ColdSnap.of(CALM, COWS, DAY, HAY);
        assertThat(snap).isNotNull();
        assertThat(snap.rule())
                .isEqualTo("Each 10 °F below 32 °F adds about %.1f lb of the hay per head per day.".formatted(pounds));
    }

    @Test
    void theTableSaysWhatToAddDryAndWet() {
        double maintenance = new HerdWeather(CALM).need(COWS, DAY).nemMaintenance();
        var zero = ColdDay.of(CALM, COWS, DAY, Unit.FAHRENHEIT.toBase(0), Hide.DRY);
        assertThat(zero.costs()).isCloseTo(0.32 * maintenance, within(1e-9));
        assertThat(zero.more()).isEqualTo(zero.costs());
        var wet = ColdDay.of(CALM, COWS, DAY, Unit.FAHRENHEIT.toBase(49), Hide.WET);
        assertThat(wet.percent()).isCloseTo(12, within(1e-6));
        var snap = ColdSnap.of(CALM, COWS, DAY, HAY);
        assertThat(snap).isNotNull();
        assertThat(snap.rows())
                .extracting(ColdSnap.Row::temperature)
                .startsWith("50 °F")
                .endsWith("−30 °F");
        assertThat(snap.rows().get(0).dry()).isEqualTo("nothing");
        assertThat(snap.rows().get(0).wet()).endsWith(" lb");
        assertThat(snap.rows().get(8).dry()).as("62 % of maintenance").isEqualTo("more than they can eat");
        assertThat(snap.rows().get(5).dry())
                .isEqualTo("%.0f lb".formatted(0.32 * maintenance / 1.2 / 0.9 / 0.85 / 0.45359237));
    }

    /** Three tenths of the wind are left behind it, whichever way the cold is counted; a degree of frost costs the same. */
    @Test
    void aWindbreakIsLessWindAndNothingElse() {
        for (var system : ColdSystem.values()) {
            var behind = OwnRule.of(settings(10, true, system), COWS, DAY).orElseThrow();
            var less = OwnRule.of(settings(3, false, system), COWS, DAY).orElseThrow();
            assertThat(behind.begins()).isCloseTo(less.begins(), within(1e-6));
            assertThat(behind.perDegree()).isCloseTo(less.perDegree(), within(1e-6));
        }
    }

    @ParameterizedTest
    @EnumSource(ColdSystem.class)
    void colderWetterAndWindierNeverNeedLess(ColdSystem system) {
        double before = 0;
        for (int celsius = 20; celsius >= -45; celsius -= 5) {
            var calm = ColdDay.of(settings(2, false, system), COWS, DAY, celsius, Hide.DRY);
            assertThat(calm.costs()).isGreaterThanOrEqualTo(before);
            before = calm.costs();
            assertThat(ColdDay.of(settings(20, false, system), COWS, DAY, celsius, Hide.DRY)
                            .costs())
                    .isGreaterThanOrEqualTo(before);
            double dry = 0;
            for (var hide : Hide.values()) {
                double costs = ColdDay.of(settings(2, false, system), COWS, DAY, celsius, hide)
                        .costs();
                assertThat(costs).isGreaterThanOrEqualTo(dry);
                dry = costs;
            }
        }
    }

    @Test
    void withoutWeatherThereIsNoTable() {
        var mild = TinLantern.ranch().withWeather(null, null).settings();
        assertThat(ColdSnap.of(mild, COWS, DAY, HAY)).isNull();
        assertThat(OwnRule.of(mild, COWS, DAY)).isEmpty();
    }

    @Test
    void aHayIsMeasuredAsItGoesOut() {
        var hays = HayMeasure.of(new Yard(TinLantern.ranch(), DAY));
        assertThat(hays).hasSizeGreaterThan(1);
        var hay = hays.get(0);
        var need = new HerdWeather(CALM).need(COWS, DAY);
        assertThat(hay.of(need)).isCloseTo(need.nem() / hay.nem() * hay.putOut(), within(1e-9));
    }

    /**
     * 1 lb for each 5 °C that the afternoon high is below −20 °C, at most 5; −35 °C is 3 lb (Saskatchewan Agriculture, Lang
     * 2022; Feist 2014). No row of a day's mean takes it.
     */
    @Test
    void grainInAStorm() {
        assertThat(ColdSnap.grain(-35)).isEqualTo(3);
        assertThat(ColdSnap.grainByHigh()).contains("−31 °F 3 lb");
        var snap = ColdSnap.of(CALM, COWS, DAY, HAY);
        assertThat(snap).isNotNull();
        assertThat(snap.rows()).noneMatch(row -> (row.dry() + row.wet()).contains("grain"));
        assertThat(ColdSnap.grain(-20)).isZero();
        assertThat(ColdSnap.grain(-30)).isEqualTo(2);
        assertThat(ColdSnap.grain(-60)).isEqualTo(5);
    }

    /** Which of the two ways to count is used is said, and more where they are far apart. */
    @Test
    void saysWhichMethodIsUsed() {
        for (var by : ColdSystem.values()) {
            var snap = ColdSnap.of(settings(12, false, by), COWS, DAY, HAY);
            var other = ColdSnap.of(
                    settings(12, false, by == ColdSystem.USUAL ? ColdSystem.HEAT_BALANCE : ColdSystem.USUAL),
                    COWS,
                    DAY,
                    HAY);
            assertThat(snap).isNotNull();
            assertThat(other).isNotNull();
            assertThat(snap.methods()).isNotEqualTo(other.methods());
        }
    }

    /** A coat that nobody said: dry cows in score 5 wear the heavy one, thin ones a class less. What was said wins. */
    @Test
    void aCoatByConditionWhereNobodySaidOne() {
        var said = CALM.weather();
        assertThat(said).isNotNull();
        var open = new RanchWeather(
                said.place(), said.monthly(), null, null, false, said.coldSystem(), null, List.of(), null);
        var exposure = new HerdWeather(CALM.with(open)).day(DAY, -20);
        var cow = new HerdWeather(CALM).need(COWS, DAY).members().get(0).need().animal();
        assertThat(exposure.coat(cow)).isEqualTo(HairCoat.of(Coat.HEAVY_WINTER));
        var thin = new HerdWeather(CALM)
                .need(COWS.scored(4, null), DAY)
                .members()
                .get(0)
                .need()
                .animal();
        assertThat(exposure.coat(thin)).isEqualTo(HairCoat.of(Coat.WINTER));
        var milking = new HerdWeather(CALM)
                .need(COWS, LocalDate.of(2027, 5, 1))
                .members()
                .get(0)
                .need()
                .animal();
        assertThat(new HerdWeather(CALM.with(open))
                        .day(LocalDate.of(2027, 3, 31), 0)
                        .coat(milking))
                .isEqualTo(HairCoat.of(Coat.WINTER));
        assertThat(new HerdWeather(CALM).day(DAY, -20).coat(thin)).isEqualTo(HairCoat.of(Coat.WINTER));
        assertThat(open.blows()).isEqualTo(RanchWeather.USUAL_WIND);
        var dry = new RanchWeather(
                said.place(), said.monthly(), said.wind(), null, false, said.coldSystem(), Hide.DRY, List.of(), null);
        assertThat(haywright.app.words.HerdWords.taken(CALM.with(dry))).isEmpty();
        assertThat(haywright.app.words.HerdWords.taken(CALM.with(open))).isNotEmpty();
    }
}
