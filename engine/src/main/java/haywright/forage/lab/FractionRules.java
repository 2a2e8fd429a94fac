package haywright.forage.lab;

import static haywright.forage.Say.number;

import haywright.forage.Analyte;
import haywright.forage.energy.NonFiber;
import java.util.List;

/** Parts against their wholes, all on dry matter. */
final class FractionRules {
    static final List<Rule> ALL = List.of(
            FractionRules::fibers,
            FractionRules::boundProtein,
            FractionRules::solubleProtein,
            FractionRules::digestedFiber,
            FractionRules::sugars,
            FractionRules::fattyAcids,
            FractionRules::minerals,
            FractionRules::sand,
            FractionRules::degradable,
            FractionRules::everything,
            FractionRules::nonFiber,
            FractionRules::littleInHay,
            FractionRules::nitrogen);

    private FractionRules() {}

    private static void fibers(Sheet sheet, List<Issue> issues) {
        partOf(sheet, issues, "C08", Analyte.ADF, Analyte.NDF, 1, "Are the two swapped?");
        partOf(sheet, issues, "C08", Analyte.LIGNIN, Analyte.ADF, 1, "Is lignin printed as a share of NDF?");
    }

    private static void boundProtein(Sheet sheet, List<Issue> issues) {
        var ask = "Is it printed as a share of protein, or as nitrogen?";
        partOf(sheet, issues, "C09", Analyte.ADICP, Analyte.NDICP, 0.3, ask);
        partOf(sheet, issues, "C09", Analyte.NDICP, Analyte.CP, 0.3, ask);
        partOf(sheet, issues, "C09", Analyte.ADICP, Analyte.CP, 0.3, ask);
    }

    /** Above its whole by more than rounding is an error; above it at all is worth a warning. */
    private static void partOf(
            Sheet sheet, List<Issue> issues, String rule, Analyte part, Analyte whole, double rounding, String fix) {
        if (sheet.has(part, whole) && sheet.get(part) > sheet.get(whole)) {
            boolean impossible = sheet.get(part) > sheet.get(whole) + rounding;
            var words = "%s cannot be above %s: it is part of it".formatted(sheet.say(part), sheet.say(whole));
            if (impossible) {
                issues.add(Issue.error(rule, part, words, fix));
                issues.add(Issue.error(rule, whole, words, fix));
            } else {
                issues.add(Issue.warning(rule, part, words, fix));
            }
        }
    }

    private static void solubleProtein(Sheet sheet, List<Issue> issues) {
        if (sheet.has(Analyte.SP, Analyte.NDICP, Analyte.CP)) {
            double soluble = sheet.get(Analyte.SP) * sheet.get(Analyte.CP) / 100;
            if (soluble + sheet.get(Analyte.NDICP) > sheet.get(Analyte.CP) + 1) {
                issues.add(Issue.warning(
                        "C10",
                        Analyte.SP,
                        "soluble protein %s %% of dry matter and %s leave less than nothing of %s"
                                .formatted(number(soluble), sheet.say(Analyte.NDICP), sheet.say(Analyte.CP)),
                        "Is soluble protein a share of protein, or of dry matter?"));
            }
        }
    }

    private static void digestedFiber(Sheet sheet, List<Issue> issues) {
        if (sheet.has(Analyte.NDF, Analyte.NDFD, Analyte.UNDF)) {
            double digested = sheet.get(Analyte.NDF) * sheet.get(Analyte.NDFD) / 100;
            if (digested + sheet.get(Analyte.UNDF) > sheet.get(Analyte.NDF) + 2) {
                issues.add(Issue.error(
                        "C11",
                        Analyte.UNDF,
                        "digested fiber %s %% and %s are more than %s"
                                .formatted(number(digested), sheet.say(Analyte.UNDF), sheet.say(Analyte.NDF)),
                        "Is undigested NDF printed as a share of NDF?"));
            }
        }
    }

