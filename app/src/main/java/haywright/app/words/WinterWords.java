package haywright.app.words;

import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.season.WinterBook;
import haywright.season.given.Emergency;
import haywright.season.given.Facts;
import haywright.season.kept.KeptBook;
import haywright.season.kept.KeptPlan;
import haywright.season.kept.WinterStory;
import haywright.season.play.Plan;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A winter book for the person who reads it. */
public final class WinterWords {
    private static final int MOST_NAMED = 4;
    /** Less of a feed is not worth a truck or a line. */
    private static final double LEAST_TONS = 1;

    private WinterWords() {}

    /** {@code Feed lasts to turnout, May 5, in 17 winters of 20, if you buy 185 tons ($30,500).} */
    public static String headline(KeptBook book) {
        var grass = Show.day(book.grass());
        var lasts = book.lasts();
        if (lasts == null) {
            return book.isWhole()
                    ? "No winters are on record for this place, so there is a plan and no count."
                    : "Stopped before enough winters were played: there is a plan and no count.";
        }
        return lasts == 0
                ? "You don’t have enough feed to reach turnout, %s, in any of 20 past winters%s."
                        .formatted(grass, evenIf(book.plan()))
                : "Feed lasts to turnout, %s, in %d winters of 20%s.".formatted(grass, lasts, ifYouBuy(book.plan()));
    }

    /** {@code , if you buy 185 tons ($30,500)}: what stands in the list of what to buy, added up; empty where that is nothing. */
    private static String ifYouBuy(KeptPlan plan) {
        var bought = bought(plan);
        return bought.isEmpty() ? "" : ", if you buy " + bought;
    }

    private static String evenIf(KeptPlan plan) {
        var bought = bought(plan);
        return bought.isEmpty() ? "" : ", even if you buy " + bought;
    }

    private static String bought(KeptPlan plan) {
        long tons = 0;
        long dollars = 0;
        for (var buy : plan.buys()) {
            if (isLarge(buy)) {
                tons += Math.round(Measures.mass().fromBase(buy.kg()));
                dollars += costs(buy);
            }
        }
        return tons == 0 ? "" : "%s ($%s)".formatted(Show.count(tons, Measures.ton()), Show.number(dollars, 0));
    }

    /** {@code You are about 31 tons of hay short on average, 22 to 40 in single winters. It could start as early as Apr 8.} Empty where none fell short of hay. */
    public static String shortIn(KeptBook book) {
        var hay = book.hayShort();
        if (hay.isEmpty()) {
            return "";
        }
        var range = hay.stream().mapToDouble(KeptBook.ShortWinter::tons).summaryStatistics();
        var between = between(Measures.ofTons(range.getMin()), Measures.ofTons(range.getMax()));
        var onAverage = onAverage(book);
        var starts = (couldStart(book) + " " + plannedFrom(book)).strip();
        if (hay.size() == book.years() && onAverage.isPresent()) {
            return "You are %s of hay short on average, %s in single winters. %s"
                    .formatted(tons(Unit.TON.toBase(onAverage.getAsDouble())), between, starts);
        }
        var years =
                hay.stream().limit(MOST_NAMED).map(KeptBook.ShortWinter::winter).collect(Collectors.joining(", "));
        return "%s by %s %s of hay%s. %s"
                .formatted(
                        hay.size() == book.years()
                                ? "You are short"
                                : hay.size() > MOST_NAMED
                                        ? "You run short in %d of %d winters, such as %s,"
                                                .formatted(hay.size(), book.years(), years)
                                        : "You run short in %s,".formatted(years),
                        between,
                        Measures.tons(),
                        onAverage.isPresent()
                                ? ", %s on average over all winters"
                                        .formatted(tons(Unit.TON.toBase(onAverage.getAsDouble())))
                                : "",
                        starts);
    }

    /** Tons short in the winters of the plan, on average: the one count that every page goes by. */
    private static OptionalDouble onAverage(KeptBook book) {
        return book.besides().stream()
                .limit(1)
                .filter(one -> one.tonsShort() != null)
                .mapToDouble(KeptBook.Beside::tonsShort)
                .findFirst();
    }

    /** kg of hay still to find: what its winters are short of on average; what its plan feeds where none were played. */
    static double toFind(KeptPlan plan, @Nullable KeptBook book) {
        return book == null
                ? plan.emergencyKg()
                : Unit.TON.toBase(onAverage(book).orElse(Unit.TON.fromBase(plan.emergencyKg())));
    }

