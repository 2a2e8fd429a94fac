package haywright.forage.lab;

import static haywright.forage.Say.rounded;

import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.hazard.SoilInFeed;
import java.util.List;

/** What soil, heat and bad fermentation leave in the figures. */
final class DamageRules {
    static final List<Rule> ALL =
            List.of(DamageRules::soil, DamageRules::iron, DamageRules::heat, DamageRules::badSilage);

    private DamageRules() {}

    /** Ash is soil only above what the kind has: native hay and silage of small grains hold more than sown grass. */
    private static double mostAsh(Sheet sheet) {
        double printed = switch (sheet.feedClass()) {
            case LEGUME_HAY, LEGUME_SILAGE, MIXED_HAY -> 11;
            case GRASS_HAY, CEREAL_HAY, CEREAL_SILAGE -> 9;
            default -> Double.POSITIVE_INFINITY;
        };
        return Math.max(
                printed, SoilInFeed.mostOfKind(sheet.feedClass(), sheet.book()).orElse(0));
    }

    private static void soil(Sheet sheet, List<Issue> issues) {
        if (sheet.has(Analyte.ASH) && sheet.get(Analyte.ASH) > mostAsh(sheet)) {
            boolean certain = sheet.get(Analyte.ASH) > 15;
            issues.add(
                    Issue.warning(
                            "C32",
                            Analyte.ASH,
                            "%s is %s soil in the sample"
                                    .formatted(sheet.say(Analyte.ASH), certain ? "a sure sign of" : "likely"),
                            "Was it raked, baled or cored into the ground? TDN from ADF does not see ash: the feed is poorer than it says."));
        }
    }

    private static void iron(Sheet sheet, List<Issue> issues) {
        if (sheet.feedClass().isForage()
                && sheet.has(Analyte.FE, Analyte.ASH)
                && sheet.get(Analyte.FE) > 500
                && sheet.get(Analyte.ASH) > mostAsh(sheet)) {
            issues.add(Issue.warning(
                    "C33",
                    Analyte.FE,
                    "%s beside %s is soil".formatted(sheet.say(Analyte.FE), sheet.say(Analyte.ASH)),
                    "So much iron ties up copper; ask about the mineral."));
        }
    }

    private static void heat(Sheet sheet, List<Issue> issues) {
        if (!sheet.has(Analyte.ADICP, Analyte.CP) || sheet.get(Analyte.CP) == 0) {
            return;
        }
        double share = 100 * sheet.get(Analyte.ADICP) / sheet.get(Analyte.CP);
        if (share <= 10) {
            return;
        }
        if (sheet.feedClass().isForage()) {
            issues.add(
                    Issue.warning(
                            "C34",
                            Analyte.ADICP,
                            "%s %% of the protein is bound: %s"
                                    .formatted(rounded(share, 1), share > 15 ? "it heated badly" : "it heated"),
                            "Use available protein, and ask the laboratory for chemistry if it was read by NIR. Hay that heated can burn: check its temperature and follow local fire rules."));
        } else if (sheet.feedClass() == FeedClass.DISTILLERS_GRAINS) {
            issues.add(Issue.information(
                    "C34",
                    Analyte.ADICP,
                    "%s %% of the protein is bound, which in distillers grains is partly digested all the same"
                            .formatted(rounded(share, 1)),
                    "The rules for forages are not for it."));
        }
    }

    private static void badSilage(Sheet sheet, List<Issue> issues) {
        boolean silage = switch (sheet.feedClass()) {
            case CORN_SILAGE, LEGUME_SILAGE, CEREAL_SILAGE -> true;
            default -> false;
        };
        if (!silage) {
            return;
        }
        var fix =
                "Clostridia have been at it: smell it, look for spoiled parts, and ask a veterinarian before it is fed.";
        if (sheet.or(Analyte.BUTYRIC, 0) > 0.5) {
            issues.add(Issue.warning(
                    "C35", Analyte.BUTYRIC, "%s is above 0.5 %%".formatted(sheet.say(Analyte.BUTYRIC)), fix));
        }
        if (sheet.or(Analyte.NH3N, 0) > 15) {
            issues.add(Issue.warning(
                    "C35", Analyte.NH3N, "%s of the nitrogen is above 15 %%".formatted(sheet.say(Analyte.NH3N)), fix));
        }
    }
}
