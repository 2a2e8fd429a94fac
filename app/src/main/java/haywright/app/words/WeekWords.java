package haywright.app.words;

import haywright.diet.WayOfFeeding;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ranch.FedWeek;
import haywright.ranch.Ranch;
import haywright.season.given.Appetite;
import haywright.season.given.Season;
import haywright.season.kept.KeptBook;
import haywright.season.kept.KeptPlan;
import haywright.season.week.WeekMoves.Contradiction;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A week that was entered, what is odd about it, and why the next winter book answers differently. */
public final class WeekWords {
    private static final double LEAST_TONS = 0.5;
    /** A mineral's ounces move with every ration, and say nothing. */
    private static final double LEAST_POUNDS = 0.5;

    private static final double LEAST_SCORE = 0.05;
    private static final double LEAST_PERCENT = 1;
    private static final double PERCENT = 100;

    /** The widest limits are 0.4 and 4.5 % of weight; what cattle usually eat is 1.5 to 3 %. */
    private static final double USUAL_LOW = 3.75;

    private static final double USUAL_HIGH = 0.67;

    private WeekWords() {}

    /** {@code Nov 25 to Dec 1}. */
    public static String span(FedWeek week) {
        return week.from().equals(week.to())
                ? Show.day(week.from())
                : Show.day(week.from()) + " to " + Show.day(week.to());
    }

    /** {@code fed 18 tons Meadow hay; left on hand 155 tons Meadow hay; Cows scored 5}. */
    public static String said(FedWeek week, Ranch ranch) {
        var all = new ArrayList<String>();
        if (!week.fed().isEmpty()) {
            all.add("fed " + masses(week.fed(), ranch));
        }
        if (!week.counted().isEmpty()) {
            all.add("left on hand " + masses(week.counted(), ranch));
        }
        week.scored().forEach((group, score) -> all.add(name(group, ranch) + " scored " + Show.significant(score, 3)));
        week.left()
                .forEach((feed, percent) ->
                        all.add(Show.number(percent, 0) + " % of " + name(feed, ranch) + " not eaten"));
        return String.join("; ", all);
    }

    private static String masses(Map<UUID, haywright.quantity.Quantity> masses, Ranch ranch) {
        return masses.entrySet().stream()
                .map(one -> tons(one.getValue().in(Unit.TON)) + " " + name(one.getKey(), ranch))
                .collect(Collectors.joining(", "));
    }

    private static String tons(double tons) {
        double shown = Measures.ofTons(tons);
        return Show.withUnit(Show.significant(shown, shown < 10 ? 2 : 3), Measures.mass());
    }

    private static String name(UUID id, Ranch ranch) {
        var lot = ranch.lots().get(id);
        var sale = ranch.feedsForSale().get(id);
        var group = ranch.groups().get(id);
        return lot != null
                ? lot.name()
                : sale != null ? sale.name() : group != null ? group.name() : "something deleted since";
    }

    /** The question about what contradicts. */
    public static String asks(Contradiction one, Ranch ranch) {
        return switch (one.kind()) {
            case FED_MORE_THAN_THERE ->
                "%s of %s fed, but only %s on hand."
                        .formatted(kg(one.entered()), name(one.of(), ranch), kg(one.high()));
            case FAR_FROM_PLAN ->
                one.low() > 0
                        ? "%s of %s fed, and %s was planned for these days."
                                .formatted(kg(one.entered()), name(one.of(), ranch), kg(one.low()))
                        : "%s of %s fed, and the plan feeds none of it now."
                                .formatted(kg(one.entered()), name(one.of(), ranch));
            case COUNT_APART ->
                "%s of %s left, but by what was on hand and fed it should be %s to %s."
                        .formatted(
                                kg(one.entered()),
                                name(one.of(), ranch),
                                Show.number(Measures.mass().fromBase(one.low()), 0),
                                kg(one.high()));
            case SCORE_APART ->
                "A score of %s is more than one away from %s, entered before."
                        .formatted(
                                Show.significant(one.entered(), 3), Show.significant((one.low() + one.high()) / 2, 3));
            case NO_MEAL ->
                "In all that is %s of dry matter per head per day; cattle of this weight eat %s to %s."
                        .formatted(
                                Show.pounds(one.entered()),
                                Show.poundsNumber(one.low() * USUAL_LOW),
                                Show.pounds(one.high() * USUAL_HIGH));
        };
    }