    /** What a winter comes to, and at what hay still to find is in it; empty where none is, or nothing was counted. */
    public static String costs(KeptBook book) {
        var per = book.plan().findPerKg();
        var bought = book.besides().stream()
                .limit(1)
                .map(KeptBook.Beside::bought)
                .flatMap(Stream::ofNullable)
                .findFirst();
        return per == null || bought.isEmpty() || toFind(book.plan(), book) < Unit.TON.toBase(LEAST_TONS)
                ? ""
                : "An average winter costs about %s: feed bought, and hay still to find at %s. Each “saves” counts with that price."
                        .formatted(dollars(bought.get()), findPrice(book.plan()));
    }

    /** {@code $300 a ton, our guess}: what hay still to find is counted at, and whose price that is; a ton's price that nobody kept is not named. */
    public static String findPrice(KeptPlan plan) {
        var per = plan.findPerKg();
        if (per == null) {
            return "a price we guessed";
        }
        var entered = plan.findEntered();
        return "%s, %s"
                .formatted(
                        Show.withUnit(Show.number(Unit.DOLLAR_PER_KG.to(Measures.price(), per), 0), Measures.price()),
                        entered == null
                                ? "our guess"
                                : entered < per ? "since your dearest hay is at that" : "the price you entered");
    }

    static String couldStart(KeptBook book) {
        return book.shortFrom()
                .map(from -> "In the winters tried it could start as early as %s.".formatted(Show.day(from)))
                .orElse("That is where grass comes late.");
    }

    /** Why hay to find stands in the plan on another day than it could be missing; empty where it is one day, or none is to find. */
    static String plannedFrom(KeptBook book) {
        var from = book.shortFrom();
        var planned = book.plan().stretches().stream()
                .filter(stretch -> stretch.from().isBefore(book.grass())
                        && stretch.eats().stream().anyMatch(eats -> eats.feed().equals(Emergency.ID)))
                .map(KeptPlan.Stretch::from)
                .findFirst();
        if (from.isEmpty() || planned.isEmpty() || planned.equals(from)) {
            return "";
        }
        return (planned.get().isBefore(from.get())
                        ? "The plan feeds hay still to find from %s on already, so that your own lasts longer."
                        : "The plan is made for one winter, a little harder than usual, and has hay still to find from %s on.")
                .formatted(Show.day(planned.get()));
    }

    /** What counts as short beside an empty yard. */
    public static String heldBack() {
        return "We keep %s days of hay back for storms, and count it as short when that is touched."
                .formatted(Show.number(Facts.value("storm_days"), 0));
    }

    /** What no feed here meets, a sentence for each need of a group; energy for gain first, since a grain brings it. */
    public static List<String> unmet(KeptPlan plan, Ranch ranch) {
        var byNeed = plan.unmet().stream()
                .collect(Collectors.groupingBy(
                        miss -> miss.group() + " " + miss.row(), LinkedHashMap::new, Collectors.toList()));
        return byNeed.values().stream()
                .sorted(Comparator.comparing(misses -> !isGain(misses.get(0))))
                .map(misses -> unmet(misses, ranch))
                .limit(MOST_NAMED)
                .toList();
    }

    private static boolean isGain(Plan.Unmet miss) {
        return miss.row().equals("growth");
    }

    private static String unmet(List<Plan.Unmet> misses, Ranch ranch) {
        var first = misses.get(0);
        var percent = misses.stream().mapToDouble(Plan.Unmet::percent).summaryStatistics();
        var days = "%s to %s"
                .formatted(
                        Show.day(first.from()),
                        Show.day(misses.get(misses.size() - 1).to()));
        var much = between(percent.getMin(), percent.getMax());
        if (!isGain(first)) {
            return "%s get %s %% too little %s, %s.".formatted(first.group(), much, first.name(), days);
        }
        var gain = ranch.groups().values().stream()
                .filter(group -> group.name().equals(first.group()))
                .findFirst()
                .map(group ->
                        Show.withUnit(Show.significant(group.gain().in(Unit.POUND_A_DAY), 2), Unit.POUND) + " a day")
                .orElse("gain");
        boolean isGrainListed = ranch.feedsForSale().values().stream()
                .anyMatch(sale -> !sale.feedClass().isForage() && sale.feedClass() != FeedClass.MINERAL);
        return isGrainListed
                ? "%s don’t make their %s by this plan: energy is %s %% short, %s."
                        .formatted(first.group(), gain, much, days)
                : "%s can’t make their %s on any feed here: energy is %s %% short, %s. Hay won’t fix it. List a grain or by-product to buy."
                        .formatted(first.group(), gain, much, days);
    }

