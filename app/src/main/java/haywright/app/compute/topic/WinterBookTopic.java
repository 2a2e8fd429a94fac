package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.app.words.DoNow;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.quantity.Unit;
import haywright.season.Orders;
import haywright.season.WinterBook;
import haywright.season.given.Facts;
import haywright.season.given.Season;
import haywright.season.kept.KeptBook;
import haywright.season.kept.KeptPlan;
import haywright.workings.Caution;
import haywright.workings.Source;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** In how many winters of 20 the feed of a ranch lasts to grass, and what to do now. */
public final class WinterBookTopic {
    private WinterBookTopic() {}

    record Out(
            String sentence,
            LocalDate today,
            LocalDate grass,

            @Key(name = "lasts_in_20", words = "No emergency hay, storm reserve untouched, score at calving kept.")
            @Nullable
            Integer lasts,

            @Key(words = "Of 20, nine times in ten, by drawing the winters of the record again.")
            OptionalDouble lastsLow,

            OptionalDouble lastsHigh,
            @Key(words = "Winters that were played.") int draws,
            @Key(words = "Of these.") int lasted,

            @Key(words = "Different winters of the record among them.")
            int winters,

            @Key(
                    words =
                            "Standard deviations of the whole need to turnout above the usual that each week's plan is made for.")
            List<Double> hardness,

            @Key(words = "Whether that was chosen on other winters than these.")
            boolean chosenApart,

            @Key(
                    name = "policy_usd",
                    words = "A winter on average: feed bought, needs missed and condition lost, less what is left.")
            OptionalDouble policy,

            @Key(name = "policy_low_usd", words = "One winter in ten is below.")
            OptionalDouble policyLow,

            @Key(name = "policy_high_usd", words = "One winter in ten is above.")
            OptionalDouble policyHigh,

            @Key(name = "bought_usd", words = "For feed bought.")
            OptionalDouble bought,

            @Key(name = "bound_usd", words = "The first winters known in advance: no plan costs less.")
            OptionalDouble bound,

            List<String> doNow,
            List<RunsOut> runsOut,
            List<ShortWinter> shortWinters,
            List<Kind> kinds,
            List<Baseline> baselines,
            List<Doubt> doubts,
            List<Alternative> alternatives,
            List<Unmet> unmet,

            @Key(words = "Not where it was stopped: then what was done is here.")
            boolean complete,

            @Key(words = "Of all that moves a figure of it.")
            String hash) {}

    /** @param inTen of ten winters. @param early one in ten is before. @param date half are */
    record RunsOut(String lot, double inTen, LocalDate early, LocalDate date) {}

    record ShortWinter(
            String winter,
            int draws,
            int lasted,
            double tons,
            double tonsLow,
            double tonsHigh,
            @Nullable LocalDate from) {}

    record Kind(
            String kind,
            String winter,
            @Key(name = "cost_usd") double cost,
            @Key(name = "bought_usd") double bought,
            double tonsShort,
            double tonsLeft,
            OptionalDouble calvingScore,
            int grassDaysLate) {}

    record Baseline(
            String name,
            int winters,
            @Key(name = "lasts_in_20") OptionalDouble lasts,
            @Key(name = "cost_usd") double cost,
            @Key(name = "bought_usd") OptionalDouble bought,
            OptionalDouble tonsShort) {}

    record Doubt(String of, @Key(Unit.PERCENT) double share) {}

    record Alternative(
            String id,
            String what,
            LocalDate decideBy,

            @Key(name = "net_usd", words = "A winter, all told; below zero where it costs more than it brings.")
            double net,

            @Key(name = "low_usd") double low,
            @Key(name = "high_usd") double high,

            @Key(name = "beside_usd", words = "Of it, what is not feed.")
            double beside,

            @Key(name = "lasts_in_20") double lasts,
            double tonsShort,
            String ask) {}

    record Unmet(
            String group,
            LocalDate from,
            LocalDate to,
            String row,
            @Key(Unit.PERCENT) double missing) {}

