package haywright.app.words;

import haywright.feeding.ColdSnap;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What to put out on colder days, in pounds by degree.
 *
 * @see "Livestock require more feed during a cold snap, Saskatchewan Agriculture (Lang 2022; Feist 2014): 1 lb of grain for
 *     each 5 °C below −20 °C; at most 5 lb is judgment"
 * @see "Careful changes in diet, NDSU (Hoppe): hay in a blizzard, not grain; back to normal by 5 to 10 % a day"
 * @see "Feed management during a winter storm, K-State (Waggoner) 2026: missed feedings are not made up"
 */
public final class ColdWords {
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
                        .map(step -> "%s at %s".formatted(pounds(step.kg()), Show.fahrenheit(step.celsius())))
                        .collect(Collectors.joining(", "))
                + " (average for the day).");
        if (Unit.POUND.fromBase(cold.wet()) >= LEAST) {
            says.add("Coats wet through: from %s down, %s at %s."
                    .formatted(
                            Show.fahrenheit(cold.wetBelow()),
                            pounds(cold.wet()),
                            Show.fahrenheit(Unit.FAHRENHEIT.toBase(32))));
        }
        if (cold.fills()) {
            says.add("They can hold no more than %s extra.%s"
                    .formatted(
                            pounds(cold.most()),
                            cold.onGrain()
                                    ? " Beyond that, 1 lb more grain for each 9 degrees below −4 °F, at most 5 lb."
                                    : ""));
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

    /** Whether what still fits in is too little to be worth going out for. */
    public static boolean isFull(ColdSnap cold) {
        return Unit.POUND.fromBase(cold.most()) < LEAST;
    }

    /** {@code Below −5 °F add 1 lb of First cutting per head for each 10 degrees.} */
    private static String rule(ColdSnap cold, String hay) {
        double degrees = degreesAPound(cold);
        var from = Show.fahrenheit(cold.below());
        return degrees >= 1
                ? "Below %s add 1 lb of %s per head for each %s degrees.".formatted(from, hay, Show.number(degrees, 0))
                : "Below %s add more %s.".formatted(from, hay);
    }

    /** °F that one pound more goes with, whole; 0 where no cold asks for more. */
    public static double degreesAPound(ColdSnap cold) {
        double poundsADegree = Unit.POUND.fromBase(cold.perDegree()) / 1.8;
        return poundsADegree > 0 ? Math.rint(1 / poundsADegree) : 0;
    }

    private static String pounds(double kg) {
        double pounds = Unit.POUND.fromBase(kg);
        return Show.number(Math.rint(2 * pounds) / 2, Math.rint(2 * pounds) % 2 == 0 ? 0 : 1) + " lb";
    }
}
