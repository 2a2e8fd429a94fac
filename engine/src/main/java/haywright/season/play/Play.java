package haywright.season.play;

import haywright.forage.FeedClass;
import haywright.season.given.Emergency;
import haywright.season.given.Facts;
import haywright.season.given.Forecast;
import haywright.season.given.NeedRecord;
import haywright.season.given.Prices;
import haywright.season.given.Season;
import haywright.season.given.SeasonFeed;
import haywright.season.given.Stage;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** One winter while it is played. */
final class Play {
    private static final double USED_UP = 0.005;

    private final Season season;
    private final Prices prices;
    private final List<List<Judged>> judged;
    private final Truth truth;
    private final Forecast forecast;
    private final Ahead ahead;
    private final Ledger ledger;
    private final Learned learned;
    private final double[] canBuy;
    private final Known.Face[] face;
    private final double[] reserve;
    private final double[] calving;
    private final int[] runsOut;
    private final List<Played.Week> weeks = new ArrayList<>();
    private double cost;
    private double bought;
    private double sold;
    private double emergency;
    private double[] boughtKg = new double[0];
    private double storm;
    private final boolean[] isReserve;
    private int shortFrom = -1;

    Play(Season season, Prices prices, List<List<Judged>> judged, Truth truth, Forecast forecast) {
        this.season = season;
        this.prices = prices;
        this.judged = judged;
        reserve = Judge.reserves(season);
        calving = new double[reserve.length];
        this.truth = truth;
        this.forecast = forecast;
        ahead = Ahead.known(season, forecast, truth);
        face = Judge.faces(season);
        isReserve = season.reserves();
        canBuy = season.feeds().stream().mapToDouble(SeasonFeed::canBuy).toArray();
        var kg = new double[canBuy.length];
        Arrays.setAll(kg, f -> season.feeds().get(f).kg() * truth.weight()[f]);
        ledger = new Ledger(kg);
        learned = new Learned(season, truth);
        runsOut = new int[kg.length];
        Arrays.fill(runsOut, -1);
        Arrays.fill(calving, Double.NaN);
    }

    Played to(Policy policy) {
        for (int week = 0; week < season.allWeeks(); week++) {
            int t = week;
            int[] days = season.eaters().stream()
                    .mapToInt(eater -> eater.fed(t, ahead.late()))
                    .toArray();
            week(week, days, policy);
        }
        for (int f = 0; f < canBuy.length; f++) {
            if (season.feeds().get(f).isTracked()) {
                cost -= season.feeds().get(f).carryValue() * ledger.kg(f);
            }
        }
        return played();
    }

    private void week(int week, int[] days, Policy policy) {
        atCalving(week);
        var known = new Known(
                week,
                days,
                learned.stock(ledger),
                face.clone(),
                canBuy.clone(),
                learned.reserve(),
                week == 0 ? 0 : forecast.departs(truth.winter(), week - 1),
                ahead.hard()[week],
                Math.max(0, Season.DAYS_A_WEEK * (week - season.weeks()) + 1),
                learned.lean());
        boughtKg = new double[canBuy.length];
        double before = bought;
        boolean anybody = Arrays.stream(days).anyMatch(d -> d > 0);
        var decision = anybody
                ? policy.next(known)
                : new Decision(new double[reserve.length][canBuy.length], new double[canBuy.length]);
        for (int f = 0; f < canBuy.length; f++) {
            ledger.lose(f, season.feeds().get(f).lossADay() * Season.DAYS_A_WEEK);
            buy(week, f, decision.buy()[f], true);
            double dollars = season.feeds().get(f).meant().sells() * ledger.sell(f, decision.sell()[f]);
            cost -= dollars;
            sold += dollars;
        }
        var fed = new double[canBuy.length];
        var eaten = fed(week, days, decision, fed);
        var nem = new double[reserve.length];
        for (int e = 0; e < reserve.length; e++) {
            eats(week, e, days[e], eaten[e]);
            nem[e] = ahead.nem()[e][week];
        }
        if (anybody) {
            faces(fed);
        }
        stormReserve(week);
        for (int f = 0; f < canBuy.length; f++) {
            if (runsOut[f] < 0
                    && season.feeds().get(f).kg() > 0
                    && ledger.kg(f) < USED_UP * season.feeds().get(f).kg()) {
                runsOut[f] = week;
            }
        }
        learned.after(week, days, eaten, reserve);
        weeks.add(new Played.Week(known, decision, fed, nem, reserve.clone(), boughtKg, bought - before));
    }