    /** @param season of the same ranch and day */
    public static Answer<?> answer(WinterBook book, Season season) {
        var plan = book.plan();
        return new Answer<>(
                new Out(
                        sentence(book),
                        book.today(),
                        book.grass(),
                        book.lasts().isPresent() ? (Integer) book.lasts().getAsInt() : null,
                        some(book.low()),
                        some(book.high()),
                        book.draws(),
                        book.lasted(),
                        book.years(),
                        book.policy().hardness(),
                        book.isChosenApart(),
                        some(book.cost().mean()),
                        some(book.cost().low()),
                        some(book.cost().high()),
                        some(book.cost().bought()),
                        book.besides().stream()
                                .filter(one -> Double.isNaN(one.lasts()))
                                .mapToDouble(WinterBook.Beside::cost)
                                .findFirst(),
                        doNow(book, season),
                        book.runsOut().stream()
                                .map(one -> new RunsOut(one.name(), one.inTen(), one.early(), one.middle()))
                                .toList(),
                        book.shortWinters().stream()
                                .map(one -> new ShortWinter(
                                        one.winter(),
                                        one.draws(),
                                        one.lasted(),
                                        one.tons(),
                                        one.tonsLow(),
                                        one.tonsHigh(),
                                        one.from().orElse(null)))
                                .toList(),
                        book.kinds().stream()
                                .map(one -> new Kind(
                                        Measures.say(one.what()),
                                        one.winter(),
                                        one.cost(),
                                        one.bought(),
                                        one.tonsShort(),
                                        one.tonsLeft(),
                                        some(one.score()),
                                        one.late()))
                                .toList(),
                        book.besides().stream()
                                .map(one -> new Baseline(
                                        Measures.say(one.what()),
                                        one.draws(),
                                        some(one.lasts()),
                                        one.cost(),
                                        some(one.bought()),
                                        some(one.tonsShort())))
                                .toList(),
                        book.doubts().stream()
                                .map(one -> new Doubt(Measures.say(one.of()), one.percent()))
                                .toList(),
                        book.alternatives().stream()
                                .map(one -> new Alternative(
                                        one.id(),
                                        Measures.say(one.what()),
                                        one.decideBy(),
                                        one.dollars().mean(),
                                        one.dollars().low(),
                                        one.dollars().high(),
                                        one.beside(),
                                        one.lasts(),
                                        one.tonsShort(),
                                        one.ask()))
                                .toList(),
                        plan.unmet().stream()
                                .map(one -> new Unmet(one.group(), one.from(), one.to(), one.row(), one.percent()))
                                .toList(),
                        book.isWhole(),
                        book.hash()),
                true,
                List.of(),
                cautions(book));
    }

    private static OptionalDouble some(double value) {
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }

    /** The answer in a sentence or two. */
    public static String sentence(WinterBook book) {
        OptionalInt lasts = book.lasts();
        if (lasts.isEmpty()) {
            return "No winter was played, so there is a plan and no count.";
        }
        var words = new StringBuilder("Feed lasts to turnout, %s, in %d of 20 winters (%.0f to %.0f; %s of %s played). "
                .formatted(
                        Show.date(book.grass()),
                        lasts.getAsInt(),
                        Math.floor(book.low()),
                        Math.ceil(book.high()),
                        Show.number(book.lasted(), 0),
                        Show.count(book.draws(), "winter")));
        book.hayShort()
                .ifPresent(hay -> words.append(
                        "Short in %s: %.0f to %.0f tons. In the earliest of them half the draws are short from %s."
                                .formatted(
                                        hay.winters().size() == book.years()
                                                ? "all of them"
                                                : hay.winters().stream()
                                                        .map(WinterBook.ShortWinter::winter)
                                                        .collect(Collectors.joining(", ")),
                                        hay.low(),
                                        hay.high(),
                                        Show.date(hay.from()))));
        return words.toString().strip();
    }

    /** What the winter page has somebody do, in its order, and what each group is fed this week. */
    private static List<String> doNow(WinterBook book, Season season) {
        var plan = KeptPlan.of(book.plan(), season);
        var all = DoNow.of(plan, KeptBook.of(book, season, plan, List.of(), List.of())).stream()
                .flatMap(one -> Stream.concat(Stream.of((one.what() + " " + one.more()).strip()), one.under().stream()))
                .collect(Collectors.toCollection(ArrayList::new));
        var orders = Orders.of(book.plan(), season);
        for (var group : orders.groups()) {
            var feeds = new ArrayList<String>();
            for (var fed : group.feeds()) {
                double pounds = Unit.POUND.fromBase(fed.kg());
                if (pounds >= 0.05) {
                    feeds.add("%s lb %s"
                            .formatted(
                                    Show.number(pounds, pounds < 2 ? 1 : 0),
                                    fed.feed().name()));
                }
            }
            if (!feeds.isEmpty()) {
                all.add("Feed %s per head per day: %s.".formatted(group.name(), String.join(", ", feeds)));
            }
        }
        return all;
    }

    private static List<Caution> cautions(WinterBook book) {
        var all = new ArrayList<Caution>();
        all.add(new Caution(
                "Losses in store, prices later in winter and what falling short counts are judgment: %s and others. Your veterinarian, nutritionist and cattle have the last word."
                        .formatted(Facts.source("score_usd").cite()),
                Source.judgment("season.csv")));
        all.add(new Caution(
                "Grass is taken to come on the day said, or later where that spring was cold; snow cover and dry springs are not in it.",
                Source.judgment("warmth above 41 °F from March 1")));
        if (!book.isChosenApart() && book.draws() > 0) {
            all.add(new Caution(
                    "So few winters are known that how hard a winter to plan for was not chosen on others than these.",
                    Source.ARITHMETIC));
        }
        return all;
    }
}
