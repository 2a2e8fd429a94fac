package haywright.app.words;

import haywright.diet.LimitFeeding;
import haywright.feeding.hay.HayRow;
import haywright.feeding.hay.HayStep;
import haywright.feeding.hay.HayStep.What;
import haywright.feeding.hay.ShortOfHay;
import haywright.feeding.hay.ShortOfHay.Lacks;
import haywright.feeding.hay.ShortOfHay.ToBuy;
import haywright.outlook.HayFacts;
import haywright.quantity.Unit;
import haywright.ration.PricedFeed;
import haywright.season.WinterPlan;
import haywright.season.given.Facts;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;

/** Short of hay, as page and command say it. */
public final class ShortWords {
    /** kg of a feed below which a purchase is not said. */
    private static final double LEAST_BOUGHT = 500;

    private ShortWords() {}

    /** {@code You are 140 tons of hay short, before anything is bought, of what they need until turnout. At what you feed now …} */
    public static String headline(ShortOfHay hay) {
        if (!hay.isShort()) {
            return "Hay lasts until turnout on %s: %s on hand that may be fed (silage as hay, no straw), %s go out a day."
                    .formatted(Show.date(hay.grass()), tons(hay.tonsOnHand()), tons(hay.tonsADay()));
        }
        var short_ = "You are %s of hay short, before anything is bought".formatted(tons(hay.tonsShort()));
        return hay.gone()
                .map(gone -> (hay.isFedNowSaid()
                                ? "%s, of what they need until turnout. At what you feed now, what you have is gone %s, %s before turnout."
                                : "%s, of what they need until turnout. By today’s rations, which may have straw and grain, what you have is gone %s, %s before turnout.")
                        .formatted(
                                short_, Show.date(gone), Show.count(gone.until(hay.grass(), ChronoUnit.DAYS), "day")))
                .orElse("%s of what they need until turnout on %s.".formatted(short_, Show.date(hay.grass())));
    }

    /** What the headline is made of, so that it can be made again with a pencil. */
    public static List<String> basis(ShortOfHay hay) {
        var says = new ArrayList<String>();
        if (hay.isShort()) {
            says.add(
                    "From now to turnout they take %s of hay, waste included; %s on hand may be fed. What is for sale is a step of its own, and not counted here."
                            .formatted(
                                    shown(rounded(hay.tonsOnHand()) + rounded(hay.tonsShort())),
                                    tons(hay.tonsOnHand())));
        }
        says.add("You’re feeding %s of hay a day.%s"
                .formatted(
                        tons(hay.tonsADay()),
                        hay.isFedNowSaid()
                                ? ""
                                : " Groups whose feed now is not entered are counted at today’s ration."));
        says.add("Silage counts as the hay that has as much dry matter; straw and stalks are not counted."
                + " Needs are met on average, without the margin that rations have.");
        hay.lots()
                .forEach(lot -> hay.kept(lot)
                        .ifPresent(kept ->
                                says.add("%s is counted, and in no ration yet: the winter plan keeps it for %s from %s."
                                        .formatted(
                                                lot.feed().name(),
                                                String.join(" and ", kept.groups()),
                                                Show.day(kept.from())))));
        if (!hay.leftOut().isEmpty()) {
            says.add("Left out of every ration and not counted: %s (%s)."
                    .formatted(
                            names(hay.leftOut()),
                            Show.totalTons(hay.leftOut().stream().mapToDouble(PricedFeed::kgAtHand))));
        }
        return says;
    }

    private static String names(List<PricedFeed> feeds) {
        return feeds.stream().map(feed -> feed.feed().name()).collect(Collectors.joining(", "));
    }