    private void atCalving(int week) {
        for (int e = 0; e < reserve.length; e++) {
            var body = season.eaters().get(e).body();
            int head = season.eaters().get(e).head();
            if (body.isPresent()) {
                if (body.get().calvingDay() > 0 && Blocks.calvingWeek(body.get()) == week) {
                    calving[e] = body.get().score(reserve[e]);
                    cost += week == 0 ? 0 : head * body.get().calvingPrice() * Math.max(0, -reserve[e]);
                }
                if (week == season.weeks()) {
                    cost += head
                            * body.get().turnoutPrice()
                            * Math.max(0, -body.get().milk() - reserve[e]);
                }
            }
        }
    }

    /** @param isOrder whether a plan asks for it; else it is needed now */
    private void buy(int week, int f, double wanted, boolean isOrder) {
        var feed = season.feeds().get(f);
        if (!(wanted > 0) || !feed.isTracked()) {
            return;
        }
        var supply = feed.supply();
        double aWeek = supply.aWeek() - boughtKg[f];
        double kg = supply.isByLoad()
                ? supply.comes(isOrder ? supply.ordered(wanted) : supply.needed(wanted), aWeek, canBuy[f])
                : Math.max(0, Math.min(wanted, Math.min(aWeek, canBuy[f])));
        if (kg > 0) {
            canBuy[f] -= kg;
            ledger.buy(f, kg);
            boughtKg[f] += kg;
            double dollars = kg * prices.buy(f, week, ahead.hard()[week]) + supply.notFull(kg);
            cost += dollars;
            bought += dollars;
        }
    }

    /** kg of dry matter that each group eats: what was decided, as far as it lies there, and then the next of its kind. */
    private double[][] fed(int week, int[] days, Decision decision, double[] fed) {
        var eaten = new double[reserve.length][];
        for (int e = 0; e < eaten.length; e++) {
            eaten[e] = wanted(week, e, days[e], decision.eaten()[e]);
        }
        var missing = new double[canBuy.length];
        for (int f = 0; f < canBuy.length; f++) {
            var feed = season.feeds().get(f);
            double wanted = 0;
            for (var one : eaten) {
                wanted += feed.priced().putOut(one[f]);
            }
            if (wanted <= 0) {
                continue;
            }
            if (!feed.isTracked()) {
                pay(f, wanted);
                fed[f] += wanted;
                continue;
            }
            // what is for sale is bought as it is needed
            buy(week, f, wanted - ledger.kg(f), false);
            double taken = ledger.take(f, wanted);
            fed[f] += taken;
            missing[f] = taken < wanted * (1 - 1e-9) ? 1 - taken / wanted : 0;
        }
        // only then: what takes the place of one lot is no part of what was decided of another, and is put out once
        var decided = new double[eaten.length][];
        Arrays.setAll(decided, e -> eaten[e].clone());
        for (int f = 0; f < missing.length; f++) {
            for (int e = 0; e < eaten.length && missing[f] > 0; e++) {
                double kg = decided[e][f] * missing[f];
                eaten[e][f] -= kg;
                replace(week, e, f, kg, eaten[e], fed);
            }
        }
        return eaten;
    }

    private double[] wanted(int week, int e, int days, double[] decided) {
        var kg = decided.clone();
        var eater = season.eaters().get(e);
        if (eater.isFreeChoice() && days > 0) {
            double times = judged.get(e)
                    .get(week)
                    .appetite(
                            kg,
                            (double) eater.head() * days,
                            new NeedRecord.Week(ahead.nem()[e][week], ahead.factor()[e][week]));
            Arrays.setAll(kg, f -> kg[f] * times);
        }
        return kg;
    }

    private void pay(int f, double kgAsFed) {
        var feed = season.feeds().get(f);
        double dollars = kgAsFed * feed.priced().costPerKgEaten() * feed.eaten();
        cost += dollars;
        bought += dollars;
        boughtKg[f] += kgAsFed;
        if (feed.isEmergency()) {
            emergency += kgAsFed;
        }
    }

