package haywright.app.exchange.lab;

import haywright.forage.Analyte;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** What the sentences of a sheet say that an analyte is a share of: "Lignin is given as percent of NDF". */
public final class ShareSaid {
    private static final int LONGEST = 200;
    private static final String WHOLE =
            "(crude protein|protein|cp|a?ndf(?:om)?|neutral detergent fib(?:er|re)|nitrogen|n|starch|crude fat|fat|ee|adf)";

    private static final Pattern SHARE = Pattern.compile(
            "(?i)^(.*?)(?<![\\p{L}\\p{N}])(?:(?:is|are|was|were|given|expressed|reported|shown|stated|calculated|printed|figured|as|means) (?:as |an? |the )*(?:%|percent(?:age)?|pct\\.?|share|fraction|portion|proportion|part) (?:of|on|in) "
                    + "|(?:is|are|was|were|given|expressed|reported|shown|stated|calculated|based|printed|figured)(?: as)? (?:on|of|per) )"
                    + "(?:the |an? |total )*" + WHOLE + "(?: basis| fraction| content)?\\W*$");

    private final Map<Analyte, String> told = new EnumMap<>(Analyte.class);

    /** @param lines of the sheet, as they came */
    public static ShareSaid in(List<String> lines) {
        var found = new ShareSaid();
        lines.stream()
                .filter(line -> line.length() <= LONGEST)
                .flatMap(line ->
                        Pattern.compile("[.;](?=\\s|$)|\\s{2,}|\\t|[|│]").splitAsStream(line))
                .map(String::strip)
                .filter(sentence ->
                        !sentence.matches(".*[0-9].*") && Label.of(sentence).isEmpty())
                .forEach(found::sentence);
        return found;
    }

    private void sentence(String text) {
        var share = SHARE.matcher(text);
        if (share.matches() && !HalfDry.DENIED.matcher(share.group(1)).find()) {
            BasisExcept.subjects(share.group(1)).forEach(analyte -> told.put(analyte, "% of " + share.group(2)));
        }
    }

    /** Its unit, as it would stand behind its name; empty where no sentence says one. */
    public Optional<String> of(Analyte analyte) {
        return Optional.ofNullable(told.get(analyte));
    }

    /** Why a figure is not taken whose name or column says it is a share of the feed. */
    public static String contradicted(String share) {
        return "a sentence of the sheet says that it is %s, and its heading that it is of the feed. Type it in the form"
                .formatted(share);
    }
}
