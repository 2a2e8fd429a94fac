package haywright.diet;

import haywright.cattle.AnimalClass;
import haywright.cattle.need.Need;
import haywright.forage.Analyte;
import haywright.forage.hazard.HazardClass;
import haywright.forage.hazard.HazardClass.Hazard;
import haywright.forage.hazard.HazardClass.Level;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What besides nitrate keeps a feed out or to a share: toxins of molds and ergot, prussic acid, selenium. What lies in a
 * class that is not to be fed stays out, because none of it may be diluted away; what lies between counts in a row of the
 * whole diet, held to the safe class. A feed that nobody tested counts at the limit there: it neither fills nor thins.
 */
final class Toxins {
    /** ppb of ergot alkaloids in one feed above which it is not fed, however it is mixed (judgment; limits in use differ). */
    private static final double ERGOT_OUT = 1000;

    /** ppm of selenium in one feed above which it is not fed: the most that cattle tolerate of a whole diet. */
    static final double SELENIUM_OUT = 5;

    /** ppm of selenium in a forage from which no more is added. */
    static final double SELENIUM_PLENTY = 2;

    static final Source SELENIUM =
            Source.memory("NRC 2005, Mineral Tolerance of Animals: selenium of the whole diet at most 5 ppm");

    private static final Map<Hazard, Analyte> LOOKED_FOR = lookedFor();

    private final List<Feed> feeds;
    private final Need need;
    private final Rows row;

    Toxins(List<Feed> feeds, Need need) {
        this.feeds = feeds;
        this.need = need;
        row = new Rows(feeds, need);
    }

    private static Map<Hazard, Analyte> lookedFor() {
        var map = new EnumMap<Hazard, Analyte>(Hazard.class);
        for (var analyte : Analyte.values()) {
            Hazard.of(analyte).ifPresent(hazard -> map.put(hazard, analyte));
        }
        return Collections.unmodifiableMap(map);
    }

    /** The classes for such cattle, from the bottom up; those for all cattle where none are apart. */
    private static List<HazardClass> classes(Hazard hazard, Need need) {
        var all = HazardClass.published().stream()
                .filter(c -> c.hazard() == hazard)
                .toList();
        var own = need.animals() == AnimalClass.GROWING ? "immature" : "breeding";
        var theirs = all.stream().filter(c -> c.whom().startsWith(own)).toList();
        var breeding = all.stream().filter(c -> c.whom().startsWith("breeding")).toList();
        return theirs.isEmpty() ? breeding.isEmpty() ? all : breeding : theirs;
    }

    /** Up to here it is called safe. */
    private static double safe(Hazard hazard, Need need) {
        return classes(hazard, need).stream()
                .filter(c -> c.level() == Level.SAFE)
                .mapToDouble(c -> c.upper() == null ? Double.POSITIVE_INFINITY : c.upper())
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    private static double out(Hazard hazard, Need need) {
        return hazard == Hazard.ERGOT
                ? ERGOT_OUT
                : classes(hazard, need).stream()
                        .filter(c -> c.level() == Level.DANGER)
                        .mapToDouble(HazardClass::lower)
                        .min()
                        .orElse(Double.POSITIVE_INFINITY);
    }

    static Optional<LeftOut> reasonToLeaveOut(Feed feed, Need need) {
        for (var looked : LOOKED_FOR.entrySet()) {
            var hazard = looked.getKey();
            double found = feed.composition().value(looked.getValue()).orElse(0);
            if (found > out(hazard, need)) {
                return Optional.of(leftOut(feed, hazard.words(), found, hazard.unit()));
            }
        }
        double selenium = feed.composition().value(Analyte.SE).orElse(0);
        return feed.feedClass().isForage() && selenium > SELENIUM_OUT
                ? Optional.of(leftOut(feed, "Selenium", selenium, "ppm"))
                : Optional.empty();
    }

    private static LeftOut leftOut(Feed feed, String what, double found, String unit) {
        return new LeftOut(
                feed,
                true,
                "%s is left out because of its %s: %s %s is not to be fed, however it is mixed"
                        .formatted(
                                feed.name(),
                                what.toLowerCase(Locale.ROOT),
                                String.format(Locale.US, found < 10 ? "%,.1f" : "%,.0f", found),
                                unit),
                "Talk with your veterinarian and the laboratory before any of it is fed.");
    }

    /** One for each toxin that was found above the safe class in any feed that may be fed. */
    List<DietRow> rows() {
        var rows = new ArrayList<DietRow>();
        LOOKED_FOR.forEach((hazard, analyte) -> {
            double most = safe(hazard, need);
            if (feeds.stream().anyMatch(f -> f.composition().value(analyte).orElse(0) > most)) {
                rows.add(row.of(
                        analyte.id(),
                        DietRow.Kind.DANGER,
                        hazard.words().toLowerCase(Locale.ROOT) + " in the ration",
                        DietRow.Sense.AT_MOST,
                        analyte.unit(),
                        new Law(
                                asked -> most,
                                (f, made) -> f.composition().value(analyte).orElse(most),
                                (f, made) -> 1,
                                Law.Counted.MEAN),
                        classes(hazard, need).get(0).source()));
            }
        });
        return rows;
    }
}
