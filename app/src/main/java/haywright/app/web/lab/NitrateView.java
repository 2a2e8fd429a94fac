package haywright.app.web.lab;

import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.hazard.Nitrate;
import haywright.forage.hazard.NitrateClass;
import haywright.forage.lot.LotComposition;
import haywright.quantity.Unit;
import haywright.workings.Origin;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Nitrate of a lot in its three forms, and what every published source makes of it, the strictest first: never one
 * alone.
 *
 * @param forms the same nitrate, three times
 * @param counted what rations make of it
 * @param bales how far one bale may lie from the sample
 * @param sources one for each source
 * @param cautions empty below every published limit
 * @param danger whether anybody calls it more than safe
 */
public record NitrateView(
        List<String> forms,
        Worked worked,
        String from,
        String counted,
        String bales,
        List<BySource> sources,
        List<String> cautions,
        boolean danger) {
    /**
     * @param here the class that this lot is in
     * @param all every class of the source, this one among them
     */
    public record BySource(String source, Here here, List<Here> all) {}

    /** @param from the range in ppm NO3-N; what it says of pregnant cattle may be empty */
    public record Here(String name, String from, String words, String pregnant, String printed, boolean isHere) {}

    /** What rations make of it, in words that fit what the sources say. */
    private static String counted(Composition made) {
        double found = made.value(Analyte.NO3N).orElse(0);
        double safe = NitrateClass.safeForPregnant().safeUpTo();
        if (found <= safe) {
            return "No limit and no mixer needed: the strictest source calls a lot safe up to %s ppm NO3-N."
                    .formatted(Show.number(safe, 0));
        }
        if (found > NitrateClass.doNotFeed().lower()) {
            return "It stays out of every ration, however it is mixed.";
        }
        double most = made.upper(Analyte.NO3N).orElse(found);
        double others = NitrateClass.safeForOthers().safeUpTo();
        double second = NitrateClass.safeForOpen().safeUpTo();
        var mixed = "only mixed into other feed; rations then count %s ppm NO3-N, %s"
                .formatted(
                        Show.number(most, 0),
                        most > found ? "what the lot has less of nine times in ten" : "what was found");
        if (found <= others) {
            return "Bred cattle: %s; where nothing mixes, only as the day’s second feed. Other cattle may have it alone, up to %s ppm."
                    .formatted(mixed, Show.number(others, 0));
        }
        return "Where there is a mixer, %s. Where nothing mixes, none to bred cattle, and %s."
                .formatted(
                        mixed,
                        found <= second
                                ? "to others only as the day’s second feed, up to %s ppm"
                                        .formatted(Show.number(second, 0))
                                : "none to others");
    }

    /** One bale is not the lot. */
    private static String bales(Composition made, Nitrate nitrate) {
        var most = made.oneInAHundred(Analyte.NO3N);
        return (most.isEmpty()
                        ? "One bale or load may hold twice as much as the sample."
                        : "One bale or load may hold twice as much as the sample; one in a hundred may have more than %s ppm NO3-N."
                                .formatted(Show.number(most.getAsDouble(), 0)))
                + (nitrate.asksForSingleBales()
                        ? " Test a few one by one: the sample is above half of the first caution line, %s ppm."
                                .formatted(Show.number(
                                        NitrateClass.safeForPregnant().safeUpTo(), 0))
                        : "");
    }

    /** Empty where nitrate is not known. */
    static Optional<NitrateView> of(LotComposition lot) {
        return of(lot.composition(), lot.single().get(Analyte.NO3N));
    }

    /** @param single ppm that an older report found in one place, where a newer one of the whole lot counts */
    static Optional<NitrateView> of(Composition made, @Nullable Double single) {
        var known = made.values().get(Analyte.NO3N);
        if (known == null) {
            return Optional.empty();
        }
        var nitrate = new Nitrate(known.value(), Nitrate.Form.NO3_N, Unit.PPM);
        var sources = NitrateClass.published().stream()
                .filter(c -> c.lower() == 0)
                .map(first -> bySource(first.source().cite(), nitrate))
                .toList();
        var cautions = new ArrayList<String>();
        if (single != null) {
            cautions.add(
                    "One place in it had %s ppm NO3-N by an older report, and it is still there. Test bales near it one by one before they are fed, or delete that report if it is not of this hay."
                            .formatted(Show.number(single, 0)));
        }
        nitrate.cautions().forEach(caution -> cautions.add(caution.words()));
        var from = Figures.from(known.origin());
        return Optional.of(new NitrateView(
                forms(nitrate, known.below() != null ? "less than " : ""),
                known.origin() instanceof Origin.Computed computed ? computed.by() : nitrate,
                from.startsWith("worked out") ? from : "from the " + from,
                counted(made),
                bales(made, nitrate),
                sources,
                List.copyOf(cautions),
                nitrate.classes().stream().anyMatch(c -> c.lower() > 0)));
    }

    private static List<String> forms(Nitrate nitrate, String less) {
        return List.of(
                less + Show.number(nitrate.ppm(Nitrate.Form.NO3_N), 0) + " ppm NO3-N",
                less + both(nitrate, Nitrate.Form.NO3, "NO3"),
                less + both(nitrate, Nitrate.Form.KNO3, "KNO3"));
    }

    private static String both(Nitrate nitrate, Nitrate.Form form, String name) {
        double ppm = nitrate.ppm(form);
        return "%s ppm %s (%s %%)".formatted(Show.number(ppm, 0), name, Show.number(Unit.PPM.to(Unit.PERCENT, ppm), 2));
    }

    private static BySource bySource(String source, Nitrate nitrate) {
        var here = nitrate.classes();
        var all = NitrateClass.published().stream()
                .filter(c -> c.source().cite().equals(source))
                .map(c -> here(c, here.contains(c)))
                .toList();
        return new BySource(
                source, all.stream().filter(Here::isHere).findFirst().orElseThrow(), all);
    }

    private static Here here(NitrateClass one, boolean isHere) {
        var upper = one.upper();
        var range = upper == null
                ? Show.number(one.lower(), 0) + " and more"
                : one.lower() == 0
                        ? "under " + Show.number(upper, 0)
                        : Show.number(one.lower(), 0) + " to " + Show.number(upper, 0);
        return new Here(one.name(), range, one.words(), one.pregnantRule(), one.printed(), isHere);
    }
}
