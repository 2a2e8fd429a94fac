package haywright.app.words;

import haywright.quantity.Unit;
import haywright.season.Orders;
import haywright.season.WinterBook;
import haywright.season.given.Season;
import haywright.season.given.SeasonFeed;
import haywright.season.play.Plan;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** A winter book for the person who reads it. */
public final class WinterWords {
    private static final int MOST_NAMED = 4;
    /** Less of a feed is not worth a truck or a line. */
    private static final double LEAST_TONS = 1;

    private static final double LEAST_POUNDS = 0.05;
    private static final int OUNCES = 16;

    private WinterWords() {}

    /** {@code Feed lasts to May 5 in 17 winters of 20.} */
    public static String headline(WinterBook book) {
        var grass = Show.day(book.grass());
        if (book.lasts().isEmpty()) {
            return "No winters are on record for this place, so there is a plan and no count.";
        }
        int lasts = book.lasts().getAsInt();
        return lasts == WinterBook.OF
                ? "Feed lasts to turnout, %s, in 20 winters of 20.".formatted(grass)
                : lasts == 0
                        ? "Feed does not last to turnout, %s, in any winter of 20.".formatted(grass)
                        : "Feed lasts to turnout, %s, in %d winters of 20.".formatted(grass, lasts);
    }

    /** {@code Short in 1996-97 and 2010-11: 22 to 40 tons, from Apr 8.} Empty where none fell short of hay. */
    public static String shortIn(WinterBook book) {
        return book.hayShort()
                .map(hay -> {
                    var years = hay.winters().stream()
                            .limit(MOST_NAMED)
                            .map(WinterBook.ShortWinter::winter)
                            .collect(Collectors.joining(", "));
                    int count = hay.winters().size();
                    return "Short in %s: %s tons, from %s on."
                            .formatted(
                                    count == book.years()
                                            ? "every winter"
                                            : count > MOST_NAMED
                                                    ? "%d of %d winters, such as %s"
                                                            .formatted(count, book.years(), years)
                                                    : years,
                                    between(hay.low(), hay.high()),
                                    Show.day(hay.from()));
                })
                .orElse("");
    }

    /** {@code 22 to 40}; one figure where both round to it. */
    private static String between(double low, double high) {
        var a = Show.number(low, 0);
        var b = Show.number(high, 0);
        return a.equals(b) ? a : a + " to " + b;
    }

    /** What is bought now and what is planned on, as orders. */
    public static List<String> buy(Plan plan, Season season) {
        var all = new ArrayList<String>();
        for (var buy : Orders.of(plan, season).buys()) {
            if (Unit.TON.fromBase(buy.nowKg()) >= LEAST_TONS) {
                all.add("Buy %s of %s this week: %s."
                        .formatted(
                                tons(buy.nowKg()),
                                buy.feed().name(),
                                Show.dollars(buy.nowKg() * buy.feed().price())));
            }
            if (Unit.TON.fromBase(buy.laterKg()) >= LEAST_TONS) {
                all.add("Plan to buy %s of %s later."
                        .formatted(tons(buy.laterKg()), buy.feed().name()));
            }
        }
        if (plan.emergencyKg() >= Unit.TON.toBase(LEAST_TONS)) {
            all.add("Find %s of hay beyond what is on hand and listed for sale, or plan for fewer cattle."
                    .formatted(tons(plan.emergencyKg())));
        }
        return all;
    }

    /** {@code 460 tons can’t be fed yet: Oat hay, Corn silage.} Empty where every lot may be. */
    public static String leftOut(Season season) {
        var out = IntStream.range(0, season.feeds().size())
                .filter(f -> season.feeds().get(f).isForage()
                        && season.feeds().get(f).kg() > 0
                        && !season.mayBeFed(f))
                .mapToObj(season.feeds()::get)
                .toList();
        return out.isEmpty()
                ? ""
                : "%s can’t be fed yet and %s not counted: %s."
                        .formatted(
                                tons(out.stream().mapToDouble(SeasonFeed::kg).sum()),
                                out.size() == 1 ? "is" : "are",
                                out.stream().map(SeasonFeed::name).collect(Collectors.joining(", ")));
    }

    private static String tons(double kg) {
        long tons = Math.round(Unit.TON.fromBase(kg));
        return tons == 1 ? "1 ton" : Show.number(tons, 0) + " tons";
    }

    /** {@code Mature cows: 22 lb Pivot hay, 4 lb Meadow hay}, as fed per head per day, a line a group. */
    public static List<String> feed(Plan plan, Season season) {
        return Orders.of(plan, season).groups().stream()
                .map(group -> group.name() + ": "
                        + group.feeds().stream()
                                .filter(fed -> Unit.POUND.fromBase(fed.kg()) >= LEAST_POUNDS)
                                .map(WinterWords::amount)
                                .collect(Collectors.joining(", ")))
                .filter(line -> !line.endsWith(": "))
                .toList();
    }

    private static String amount(Orders.Fed fed) {
        double pounds = Unit.POUND.fromBase(fed.kg());
        return (pounds < 1
                        ? Show.number(OUNCES * pounds, 0) + " oz "
                        : Show.number(pounds, pounds < 2 ? 1 : 0) + " lb ")
                + fed.feed().name();
    }

    /** {@code brings $4,300 (2,900 to 5,700)}; {@code costs} where it does. */
    public static String worth(WinterBook.Alternative one) {
        return "%s %s (%s to %s)"
                .formatted(
                        one.net() < 0 ? "costs" : "saves",
                        dollars(Math.abs(one.net())),
                        dollars(one.net() < 0 ? -one.high() : one.low()),
                        dollars(one.net() < 0 ? -one.low() : one.high()));
    }

    /** Whole hundreds: the last digits are not known. */
    public static String dollars(double dollars) {
        long hundreds = Math.round(dollars / 100) * 100;
        return (hundreds < 0 ? "−$" : "$") + Show.number(Math.abs(hundreds), 0);
    }

    /** {@code 17 of 20}; a half winter is none. */
    public static String of20(double lasts) {
        return Double.isNaN(lasts) ? "" : "%d of 20".formatted(Math.round(lasts));
    }
}
