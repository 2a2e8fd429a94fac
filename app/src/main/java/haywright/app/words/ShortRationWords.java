package haywright.app.words;

import haywright.cattle.herd.Group;
import haywright.feeding.hay.HayRow;
import haywright.feeding.hay.HayStep.What;
import haywright.feeding.hay.ShortOfHay;
import haywright.feeding.hay.ShortOfHay.LeastHarm;
import haywright.forage.Analyte;
import haywright.outlook.HayFacts;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.ration.PricedFeed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What each group gets where hay is short, as page and command say it. */
public final class ShortRationWords {
    /** Points below which a lost score is not said. */
    private static final double LEAST_SCORE = 0.1;

    private ShortRationWords() {}

    /**
     * {@code hay 10.3 lb (8.2 lb Prairie hay, 2.1 lb Meadow hay), Wheat straw 4.5 lb, loose mineral 2.0 oz}: all hay as one with
     * its lots, all silage, and all mineral in ounces.
     */
    public static String fed(HayRow row) {
        var lots = new LinkedHashMap<String, List<Map.Entry<PricedFeed, Double>>>();
        double mineral = 0;
        for (var one : row.feeds().entrySet()) {
            if (HayRow.isInOunces(one.getKey())) {
                mineral += HayRow.ounces(one.getValue());
            } else if (HayRow.pounds(one.getValue()) > 0) {
                lots.computeIfAbsent(called(one.getKey()), name -> new ArrayList<>())
                        .add(one);
            }
        }
        var says = lots.entrySet().stream()
                .sorted(Comparator.comparingDouble(e -> -sum(e.getValue())))
                .map(e -> "%s %s lb%s".formatted(e.getKey(), Show.number(sum(e.getValue()), 1), of(e.getValue())))
                .collect(Collectors.toCollection(ArrayList::new));
        if (mineral > 0) {
            says.add("loose mineral %s oz".formatted(Show.number(mineral, 1)));
        }
        return String.join(", ", says) + (row.inTwoFeedings() ? "; grain in two feedings" : "");
    }

    private static double sum(List<Map.Entry<PricedFeed, Double>> lots) {
        return lots.stream().mapToDouble(lot -> HayRow.pounds(lot.getValue())).sum();
    }

    /** The lots of hay or silage, the most first. */
    private static String of(List<Map.Entry<PricedFeed, Double>> lots) {
        if (lots.stream().noneMatch(lot -> lot.getKey().isHayOrSilage())) {
            return "";
        }
        if (lots.size() == 1) {
            return " (%s)".formatted(lots.get(0).getKey().feed().name());
        }
        return lots.stream()
                .sorted(Map.Entry.<PricedFeed, Double>comparingByValue().reversed())
                .map(lot -> "%s lb %s"
                        .formatted(
                                Show.number(HayRow.pounds(lot.getValue()), 1),
                                lot.getKey().feed().name()))
                .collect(Collectors.joining(", ", " (", ")"));
    }

    /** {@code 131 head × 11.2 lb × 36 days = 26.4 tons of hay}; empty where they get none. */
    static String pencil(HayRow row) {
        var hay = row.feeds().entrySet().stream()
                .filter(e -> e.getKey().isHayOrSilage())
                .toList();
        double pounds = sum(hay);
        double tons = hay.stream().mapToDouble(e -> row.tons(e.getKey())).sum();
        return pounds == 0
                ? ""
                : "%s head × %s lb × %s = %s %s of %s"
                        .formatted(
                                Show.number(row.head(), 0),
                                Show.number(pounds, 1),
                                Show.count(row.days(), "day"),
                                Show.number(Measures.ofTons(tons), 1),
                                Measures.tons(),
                                hay.stream()
                                        .map(e -> e.getKey().feed().feedClass().isHay() ? "hay" : "silage")
                                        .distinct()
                                        .sorted()
                                        .collect(Collectors.joining(" and ")));
    }

    /** {@code Prairie hay 200.4 of 201 tons}: what all rows come to. */
    public static List<String> used(ShortOfHay hay) {
        return hay.used().stream()
                .map(one -> "%s: %s%s"
                        .formatted(
                                one.feed().feed().name(),
                                HayRow.isInOunces(one.feed())
                                        ? Show.number(Unit.POUND.fromBase(Unit.TON.toBase(one.tons())), 0) + " lb"
                                        : Show.number(Measures.ofTons(one.tons()), 1) + " " + Measures.tons(),
                                Double.isFinite(one.tonsThereAre())
                                        ? " of " + Show.number(Measures.ofTons(one.tonsThereAre()), 1)
                                        : ""))
                .toList();
    }

    /** Protein of dry matter, percent. */
    private static String protein(HayRow fed) {
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
        boolean rings = isTaken(hay, What.CUT_WASTE);
        if (!rings
                && isTaken(hay, What.LIMIT_HAY)
                && HayFacts.value("day_loss") < hay.ranch().settings().hayLossPercent()) {
            return "Limited hay is counted with %s %% lost, put out a day at a time, other hay with %s %%."
                    .formatted(
                            Show.number(HayFacts.value("day_loss"), 0),
                            Show.number(hay.ranch().settings().hayLossPercent(), 0));
        }
        return rings
                ? "Hay in rings is counted with %s %% lost%s, not %s %%: without rings put out more, and set the loss under settings before you judge a line under Rations."
                        .formatted(
                                Show.number(HayFacts.value("ring_loss"), 0),
                                isTaken(hay, What.LIMIT_HAY)
                                        ? ", limited hay with %s %%"
                                                .formatted(Show.number(HayFacts.value("day_loss"), 0))
                                        : "",
                                Show.number(hay.ranch().settings().hayLossPercent(), 0))
                : "";
    }

    private static boolean isTaken(ShortOfHay hay, What what) {
        return hay.steps().stream().anyMatch(step -> step.what() == what && step.saves() > 0);
    }

    /** What comes with it: tons, protein, what is outside of usual limits on purpose, and what to mind. */
    public static List<String> beside(HayRow row, Ranch ranch) {
        return Stream.concat(Stream.of(pencil(row), protein(row), below(row)), RowMinds.of(row, ranch))
                .filter(text -> !text.isEmpty())
                .toList();
    }

    /** {@code Dec 29 to Mar 22, 84 days, not calved yet}: so that tons come out with a pencil. */
    public static String when(Group group, HayRow row) {
        return "%s to %s, %s%s"
                .formatted(
                        Show.day(row.from()),
                        Show.day(row.until()),
                        Show.count(row.days(), "day"),
                        group.calving().isEmpty() ? "" : row.inMilk() ? ", calved" : ", not calved yet");
    }

    /** What is knowingly below usual limits, or beyond; empty where nothing is. */
    private static String below(HayRow row) {
        var says = new LinkedHashMap<String, Double>();
        row.below().forEach((limit, share) -> says.merge(limit(limit), share, Math::max));
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
                + least.stops().stream()
                        .map(out -> " They get it now: %s.".formatted(out.why()))
                        .collect(Collectors.joining());
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
