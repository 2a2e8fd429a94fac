package haywright.app.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.app.words.ShortRationWords;
import haywright.app.words.ShortWords;
import haywright.cattle.AnimalClass;
import haywright.feeding.ColdSnap;
import haywright.feeding.Rations;
import haywright.feeding.hay.HayRow;
import haywright.feeding.hay.HayStep;
import haywright.feeding.hay.ShortOfHay;
import haywright.forage.Analyte;
import haywright.outlook.OwnRule;
import haywright.quantity.Unit;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The invented ranch mixes oat-pea silage with nitrate in it: each line of the ladder is safe for those that carry a calf. */
class LadderDangersTest {
    /** Manitoba Agriculture, Utilizing High Nitrate Feeds Safely: the safe class as NO3-N, ppm of dry matter. */
    private static final double SAFE = 678;

    /** Of cattle that carry no calf: practice limit L11b. */
    private static final double SAFE_OF_OTHERS = 1000;

    @Test
    void everyLineIsSafeInItsNitrate() {
        var ranch = TinLantern.ranch();
        var hay = ShortOfHay.of(new Rations(ranch, ranch.settings().today(LocalDate.MAX)), ShortOfHay.Asked.NOTHING)
                .orElseThrow();
        int holding = 0;
        for (var least : hay.leastHarm()) {
            for (var row : least.rows()) {
                holding += nitrate(row) > 0 ? 1 : 0;
                assertThat(nitrate(row))
                        .as(least.group().name())
                        .isLessThanOrEqualTo(least.group().animals().calves() ? SAFE : SAFE_OF_OTHERS);
            }
        }
        assertThat(holding).isPositive();
    }

    /** Two lots of 460 tons wait for a test: nothing that hurts is said before it. */
    @Test
    void theTestThatMayCloseTheGapComesFirst() {
        var ranch = TinLantern.ranch();
        var hay = ShortOfHay.of(new Rations(ranch, ranch.settings().today(LocalDate.MAX)), ShortOfHay.Asked.NOTHING)
                .orElseThrow();
        assertThat(hay.steps().get(0).what()).isEqualTo(HayStep.What.TEST);
        assertThat(hay.untested()).hasSize(2);
        var text = ShortWords.figures(hay.steps().get(0), hay);
        assertThat(text).contains("460 tons", "$40");
        assertThat(hay.steps())
                .filteredOn(step -> step.what() == HayStep.What.SELL_BRED)
                .allSatisfy(step -> assertThat(step.before()).isLessThan(hay.tonsUntested()));
    }

    /**
     * Of the drought ranch: on no day is more grain put out than one feeding may have, half a percent of body weight
     * (practice limit L02), nor printed, unless the line says two feedings.
     */
    @Test
    void aFullDayOfGrainIsWhatOneFeedingMayHave() {
        int grained = 0;
        for (var least : drought().leastHarm()) {
            if (least.group().animals() == AnimalClass.GROWING) {
                continue;
            }
            double most = 0.005 * least.group().weight().in(Unit.POUND);
            for (var fed : least.rows()) {
                var line = ShortRationWords.fed(fed);
                grained += fed.grain() > 0 ? 1 : 0;
                // heifers grow until then
                double now = least.group().gain().value() > 0 ? 1.15 * most : most;
                assertThat(fed.inTwoFeedings() || Unit.POUND.fromBase(fed.grain()) <= now + 1e-6)
                        .as(least.group().name() + ": " + line)
                        .isTrue();
                double printed = BARLEY.matcher(line)
                        .results()
                        .mapToDouble(found -> Double.parseDouble(found.group(1)))
                        .max()
                        .orElse(0);
                assertThat(printed).as(line).isLessThanOrEqualTo(now);
                // what is printed is what it has, to a tenth
                assertThat(printed).as(line).isGreaterThan(Unit.POUND.fromBase(fed.grain()) - 0.11);
            }
        }
        assertThat(grained).isGreaterThan(2);
    }

    private static final Pattern BARLEY = Pattern.compile("(?<=Rolled barley )([0-9.]+) lb");

    /** Cows in milk need 10 to 11 % (rule of thumb T04): the floor of the rumen holds there, whichever lots their hay is of. */
    @Test
    void cowsInMilkHaveTheirProteinAndTheLineSaysOfWhichHay() {
        int milking = 0;
        for (var least : drought().leastHarm()) {
            for (var fed : least.rows().stream().filter(HayRow::inMilk).toList()) {
                milking++;
                double dry = 0;
                double protein = 0;
                for (var each : fed.feeds().entrySet()) {
                    double eaten = each.getKey().eaten(each.getValue());
                    dry += eaten;
                    protein += eaten
                            * each.getKey()
                                    .feed()
                                    .composition()
                                    .value(Analyte.CP)
                                    .orElse(0);
                }
                assertThat(protein / dry).as(least.group().name()).isGreaterThanOrEqualTo(10 - 1e-6);
                var line = ShortRationWords.fed(fed);
                fed.feeds().forEach((feed, kg) -> {
                    if (feed.isHayOrSilage() && Unit.POUND.fromBase(kg) >= 0.5) {
                        assertThat(line).contains(feed.feed().name());
                    }
                });
            }
        }
        assertThat(milking).isGreaterThanOrEqualTo(3);
    }

