package haywright.app.web.lab;

import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.quantity.Kind;
import haywright.quantity.Unit;
import haywright.workings.Origin;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Figures of an analysis as a sheet prints them, and where they are from, in words. */
final class Figures {
    private static final Set<Analyte> MINERALS = EnumSet.of(
            Analyte.CA, Analyte.P, Analyte.MG, Analyte.K, Analyte.NA, Analyte.S, Analyte.CL, Analyte.NO3, Analyte.KNO3);

    private Figures() {}

    /** @param value in the analyte's unit; energy is shown a pound, as the trade says it */
    static String say(Analyte analyte, double value) {
        var unit = analyte.unit();
        if (unit.kind() == Kind.ENERGY_DENSITY) {
            return Show.withUnit(Show.number(unit.to(Unit.MCAL_PER_LB, value), 2), Unit.MCAL_PER_LB);
        }
        return Show.withUnit(Show.number(value, decimals(analyte, value)), unit);
    }

    private static int decimals(Analyte analyte, double value) {
        if (MINERALS.contains(analyte)) {
            return value < 0.1 ? 3 : 2;
        }
        return switch (analyte) {
            case RFV, RFQ, NO3N, HCN, DCAD -> 0;
            case PH -> 1;
            default -> analyte.unit() == Unit.PERCENT ? 1 : value < 10 ? 2 : 0;
        };
    }

    /** "report of 14 Oct 2026, Tin Valley", "worked out from …" */
    static String from(Origin origin) {
        if (origin instanceof Origin.Typed typed) {
            return typed.where();
        }
        if (origin instanceof Origin.Published published) {
            return "feed book: %s (%s)"
                    .formatted(
                            published.source().cite(),
                            published.source().known().words());
        }
        var ends = new LinkedHashSet<String>();
        ends(((Origin.Computed) origin).by(), ends);
        return "worked out" + (ends.isEmpty() ? "" : " from the " + String.join(" and the ", ends));
    }

    private static void ends(Worked work, Set<String> found) {
        for (var line : work.lines()) {
            for (var input : line.inputs()) {
                if (input.origin() instanceof Origin.Computed computed) {
                    ends(computed.by(), found);
                } else if (!input.origin().equals(Origin.TYPED)) {
                    found.add(from(input.origin()));
                }
            }
        }
    }

    static List<String> joined(String... parts) {
        var said = new ArrayList<String>();
        for (var part : parts) {
            if (!part.isBlank()) {
                said.add(part);
            }
        }
        return said;
    }
}