    /** The question about a feed of which both were filled in, bales or tons and pounds of the wagon card. */
    public static String asksBoth(String feed, double typedKg, double cardKg, double plannedKg) {
        return "%s of %s here and %s from the wagon card: both are counted, %s in all.%s If it is the same feed, empty one of them."
                .formatted(
                        kg(typedKg),
                        feed,
                        kg(cardKg),
                        kg(typedKg + cardKg),
                        plannedKg > 0 ? " " + Show.capital(kg(plannedKg)) + " was planned." : "");
    }

    private static String kg(double kg) {
        return tons(Unit.TON.fromBase(kg));
    }

    /** Why a book made after these weeks answers differently than the one before them. */
    public static List<String> why(KeptBook before, List<FedWeek> since, Ranch ranch, LocalDate today) {
        var all = new ArrayList<String>();
        for (var week : since) {
            planned(before, week, ranch, all);
            week.expected().forEach((lot, expected) -> {
                var counted = week.counted().get(lot);
                double apart = counted == null ? 0 : counted.in(Unit.TON) - expected.in(Unit.TON);
                if (Math.abs(apart) >= LEAST_TONS) {
                    all.add("%s: you counted %s %s than we expected."
                            .formatted(name(lot, ranch), tons(Math.abs(apart)), apart < 0 ? "less" : "more"));
                }
            });
            week.scoredBefore().forEach((group, score) -> {
                double now = week.scored().getOrDefault(group, score);
                if (Math.abs(now - score) >= LEAST_SCORE) {
                    all.add("%s: score %s, was %s."
                            .formatted(name(group, ranch), Show.significant(now, 3), Show.significant(score, 3)));
                }
            });
        }
        since.stream()
                .flatMap(week -> week.left().keySet().stream())
                .distinct()
                .forEach(feed -> notEaten(feed, ranch).ifPresent(all::add));
        if (since.stream().anyMatch(week -> !week.left().isEmpty())) {
            appetite(ranch, today).ifPresent(all::add);
        }
        return all;
    }

    /** What is believed of its waste now, with what was said and what was seen. */
    private static Optional<String> notEaten(UUID feed, Ranch ranch) {
        var lot = ranch.lots().get(feed);
        return lot == null
                ? Optional.empty()
                : new Yard(ranch, LocalDate.EPOCH)
                        .notEaten(lot)
                        .map(now -> Math.abs(now.percent() - now.usual()) < LEAST_PERCENT
                                ? "%s: what you saw not eaten is close to the %s %% that we figure on, so that stands."
                                        .formatted(lot.name(), Show.number(now.usual(), 0))
                                : "%s: we now figure %s %% is wasted, give or take %s. It was %s %%. That puts %s of yours together with our usual figure. The lot %s."
                                        .formatted(
                                                lot.name(),
                                                Show.number(now.percent(), 0),
                                                Show.number(now.sd(), 0),
                                                Show.number(now.usual(), 0),
                                                Show.count(now.weeks(), "week"),
                                                now.percent() > now.usual() ? "won’t last as long" : "lasts longer"));
    }

    /** Only cattle that always have some before them eat by appetite. */
    private static Optional<String> appetite(Ranch ranch, LocalDate today) {
        boolean isAny = ranch.wishes().values().stream().anyMatch(wish -> wish.way() == WayOfFeeding.FREE_CHOICE);
        var yard = new Yard(ranch, today);
        if (!isAny || !Season.lacking(yard).isEmpty()) {
            return Optional.empty();
        }
        var now = Appetite.of(yard);
        double percent = PERCENT * (now.times() - 1);
        return Math.abs(percent) < LEAST_PERCENT
                ? Optional.empty()
                : Optional.of(
                        "They left more than is wasted anyway, so they had all they wanted. Groups fed free choice now count as eating %s %% %s than the figures say."
                                .formatted(Show.number(Math.abs(percent), 0), percent < 0 ? "less" : "more"));
    }

