package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SchoolGradeTest {
    // Syllables as a dictionary divides the words.
    @ParameterizedTest
    @CsvSource({
        "hay, 1",
        "silage, 2",
        "barley, 2",
        "nitrate, 2",
        "veterinarian, 6",
        "table, 2",
        "fed, 1",
        "bales, 1",
        "need, 1",
        "energy, 3",
        "loaded, 2",
        "called, 1",
        "adviser, 3",
        "the, 1",
        "weeks, 1"
    })
    void syllablesAreHeard(String word, int heard) {
        assertThat(SchoolGrade.syllables(word)).isEqualTo(heard);
    }

    // Six words of one syllable in one sentence: 0.39·6 + 11.8 − 15.59 = −1.45 by the formula.
    @Test
    void aPlainSentenceIsBelowSchool() {
        assertThat(SchoolGrade.of("The cat sat on the mat.")).isCloseTo(-1.45, within(0.005));
    }

    @Test
    void officialProseIsFarAboveEight() {
        assertThat(SchoolGrade.of(
                        "Implementation of the aforementioned nutritional recommendations necessitates consideration of"
                                + " individual physiological circumstances."))
                .isGreaterThan(20);
    }
}
