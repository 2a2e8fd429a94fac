package haywright.app.words;

import haywright.cattle.Lactation;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.HairCoat;
import haywright.cattle.cold.Hide;
import haywright.cattle.herd.Group;
import haywright.cattle.need.GroupRequirement;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.ranch.RanchWeather;
import haywright.ranch.Settings;
import haywright.ranch.Wishes;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;

/** What holds for every figure of a herd, said wherever it acts. */
public final class HerdWords {
    private HerdWords() {}

    /** What last winter said of cold and waste, as a sentence; empty where nothing was accepted. */
    public static String factor(Settings settings) {
        var factor = settings.herdFactor();
        return factor == null
                ? ""
                : "Cold and hay loss counted %s times, by last winter’s feeding.".formatted(times(factor));
    }

    /** The expected intake is right to about so much of itself; that of cows was found 14 to 17 % low. */
    private static final double INTAKE_DOUBT = 0.15;

    /** Days from one calving until the next calf asks for a tenth of a Mcal, about 100 days from conception: judgment. */
    private static final int CALF_COUNTS_AFTER = 365 - 283 + 100;

    /** Percent by which a lot's waste is told apart from that of all. */
    private static final double LEAST_LOST = 1;

    /** Where is not entered where the ranch is. */
    public static final String MILD = "Figured for mild weather.";

    /** The same where no group is figured. */
    public static String figured(Settings settings, LocalDate day, boolean putOut) {
        return figured(settings, List.of(), day, day, putOut);
    }

    /**
     * All that moved the figures below it, typed or taken, in a few sentences: the headline of herd, bench and letter alike.
     *
     * @param groups whose figures they are: what was not entered of them is named where it counts
     * @param day that the figures are of, or their first; the coat of the season is that of it
     * @param until the last day that is figured
     * @param putOut whether pounds put out stand there, with what is lost in feeding
     */
    public static String figured(
            Settings settings, Collection<Group> groups, LocalDate day, LocalDate until, boolean putOut) {
        return figured(settings, groups, day, until, putOut ? lost(settings, 0) : "", List.of());
    }

    /** The same of a ranch: where pounds put out stand there, also what nobody said of its lots. */
    public static String figured(
            Ranch ranch, Collection<Group> groups, LocalDate day, LocalDate until, boolean putOut) {
        return figured(
                ranch.settings(),
                groups,
                day,
                until,
                putOut ? lost(ranch.settings(), grainLost(ranch, groups, day)) + seenLost(ranch, day) : "",
                putOut ? MassWords.assumed(ranch) : List.of());
    }

    private static String lost(Settings settings, double grain) {
        return "%s %% of hay%s put out is lost."
                .formatted(
                        Show.number(settings.hayLossPercent(), 0),
                        grain > 0 ? ", and %s %% of grain and cake,".formatted(Show.number(grain, 0)) : "");
    }

    /** What the weeks that were entered say otherwise of a lot: it counts, and so it stands beside what is said of all. */
    private static String seenLost(Ranch ranch, LocalDate day) {
        var yard = new Yard(ranch, day);
        var seen = ranch.lots().values().stream()
                .flatMap(lot -> yard
                        .notEaten(lot)
                        .filter(now -> Math.abs(now.percent() - now.usual()) >= LEAST_LOST)
                        .map(now -> "%s %% of %s".formatted(Show.number(now.percent(), 0), lot.name()))
                        .stream())
                .toList();
        return seen.isEmpty() ? "" : " By your weeks, %s.".formatted(String.join(", ", seen));
    }

    /** Percent; none where every one of these groups is fed in a bunk. */
    private static double grainLost(Ranch ranch, Collection<Group> groups, LocalDate day) {
        boolean inBunks = groups.stream()
                .allMatch(group -> ranch.wishes()
                        .getOrDefault(group.id(), Wishes.none(group.id()))
                        .isInABunk());
        return inBunks ? 0 : new Yard(ranch, day).grainLossPercent();
    }

    private static String figured(
            Settings settings,
            Collection<Group> groups,
            LocalDate day,
            LocalDate until,
            String lost,
            List<String> ofLots) {
        var says = new ArrayList<String>();
        var weather = settings.weather();
        if (weather == null) {
            says.add(MILD);
        } else {
            says.add("Figured for the usual cold at %s, not a storm: %s."
                    .formatted(weather.place(), stand(weather, day, until.isAfter(day))));
        }
        var factor = factor(settings);
        if (!factor.isEmpty()) {
            says.add(factor);
        }
        if (!lost.isEmpty()) {
            says.add(lost);
        }
        says.add(assumed(Stream.concat(taken(settings, groups, day, until).stream(), ofLots.stream())
                .toList()));
        return String.join(" ", says).strip();
    }