    /** What to do, as it is said to whoever does it. */
    public static String order(HayStep step, ShortOfHay hay) {
        return switch (step.what()) {
            case TEST ->
                "Test %s for nitrate"
                        .formatted(hay.untested().stream()
                                .map(feed -> feed.feed().name())
                                .collect(Collectors.joining(" and ")));
            case BUY_LISTED ->
                hay.buys().isEmpty()
                        ? "Buy the hay that is listed for sale"
                        : "Buy "
                                + hay.buys().stream()
                                        .map(buy -> tons(buy.tons()) + " of "
                                                + buy.feed().feed().name())
                                        .collect(Collectors.joining(" and "));
            case BUY_HAY -> "Ask what hay could be bought";
            case FEED_TO_NEED -> "Feed what they need, no more";
            case CUT_WASTE -> "Feed hay in rings";
            case SELL_OPEN ->
                step.head() == 0
                        ? "Sell open, old and late cows"
                        : "Sell %s open, old and late cows".formatted(Show.number(step.head(), 0));
            case STRAW -> "Feed straw with cake or grain to dry cows in good condition";
            case LIMIT_HAY ->
                "Limit hay for dry cows in good condition, with straw and grain; grain beside hay once they have calved";
            case ELSEWHERE ->
                step.head() == 0
                        ? "Send dry cows to corn stalks or a custom feeder"
                        : "Send %s dry cows to corn stalks or a custom feeder".formatted(Show.number(step.head(), 0));
            case SELL_BRED ->
                step.head() == 0
                        ? "Sell bred cows"
                        : "Sell %s bred %s".formatted(Show.number(step.head(), 0), step.head() == 1 ? "cow" : "cows");
        };
    }

    /** {@code now}, {@code by Dec 11}; nothing is bought that a test to come may make needless. */
    public static String by(HayStep step, ShortOfHay hay) {
        if (step.what() == What.BUY_LISTED && !hay.untested().isEmpty()) {
            return "once the test is back, or if none comes";
        }
        return step.by().equals(hay.today()) ? "now" : "by " + Show.day(step.by());
    }

    /** {@code Saves 46 tons; 94 tons still short. $4 for each cow you keep.} */
    public static String figures(HayStep step, ShortOfHay hay) {
        if (step.what() == What.TEST) {
            return tested(hay);
        }
        double before = rounded(step.before());
        double after = rounded(step.after());
        if (step.saves() == 0) {
            return step.what() == What.BUY_HAY
                    ? "Enter what hay could be bought, and its price."
                    : before == 0
                            ? "Not needed after the steps above."
                            : (step.head() == 0 && isAsked(step)
                                    ? "Counted once you enter a number."
                                    : "Saves nothing.");
        }
        var dollars = step.dollarsACow();
        var cost = dollars == null
                ? ""
                : Math.abs(dollars) < 0.5
                        ? " No cash."
                        : dollars > 0
                                ? " $%s for each cow you keep.".formatted(Show.number(dollars, 0))
                                : " Puts $%s a cow in your pocket.".formatted(Show.number(-dollars, 0));
        double saved = before - after;
        if (round(saved) == 0) {
            return "Saves nothing.";
        }
        return "%s; %s.%s%s"
                .formatted(
                        step.what() == What.BUY_LISTED ? standsIn(hay, saved) : "Saves " + shown(saved),
                        after == 0 ? "nothing is short then" : shown(after) + " still short",
                        step.what() == What.BUY_LISTED
                                ? " It costs $%s.".formatted(Show.number(dollars(hay.buys()), 0))
                                : cost,
                        hay.untested().isEmpty() ? "" : spared(before - rounded(hay.tonsUntested()), saved, step, hay));
    }

    /** Whether a step waits for a number of head. */
    public static boolean isAsked(HayStep step) {
        return step.what() == What.SELL_OPEN || step.what() == What.ELSEWHERE;
    }

    /** What is bought saves nothing: it stands in for so much of the hay that is short. */
    private static String standsIn(ShortOfHay hay, double tons) {
        double bought = hay.buys().stream().mapToDouble(ToBuy::tons).sum();
        return rounded(bought) == round(tons)
                ? "Stands in for as much of your hay"
                : "%s bought %s %s of your hay"
                        .formatted(tons(bought), rounded(bought) == 1 ? "replaces" : "replace", shown(tons));
    }

