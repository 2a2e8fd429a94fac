package haywright.app.words;

import haywright.feeding.ColdSnap;
import haywright.feeding.Offers;
import haywright.forage.Analyte;
import haywright.outlook.ColdPath;
import haywright.outlook.OwnRule;
import haywright.quantity.Unit;
import haywright.ranch.Settings;
import haywright.ration.PricedFeed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What to put out on colder days, in pounds by degree.
 *
 * @see "Livestock require more feed during a cold snap, Saskatchewan Agriculture (Lang 2022; Feist 2014): 1 lb of grain for
 *     each 5 °C below −20 °C; here from where no more hay fits in"
 * @see "Careful changes in diet, NDSU (Hoppe): hay in a blizzard, not grain; back to normal by 5 to 10 % a day"
 * @see "Feed management during a winter storm, K-State (Waggoner) 2026: missed feedings are not made up"
 */
public final class ColdWords {
    /** °C that a pound of grain goes with. */
    private static final double GRAIN_STEP = 5;

    /** Pounds of it at most (judgment), and never beyond what the limit of grain leaves. */
    private static final double MOST_GRAIN = 5;

    /** Pounds that are not worth saying. */
    private static final double LEAST = 0.5;

    private ColdWords() {}

    /** Sentences, the rule first. */
    public static List<String> of(ColdSnap cold) {
        var says = new ArrayList<String>();
        if (cold.hay().isEmpty()) {
            says.add("In hard cold, ask before you add hay: none here is known to be free of nitrate and molds.");
            return says;
        }
        if (cold.steps().isEmpty()) {
            return says;
        }
        if (isFull(cold)) {
            says.add("They are full on this ration: there is no room for more hay."
                    + " In hard cold they need richer feed in place of some of it. Call your adviser before it comes.");
            return says;
        }
        var hay = cold.hay().get().feed().name();
        says.add(rule(cold, hay));
        says.add("Per head, on top of the ration: "
                + cold.steps().stream()
                        .filter(step -> Unit.POUND.fromBase(step.kg()) >= LEAST / 2)
                        .map(step -> "%s at %s".formatted(pounds(step.kg()), Show.temperature(step.celsius())))
                        .collect(Collectors.joining(", "))
                + " (average for the day).");
        wet(cold).ifPresent(says::add);
        if (cold.fills()) {
            says.add("They can hold no more than %s extra. Below %s %s"
                    .formatted(
                            pounds(cold.most()),
                            Show.temperature(Measures.temperature().toBase(fullAt(cold))),
                            grain(cold) >= 1
                                    ? "add 1 lb of grain for each %s degrees, at most %s lb; colder yet call your adviser."
                                            .formatted(
                                                    Show.number(Measures.ofDegrees(GRAIN_STEP * 1.8), 0),
                                                    Show.number(grain(cold), 0))
                                    : "they need richer feed: call your adviser before it comes."));
        }
        if (!cold.inRation()) {
            says.add(
                    "%s is not in this ration: keep some by for a storm. Never give hungry cattle more of a hay that is high in nitrate, moldy or not tested for nitrate."
                            .formatted(hay));
        }
        says.add("More hay, never more straw. Hold it through the storm, then step down over a week."
                + " Do not make up missed feedings.");
        return says;
    }

    /** Whole pounds of grain that the cold may add: what the ration’s own limit of grain leaves, rounded down. */
    public static double grain(ColdSnap cold) {
        return Math.floor(Math.min(MOST_GRAIN, Unit.POUND.fromBase(cold.grain()) + 1e-6));
    }

    /** For a card: the first sentence, and of what more can be said what wet coats take. */
    public static List<String> onACard(ColdSnap cold) {
        var all = of(cold);
        return all.size() < 2
                ? all
                : Stream.concat(Stream.of(all.get(0)), wet(cold).stream()).toList();
    }

    private static Optional<String> wet(ColdSnap cold) {
        return Unit.POUND.fromBase(cold.wet()) < LEAST
                ? Optional.empty()
                : Optional.of("Soaked coats: start adding hay at %s; %s at %s."
                        .formatted(
                                Show.temperature(cold.wetBelow()),
                                pounds(cold.wet()),
                                Show.temperature(Unit.FAHRENHEIT.toBase(32))));
    }

