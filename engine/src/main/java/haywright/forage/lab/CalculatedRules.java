package haywright.forage.lab;

import static haywright.forage.Say.number;
import static haywright.forage.Say.rounded;

import haywright.forage.Analyte;
import haywright.forage.energy.DigestibleEnergy;
import haywright.forage.energy.EnergyLine;
import haywright.forage.energy.Fiber;
import haywright.forage.energy.LinearNetEnergy;
import haywright.forage.energy.NetEnergy;
import haywright.forage.energy.RelativeFeedValue;
import haywright.forage.energy.SummativeTdn;
import haywright.forage.energy.WaysToTdn;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What the laboratory worked out itself, worked out again. */
final class CalculatedRules {
    static final List<Rule> ALL = List.of(
            CalculatedRules::feedValue,
            CalculatedRules::forageQuality,
            CalculatedRules::whichTdn,
            CalculatedRules::whichEnergy,
            CalculatedRules::orderOfEnergies,
            CalculatedRules::tdnOfForage,
            CalculatedRules::availableProtein);

    private static final List<Analyte> ENERGIES =
            List.of(Analyte.NEM, Analyte.NEG, Analyte.NEL, Analyte.ME, Analyte.DE);

    private CalculatedRules() {}

    private static void feedValue(Sheet sheet, List<Issue> issues) {
        if (sheet.has(Analyte.RFV, Analyte.ADF, Analyte.NDF) && isFiber(sheet)) {
            double again = new RelativeFeedValue(new Fiber(sheet.get(Analyte.ADF), sheet.get(Analyte.NDF))).index();
            if (Math.abs(again - sheet.get(Analyte.RFV)) > 2) {
                issues.add(Issue.warning(
                        "C21",
                        Analyte.RFV,
                        "relative feed value %s is printed, and the printed fibers give %s"
                                .formatted(number(sheet.get(Analyte.RFV)), rounded(again, 0)),
                        "Are ADF and NDF on dry matter as printed?"));
            }
        }
    }

    private static boolean isFiber(Sheet sheet) {
        return sheet.get(Analyte.ADF) <= sheet.get(Analyte.NDF) && sheet.get(Analyte.NDF) > 0;
    }

    private static void forageQuality(Sheet sheet, List<Issue> issues) {
        if (sheet.has(Analyte.RFQ) && !sheet.has(Analyte.CP, Analyte.FAT, Analyte.ASH, Analyte.NDF, Analyte.NDFD)) {
            issues.add(Issue.information(
                    "C22",
                    Analyte.RFQ,
                    "relative forage quality cannot be worked out again: that takes protein, fat, ash, NDF and its 48 hour digestibility",
                    "Nothing to do."));
        }
    }

    /** A way of working a figure out, and what it gives here. */
    private record Candidate(String name, double value) {}

    private static void whichTdn(Sheet sheet, List<Issue> issues) {
        if (!sheet.has(Analyte.TDN)) {
            return;
        }
        var candidates = new ArrayList<Candidate>();
        for (var way : WaysToTdn.any(sheet.feedClass(), sheet::value)) {
            candidates.add(new Candidate(way.name(), way.tdn().percent()));
        }
        name("C23", sheet, issues, Analyte.TDN, candidates, 0.3);
    }

    /** DE, ME and net energy, each where it is printed. */
    private static void whichEnergy(Sheet sheet, List<Issue> issues) {
        for (var analyte : ENERGIES) {
            if (sheet.has(analyte)) {
                name("C24", sheet, issues, analyte, energies(sheet, analyte), 0.02);
            }
        }
    }