    /** The lot that most lies there of among those of its kind, then of any hay or silage; then emergency hay. */
    private void replace(int week, int e, int gone, double missing, double[] eaten, double[] fed) {
        var kind = season.feeds().get(gone).priced().feed().feedClass();
        var stage = season.eaters().get(e).stages().get(week);
        double left = missing;
        while (left > 1e-9) {
            int best = -1;
            for (int f : stage.feeds()) {
                var feed = season.feeds().get(f);
                boolean same = feed.priced().feed().feedClass() == kind;
                if (f != gone
                        && feed.isTracked()
                        && (same || feed.isForage())
                        && ledger.kg(f) > 0
                        && (best < 0 || better(f, best, same, kind))) {
                    best = f;
                }
            }
            int f = best < 0 ? season.emergency() : best;
            var feed = season.feeds().get(f);
            double wanted = feed.priced().putOut(left);
            double taken = best < 0 ? wanted : ledger.take(f, wanted);
            if (best < 0) {
                pay(f, wanted);
            }
            fed[f] += taken;
            eaten[f] += feed.priced().eaten(taken);
            left -= best >= 0 && ledger.kg(f) > 0 ? left : feed.priced().eaten(taken);
        }
    }

    private boolean better(int f, int than, boolean same, FeedClass kind) {
        boolean other = season.feeds().get(than).priced().feed().feedClass() == kind;
        return same != other ? same : ledger.kg(f) > ledger.kg(than);
    }

    private void eats(int week, int e, int days, double[] kg) {
        var eater = season.eaters().get(e);
        double headDays = (double) eater.head() * days;
        if (days == 0) {
            thin(e);
            return;
        }
        var of = judged.get(e).get(week);
        var need = new NeedRecord.Week(ahead.nem()[e][week], ahead.factor()[e][week]);
        cost += of.missed(kg, headDays, truth.made(), need);
        double u = Judged.sum(truth.made().nem(), kg);
        var growth = of.stage().growth();
        if (growth.isPresent()) {
            double v = Judged.sum(truth.made().neg(), kg);
            double missed = Stage.Growth.missed(
                    u, v, headDays * need.nem(), headDays * growth.get().neg());
            cost += missed * Facts.value("unmet_gain");
            return;
        }
        double over = u - headDays * need.nem();
        if (eater.body().isEmpty()) {
            cost += Math.max(0, -over) * Facts.value("unmet_need") / of.stage().nem();
            return;
        }
        var change = Condition.change(eater, week, days, over);
        reserve[e] += change.perHead();
        cost += eater.head() * change.guarded() * Facts.value("loss_near_calving")
                + change.missed() * Facts.value("unmet_need") / of.stage().nem();
        thin(e);
    }

    private void thin(int e) {
        var eater = season.eaters().get(e);
        eater.body()
                .ifPresent(body -> cost += eater.head() * body.thinPrice() * Math.max(0, body.least() - reserve[e]));
    }

    /** What comes off an open face and is not fed spoils. */
    private void faces(double[] fed) {
        for (int f = 0; f < fed.length; f++) {
            double least = season.feeds().get(f).meant().faceADay() * Season.DAYS_A_WEEK;
            if (least > 0 && (fed[f] > 0 || face[f] == Known.Face.OPEN)) {
                face[f] = Known.Face.OPEN;
                ledger.spoil(f, Math.max(0, least - fed[f]));
            }
        }
    }

    private void stormReserve(int week) {
        double dry = 0;
        for (int f = 0; f < canBuy.length; f++) {
            var feed = season.feeds().get(f);
            if (feed.isTracked() && isReserve[f]) {
                dry += ledger.kg(f) * feed.priced().dryMatterPercent() / 100;
            }
            if (feed.meant().keep() > 0) {
                cost += prices.kept(f) * Math.max(0, prices.keep(f, week + 1) - ledger.kg(f));
            }
        }
        double missing = Math.max(0, prices.stormReserve(week + 1) - dry);
        cost += missing * prices.storm();
        storm = Math.max(storm, missing);
        if (shortFrom < 0 && (missing > Emergency.KG || emergency > Emergency.KG)) {
            shortFrom = week;
        }
    }

    private Played played() {
        boolean kept = true;
        var end = new double[reserve.length];
        for (int e = 0; e < end.length; e++) {
            var body = season.eaters().get(e).body();
            end[e] = body.isPresent() ? body.get().score(reserve[e]) : Double.NaN;
            if (body.isPresent() && !Double.isNaN(calving[e])) {
                double wanted = Math.min(
                        body.get().target(), body.get().score(body.get().start()));
                kept &= calving[e] >= wanted - Facts.value("kept_score");
            }
        }
        var left = new double[canBuy.length];
        long open = 0;
        for (int f = 0; f < left.length; f++) {
            left[f] = ledger.kg(f);
            open += Math.abs(ledger.open(f));
        }
        return new Played(
                truth.winter(),
                cost,
                bought,
                sold,
                emergency,
                shortFrom,
                storm,
                calving,
                end,
                kept,
                left,
                runsOut,
                (int) ahead.late(),
                open,
                List.copyOf(weeks));
    }
}
