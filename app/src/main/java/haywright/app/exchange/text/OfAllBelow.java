package haywright.app.exchange.text;

import haywright.app.exchange.lab.BasisSaid;
import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.line.TextLine;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A line that says the basis of all figures below in a cell of its own, beside a name or a number of the sample: no line
 * of headings.
 *
 * @param isBesideAValue whether a label with its value stands in the line
 */
record OfAllBelow(BasisSaid basis, boolean isBesideAValue) {
    private static final Pattern PERHAPS = Pattern.compile(
            "(?i)(?<!\\p{L})(?:dr(?:y|ied)|dmb?|d\\.|db|as|ar|af|a\\.|f\\.|fm|fw|fresh|wet|90 ?%|moisture|water|free)(?!\\p{L})");

    /** Empty where a line has no such cell, or several, or a heading over names or figures. */
    static Optional<OfAllBelow> in(TextLine line) {
        var cells = line.cells().stream().map(TextLine::join).toList();
        if (!PERHAPS.matcher(line.text()).find()) {
            return Optional.empty(); // most lines are sooner told by it
        }
        var bases =
                cells.stream().filter(cell -> basis(cell.text()).isPresent()).toList();
        boolean isOne = bases.size() == 1
                && cells.stream()
                        .allMatch(cell -> bases.contains(cell)
                                || cell.text().indexOf(':') > 0
                                || !ColumnWords.isNames(cell.text())
                                        && !ColumnWords.isUnits(cell.text())
                                        && !ColumnWords.isValue(cell.text())
                                        && !ColumnWords.isOther(cell.text()));
        if (!isOne) {
            return Optional.empty();
        }
        var cell = bases.get(0);
        boolean isBeside = Head.of(line).stream()
                .anyMatch(field ->
                        field.to() > field.from() && basis(field.value()).isEmpty());
        return basis(cell.text()).map(basis -> new OfAllBelow(new BasisSaid(basis, cell.from(), cell.to()), isBeside));
    }

    private static Optional<haywright.forage.Basis> basis(String text) {
        return Heading.basis(text.replaceAll("^[(\\[]|[)\\]]$", "")).or(() -> Heading.basis(BasisSaid.bare(text)));
    }
}
