package haywright.app.web.lab;

import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.lot.Weighed;
import haywright.quantity.Kind;
import haywright.quantity.Unit;
import haywright.workings.Origin;
import haywright.workings.Worked;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Figures of an analysis as a sheet prints them, and where they are from, in words. */
final class Figures {
    private static final Set<Analyte> MINERALS = EnumSet.of(
            Analyte.CA, Analyte.P, Analyte.MG, Analyte.K, Analyte.NA, Analyte.S, Analyte.CL, Analyte.NO3, Analyte.KNO3);

    /** A row of the feed book is cited as its source and then, in brackets, the row. */
    private static final Pattern BOOK_ROW = Pattern.compile("\\((row [^()]*(?:\\([^()]*\\)[^()]*)*)\\)$");

    private Figures() {}

    /** @param value in the analyte's unit; energy is shown a pound, as the trade says it */
    static String say(Analyte analyte, double value) {
        return say(analyte, value, decimals(analyte, value));
    }

    /** How far apart the two stand, as they are shown. */
    static String more(Analyte analyte, double before, double now) {
        int decimals = decimals(analyte, now);
        double shown = rounded(analyte, now, decimals) - rounded(analyte, before, decimals);
        if (Math.abs(shown) < 0.5 * Math.pow(10, -decimals)) {
            return "the same";
        }
        var unit = shownIn(analyte);
        var said = Show.withUnit(Show.number(shown, decimals), unit).replace(' ', '\u00a0');
        return shown < 0 ? said : "+" + said;
    }

    private static double rounded(Analyte analyte, double value, int decimals) {
        double scale = Math.pow(10, decimals);
        return Math.rint(analyte.unit().to(shownIn(analyte), value) * scale) / scale;
    }

    private static Unit shownIn(Analyte analyte) {
        return analyte.unit().kind() == Kind.ENERGY_DENSITY ? Unit.MCAL_PER_LB : analyte.unit();
    }

    /** A figure and its unit stay on one line. */
    private static String say(Analyte analyte, double value, int decimals) {
        var unit = shownIn(analyte);
        return Show.withUnit(Show.number(analyte.unit().to(unit, value), decimals), unit)
                .replace(' ', '\u00a0');
    }

    private static int decimals(Analyte analyte, double value) {
        if (MINERALS.contains(analyte)) {
            return value < 0.1 ? 3 : 2;
        }
        return switch (analyte) {
            case RFV, RFQ, NO3N, HCN, DCAD -> 0;
            case PH -> 1;
            case NEM, NEG, NEL, ME, DE -> 2;
            default -> analyte.unit() == Unit.PERCENT ? 1 : value < 10 ? 2 : 0;
        };
    }

    /** "report of Oct 14, 2026, Tin Valley", "worked out from …" */
    static String from(Origin origin) {
        if (origin instanceof Origin.Typed typed) {
            return typed.where();
        }
        if (origin instanceof Origin.Published published) {
            var source = published.source();
            var row = BOOK_ROW.matcher(source.cite());
            return "feed book%s, %s"
                    .formatted(
                            row.find() ? " " + row.group(1) : ": " + source.cite(),
                            source.known().words());
        }
        if (((Origin.Computed) origin).by() instanceof Weighed weighed) {
            return weighed.words();
        }
        var ends = new LinkedHashSet<String>();
        ends(((Origin.Computed) origin).by(), ends);
        var from = ends.stream()
                .map(end -> end.startsWith("how ") ? end : "the " + end)
                .collect(Collectors.joining(" and "));
        return "worked out" + (from.isEmpty() ? "" : " from " + from);
    }

    /** Whether a report or a tag stands behind it, moved or not. */
    static boolean isReported(Origin origin) {
        if (origin instanceof Origin.Computed computed) {
            return !(computed.by() instanceof Weighed weighed)
                    || weighed.estimate().estimate(weighed.analyte()).stream().anyMatch(e -> e.measured() > 0);
        }
        return origin instanceof Origin.Typed;
    }

    private static void ends(Worked work, Set<String> found) {
        for (var line : work.lines()) {
            for (var input : line.inputs()) {
                if (input.origin() instanceof Origin.Computed computed && computed.by() instanceof Weighed weighed) {
                    found.add(weighed.whose());
                } else if (input.origin() instanceof Origin.Computed computed) {
                    ends(computed.by(), found);
                } else if (!input.origin().equals(Origin.TYPED)) {
                    found.add(from(input.origin()));
                }
            }
        }
    }
}
