package haywright.app.words.ration;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.diet.DietRow;
import haywright.diet.Law;
import haywright.diet.RowId;
import haywright.quantity.Unit;
import haywright.ration.LimitAnswer;
import haywright.workings.Source;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which limits of a ration are worth a line. */
class LimitWordsTest {
    private static LimitAnswer answer(DietRow.Kind kind, double limit, double price) {
        return new LimitAnswer(
                new DietRow(
                        new RowId.Nutrient("straw"),
                        kind,
                        "straw",
                        DietRow.Sense.AT_MOST,
                        limit,
                        Unit.KILOGRAM_A_DAY,
                        new Law(need -> limit, (feed, made) -> 1, null, Law.Counted.MEAN),
                        List.of(1.0),
                        List.of(),
                        0,
                        Source.ARITHMETIC),
                limit,
                price);
    }

    /** Dollars a kg; what is shown is cents for a tenth of a pound (0.0454 kg), from 0.1 ¢ on. */
    @ParameterizedTest
    @CsvSource({"0, false", "0.01, false", "0.0112, true", "1, true"})
    void aCostThatRoundsToNothingIsNoLine(double price, boolean isSaid) {
        assertThat(LimitWords.isTight(answer(DietRow.Kind.PRACTICE, 3, price))).isEqualTo(isSaid);
    }

    @ParameterizedTest
    @CsvSource({"PRACTICE, 0.001, false", "PRACTICE, 0.01, true", "CHOICE, 0, true", "DANGER, 0, true"})
    void aLimitThatRoundsToNothingIsNoLineUnlessSomebodyChoseIt(DietRow.Kind kind, double limit, boolean isSaid) {
        assertThat(LimitWords.isSaid(answer(kind, limit, 0))).isEqualTo(isSaid);
    }
}
