package haywright.app.web.herd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.app.document.RanchDocument;
import haywright.app.document.TinLantern;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.need.GroupRequirement;
import haywright.cattle.need.Requirement;
import haywright.outlook.BackCast;
import haywright.outlook.HayMeasure;
import haywright.outlook.HerdWeather;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.LastWinter;
import haywright.ranch.Ranch;
import haywright.ranch.RanchWeather;
import haywright.ranch.Settings;
import haywright.weather.Normals;
import haywright.weather.Station;
import haywright.weather.StationWinters;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Last winter, by hand. */
class BackCastTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 12, 1);
    private static final HayMeasure HAY = new HayMeasure("", "hay", 1.2, 0.6, 1 / (0.9 * 0.8));

    private static BackCast cast(double fed) {
        return cast(fed, 0);
    }

    private static BackCast cast(double fed, double appetite) {
        var settings = lossOf(20); // a fifth of what is put out is a quarter of what is eaten
        return new BackCast(
                fed,
                9,
                1.2,
                0.3,
                -0.24,
                appetite,
                HAY,
                0.9,
                settings,
                300,
                TODAY.minusYears(1),
                TODAY.minusMonths(7),
                false);
    }

    private static Settings lossOf(double percent) {
        var was = TinLantern.ranch().settings();
        return new Settings(
                was.invented(),
                was.fixedToday(),
                was.system(),
                was.adviser(),
                percent,
                was.turnout(),
                was.weather(),
                null,
                null,
                null);
    }

    private static Ranch cold(Ranch ranch) {
        var station = Station.fortCollins();
        var normals = Normals.of(station);
        var weather = new RanchWeather(
                station.name(),
                normals.monthly().stream()
                        .map(mean -> Quantity.of(mean, Unit.CELSIUS))
                        .toList(),
                Quantity.of(8, Unit.MILE_AN_HOUR),
                Coat.WINTER,
                false,
                ColdSystem.RULE_OF_THUMB,
                null,
                normals.departures(),
                null);
        return ranch.withWeather(weather, StationWinters.of(station));
    }

    @Test
    void byHand() {
        // (9 + 1.2 − 0.24)/1.2 + 0.3/0.6 = 8.8 kg eaten; a quarter more goes out; 90 % dry
        var cast = cast(11);
        assertThat(cast.needed()).isCloseTo(8.8 * 1.25 / 0.9, within(1e-12));
        assertThat(cast.ratio()).isCloseTo(0.9, within(1e-12));
        FormulaCheck.reEvaluates(cast);
        // with the factor put in, last winter comes out
        double h = cast.factor().orElseThrow();
        assertThat(((9 + 1.2 * h - 0.24) / 1.2 + 0.3 / 0.6) * (1 + 0.25 * h) / 0.9)
                .isCloseTo(11, within(1e-9));
        assertThat(cast(8.8 * 1.25 / 0.9).factor()).as("the two agree").isEmpty();
    }

    /** 0.9 to 1.15 of 12 kg is 10.8 to 13.8 kg eaten, though the need takes 8.8. */
    @Test
    void eatenToAppetiteIsNoWaste() {
        var cast = cast(16, 12);
        assertThat(cast.needed()).isCloseTo(10.8 * 1.25 / 0.9, within(1e-12));
        assertThat(cast.mostNeeded()).isCloseTo(13.8 * 1.25 / 0.9, within(1e-12));
        assertThat(cast.neededForNeed()).isCloseTo(8.8 * 1.25 / 0.9, within(1e-12));
        assertThat(cast.ratio()).isEqualTo(1);
        assertThat(cast.factor()).isEmpty();
        // 2 kg of 1.2 Mcal a day above the need; a score is 300 Mcal
        assertThat(cast.scoresOfSurplus()).isCloseTo(2 * 1.2 * cast.days() / 300, within(1e-12));
        FormulaCheck.reEvaluates(cast);
        FormulaCheck.reEvaluates(cast(30, 12));
        FormulaCheck.reEvaluates(cast(9, 12));
    }

    @Test
    void wasteStaysWithinWhatIsPublished() {
        assertThat(lossOf(20).withHerdFactor(3.0).hayLossPercent()).isEqualTo(30);
        assertThat(lossOf(20).withHerdFactor(0.0).hayLossPercent()).isEqualTo(5);
        assertThat(lossOf(40).withHerdFactor(3.0).hayLossPercent()).as("typed").isEqualTo(40);
        assertThat(lossOf(3).withHerdFactor(0.0).hayLossPercent()).as("typed").isEqualTo(3);
    }

    @Test
    void notWithoutAPlace() {
        var ranch = TinLantern.ranch();
        assertThat(BackCast.of(ranch.with(ranch.settings().with((RanchWeather) null)), TODAY))
                .isEmpty();
    }

    @Test
    void whatColdAndWasteCannotExplainIsNotOffered() {
        assertThat(cast(5).factor()).isEmpty();
        assertThat(cast(40).factor()).isEmpty();
    }

    @Test
    void ofTheDemoIsWhatWasPutIn() {
        var cast = BackCast.of(TinLantern.ranch(), TODAY).orElseThrow();
        assertThat(Unit.POUND.fromBase(cast.fed())).isCloseTo(1140 * 2000.0 / 398 / 181, within(1e-9));
        assertThat(cast.cold())
                .as("Mcal a day: three tenths of the wind reach them behind the windbreak")
                .isBetween(0.0, 0.01);
        assertThat(cast.reserves()).as("they came through thinner").isNegative();
        assertThat(cast.days()).isEqualTo(181);
        assertThat(cast.to()).isEqualTo(LocalDate.of(2026, 5, 5));
        FormulaCheck.reEvaluates(cast);
        // 31.65 lb: within 0.9 to 1.15 of what such cattle are expected to eat, so that nothing is left to multiply
        assertThat(cast.agrees()).isTrue();
        assertThat(cast.factor()).isEmpty();
        assertThat(BackCast.of(TinLantern.ranch().with(LastWinter.NOT_SAID), TODAY))
                .isEmpty();
    }

    /** A turnout date of an earlier year is still the day of the year on which grass comes. */
    @Test
    void aTurnoutLongPastIsTheDayOfTheYear() {
        var ranch = TinLantern.ranch();
        var was = ranch.settings();
        assertThat(was.turnout()).isNotNull();
        var now = BackCast.of(ranch, TODAY).orElseThrow();
        for (int years : new int[] {1, 2, 3}) {
            var past = new Settings(
                    was.invented(),
                    null,
                    was.system(),
                    was.adviser(),
                    was.feedingLossPercent(),
                    was.turnout().minusYears(years),
                    was.weather(),
                    null,
                    null,
                    null);
            var cast = BackCast.of(ranch.with(past), TODAY).orElseThrow();
            assertThat(cast.to()).isEqualTo(now.to());
            assertThat(cast.needed()).isEqualTo(now.needed());
        }
    }

    /** The figures of the offer multiply with a pencil, and come out at what was fed. */
    @Test
    void theOfferMultiplies() {
        for (double fed = 11; fed < 17; fed += 0.5) {
            var cast = cast(fed);
            if (cast.factor().isEmpty()) {
                continue;
            }
            var said = BackCastPages.offer(lossOf(20), cast, cast.factor().orElseThrow());
            var products = java.util.regex.Pattern.compile("([0-9.]+) × ([0-9.]+) = ([0-9.]+)")
                    .matcher(said);
            int found = 0;
            while (products.find()) {
                found++;
                assertThat(Double.parseDouble(products.group(1)) * Double.parseDouble(products.group(2)))
                        .as(said)
                        .isCloseTo(Double.parseDouble(products.group(3)), within(0.0500001));
            }
            assertThat(found).as(said).isPositive();
            double h = Math.round(100 * cast.factor().orElseThrow()) / 100.0;
            assertThat(cast.counted(h)).isCloseTo(fed, within(0.02 * fed));
        }
    }

    /** What thin cows are to regain this winter was not eaten last winter. */
    @Test
    void aRegainPlannedForThisWinterIsNotOfTheLast() {
        var ranch = TinLantern.ranch();
        var cows = ranch.groups().values().iterator().next();
        var thin = ranch.with(cows.scored(4, null));
        var wanting = ranch.with(cows.scored(4, null).wanting(5.0));
        assertThat(BackCast.of(wanting, TODAY)).isEqualTo(BackCast.of(thin, TODAY));
    }

    /** The very winter, where the record has it: 1983 to 1984 was the hardest of its time there. */
    @Test
    void theRecordsOwnWinterIsTaken() {
        var ranch = cold(TinLantern.ranch());
        var usual = BackCast.of(ranch, TODAY).orElseThrow();
        assertThat(usual.ownWinter()).as("the record ends in 1999").isFalse();
        assertThat(usual.cold()).isPositive();
        var winters = ranch.winters();
        assertThat(winters).isNotNull();
        var hardest = winters.winters().stream()
                .filter(w -> w.year() == 1984)
                .findFirst()
                .orElseThrow();
        var renamed = new StationWinters(
                winters.station(),
                winters.first(),
                winters.last(),
                0,
                List.of(),
                false,
                List.of(new haywright.weather.KeptWinter(2026, hardest.means(), "")));
        var own = BackCast.of(ranch.withWeather(ranch.settings().weather(), renamed), TODAY)
                .orElseThrow();
        assertThat(own.ownWinter()).isTrue();
        assertThat(own.mild() + own.cold()).isGreaterThan(usual.mild() + usual.cold());
    }

    @Test
    void acceptedItActsOnColdAndWasteAndOnNothingElse() {
        var as = cold(TinLantern.ranch());
        var ranch = as.with(as.settings().withHerdFactor(1.5));
        var day = LocalDate.of(2027, 1, 20);
        for (var group : ranch.groups().values()) {
            var before = new HerdWeather(as.settings()).need(group, day);
            var after = new HerdWeather(ranch.settings()).need(group, day);
            assertThat(after.nemCold()).isCloseTo(1.5 * before.nemCold(), within(1e-12));
            assertThat(after.nemMaintenance()).isEqualTo(before.nemMaintenance());
            assertThat(after.nem() - after.nemCold()).isCloseTo(before.nem() - before.nemCold(), within(1e-12));
            assertThat(after.crudeProtein()).isEqualTo(before.crudeProtein());
            assertThat(after.neg()).isEqualTo(before.neg());
            FormulaCheck.reEvaluates(after);
        }
        // 15 lost of 100 put out is 15/85 for each eaten; one and a half times that
        double left = 1.5 * 15 / 85;
        assertThat(ranch.settings().hayLossPercent()).isCloseTo(100 * left / (1 + left), within(1e-9));
        assertThat(ranch.settings().feedingLossPercent()).isEqualTo(15);
        var losses = new Yard(ranch, day)
                .feeds().stream().map(f -> f.feedingLossPercent()).distinct();
        assertThat(losses).containsExactlyInAnyOrder(ranch.settings().hayLossPercent(), 3.0, 5.0);
        // it survives a save, and the offer is worked out without it
        var documents = new RanchDocument();
        assertThat(documents.ranch(documents.tree(ranch)).settings().herdFactor())
                .isEqualTo(1.5);
        assertThat(BackCast.of(ranch, TODAY)).isEqualTo(BackCast.of(as, TODAY));
        Settings back = ranch.settings().withHerdFactor(null);
        GroupRequirement need =
                new HerdWeather(back).need(ranch.groups().values().iterator().next(), day);
        assertThat(need)
                .isEqualTo(new HerdWeather(as.settings())
                        .need(ranch.groups().values().iterator().next(), day));
        assertThat(need.members().get(0).need()).isInstanceOf(Requirement.class);
    }

    @Test
    void factorsThatCannotBeAreRefused() {
        var settings = TinLantern.ranch().settings();
        assertThatThrownBy(() -> settings.withHerdFactor(-0.1)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> settings.withHerdFactor(3.1)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> settings.withHerdFactor(Double.NaN)).isInstanceOf(Refused.class);
    }
}
