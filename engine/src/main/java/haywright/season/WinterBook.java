package haywright.season;

import haywright.season.play.Plan;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * A ranch's winter: whether its feed lasts to grass, in how many winters of 20, and what to do now.
 *
 * @param hash of all that it was made from: the same input has the same book
 * @param grass the day that was said
 * @param plan of today, for the winter it is planned for
 * @param policy how it was planned again each week
 * @param lasts winters of 20 in which feed lasted; empty where no winter is known
 * @param low of winters of 20, by drawing winters again: nine times in ten it lies from this to {@code high}
 * @param draws winters that were played
 * @param lasted of these
 * @param years different winters of the record among them
 * @param isChosenApart whether the policy was chosen on other winters than these
 * @param cost dollars
 * @param shortWinters those whose draws fell short most often, as many of {@code years} as {@code lasts} leaves, as they came
 * @param runsOut every lot that was used up in some
 * @param kinds an open, a usual and a hard one
 * @param besides the same winters played otherwise; the first is what was planned
 * @param doubts how much of the spread of what is left comes of what
 * @param alternatives with what each would bring
 * @param isWhole whether all was done that was asked for; not where it was canceled or its time was up
 */
public record WinterBook(
        String hash,
        LocalDate today,
        LocalDate grass,
        Plan plan,
        Choice policy,
        OptionalInt lasts,
        double low,
        double high,
        int draws,
        int lasted,
        int years,
        boolean isChosenApart,
        Cost cost,
        List<ShortWinter> shortWinters,
        List<RunsOut> runsOut,
        List<Kind> kinds,
        List<Beside> besides,
        List<Doubt> doubts,
        List<Alternative> alternatives,
        boolean isWhole) {
    /** Winters that people count in. */
    public static final int OF = 20;

    public WinterBook {
        shortWinters = List.copyOf(shortWinters);
        runsOut = List.copyOf(runsOut);
        kinds = List.copyOf(kinds);
        besides = List.copyOf(besides);
        doubts = List.copyOf(doubts);
        alternatives = List.copyOf(alternatives);
    }

    /**
     * What the winters that ran out of hay have in common.
     *
     * @param low tons of the one that was least short
     * @param high of the one that was most
     * @param from the earliest day from which one was
     */
    public record HayShort(List<ShortWinter> winters, double low, double high, LocalDate from) {}

    /** Empty where none ran out of hay. */
    public Optional<HayShort> hayShort() {
        var hay = shortWinters.stream().filter(one -> one.from.isPresent()).toList();
        return hay.stream()
                .map(one -> one.from.orElseThrow())
                .min(LocalDate::compareTo)
                .map(first -> {
                    var tons = hay.stream().mapToDouble(ShortWinter::tons).summaryStatistics();
                    return new HayShort(hay, tons.getMin(), tons.getMax(), first);
                });
    }

    /**
     * How hard a winter each week's plan is made for.
     *
     * @param hardness standard deviations of the whole need to grass over what is usual then; several where this week is
     *     shared by as many winters
     */
    public record Choice(List<Double> hardness) {
        public Choice {
            hardness = List.copyOf(hardness);
        }

        /** The one that stands for all, where what could be done is priced. */
        public double middle() {
            return hardness.get(hardness.size() / 2);
        }
    }

    /**
     * Dollars of a winter: feed bought, needs missed and condition lost, less what is left at turnout.
     *
     * @param mean over all draws
     * @param low one in ten is below
     * @param high one in ten is above
     * @param bought for feed alone, on average
     */
    public record Cost(double mean, double low, double high, double bought) {}

    /**
     * @param winter {@code 1996-97}
     * @param tons as fed that were missing in the middle of its draws that fell short
     * @param tonsLow one in ten of them is below
     * @param tonsHigh one in ten is above
     * @param from the day from which they were, in the middle of them; empty where only condition was lost
     */
    public record ShortWinter(
            String winter,
            int draws,
            int lasted,
            double tons,
            double tonsLow,
            double tonsHigh,
            Optional<LocalDate> from) {}

    /** @param inTen of ten winters in which it was used up. @param early one in ten is before. @param middle half are */
    public record RunsOut(String lot, String name, double inTen, LocalDate early, LocalDate middle) {}

    /**
     * A third of the winters, by what all cattle needed in them; figures are means of all their draws.
     *
     * @param winter the one in the middle of them
     * @param score of mature cows at calving; NaN where none calve ahead.
     * @param tonsLeft of hay and silage that may be fed
     */
    public record Kind(
            String what,
            String winter,
            double cost,
            double bought,
            double tonsShort,
            double tonsLeft,
            double score,
            int late) {}

    /**
     * @param lasts winters of 20
     * @param tonsShort on average
     */
    public record Beside(String what, int draws, double lasts, double cost, double bought, double tonsShort) {}

    /** @param percent of the variance of tons left and missing. */
    public record Doubt(String of, double percent) {}

    /**
     * Something that could be done.
     *
     * @param decideBy the last day for it
     * @param net what it brings by the accounting of a plan, needs missed counted at their prices: it ranks, and is no money
     * @param low of {@code net}: nine times in ten its mean lies from this to {@code high}
     * @param money dollars that it saves; null in a book of an earlier build
     * @param beside dollars of it that are not feed: what was sold, what it costs, a calf less
     * @param lasts winters of 20 with it
     * @param ask who should be asked, or what is not counted
     * @param needed feeds that today's plan buys with it all the same; null where it is no test, and in a book of an earlier build
     */
    public record Alternative(
            String id,
            String what,
            LocalDate decideBy,
            double net,
            double low,
            double high,
            double beside,
            double lasts,
            double tonsShort,
            @Nullable Money money,
            String ask,
            @Nullable List<Needed> needed) {
        public Alternative {
            needed = needed == null ? null : List.copyOf(needed);
        }

        /** Dollars alone, and what is known by none else. */
        public Money dollars() {
            return money == null ? new Money(net, low, high) : money;
        }
    }

    /** @param kg of a feed to buy, as fed, from today to grass */
    public record Needed(String feed, double kg) {}

    /**
     * Dollars a winter: less feed bought and hay found, more sold and left at turnout, and what it costs or brings beside feed.
     * Nothing that is missed is priced in it.
     *
     * @param low nine times in ten its mean lies from this to {@code high}
     */
    public record Money(double mean, double low, double high) {}
}
