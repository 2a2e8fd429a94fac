package haywright.feeding.hay;

import haywright.cattle.herd.Group;
import haywright.feeding.hay.HayStep.What;
import haywright.feeding.hay.ShortOfHay.Asked;
import haywright.outlook.HayFacts;
import haywright.outlook.Yard;
import haywright.ration.Allotment;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** What to do where hay is short, each step after those before it, in the order that costs cattle and money least. */
final class HayLadder {
    /** Days for which cows are away where nobody said. */
    static final int A_MONTH = 30;

    private final Yard yard;
    private final HayEaters eaters;
    private final HayDates dates;
    private final HayTons tons;
    private final Asked asked;
    private final int days;
    private final List<HayStep> steps = new ArrayList<>();
    private final Map<String, Double> bought = new LinkedHashMap<>();
    private Allotment last;
    private HayPlan plan = HayPlan.NOTHING;

    /** @param byNeed before any step. @param asNow tons short as fed now */
    HayLadder(Yard yard, HayEaters eaters, HayDates dates, HayTons tons, Asked asked, Allotment byNeed, double asNow) {
        this.yard = yard;
        this.eaters = eaters;
        this.dates = dates;
        this.tons = tons;
        this.asked = asked;
        days = yard.daysToGrass().orElseThrow();
        last = byNeed;
        climb(asNow);
        last = HayPortions.of(eaters.with(plan), last);
    }

    List<HayStep> steps() {
        return List.copyOf(steps);
    }

    /** kg as fed of each feed of {@code BUY_LISTED}. */
    Map<String, Double> bought() {
        return Collections.unmodifiableMap(bought);
    }

    /** With all steps taken. */
    Allotment last() {
        return last;
    }

    /** All steps taken. */
    HayPlan plan() {
        return plan;
    }

    private double missing(Allotment of) {
        return tons.missing(of);
    }

    private Allotment solve(HayPlan doing) {
        return solve(yard, eaters, doing);
    }

    /** @throws Refused where nobody can be fed */
    static Allotment solve(Yard yard, HayEaters eaters, HayPlan doing) {
        return Allotment.leastMissing(eaters.with(doing))
                .orElseThrow(() -> new Refused(
                        "groups",
                        yard.ranch().name(),
                        "there is no way to feed these groups",
                        "Each group’s page says why."));
    }

    private void climb(double asNow) {
        double byNeed = missing(last);
        double short_ = Math.max(asNow, byNeed);
        if (!eaters.untested().isEmpty()) {
            steps.add(new HayStep(What.TEST, day(), short_, short_, 0, 0, null, score()));
        }
        if (!isHayForSale()) {
            steps.add(new HayStep(What.BUY_HAY, day(), short_, short_, 0, 0, null, score()));
        }
        if (asNow > byNeed) {
            steps.add(new HayStep(What.FEED_TO_NEED, day(), asNow, byNeed, 0, 0, null, score()));
        }
        double loss = yard.ranch().settings().hayLossPercent();
        int ringed = yard.ranch().groups().values().stream()
                .filter(eaters::canHaveRings)
                .mapToInt(Group::head)
                .sum();
        if (loss > HayFacts.value("ring_loss") && ringed > 0) {
            var cost = HayFacts.value("ring_price") * Math.ceil(ringed / HayFacts.value("ring_head"));
            step(What.CUT_WASTE, day(), HayPlan::withRings, 0, 0, cost);
        }
        buyListed();
        if (HayHeads.cows(yard).isEmpty()) {
            return;
        }
        sellOpen();
        step(What.STRAW, on(dates.straw()), HayPlan::withStraw, 0, 0, 0.0);
        if (!BunkTurns.isBunkTooShort(yard)) {
            step(What.LIMIT_HAY, on(dates.straw()), HayPlan::withLimit, 0, 0, 0.0);
        }
        away();
        sellBred();
    }

    /** Whether the ranch said how much hay or silage can be bought. */
    private boolean isHayForSale() {
        return tons.hay().stream().anyMatch(feed -> !feed.own());
    }

    private void buyListed() {
        if (isHayForSale()) {
            step(What.BUY_LISTED, day(), HayPlan::buying, 0, 0, 0.0);
            last.eaten().stream()
                    .flatMap(eaten -> eaten.feeds().entrySet().stream())
                    .filter(e -> !e.getKey().own() && e.getKey().isHayOrSilage())
                    .forEach(e -> bought.merge(e.getKey().feed().id(), e.getValue(), Double::sum));
        }
    }