    private static void sugars(Sheet sheet, List<Issue> issues) {
        if (sheet.has(Analyte.ESC, Analyte.WSC) && sheet.get(Analyte.ESC) > sheet.get(Analyte.WSC) + 0.5) {
            issues.add(Issue.warning(
                    "C12",
                    Analyte.ESC,
                    "%s is above %s, which holds it".formatted(sheet.say(Analyte.ESC), sheet.say(Analyte.WSC)),
                    "Are the two swapped?"));
        }
        if (sheet.has(Analyte.STARCH, Analyte.WSC, Analyte.NFC)
                && sheet.get(Analyte.STARCH) + sheet.get(Analyte.WSC) > sheet.get(Analyte.NFC) + 3) {
            issues.add(Issue.warning(
                    "C12",
                    Analyte.NFC,
                    "%s and %s are more than %s"
                            .formatted(sheet.say(Analyte.STARCH), sheet.say(Analyte.WSC), sheet.say(Analyte.NFC)),
                    "Which of the three is off?"));
        }
    }

    private static void fattyAcids(Sheet sheet, List<Issue> issues) {
        if (sheet.has(Analyte.TFA, Analyte.FAT) && sheet.get(Analyte.TFA) > sheet.get(Analyte.FAT) + 0.3) {
            issues.add(Issue.warning(
                    "C13",
                    Analyte.TFA,
                    "%s is above %s, which holds them".formatted(sheet.say(Analyte.TFA), sheet.say(Analyte.FAT)),
                    "Are the two swapped?"));
        }
    }

    private static void minerals(Sheet sheet, List<Issue> issues) {
        if (sheet.has(Analyte.ASH)) {
            double sum = 0;
            for (var mineral :
                    List.of(Analyte.CA, Analyte.P, Analyte.MG, Analyte.K, Analyte.NA, Analyte.S, Analyte.CL)) {
                sum += sheet.or(mineral, 0);
            }
            if (sum >= sheet.get(Analyte.ASH)) {
                issues.add(Issue.warning(
                        "C14",
                        Analyte.ASH,
                        "the minerals add up to %s %%, and %s holds them all"
                                .formatted(number(sum), sheet.say(Analyte.ASH)),
                        "Is one of the minerals in g/kg, or is ash as received?"));
            } else if (sheet.feedClass().isForage()
                    && sheet.has(Analyte.CA, Analyte.P, Analyte.MG, Analyte.K, Analyte.NA, Analyte.S, Analyte.CL)
                    && (sum < 0.35 * sheet.get(Analyte.ASH) || sum > 0.75 * sheet.get(Analyte.ASH))) {
                issues.add(Issue.information(
                        "C14",
                        Analyte.ASH,
                        "the minerals are %s %% of the ash, and of forages usually 35 to 75 %%"
                                .formatted(number(Math.round(100 * sum / sheet.get(Analyte.ASH)))),
                        sum < 0.35 * sheet.get(Analyte.ASH)
                                ? "The rest may be soil or silica."
                                : "Is one of the minerals off?"));
            }
        }
    }

    private static void sand(Sheet sheet, List<Issue> issues) {
        if (sheet.has(Analyte.AIA, Analyte.ASH) && sheet.get(Analyte.AIA) > sheet.get(Analyte.ASH)) {
            issues.add(Issue.error(
                    "C15",
                    Analyte.AIA,
                    "%s cannot be above %s: it is part of it".formatted(sheet.say(Analyte.AIA), sheet.say(Analyte.ASH)),
                    "Are the two swapped?"));
        }
    }

    private static void degradable(Sheet sheet, List<Issue> issues) {
        if (sheet.has(Analyte.RDP, Analyte.RUP)
                && Math.abs(sheet.get(Analyte.RDP) + sheet.get(Analyte.RUP) - 100) > 1) {
            issues.add(Issue.error(
                    "C16",
                    Analyte.RDP,
                    "%s and %s of protein make %s, not 100"
                            .formatted(
                                    sheet.say(Analyte.RDP),
                                    sheet.say(Analyte.RUP),
                                    number(sheet.get(Analyte.RDP) + sheet.get(Analyte.RUP))),
                    "Is one of them a share of dry matter?"));
        }
    }