    /** By what the laboratory may have taken it from: its TDN, its ADF or the fractions. */
    private static List<Candidate> energies(Sheet sheet, Analyte energy) {
        var candidates = new ArrayList<Candidate>();
        sheet.value(Analyte.TDN).ifPresent(tdn -> {
            var from = new NetEnergy(tdn);
            switch (energy) {
                case DE -> candidates.add(new Candidate("0.04409·TDN", from.de()));
                case ME -> candidates.add(new Candidate("0.82·0.04409·TDN", from.me()));
                case NEM -> candidates.add(new Candidate("the NRC cubic from its TDN", from.nem()));
                case NEG -> candidates.add(new Candidate("the NRC cubic from its TDN", from.neg()));
                default -> {} // the beef editions have no NEl
            }
        });
        for (var line : EnergyLine.to(energy)) {
            sheet.value(line.from())
                    .ifPresent(x -> candidates.add(
                            new Candidate("the line “" + line.name() + "”", new LinearNetEnergy(line, x).mcalPerKg())));
        }
        if (energy == Analyte.DE) {
            for (var way : WaysToTdn.any(sheet.feedClass(), sheet::value)) {
                if (way.tdn() instanceof SummativeTdn fractions) {
                    candidates.add(new Candidate(way.name(), new DigestibleEnergy(fractions).mcalPerKg()));
                }
            }
        }
        return candidates;
    }

    /** Says which equations give what is printed, or that none known here does. */
    private static void name(
            String rule, Sheet sheet, List<Issue> issues, Analyte analyte, List<Candidate> candidates, double within) {
        if (candidates.isEmpty()) {
            return;
        }
        double printed = sheet.get(analyte);
        candidates.sort(Comparator.comparingDouble(c -> Math.abs(c.value - printed)));
        var agree = candidates.stream()
                .filter(c -> Math.abs(c.value - printed) <= within)
                .map(Candidate::name)
                .toList();
        var nearest = candidates.get(0);
        issues.add(
                agree.isEmpty()
                        ? Issue.information(
                                rule,
                                analyte,
                                "%s is by none of the equations known here; the nearest, %s, gives %s"
                                        .formatted(
                                                sheet.say(analyte),
                                                nearest.name,
                                                rounded(nearest.value, analyte == Analyte.TDN ? 1 : 2)),
                                "Ask the laboratory which equation it uses.")
                        : Issue.information(
                                rule,
                                analyte,
                                "%s agrees with %s".formatted(sheet.say(analyte), String.join("; also with ", agree)),
                                "Nothing to do."));
    }

    private static void orderOfEnergies(Sheet sheet, List<Issue> issues) {
        var order = List.of(Analyte.NEG, Analyte.NEM, Analyte.ME, Analyte.DE);
        for (int i = 0; i + 1 < order.size(); i++) {
            var lower = order.get(i);
            var higher = order.get(i + 1);
            if (sheet.has(lower, higher) && sheet.get(lower) >= sheet.get(higher)) {
                issues.add(Issue.error(
                        "C25",
                        lower,
                        "%s is not below %s".formatted(sheet.say(lower), sheet.say(higher)),
                        "Are the two swapped, or in different units?"));
            }
        }
    }

    private static void tdnOfForage(Sheet sheet, List<Issue> issues) {
        if (sheet.feedClass().isForage()
                && sheet.has(Analyte.TDN)
                && (sheet.get(Analyte.TDN) < 35 || sheet.get(Analyte.TDN) > 90)) {
            issues.add(Issue.warning(
                    "C26",
                    Analyte.TDN,
                    "TDN %s %% is outside what forages have".formatted(number(sheet.get(Analyte.TDN))),
                    "Is it the right figure, on dry matter?"));
        }
    }

    private static void availableProtein(Sheet sheet, List<Issue> issues) {
        if (!sheet.has(Analyte.ACP, Analyte.CP)) {
            return;
        }
        double available = sheet.get(Analyte.ACP);
        boolean above = available > sheet.get(Analyte.CP) + 0.1;
        boolean below = sheet.has(Analyte.ADICP) && available < sheet.get(Analyte.CP) - sheet.get(Analyte.ADICP) - 0.1;
        if (above || below) {
            issues.add(Issue.error(
                    "C27",
                    Analyte.ACP,
                    "%s cannot be %s"
                            .formatted(
                                    sheet.say(Analyte.ACP),
                                    above
                                            ? "above " + sheet.say(Analyte.CP)
                                            : "less than what %s leaves of %s"
                                                    .formatted(sheet.say(Analyte.ADICP), sheet.say(Analyte.CP))),
                    "Are all three on dry matter?"));
        }
    }
}
