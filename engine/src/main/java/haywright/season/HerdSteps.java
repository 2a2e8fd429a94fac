package haywright.season;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.season.given.Facts;
import haywright.season.given.Season;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** What could be done with the cattle themselves: some sold, weaned, or fed elsewhere. */
final class HerdSteps {
    private static final int TEN = 10;
    /** Cows are moved and checked no later than this before the first calves (judgment). */
    private static final int NEAR_CALVING = 60;

    private static final int JULY = 7;
    /** From mid-November to mid-March. */
    private static final double LOW_TO_HIGH = 120;

    private static final double CALF_POUNDS = 500;
    /** Calves younger than this are not weaned (judgment). */
    private static final int YOUNGEST = 100;

    private static final int USUAL_WEANING = 205;
    private static final int FEWEST_WEEKS = 3;
    private final Yard yard;
    private final Season season;

    HerdSteps(Yard yard, Season season) {
        this.yard = yard;
        this.season = season;
    }

    List<Steps.Step> all() {
        var steps = new ArrayList<Steps.Step>();
        sell().ifPresent(steps::add);
        open().ifPresent(steps::add);
        calves().ifPresent(steps::add);
        wean().ifPresent(steps::add);
        stalks().ifPresent(steps::add);
        custom().ifPresent(steps::add);
        return steps;
    }

    private Optional<Group> cows() {
        return yard.ranch().groups().values().stream()
                .filter(group -> group.animals() == AnimalClass.MATURE_COW)
                .max(Comparator.comparingInt(Group::head));
    }

    private Optional<Steps.Step> sell() {
        return cows().filter(group -> group.head() >= TEN).map(group -> {
            int sold = group.head() / TEN;
            double each = Facts.value("bred_cow_usd") - Facts.value("bred_cow_kept_usd");
            return Steps.of(
                    "sell",
                    "Sell %d bred cows of %s".formatted(sold, group.name()),
                    Steps.soon(yard.day(), "sell_days"),
                    r -> r.with(without(group, sold)),
                    sold * each,
                    "They bring $%,.0f each, and next year’s calf goes with them. We figure a bred cow you keep is worth $%,.0f. Taxes: ask your accountant."
                            .formatted(Facts.value("bred_cow_usd"), Facts.value("bred_cow_kept_usd")));
        });
    }

    private static Group without(Group g, int sold) {
        var calving = new ArrayList<Group.CalvingWeek>();
        double share = 1 - (double) sold / g.head();
        int left = g.head() - sold;
        for (var week : g.calving()) {
            int head = Math.min(left, (int) Math.round(week.head() * share));
            left -= head;
            calving.add(new Group.CalvingWeek(week.begins(), head));
        }
        return g.counting(g.head() - sold, calving);
    }

    /** Dry mature cows elsewhere, until two months before the first is due. */
    private Optional<Steps.Step> stalks() {
        return cows().flatMap(group -> {
            int weeks = (int) Facts.value("stalk_weeks");
            boolean fits = group.firstCalving()
                    .map(first -> yard.day().plusWeeks(weeks).plusDays(60).isBefore(first))
                    .orElse(false);
            return fits
                    ? Optional.of(new Steps.Step(
                            "stalks",
                            "Put the mature cows on cornstalks or a standing meadow for the next %d weeks, if you can find one"
                                    .formatted(weeks),
                            Steps.soon(yard.day(), "soon_days"),
                            r -> r,
                            Set.of(),
                            weeks,
                            r -> -matureCows(r) * weeks * 7.0 * Facts.value("stalk_usd"),
                            "At $%.2f per head per day, hauling and fence not counted; they hold condition there only while snow lets them."
                                    .formatted(Facts.value("stalk_usd"))))
                    : Optional.empty();
        });
    }

    /** Those that are open: said so, or as many as usual where all are down to calve and nobody may have checked. */
    private Optional<Steps.Step> open() {
        return cows().filter(group -> group.firstCalving()
                        .map(first -> yard.day().plusDays(NEAR_CALVING).isBefore(first))
                        .orElse(false))
                .flatMap(group -> {
                    int due = group.calving().stream()
                            .mapToInt(Group.CalvingWeek::head)
                            .sum();
                    boolean isSaid = due < group.head();
                    int open = isSaid
                            ? group.head() - due
                            : (int) Math.round(group.head() * Facts.value("open_share") / 100);
                    double now = openUsd(yard.day());
                    double spring = Facts.value("open_spring_usd");
                    return open == 0 || open == group.head()
                            ? Optional.empty()
                            : Optional.of(Steps.of(
                                    "open",
                                    isSaid
                                            ? "Sell the %d open cows of %s".formatted(open, group.name())
                                            : "Pregnancy check %s and sell the open ones: %d if %.0f in 100 are"
                                                    .formatted(group.name(), open, Facts.value("open_share")),
                                    Steps.soon(yard.day(), "soon_days"),
                                    r -> r.with(isSaid ? group.counting(due, group.calving()) : without(group, open)),
                                    open * (now - spring) - (isSaid ? 0 : group.head() * Facts.value("preg_check_usd")),
                                    "They bring about $%,.0f each now and $%,.0f in mid-March, with no calf either way. %sTaxes: ask your accountant."
                                            .formatted(
                                                    now, spring, isSaid ? "" : "Leave it out if all were checked. ")));
                });
    }

