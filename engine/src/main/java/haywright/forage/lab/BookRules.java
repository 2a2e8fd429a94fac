package haywright.forage.lab;

import static haywright.forage.Say.number;

import haywright.forage.Analyte;
import haywright.forage.Say;
import haywright.forage.book.FeedBook;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A figure far from the feed book's: both are shown, and it is asked about. */
final class BookRules {
    static final List<Rule> ALL = List.of(BookRules::far);

    private static final Set<Analyte> MINERALS = EnumSet.of(
            Analyte.CA,
            Analyte.P,
            Analyte.MG,
            Analyte.K,
            Analyte.NA,
            Analyte.S,
            Analyte.CL,
            Analyte.CU,
            Analyte.ZN,
            Analyte.MN,
            Analyte.FE,
            Analyte.MO,
            Analyte.SE);
    private static final Set<Analyte> ENERGY = EnumSet.of(Analyte.TDN, Analyte.NEM, Analyte.NEG);

    private BookRules() {}

    private static void far(Sheet sheet, List<Issue> issues) {
        sheet.book()
                .ifPresent(book -> sheet.values().forEach((analyte, value) -> {
                    var known = book.composition().values().get(analyte);
                    if (known != null) {
                        distance(book, analyte, value, known.value())
                                .ifPresent(words -> issues.add(Issue.information(
                                        book.spread().containsKey(analyte) ? "C37" : "C36",
                                        analyte,
                                        "%s, and the feed book has %s for %s: %s"
                                                .formatted(
                                                        sheet.say(analyte),
                                                        Say.with(known.value(), analyte.unit()),
                                                        book.feed(),
                                                        words),
                                        "Is that this feed?")));
                    }
                }));
    }

    private static Optional<String> distance(FeedBook.Row book, Analyte analyte, double value, double mean) {
        var sd = book.spread().get(analyte);
        if (sd != null) {
            return Math.abs(value - mean) > 3 * sd
                    ? Optional.of("more than three standard deviations (%s) apart".formatted(number(sd)))
                    : Optional.empty();
        }
        double percent = MINERALS.contains(analyte) ? 30 : ENERGY.contains(analyte) ? 10 : 15;
        return Math.abs(value - mean) > percent / 100 * mean
                ? Optional.of("more than %s %% apart".formatted(number(percent)))
                : Optional.empty();
    }
}