    /**
     * What moved what last winter should have taken, apart from its cold and waste, which stand in its table.
     *
     * @param from the first day of this winter's weeks that stand for it
     */
    public static String lastWinter(Settings settings, Collection<Group> groups, LocalDate from, LocalDate to) {
        var weather = settings.weather();
        var taken = assumed(taken(settings, groups, from, to));
        return weather == null
                ? taken
                : "Figured with %s. %s"
                        .formatted(stand(weather, from, true), taken)
                        .strip();
    }

    private static String stand(RanchWeather weather, LocalDate day, boolean isFirst) {
        return "wind %s, %s, %s%s"
                .formatted(
                        Show.quantity(weather.blows()),
                        weather.isSheltered() ? "behind a windbreak" : "no windbreak",
                        coats(weather, day, isFirst),
                        weather.coldSystem() == ColdSystem.USUAL ? "" : ", by the heat balance");
    }

    /** @param isFirst whether the coat of the season changes among the figures: then which day it is of */
    private static String coats(RanchWeather weather, LocalDate day, boolean isFirst) {
        var hide = switch (weather.coats()) {
            case DRY -> "dry";
            case SOME_MUD -> "somewhat muddy";
            case WET -> "wet";
            case COVERED -> "snow or mud covered";
        };
        // one answer for the whole year: a reader of a wet hide's figures in midwinter must know that they are of it
        var always = weather.coats() == Hide.DRY ? "" : " every day";
        var chosen = weather.coat();
        if (chosen != null) {
            return hide + ", in " + coat(chosen) + " hair" + always;
        }
        var now = HairCoat.usual(day);
        return "%s, in the hair of the season%s (%s%s%s)"
                .formatted(
                        hide,
                        always,
                        coat(now.lighter()),
                        now.lighter() == now.heavier() ? "" : " to " + coat(now.heavier()),
                        isFirst ? " at first" : "");
    }

    private static String coat(Coat coat) {
        return coat.id().replace('_', ' ');
    }

    /** {@code to gain 0.3 lb a day}, and that it is assumed where nobody entered it; empty where none is wanted. */
    public static String gain(Group group) {
        return group.gain().value() > 0
                ? "to gain %s%s".formatted(Show.quantity(group.gain()), group.gainTaken() ? " (assumed)" : "")
                : "";
    }

    /** Which of that is not entered, as a sentence; empty where all of it was said, or no cold counts. */
    public static String taken(Settings settings) {
        return assumed(taken(settings, List.of(), LocalDate.MIN, LocalDate.MAX));
    }

    private static String assumed(List<String> taken) {
        return taken.isEmpty() ? "" : "Assumed: " + String.join(", ", taken) + ".";
    }

    private static List<String> taken(Settings settings, Collection<Group> groups, LocalDate day, LocalDate until) {
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
        if (groups.stream().anyMatch(group -> group.breed().isEmpty())) {
            taken.add("breed");
        }
        if (groups.stream().anyMatch(Group::gainTaken)) {
            taken.add("gain");
        }
        if (groups.stream().anyMatch(group -> group.calfBirthWeight() == null && carries(group, day))) {
            taken.add("calf weight");
        }
        if (groups.stream().anyMatch(group -> group.peakMilk() == null && nurses(group, day, until))) {
            taken.add("milk yield");
        }
        if (groups.stream().anyMatch(group -> group.weaning() == null && hasCalvedBy(group, until))) {
            taken.add("milk for 30 weeks");
        }
        if (groups.stream().anyMatch(group -> wouldCarryAgain(group, until))) {
            taken.add("none rebred");
        }
        return taken;
    }

    private static boolean carries(Group group, LocalDate day) {
        return calvings(group).anyMatch(calving -> !calving.isBefore(day));
    }

    private static boolean nurses(Group group, LocalDate day, LocalDate until) {
        return calvings(group).anyMatch(calving -> {
            var weaned = group.weaning() == null ? calving.plusWeeks((long) Lactation.CURVE_ENDS) : group.weaning();
            return calving.isBefore(until) && weaned.isAfter(day);
        });
    }

    private static boolean hasCalvedBy(Group group, LocalDate until) {
        return calvings(group).anyMatch(calving -> calving.isBefore(until));
    }

    /** Cows that hold to a calf a year, with no date for the next, whose calf would ask for something by then. */
    private static boolean wouldCarryAgain(Group group, LocalDate until) {
        return hasCalvedBy(group, until.minusDays(CALF_COUNTS_AFTER))
                && calvings(group).noneMatch(calving -> calving.isAfter(until));
    }

    /** As the need counts them. */
    private static Stream<LocalDate> calvings(Group group) {
        return group.calving().stream()
                .filter(week -> week.head() > 0)
                .map(week -> week.begins().plusDays(GroupRequirement.MIDDLE_OF_WEEK));
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
