package haywright.app.exchange.lab;

import haywright.forage.Basis;
import haywright.quantity.Unit;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** What a column's heading says of what stands under it, where it is no basis, no analyte and no sample. */
public final class ColumnWords {
    private static final Set<String> NAMES = Set.of(
            "analyte",
            "analytes",
            "test",
            "tests",
            "component",
            "components",
            "nutrient",
            "nutrients",
            "parameter",
            "parameters",
            "constituent",
            "constituents",
            "item",
            "analysis",
            "analyses",
            "name",
            "determination",
            "determinations",
            "measurement",
            "property",
            "assay");
    private static final Pattern VALUES = Pattern.compile(
            "(?:(?:reported|final|test|measured|lab(?:oratory)?|your|this|sample|analytical) )*(?:result|value|amount|figure|finding|concentration|level|reading)s?|found|this sample|your sample|this report"
                    + "|(?:this|current|present)(?: (?:year|season|fall|winter|spring|summer|cutting|time|test))?(?:['’]s)?(?: (?:results?|samples?|report))?");
    private static final Pattern BEGINS_VALUE = Pattern.compile(
            "(?i)^\\s*(?:reported|final|test|measured|lab|your|this|current|sample|analytical|result|value|amount|figure|found)");
    private static final Set<String> UNITS = Set.of("unit", "units", "uom", "unit of measure", "measure");
    private static final Set<String> BASES =
            Set.of("basis", "reported basis", "moisture basis", "reporting basis", "result basis");
    private static final Pattern OTHERS = Pattern.compile(
            "(?:test |analysis |lab )?methods?|(?:normal |typical |reference |usual )?range|typical|usual|guide values?|guidelines?|normal|desired|recommended"
                    + "|reference|(?:m|r|p)?dl|lod|loq|rl|pql|(?:report(?:ing)? |rep\\.? |det\\.? |detection |quantitation |lower |method )?limit|flag|analyst|tech(?:nician)?|date (?:analy[sz]ed|run|tested|of analysis)|(?:analysis|run|test) date"
                    + "|(?:[0-9]+[- ]?(?:yr|year)s? )?(?:average|avg\\.?)|goal|target|uncertainty|error|(?:std\\.?|standard) (?:dev(?:iation|\\.)?|error)|sd|cv|\\+/-|±|rating|status|grade|interpretation|optim(?:um|al)|ideal|sufficiency|adequate|deficient|excess|low|medium|high|minimum|maximum|min\\.?|max\\.?|dilution|df");

    private ColumnWords() {}

    public static boolean isNames(String heading) {
        return NAMES.contains(key(heading))
                || corner(heading).isPresent()
                || cornerUnit(heading).isPresent();
    }

    /** "Analysis, % DM" over the names: the basis of all figures beside them; empty where the heading says none. */
    public static Optional<Basis> corner(String heading) {
        var parts = key(heading).split("\\s*[,(:–-]\\s*", 2);
        return parts.length == 2 && NAMES.contains(parts[0])
                ? Heading.basis(parts[1].replaceAll("[)]", ""))
                : Optional.empty();
    }

    /** "Test, %" over the names: the unit of all figures beside them; empty where the heading says none. */
    public static Optional<Unit> cornerUnit(String heading) {
        var parts = key(heading).split("\\s*[,(:–-]\\s*", 2);
        return parts.length == 2 && NAMES.contains(parts[0])
                ? Heading.unit(parts[1].replaceAll("[)]", "").replaceFirst("^(?:as|in) ", ""))
                : Optional.empty();
    }

    public static boolean isValue(String heading) {
        return VALUES.matcher(key(heading)).matches();
    }

    public static boolean isUnits(String heading) {
        return UNITS.contains(key(heading));
    }

    public static boolean isBasis(String heading) {
        return BASES.contains(key(heading));
    }

    /** Limits, methods and days, by words that stand for nothing else. */
    static boolean isLimit(String heading) {
        return OTHERS.matcher(key(heading)).matches();
    }

    /** Limits, methods and days, and figures of other samples or what they should be: never the sample's own. */
    public static boolean isOther(String heading) {
        return isLimit(heading) || Told.speaksOfOthers(heading) || Told.isOfMany(heading);
    }

    /** "Your result, DM" without its first words; the same where they do not say that figures stand there. */
    public static String withoutValue(String heading) {
        if (!BEGINS_VALUE.matcher(heading).find()) {
            return heading;
        }
        var words = heading.strip().split("\\s+");
        for (int end = words.length - 1; end > 0; end--) {
            var first = String.join(" ", Arrays.asList(words).subList(0, end)).replaceAll("[\\s,:(–-]+$", "");
            if (isValue(first)) {
                return String.join(" ", Arrays.asList(words).subList(end, words.length))
                        .replaceFirst("^[(–-]\\s*", "");
            }
        }
        return heading;
    }

    private static String key(String heading) {
        return Heading.key(heading).replaceAll("[:.]$", "");
    }
}
