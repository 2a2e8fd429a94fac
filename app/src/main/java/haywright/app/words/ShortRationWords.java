package haywright.app.words;

import haywright.feeding.hay.HayStep.What;
import haywright.feeding.hay.ShortOfHay;
import haywright.feeding.hay.ShortOfHay.Fed;
import haywright.feeding.hay.ShortOfHay.LeastHarm;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.outlook.HayFacts;
import haywright.quantity.Unit;
import haywright.ration.PricedFeed;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What each group gets where hay is short, as page and command say it. */
public final class ShortRationWords {
    /** Pounds a head below which a feed is not said; a mineral is. */
    private static final double LEAST_POUNDS = 0.5;

    /** Points below which a lost score is not said. */
    private static final double LEAST_SCORE = 0.1;

    /** Pounds of grain that nobody is hurt by on the first day. */
    private static final double BEGIN_POUNDS = 2;

    /** Of a tenth of a pound, for what is one but for its last digit. */
    private static final double ROUND = 1e-6;

    private ShortRationWords() {}

    /**
     * {@code hay 10.3 lb (8.2 lb Prairie hay, 2.1 lb Meadow hay), Wheat straw 4.5 lb, loose mineral 2.0 oz}: all hay as one with
     * its lots, all silage, and all mineral in ounces.
     */
    private static String fed(Fed fed) {
        var kg = new LinkedHashMap<String, Double>();
        var lots = new LinkedHashMap<String, List<Map.Entry<PricedFeed, Double>>>();
        double mineral = 0;
        for (var one : fed.feeds().entrySet()) {
            if (one.getKey().feed().feedClass() == FeedClass.MINERAL) {
                mineral += one.getValue();
            } else {
                kg.merge(called(one.getKey()), one.getValue(), Double::sum);
                lots.computeIfAbsent(called(one.getKey()), name -> new ArrayList<>())
                        .add(one);
            }
        }
        var says = kg.entrySet().stream()
                .filter(e -> Unit.POUND.fromBase(e.getValue()) >= LEAST_POUNDS)
                .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
                .map(e -> "%s %s%s"
                        .formatted(
                                e.getKey(),
                                pounds(lots.getOrDefault(e.getKey(), List.of()), e.getValue()),
                                of(fed, lots.getOrDefault(e.getKey(), List.of()))))
                .collect(Collectors.toCollection(ArrayList::new));
        if (mineral > 0) {
            says.add("loose mineral %s oz".formatted(Show.number(Unit.OUNCE.fromBase(mineral), 1)));
        }
        return String.join(", ", says) + (fed.inTwoFeedings() ? "; grain in two feedings" : "");
    }

    /** To a tenth; grain never over it: what is at a limit stays at it in print. */
    private static String pounds(List<Map.Entry<PricedFeed, Double>> of, double kg) {
        boolean isGrain = of.stream().anyMatch(one -> one.getKey().feed().feedClass() == FeedClass.GRAIN);
        return isGrain ? grain(kg) : Show.pounds(kg);
    }

    private static String grain(double kg) {
        return Show.pounds(Unit.POUND.toBase(Math.floor(Unit.POUND.fromBase(kg) * 10 + ROUND) / 10));
    }

    /** The lots of hay or silage, the most first; of anything else what is put out on the days that have the most. */
    private static String of(Fed fed, List<Map.Entry<PricedFeed, Double>> lots) {
        if (lots.stream().anyMatch(lot -> lot.getKey().isHayOrSilage())) {
            if (lots.size() == 1) {
                return " (%s)".formatted(lots.get(0).getKey().feed().name());
            }
            return lots.stream()
                    .filter(lot -> Unit.POUND.fromBase(lot.getValue()) >= LEAST_POUNDS)
                    .sorted(Map.Entry.<PricedFeed, Double>comparingByValue().reversed())
                    .map(lot -> "%s %s"
                            .formatted(
                                    pounds(List.of(lot), lot.getValue()),
                                    lot.getKey().feed().name()))
                    .collect(Collectors.joining(", ", " (", ")"));
        }
        return lots.stream()
                .map(lot -> fed.most().get(lot.getKey()))
                .filter(Objects::nonNull)
                .findFirst()
                .map(most -> " on average, %s from %s on".formatted(grain(most.kg()), Show.day(most.from())))
                .orElse("");
    }

