package haywright.app.exchange.text;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.lab.Whose;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import haywright.app.exchange.text.TableHead.Column;
import haywright.app.exchange.text.TableHead.Role;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What the words over a column say of it: names, units, a basis, figures of the sample or of others. */
final class Headings {
    /** Room between two words of one heading that were set wide. */
    private static final int WIDE = 3;

    /** Columns of text between two headings that may belong together. */
    private static final int NEAR = 6;

    private Headings() {}

    /** Whose figures stand in each column, by all headings together: what is of others is not read, and what could be is asked. */
    static void whose(List<Column> columns, Vocabulary words) {
        var said = new ArrayList<Whose.Said>();
        var figures = new ArrayList<Integer>();
        for (int i = 0; i < columns.size(); i++) {
            var column = columns.get(i);
            boolean isOfFigures =
                    column.role() == Role.VALUE || column.role() == Role.OTHER || column.role() == Role.IGNORED;
            if (isOfFigures && words.column(column.heading().text()).isEmpty()) {
                figures.add(i);
                said.add(Whose.said(column.heading().text()));
            }
        }
        var whose = Whose.of(said.stream().map(Whose.Said::who).toList());
        for (int i = 0; i < figures.size(); i++) {
            var column = columns.get(figures.get(i));
            var basis = said.get(i).basis().orElse(column.basis());
            columns.set(
                    figures.get(i),
                    switch (whose.get(i)) {
                        case OWN -> column.as(Role.VALUE, basis);
                        case OTHERS -> column.as(Role.IGNORED, null);
                        case ASKED -> column.as(Role.OTHER, null);
                        case UNSAID -> column;
                    });
        }
    }

    /** "AS  FED": the two words of a basis, set with wide room between them. */
    static List<List<Word>> spaced(List<List<Word>> cells) {
        var together = new ArrayList<List<Word>>();
        for (var cell : cells) {
            var before = together.isEmpty() ? null : together.get(together.size() - 1);
            boolean isOne = before != null
                    && before.size() == 1
                    && cell.size() == 1
                    && !cell.get(0).isInCell()
                    && cell.get(0).from() - before.get(0).to() <= WIDE
                    && Heading.basis(before.get(0).text() + " " + cell.get(0).text())
                            .isPresent();
            if (isOne && before != null) {
                together.set(together.size() - 1, List.of(before.get(0), cell.get(0)));
            } else {
                together.add(cell);
            }
        }
        return together;
    }

    /** "North bench DM": of two columns or more that say so, each has a sample with a basis behind its name. */
    static void nameSides(List<Column> columns) {
        long sides = columns.stream()
                .filter(c -> c.role() == Role.OTHER
                        && Heading.side(c.heading().text()).isPresent())
                .count();
        if (sides > 1 && columns.stream().noneMatch(c -> c.basis() != null)) {
            columns.replaceAll(c -> c.role() != Role.OTHER
                    ? c
                    : Heading.side(c.heading().text())
                            .map(side -> new Column(
                                    Role.VALUE, side.basis(), c.unit(), c.heading(), c.place(), side.sample()))
                            .orElse(c));
        }
    }

    /** Several headings may stand in one cell, when a copy has lost the room between them; not where a sign parts cells. */
    static List<Column> in(List<Word> cell, Vocabulary words) {
        var whole = TextLine.join(cell);
        var said = words.column(whole.text()).isPresent() ? of(whole, words) : null;
        if (said != null) {
            return List.of(said);
        }
        if (Whose.isEarlier(whole.text())) {
            return List.of(new Column(Role.IGNORED, null, null, whole));
        }
        if (Whose.isOfATime(whole.text())) {
            return List.of(new Column(Role.OTHER, null, null, whole)); // told by the headings beside it
        }
        var columns = new ArrayList<Column>();
        for (int at = 0; at < cell.size(); ) {
            var found = next(cell, at, words);
            if (found == null || whole.isInCell() && found.heading().to() < whole.to()) {
                return List.of(new Column(Role.OTHER, null, null, whole));
            }
            columns.add(found);
            while (at < cell.size() && cell.get(at).from() < found.heading().to()) {
                at++;
            }
        }
        return columns;
    }

    /** The longest heading that begins here; of other figures only as far as no heading of the sample's begins in it. */
    private static @Nullable Column next(List<Word> cell, int at, Vocabulary words) {
        for (int end = Math.min(cell.size(), at + 5); end > at; end--) {
            var found = of(TextLine.join(cell.subList(at, end)), words);
            int last = end;
            boolean isTwo = found != null
                    && found.role() == Role.IGNORED
                    && IntStream.range(at + 1, end)
                            .anyMatch(from -> cell.get(from)
                                            .text()
                                            .equalsIgnoreCase(cell.get(at).text())
                                    || IntStream.rangeClosed(from + 1, last)
                                            .mapToObj(to -> of(TextLine.join(cell.subList(from, to)), words))
                                            .anyMatch(inner -> inner != null
                                                    && inner.basis() != null
                                                    && !inner.heading().text().startsWith("(")));
            boolean isBehind = found != null
                    && found.role() == Role.IGNORED
                    && IntStream.range(at + 1, end)
                            .mapToObj(to -> of(TextLine.join(cell.subList(at, to)), words))
                            .anyMatch(inner -> inner != null && inner.basis() != null);
            if (found != null && !isTwo && !isBehind) {
                return found;
            }
        }
        return null;
    }