    /** Tons as printed times whole dollars: it comes out with a pencil. */
    private static double dollars(List<ToBuy> buys) {
        return buys.stream()
                .mapToDouble(buy -> rounded(buy.tons()) * price(buy))
                .sum();
    }

    /** Whole loads, where a load is said and they bring more than is wanted. */
    private static Optional<String> over(ToBuy buy, ShortOfHay hay) {
        var sale =
                hay.ranch().feedsForSale().get(UUID.fromString(buy.feed().feed().id()));
        var load = sale == null ? null : sale.load();
        if (load == null) {
            return Optional.empty();
        }
        double each = load.in(Measures.mass());
        double loads = Math.ceil(Measures.ofTons(buy.tons()) / each - 1e-9);
        double over = loads * each - Measures.ofTons(buy.tons());
        return round(over) == 0
                ? Optional.empty()
                : Optional.of("It comes in loads of %s: %s bring %s more, $%s in all."
                        .formatted(
                                shown(each),
                                Show.count((int) loads, "load"),
                                shown(over),
                                Show.number(loads * each * price(buy), 0)));
    }

    private static double price(ToBuy buy) {
        return Math.rint(Measures.price().fromBase(buy.feed().pricePerKgAsFed()));
    }

    /**
     * @param rest tons of the ranch that would be short before a step if the test came back safe
     * @param saved by the step
     */
    private static String spared(double rest, double saved, HayStep step, ShortOfHay hay) {
        if (rest <= 0) {
            return " Not needed if the test comes back safe.";
        }
        if (rest >= saved) {
            return "";
        }
        double share = rest / saved;
        return " If the test comes back safe, %s."
                .formatted(
                        step.what() == What.BUY_LISTED
                                ? shown(share
                                                * hay.buys().stream()
                                                        .mapToDouble(buy -> Measures.ofTons(buy.tons()))
                                                        .sum())
                                        + " of it is enough"
                                : step.head() > 0
                                        ? "%s head are enough".formatted(Show.number(Math.ceil(share * step.head()), 0))
                                        : "it has to save only " + shown(rest));
    }

    /** What lots that wait for a test would come to, and what the test costs. */
    private static String tested(ShortOfHay hay) {
        double safe = rounded(hay.tonsUntested());
        double short_ = rounded(hay.tonsShort());
        int lots = hay.untested().size();
        return "%s (%s) can’t be fed until %s tested. If safe, as much as %s of hay: %s. A test costs about $%s a lot (judgment). Not counted until the figures are in."
                .formatted(
                        lots == 1 ? "This lot" : "These lots",
                        Show.totalTons(hay.untested().stream().mapToDouble(PricedFeed::kgAtHand)),
                        lots == 1 ? "it is" : "they are",
                        shown(safe),
                        safe >= short_ ? "nothing would be short" : shown(short_ - safe) + " would still be short",
                        Show.number(Facts.value("nitrate_test_usd"), 0));
    }

    /** {@code They’d calve at a 4.9.}; empty where none are due before grass, or it saves nothing. */
    public static String score(HayStep step) {
        var score = step.score();
        return score == null || step.saves() == 0 ? "" : "They’d calve at score %s.".formatted(Show.number(score, 1));
    }

