package haywright.app.exchange.text;

import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.lab.Whose;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import haywright.app.exchange.text.TableHead.Column;
import haywright.app.exchange.text.TableHead.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A line over the headings that says whose figures stand in the columns under each of its words: "2025" and "2026", or
 * "Typical hay" and "Your sample", over a pair of bases each.
 */
record OverColumns(List<Word> labels) {
    private static final int MOST_WORDS = 6;
    /** Columns of text by which a label may stand beside its columns. */
    private static final int NEAR = 8;

    OverColumns {
        labels = List.copyOf(labels);
    }

    /** Empty where the cells of a line, or of two read downwards, say no such thing, or the headings under it have nothing that it could part. */
    static Optional<OverColumns> in(List<Word> cells, List<TextLine> above, TableHead under) {
        var figures = figures(under);
        if (cells.isEmpty() || figures.size() < 2) {
            return Optional.empty();
        }
        double first = figures.get(0).heading().from() - NEAR;
        var labels = cells.stream()
                .map(OverColumns::bare)
                .filter(cell -> cell.middle() > first)
                .toList();
        var beside = cells.stream()
                .filter(cell -> cell.middle() <= first)
                .map(Word::text)
                .toList();
        boolean areLabels = !labels.isEmpty()
                && beside.size() <= 1
                && beside.stream().allMatch(OverColumns::isCorner)
                && labels.stream()
                        .allMatch(label -> label.text().split(" ").length <= MOST_WORDS
                                && label.text().indexOf(':') < 0
                                && Heading.basis(label.text()).isEmpty())
                && labels.stream().anyMatch(label -> Whose.isSaid(label.text()));
        if (!areLabels
                || labels.size() > figures.size()
                || labels.size() == 1 && !isOverSomeOf(labels.get(0), blocks(figures))) {
            return Optional.empty();
        }
        var all = with(above, labels);
        var whose = Whose.of(all.stream().map(Word::text).toList());
        return whose.contains(Whose.OTHERS) || whose.contains(Whose.ASKED)
                ? Optional.of(new OverColumns(all))
                : Optional.empty(); // each is of a sample
    }

    /** Each with what stands over it in the lines above, where they name a sample over every one of them. */
    private static List<Word> with(List<TextLine> above, List<Word> labels) {
        var all = labels;
        for (int at = above.size() - 1; at >= 0 && !above.get(at).isBlank(); at--) {
            var line = above.get(at);
            var cells = line.cells().stream().map(TextLine::join).toList();
            if (line.text().contains(":") || cells.size() < labels.size() || Head.isField(line)) {
                break;
            }
            var over = new ArrayList<StringBuilder>();
            labels.forEach(label -> over.add(new StringBuilder()));
            cells.forEach(cell -> over.get(IntStream.range(0, labels.size())
                            .boxed()
                            .min(Comparator.comparingDouble(
                                    i -> Math.abs(labels.get(i).middle() - cell.middle())))
                            .orElse(0))
                    .append(cell.text())
                    .append(' '));
            if (over.stream().anyMatch(StringBuilder::isEmpty)) {
                break;
            }
            var before = all;
            all = IntStream.range(0, all.size())
                    .mapToObj(i -> {
                        var word = before.get(i);
                        return new Word(over.get(i) + word.text(), word.from(), word.to(), word.cell());
                    })
                    .toList();
        }
        return all;
    }

    /** "Sample A: Sudan hay    Lab mean": samples with the word that says so, beside what is none. */
    static boolean areNamesBesideOthers(TextLine line) {
        var cells = line.cells().stream().map(TextLine::join).toList();
        return cells.size() > 1
                && cells.stream().allMatch(cell -> bare(cell).text().indexOf(':') < 0)
                && cells.stream().anyMatch(cell -> Whose.isOfOthers(cell.text()));
    }

    private static Word bare(Word cell) {
        return cell.with(
                cell.text().replaceFirst("(?i)^(?:sample|bag|lot|stack|id) ?(?:no\\.? ?)?\\S{0,4} ?: *(?=\\S)", ""));
    }

    /** What may stand over the names: their heading, or the word that says what the labels are. */
    private static boolean isCorner(String text) {
        return ColumnWords.isNames(text)
                || Whose.isColumn(text)
                || Told.of(text)
                        .filter(told -> told == Told.BAG || told.isDay())
                        .isPresent();
    }

