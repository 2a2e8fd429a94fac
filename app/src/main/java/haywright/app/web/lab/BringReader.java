package haywright.app.web.lab;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.Days;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.text.ReportText;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.workings.Refused;
import java.util.EnumSet;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What is understood of the text in the form, with the answers that were given of it. A test of water is turned away. */
final class BringReader {
    private static final Pattern WATER = Pattern.compile(
            "(?i)\\b(?:mg/l|[mµu]s/cm|µmhos?/cm|total dissolved solids|tds|conductivity|e\\. ?coli|coliforms?|(?:well|stock|livestock|surface|drinking|pond|dugout|spring|ditch|tank) water|water (?:analysis|test|report|quality|suitability|sample|lab\\w*)|hardness|alkalinity|bicarbonate)\\b"
                    + "|(?:sample type|matrix|material|type|sample)\\s*[:,;|]\\s*(?:[\\p{L}]+ )?water\\b");

    /** Minerals, nitrate and pH are printed of water too. */
    private static final Set<Analyte> OF_WATER = EnumSet.of(
            Analyte.TDS,
            Analyte.SO4W,
            Analyte.PH,
            Analyte.NO3,
            Analyte.NO3N,
            Analyte.NH3N,
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
            Analyte.SE,
            Analyte.CO,
            Analyte.AL);

    private BringReader() {}

    /** Which stands first in the days of the sheet: as they show, else as was answered. */
    static Days.Order order(Form form) {
        var shown = Days.order(form.value(BringPages.TEXT));
        return shown != Days.Order.UNTOLD
                ? shown
                : switch (form.value(BringPages.DAYS)) {
                    case "month_first" -> Days.Order.MONTH_FIRST;
                    case "day_first" -> Days.Order.DAY_FIRST;
                    default -> shown;
                };
    }

    private static @Nullable Basis basis(Form form) {
        for (var one : Basis.values()) {
            if (Form.id(one).equals(form.value(BringPages.BASIS))) {
                return one;
            }
        }
        return null;
    }

    static Understood understood(Page page, Form form) {
        var text = form.value(BringPages.TEXT);
        var words = NamesForm.vocabulary(page, form);
        var decimals = switch (form.value(BringPages.DECIMAL)) {
            case "comma" -> Decimals.COMMA;
            case "point" -> Decimals.POINT;
            default -> Decimals.BY_SHEET;
        };
        boolean looksLikeWater = WATER.matcher(text).find();
        try {
            var found = read(text, decimals, basis(form), words);
            if (looksLikeWater && found.samples().stream().noneMatch(BringReader::isOfFeed)) {
                throw ofWater();
            }
            return found;
        } catch (Refused e) {
            var problem = e.problems().get(0);
            boolean isBasis = problem.field().equals(BringPages.BASIS.name());
            throw looksLikeWater
                            && (problem.field().equals(BringPages.TEXT.name())
                                    || isBasis && isWaterOnly(text, decimals, words))
                    ? ofWater()
                    : e;
        }
    }

    /** A test of water is never asked for the basis of its figures. */
    private static boolean isWaterOnly(String text, Decimals decimals, Vocabulary words) {
        try {
            return read(text, decimals, Basis.DRY_MATTER, words).samples().stream()
                    .noneMatch(BringReader::isOfFeed);
        } catch (Refused e) {
            return false;
        }
    }

    private static Understood read(String text, Decimals decimals, @Nullable Basis untold, Vocabulary words) {
        return ReportCsv.isOne(text, words)
                ? ReportCsv.read(text, decimals, untold, words)
                : ReportText.read(text, decimals, untold, words);
    }

    private static boolean isOfFeed(Understood.Sample sample) {
        return sample.cells().stream().anyMatch(cell -> !OF_WATER.contains(cell.analyte()));
    }

    private static Refused ofWater() {
        return new Refused(
                BringPages.TEXT.name(),
                "",
                "no feed was found on it, and it looks like a test of water",
                "Water goes on its own page: Read it, then Stock water. Type its figures there.");
    }
}
