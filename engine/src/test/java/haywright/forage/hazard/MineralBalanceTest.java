package haywright.forage.hazard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.workings.Refused;
import org.junit.jupiter.api.Test;

class MineralBalanceTest {
    // INRAE-CIRAD-AFZ feed tables, malt culms: DCAD 2 and electrolyte balance 234 mEq/kg from rounded minerals.
    @Test
    void agreesWithTheFeedTablesOnMaltCulms() {
        var culms = new MineralBalance(1.31, null, null, 0.028, 0.41, 0.37);
        assertThat(culms.dcad().orElseThrow()).isCloseTo(2, within(4.0));
        assertThat(culms.electrolyteBalance().orElseThrow()).isCloseTo(234, within(4.0));
        assertThat(culms.tetanyRatio()).isEmpty();
        FormulaCheck.reEvaluates(culms);
    }

    // The other published form: mEq per 100 g = Na/0.023 + K/0.039 − Cl/0.0355 − S/0.016. Its atomic masses are
    // rounded,
    // potassium's most: 39 for 39.1, so each charge may differ by 0.3 %.
    @Test
    void agreesWithTheOtherPublishedFormOfTheBalance() {
        var hay = new MineralBalance(2.1, 0.5, 0.2, 0.05, 0.6, 0.2);
        double other = 10 * (0.05 / 0.023 + 2.1 / 0.039 - 0.6 / 0.0355 - 0.2 / 0.016);
        double charges = 10 * (0.05 / 0.023 + 2.1 / 0.039 + 0.6 / 0.0355 + 0.2 / 0.016);
        assertThat(hay.dcad().orElseThrow()).isCloseTo(other, within(0.003 * charges));
        FormulaCheck.reEvaluates(hay);
    }

    @Test
    void whatIsGivenIsUsed() {
        var noSulfur = new MineralBalance(2.1, null, null, 0.05, 0.6, null);
        assertThat(noSulfur.dcad()).isEmpty();
        assertThat(noSulfur.electrolyteBalance()).isPresent();
        var tetany = new MineralBalance(3.29, 0.39, 0.19, null, null, null);
        assertThat(tetany.electrolyteBalance()).isEmpty();
        assertThat(tetany.cautions())
                .singleElement()
                .satisfies(c -> assertThat(c.words()).contains("veterinarian"));
        assertThat(new MineralBalance(1.5, 0.6, 0.25, null, null, null).cautions())
                .isEmpty();
        FormulaCheck.reEvaluates(tetany);
    }

    @Test
    void morePotassiumIsMoreRisk() {
        assertThat(new MineralBalance(3.0, 0.4, 0.2, null, null, null)
                        .tetanyRatio()
                        .orElseThrow())
                .isGreaterThan(new MineralBalance(2.0, 0.4, 0.2, null, null, null)
                        .tetanyRatio()
                        .orElseThrow());
    }

    @Test
    void tooFewMineralsAreRefusedWithWhatIsNeeded() {
        assertThatThrownBy(() -> new MineralBalance(2.0, 0.4, null, null, null, null))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("the tetany ratio needs potassium, calcium and magnesium");
        assertThatThrownBy(() -> new MineralBalance(-2.0, 0.4, Double.NaN, null, null, null))
                .isInstanceOfSatisfying(
                        Refused.class, r -> assertThat(r.problems()).hasSize(2));
        assertThatThrownBy(() -> new MineralBalance(2.0, 0.0, 0.0, null, null, null))
                .isInstanceOf(Refused.class);
    }
}