    /**
     * One step of it with every figure on the way, and the same line without the windbreak; empty where nothing is added, or
     * the heat balance counts it.
     */
    public static List<String> pencil(Offers offers, ColdSnap cold) {
        var says = new ArrayList<String>();
        var hay = cold.hay();
        if (hay.isEmpty() || cold.steps().isEmpty() || isFull(cold)) {
            return says;
        }
        var settings = offers.yard().ranch().settings();
        var shown =
                cold.steps().stream().filter(step -> step.kg() < cold.most()).reduce((warm, colder) -> colder);
        shown.flatMap(step -> ColdPath.of(
                                settings, offers.planned(), offers.yard().day(), step.celsius())
                        .map(path -> path(path, step.kg(), hay.get(), settings)))
                .ifPresent(says::addAll);
        var weather = settings.weather();
        if (weather != null && weather.isSheltered()) {
            OwnRule.of(
                            settings.with(weather.inTheOpen()),
                            offers.group(),
                            offers.yard().day())
                    .filter(rule -> rule.perDegree() > 0)
                    .ifPresent(rule -> says.add("Without the windbreak: from %s, 1 lb more for each %s degrees."
                            .formatted(
                                    Show.temperature(rule.begins()),
                                    degrees(Math.max(1, degreesAPound(kg(hay.get(), rule.perDegree())))))));
        }
        return says;
    }

    private static List<String> path(ColdPath path, double kg, PricedFeed hay, Settings settings) {
        // whole °F; tenths of °C, which times 1.8 come out as whole °F do
        double begins = Measures.rounded(path.begins());
        double feels = Measures.rounded(path.feels());
        double below = Measures.inFahrenheit(begins - feels);
        var weather = settings.weather();
        var says = new ArrayList<String>();
        says.add(
                "With their coat and condition, cold starts to cost feed at %s. At %s with wind of %s%s it feels like %s: %s degrees below."
                        .formatted(
                                Measures.exactly(begins),
                                Show.temperature(path.at()),
                                weather == null ? "" : Show.quantity(weather.blows()),
                                weather != null && weather.isSheltered()
                                        ? ", three tenths of it behind the windbreak,"
                                        : "",
                                Measures.exactly(feels),
                                Show.number(begins - feels, Measures.decimals())));
        says.add(
                "%s percent of maintenance a degree, %s %% of %s Mcal: %s Mcal. The ration has %s of it already, for last month’s cold and this week’s usual.%s"
                        .formatted(
                                Measures.aDegree(path.percent() > 1.5 * below),
                                Show.number(path.percent(), 0),
                                Show.number(path.mild(), 2),
                                Show.number(path.costs(), 2),
                                Show.number(path.already(), 2),
                                path.factor() == 1
                                        ? ""
                                        : " Times %s, as last winter’s feeding said."
                                                .formatted(Show.number(path.factor(), 2))));
        says.add("That leaves %s Mcal more. A pound of %s put out has %s: %s."
                .formatted(
                        Show.number(path.more(), 2),
                        hay.feed().name(),
                        Show.number(1 / Unit.POUND.fromBase(kg(hay, 1)), 2),
                        pounds(kg)));
        return says;
    }

    /** As fed, that so many Mcal of NEm take. */
    private static double kg(PricedFeed hay, double mcal) {
        return hay.putOut(mcal / hay.feed().composition().value(Analyte.NEM).orElseThrow());
    }

    /** Whether what still fits in is too little to be worth going out for. */
    public static boolean isFull(ColdSnap cold) {
        return Unit.POUND.fromBase(cold.most()) < LEAST;
    }

    /** Degrees of the ranch, whole, at which the pounds of the rule come to what still fits in. */
    public static double fullAt(ColdSnap cold) {
        double below = Math.rint(Measures.temperature().fromBase(cold.below()));
        return Math.rint(below - halves(cold.most()) * Math.max(1, degreesAPound(cold)));
    }

    /** {@code Below −5 °F add 1 lb of First cutting per head for each 10 degrees.} */
    private static String rule(ColdSnap cold, String hay) {
        double degrees = degreesAPound(cold);
        var from = Show.temperature(cold.below());
        return degrees >= 1
                ? "Below %s add 1 lb of %s per head for each %s degrees.".formatted(from, hay, degrees(degrees))
                : "Below %s add more %s.".formatted(from, hay);
    }

    /** Degrees that one pound more goes with: whole °F, or halves of °C; 0 where no cold asks for more. */
    public static double degreesAPound(ColdSnap cold) {
        return degreesAPound(cold.perDegree());
    }

    /** @param kg more for each °C */
    private static double degreesAPound(double kg) {
        double degrees = 1.8 / Unit.POUND.fromBase(kg);
        return kg > 0 ? Measures.step(degrees) : 0;
    }

    private static String degrees(double degrees) {
        return Show.number(degrees, degrees % 1 == 0 ? 0 : 1);
    }

    private static String pounds(double kg) {
        double pounds = halves(kg);
        return Show.number(pounds, pounds % 1 == 0 ? 0 : 1) + " lb";
    }

    /** Pounds as they are said. */
    public static double halves(double kg) {
        return Math.rint(2 * Unit.POUND.fromBase(kg)) / 2;
    }
}