    /** Rows of the ranch as printed, added with a pencil: of no lot more than its bales weigh. */
    @Test
    void rowsOfTheDroughtRanchComeToWhatThereIs() {
        var hay = drought();
        assertThat(hay.tonsShortAtLast()).isZero();
        for (var used : hay.used()) {
            double pounds = 0;
            for (var least : hay.leastHarm()) {
                for (var row : least.rows()) {
                    pounds += row.tons(used.feed()) * 2000;
                    assertThat(ShortRationWords.beside(row, hay.ranch()).get(0))
                            .contains("%s head".formatted(row.head()));
                }
            }
            assertThat(pounds / 2000).isCloseTo(used.tons(), within(1e-6));
            assertThat(used.tons()).as(used.feed().feed().name()).isLessThanOrEqualTo(used.tonsThereAre());
        }
    }

    /** Each row of limited hay says what a degree costs in its own hay, and no other row does: those may eat what they want. */
    @Test
    void limitedHayHasItsLineForTheCold() {
        int limited = 0;
        for (var least : drought().leastHarm()) {
            for (var row : least.rows()) {
                var cold = row.cold();
                double straw = row.feeds().entrySet().stream()
                        .filter(e -> e.getKey().isStraw())
                        .mapToDouble(Map.Entry::getValue)
                        .sum();
                if (!row.isLimited()) {
                    assertThat(straw).isZero();
                    continue;
                }
                limited++;
                assertThat(row.inMilk()).isFalse();
                assertThat(cold).isNotNull();
                var hay = cold.hay().orElseThrow();
                assertThat(row.feeds().keySet()).contains(hay);
                var day = row.from().plusDays(row.days() / 2);
                var rule = OwnRule.of(BentBucket.ranch().settings(), least.group(), day)
                        .orElseThrow();
                // 12 % of a day's hay on the ground is lost
                double nem = hay.dryMatterPercent()
                        / 100
                        * 0.88
                        * hay.feed().composition().value(Analyte.NEM).orElseThrow();
                assertThat(cold.perDegree() * nem).isCloseTo(rule.perDegree(), within(1e-3 * rule.perDegree()));
                assertThat(cold.steps()).isSortedAccordingTo(Comparator.comparingDouble(ColdSnap.Step::kg));
                var line =
                        String.join(" ", ShortRationWords.beside(row, drought().ranch()));
                assertThat(line).contains("× 10 days at −20 °F");
            }
        }
        assertThat(limited).isGreaterThanOrEqualTo(3);
    }

    private static ShortOfHay demo() {
        var ranch = TinLantern.ranch();
        return ShortOfHay.of(new Rations(ranch, ranch.settings().today(LocalDate.MAX)), ShortOfHay.Asked.NOTHING)
                .orElseThrow();
    }

    /**
     * Oat-pea silage of 1,150 ppm is over 678 (practice limit L11), the line of pregnant cattle, and of calves over none
     * but 1,000 (L11b): each row that has it says so with that figure, and no other row does.
     */
    @Test
    void aLotThatIsOnlyMixedIsSaidInItsRow() {
        int mixed = 0;
        for (var least : demo().leastHarm()) {
            for (var row : least.rows()) {
                boolean has = row.feeds().entrySet().stream()
                        .anyMatch(e ->
                                e.getKey().feed().name().equals("Oat-pea silage") && HayRow.pounds(e.getValue()) > 0);
                assertThat(String.join(" ", ShortRationWords.beside(row, demo().ranch()))
                                .contains("1,150 ppm"))
                        .as(least.group().name() + " " + row.from())
                        .isEqualTo(has);
                assertThat(row.nitrate()).isLessThanOrEqualTo(1 + 1e-6);
                mixed += has ? 1 : 0;
            }
        }
        assertThat(mixed).isPositive();
    }