    /** Why, and what to mind; a sentence or two. */
    public static List<String> minds(HayStep step, ShortOfHay hay) {
        var says = new ArrayList<String>();
        // of tons as they are printed: heads times this come out with a pencil
        double saved = rounded(step.before()) - rounded(step.after());
        var each = step.head() > 0 && saved > 0
                ? "Each cow sold saves %s.".formatted(Show.number(saved / step.head(), 2) + " " + Measures.tons())
                : "";
        switch (step.what()) {
            case TEST -> {
                says.add(
                        "Feed none before the laboratory’s figure is in. Ask your veterinarian about limits where you are.");
                says.add(
                        "Test before any cow is sold: a result usually takes a week or two (common practice, no source).");
            }
            case BUY_LISTED -> {
                says.add(hay.buys().stream()
                        .map(buy -> "%s of %s at %s."
                                .formatted(tons(buy.tons()), buy.feed().feed().name(), aTon(price(buy))))
                        .collect(Collectors.joining(" ")));
                hay.buys().forEach(buy -> over(buy, hay).ifPresent(says::add));
                double bought = hay.buys().stream().mapToDouble(ToBuy::tons).sum();
                if (rounded(bought) > round(saved)) {
                    says.add(
                            "%s still short are counted in your hay: whom it goes to and what is lost of it make %s of this %s of that."
                                    .formatted(Show.capital(Measures.tons()), tons(bought), shown(saved)));
                }
                says.add("That is all that is listed: change it under feeds for sale if more can be had.");
            }
            case BUY_HAY -> says.add(insteadOfSelling(hay));
            case FEED_TO_NEED ->
                says.add("More goes out now than they need. Each group’s ration is under Rations; watch condition.");
            case CUT_WASTE -> {
                says.add(
                        "%s %% is lost now, %s %% in rings (Buskirk and others 2003); on the ground about %s (NDSU 2011)."
                                .formatted(
                                        Show.number(hay.ranch().settings().hayLossPercent(), 0),
                                        Show.number(HayFacts.value("ring_loss"), 0),
                                        Show.number(HayFacts.value("ground_loss"), 0)));
                says.add("Counted: a ring at $%s for every %s head (judgment)."
                        .formatted(fact("ring_price"), fact("ring_head")));
                hay.limitedFrom()
                        .ifPresent(day ->
                                says.add("Cows on limited hay leave the rings on %s, and go back to them as they calve."
                                        .formatted(Show.day(day))));
            }
            case SELL_OPEN -> {
                says.add(each);
                says.add("Counted unless you enter a number: cows not due, or due more than %s weeks after the first."
                        .formatted(Show.number(HayFacts.value("late_days") / 7, 0)));
                says.add(step.dollarsACow() == null ? "Enter what one brings." : "");
            }
            case STRAW -> {
                says.add(
                        "Straw at most 1.25 %% of body weight; start small. Counted from %s weeks after you start. This step gives none to thin cows, heifers, calves, or cows in milk."
                                .formatted(weeks("change_over")));
                hay.assumed()
                        .forEach(feed -> says.add("Not on your list, counted at a usual price (judgment): %s at %s."
                                .formatted(
                                        feed.feed().name(),
                                        aTon(Measures.price().fromBase(feed.pricePerKgAsFed())))));
            }
            case LIMIT_HAY -> {
                says.add(
                        "Not in rings: roll out a day’s hay, or feed it in bunks, with room for all at once and strong fences. %s %% is then lost (University of Missouri)."
                                .formatted(fact("day_loss")));
                says.add(
                        "Never below 0.75 %% of body weight in hay, eaten, on any day; straw does not count. Grain in small steps over %s weeks, counted from then; never more than 0.5 %% of body weight in one feeding."
                                .formatted(weeks("change_over")));
                says.add(
                        "Not begun within %d days of the first calf; for each cow it ends when she calves, and until then her feed rises with her need (Ohio State had cows on little hay and corn through calving, three winters). Those that have calved get hay until full, and no straw."
                                .formatted(LimitFeeding.LAST_DAYS));
                if (hay.isFreeChoice()) {
                    says.add("Hay has to be put out daily for it, not free choice.");
                }
            }
            case ELSEWHERE ->
                says.add(
                        step.head() == 0
                                ? "Enter how many can go and for how long: in that time each saves %s."
                                        .formatted(tenth(step.tonsAHead()))
                                : "In that time each saves %s."
                                        .formatted(Show.number(saved / step.head(), 2) + " " + Measures.tons()));
            case SELL_BRED -> {
                says.add(each);
                says.add(
                        step.head() == 0
                                ? ""
                                : "The fewest that close the gap: about %s fewer next fall."
                                        .formatted(
                                                Show.count(step.head(), "calf").replace("calfs", "calves")));
            }
        }
        says.removeIf(String::isEmpty);
        return says;
    }