    /** How grain is begun; empty where they get most of it already. Common practice, no source. */
    private static String stepIn(Fed fed) {
        double most = Unit.POUND.fromBase(fed.grain());
        double begin = Math.max(BEGIN_POUNDS, Math.floor(Unit.POUND.fromBase(fed.grainNow())));
        if (most - begin < LEAST_POUNDS) {
            return "";
        }
        long steps = (long) Math.ceil(most - begin);
        return "Step grain in before: %s lb the first days, then 1 lb more every %s, the last step to %s"
                .formatted(
                        Show.number(begin, 0),
                        Show.count(Math.max(1, HayFacts.days("change_over") / steps), "day"),
                        grain(fed.grain()));
    }

    /** Protein of dry matter, percent. */
    private static String protein(Fed fed) {
        double dry = 0;
        double protein = 0;
        for (var one : fed.feeds().entrySet()) {
            double kg = one.getKey().eaten(one.getValue());
            dry += kg;
            protein += kg * one.getKey().feed().composition().value(Analyte.CP).orElse(0);
        }
        return dry > 0 ? "%s %% protein on dry matter".formatted(Show.number(protein / dry, 1)) : "";
    }

    /** By what the amounts have to be judged by hand; empty where the loss is the ranch’s own. */
    public static String loss(ShortOfHay hay) {
        boolean rings = hay.steps().stream().anyMatch(step -> step.what() == What.CUT_WASTE && step.saves() > 0);
        return rings
                ? "Hay in rings is counted with %s %% lost, not %s %%: without rings put out more, and set the loss under settings before you judge a line on the bench."
                        .formatted(
                                Show.number(HayFacts.value("ring_loss"), 0),
                                Show.number(hay.ranch().settings().hayLossPercent(), 0))
                : "";
    }

    /** What is fed, in which days, and what is outside of usual limits on purpose. */
    public static List<String> line(Fed fed) {
        return Stream.of(fed(fed), days(fed), protein(fed), below(fed), stepIn(fed))
                .filter(text -> !text.isEmpty())
                .toList();
    }

    /** {@code Dec 29 to Mar 22, 84 days}: so that tons come out with a pencil. */
    private static String days(Fed fed) {
        return "%s to %s, %s"
                .formatted(
                        Show.day(fed.from()),
                        Show.day(fed.until()),
                        Show.count(fed.from().until(fed.until(), ChronoUnit.DAYS) + 1, "day"));
    }

    /** What is knowingly below usual limits, or beyond; empty where nothing is. */
    private static String below(Fed fed) {
        var says = new LinkedHashMap<String, Double>();
        fed.below().forEach((row, share) -> says.merge(limit(row), share, Math::max));
        return says.isEmpty()
                ? ""
                : "On purpose outside the usual limits: %s"
                        .formatted(says.entrySet().stream()
                                .map(e -> e.getKey().formatted(Show.number(100 * e.getValue(), 0)))
                                .collect(Collectors.joining(", ")));
    }

    private static String limit(String row) {
        return switch (row) {
            case "intake", "forage_floor" -> "%s %% short of what keeps them full";
            case "forage", "forage_least" -> "%s %% short of the least forage";
            case "grain_careful", "grain" -> "grain %s %% over what is usual beside hay";
            case "straw", "straw_share" -> "straw %s %% over its usual share";
            case "ca_p_low" -> "calcium to phosphorus %s %% low";
            case "cp_floor" -> "protein for the rumen %s %% low";
            default -> "%s %% off in " + row.replace('_', ' ');
        };
    }

    private static String called(PricedFeed feed) {
        return feed.feed().feedClass().isHay()
                ? "hay"
                : feed.isHayOrSilage() ? "silage" : feed.feed().name();
    }

    /** Empty where everything is met. */
    public static String unmet(LeastHarm least) {
        var says = new LinkedHashMap<String, Double>();
        least.unmet().forEach((row, share) -> says.merge(need(row), share, Math::max));
        var notFed = least.notFed().isEmpty()
                ? ""
                : "Without the %s you asked for: it may not be fed. ".formatted(String.join(", ", least.notFed()));
        return notFed
                + says.entrySet().stream()
                        .map(e -> "%s %% short of %s".formatted(Show.number(100 * e.getValue(), 0), e.getKey()))
                        .collect(Collectors.joining(", "))
                + (least.scoreLost() >= LEAST_SCORE
                        ? "; in milk they lose %s of a score by turnout".formatted(Show.number(least.scoreLost(), 1))
                        : "")
                + (least.isStrawNow() ? " They get straw only because they do now." : "");
    }

    private static String need(String row) {
        return switch (row) {
            case "nem", "nem_two_feedings" -> "energy";
            case "growth" -> "the gain you want";
            case "cp", "mp", "mp_rumen" -> "protein";
            case "forage_floor", "forage_least", "hay_least", "intake", "eaten_least" -> "feed";
            default -> row.toLowerCase(Locale.ROOT);
        };
    }
}
