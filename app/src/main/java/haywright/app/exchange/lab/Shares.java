package haywright.app.exchange.lab;

import haywright.app.exchange.lab.Understood.Cell;
import haywright.app.words.Said;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Figures printed as a share of fiber, protein or starch, carried to what the house keeps: 9.4 % of NDF with 58.7 % NDF
 * is 5.52 % of the feed. Where the sheet does not print the whole, the figure is not taken.
 */
public final class Shares {
    private Shares() {}

    /** @param notTaken is told what could not be carried, in words */
    public static List<Cell> carried(List<Cell> cells, Consumer<String> notTaken) {
        var carried = new ArrayList<Cell>();
        for (var cell : cells) {
            var share = cell.share();
            if (share == null) {
                carried.add(cell);
                continue;
            }
            var of = share.of();
            var whole = of == null ? Heading.wholeOf(cell.analyte()) : of;
            var other = whole == null ? Optional.<Cell>empty() : whole(cells, whole);
            var sum = other.flatMap(one -> of == null ? divided(cell, one) : multiplied(cell, one));
            boolean isThere = sum.isPresent()
                    && cells.stream()
                            .anyMatch(c -> c.share() == null
                                    && c.analyte() == cell.analyte()
                                    && c.basis() == sum.get().basis());
            if (sum.isEmpty() || isThere) {
                notTaken.accept("%s: %s"
                        .formatted(
                                cell.read(),
                                isThere
                                        ? "it is printed as a share of the feed too, and that one is taken"
                                        : "%s %% of %s, and the sheet has no figure of %s to convert it with"
                                                .formatted(cell.text(), words(of), words(whole))));
            } else {
                carried.add(sum.get());
            }
        }
        return carried;
    }

    private static String words(@Nullable Analyte whole) {
        return whole == null ? "dry matter" : whole.words().toLowerCase(java.util.Locale.ROOT);
    }

    /** On dry matter where it is printed so. */
    private static Optional<Cell> whole(List<Cell> cells, Analyte whole) {
        var all = cells.stream()
                .filter(c ->
                        c.analyte() == whole && c.share() == null && percent(c).isPresent())
                .toList();
        return all.stream()
                .filter(c -> c.basis() == Basis.DRY_MATTER)
                .findFirst()
                .or(() -> all.stream().findFirst());
    }

    private static OptionalDouble percent(Cell cell) {
        var unit = cell.unit() == null ? Unit.PERCENT : cell.unit();
        try {
            double value = Double.parseDouble(cell.text());
            return OptionalDouble.of(unit.to(Unit.PERCENT, value));
        } catch (NumberFormatException e) {
            return OptionalDouble.empty();
        }
    }

    /** As it is printed, or carried to percent where it is printed in another unit: 601 g/kg are 60.1 %. */
    private static String inPercent(Cell cell) {
        return cell.unit() == null || cell.unit() == Unit.PERCENT
                ? cell.text()
                : Show.significant(percent(cell).orElseThrow(), 4);
    }

    private static Optional<Cell> multiplied(Cell cell, Cell whole) {
        return carried(cell, whole, whole.basis(), percent(whole).orElseThrow() / 100, "×");
    }

    private static Optional<Cell> divided(Cell cell, Cell whole) {
        return whole.basis() == Basis.DRY_MATTER
                ? carried(cell, whole, null, 100 / percent(whole).orElseThrow(), "÷")
                : Optional.empty();
    }

    /** A "less than" stays one, its limit carried along. */
    private static Optional<Cell> carried(Cell cell, Cell whole, @Nullable Basis basis, double by, String sign) {
        var said = Said.of(cell.text());
        if (said.isPresent() && said.get().limit().isEmpty()) {
            return Optional.of(
                    new Cell(cell.analyte(), Unit.PERCENT, basis, cell.text(), cell.read()).by(cell.method()));
        }
        var number = said.map(Said::limit).orElse(cell.text());
        try {
            double value = Double.parseDouble(number) * by;
            if (Double.isNaN(value) || Double.isInfinite(value)) {
                return Optional.empty();
            }
            var figure = Show.significant(value, 3);
            return Optional.of(new Cell(
                            cell.analyte(),
                            Unit.PERCENT,
                            basis,
                            said.isPresent() ? "<" + figure : figure,
                            "%s: %s %% %s %s %% of %s = %s %%"
                                    .formatted(
                                            cell.read(),
                                            number,
                                            sign,
                                            inPercent(whole),
                                            words(whole.analyte()),
                                            figure))
                    .by(cell.method()));
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }
}
