package haywright.diet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.Lactation;
import haywright.cattle.LiveWeight;
import haywright.cattle.Pregnancy;
import haywright.cattle.RequirementSystem;
import haywright.cattle.need.Need;
import haywright.cattle.need.Requirement;
import haywright.cattle.need.RuleOfThumb;
import haywright.forage.energy.NetEnergy;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PoorestDietTest {
    private static double kg(double pounds) {
        return Quantity.of(pounds, Unit.POUND).base();
    }

    private static Need cow(@Nullable Pregnancy pregnancy, @Nullable Lactation lactation) {
        double weight = kg(1300);
        return new Requirement(
                new Animal(
                        AnimalClass.MATURE_COW,
                        Breed.AVERAGE,
                        LiveWeight.full(weight),
                        5,
                        pregnancy,
                        lactation,
                        0,
                        weight,
                        Animal.NO_ACCLIMATIZATION),
                RequirementSystem.NRC_1996);
    }

    private static Need heifer(double pounds, double gain) {
        return new Requirement(
                new Animal(
                        AnimalClass.GROWING,
                        Breed.AVERAGE,
                        LiveWeight.full(kg(pounds)),
                        5,
                        null,
                        null,
                        kg(gain),
                        kg(1300),
                        Animal.NO_ACCLIMATIZATION),
                RequirementSystem.NRC_1996);
    }

    private static Need at(String stage) {
        return switch (stage) {
            case "mid" -> cow(new Pregnancy(40, 170), null);
            case "late" -> cow(new Pregnancy(40, 240), null);
            default -> cow(null, new Lactation(6, kg(20), 8.5));
        };
    }

    /** Within the five points of TDN and two of protein that the trade's rules are good for. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"mid, T01, T04-mid", "late, T02, T04-late", "milk, T03, T04-milk"})
    void liesByTheRulesOfThumb(String stage, String energy, String protein) {
        var diet = PoorestDiet.of(at(stage)).orElseThrow();
        var tdn = RuleOfThumb.of(energy);
        var crude = RuleOfThumb.of(protein);
        assertThat(diet.tdn()).isBetween(tdn.low() - 5, tdn.high() + 5);
        assertThat(diet.crudeProteinPercent()).isBetween(crude.low() - 2, crude.high() + 2);
    }

    /** T12: 11 to 13 lb eaten of 64 to 66 % TDN. */
    @Test
    void carriesAHeiferAsTheTradeFeedsHer() {
        var diet = PoorestDiet.of(heifer(500, 1.5)).orElseThrow();
        var tdn = RuleOfThumb.of("T12-tdn");
        var eaten = RuleOfThumb.of("T12-intake");
        assertThat(diet.tdn()).isBetween(tdn.low() - 5, tdn.high() + 5);
        assertThat(diet.kilograms()).isBetween(kg(eaten.low()) - 0.5, kg(eaten.high()) + 0.5);
    }

    /** The definition: what is eaten of it is just what the need takes. */
    @ParameterizedTest
    @ValueSource(strings = {"mid", "late", "milk"})
    void isEatenDownToTheNeed(String stage) {
        var need = at(stage);
        var diet = PoorestDiet.of(need).orElseThrow();
        assertThat(diet.kilograms() * new NetEnergy(diet.tdn()).nem()).isCloseTo(need.nem(), within(1e-6));
    }

    @Test
    void thereIsNoneForAGainOutOfReach() {
        assertThat(PoorestDiet.of(heifer(400, 4.9))).isEmpty();
    }

    @Test
    void itsFormulasHold() {
        FormulaCheck.reEvaluates(PoorestDiet.of(at("late")).orElseThrow());
        FormulaCheck.reEvaluates(PoorestDiet.of(heifer(500, 1.5)).orElseThrow());
    }
}
