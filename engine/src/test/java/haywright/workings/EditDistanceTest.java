package haywright.workings;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class EditDistanceTest {
    @Test
    void lettersAreChangedLeftOutOrPutIn() {
        // the worked example of many textbooks: k to s, e to i, g put in
        assertThat(EditDistance.between("kitten", "sitting")).isEqualTo(3);
        assertThat(EditDistance.between("oats", "oats")).isZero();
        assertThat(EditDistance.between("", "oats")).isEqualTo(4);
    }

    @Test
    void aWordLongerThanAnyThatIsKnownIsComparedWithNone() {
        var longest = "a".repeat(EditDistance.LONGEST);
        assertThat(EditDistance.between(longest, longest + "b")).isEqualTo(EditDistance.LONGEST + 1);
        assertThat(EditDistance.between(longest + "b", longest)).isEqualTo(EditDistance.LONGEST + 1);
        assertThat(EditDistance.between(longest, longest)).isZero();
    }
}
