package haywright.app.web.bench;

import haywright.app.words.Likely;
import haywright.app.words.Show;
import haywright.diet.Feed;
import haywright.feeding.Offers;
import haywright.feeding.Purchase;
import haywright.feeding.WouldCarry;
import haywright.forage.Analyte;
import haywright.forage.NutrientPrice;
import haywright.quantity.Unit;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a purchase would change, in words. */
final class BuyWords {
    private static final double CENTS = 100;

    /** Dollars until grass below which a purchase changes nothing (judgment). */
    private static final double WORTH_SAYING = 50;

    private BuyWords() {}

    static String say(Purchase bought) {
        var what = "%s of %s at %s"
                .formatted(
                        Show.tons(bought.feed().kgAtHand()),
                        bought.feed().feed().name(),
                        BenchView.aTon(bought.feed().pricePerKgAsFed()));
        double saves = bought.savesToGrass().orElse(0);
        if (saves >= WORTH_SAYING && bought.breakEven().isPresent()) {
            return "%s: worth buying. Feed for all groups until turnout costs about %s less. %s"
                    .formatted(what, MixWords.about(saves), pays(bought));
        }
        if (bought.isFed()) {
            return "%s: worth buying for these cattle.".formatted(what);
        }
        return bought.worthBelow().isEmpty()
                ? "%s: it would not go into this ration at any price.".formatted(what)
                : bought.worthBelow().getAsDouble() < bought.feed().pricePerKgAsFed()
                        ? "%s: not worth buying for these cattle. Below %s it would be."
                                .formatted(
                                        what, BenchView.aTon(bought.worthBelow().getAsDouble()))
                        : "%s: it saves too little here to be worth another feed to handle.".formatted(what);
    }

    /** Spread over all that the plan buys of it, while hay is short; and where it is not, no more than hay in its place. */
    private static String pays(Purchase bought) {
        double most = bought.breakEven().orElseThrow();
        var all = "It pays up to about %s on average for %s"
                .formatted(BenchView.aTon(most), Show.tons(bought.kgToGrass()));
        return bought.besideHay()
                .filter(beside -> beside.worth() < most)
                .map(beside -> all
                        + " while hay has to be found at %s; if you can buy all the %s you want at %s, %s."
                                .formatted(
                                        BenchView.ofATon(beside.found()),
                                        beside.hay().feed().name(),
                                        BenchView.aTon(beside.hay().pricePerKgAsFed()),
                                        beside.worth() <= bought.feed().pricePerKgAsFed()
                                                ? "it isn’t worth its price"
                                                : "up to about " + BenchView.ofATon(beside.worth())))
                .orElse(all + ".");
    }

    /** {@code about 2.5 lb of grain per head per day}. */
    static String briefly(WouldCarry carry) {
        return carry.bought().stream()
                .map(one -> "about %s lb of %s"
                        .formatted(
                                Show.significant(Unit.POUND.fromBase(one.kgADay()), 2),
                                one.kind().words()))
                .collect(Collectors.joining(" and ", "", " per head per day"));
    }

    /** A feed each, with tons to grass and dollars, and what those rest on. */
    static List<BenchView.ToBuy> carry(WouldCarry carry) {
        var says = new ArrayList<BenchView.ToBuy>();
        for (var one : carry.bought()) {
            var tons = one.kgToGrass().isEmpty()
                    ? ""
                    : ", " + Show.tons(one.kgToGrass().getAsDouble()) + " to turnout";
            says.add(new BenchView.ToBuy(
                    one.kind().words(),
                    "%s: about %s lb per head per day as fed%s, at a usual %s"
                            .formatted(
                                    Show.capital(one.kind().words()),
                                    Show.significant(Unit.POUND.fromBase(one.kgADay()), 2),
                                    tons,
                                    BenchView.aTon(one.dollarsAKg()))));
        }
        return says;
    }

