package haywright.app.words;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.quantity.Unit;
import haywright.season.WinterBook;
import haywright.season.given.Emergency;
import haywright.season.kept.KeptBook;
import haywright.season.kept.KeptPlan;
import haywright.season.kept.WinterStory;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
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
                List.of(),
                null,
                null);
    }

    private static WinterBook.Alternative alternative(String id, double low, double high) {
        double net = (low + high) / 2;
        return new WinterBook.Alternative(
                id,
                "Do " + id,
                DAY.plusDays(14),
                net,
                low,
                high,
                0,
                20,
                0,
                new WinterBook.Money(net, low, high),
                "",
                null);
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

    /** The cows eat 104 and 40 tons to turnout, 1.44 a head; 18 tons are 12.5 head. */
    @Test
    void whatIsStillToFindIsSaidInHeadToo() {
        var plan = plan();
        var short_ = new KeptPlan(
                false,
                plan.buys(),
                plan.sells(),
                plan.spoils(),
                kg(18),
                plan.rations(),
                plan.stretches(),
                plan.lots(),
                plan.waiting(),
                plan.unmet(),
                null,
                null);
        assertThat(WinterWords.fewer(short_, short_.emergencyKg())).contains("13 head", "Cows");
        assertThat(DoNow.of(short_, book(alternative("test", -2_100, 6_300))))
                .filteredOn(DoNow::isShort)
                .singleElement()
                .satisfies(one -> assertThat(one.more()).contains("13 head"));
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

    /** What a test saves is counted for all that waits for one: each is named. */
    @Test
    void everyLotThatTheTestCountsIsNamed() {
        var one = plan();
        var two = new KeptPlan(
                one.lasts(),
                one.buys(),
                one.sells(),
                one.spoils(),
                one.emergencyKg(),
                one.rations(),
                one.stretches(),
                one.lots(),
                List.of(new KeptPlan.Lot("oats", "Oat hay", kg(60)), new KeptPlan.Lot("stalks", "Stalk bales", kg(39))),
                one.unmet(),
                one.findPerKg(),
                one.findEntered());
        assertThat(DoNow.of(two, book(alternative("test", 35_300, 42_900)))
                        .get(0)
                        .what())
                .contains("Oat hay", "Stalk bales");
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
        assertThat(EatWords.of(plan(), DAY.plusDays(155), Set.of()).get(0).path())
                .contains("Meadow hay", "104 tons");
    }

    private static KeptPlan plan(List<KeptPlan.Buy> buys, double toFind, KeptPlan.Stretch... stretches) {
        return new KeptPlan(
                toFind == 0,
                buys,
                List.of(),
                List.of(),
                kg(toFind),
                plan().rations(),
                List.of(stretches),
                List.of(
                        new KeptPlan.LotEnds("hay", "Meadow hay", kg(200), true, null),
                        new KeptPlan.LotEnds("second", "Second cutting", kg(60), true, null)),
                plan().waiting(),
                List.of(),
                Unit.DOLLAR_PER_TON.to(Unit.DOLLAR_PER_KG, 300),
                null);
    }

    private static KeptPlan.Stretch stretch(int from, int to, KeptPlan.Eats... eats) {
        return new KeptPlan.Stretch(DAY.plusDays(from), DAY.plusDays(to), List.of(eats));
    }

    private static KeptPlan.Eats eats(String feed, String name, double tons) {
        return new KeptPlan.Eats(COWS, "Cows", feed, name, true, kg(tons));
    }

    /** 10 tons by the seventh day, at $363 a ton (0.4 × 907.18 = 362.87): 10 × 363 = 3,630. */
    private static final KeptPlan.Buy EARLY =
            new KeptPlan.Buy("cake", "Cake", DAY.plusDays(7), false, kg(10), kg(10), 0, 0.4, true);

    private static KeptBook book(KeptPlan plan, int lasts, WinterBook.Alternative... alternatives) {
        return book(plan, lasts, List.of(), alternatives);
    }

    private static KeptBook book(
            KeptPlan plan, int lasts, List<KeptBook.Beside> besides, WinterBook.Alternative... alternatives) {
        return new KeptBook(
                "x",
                DAY,
                DAY.plusDays(155),
                plan,
                lasts,
                0.0,
                0.0,
                200,
                lasts * 10,
                20,
                true,
                0.8,
                null,
                List.of(new KeptBook.ShortWinter("1996-97", 10, 0, 30, DAY.plusDays(140))),
                List.of(),
                List.of(),
                besides,
                List.of(),
                List.of(alternatives),
                List.of(),
                List.of(),
                List.of(story("1993-94", 120), story("1994-95", 160)));
    }

    private static WinterStory story(String winter, int shortFrom) {
        return new WinterStory(
                winter, false, 0, 0, kg(5), 0, 0, DAY.plusDays(shortFrom), List.of(), List.of(), List.of(), List.of());
    }

    private static WinterBook.Alternative test(double tonsShort, WinterBook.Needed... needed) {
        return new WinterBook.Alternative(
                "test",
                "Test",
                DAY.plusDays(14),
                1000,
                500,
                1500,
                0,
                0,
                tonsShort,
                new WinterBook.Money(1000, 500, 1500),
                "",
                List.of(needed));
    }

    @Test
    void theLeadSaysWhatHasToBeBoughtForIt() {
        var bought = List.of(EARLY);
        assertThat(WinterWords.headline(book(plan(bought, 0), 18))).contains("18 winters of 20", "10 tons", "$3,630");
        assertThat(WinterWords.headline(book(plan(bought, 0), 0))).contains("10 tons", "$3,630");
        assertThat(WinterWords.line(book(plan(bought, 0), 18), DAY)).contains("10 tons", "$3,630");
        assertThat(WinterWords.headline(book(plan(List.of(), 0), 18))).doesNotContain("$", "ton");
    }

    /** Of 1996-97 the middle of its draws is 140 days on, one as it came 120, and one after turnout, 160. */
    @Test
    void theDayItCouldStartIsTheEarliestOfAllAndNeverAfterTurnout() {
        assertThat(book(plan(), 0).shortFrom()).contains(DAY.plusDays(120));
        assertThat(WinterWords.shortIn(book(plan(), 0))).contains(Show.day(DAY.plusDays(120)));
    }

    @Test
    void hayThatASafeTestLeavesToFindDoesNotWaitForIt() {
        var all = DoNow.of(plan(List.of(EARLY), 40), book(plan(List.of(EARLY), 40), 0, test(30)));
        assertThat(all)
                .anyMatch(one -> one.more().contains("30 tons") && one.more().contains("40 tons"));
        assertThat(all).flatExtracting(DoNow::under).noneMatch(line -> line.contains("40 tons"));
        var needless = DoNow.of(plan(List.of(EARLY), 40), book(plan(List.of(EARLY), 40), 0, test(0)));
        assertThat(needless).flatExtracting(DoNow::under).anyMatch(line -> line.contains("40 tons"));
    }

    /** Of 40 tons of cake 31 are bought though the test is safe: at $363 a ton 31 are $11,253, and 9 wait. */
    @Test
    void whatIsNeededWhateverATestSaysStandsFirstAndTheRestWaits() {
        var book = book(plan(), 0, test(0, new WinterBook.Needed("cake", kg(31))));
        var all = DoNow.of(plan(), book);
        assertThat(all.get(0).what()).contains("31 tons of Cake", "$11,253");
        assertThat(all.get(0).under()).isEmpty();
        assertThat(all.get(1).isTest()).isTrue();
        assertThat(all).flatExtracting(DoNow::under).singleElement().asString().contains("9 tons of Cake");
        assertThat(DoNow.next(book))
                .hasValueSatisfying(next -> assertThat(next).contains("31 tons of Cake", "Oat hay"));
        // the 1.4 tons until the test are of the 31
        assertThat(all).noneMatch(one -> one.more().contains("1.4 ton"));
        var none = DoNow.of(plan(), book(plan(), 0, test(0)));
        assertThat(none.get(0).isTest()).isTrue();
        assertThat(none).flatExtracting(DoNow::under).singleElement().asString().contains("40 tons of Cake");
        // all of it: nothing waits
        var whole = DoNow.of(plan(), book(plan(), 0, test(0, new WinterBook.Needed("cake", kg(44)))));
        assertThat(whole.get(0).what()).contains("40 tons of Cake");
        assertThat(whole).flatExtracting(DoNow::under).isEmpty();
    }

    @Test
    void aPurchaseThatWaitsForATestHasNoDayBeforeIt() {
        var all = DoNow.of(plan(List.of(EARLY), 0), book(plan(List.of(EARLY), 0), 0, test(0)));
        assertThat(all)
                .flatExtracting(DoNow::under)
                .singleElement()
                .asString()
                .contains("10 tons")
                .doesNotContain(Show.day(EARLY.by()));
    }

    /** What saves dollars and does not make the feed last says tons first. */
    @Test
    void tonsStillShortComeBeforeDollars() {
        var first = DoNow.of(plan(), book(plan(), 0, test(98))).get(0).more();
        assertThat(first.indexOf("98 tons")).isPositive().isLessThan(first.indexOf("$"));
    }

    @Test
    void aLotIsKeptOnlyWhereNobodyIsFedOfItBefore() {
        var grass = DAY.plusDays(155);
        var fedNow = plan(
                List.of(),
                0,
                stretch(0, 50, eats("hay", "Meadow hay", 80), eats("second", "Second cutting", 15)),
                stretch(50, 155, eats("second", "Second cutting", 45), eats("hay", "Meadow hay", 30)));
        assertThat(EatWords.keep(fedNow, DAY, grass, Set.of())).doesNotContain("Keep Second cutting");
        var kept = plan(
                List.of(),
                0,
                stretch(0, 50, eats("hay", "Meadow hay", 80)),
                stretch(50, 155, eats("second", "Second cutting", 45)));
        assertThat(EatWords.keep(kept, DAY, grass, Set.of("second")))
                .contains("Keep Second cutting", "only mixed", Show.day(DAY.plusDays(50)));
        var atGrass = plan(
                List.of(),
                0,
                stretch(0, 155, eats("hay", "Meadow hay", 80)),
                stretch(155, 160, eats("second", "Second cutting", 2)));
        assertThat(EatWords.keep(atGrass, DAY, grass, Set.of())).doesNotContain("Second cutting");
        assertThat(EatWords.of(atGrass, grass, Set.of()).get(0).path()).doesNotContain("Second cutting");
    }

    /** 15 of 95 tons are 16 %, and 3 of 83 under 4 %: less than a twentieth is no feed they live on. */
    @Test
    void aLotIsNamedWhereItIsATwentiethOfWhatTheyEat() {
        var both =
                plan(List.of(), 0, stretch(0, 50, eats("hay", "Meadow hay", 80), eats("second", "Second cutting", 15)));
        assertThat(EatWords.of(both, DAY.plusDays(155), Set.of()).get(0).path())
                .contains("Meadow hay", "Second cutting");
        var one =
                plan(List.of(), 0, stretch(0, 50, eats("hay", "Meadow hay", 80), eats("second", "Second cutting", 3)));
        assertThat(EatWords.of(one, DAY.plusDays(155), Set.of()).get(0).path())
                .contains("Meadow hay")
                .doesNotContain("Second cutting");
    }

    /** Weeks in which they live on what is bought are no gap, in either paragraph. */
    @Test
    void whatIsBoughtIsNamedInEachStretch() {
        var plan = plan(
                List.of(EARLY),
                0,
                stretch(0, 30, eats("hay", "Meadow hay", 80)),
                stretch(
                        30,
                        60,
                        new KeptPlan.Eats(COWS, "Cows", "cake", "Cake", false, kg(20)),
                        eats("bought", "Hay for sale", 60)),
                stretch(60, 155, eats("second", "Second cutting", 60)));
        var path = List.of("Meadow hay to " + Show.day(DAY.plusDays(29)), "Hay for sale with Cake", "Second cutting");
        assertThat(EatWords.same(plan, DAY.plusDays(155), Set.of()))
                .singleElement()
                .satisfies(line -> assertThat(String.join("; ", line.eats())).contains(path));
        assertThat(EatWords.of(plan, DAY.plusDays(155), Set.of()).get(0).path()).contains(path);
    }

    /** Short from day 120 at the earliest, and hay to find in the plan from day 30: both days stand in one place, with why. */
    @Test
    void theDayOfThePlanStandsBesideTheDayOfTheWinters() {
        var plan = plan(
                List.of(),
                40,
                stretch(0, 30, eats("hay", "Meadow hay", 80)),
                stretch(30, 155, new KeptPlan.Eats(COWS, "Cows", Emergency.ID, "Emergency hay", false, kg(40))));
        for (var says : List.of(WinterWords.shortIn(book(plan, 0)), EatWords.keep(book(plan, 0), Set.of()))) {
            assertThat(says).contains(Show.day(DAY.plusDays(120)), Show.day(DAY.plusDays(30)));
        }
    }

    /**
     * Winters are 110 tons short on average, and the plan feeds 81 tons of hay still to find: lead, list and match name the
     * 110, and the 81 once as what they are.
     */
    @Test
    void oneCountOfTonsShortStandsEverywhere() {
        var plan = plan(
                List.of(),
                81,
                stretch(0, 30, eats("hay", "Meadow hay", 80)),
                stretch(30, 155, new KeptPlan.Eats(COWS, "Cows", Emergency.ID, "Emergency hay", false, kg(81))));
        var book = book(plan, 0, List.of(new KeptBook.Beside("planned", 0.0, 99_000, 90_800.0, 110.0)));
        var order = DoNow.of(plan, book).stream()
                .filter(DoNow::isShort)
                .map(one -> one.what() + " " + one.more() + " " + one.under())
                .collect(Collectors.joining());
        for (var says : List.of(WinterWords.shortIn(book), order, EatWords.keep(book, Set.of()))) {
            assertThat(says).contains("110 tons");
        }
        assertThat(order).contains("81 tons");
        assertThat(WinterWords.headline(book)).doesNotContainIgnoringCase("run out");
    }

    /** Hay still to find is at $300 a ton, and the winter comes to $90,800 with it. */
    @Test
    void whatTheWinterCostsAndHayStillToFindIsPricedAtIsSaid() {
        var book = book(plan(List.of(), 81), 0, List.of(new KeptBook.Beside("planned", 0.0, 99_000, 90_800.0, 110.0)));
        assertThat(WinterWords.costs(book)).contains("$90,800", "$300");
        assertThat(WinterWords.costs(book(plan(List.of(), 0), 20))).isEmpty();
    }

    /** The ranch's own price is named as that, and one that its dearest hay lifted as that. */
    @Test
    void whosePriceHayStillToFindHasIsSaid() {
        var at = Unit.DOLLAR_PER_TON.to(Unit.DOLLAR_PER_KG, 200);
        var guess = WinterWords.findPrice(priced(at, null));
        var own = WinterWords.findPrice(priced(at, at));
        var lifted = WinterWords.findPrice(priced(at, Unit.DOLLAR_PER_TON.to(Unit.DOLLAR_PER_KG, 150)));
        assertThat(List.of(guess, own, lifted))
                .allMatch(says -> says.startsWith("$200 a ton"))
                .doesNotHaveDuplicates();
    }

    private static KeptPlan priced(double perKg, @Nullable Double entered) {
        var plan = plan();
        return new KeptPlan(
                plan.lasts(),
                plan.buys(),
                plan.sells(),
                plan.spoils(),
                plan.emergencyKg(),
                plan.rations(),
                plan.stretches(),
                plan.lots(),
                plan.waiting(),
                plan.unmet(),
                perKg,
                entered);
    }
}
