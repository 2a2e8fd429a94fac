package haywright.app.words;

import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.HairCoat;
import haywright.quantity.Unit;
import haywright.ranch.RanchWeather;
import haywright.ranch.Settings;
import java.time.LocalDate;
import java.util.ArrayList;

/** What holds for every figure of a herd, said wherever it acts. */
public final class HerdWords {
    private HerdWords() {}

    /** What last winter said of cold and waste, as a sentence; empty where nothing was accepted. */
    public static String factor(Settings settings) {
        var factor = settings.herdFactor();
        return factor == null
                ? ""
                : "The cold, and what is lost of hay, count %s times here, as last winter’s feeding said."
                        .formatted(times(factor));
    }

    /** The expected intake is right to about so much of itself; that of cows was found 14 to 17 % low. */
    private static final double INTAKE_DOUBT = 0.15;

    /** Where nobody has said where the ranch is. */
    public static final String MILD = "Figured for mild weather.";

    /**
     * All that moved the figures below it, typed or taken, in a few sentences: the headline of herd, bench and letter alike.
     *
     * @param today the coat of the season is that of the day
     * @param putOut whether pounds put out stand there, with what is lost in feeding
     */
    public static String figured(Settings settings, LocalDate today, boolean putOut) {
        var says = new ArrayList<String>();
        var weather = settings.weather();
        if (weather == null) {
            says.add(MILD);
        } else {
            says.add("Figured for the usual cold at %s, not a storm: wind %s, %s, %s, by %s."
                    .formatted(
                            weather.place(),
                            Show.quantity(weather.blows()),
                            weather.isSheltered() ? "behind a windbreak" : "no windbreak",
                            coats(weather, today),
                            weather.coldSystem() == ColdSystem.RULE_OF_THUMB
                                    ? "the rule of thumb"
                                    : "the heat balance"));
        }
        if (putOut) {
            says.add("%s %% of the hay put out is lost in feeding."
                    .formatted(Show.number(settings.hayLossPercent(), 0)));
        }
        says.add(taken(settings));
        return String.join(" ", says).strip();
    }

    private static String coats(RanchWeather weather, LocalDate today) {
        var hide = switch (weather.coats()) {
            case DRY -> "dry ";
            case SOME_MUD -> "somewhat muddy ";
            case WET -> "wet ";
            case COVERED -> "snow or mud covered ";
        };
        var chosen = weather.coat();
        if (chosen != null) {
            return hide + coat(chosen) + " coats on all";
        }
        var now = HairCoat.usual(today);
        return "%scoats of the season (%s%s now)"
                .formatted(
                        hide, coat(now.lighter()), now.lighter() == now.heavier() ? "" : " to " + coat(now.heavier()));
    }

    private static String coat(Coat coat) {
        return coat.id().replace('_', ' ');
    }

    /** Which of that nobody has said, as a sentence; empty where all of it was said, or no cold counts. */
    public static String taken(Settings settings) {
        var weather = settings.weather();
        var taken = new ArrayList<String>();
        if (weather != null && weather.wind() == null) {
            taken.add("wind");
        }
        if (weather != null && weather.windbreak() == null) {
            taken.add("windbreak");
        }
        if (weather != null && weather.hide() == null) {
            taken.add(weather.coat() == null ? "dry coats and their class" : "dry coats");
        }
        return taken.isEmpty() ? "" : "Assumed until you say otherwise: " + String.join(", ", taken) + ".";
    }

    /**
     * {@code about 28 lb (24 to 32)}: what they are expected to eat, with its doubt.
     *
     * @param kilograms of dry matter a day
     */
    public static String eats(double kilograms) {
        return "about %s lb (%s to %s)"
                .formatted(
                        pounds(kilograms),
                        pounds((1 - INTAKE_DOUBT) * kilograms),
                        pounds((1 + INTAKE_DOUBT) * kilograms));
    }

    /** Whether so much is above all of {@link #eats}, in the pounds that are shown. */
    public static boolean isMoreThanEaten(double given, double expected) {
        return Math.round(Unit.POUND.fromBase(given)) > Math.round(Unit.POUND.fromBase((1 + INTAKE_DOUBT) * expected));
    }

    private static String pounds(double kilograms) {
        return Show.number(Unit.POUND.fromBase(kilograms), 0);
    }

    /** {@code 1.25}. */
    public static String times(double factor) {
        return Show.number(factor, 2);
    }
}