    static List<String> lines(Offers offers, Purchase bought) {
        var says = new ArrayList<String>();
        if (bought.before().isPresent() && bought.isFed()) {
            long cents = Math.round(CENTS
                    * (bought.after().orElseThrow().cents()
                            - bought.before().get().cents()));
            says.add(
                    cents == 0
                            ? "The ration then costs the same per head per day."
                            : "The ration then costs %s ¢ %s per head per day."
                                    .formatted(Show.number(Math.abs(cents), 0), cents < 0 ? "less" : "more"));
        }
        if (bought.before().isEmpty() && bought.after().isPresent()) {
            says.add("There is no ration without it, and one with it.");
        }
        bought.days().ifPresent(days -> says.add(lasts(offers, bought, days)));
        bought.savesToGrass().ifPresent(dollars -> {
            if (dollars < WORTH_SAYING) {
                says.add(saves(dollars));
            }
        });
        if (Math.round(bought.missingBefore()) > Math.round(bought.missingAfter())) {
            says.add(
                    "Hay that the winter plan would have to find, beyond all on hand and all else for sale, falls from %s to %s."
                            .formatted(tons(bought.missingBefore()), tons(bought.missingAfter())));
        }
        prices(bought.feed()).ifPresent(says::add);
        beside(bought).ifPresent(says::add);
        says.add(test(offers, bought.feed()));
        return says;
    }

    private static String tons(double tons) {
        return Show.tons(Unit.TON.toBase(tons));
    }

    private static String lasts(Offers offers, Purchase bought, double days) {
        var all = Show.tons(bought.feed().kgAtHand());
        var aDay = Show.pounds(bought.kgADay());
        var grass = offers.grass();
        var last = offers.yard().day().plusDays((long) Math.min(days, 400));
        return grass.isPresent() && !last.isBefore(grass.get())
                ? "All groups would take %s a day; %s lasts to turnout, with %s left."
                        .formatted(
                                aDay,
                                all,
                                Show.tons(bought.feed().kgAtHand()
                                        - bought.kgADay() * offers.days().orElse(0)))
                : "All groups would take %s a day; %s lasts until %s.".formatted(aDay, all, Show.day(last));
    }

    private static String saves(double dollars) {
        return Math.abs(dollars) < WORTH_SAYING
                ? "Feed for all groups until turnout would cost about the same."
                : "Feed for all groups until turnout would cost about %s %s."
                        .formatted(MixWords.about(Math.abs(dollars)), dollars > 0 ? "less" : "more");
    }

    /** {@code It costs $206 a ton of dry matter, 48 ¢ a pound of protein, 16 ¢ a Mcal (NEm).} */
    private static Optional<String> prices(PricedFeed feed) {
        return part(feed).map(words -> "It costs " + words + ".");
    }

    private static Optional<String> beside(Purchase bought) {
        return bought.before()
                .flatMap(offer -> offer.mix().portions().stream()
                        .filter(p -> !p.feed().feed().equals(bought.feed().feed()))
                        .max(Comparator.comparingDouble(Portion::kg)))
                .flatMap(most -> part(most.feed())
                        .map(words -> "%s, at %s: %s."
                                .formatted(
                                        most.feed().feed().name(),
                                        BenchView.aTon(most.feed().pricePerKgAsFed()),
                                        words)));
    }

    private static Optional<String> part(PricedFeed feed) {
        var made = feed.feed().composition();
        var cp = made.value(Analyte.CP);
        var nem = made.value(Analyte.NEM);
        if (cp.isEmpty() || nem.isEmpty() || !(cp.getAsDouble() > 0) || !(nem.getAsDouble() > 0)) {
            return Optional.empty();
        }
        var price = new NutrientPrice(feed.pricePerKgAsFed(), feed.dryMatterPercent(), cp.getAsDouble());
        return Optional.of("%s of dry matter, %s ¢ a pound of protein, %s ¢ a Mcal (NEm)"
                .formatted(
                        BenchView.aTon(price.dry()),
                        cents(Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_LB, price.nutrient())),
                        cents(price.dry() / nem.getAsDouble())));
    }

    private static String cents(double dollars) {
        return Show.number(CENTS * dollars, 0);
    }

    private static String test(Offers offers, PricedFeed feed) {
        Feed of = feed.feed();
        var likely = Likely.of(offers.yard().composition(of.id()))
                .map(words -> " Without one: " + words + ".")
                .orElse("");
        return of.nitrateDanger()
                ? "Have the load tested, nitrate too, before you pay; none goes to cattle without it." + likely
                : "Ask for a test of the load before you pay." + likely;
    }
}
