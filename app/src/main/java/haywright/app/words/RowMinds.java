package haywright.app.words;

import haywright.diet.CheckedNeed;
import haywright.feeding.ChangeDays;
import haywright.feeding.ColdSnap;
import haywright.feeding.hay.BunkTurns;
import haywright.feeding.hay.HayChange;
import haywright.feeding.hay.HayRow;
import haywright.forage.Analyte;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.ration.PricedFeed;
import haywright.season.given.Facts;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What to mind of one row where hay is short: what hurts cattle where it is fed otherwise than it is meant. */
final class RowMinds {
    /** °F, mean of a day in a storm that hay is kept for (judgment: days on end are seldom colder). */
    private static final double STORM = -20;

    /** Pounds of grain beside hay that cattle fight for. */
    private static final double FOUGHT_FOR = 1;

    /** Of its line, from which nitrate leaves no room for the water’s. */
    private static final double AT_THE_LINE = 0.95;

    private static final double TENTHS = 10;

    private RowMinds() {}

    static Stream<String> of(HayRow row, Ranch ranch) {
        return Stream.of(
                        nitrate(row),
                        baleByBale(row),
                        row.changes().stream().map(RowMinds::change),
                        bunk(row, ranch),
                        row.inTwoFeedings() && ranch.outfit().timesADay() < 2
                                ? Stream.of("Feed the grain twice a day. Your settings say once.")
                                : Stream.<String>of(),
                        Optional.ofNullable(row.magnesium()).stream().map(need -> magnesium(need, row)),
                        Optional.ofNullable(row.cold()).stream().flatMap(cold -> cold(row, cold)))
                .flatMap(says -> says);
    }

    /** {@code Only mixed, never by itself: Oat-pea silage, 1,150 ppm nitrate-nitrogen.} */
    private static Stream<String> nitrate(HayRow row) {
        if (row.onlyMixed().isEmpty()) {
            return Stream.of();
        }
        var lots = row.onlyMixed().stream()
                .map(feed -> feed.feed().name()
                        + feed.feed().composition().value(Analyte.NO3N).stream()
                                .mapToObj(ppm -> ", %s ppm nitrate nitrogen".formatted(Show.number(ppm, 0)))
                                .collect(Collectors.joining()))
                .collect(Collectors.joining("; "));
        return Stream.of(
                "Only mixed into the rest, never by itself: %s.".formatted(lots),
                "With it the whole ration is counted at %s %% of the nitrate that is safe for them.%s Ask your veterinarian first."
                        .formatted(
                                Show.number(100 * row.nitrate(), 0),
                                row.nitrate() >= AT_THE_LINE
                                        ? " Nothing is left for a worse load: test several, and test the water."
                                        : ""));
    }

    /**
     * @see "Rations could cause winter tetany, Alberta Agriculture (Kopp): magnesium oxide; from a month before calving is
     *     common practice, no source"
     */
    private static String magnesium(CheckedNeed need, HayRow row) {
        var known = need.unknown().isEmpty()
                ? "%s have %s magnesium and %s is needed: "
                        .formatted(
                                row.inMilk() ? "These feeds" : "The feeds after calving",
                                CheckedWords.supplied(need),
                                CheckedWords.share(need.needed(), need.unit()))
                : "%s may be short of magnesium, %s is needed and no figure is known of %s: "
                        .formatted(
                                row.inMilk() ? "These feeds" : "The feeds after calving",
                                CheckedWords.share(need.needed(), need.unit()),
                                String.join(" and ", need.unknown()));
        return known
                + "put out a high-magnesium mineral, from a month before calving to turnout. Ask your veterinarian about tetany.";
    }

    /** Single bales may be over the line where their lot is not. */
    private static Stream<String> baleByBale(HayRow row) {
        var lots = row.baleByBale().stream().map(feed -> feed.feed().name()).toList();
        return lots.isEmpty()
                ? Stream.of()
                : Stream.of(
                        "%s can gather nitrate, and a bale may hold twice what its report says. Test a few bales one by one. Let them fill on other hay first, and never turn hungry cattle onto it."
                                .formatted(String.join(" and ", lots)));
    }

