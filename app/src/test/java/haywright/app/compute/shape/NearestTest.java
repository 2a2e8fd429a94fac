package haywright.app.compute.shape;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {
    private static final List<String> KNOWN = List.of("basis", "winters", "adf_pct_dm", "price", "weight");

    @ParameterizedTest
    @CsvSource({"bassis, basis", "wnter, winters", "adf, adf_pct_dm", "wieght, weight", "weight_kg, weight"})
    void whatIsNearIsOffered(String typed, String near) {
        assertThat(Nearest.to(typed, KNOWN)).contains(near);
    }

    /** Something stands nearest to any word; to offer it would be a guess. */
    @Test
    void whatIsNearToNothingIsOfferedNothing() {
        for (var typed : List.of("nonsense", "", "p", "xxxxx", "a-word-that-is-very-long-indeed")) {
            assertThat(Nearest.to(typed, KNOWN)).as(typed).isEmpty();
        }
    }
}
