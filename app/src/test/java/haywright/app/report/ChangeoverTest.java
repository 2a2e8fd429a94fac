package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.BentBucket;
import haywright.app.document.TinLantern;
import haywright.cattle.herd.Group;
import haywright.feeding.Offer;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.forage.FeedClass;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedNow;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ChangeoverTest {
    private static final Ranch DEMO = TinLantern.ranch();
    private static final LocalDate DAY = DEMO.settings().today(LocalDate.EPOCH);
    private static final Group COWS = DEMO.groups().values().iterator().next();

    private static Offers fed(Ranch ranch) {
        return new Offers(new Rations(ranch, DAY), COWS);
    }

    /** From 20 lb of straw: a quarter less of it every three days, by pencil for 240 head. */
    @Test
    void aQuarterMoreOfTheRationEveryThreeDays() {
        var straw = DEMO.lots().values().stream()
                .filter(lot -> lot.name().equals("Barley straw"))
                .findFirst()
                .orElseThrow();
        var over = Changeover.of(fed(DEMO.with(
                        new FedNow(COWS.id(), Map.of(straw.id(), Quantity.of(20, Unit.POUND_A_DAY))))))
                .orElseThrow();
        assertThat(over.rows())
                .filteredOn(row -> row.feed().equals("Barley straw"))
                .singleElement()
                .satisfies(row -> assertThat(row.pounds()).containsExactly("3,600", "2,400", "1,200", "0"));
        assertThat(over.rows())
                .filteredOn(row -> !row.feed().equals("Barley straw"))
                .isNotEmpty()
                .allSatisfy(row -> {
                    double last = number(row.pounds().get(3));
                    assertThat(number(row.pounds().get(0))).isBetween(last / 4 - 1, last / 4 + 1);
                });
    }

    @Test
    void nothingIsChangedOverWhereNothingIsNewOrWhatIsFedHasToStop() {
        assertThat(Changeover.of(fed(DEMO))).isEmpty();
        var silage = DEMO.lots().values().stream()
                .filter(lot -> lot.name().equals("Corn silage"))
                .findFirst()
                .orElseThrow();
        assertThat(Changeover.of(fed(DEMO.with(
                        new FedNow(COWS.id(), Map.of(silage.id(), Quantity.of(40, Unit.POUND_A_DAY)))))))
                .isEmpty();
    }

    /**
     * A pound of grain more takes 4 days (Yaremcio), a quarter of the change no less than 3: the drought ranch's bulls go from
     * none to 4.9 lb in quarters of 5 days, in full on day 16; its cows' 1.8 lb are there on day 10.
     */
    @Test
    void moreGrainTakesLonger() {
        var ranch = BentBucket.ranch();
        var rations = new Rations(ranch, ranch.settings().today(LocalDate.EPOCH));
        int grained = 0;
        for (var group : ranch.groups().values()) {
            var offers = new Offers(rations, group);
            double grain =
                    grain(offers.sure().orElseThrow()) - grain(offers.now().orElseThrow());
            var over = Changeover.of(offers);
            if (over.isEmpty()) {
                continue;
            }
            int each = Math.max(3, (int) Math.ceil(grain / 4 * 4));
            assertThat(over.get().days().get(3)).as(group.name()).isEqualTo("Day " + (3 * each + 1) + " on");
            grained += each > 3 ? 1 : 0;
            var says = String.join(
                    " ", Changeover.words(offers, p -> p.feed().feed().name()));
            // every feed that they get now and no more is named
            offers.now().orElseThrow().mix().portions().stream()
                    .filter(p -> !p.feed().feed().isLooseMineral())
                    .filter(p -> offers.sure().orElseThrow().mix().portions().stream()
                            .noneMatch(q -> q.feed().equals(p.feed())))
                    .forEach(p -> assertThat(says).contains(p.feed().feed().name() + " stop"));
            assertThat(says.contains("Grain in pounds")).as(group.name()).isEqualTo(grain >= 1.5);
        }
        assertThat(grained).isPositive();
    }

    private static double grain(Offer offer) {
        return offer.mix().portions().stream()
                .filter(p -> p.feed().feed().feedClass() == FeedClass.GRAIN)
                .mapToDouble(p -> Unit.POUND.fromBase(p.kgPutOut()))
                .sum();
    }

    private static double number(String words) {
        return Double.parseDouble(words.replace(",", ""));
    }
}
