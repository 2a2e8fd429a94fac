package haywright.forage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.workings.Refused;
import org.junit.jupiter.api.Test;

class SubstitutionTest {
    // Short supply of hay, NDSU (Dhuyvetter) 2009: a pound of corn for 1.7 lb of average mixed hay, of barley for 1.6.
    // The
    // source prints no TDN: 88 and 83 % are usual for the grains; the hay that makes corn 1.7 must make barley 1.6.
    @Test
    void cornAndBarleyReplaceHayAsPublished() {
        double hay = 88 / 1.7;
        assertThat(new Substitution(88, 83, 88, hay).replaces()).isCloseTo(1.6, within(0.05));
    }

    // How much corn can I feed, eXtension beef: 1.5 lb of alfalfa or good hay, 1.9 of poor prairie hay. Usual TDN of
    // these:
    // 58 and 46 %.
    @Test
    void poorHayIsReplacedByLessCorn() {
        assertThat(new Substitution(88, 88, 88, 58).replaces()).isCloseTo(1.5, within(0.05));
        assertThat(new Substitution(88, 88, 88, 46).replaces()).isCloseTo(1.9, within(0.05));
    }

    @Test
    void aFeedReplacesItselfPoundForPound() {
        assertThat(new Substitution(35, 66, 35, 66).replaces()).isEqualTo(1);
        assertThatThrownBy(() -> new Substitution(88, 88, 0, 52)).isInstanceOf(Refused.class);
    }
}
