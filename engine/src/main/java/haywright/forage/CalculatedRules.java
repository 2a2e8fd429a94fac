package haywright.forage;

import static haywright.forage.Say.number;
import static haywright.forage.Say.rounded;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What the laboratory worked out itself, worked out again. */
final class CalculatedRules {
    static final List<Rule> ALL = List.of(
            CalculatedRules::feedValue,
            CalculatedRules::forageQuality,
            CalculatedRules::whichTdn,
            CalculatedRules::netEnergy,
            CalculatedRules::orderOfEnergies,
            CalculatedRules::tdnOfForage,
            CalculatedRules::availableProtein);

    private CalculatedRules() {}

    private static void feedValue(Sheet sheet, List<Issue> issues) {
        if (sheet.has(Analyte.RFV, Analyte.ADF, Analyte.NDF) && isFibre(sheet)) {
            double again = new RelativeFeedValue(new Fibre(sheet.get(Analyte.ADF), sheet.get(Analyte.NDF))).index();
            if (Math.abs(again - sheet.get(Analyte.RFV)) > 2) {
                issues.add(Issue.warning(
                        "C21",
                        Analyte.RFV,
                        "relative feed value %s is printed, and the printed fibres give %s"
                                .formatted(number(sheet.get(Analyte.RFV)), rounded(again, 0)),
                        "Are ADF and NDF on dry matter as printed?"));
            }
        }
    }

    private static boolean isFibre(Sheet sheet) {
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

    /** A way of working TDN out, and what it gives here. */
    private record Candidate(String name, double percent) {}

    private static void whichTdn(Sheet sheet, List<Issue> issues) {
        if (!sheet.has(Analyte.TDN)) {
            return;
        }
        double printed = sheet.get(Analyte.TDN);
        var candidates = new ArrayList<Candidate>();
        if (sheet.has(Analyte.ADF)) {
            for (var equation : AdfEquation.published()) {
                candidates.add(new Candidate(
                        "the line “" + equation.name() + "”", new AdfTdn(equation, sheet.get(Analyte.ADF)).percent()));
            }
        }
        if (sheet.has(Analyte.NDF, Analyte.NDICP, Analyte.LIGNIN, Analyte.CP, Analyte.ADICP, Analyte.FAT, Analyte.ASH)
                && issues.stream().noneMatch(i -> i.level() == Issue.Level.E)) {
            summative(sheet, candidates);
        }
        if (candidates.isEmpty()) {
            return;
        }
        candidates.sort(Comparator.comparingDouble(c -> Math.abs(c.percent - printed)));
        var nearest = candidates.get(0);
        issues.add(
                Math.abs(nearest.percent - printed) <= 0.3
                        ? Issue.information(
                                "C23",
                                Analyte.TDN,
                                "TDN %s %% agrees with %s".formatted(number(printed), nearest.name),
                                "Nothing to do.")
                        : Issue.information(
                                "C23",
                                Analyte.TDN,
                                "TDN %s %% is by none of the equations known here; the nearest, %s, gives %s"
                                        .formatted(number(printed), nearest.name, rounded(nearest.percent, 1)),
                                "Ask the laboratory which equation it uses."));
    }

    private static void summative(Sheet sheet, List<Candidate> candidates) {
        double free = sheet.get(Analyte.NDF) - sheet.get(Analyte.NDICP);
        double sum = free + sheet.get(Analyte.CP) + sheet.get(Analyte.FAT) + sheet.get(Analyte.ASH);
        if (sheet.get(Analyte.LIGNIN) > free
                || sheet.get(Analyte.ADICP) > sheet.get(Analyte.CP)
                || sheet.get(Analyte.NDICP) > sheet.get(Analyte.CP)
                || sheet.get(Analyte.CP) > 100
                || sum > 100) {
            return; // other rules say so
        }
        var fractions = new Fractions(
                sheet.get(Analyte.NDF),
                sheet.get(Analyte.NDICP),
                sheet.get(Analyte.LIGNIN),
                sheet.get(Analyte.CP),
                sheet.get(Analyte.ADICP),
                sheet.get(Analyte.FAT),
                sheet.get(Analyte.ASH));
        var kind = sheet.feedClass().isForage() ? SummativeTdn.Kind.FORAGE : SummativeTdn.Kind.CONCENTRATE;
        candidates.add(
                new Candidate("the summative equation of NRC 2001", new SummativeTdn(fractions, kind, 1).percent()));
        candidates.add(new Candidate("the summative equation of Weiss 1992", new WeissTdn(fractions).percent()));
    }

    private static void netEnergy(Sheet sheet, List<Issue> issues) {
        if (!sheet.has(Analyte.TDN)) {
            return;
        }
        var energy = new NetEnergy(sheet.get(Analyte.TDN));
        compare(sheet, issues, Analyte.NEM, energy.nem());
        compare(sheet, issues, Analyte.NEG, energy.neg());
    }

    private static void compare(Sheet sheet, List<Issue> issues, Analyte analyte, double again) {
        if (sheet.has(analyte) && Math.abs(sheet.get(analyte) - again) > 0.02) {
            issues.add(Issue.information(
                    "C24",
                    analyte,
                    "%s is printed, and the printed TDN gives %s: the laboratory uses another equation"
                            .formatted(sheet.say(analyte), rounded(again, 2)),
                    "The figures worked out here rest on TDN."));
        }
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