    private void sellOpen() {
        int counted =
                HayHeads.cows(yard).stream().mapToInt(HayHeads::openOrLate).sum();
        int sold = Math.min(asked.sold() == null ? counted : asked.sold(), cows());
        var each = asked.dollarsSold();
        step(What.SELL_OPEN, on(dates.sold()), p -> p.selling(sold), sold, 0, each == null ? null : -each * sold);
    }

    private void away() {
        int away = asked.away() == null ? 0 : asked.away();
        int stay = asked.awayDays() == null ? A_MONTH : asked.awayDays();
        var each = asked.dollarsAway();
        step(
                What.ELSEWHERE,
                on(dates.away()),
                p -> p.sending(away, Math.min(stay, days)),
                away,
                away == 0 ? aCow(dates.away(), dates.away() + stay) : 0,
                each == null ? null : each * away * Math.min(stay, days));
    }

    /** As many bred cows as hay is still missing for, the fewest that do. */
    private void sellBred() {
        int most = cows() - plan.sold();
        int least = 0;
        int enough = missing(last) == 0 || asked.not().contains(What.SELL_BRED) ? 0 : most;
        while (enough - least > 1) {
            int half = (least + enough) / 2;
            if (missing(solve(plan.sellingBred(half))) == 0) {
                enough = half;
            } else {
                least = half;
            }
        }
        int sold = enough;
        var each = asked.dollarsSold();
        step(
                What.SELL_BRED,
                on(dates.bredSold()),
                p -> p.sellingBred(sold),
                sold,
                0,
                each == null ? null : -each * sold);
    }

    /**
     * One step more; it is not taken where it saves nothing.
     *
     * @param tonsAHead where nobody said how many
     * @param dollars beside the feed that is bought; null where nobody said
     */
    private void step(
            What what,
            LocalDate by,
            UnaryOperator<HayPlan> doing,
            int head,
            double tonsAHead,
            @Nullable Double dollars) {
        double before = missing(last);
        var next = doing.apply(plan);
        if (before == 0 || next.equals(plan) || asked.not().contains(what)) {
            steps.add(new HayStep(what, by, before, before, head, tonsAHead, null, score()));
            return;
        }
        var then = solve(next);
        double after = missing(then);
        if (before - after < HayTons.NOTHING) {
            steps.add(new HayStep(what, by, before, before, head, tonsAHead, null, score()));
            return;
        }
        Double aCow = dollars == null ? null : (Double) ((dollars + bought(then) - bought(last)) / kept(next));
        plan = next;
        last = then;
        double each = head == 0 ? 0 : (before - after) / head;
        steps.add(new HayStep(what, by, before, after, head, each, aCow, score()));
    }

    private @Nullable Double score() {
        var score = ScoreAtCalving.of(yard, eaters.with(plan), last);
        return score.isPresent() ? (Double) score.getAsDouble() : null;
    }

    /** Dollars for feed that does not lie on the ranch. */
    private static double bought(Allotment of) {
        return of.eaten().stream()
                .flatMap(eaten -> eaten.feeds().entrySet().stream())
                .filter(e -> !e.getKey().own())
                .mapToDouble(e -> e.getKey().pricePerKgAsFed() * e.getValue())
                .sum();
    }

    /** Tons of hay that one mature cow takes between two days as things are now done. */
    private double aCow(int from, int until) {
        return HayHeads.cows(yard).stream()
                .findFirst()
                .map(cow -> {
                    double dry = 0;
                    for (int t = 0; t < eaters.stretches(cow); t++) {
                        int begins = eaters.begins(cow, t);
                        int ends = begins + eaters.days(cow, t);
                        int here = Math.min(until, ends) - Math.max(from, begins);
                        dry += Math.max(0, here) * HayTons.hayADay(last, cow, t);
                    }
                    return tons.tons(dry);
                })
                .orElse(0.0);
    }

    private int cows() {
        return HayHeads.cows(yard).stream().mapToInt(Group::head).sum();
    }

    /** Cows and heifers that calve and are not sold; at least one, to divide by. */
    private int kept(HayPlan with) {
        int calve = yard.ranch().groups().values().stream()
                .filter(group -> group.animals().calves())
                .mapToInt(Group::head)
                .sum();
        return Math.max(1, calve - with.sold() - with.bredSold());
    }

    private LocalDate day() {
        return yard.day();
    }

    /** The last day before grass for one beyond it. */
    private LocalDate on(int after) {
        return dates.on(Math.min(after, days - 1));
    }
}
