package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.document.TinLantern;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** One large ranch is worked at at a time, small ones always, and one that fits by no means is refused by its size. */
class LargeRanchesTest {
    /** The demo's five groups with so many copies of one of its stacks. */
    private static Ranch of(int stacks) {
        var ranch = TinLantern.ranch();
        var large = Ranch.empty(UUID.randomUUID(), "Many stacks");
        for (var group : ranch.groups().values()) {
            large = large.with(group);
        }
        var stack = ranch.lots().values().iterator().next();
        for (int i = 0; i < stacks; i++) {
            large = large.with(new Lot(
                    new UUID(9, i),
                    "Stack " + i,
                    stack.feedClass(),
                    stack.bookRow(),
                    stack.where(),
                    stack.cutting(),
                    stack.madeOn(),
                    stack.storage(),
                    stack.stock(),
                    stack.replacementPrice(),
                    stack.nitrateRisk(),
                    stack.notes(),
                    stack.makeup(),
                    stack.weathered(),
                    List.of(),
                    null));
        }
        return large;
    }

    @Test
    void anotherLargeRanchWaitsAndASmallOneDoesNot() throws InterruptedException {
        var one = of(100);
        assertThat(LargeRanches.size(one)).isEqualTo(500);
        assertThat(LargeRanches.enter(one, false)).isTrue();
        try {
            assertThat(LargeRanches.enter(of(100), false)).isFalse();
            assertThat(LargeRanches.enter(TinLantern.ranch(), false)).isTrue();
            LargeRanches.leave(TinLantern.ranch());
            assertThat(LargeRanches.enter(one, false)).isTrue();
            LargeRanches.leave(one);
        } finally {
            LargeRanches.leave(one);
        }
        var other = of(100);
        assertThat(LargeRanches.enter(other, false)).isTrue();
        LargeRanches.leave(other);
    }

    @Test
    void itsBookWaitsForThePagesAndThenThePagesForIt() throws Exception {
        var ranch = of(100);
        var made = new CompletableFuture<Boolean>();
        assertThat(LargeRanches.enter(ranch, true)).isTrue();
        var maker = new Thread(() -> {
            try {
                LargeRanches.book(ranch, () -> {
                    try {
                        made.complete(LargeRanches.enter(ranch, false));
                    } catch (InterruptedException e) {
                        made.completeExceptionally(e);
                    }
                });
            } catch (InterruptedException e) {
                made.completeExceptionally(e);
            }
        });
        maker.start();
        assertThat(made).isNotDone();
        LargeRanches.leave(ranch);
        assertThat(made.get(30, TimeUnit.SECONDS)).isFalse();
        maker.join();
        assertThat(LargeRanches.enter(ranch, false)).isTrue();
        LargeRanches.leave(ranch);
    }

    @Test
    void oneThatIsTooLargeIsRefusedByItsSize() {
        assertThatThrownBy(() -> LargeRanches.enter(of(2_401), false))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("2,401");
        assertThatThrownBy(() -> LargeRanches.book(of(301), () -> {}))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("301");
    }
}