    /** {@code 22 to 40}; one figure where both round to it. */
    private static String between(double low, double high) {
        var a = Show.number(low, 0);
        var b = Show.number(high, 0);
        return a.equals(b) ? a : a + " to " + b;
    }

    /** What is bought now and what is planned on, as orders. @param waits the day before which nothing is; null for none */
    public static List<String> buy(KeptPlan plan, @Nullable LocalDate waits) {
        return Stream.concat(bought(plan.buys(), waits).stream(), sells(plan).stream())
                .toList();
    }

    /** @param waits the day before which nothing is bought; null for none */
    static List<String> bought(List<KeptPlan.Buy> buys, @Nullable LocalDate waits) {
        var all = new ArrayList<String>();
        for (var buy : buys) {
            if (buy.isNow() && isLarge(buy)) {
                all.add("Buy %s %s: %s delivered, %s.%s"
                        .formatted(
                                amount(buy),
                                waits == null ? "this week" : "then",
                                cost(buy),
                                perTon(buy),
                                rounded(buy)));
            }
        }
        for (var buy : buys) {
            if (!buy.isNow() && isLarge(buy)) {
                all.add("Plan to buy %s %s: about %s delivered, %s.%s"
                        .formatted(
                                amount(buy),
                                waits != null && !buy.by().isAfter(waits) ? "then" : "by " + Show.day(buy.by()),
                                cost(buy),
                                perTon(buy),
                                rounded(buy)));
            }
        }
        return all;
    }

    static List<String> sells(KeptPlan plan) {
        var all = new ArrayList<String>();
        for (var sale : plan.sells()) {
            double tons = Math.floor(Measures.mass().fromBase(sale.kg()));
            long aTon = Math.round(Unit.DOLLAR_PER_KG.to(Measures.price(), sale.dollarsPerKg()));
            if (tons >= LEAST_TONS) {
                all.add(
                        "You can sell up to %s of %s: $%s at %s. A hard winter (1 in 10) and the storm reserve are covered without it."
                                .formatted(
                                        Show.count((long) tons, Measures.ton()),
                                        sale.name(),
                                        Show.number(tons * aTon, 0),
                                        Show.withUnit(String.valueOf(aTon), Measures.price())));
            }
        }
        return all;
    }

    /** Hay that nobody has; empty where none is. @param book null while it is made */
    public static Optional<String> find(KeptPlan plan, @Nullable KeptBook book) {
        double kg = toFind(plan, book);
        boolean isAny = plan.emergencyKg() >= Unit.TON.toBase(LEAST_TONS)
                || book != null && book.lasts() != null && book.lasts() == 0;
        return !isAny || kg < Unit.TON.toBase(LEAST_TONS)
                ? Optional.empty()
                : Optional.of("You still need %s of hay from somewhere, or fewer cattle.".formatted(tons(kg)));
    }

    /** What the plan feeds of hay still to find, where that is another count than the winters’; empty where it is one. */
    static String ofPlan(KeptPlan plan, KeptBook book) {
        return tons(toFind(plan, book)).equals(tons(plan.emergencyKg()))
                ? ""
                : toFind(plan, book) > plan.emergencyKg()
                        ? "The plan feeds %s of it; the rest is for harder winters and held for storms."
                                .formatted(tons(plan.emergencyKg()))
                        : "The plan feeds %s, since it is made for a winter a little harder than usual."
                                .formatted(tons(plan.emergencyKg()));
    }

    /** How many head eat as much as is to be found, from now on; empty where they are not fed to turnout by the plan. */
    static String fewer(KeptPlan plan, double kg) {
        return plan.rations().stream()
                .filter(ration -> ration.head() > 0)
                .max(Comparator.comparingInt(KeptPlan.Ration::head))
                .map(ration -> {
                    double each = plan.stretches().stream()
                                    .flatMap(stretch -> stretch.eats().stream())
                                    .filter(eats -> eats.group().equals(ration.group())
                                            && (eats.isForage() || eats.feed().equals(Emergency.ID)))
                                    .mapToDouble(KeptPlan.Eats::kg)
                                    .sum()
                            / ration.head();
                    double head = Math.ceil(kg / each);
                    return each > 0 && head < ration.head()
                            ? "That much feeds %s head of %s from now to turnout."
                                    .formatted(Show.number(head, 0), ration.name())
                            : "";
                })
                .orElse("");
    }