    /** {@code Change over from Jan 29 to Feb 8: trade a quarter every 3 days. New or more: Rolled barley.} */
    private static String change(HayChange change) {
        var more = String.join(", ", change.more());
        var pounds = change.grain() - change.grainBefore() > ChangeDays.MORE_GRAIN
                ? " Grain: %s, then %s lb."
                        .formatted(
                                IntStream.range(1, ChangeDays.QUARTERS)
                                        .mapToObj(quarter -> Show.number(
                                                change.grainBefore()
                                                        + (change.grain() - change.grainBefore())
                                                                * quarter
                                                                / ChangeDays.QUARTERS,
                                                1))
                                        .collect(Collectors.joining(", ")),
                                Show.number(Math.floor(10 * change.grain() + 1e-6) / 10, 1))
                : "";
        if (!change.stops().isEmpty()) {
            var rises = more.isEmpty() ? "" : " New or more: " + more + "." + pounds;
            return "They get %s now: it must stop today, so there is nothing to trade it for by quarters. Call your nutritionist or veterinarian before the first feeding.%s"
                    .formatted(String.join(" and ", change.stops()), rises);
        }
        return (change.atCalving()
                        ? "Each cow from the day she calves, not all by the date: trade a quarter every %s days, all on her day %s. New or more: %s.%s Keep fresh cows apart for it."
                        : "Change over from %3$s to %4$s: trade a quarter every %1$s days. New or more: %5$s.%6$s")
                .formatted(
                        change.atCalving()
                                ? new Object[] {change.each(), ChangeDays.all(change.each()), more, pounds}
                                : new Object[] {
                                    change.each(),
                                    ChangeDays.all(change.each()),
                                    Show.day(change.from()),
                                    Show.day(change.full()),
                                    more,
                                    pounds
                                });
    }

    /**
     * {@code 117 head need 234 feet of bunk to eat all at once; there are 120. Feed them in 2 turns or pens of at most 59
     * head, each with its whole share.}
     */
    private static Stream<String> bunk(HayRow row, Ranch ranch) {
        boolean isFoughtFor = row.isLimited() || row.isStretched() && HayRow.pounds(row.grain()) > FOUGHT_FOR;
        if (!isFoughtFor) {
            return Stream.of();
        }
        var outfit = ranch.outfit();
        double feet = BunkTurns.feet(row.head());
        double there = outfit.bunk() == null ? 0 : outfit.bunk().in(Unit.FOOT);
        int turns = BunkTurns.of(row.head(), there);
        int each = turns == 0 ? row.head() : (int) Math.ceil((double) row.head() / turns);
        return Stream.of(
                "%s head need %s feet of bunk to eat all at once%s%s"
                        .formatted(
                                Show.number(row.head(), 0),
                                Show.number(feet, 0),
                                there == 0
                                        ? ". No bunk is entered under settings."
                                        : "; there are %s.".formatted(Show.number(there, 0)),
                                there >= feet
                                        ? ""
                                        : turns == 0 || BunkTurns.areTooMany(turns)
                                                ? " Without the room the strong ones eat the others’ grain: do not take this step."
                                                : " Feed them in %d turns or pens of at most %d head, each with its whole share, and keep the others away: else the strong ones eat their grain."
                                                        .formatted(turns, each)),
                outfit.scale() || !(HayRow.pounds(row.grain()) > 0)
                        ? ""
                        : "The wagon does not weigh: weigh the grain another way, %d head × %s lb = %s lb each time."
                                .formatted(
                                        each,
                                        Show.number(HayRow.pounds(row.grain()), 1),
                                        Show.number(each * HayRow.pounds(row.grain()), 0)));
    }

    /** What colder days take, and that nothing of it is counted; by the degree where hay is limited. */
    private static Stream<String> cold(HayRow row, ColdSnap cold) {
        var kept = storm(row, cold).stream().map(pounds -> keep(row, pounds));
        if (!row.isLimited()) {
            return kept;
        }
        boolean isFull = ColdWords.isFull(cold) && cold.hay().isPresent();
        return Stream.concat(
                isFull
                        ? full(row, cold, cold.hay().get())
                        : ColdWords.of(cold).stream().limit(2),
                kept);
    }

