package haywright.sampling.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.stream.Stream;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PicksTest {
    private static final int SEEDS = 20_000;

    static Stream<Layout> stacks() {
        return Stream.of(
                Layout.Block.open(4, 9, 3, 100, 2),
                Layout.Block.open(1, 25, 1, 25, 1),
                new Layout.Block(5, 8, 4, 150, 4, EnumSet.of(Place.Side.FRONT, Place.Side.LEFT)),
                new Layout.Pyramid(3, 3, 12, 70, 2),
                new Layout.Loose(37));
    }

    @ParameterizedTest
    @MethodSource("stacks")
    void everyReachableBaleIsEquallyLikelyOverSeeds(Layout layout) {
        int n = 11;
        var seen = new int[layout.count() + 1];
        for (long seed = 0; seed < SEEDS; seed++) {
            var picks = Picks.of(layout, n, seed).inWalkingOrder();
            assertThat(picks).hasSize(n);
            picks.forEach(p -> seen[p.number()]++);
        }
        var reachable = layout.places().stream().filter(Place::reachable).toList();
        double expected = (double) SEEDS * n / reachable.size();
        double chiSquare = 0;
        for (var place : reachable) {
            chiSquare += Math.pow(seen[place.number()] - expected, 2) / expected;
        }
        double limit = new ChiSquaredDistribution(reachable.size() - 1).inverseCumulativeProbability(0.999);
        assertThat(chiSquare).isLessThan(limit);
        layout.places().stream()
                .filter(p -> !p.reachable())
                .forEach(p -> assertThat(seen[p.number()]).isZero());
    }

    @Test
    void everyFaceAndTierHasItsShare() {
        var layout = Layout.Block.open(6, 10, 2, 120, 2);
        for (long seed = 0; seed < 200; seed++) {
            var picks = Picks.of(layout, 20, seed).inWalkingOrder();
            for (var side : List.of(Place.Side.FRONT, Place.Side.BACK)) {
                for (int tier = 1; tier <= 2; tier++) {
                    int t = tier;
                    long here = picks.stream()
                            .filter(p -> p.side() == side && p.tier() == t)
                            .count();
                    long of = layout.places().stream()
                            .filter(p -> p.side() == side && p.tier() == t)
                            .count();
                    assertThat(here).isBetween((long) Math.floor(of * 20 / 56.0), (long) Math.ceil(of * 20 / 56.0));
                }
            }
        }
    }

    @Test
    void theSameSeedGivesTheSameBalesAndAnotherDoesNot() {
        var layout = Layout.Block.open(5, 10, 3, 150, 3);
        assertThat(Picks.of(layout, 20, 7)).isEqualTo(Picks.of(layout, 20, 7));
        assertThat(Picks.of(layout, 20, 7).inWalkingOrder())
                .isNotEqualTo(Picks.of(layout, 20, 8).inWalkingOrder());
        assertThat(new HashSet<>(Picks.of(layout, 20, 7).inWalkingOrder())).hasSize(20);
    }

    @Test
    void theWalkGoesRoundTheStackOnce() {
        var sides = Picks.of(Layout.Block.open(8, 10, 2, 160, 2), 30, 3).inWalkingOrder().stream()
                .map(Place::side)
                .distinct()
                .toList();
        assertThat(sides).containsExactly(Place.Side.FRONT, Place.Side.RIGHT, Place.Side.BACK, Place.Side.LEFT);
    }

    @Test
    void whatCannotBeReachedIsCountedAndSaid() {
        var picks = Picks.of(Layout.Block.open(4, 5, 3, 60, 1), 10, 1);
        assertThat(picks.reachable()).isEqualTo(14); // 20 on the ground, 6 of them inside
        assertThat(picks.unreachable()).isEqualTo(46);
        assertThat(picks.limits()).contains("46 of 60 bales", "the 14");
        assertThat(Picks.of(new Layout.Loose(10), 3, 1).limits()).isEmpty();
    }

    @Test
    void roundsInAPyramidAreCoredThroughTheOuterOnesOnly() {
        var places = new Layout.Pyramid(3, 3, 10, 60, 3).places();
        assertThat(places).hasSize(60);
        // 3 + 2 + 1 across: both sides of the lower two tiers and the ridge, ten along.
        assertThat(places.stream().filter(Place::reachable)).hasSize(50);
    }

    @Test
    void stacksThatCannotBeAreRefused() {
        assertThatThrownBy(() -> Layout.Block.open(2, 5, 2, 21, 2))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("holds only 20 bales");
        assertThatThrownBy(() -> new Layout.Loose(0)).hasMessageContaining("0 bales");
        assertThatThrownBy(() -> new Layout.Pyramid(3, 4, 1, 6, 1)).hasMessageContaining("narrower");
        assertThatThrownBy(() -> Layout.Block.open(0, 5, 2, 5, 2)).hasMessageContaining("at least one row");
        assertThatThrownBy(() -> new RoundPyramid(61, Quantity.of(1200, Unit.POUND), 3, 3, 10))
                .hasMessageContaining("holds only 60 bales");
    }

    @Test
    void aHundredThousandBalesAndOneBaleAreBothPlanned() {
        var large = Picks.of(Layout.Block.open(50, 400, 5, 100_000, 4), 20, 1);
        assertThat(large.inWalkingOrder()).hasSize(20);
        assertThat(Picks.of(new Layout.Loose(1), 20, 1).inWalkingOrder()).hasSize(1);
    }
}