    /** What was fed of every lot beside what the plan had for as many days; none where all of it was as planned. */
    private static void planned(KeptBook before, FedWeek week, Ranch ranch, List<String> all) {
        var says = new ArrayList<String>();
        boolean isApart = false;
        var plan = before.plan().aDay();
        for (var fed : week.fed().entrySet()) {
            double kg = plan.getOrDefault(fed.getKey().toString(), 0.0) * week.days();
            double tons = fed.getValue().in(Unit.TON);
            isApart |= Math.abs(tons - Unit.TON.fromBase(kg)) >= LEAST_TONS;
            says.add("%s %s (%s planned)".formatted(name(fed.getKey(), ranch), tons(tons), kg(kg)));
        }
        if (isApart) {
            all.add("Fed %s: %s.".formatted(span(week), String.join(", ", says)));
        }
    }

    /** Tons of lots put out in these weeks beside what the book before had planned for as many days, before any effect of it. */
    public static List<Moved> fed(KeptBook before, List<FedWeek> since, Ranch ranch) {
        var plan = before.plan().aDay();
        return since.stream()
                .filter(week -> !week.fed().isEmpty())
                .map(week -> {
                    double planned = week.days()
                            * ranch.lots().keySet().stream()
                                    .mapToDouble(lot -> plan.getOrDefault(lot.toString(), 0.0))
                                    .sum();
                    double fed = week.fed().entrySet().stream()
                            .filter(one -> ranch.lots().containsKey(one.getKey()))
                            .mapToDouble(one -> one.getValue().base())
                            .sum();
                    return new Moved(
                            "Fed " + span(week),
                            WinterWords.tons(planned) + " planned",
                            WinterWords.tons(fed) + " fed, off what is on hand");
                })
                .toList();
    }

    /** A figure of two books. */
    public record Moved(String what, String before, String now) {}

    /** What is another than in the book before it; what is as it was is left out, but for the winters of 20. */
    public static List<Moved> moved(KeptBook before, KeptBook now) {
        var all = new ArrayList<Moved>();
        if (before.lasts() != null && now.lasts() != null) {
            all.add(new Moved(
                    "Feed lasts in",
                    WinterWords.of20(before.lasts()) + " winters",
                    WinterWords.of20(now.lasts()) + " winters"));
        }
        add(
                all,
                "Hay still to find",
                WinterWords.tons(WinterWords.toFind(before.plan(), before)),
                WinterWords.tons(WinterWords.toFind(now.plan(), now)));
        add(all, "Short from", shortFrom(before), shortFrom(now));
        add(all, "Testing", tested(before), tested(now));
        add(
                all,
                "First step",
                DoNow.next(before).orElse("none"),
                DoNow.next(now).orElse("none"));
        for (var ration : now.plan().rations()) {
            before.plan().rations().stream()
                    .filter(one -> one.group().equals(ration.group()))
                    .forEach(one -> add(all, ration.name() + ", per head per day", fed(one), fed(ration)));
        }
        var feeds = new LinkedHashMap<String, String>();
        Stream.of(before, now)
                .flatMap(book -> book.plan().buys().stream())
                .forEach(buy -> feeds.putIfAbsent(buy.feed(), buy.name()));
        feeds.forEach((feed, name) -> add(all, "Buy " + name, bought(before, feed), bought(now, feed)));
        return all;
    }

    private static void add(List<Moved> all, String what, String before, String now) {
        if (!before.equals(now)) {
            all.add(new Moved(what, before, now));
        }
    }

    private static String shortFrom(KeptBook book) {
        return book.shortFrom().map(Show::day).orElse("not short");
    }

    private static String tested(KeptBook book) {
        return book.alternatives().stream()
                .filter(one -> one.id().equals("test"))
                .findFirst()
                .map(WinterWords::worth)
                .orElse("nothing to test");
    }

    private static String fed(KeptPlan.Ration ration) {
        return ration.portions().stream()
                .filter(portion -> Unit.POUND.fromBase(portion.kg()) >= LEAST_POUNDS)
                .map(portion -> Show.pounds(portion.kg()) + " " + portion.name())
                .collect(Collectors.joining(", "));
    }

    private static String bought(KeptBook book, String feed) {
        double kg = book.plan().buys().stream()
                .filter(buy -> buy.feed().equals(feed))
                .mapToDouble(KeptPlan.Buy::kg)
                .sum();
        return WinterWords.tons(kg);
    }
}