    static @Nullable Column of(Word heading, Vocabulary words) {
        var said = words.column(heading.text()).orElse(null);
        if (said != null) {
            return new Column(
                    said == ColumnIs.LEFT_OUT ? Role.IGNORED : Role.VALUE,
                    said.basis(),
                    null,
                    heading,
                    heading,
                    said == ColumnIs.SAMPLE ? heading.text() : "");
        }
        var text = Heading.key(heading.text()).replaceAll("[:.]$", "");
        if (ColumnWords.isNames(text)) {
            return new Column(
                    Role.NAME,
                    ColumnWords.corner(text).orElse(null),
                    ColumnWords.cornerUnit(text).orElse(null),
                    heading);
        }
        if (ColumnWords.isBasis(text)) {
            return new Column(Role.BASIS, null, null, heading);
        }
        if (ColumnWords.isUnits(text)) {
            return new Column(Role.UNIT, null, null, heading);
        }
        if (ColumnWords.isOther(text)) {
            return new Column(Role.IGNORED, null, null, heading);
        }
        var rest =
                ColumnWords.withoutValue(text).replaceAll("[)(\\[\\],]+", " ").strip();
        var unit = Heading.unit(rest.replaceFirst("^.* (?=\\S+$)", ""));
        var bare = unit.isEmpty() ? rest : rest.replaceFirst("\\s*\\S+$", "");
        if (unit.isEmpty() && rest.startsWith("%")) {
            unit = Optional.of(Unit.PERCENT);
        }
        var basis = Heading.basis(bare.isEmpty() ? rest : bare);
        if (basis.isPresent()) {
            return new Column(Role.VALUE, basis.get(), unit.orElse(null), heading);
        }
        return ColumnWords.isValue(text) || ColumnWords.isValue(bare)
                ? new Column(Role.VALUE, null, unit.orElse(null), heading)
                : null;
    }

    /**
     * The cells of two lines, each with what stands over it. What stands over none of them goes with the nearest that
     * has nothing over it: in a page that was set in letters of unlike width, headings that end together stand apart.
     */
    static List<List<Word>> over(List<List<Word>> upper, List<List<Word>> lower) {
        var left = new ArrayList<>(upper.stream().map(TextLine::stack).toList());
        var merged = new ArrayList<Word>();
        var bare = new ArrayList<Word>();
        for (var cell : lower) {
            var word = TextLine.join(cell);
            var above = left.stream().filter(up -> apart(up, word) <= 0).toList();
            left.removeAll(above);
            if (above.isEmpty()) {
                bare.add(word);
            } else {
                merged.add(TextLine.stack(
                        Stream.concat(above.stream(), Stream.of(word)).toList()));
            }
        }
        for (var word : bare) {
            var near = left.stream()
                    .filter(up -> apart(up, word) <= NEAR
                            && bare.stream().allMatch(other -> apart(up, word) <= apart(up, other)))
                    .min((a, b) -> Integer.compare(apart(a, word), apart(b, word)));
            near.ifPresent(left::remove);
            merged.add(near.map(up -> up.with(word)).orElse(word));
        }
        merged.addAll(left);
        return merged.stream()
                .sorted((a, b) -> Integer.compare(a.from(), b.from()))
                .map(List::of)
                .toList();
    }

    /** Columns of text between them; 0 or less where one stands over the other. */
    private static int apart(Word one, Word other) {
        if (one.isInCell() && other.isInCell()) {
            return one.cell() == other.cell() ? 0 : Integer.MAX_VALUE;
        }
        return Math.max(other.from() - one.to(), one.from() - other.to());
    }

    /** The cells of a line that holds units and nothing else, but for a word over the names; empty where it does not. */
    static List<Word> units(List<List<Word>> cells) {
        var units = new ArrayList<Word>();
        for (var cell : cells) {
            var word = TextLine.join(cell);
            if (unit(word).isPresent()) {
                units.add(word);
            } else if (!cells.get(0).equals(cell)
                    || cells.size() == 1
                    || !word.text().matches("[\\p{L} ]+:?")) {
                return List.of();
            }
        }
        return units;
    }

    static Optional<Unit> unit(Word word) {
        return Heading.unit(word.text().replaceAll("^[(\\[]\\s*(?:in )?|\\s*[)\\]]$", ""));
    }
}
