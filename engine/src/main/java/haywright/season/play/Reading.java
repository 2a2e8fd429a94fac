package haywright.season.play;

import haywright.lp.Basis;
import haywright.lp.Optimum;
import haywright.season.given.Season;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.IntStream;

/** An optimum read as a plan. What comes after this week is told of the middle scenario. */
public record Reading(Season season, Blocks blocks, int scenarios, Optimum optimum, Basis basis) {
    /** Share of a lot below which it counts as used up. */
    private static final double NOTHING = 0.005;

    /** Share of a need below which it is met. */
    private static final double UNMET = 0.01;

    public Plan plan(PlanProgram of) {
        int s = scenarios / 2;
        double emergency = 0;
        double missed = 0;
        double storm = 0;
        for (int k = 0; k < blocks.count(); k++) {
            for (int e = 0; e < season.eaters().size(); e++) {
                int column = of.feedColumn(s, k, e, season.emergency());
                double eaten = column < 0 ? 0 : optimum.value(column);
                emergency += season.feeds().get(season.emergency()).priced().putOut(eaten);
                missed += of.missed(optimum, s, k, e);
            }
            storm = Math.max(storm, optimum.value(of.stormColumn(s, k)));
        }
        return new Plan(
                first(of),
                of.cost(optimum),
                runsOut(of, s),
                buys(of, s),
                spoils(of, s),
                worth(of),
                emergency,
                of.unmet(optimum, UNMET),
                missed,
                storm,
                IntStream.range(0, blocks.count())
                        .mapToObj(k -> new Plan.Stretch(
                                season.begins(blocks.from(k)), season.begins(blocks.to(k)), decision(of, s, k)))
                        .toList(),
                basis);
    }

    private Decision first(PlanProgram of) {
        return decision(of, 0);
    }

    /** What is done in a block, of the one scenario. */
    public Decision decision(PlanProgram of, int k) {
        return decision(of, 0, k);
    }

    private Decision decision(PlanProgram of, int s, int k) {
        var eaten = new double[season.eaters().size()][season.feeds().size()];
        var buy = new double[season.feeds().size()];
        var sell = new double[buy.length];
        for (int f = 0; f < buy.length; f++) {
            for (int e = 0; e < eaten.length; e++) {
                int column = of.feedColumn(s, k, e, f);
                eaten[e][f] = column < 0 ? 0 : Math.max(0, optimum.value(column));
            }
            int column = of.buyColumn(s, k, f);
            buy[f] = column < 0 ? 0 : Math.max(0, optimum.value(column));
            int sold = of.sellColumn(s, k, f);
            sell[f] = sold < 0 ? 0 : Math.max(0, optimum.value(sold));
        }
        return new Decision(eaten, buy, sell);
    }

    private Map<String, Double> buys(PlanProgram of, int s) {
        var buys = new LinkedHashMap<String, Double>();
        for (int f = 0; f < season.feeds().size(); f++) {
            double kg = 0;
            for (int k = 0; k < blocks.count(); k++) {
                int column = of.buyColumn(s, k, f);
                kg += column < 0 ? 0 : optimum.value(column);
            }
            if (kg > 1) {
                buys.put(season.feeds().get(f).id(), kg);
            }
        }
        return buys;
    }

    private Map<String, Double> spoils(PlanProgram of, int s) {
        var spoils = new LinkedHashMap<String, Double>();
        for (int f = 0; f < season.feeds().size(); f++) {
            double kg = 0;
            for (int k = 0; k < blocks.count(); k++) {
                int column = of.spoilColumn(s, k, f);
                kg += column < 0 ? 0 : optimum.value(column);
            }
            if (kg > 1) {
                spoils.put(season.feeds().get(f).id(), kg);
            }
        }
        return spoils;
    }

    private Map<String, Double> worth(PlanProgram of) {
        var worth = new LinkedHashMap<String, Double>();
        for (int f = 0; f < season.feeds().size(); f++) {
            var feed = season.feeds().get(f);
            if (feed.isTracked()) {
                double kept = 1 - feed.lossADay() * Season.DAYS_A_WEEK;
                worth.put(feed.id(), Math.max(0, -kept * optimum.dual(of.openingRow(f))));
            }
        }
        return worth;
    }

    private Map<String, LocalDate> runsOut(PlanProgram of, int s) {
        var dates = new LinkedHashMap<String, LocalDate>();
        for (int f = 0; f < season.feeds().size(); f++) {
            var feed = season.feeds().get(f);
            double before = feed.kg();
            if (!(before > 0)) {
                continue;
            }
            for (int k = 0; k < blocks.count(); k++) {
                double left = optimum.value(of.stockColumn(s, k, f));
                if (left < NOTHING * feed.kg() && before >= NOTHING * feed.kg()) {
                    dates.put(feed.id(), season.begins(blocks.to(k)).minusDays(1));
                }
                before = left;
            }
        }
        return dates;
    }
}