    /** Over a pound more of grain than the row before, or than the dry cows they come from, never comes without its step. */
    @Test
    void noGrainComesOvernight() {
        int atCalving = 0;
        for (var hay : List.of(drought(), demo())) {
            for (var least : hay.leastHarm()) {
                for (var row : least.rows()) {
                    for (var was : least.rows()) {
                        boolean follows = was.inMilk() == row.inMilk()
                                && was.until().equals(row.from().minusDays(1));
                        boolean calves =
                                row.inMilk() && !was.inMilk() && was.from().equals(row.from());
                        double more = Unit.POUND.fromBase(row.grain() - was.grain());
                        if ((follows || calves) && more > 1) {
                            assertThat(row.changes())
                                    .as(least.group().name() + " " + row.from())
                                    .filteredOn(change -> change.atCalving() == calves)
                                    .singleElement()
                                    .satisfies(change -> {
                                        assertThat(change.grain() - change.grainBefore())
                                                .isCloseTo(more, within(1e-9));
                                        // a pound takes 4 days or more: a quarter of the change so many
                                        assertThat(change.each() * 1.0)
                                                .isGreaterThanOrEqualTo(Math.max(3, more - 1e-9));
                                    });
                            atCalving += calves ? 1 : 0;
                        }
                    }
                }
            }
        }
        assertThat(atCalving).isPositive();
    }

    /** 24 inches a head (BunkRoom): twice as many feet as head, beside the feet of bunk that the settings have. */
    @Test
    void limitedHaySaysWhatBunkItTakes() {
        int limited = 0;
        var hay = drought();
        for (var least : hay.leastHarm()) {
            for (var row : least.rows()) {
                if (row.isLimited()) {
                    limited++;
                    var line = String.join(" ", ShortRationWords.beside(row, hay.ranch()));
                    assertThat(line).contains("%d feet of bunk".formatted(2 * row.head()), "there are 120");
                    // 60 head fit at once: 117 in two turns of 59, each weighed by itself
                    int turns = (row.head() + 59) / 60;
                    int each = (row.head() + turns - 1) / turns;
                    double barley = Math.floor(10 * Unit.POUND.fromBase(row.grain()) + 1e-6) / 10;
                    assertThat(line.contains("%d turns or pens of at most %d head".formatted(turns, each)))
                            .isEqualTo(turns > 1);
                    assertThat(line).contains("%d head × %.1f lb = %.0f lb".formatted(each, barley, each * barley));
                }
            }
        }
        assertThat(limited).isPositive();
    }

    /**
     * University of Arkansas MP391: 0.20 % of dry matter in early milk. What all of it brings is added up here.
     */
    @Test
    void aRowShortOfMagnesiumSaysSo() {
        int short_ = 0;
        var hay = drought();
        for (var least : hay.leastHarm()) {
            for (var row : least.rows().stream().filter(HayRow::inMilk).toList()) {
                double dry = 0;
                double magnesium = 0;
                for (var each : row.feeds().entrySet()) {
                    var feed = each.getKey();
                    dry += feed.eaten(each.getValue());
                    magnesium += feed.eaten(each.getValue())
                            * feed.feed().composition().most(Analyte.MG).orElse(0);
                }
                var need = row.magnesium();
                // a feed without a figure is none that brings enough
                if (magnesium / dry < 0.17) {
                    assertThat(need).as(least.group().name() + " " + row.from()).isNotNull();
                }
                if (need != null) {
                    short_++;
                    if (need.unknown().isEmpty()) {
                        assertThat(need.most()).isCloseTo(magnesium / dry, within(1e-6));
                    }
                    assertThat(String.join(" ", ShortRationWords.beside(row, hay.ranch())))
                            .contains("high-magnesium mineral");
                }
            }
        }
        assertThat(short_).isPositive();
    }

    /** A month before: who has to put out magnesium after calving reads it in a row that begins 30 days before, or earlier. */
    @Test
    void magnesiumIsSaidAMonthBeforeCalving() {
        int ahead = 0;
        for (var least : drought().leastHarm()) {
            var calved = least.rows().stream().filter(HayRow::inMilk).findFirst();
            if (calved.isEmpty() || calved.get().magnesium() == null) {
                continue;
            }
            var month = calved.get().from().minusDays(30);
            for (var row : least.rows()) {
                if (!row.inMilk() && !row.until().isBefore(month)) {
                    ahead++;
                    assertThat(row.magnesium())
                            .as(least.group().name())
                            .isEqualTo(calved.get().magnesium());
                }
            }
        }
        assertThat(ahead).isPositive();
    }