    private static boolean isLarge(KeptPlan.Buy buy) {
        return Unit.TON.fromBase(buy.kg()) >= LEAST_TONS;
    }

    /** {@code 2 loads, 48 tons, of Alfalfa}; without loads where it comes by the ton. */
    private static String amount(KeptPlan.Buy buy) {
        return buy.loads() == 0
                ? "%s of %s".formatted(tons(buy.kg()), buy.name())
                : "%s, %s, of %s".formatted(Show.count(buy.loads(), "load"), tons(buy.kg()), buy.name());
    }

    /** Tons that are shown times dollars a ton that are shown. */
    private static String cost(KeptPlan.Buy buy) {
        return "$" + Show.number(costs(buy), 0);
    }

    private static long costs(KeptPlan.Buy buy) {
        return Math.round(Measures.mass().fromBase(buy.kg())) * aTon(buy);
    }

    private static String perTon(KeptPlan.Buy buy) {
        return Show.withUnit(Show.number(aTon(buy), 0), Measures.price());
    }

    private static long aTon(KeptPlan.Buy buy) {
        return Math.round(Unit.DOLLAR_PER_KG.to(Measures.price(), buy.dollarsPerKg()));
    }

    private static String rounded(KeptPlan.Buy buy) {
        return buy.loads() == 0 || tons(buy.askedKg()).equals(tons(buy.kg()))
                ? ""
                : " The plan needs %s; loads come whole.".formatted(tons(buy.askedKg()));
    }

    /** What waiting is taken to cost where nobody said; empty where nothing is bought or all of it was said. */
    public static String waiting(KeptPlan plan) {
        var ours = plan.buys().stream()
                .filter(buy -> !buy.isWaitingSaid() && isLarge(buy))
                .map(KeptPlan.Buy::name)
                .distinct()
                .toList();
        return ours.isEmpty()
                ? ""
                : "We guessed at prices. Feed costs %s %% more by mid-March, and %s %% on top of that in a hard winter (1 in 6). We used that guess for %s."
                        .formatted(
                                Show.number(Facts.value("late_premium"), 0),
                                Show.number(Facts.value("cold_premium"), 0),
                                String.join(", ", ours));
    }

    /** Silage that cannot be fed fast enough, with what is dangerous about it; empty where none spoils. */
    public static List<String> spoils(KeptPlan plan) {
        return plan.spoils().stream()
                .filter(one -> Unit.TON.fromBase(one.kg()) >= LEAST_TONS)
                .map(one ->
                        "%s: about %s spoil by turnout. At least %s a day has to come off the face%s, and these cattle do not eat that much. Open it later, feed it to more cattle, or sell some. Stay back three times the height of the face: it can fall. Keep people and animals out of the silo, and away from its chute, for 3 weeks after filling: silo gas can kill."
                                .formatted(
                                        one.name(),
                                        tons(one.kg()),
                                        Show.tons(one.aDayKg()),
                                        one.isFaceSaid()
                                                ? ""
                                                : " (%s inches, our figure; enter yours on the lot)"
                                                        .formatted(Show.number(Facts.value("face_inches"), 0))))
                .toList();
    }

    /**
     * The book in one line, for the other pages: {@code Winter book of Nov 25: feed lasts to May 5, 161 days, in 17 winters
     * of 20. Next: buy 40 tons of Alfalfa this week.}
     */
    public static String line(KeptBook book, LocalDate today) {
        return "By the winter book of %s %s.%s"
                .formatted(
                        Show.day(book.day()),
                        lasting(book, today),
                        DoNow.next(book).map(order -> " Next: " + order + ".").orElse(""));
    }

    /** {@code feed lasts to May 5, 161 days, in 17 winters of 20}; with from when it is short where it is in most. */
    private static String lasting(KeptBook book, LocalDate today) {
        var lasts = book.lasts();
        if (lasts == null) {
            return book.plan().lasts() ? "the feed lasts" : "the feed falls short";
        }
        var from = book.shortFrom();
        return from.isPresent() && lasts < WinterBook.OF / 2
                ? "you run short in %d winters of 20%s. It could start as early as %s, %s from now"
                        .formatted(
                                WinterBook.OF - lasts,
                                evenIf(book.plan()),
                                Show.day(from.get()),
                                days(today, from.get()))
                : "feed lasts to %s, %s, in %d winters of 20%s"
                        .formatted(Show.day(book.grass()), days(today, book.grass()), lasts, ifYouBuy(book.plan()));
    }

