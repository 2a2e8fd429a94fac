package haywright.outlook;

import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.NotMeasured;
import haywright.forage.lab.Reading;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What a lot was tested for: a report without a protein figure is no test for protein. A "less than" and a "not
 * detected" are results; "not tested" is none.
 *
 * @param parts in the order they are told
 * @param reports how many there are
 * @param isForFeeding whether the reports carry what a ration of this feed starts from: protein, and fiber or energy; of
 *     a mineral or urea any figure
 */
public record TestedFor(Set<Part> parts, int reports, boolean isForFeeding) {
    /** What laboratories test for, as people ask for it. */
    public enum Part {
        PROTEIN("protein", Set.of(Analyte.CP, Analyte.N)),
        FIBER("fiber", Set.of(Analyte.ADF, Analyte.NDF, Analyte.CF)),
        ENERGY("energy", Set.of(Analyte.TDN, Analyte.NEM, Analyte.NEG, Analyte.NEL, Analyte.ME, Analyte.DE)),
        MINERALS(
                "minerals",
                Set.of(
                        Analyte.CA,
                        Analyte.P,
                        Analyte.MG,
                        Analyte.K,
                        Analyte.NA,
                        Analyte.S,
                        Analyte.CU,
                        Analyte.ZN,
                        Analyte.MN,
                        Analyte.FE,
                        Analyte.MO,
                        Analyte.SE)),
        NITRATE("nitrate", Set.of(Analyte.NO3, Analyte.NO3N, Analyte.KNO3)),
        DRY_MATTER("dry matter", Set.of(Analyte.DM, Analyte.MOISTURE));

        private final String words;
        private final Set<Analyte> analytes;

        Part(String words, Set<Analyte> analytes) {
            this.words = words;
            this.analytes = analytes;
        }

        public String words() {
            return words;
        }
    }

    public TestedFor {
        parts = parts.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(parts));
    }

    public static TestedFor of(Ranch ranch, Lot lot) {
        return of(lot.feedClass(), SameHay.counted(ranch, lot.id()));
    }

    static TestedFor of(FeedClass feed, List<LabReport> reports) {
        var analytes = EnumSet.noneOf(Analyte.class);
        for (var report : reports) {
            var told = Stream.concat(
                    report.readings().stream().map(Reading::analyte),
                    report.notMeasured().stream()
                            .filter(said -> said.why() != NotMeasured.Why.NOT_TESTED)
                            .map(NotMeasured::analyte));
            told.filter(analyte -> !report.isNitrateByNir() || !Part.NITRATE.analytes.contains(analyte))
                    .forEach(analytes::add);
        }
        var parts = EnumSet.noneOf(Part.class);
        for (var part : Part.values()) {
            if (!Collections.disjoint(part.analytes, analytes)) {
                parts.add(part);
            }
        }
        boolean isBought = feed == FeedClass.MINERAL || feed == FeedClass.NPN;
        boolean isForFeeding = isBought
                ? !analytes.isEmpty()
                : parts.contains(Part.PROTEIN) && (parts.contains(Part.FIBER) || parts.contains(Part.ENERGY));
        return new TestedFor(parts, reports.size(), isForFeeding);
    }

    /** "Not tested", "Tested for protein, fiber, minerals", "Tested for nitrate, not for protein". */
    public String words() {
        if (reports == 0) {
            return "Not tested";
        }
        var told = parts.stream()
                .filter(part -> part != Part.DRY_MATTER || parts.size() == 1)
                .map(Part::words);
        var lacks = isForFeeding ? "" : ", not for " + lacks();
        var list = String.join(", ", told.toList());
        return (list.isEmpty() ? "Tested" : "Tested for " + list) + lacks;
    }

    /** What a ration of it still needs, in words; empty where nothing. */
    public String lacks() {
        return isForFeeding
                ? ""
                : String.join(
                        " or ",
                        Stream.of(
                                        parts.contains(Part.PROTEIN) ? "" : Part.PROTEIN.words,
                                        parts.contains(Part.FIBER) || parts.contains(Part.ENERGY)
                                                ? ""
                                                : Part.FIBER.words)
                                .filter(word -> !word.isEmpty())
                                .toList());
    }
}