    private static String weeks(String id) {
        return Show.number(HayFacts.value(id) / 7, 0);
    }

    private static String fact(String id) {
        return Show.number(HayFacts.value(id), 0);
    }

    /** Until when the bench and letters hold, and from when the rows. */
    public static String rowsHold(ShortOfHay hay) {
        return hay.firstThatFeeds()
                .map(step ->
                        "Feed by each group’s ration and letter until %s, the first of these steps that changes what is fed: %s. From that day on feed by these rows instead. Testing, rings, buying and selling change no ration."
                                .formatted(
                                        step.by().equals(hay.today()) ? "today" : Show.day(step.by()),
                                        order(step, hay)))
                .orElse(
                        "None of these steps changes what is fed: feed by each group’s ration and letter. The rows show what is counted above.");
    }

    /** What comes after the ladder. */
    public static List<String> after(ShortOfHay hay) {
        var says = new ArrayList<String>();
        says.add(Measures.say(
                "{Tons} are figured from the day that each step names, after those before it; later saves less."));
        says.add(
                hay.tonsShortAtLast() == 0
                        ? "With these steps hay reaches turnout on %s in a usual winter.%s"
                                .formatted(Show.day(hay.grass()), storm(hay))
                        : "Even so %s are short: buy hay, or sell more.".formatted(tons(hay.tonsShortAtLast())));
        hay.ranch().groups().values().stream()
                .filter(group -> group.turnout() != null && group.turnout().isAfter(hay.grass()))
                .map(group -> "%s go out later, on %s: what they eat from %s on is not counted."
                        .formatted(group.name(), Show.day(group.turnout()), Show.day(hay.grass())))
                .forEach(says::add);
        says.add(
                hay.leastHarm().stream().allMatch(least -> least.unmet().isEmpty())
                        ? hay.isRegaining()
                                ? "They should hold condition, and thin ones gain to calving. Score them every two weeks."
                                : "They should hold condition. Score them every two weeks."
                        : "Some groups fall short of their needs even then, as their lines say: they lose condition.");
        if (hay.isBunkTooShort()) {
            says.add(
                    "Limiting hay for grain is not among the steps: your bunk is too short for all cows, and in more than three turns the strong ones eat the others’ grain.");
        }
        hay.toBuy().ifPresent(buy -> says.add(bought(buy, hay)));
        says.add(
                "Which hay goes to whom is in the rows below, as their needs and what hay is left have it. Among like hays give the best to heifers, then to cows after calving.");
        hay.plan().ifPresent(plan -> says.add(planned(plan)));
        return says;
    }

    /** What one storm takes of all cattle, on the worst day for it, beside what is left over. */
    private static String storm(ShortOfHay hay) {
        var rows =
                hay.leastHarm().stream().flatMap(least -> least.rows().stream()).toList();
        double takes = rows.stream()
                .map(HayRow::from)
                .mapToDouble(day -> rows.stream()
                        .filter(row -> !row.from().isAfter(day) && !row.until().isBefore(day))
                        .mapToDouble(RowMinds::stormTons)
                        .sum())
                .max()
                .orElse(0);
        double left = Math.max(0, hay.tonsOnHand() + hay.tonsBought() - hay.tonsTakenAtLast());
        return takes <= left
                ? ""
                : " It does not in a stormy one: ten days of storm take up to %s more, and %s are left over. Find that hay before you begin."
                        .formatted(tons(takes), tons(left));
    }

    /** Tons as printed times the price: it comes out with a pencil. */
    private static String bought(ToBuy buy, ShortOfHay hay) {
        return "To buy instead of all other steps: %s%s at %s, $%s, if so much can be found."
                .formatted(
                        tons(buy.tons()),
                        hay.tonsThatCanBeHad() > 0
                                ? " more than the %s listed, such as %s"
                                        .formatted(
                                                tons(hay.tonsThatCanBeHad()),
                                                buy.feed().feed().name())
                                : " of " + buy.feed().feed().name(),
                        aTon(price(buy)),
                        Show.number(dollars(List.of(buy)), 0));
    }

