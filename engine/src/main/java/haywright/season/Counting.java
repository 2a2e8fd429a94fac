package haywright.season;

import haywright.chance.Draws;
import haywright.quantity.Unit;
import haywright.season.given.Season;
import haywright.season.play.Plan;
import haywright.season.play.Played;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** Winters that were played, counted. */
final class Counting {
    private static final double TENTH = 0.1;
    private static final double HALF = 0.5;
    private static final int AGAIN = 2000;
    private static final double END = 0.05;
    private static final int TEN = 10;
    private static final double PERCENT = 100;

    private final Season season;
    private final Crew crew;
    private final boolean[] counts;

    /** What is known beside the winters that were played. */
    record Made(
            String hash,
            Plan plan,
            List<Double> hardness,
            boolean isChosenApart,
            List<WinterBook.Beside> besides,
            List<WinterBook.Alternative> alternatives,
            boolean isWhole) {}

    Counting(Season season, Crew crew) {
        this.season = season;
        this.crew = crew;
        counts = new boolean[season.feeds().size()];
        for (int f = 0; f < counts.length; f++) {
            counts[f] = season.feeds().get(f).isForage() && season.mayBeFed(f);
        }
    }

    /** Nothing is known of any winter: there is a plan, and no count. */
    WinterBook withoutWinters(String hash, Plan plan) {
        return book(new Made(hash, plan, BookMaker.UNCHOSEN, false, List.of(), List.of(), true), List.of(), List.of());
    }

    WinterBook book(Made made, List<Crew.Case> cases, List<Played> played) {
        int lasted = (int) played.stream().filter(Played::lasted).count();
        double share = played.isEmpty() ? 0 : (double) lasted / played.size();
        var range = range(cases, played);
        var costs = played.stream().mapToDouble(Played::cost).sorted().toArray();
        return new WinterBook(
                made.hash,
                season.today(),
                Objects.requireNonNull(season.ranch().turnout()),
                made.plan,
                new WinterBook.Choice(made.hardness),
                played.isEmpty() ? OptionalInt.empty() : OptionalInt.of((int) Math.round(WinterBook.OF * share)),
                range[0],
                range[1],
                played.size(),
                lasted,
                (int) cases.stream().map(Crew.Case::winter).distinct().count(),
                made.isChosenApart,
                new WinterBook.Cost(
                        Arrays.stream(costs).average().orElse(Double.NaN),
                        quantile(costs, TENTH),
                        quantile(costs, 1 - TENTH),
                        mean(played, Played::bought)),
                shortWinters(played),
                runsOut(played),
                kinds(played),
                made.besides,
                doubts(cases, played),
                made.alternatives,
                made.isWhole);
    }