    private static String days(LocalDate today, LocalDate to) {
        return Show.count(Math.max(0, ChronoUnit.DAYS.between(today, to)), "day");
    }

    /** Until when a lot lasts by the plan: {@code lasts to turnout}, {@code used up by Feb 2}; empty for what it does not feed. */
    public static Optional<String> lasts(KeptPlan plan, String lot) {
        return plan.lots().stream()
                .filter(one -> one.feed().equals(lot))
                .findFirst()
                .map(one -> one.usedUp() == null ? "lasts to turnout" : "used up by " + Show.day(one.usedUp()));
    }

    /** {@code 460 tons can’t be fed yet: Oat hay, Corn silage.} Empty where every lot may be. */
    public static String leftOut(KeptPlan plan) {
        var out = plan.waiting();
        return out.isEmpty()
                ? ""
                : "%s can’t be fed yet and %s not counted: %s."
                        .formatted(
                                tons(out.stream().mapToDouble(KeptPlan.Lot::kg).sum()),
                                out.size() == 1 ? "is" : "are",
                                names(out));
    }

    private static String names(List<KeptPlan.Lot> lots) {
        return lots.stream().map(KeptPlan.Lot::name).collect(Collectors.joining(", "));
    }

    /** Whole tons with the word. @param kg as fed */
    public static String tons(double kg) {
        return Show.withUnit(Show.number(Math.round(Measures.mass().fromBase(kg)), 0), Measures.mass());
    }

    /** {@code saves $4,300 (2,900 to 5,700)}; {@code costs} where it does, and why it is worth it all the same where it is. */
    public static String worth(WinterBook.Alternative one) {
        var money = one.dollars();
        boolean isCost = money.mean() < 0;
        return "%s %s (%s to %s)%s"
                .formatted(
                        isCost ? "costs" : "saves",
                        dollars(Math.abs(money.mean())),
                        dollars(isCost ? -money.high() : money.low()),
                        dollars(isCost ? -money.low() : money.high()),
                        isCost && one.low() > 0 ? ", and is worth it in gain, condition and hay held for storms" : "");
    }

    /** Whether two things that could be done help or stand in each other's way. */
    public static String apart(
            WinterBook.Alternative both, WinterBook.Alternative first, WinterBook.Alternative second) {
        double alone = first.dollars().mean() + second.dollars().mean();
        double more = both.dollars().mean() - alone;
        return Math.abs(more) < 50
                ? "That is what they come to one by one."
                : "One by one they would come to %s: together they are worth %s %s."
                        .formatted(
                                dollars(alone),
                                dollars(Math.abs(more)),
                                more < 0 ? "less, since each leaves less for the other to save" : "more");
    }

    /** Whole hundreds: the last digits are not known. */
    public static String dollars(double dollars) {
        long hundreds = Math.round(dollars / 100) * 100;
        return (hundreds < 0 ? "−$" : "$") + Show.number(Math.abs(hundreds), 0);
    }

    /** {@code 17 of 20}; a half winter is none. */
    public static String of20(double lasts) {
        return "%d of 20".formatted(Math.round(lasts));
    }

    /** What happened in a winter, in sentences. */
    public static List<String> story(WinterStory story, LocalDate grass) {
        var all = new ArrayList<String>();
        all.add(
                story.lasted()
                        ? "Feed lasted to turnout, %s.".formatted(Show.day(grass.plusDays(story.late())))
                        : story.shortFrom() == null
                                ? "Hay lasted, but condition at calving was not kept."
                                : "Feed fell short from %s on.".formatted(Show.day(story.shortFrom())));
        if (story.late() > 0) {
            all.add("Grass came %s late.".formatted(Show.count(story.late(), "day")));
        }
        if (story.emergencyKg() >= Unit.TON.toBase(LEAST_TONS)) {
            all.add("You would have to find %s of hay.".formatted(tons(story.emergencyKg())));
        } else if (!story.lasted() && story.stormShortKg() >= Unit.TON.toBase(LEAST_TONS)) {
            all.add("The storm reserve was short by %s of dry matter.".formatted(tons(story.stormShortKg())));
        }
        story.scores()
                .forEach(score -> all.add("%s calved at condition %s; the aim is %s."
                        .formatted(score.group(), Show.number(score.score(), 1), Show.significant(score.wanted(), 2))));
        all.add("Feed bought: %s.".formatted(dollars(story.bought())));
        if (story.sold() >= 1) {
            all.add("Feed sold: %s.".formatted(dollars(story.sold())));
        }
        return all;
    }
}