    /** What hay at a usual price would take the place of selling bred cows. */
    private static String insteadOfSelling(ShortOfHay hay) {
        double price = Math.rint(Measures.ofDollarsATon(HayFacts.value("hay_price")));
        var sell = hay.steps().stream()
                .filter(step -> step.what() == What.SELL_BRED && step.saves() > 0)
                .findFirst();
        double tons = rounded(sell.map(HayStep::saves).orElse(hay.tonsShort()));
        var takes = "%s at a usual %s delivered (judgment), $%s, would take the place of %s."
                .formatted(
                        shown(tons),
                        aTon(price),
                        Show.number(tons * price, 0),
                        sell.map(step -> "selling " + Show.count(step.head(), "bred cow"))
                                .orElse("all steps below"));
        return takes
                + Measures.say(
                        " Each {ton} you can buy is one less to save: add the hay to your feeds for sale with how much can be had.");
    }

    /** How the plan of the winter, which takes none of these steps, goes on from here. */
    private static String planned(WinterPlan plan) {
        var buys = plan.season().feeds().stream()
                .filter(feed -> !feed.isEmergency() && plan.buys(feed.id()) >= LEAST_BOUGHT)
                .map(feed -> "%s of %s".formatted(Show.tons(plan.buys(feed.id())), feed.name()))
                .toList();
        double lacks = plan.plan().emergencyKg();
        return ("The winter book counts otherwise: a winter harder than usual, condition that cows may lose, and straw, grain and"
                        + " cake in place of hay. Without these steps its plan %s%s.")
                .formatted(
                        buys.isEmpty() ? "buys nothing" : "buys " + String.join(", ", buys),
                        lacks < LEAST_BOUGHT
                                ? " and is short of nothing"
                                : " and is then still short of " + Show.tons(lacks) + " of hay");
    }

    /** Always said. */
    public static List<String> cautions() {
        return List.of(
                "Hungry cattle break fences and eat what they otherwise leave: check for poison plants.",
                "Test risky hay for nitrate, and never give it to hungry cattle. Give vitamin A with straw, old or drought hay.",
                "Never limit hay for thin cows, heifers or calves. Ask your veterinarian and nutritionist before you limit hay.");
    }

    /** What has to be said first, and where. */
    public static String lack(Lacks lacks) {
        return switch (lacks) {
            case CATTLE -> "Add the first group of cattle.";
            case HAY ->
                Measures.say(
                        "Add a lot of hay or silage with its {tons}, and what a {ton} of it would cost to replace.");
            case GRASS -> "Enter the turnout date, when they go to pasture: a day in the next 300.";
        };
    }

    /** Where to. */
    public static String page(Lacks lacks) {
        return switch (lacks) {
            case CATTLE -> "herd";
            case HAY -> "lots";
            case GRASS -> "settings";
        };
    }

    /** As it is printed, in the tons of the ranch. @param tons of 2,000 lb */
    private static double rounded(double tons) {
        return round(Measures.ofTons(tons));
    }

    private static double round(double tons) {
        return Math.abs(tons) < 9.95 ? Math.rint(10 * tons) / 10 : Math.rint(tons);
    }

    /** @param tons of the ranch */
    private static String shown(double tons) {
        return Show.tons(Measures.mass().toBase(tons));
    }

    /** @param price of a ton of the ranch */
    private static String aTon(double price) {
        return Show.withUnit(Show.number(price, 0), Measures.price());
    }

    private static String tons(double tons) {
        return Show.tons(Unit.TON.toBase(tons));
    }

    private static String tenth(double tons) {
        return Show.number(Measures.ofTons(tons), 1) + " " + Measures.tons();
    }
}