    /** From the low of mid-November to mid-March, evenly. */
    private static double openUsd(LocalDate day) {
        var low = LocalDate.of(day.getMonthValue() < JULY ? day.getYear() - 1 : day.getYear(), 11, 15);
        double share = Math.max(0, Math.min(1, ChronoUnit.DAYS.between(low, day) / LOW_TO_HIGH));
        return Facts.value("open_fall_usd") + share * (Facts.value("open_spring_usd") - Facts.value("open_fall_usd"));
    }

    /** The calves now, instead of in spring at what they weigh then. */
    private Optional<Steps.Step> calves() {
        return yard.ranch().groups().values().stream()
                .filter(group -> group.animals() == AnimalClass.GROWING)
                .filter(group -> yard.ranch().groups().size() > 1)
                .max(Comparator.comparingInt(Group::head))
                .map(group -> {
                    long days = Math.max(
                            0,
                            ChronoUnit.DAYS.between(
                                    yard.day(), Objects.requireNonNullElse(group.turnout(), season.grass())));
                    double pounds = group.weight().in(Unit.POUND);
                    double later = pounds + days * group.gain().in(Unit.POUND_A_DAY);
                    double beside =
                            group.head() * (calfUsd(pounds) - calfUsd(later) + days * Facts.value("calf_cost_usd"));
                    return Steps.of(
                            "sell-calves",
                            "Sell the %d head of %s now instead of feeding them to turnout"
                                    .formatted(group.head(), group.name()),
                            Steps.soon(yard.day(), "soon_days"),
                            r -> r.withoutGroup(group.id()),
                            beside,
                            "They bring about $%,.0f each now at %,.0f lb, and $%,.0f at turnout at %,.0f lb. Not for heifers you mean to keep. Ask for the price of the day; taxes: ask your accountant."
                                    .formatted(calfUsd(pounds), pounds, calfUsd(later), later));
                });
    }

    /** Dollars a head. */
    static double calfUsd(double pounds) {
        double aPound = Facts.value("calf_usd") - Facts.value("calf_slide") * (pounds - CALF_POUNDS) / 100;
        return pounds * Math.max(1, aPound);
    }

    /** In August and September alone, and only where calves still suck. */
    private Optional<Steps.Step> wean() {
        var by = LocalDate.of(yard.day().getYear(), 9, 30);
        var first = LocalDate.of(yard.day().getYear(), 8, 1);
        if (yard.day().isBefore(first) || yard.day().isAfter(by)) {
            return Optional.empty();
        }
        return yard.ranch().groups().values().stream()
                .filter(group -> group.animals().calves())
                .filter(group -> group.firstCalving()
                        .map(date -> date.isBefore(yard.day().minusDays(YOUNGEST)))
                        .orElse(false))
                .filter(group -> group.weaning() == null || group.weaning().isAfter(by))
                .max(Comparator.comparingInt(Group::head))
                .map(group -> {
                    var usual = group.weaning() == null
                            ? group.firstCalving().orElseThrow().plusDays(USUAL_WEANING)
                            : group.weaning();
                    var early = soonest(yard.day().plusDays(7), by);
                    long days = Math.max(0, ChronoUnit.DAYS.between(early, usual));
                    return Steps.of(
                            "wean",
                            "Wean the calves of %s early, by the end of September".formatted(group.name()),
                            by,
                            r -> r.with(group.dated(group.calving(), early, group.turnout())),
                            -group.head() * days * Facts.value("early_pounds") * Facts.value("early_usd"),
                            "The calves are counted as gaining %.1f lb a day less until %s, at $%.2f a pound. Good feed makes that up; ask your veterinarian about shots first."
                                    .formatted(Facts.value("early_pounds"), usual, Facts.value("early_usd")));
                });
    }

    private static LocalDate soonest(LocalDate one, LocalDate other) {
        return one.isBefore(other) ? one : other;
    }

    /** Dry mature cows on feed at another place. */
    private Optional<Steps.Step> custom() {
        return cows().flatMap(group -> {
            var first = group.firstCalving();
            long most = first.map(date -> ChronoUnit.DAYS.between(yard.day(), date.minusDays(NEAR_CALVING)) / 7)
                    .orElse(0L);
            int weeks = (int) Math.min(most, (long) Facts.value("custom_weeks"));
            return weeks < FEWEST_WEEKS
                    ? Optional.empty()
                    : Optional.of(new Steps.Step(
                            "custom",
                            "Send the mature cows out to be fed for the next %d weeks".formatted(weeks),
                            Steps.soon(yard.day(), "soon_days"),
                            r -> r,
                            Set.of(),
                            weeks,
                            r -> -matureCows(r) * (weeks * 7.0 * Facts.value("custom_usd") + Facts.value("haul_usd")),
                            "At $%.2f per head per day and $%.0f a head for the haul. Ask who pays for death loss and who answers for condition."
                                    .formatted(Facts.value("custom_usd"), Facts.value("haul_usd"))));
        });
    }

    private static int matureCows(Ranch ranch) {
        return ranch.groups().values().stream()
                .filter(g -> g.animals() == AnimalClass.MATURE_COW)
                .mapToInt(Group::head)
                .sum();
    }
}
