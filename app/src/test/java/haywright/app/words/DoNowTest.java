package haywright.app.words;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.quantity.Unit;
import haywright.season.WinterBook;
import haywright.season.given.Emergency;
import haywright.season.kept.KeptBook;
import haywright.season.kept.KeptPlan;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A test that may make purchases needless comes before them, everywhere; one that is worth nothing for sure does not. */
class DoNowTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 1);
    private static final UUID COWS = new UUID(1, 1);

    private static double kg(double tons) {
        return Unit.TON.toBase(tons);
    }

    /** A hundred cows get 2 lb of cake a day: 100 × 2 × 14 days are 2,800 lb, 1.4 tons. */
    private static KeptPlan plan() {
        var buy = new KeptPlan.Buy("cake", "Cake", DAY, true, kg(40), kg(40), 0, 0.4, true);
        return new KeptPlan(
                false,
                List.of(buy),
                List.of(),
                List.of(),
                0,
                List.of(new KeptPlan.Ration(
                        COWS, "Cows", 100, List.of(new KeptPlan.Portion("cake", "Cake", Unit.POUND.toBase(2))))),
                List.of(new KeptPlan.Stretch(
                        DAY,
                        DAY.plusDays(70),
                        List.of(
                                new KeptPlan.Eats(COWS, "Cows", Emergency.ID, "Emergency hay", false, kg(104)),
                                new KeptPlan.Eats(COWS, "Cows", "hay", "Meadow hay", true, kg(40))))),
                List.of(),
                List.of(new KeptPlan.Lot("oats", "Oat hay", kg(60))),
                List.of());
    }

    private static WinterBook.Alternative alternative(String id, double low, double high) {
        double net = (low + high) / 2;
        return new WinterBook.Alternative(
                id, "Do " + id, DAY.plusDays(14), net, low, high, 0, 20, 0, new WinterBook.Money(net, low, high), "");
    }

    private static KeptBook book(WinterBook.Alternative... alternatives) {
        return new KeptBook(
                "x",
                DAY,
                DAY.plusDays(155),
                plan(),
                0,
                0.0,
                0.0,
                200,
                0,
                20,
                true,
                0.8,
                null,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(alternatives),
                List.of(),
                List.of(),
                List.of());
    }

    private static List<DoNow> of(@Nullable KeptBook book) {
        return DoNow.of(plan(), book);
    }

    @Test
    void aTestThatPaysComesFirstAndPurchasesWaitForIt() {
        var book = book(alternative("sell", 100, 900), alternative("test", 35_300, 42_900));
        var all = of(book);
        assertThat(all.get(0).what()).contains("Oat hay");
        assertThat(all)
                .filteredOn(one -> one.under().isEmpty())
                .noneMatch(one -> one.what().contains("40 tons"));
        assertThat(all.get(all.size() - 1).under()).singleElement().asString().contains("40 tons of Cake");
        assertThat(all).anyMatch(one -> one.more().contains("1.4 ton"));
        assertThat(DoNow.next(book)).hasValueSatisfying(next -> assertThat(next).contains("Oat hay"));
    }

    @Test
    void aTestThatMayBringNothingIsNotInTheWay() {
        var book = book(alternative("by-product", 22_400, 32_400), alternative("test", -2_100, 6_300));
        assertThat(of(book)).extracting(DoNow::what).noneMatch(what -> what.contains("Oat hay"));
        assertThat(of(book).get(0).what()).isEqualTo("Do by-product.");
        assertThat(of(book).get(1).what()).contains("40 tons of Cake");
        assertThat(DoNow.next(book)).contains("do by-product");
    }

    @Test
    void whileItIsFiguredNothingIsToBeBought() {
        assertThat(of(null)).singleElement().satisfies(one -> {
            assertThat(one.what()).doesNotContain("Cake");
            assertThat(one.under()).isEmpty();
        });
    }

    /** 104 tons that nobody owns are the most that they eat. */
    @Test
    void hayThatHasToBeFoundIsNamedInTheLineOfTheGroup() {
        assertThat(EatWords.of(plan()).get(0).path()).contains("Meadow hay", "104 tons");
    }
}
