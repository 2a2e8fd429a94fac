package haywright.app.exchange.text;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.line.Row;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import haywright.quantity.Unit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** "Basis of results: dry matter (sample as received 92.6 % dry matter)": how dry the feed came, in a sentence about the basis. */
final class DryMatterSaid {
    private static final String WHAT = "(dry matter|dm|moisture|total solids)";

    private static final List<Pattern> SAID = List.of(
            Pattern.compile(
                    "(?i)(?<![\\p{L}])" + WHAT
                            + "(?: content)?(?: of (?:the )?(?:sample|feed|hay|forage))?(?:,? (?:on |in )?as[ -](?:received|fed|is|sampled|delivered|it came))?\\s*(?:of|was|is|at|[:=,])?\\s*([0-9]{1,2}(?:[.,][0-9]+)?)\\s*(?:%|percent)"),
            Pattern.compile("(?i)(?<![0-9.,])([0-9]{1,2}(?:[.,][0-9]+)?)\\s*(?:%|percent)\\s*" + WHAT
                    + "(?! ?basis)(?![\\p{L}])"));

    private static final Pattern APART = Pattern.compile("[(;,:.].*");

    private DryMatterSaid() {}

    /** Empty where the sentence has no such figure, or it is that of a basis: "at 90 % dry matter". */
    static Optional<Row> in(TextLine line) {
        var apart = APART.matcher(line.text());
        if (!apart.find()) {
            return Optional.empty();
        }
        for (var pattern : SAID) {
            var found = pattern.matcher(line.text())
                    .region(apart.start(), line.text().length());
            if (!found.find()
                    || line.text().substring(0, found.start()).matches("(?i).*\\b(?:at|to|on|with) (?:an? )?$")) {
                continue;
            }
            boolean isNameFirst = Character.isLetter(found.group(1).charAt(0));
            var name = found.group(isNameFirst ? 1 : 2);
            int at = found.start(isNameFirst ? 2 : 1);
            var figure = new Word(found.group(isNameFirst ? 2 : 1), at, found.end(isNameFirst ? 2 : 1));
            var heading = Heading.of(name);
            if (heading.isPresent()) {
                var whole = new Word(found.group(), found.start(), found.end());
                return Optional.of(new Row(
                        name, heading.get(), List.of(whole, figure), List.of(figure), Unit.PERCENT, Map.of(), ""));
            }
        }
        return Optional.empty();
    }
}
