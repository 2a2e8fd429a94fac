package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.TinLantern;
import haywright.cattle.herd.Group;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
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

    private static double number(String words) {
        return Double.parseDouble(words.replace(",", ""));
    }
}