    /** Failed barley of 540 ppm: twice that is over 678. Each row with it says so, and that it is new where it is. */
    @Test
    void hayThatGathersNitrateSaysSoInItsRow() {
        int fed = 0;
        int fresh = 0;
        for (var least : drought().leastHarm()) {
            for (var row : least.rows()) {
                boolean has = row.feeds().entrySet().stream()
                        .anyMatch(e -> e.getKey().feed().name().startsWith("Failed barley")
                                && HayRow.pounds(e.getValue()) > 0);
                assertThat(row.baleByBale().stream()
                                .anyMatch(feed -> feed.feed().name().startsWith("Failed barley")))
                        .isEqualTo(has);
                fed += has ? 1 : 0;
                for (var change : row.changes()) {
                    fresh += change.more().stream().anyMatch(name -> name.startsWith("Failed barley")) ? 1 : 0;
                }
            }
        }
        assertThat(fed).isPositive();
        assertThat(fresh).isPositive();
    }

    private static final Pattern STORM = Pattern.compile("= ([0-9.]+) tons\\. None of it");

    /** What a storm takes of all rows that are fed on its first day, on the worst day, as printed, beside the hay left. */
    @Test
    void itReachesTurnoutInAStormOnlyWhereSoMuchIsLeft() {
        for (var hay : List.of(drought(), demo())) {
            var rows = hay.leastHarm().stream()
                    .flatMap(least -> least.rows().stream())
                    .toList();
            double takes = 0;
            for (var day : rows.stream().map(HayRow::from).distinct().toList()) {
                takes = Math.max(
                        takes,
                        rows.stream()
                                .filter(row ->
                                        !row.from().isAfter(day) && !row.until().isBefore(day))
                                .flatMap(row -> ShortRationWords.beside(row, hay.ranch()).stream())
                                .flatMap(line -> STORM.matcher(line).results())
                                .mapToDouble(found -> Double.parseDouble(found.group(1)))
                                .sum());
            }
            // the others eat more in a storm too, not those on limited hay alone
            assertThat(rows.stream()
                            .filter(row -> !row.isLimited())
                            .flatMap(row -> ShortRationWords.beside(row, hay.ranch()).stream())
                            .filter(line -> STORM.matcher(line).find()))
                    .isNotEmpty();
            double left = hay.tonsOnHand() + hay.tonsBought() - hay.tonsTakenAtLast();
            var says = String.join(" ", ShortWords.after(hay));
            assertThat(takes).isPositive();
            assertThat(says.contains((takes < 9.95 ? "%.1f tons more" : "%.0f tons more").formatted(takes)))
                    .isEqualTo(takes > left);
        }
        // the bulls of the drought ranch go out on May 25, the others on May 10
        assertThat(String.join(" ", ShortWords.after(drought()))).contains("Bulls", "May 25", "May 10");
    }

    /** Fewer than half a pound a head nobody weighs out: the smallest supplement of published rations is 0.6 lb. */
    @Test
    void noFeedComesInSplinters() {
        for (var hay : List.of(drought(), demo())) {
            for (var least : hay.leastHarm()) {
                for (var row : least.rows()) {
                    row.feeds().forEach((feed, kg) -> {
                        if (!HayRow.isInOunces(feed) && HayRow.pounds(kg) > 0) {
                            assertThat(HayRow.pounds(kg))
                                    .as(least.group().name() + " " + row.from() + " "
                                            + feed.feed().name())
                                    .isGreaterThanOrEqualTo(0.5);
                        }
                    });
                }
            }
        }
    }

    /** A purchase is said in its own tons and in those of the hay it stands in for: both are printed, and none is saved. */
    @Test
    void aPurchaseStandsInForHay() {
        var ranch = TinLantern.ranch();
        var hay = ShortOfHay.of(new Rations(ranch, ranch.settings().today(LocalDate.MAX)), ShortOfHay.Asked.NOTHING)
                .orElseThrow();
        var buy = hay.steps().stream()
                .filter(step -> step.what() == HayStep.What.BUY_LISTED)
                .findFirst()
                .orElseThrow();
        double saved = Math.rint(buy.before()) - Math.rint(buy.after());
        double enough = (Math.rint(buy.before()) - Math.rint(hay.tonsUntested())) * 72 / saved;
        assertThat(ShortWords.figures(buy, hay))
                .contains(
                        "72 tons bought", "%.0f tons of your hay".formatted(saved), "%.0f tons of it".formatted(enough))
                .doesNotContain("Saves");
    }

    private static ShortOfHay drought() {
        var ranch = BentBucket.ranch();
        return ShortOfHay.of(new Rations(ranch, ranch.settings().today(LocalDate.MAX)), ShortOfHay.Asked.NOTHING)
                .orElseThrow();
    }

    private static double nitrate(HayRow fed) {
        double all = 0;
        double nitrate = 0;
        for (var each : fed.feeds().entrySet()) {
            double eaten = each.getKey().eaten(each.getValue());
            all += eaten;
            nitrate += eaten
                    * each.getKey().feed().composition().value(Analyte.NO3N).orElse(0);
        }
        return nitrate / all;
    }
}
