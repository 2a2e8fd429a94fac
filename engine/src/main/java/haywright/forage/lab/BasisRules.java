package haywright.forage.lab;

import static haywright.forage.Say.number;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import java.math.BigDecimal;
import java.util.List;

/** The two columns of a report against each other, and its dry matter against the class. */
final class BasisRules {
    static final List<Rule> ALL = List.of(
            BasisRules::moisture,
            BasisRules::columns,
            BasisRules::oneFigureOnly,
            BasisRules::dryMatterOfTheClass,
            BasisRules::ovenDriedSilage);

    /** What early rounding in a laboratory's own program leaves, as a share of the figure. */
    private static final double ROUNDED_EARLY = 0.005;

    private BasisRules() {}

    private static void moisture(Sheet sheet, List<Issue> issues) {
        if (sheet.has(Analyte.DM, Analyte.MOISTURE)) {
            double sum = sheet.get(Analyte.DM) + sheet.get(Analyte.MOISTURE);
            if (Math.abs(sum - 100) > 0.2) {
                issues.add(Issue.error(
                        "C01",
                        Analyte.DM,
                        "dry matter %s %% and moisture %s %% make %s, not 100"
                                .formatted(
                                        number(sheet.get(Analyte.DM)),
                                        number(sheet.get(Analyte.MOISTURE)),
                                        number(sum)),
                        "Which of the two is as printed?"));
            }
        }
    }

    /** Every figure that is printed as received, or at 90 %, beside one on dry matter. */
    private static void columns(Sheet sheet, List<Issue> issues) {
        for (var dry : sheet.readings()) {
            if (!dry.analyte().hasBasis() || dry.basis() != Basis.DRY_MATTER) {
                continue;
            }
            for (var other : sheet.readings()) {
                if (other.analyte() == dry.analyte() && other.basis() == Basis.AS_RECEIVED) {
                    asReceived(sheet, dry, other, issues);
                } else if (other.analyte() == dry.analyte() && other.basis() == Basis.NINETY_PCT) {
                    atNinety(dry, other, issues);
                }
            }
        }
    }

    private static void asReceived(Sheet sheet, Reading dry, Reading wet, List<Issue> issues) {
        double onDryMatter = Sheet.inHouseUnit(dry);
        double received = Sheet.inHouseUnit(wet);
        var name = dry.analyte().words();
        if (received > onDryMatter) {
            issues.add(Issue.error(
                    "C03",
                    dry.analyte(),
                    "%s is %s as received and %s on dry matter: as received is never the higher"
                            .formatted(name, number(wet.value()), number(dry.value())),
                    "Are the two columns swapped?"));
        } else if (sheet.has(Analyte.DM)) {
            double expected = onDryMatter * sheet.get(Analyte.DM) / 100;
            if (Math.abs(received - expected) > lastDigit(dry, wet) + ROUNDED_EARLY * expected) {
                issues.add(Issue.error(
                        "C02",
                        dry.analyte(),
                        "%s %s on dry matter is %s as received at %s %% dry matter, not %s"
                                .formatted(
                                        name,
                                        number(onDryMatter),
                                        number(expected),
                                        number(sheet.get(Analyte.DM)),
                                        number(received)),
                        "Which of the three is as printed: the two columns, or the dry matter?"));
            }
        }
    }

    private static void atNinety(Reading dry, Reading ninety, List<Issue> issues) {
        double expected = 0.90 * Sheet.inHouseUnit(dry);
        double printed = Sheet.inHouseUnit(ninety);
        if (Math.abs(printed - expected) > lastDigit(dry, ninety) + ROUNDED_EARLY * expected) {
            issues.add(Issue.warning(
                    "C04",
                    dry.analyte(),
                    "%s at 90 %% dry matter would be %s, not %s"
                            .formatted(dry.analyte().words(), number(expected), number(printed)),
                    "Is that column as received?"));
        }
    }

    /** One unit of the last digit of the finer figure, in the house unit. */
    private static double lastDigit(Reading a, Reading b) {
        return Math.min(lastDigit(a), lastDigit(b));
    }

    private static double lastDigit(Reading reading) {
        var scale = BigDecimal.valueOf(reading.value()).stripTrailingZeros().scale();
        return reading.unit().to(reading.analyte().unit(), Math.pow(10, -Math.max(0, scale)));
    }

    private static void oneFigureOnly(Sheet sheet, List<Issue> issues) {
        for (int i = 0; i < sheet.readings().size(); i++) {
            for (int j = i + 1; j < sheet.readings().size(); j++) {
                var one = sheet.readings().get(i);
                var two = sheet.readings().get(j);
                if (one.analyte() == two.analyte()
                        && (!one.analyte().hasBasis() || one.basis() == two.basis())
                        && Math.abs(Sheet.inHouseUnit(one) - Sheet.inHouseUnit(two)) > 1e-9) {
                    issues.add(Issue.error(
                            one.analyte().hasBasis() ? "twice" : "C05",
                            one.analyte(),
                            "%s stands there twice, as %s and as %s%s"
                                    .formatted(
                                            one.analyte().words(),
                                            number(one.value()),
                                            number(two.value()),
                                            one.analyte().hasBasis()
                                                    ? ""
                                                    : ": it has no second value on another basis"),
                            "Leave the one that is printed."));
                }
            }
        }
    }

    /** Reports print 100 for dry matter, and 0 for moisture, in their dry column. */
    static boolean isDryColumn(Reading reading) {
        return reading.basis() == Basis.DRY_MATTER
                && (reading.analyte() == Analyte.DM && Sheet.inHouseUnit(reading) == 100
                        || reading.analyte() == Analyte.MOISTURE && Sheet.inHouseUnit(reading) == 0);
    }

    private static void dryMatterOfTheClass(Sheet sheet, List<Issue> issues) {
        if (!sheet.has(Analyte.DM)) {
            return;
        }
        double dm = sheet.get(Analyte.DM);
        boolean hay = sheet.feedClass().isHay();
        boolean odd = switch (sheet.feedClass()) {
            case LEGUME_HAY, GRASS_HAY, MIXED_HAY, CEREAL_HAY -> dm < 80 || dm > 95;
            case CORN_SILAGE, LEGUME_SILAGE, CEREAL_SILAGE -> dm > 60;
            case GRAIN -> dm < 75;
            case PASTURE -> dm > 50;
            default -> false;
        };
        if (odd) {
            issues.add(Issue.warning(
                    "C06",
                    Analyte.DM,
                    "dry matter %s %% is unusual for %s"
                            .formatted(number(dm), sheet.feedClass().words()),
                    hay && dm < 80
                            ? "Is the class of feed right? Hay this damp can heat and burn: check its temperature and follow local fire rules."
                            : "Is the class of feed right?"));
        }
    }

    private static void ovenDriedSilage(Sheet sheet, List<Issue> issues) {
        boolean silage = switch (sheet.feedClass()) {
            case CORN_SILAGE, LEGUME_SILAGE, CEREAL_SILAGE -> true;
            default -> false;
        };
        if (silage && sheet.has(Analyte.DM)) {
            issues.add(Issue.information(
                    "C07",
                    Analyte.DM,
                    "an oven drives acids and alcohol off silage with the water, so true dry matter is a little higher",
                    "Nothing to do."));
        }
    }
}