    private static void everything(Sheet sheet, List<Issue> issues) {
        if (!sheet.has(Analyte.CP, Analyte.NDF)) {
            return;
        }
        double sum =
                sheet.get(Analyte.CP) + sheet.get(Analyte.NDF) + sheet.or(Analyte.FAT, 0) + sheet.or(Analyte.ASH, 0);
        var words = "protein, NDF, fat and ash add up to %s %% of dry matter".formatted(number(sum));
        if (sum > 105) {
            issues.add(
                    Issue.error("C17", Analyte.NDF, words, "Is one of them in another unit or from another sample?"));
        } else if (sum > 103 && !sheet.has(Analyte.NDICP)) {
            issues.add(Issue.warning(
                    "C17", Analyte.NDF, words, "The protein bound in NDF is counted twice; is there more to it?"));
        }
    }

    private static void nonFiber(Sheet sheet, List<Issue> issues) {
        var counted = NonFiber.of(sheet::value);
        if (!sheet.has(Analyte.NFC) || counted.isEmpty()) {
            return;
        }
        double whole = counted.get().whole();
        double free = counted.get().free();
        double printed = sheet.get(Analyte.NFC);
        boolean simple = Math.abs(printed - whole) <= 0.6;
        if (simple || Math.abs(printed - free) <= 0.6) {
            issues.add(Issue.information(
                    "C18",
                    Analyte.NFC,
                    simple
                            ? "non-fiber carbohydrates are counted without taking bound protein out of NDF"
                            : "non-fiber carbohydrates are counted with bound protein taken out of NDF",
                    "Nothing to do."));
        } else {
            issues.add(Issue.warning(
                    "C18",
                    Analyte.NFC,
                    "%s is neither %s nor %s, what is left of 100 by the two ways of counting"
                            .formatted(sheet.say(Analyte.NFC), number(whole), number(free)),
                    "Are all five figures from the same column?"));
        }
    }

    private static void littleInHay(Sheet sheet, List<Issue> issues) {
        boolean hay = switch (sheet.feedClass()) {
            case LEGUME_HAY, GRASS_HAY, MIXED_HAY -> true;
            default -> false;
        };
        if (!hay) {
            return;
        }
        if (sheet.has(Analyte.CP, Analyte.NDF, Analyte.FAT, Analyte.ASH)) {
            double sum =
                    sheet.get(Analyte.CP) + sheet.get(Analyte.NDF) + sheet.get(Analyte.FAT) + sheet.get(Analyte.ASH);
            if (sum < 60) {
                issues.add(Issue.warning(
                        "C19",
                        Analyte.NDF,
                        "protein, NDF, fat and ash add up to only %s %%, little for hay".formatted(number(sum)),
                        "Is one of them as received?"));
            }
        }
        if (sheet.has(Analyte.NFC) && sheet.get(Analyte.NFC) > 40) {
            issues.add(Issue.warning(
                    "C19",
                    Analyte.NFC,
                    "%s is more than hay holds".formatted(sheet.say(Analyte.NFC)),
                    "Is the class of feed right?"));
        }
    }

    private static void nitrogen(Sheet sheet, List<Issue> issues) {
        if (sheet.has(Analyte.CP, Analyte.N)) {
            double expected = 6.25 * sheet.get(Analyte.N);
            if (Math.abs(sheet.get(Analyte.CP) - expected) > 0.01 * expected) {
                issues.add(Issue.error(
                        "C20",
                        Analyte.CP,
                        "%s is not 6.25 times %s, which is %s"
                                .formatted(sheet.say(Analyte.CP), sheet.say(Analyte.N), number(expected)),
                        "Is one of them as received? Wheat in the grain trade is counted with 5.7."));
            }
        }
    }
}