    /** Tons that a storm takes of a row, as its line has them; 0 where more hay is no help. */
    static double stormTons(HayRow row) {
        return Optional.ofNullable(row.cold())
                .flatMap(cold -> storm(row, cold))
                .map(pounds -> Math.rint(TENTHS * tons(row, pounds)) / TENTHS)
                .orElse(0.0);
    }

    /** Pounds of hay a head and day in a storm; empty where they take none, or hay does not do. */
    private static Optional<Double> storm(HayRow row, ColdSnap cold) {
        var kg = ColdWords.isFull(cold)
                ? cold.hay().map(hay -> inPlaceOfStraw(row, cold, hay)).filter(swapped -> swapped <= straw(row))
                : Optional.of(Math.min(cold.most(), more(cold)));
        return kg.map(ColdWords::halves).filter(pounds -> pounds > 0);
    }

    /** kg of hay on top at that cold, room or not: as the line of degrees has it where that goes so far. */
    private static double more(ColdSnap cold) {
        double storm = Unit.FAHRENHEIT.toBase(STORM);
        return cold.steps().stream()
                .filter(step -> Math.abs(step.celsius() - storm) < 1e-6 && step.kg() < cold.most())
                .findFirst()
                .map(ColdSnap.Step::kg)
                .orElse(Math.max(0, cold.perDegree() * (cold.below() - storm)));
    }

    /** {@code 118 head × 3 lb × 10 days at −40 °F = 1.8 tons.} */
    private static String keep(HayRow row, double pounds) {
        return "Keep it by for a storm: %s head × %s lb × %s days at %s = %s %s. None of it is in these rows."
                .formatted(
                        Show.number(row.head(), 0),
                        Show.number(pounds, 1),
                        Show.number(Facts.value("storm_days"), 0),
                        Show.temperature(Unit.FAHRENHEIT.toBase(STORM)),
                        Show.number(Measures.ofTons(tons(row, pounds)), 1),
                        Measures.tons());
    }

    private static double tons(HayRow row, double pounds) {
        return Unit.TON.fromBase(Unit.POUND.toBase(row.head() * pounds * Facts.value("storm_days")));
    }

    private static Stream<String> full(HayRow row, ColdSnap cold, PricedFeed hay) {
        var at = Show.temperature(Unit.FAHRENHEIT.toBase(STORM));
        double kg = inPlaceOfStraw(row, cold, hay);
        if (kg == 0) {
            return Stream.of("They are full on this ration. Down to %s it has what cold takes.".formatted(at));
        }
        return Stream.of(
                kg <= straw(row)
                        ? "They are full on this ration. In a storm put out %s in place of straw, pound for pound: %s lb at %s."
                                .formatted(hay.feed().name(), Show.number(ColdWords.halves(kg), 1), at)
                        : "They are full on this ration, and at %s hay in place of all their straw is not enough. They need richer feed: do not take this step before you have it."
                                .formatted(at));
    }

    /**
     * kg of hay for as much straw to cattle that hold no more: it brings so much more energy, and fills no more. Where m Mcal
     * are short and a kg put out of hay has h, of straw w: {@code m/(h − w)}; infinite where they have no straw.
     */
    private static double inPlaceOfStraw(HayRow row, ColdSnap cold, PricedFeed hay) {
        double mcal = more(cold) * energy(hay);
        double straw = pick(row, PricedFeed::isStraw).entrySet().stream()
                        .mapToDouble(e -> e.getValue() * energy(e.getKey()))
                        .sum()
                / straw(row);
        return mcal == 0 ? 0 : energy(hay) > straw ? mcal / (energy(hay) - straw) : Double.POSITIVE_INFINITY;
    }

    /** kg put out. */
    private static double straw(HayRow row) {
        return pick(row, PricedFeed::isStraw).values().stream()
                .mapToDouble(kg -> kg)
                .sum();
    }

    private static Map<PricedFeed, Double> pick(HayRow row, Predicate<PricedFeed> of) {
        return row.feeds().entrySet().stream()
                .filter(e -> of.test(e.getKey()))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }

    /** Mcal of NEm of a kg put out. */
    private static double energy(PricedFeed feed) {
        return feed.eaten(1) * feed.feed().composition().value(Analyte.NEM).orElse(0);
    }
}