    static double quantile(double[] sorted, double share) {
        return sorted.length == 0
                ? Double.NaN
                : sorted[(int) Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
    }

    static double mean(List<Played> played, ToDoubleFunction<Played> of) {
        return played.stream().mapToDouble(of).average().orElse(Double.NaN);
    }

    /** Dollars for feed, hay that was found included, less what was sold and what is left at turnout; nothing missed is in it. */
    static double spent(Season season, Played played) {
        double dollars = played.bought() - played.sold();
        for (int f = 0; f < season.feeds().size(); f++) {
            var feed = season.feeds().get(f);
            dollars -= feed.isTracked() ? feed.carryValue() * played.leftKg()[f] : 0;
        }
        return dollars;
    }

    /** Tons as fed that were missing: emergency hay and what the storm reserve was short of. */
    double tonsShort(Played played) {
        double hay = season.feeds().get(season.emergency()).priced().dryMatterPercent() / PERCENT;
        return Unit.TON.fromBase(played.emergencyKg() + played.stormShortKg() / hay);
    }

    /** Of hay and silage that may be fed: what waits for a test feeds nobody and is no part of any figure. */
    double tonsLeft(Played played) {
        double kg = 0;
        for (int f = 0; f < season.feeds().size(); f++) {
            kg += counts[f] ? played.leftKg()[f] : 0;
        }
        return Unit.TON.fromBase(kg);
    }

    /** Of 20, by drawing the winters of the record again: draws of one winter go together. */
    private static double[] range(List<Crew.Case> cases, List<Played> played) {
        var byWinter = new TreeMap<Integer, int[]>();
        for (int i = 0; i < played.size(); i++) {
            var counts = byWinter.computeIfAbsent(cases.get(i).winter(), w -> new int[2]);
            counts[0]++;
            counts[1] += played.get(i).lasted() ? 1 : 0;
        }
        if (byWinter.isEmpty()) {
            return new double[] {Double.NaN, Double.NaN};
        }
        var all = List.copyOf(byWinter.values());
        var draws = new Draws(1);
        var shares = new double[AGAIN];
        for (int i = 0; i < AGAIN; i++) {
            int of = 0;
            int lasted = 0;
            for (int k = 0; k < all.size(); k++) {
                var one = all.get(draws.below(all.size()));
                of += one[0];
                lasted += one[1];
            }
            shares[i] = WinterBook.OF * (double) lasted / of;
        }
        Arrays.sort(shares);
        return new double[] {quantile(shares, END), quantile(shares, 1 - END)};
    }

    /** Those whose draws fell short most often, as many of the record as the count of all draws has. */
    private List<WinterBook.ShortWinter> shortWinters(List<Played> played) {
        var byWinter = new TreeMap<Integer, List<Played>>();
        played.forEach(one ->
                byWinter.computeIfAbsent(one.winter(), w -> new ArrayList<>()).add(one));
        double share = 1 - mean(played, one -> one.lasted() ? 1 : 0);
        return byWinter.entrySet().stream()
                .filter(one -> fell(one.getValue()) > 0)
                .sorted(Comparator.comparingDouble((Map.Entry<Integer, List<Played>> one) -> -fell(one.getValue())))
                .limit(Math.round(share * byWinter.size()))
                .sorted(Map.Entry.comparingByKey())
                .map(one -> shortWinter(one.getKey(), one.getValue()))
                .toList();
    }

    private static double fell(List<Played> draws) {
        return mean(draws, one -> one.lasted() ? 0 : 1);
    }

    private WinterBook.ShortWinter shortWinter(int winter, List<Played> draws) {
        var failed = draws.stream().filter(one -> !one.lasted()).toList();
        var tons = failed.stream().mapToDouble(this::tonsShort).sorted().toArray();
        var from = failed.stream()
                .filter(one -> one.shortFrom() >= 0)
                .mapToInt(Played::shortFrom)
                .sorted()
                .toArray();
        return new WinterBook.ShortWinter(
                season.record().winters().get(winter).words(),
                draws.size(),
                draws.size() - failed.size(),
                quantile(tons, HALF),
                quantile(tons, TENTH),
                quantile(tons, 1 - TENTH),
                from.length == 0 ? Optional.empty() : Optional.of(season.begins(from[from.length / 2])));
    }

    private List<WinterBook.RunsOut> runsOut(List<Played> played) {
        var all = new ArrayList<WinterBook.RunsOut>();
        for (int f = 0; f < season.feeds().size(); f++) {
            int feed = f;
            var weeks = played.stream()
                    .mapToInt(one -> one.runsOut()[feed])
                    .filter(week -> week >= 0)
                    .sorted()
                    .toArray();
            if (weeks.length > 0) {
                all.add(new WinterBook.RunsOut(
                        season.feeds().get(f).id(),
                        season.feeds().get(f).name(),
                        TEN * (double) weeks.length / played.size(),
                        ends(weeks[(int) (TENTH * weeks.length)]),
                        ends(weeks[weeks.length / 2])));
            }
        }
        return all;
    }

    private LocalDate ends(int week) {
        return season.begins(week + 1).minusDays(1);
    }

    /**
     * By what all groups needed until grass, of the winters that were played: the third that needed least, the middle one and
     * the one that needed most, all draws of each. One draw alone says more of its own tons than of its weather.
     */
    private List<WinterBook.Kind> kinds(List<Played> played) {
        var ranked = Arrays.stream(crew.ranked())
                .filter(winter -> played.stream().anyMatch(one -> one.winter() == winter))
                .toArray();
        if (ranked.length == 0) {
            return List.of();
        }
        int third = (ranked.length + 2) / 3;
        int middle = (ranked.length - third) / 2;
        return List.of(
                kind("open", Arrays.copyOfRange(ranked, 0, third), played),
                kind("usual", Arrays.copyOfRange(ranked, middle, middle + third), played),
                kind("hard", Arrays.copyOfRange(ranked, ranked.length - third, ranked.length), played));
    }

    private WinterBook.Kind kind(String what, int[] winters, List<Played> played) {
        var all = played.stream()
                .filter(one -> Arrays.stream(winters).anyMatch(winter -> winter == one.winter()))
                .toList();
        return new WinterBook.Kind(
                what,
                season.record().winters().get(winters[winters.length / 2]).words(),
                mean(all, Played::cost),
                mean(all, Played::bought),
                mean(all, this::tonsShort),
                mean(all, this::tonsLeft),
                mean(all, Counting::calvingScore),
                (int) Math.round(mean(all, Played::late)));
    }

    /** Of the first group that calves ahead. */
    private static double calvingScore(Played played) {
        return Arrays.stream(played.calvingScores())
                .filter(score -> !Double.isNaN(score))
                .findFirst()
                .orElse(Double.NaN);
    }

    WinterBook.Beside beside(String what, List<Played> played) {
        return new WinterBook.Beside(
                what,
                played.size(),
                WinterBook.OF * mean(played, one -> one.lasted() ? 1 : 0),
                mean(played, Played::cost),
                mean(played, Played::bought),
                mean(played, this::tonsShort));
    }

    /** Shares of the variance of tons left less tons missing, each by itself: all are drawn independently. */
    private List<WinterBook.Doubt> doubts(List<Crew.Case> cases, List<Played> played) {
        if (played.size() < TEN) {
            return List.of();
        }
        var result = played.stream()
                .mapToDouble(one -> tonsLeft(one) - tonsShort(one))
                .toArray();
        var truths = cases.stream().map(crew::truth).toList();
        var causes = List.of(
                truths.stream().mapToDouble(t -> crew.needed(t.winter())).toArray(),
                truths.stream().mapToDouble(t -> tons(t.weight())).toArray(),
                truths.stream().mapToDouble(t -> energy(t.made().nem())).toArray(),
                truths.stream().mapToDouble(t -> t.animals()).toArray());
        var names = List.of("weather", "{tons}", "feed values", "cattle");
        var shares =
                causes.stream().mapToDouble(cause -> explained(cause, result)).toArray();
        double sum = Math.max(1, Arrays.stream(shares).sum());
        var all = new ArrayList<WinterBook.Doubt>();
        IntStream.range(0, shares.length)
                .forEach(i -> all.add(new WinterBook.Doubt(names.get(i), PERCENT * shares[i] / sum)));
        return all;
    }

    private double tons(double[] weight) {
        double kg = 0;
        for (int f = 0; f < weight.length; f++) {
            kg += counts[f] ? season.feeds().get(f).kg() * weight[f] : 0;
        }
        return kg;
    }

    private double energy(double[] nem) {
        double mcal = 0;
        for (int f = 0; f < nem.length; f++) {
            mcal += counts[f]
                    ? season.feeds().get(f).kg() * season.feeds().get(f).eaten() * nem[f]
                    : 0;
        }
        return mcal;
    }

    /** Squared correlation. */
    private static double explained(double[] cause, double[] result) {
        double a = Arrays.stream(cause).average().orElse(0);
        double b = Arrays.stream(result).average().orElse(0);
        double both = 0;
        double one = 0;
        double other = 0;
        for (int i = 0; i < cause.length; i++) {
            both += (cause[i] - a) * (result[i] - b);
            one += (cause[i] - a) * (cause[i] - a);
            other += (result[i] - b) * (result[i] - b);
        }
        return one > 0 && other > 0 ? both * both / (one * other) : 0;
    }
}