    /** A single word over one of several pairs speaks of that one where it says that it is another's; else it is a title. */
    private static boolean isOverSomeOf(Word label, List<List<Column>> blocks) {
        return blocks.size() > 1 && Whose.of(List.of(label.text())).get(0) == Whose.OTHERS;
    }

    private static List<Column> figures(TableHead head) {
        return head.columns().stream().filter(Column::isOfFigures).toList();
    }

    /** A basis that comes again begins the next. */
    private static List<List<Column>> blocks(List<Column> figures) {
        var blocks = new ArrayList<List<Column>>();
        for (var column : figures) {
            var last = blocks.isEmpty() ? null : blocks.get(blocks.size() - 1);
            boolean isAgain = last == null
                    || last.stream()
                            .anyMatch(other -> other.role() == column.role() && other.basis() == column.basis());
            if (isAgain || last == null) {
                blocks.add(new ArrayList<>(List.of(column)));
            } else {
                last.add(column);
            }
        }
        return blocks;
    }

    /** The headings with what stands over them before each; what is of others is not read, and what could be is asked. */
    TableHead over(TableHead head, Vocabulary words) {
        var figures = figures(head);
        var blocks = blocks(figures);
        var columns = new ArrayList<Column>();
        for (var column : head.columns()) {
            var label = figures.contains(column) ? label(column, figures, blocks) : null;
            columns.add(label == null ? column : under(label, column, words));
        }
        Headings.whose(columns, words);
        // what a label does not tell of its columns stays as their own headings say it
        for (int i = 0; i < columns.size(); i++) {
            boolean isAsOne = columns.get(i).role() == head.columns().get(i).role()
                    && words.column(columns.get(i).heading().text()).isEmpty();
            columns.set(i, isAsOne ? head.columns().get(i) : columns.get(i));
        }
        return new TableHead(columns);
    }

    private static Column under(Word label, Column column, Vocabulary words) {
        var own = column.heading();
        var heading = new Word(label.text() + " " + own.text(), own.from(), own.to(), own.cell());
        var said = words.column(heading.text()).orElse(null);
        var sided = new Column(column.role(), column.basis(), column.unit(), heading, column.place(), column.sample());
        if (said == null) {
            return sided;
        }
        var known = Headings.of(heading, words);
        return known == null ? sided : known.as(known.role(), known.basis() == null ? column.basis() : known.basis());
    }

    /** The names of the samples that are left, where a label gives one; empty where none does. */
    List<String> names(TableHead head) {
        var figures = figures(head);
        var blocks = blocks(figures);
        boolean isAnyLeftOut = figures.stream().anyMatch(c -> c.role() != Role.VALUE);
        return labels.stream()
                .filter(label -> isAnyLeftOut && !Whose.isSaid(label.text()))
                .filter(label -> figures.stream()
                        .anyMatch(c -> c.role() == Role.VALUE && label.equals(label(c, figures, blocks))))
                .map(Word::text)
                .toList();
    }

    private @Nullable Word label(Column column, List<Column> figures, List<List<Column>> blocks) {
        if (column.place().isInCell()) {
            return labels.stream()
                    .filter(label -> label.cell() <= column.place().cell())
                    .max(Comparator.comparingInt(Word::cell))
                    .orElse(null);
        }
        var block = IntStream.range(0, blocks.size())
                .filter(at -> blocks.get(at).contains(column))
                .findFirst()
                .orElse(0);
        if (blocks.size() == labels.size()) {
            return labels.get(block);
        }
        if (labels.size() == 1) {
            var label = labels.get(0);
            return nearest(label, blocks) == block ? label : null;
        }
        return Stream.of(column)
                .flatMap(c -> labels.stream())
                .min(Comparator.comparingDouble(
                        label -> Math.abs(label.middle() - column.heading().middle())))
                .orElse(null);
    }

    private static int nearest(Word label, List<List<Column>> blocks) {
        return IntStream.range(0, blocks.size())
                .boxed()
                .min(Comparator.comparingDouble(at -> Math.abs(middle(blocks.get(at)) - label.middle())))
                .orElse(0);
    }

    private static double middle(List<Column> block) {
        var last = block.get(block.size() - 1).heading();
        return (block.get(0).heading().from() + last.to()) / 2.0;
    }
}
