package haywright.app.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** A change to whole entities: made, taken back, written down. */
class PatchTest {
    private final RanchDocument documents = new RanchDocument();

    /** Any sequence of changes is made by its patch and taken back by the inverse. */
    @Test
    void whatAPatchDoesItsInverseTakesBack() {
        var random = new SplittableRandom(2026);
        for (int trial = 0; trial < 60; trial++) {
            var before = changed(TinLantern.ranch(), random);
            var after = changed(before, random);
            var from = documents.tree(before);
            var to = documents.tree(after);
            var patch = Patch.between(from, to);
            assertThat(documents.ranch(patch.apply(from))).isEqualTo(after);
            assertThat(documents.ranch(patch.inverse(from).apply(to))).isEqualTo(before);
            assertThat(Patch.of(patch.json())).isEqualTo(patch);
        }
    }

    private static Ranch changed(Ranch ranch, SplittableRandom random) {
        var changed = ranch;
        for (int i = random.nextInt(4); i > 0; i--) {
            var lots = new ArrayList<>(changed.lots().values());
            var lot = lots.get(random.nextInt(lots.size()));
            changed = switch (random.nextInt(4)) {
                case 0 -> changed.withName("Ranch " + random.nextInt(9));
                case 1 -> changed.with(priced(lot, 1 + random.nextInt(300)));
                case 2 -> lots.size() > 2 ? changed.withoutLot(lot.id()) : changed;
                default ->
                    changed.withoutGroup(
                            changed.groups().keySet().stream().findFirst().orElse(lot.id()));
            };
        }
        return changed;
    }

    private static Lot priced(Lot lot, int dollars) {
        return new Lot(
                lot.id(),
                lot.name(),
                lot.feedClass(),
                lot.bookRow(),
                lot.where(),
                lot.cutting(),
                lot.madeOn(),
                lot.storage(),
                lot.stock(),
                Quantity.of(dollars, Unit.DOLLAR_PER_TON),
                lot.nitrateRisk(),
                lot.notes(),
                lot.makeup(),
                null,
                lot.weighings());
    }

    @Test
    void touchesOnlyWhatChanged() {
        var ranch = TinLantern.ranch();
        var lot = ranch.lots().values().iterator().next();
        assertThat(Patch.between(ranch, ranch.with(priced(lot, 7))).paths()).containsExactly("lots/" + lot.id());
        assertThat(Patch.between(ranch, ranch)).matches(Patch::isEmpty);
    }

    @Test
    void aPatchOfAnotherFormatIsRefused() {
        var old = Patch.of("{\"format\":0,\"changes\":{\"name\":\"x\"}}");
        assertThatThrownBy(() -> old.apply(documents.tree(TinLantern.ranch())))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("older Haywright");
    }
}
