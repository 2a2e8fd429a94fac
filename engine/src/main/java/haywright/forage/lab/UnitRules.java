package haywright.forage.lab;

import static haywright.forage.Say.number;

import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.Say;
import haywright.forage.hazard.Nitrate;
import haywright.quantity.Unit;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Figures that would be right in another unit, or with the point in another place. */
final class UnitRules {
    static final List<Rule> ALL = List.of(
            UnitRules::netEnergyBands,
            UnitRules::nitrateForms,
            UnitRules::mineralUnits,
            UnitRules::traceInParts,
            UnitRules::movedPoint);

    private static final Set<Analyte> MACRO =
            EnumSet.of(Analyte.CA, Analyte.P, Analyte.MG, Analyte.K, Analyte.NA, Analyte.S, Analyte.CL);
    private static final Set<Analyte> TRACE = EnumSet.of(Analyte.CU, Analyte.ZN, Analyte.MN);

    /** Two nitrate tests within this are the same (feed laboratories' rule, as NO3-N). */
    private static final double SAME_NITRATE_PPM = 100;

    private UnitRules() {}

    /** The band that NEm of forages lies in, in a unit it is printed in. */
    private record Band(Unit unit, double low, double high) {
        boolean holds(double value) {
            return value >= low && value <= high;
        }
    }

    private static final List<Band> FORAGE_NEM = List.of(
            new Band(Unit.MCAL_PER_LB, 0.3, 0.9),
            new Band(Unit.MCAL_PER_KG, 0.7, 2.0),
            new Band(Unit.MCAL_PER_CWT, 30, 90));

    private static void netEnergyBands(Sheet sheet, List<Issue> issues) {
        if (!sheet.feedClass().isForage()) {
            return;
        }
        for (var reading : sheet.readings()) {
            if (reading.analyte() != Analyte.NEM) {
                continue;
            }
            var own = FORAGE_NEM.stream().filter(b -> b.unit == reading.unit()).findFirst();
            if (own.isPresent() && !own.get().holds(reading.value())) {
                FORAGE_NEM.stream()
                        .filter(b -> b.holds(reading.value()))
                        .findFirst()
                        .ifPresent(other -> issues.add(Issue.warning(
                                "C28",
                                Analyte.NEM,
                                "NEm %s is unusual for a forage, and usual as %s"
                                        .formatted(Say.with(reading.value(), reading.unit()), other.unit.symbol()),
                                "Is the unit " + other.unit.symbol() + "?")));
            }
        }
    }

    private static void nitrateForms(Sheet sheet, List<Issue> issues) {
        var figures = new LinkedHashMap<Analyte, Double>();
        add(figures, sheet, Analyte.NO3N, Nitrate.Form.NO3_N);
        add(figures, sheet, Analyte.NO3, Nitrate.Form.NO3);
        add(figures, sheet, Analyte.KNO3, Nitrate.Form.KNO3);
        if (figures.size() < 2) {
            return;
        }
        double least = Collections.min(figures.values());
        double most = Collections.max(figures.values());
        if (most - least > SAME_NITRATE_PPM && most > 1.05 * least) {
            figures.forEach((analyte, no3n) -> issues.add(Issue.error(
                    "C29",
                    analyte,
                    "%s is %s ppm NO3-N, and the report's figures go from %s to %s"
                            .formatted(sheet.say(analyte), number(no3n), number(least), number(most)),
                    "Is one in another unit? NO3 : NO3-N : KNO3 is 4.43 : 1 : 7.22.")));
        }
    }

    private static void add(Map<Analyte, Double> figures, Sheet sheet, Analyte analyte, Nitrate.Form form) {
        if (sheet.has(analyte)) {
            figures.put(analyte, new Nitrate(sheet.get(analyte), form, analyte.unit()).no3n());
        }
    }

    private static void mineralUnits(Sheet sheet, List<Issue> issues) {
        for (var reading : sheet.readings()) {
            var analyte = reading.analyte();
            boolean ppm = reading.unit() == Unit.PPM || reading.unit() == Unit.MILLIGRAM_PER_KG;
            if (MACRO.contains(analyte) && reading.unit() == Unit.GRAM_PER_KG) {
                issues.add(Issue.information(
                        "C31", analyte, "%s is in g/kg: 10 g/kg is 1 %%".formatted(analyte.words()), "Nothing to do."));
            }
            boolean macroInPpm = MACRO.contains(analyte) && ppm && reading.value() > mostPpm(analyte);
            boolean traceInPercent = TRACE.contains(analyte) && reading.unit() == Unit.PERCENT && reading.value() > 1;
            if (sheet.feedClass().isForage() && (macroInPpm || traceInPercent)) {
                issues.add(Issue.warning(
                        "C30",
                        analyte,
                        "%s of %s is far above what forages hold"
                                .formatted(analyte.words(), Say.with(reading.value(), reading.unit())),
                        macroInPpm ? "Is it in another unit than ppm?" : "Is it in ppm?"));
            }
        }
    }

    /** The rule says 10,000 ppm; potassium and calcium of good hay are above that, up to 2.7 and 1.7 % in the feed book. */
    private static double mostPpm(Analyte analyte) {
        return analyte == Analyte.K || analyte == Analyte.CA ? 50_000 : 10_000;
    }

    /**
     * Trace elements far above what feeds hold, ppm (judgment): selenium of accumulating plants reaches 5 and more, but
     * 135 is ppb in the column of ppm.
     */
    private static final Map<Analyte, Double> MOST_TRACE = Map.of(
            Analyte.SE,
            5.0,
            Analyte.CU,
            100.0,
            Analyte.ZN,
            500.0,
            Analyte.MN,
            1500.0,
            Analyte.MO,
            30.0,
            Analyte.CO,
            10.0);

    private static void traceInParts(Sheet sheet, List<Issue> issues) {
        MOST_TRACE.forEach((analyte, most) -> {
            boolean asked =
                    sheet.feedClass().isForage() || analyte == Analyte.SE && sheet.feedClass() != FeedClass.MINERAL;
            if (asked && sheet.has(analyte) && sheet.get(analyte) > most) {
                boolean ppb = sheet.get(analyte) / 1000 <= most;
                issues.add(
                        Issue.warning(
                                "C30-trace",
                                analyte,
                                "%s is far above what feeds hold".formatted(sheet.say(analyte)),
                                ppb
                                        ? "Is it in ppb (µg/kg)? Then it is %s. If it is right, ask your veterinarian before any is fed."
                                                .formatted(Say.with(sheet.get(analyte) / 1000, analyte.unit()))
                                        : "Is the point in its place? If it is right, ask your veterinarian before any is fed."));
            }
        });
    }

    private static void movedPoint(Sheet sheet, List<Issue> issues) {
        sheet.values()
                .forEach((analyte, value) -> Slip.of(sheet.feedClass(), analyte, value)
                        .ifPresent(slip -> issues.add(Issue.warning(
                                "slip",
                                analyte,
                                "%s is %s what %s usually has"
                                        .formatted(
                                                sheet.say(analyte),
                                                slip.words(),
                                                sheet.feedClass().words()),
                                "Is it %s?".formatted(Say.with(slip.likely(), analyte.unit()))))));
    }
}
