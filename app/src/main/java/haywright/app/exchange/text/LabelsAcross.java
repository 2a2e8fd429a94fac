package haywright.app.exchange.text;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Whose;
import haywright.app.exchange.line.Names;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import haywright.app.exchange.text.Across.Column;
import haywright.forage.Analyte;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A line over analytes across the top that says whose figures stand under each of its words: "Last year" and "This year"
 * over several analytes each. Analytes before the first of them are of all.
 */
record LabelsAcross(List<Word> labels) {
    private static final int MOST_WORDS = 6;
    /** Columns of text by which words that begin together may begin apart. */
    private static final int NEAR = 2;

    private static final LabelsAcross NONE = new LabelsAcross(List.of());

    LabelsAcross {
        labels = List.copyOf(labels);
    }

    static LabelsAcross none() {
        return NONE;
    }

    /** Empty where a line says no such thing. */
    static Optional<LabelsAcross> in(TextLine line, Names names) {
        if (!line.isAligned() && line.cells().size() > 1 || line.isBlank() || line.hasDecimals()) {
            return Optional.empty();
        }
        var cells = line.cells().stream()
                .map(TextLine::join)
                .map(word -> word.with(word.text().replaceAll("^[-–—=_\\s]+|[-–—=_:\\s]+$", "")))
                .filter(word -> !word.text().isEmpty())
                .toList();
        boolean hasCorner = cells.size() > 1 && isCorner(cells.get(0).text());
        var labels = cells.subList(hasCorner ? 1 : 0, cells.size());
        boolean areWords = !labels.isEmpty()
                && !Head.isField(line)
                && labels.stream()
                        .allMatch(label -> label.text().split(" ").length <= MOST_WORDS
                                && label.text().indexOf(':') < 0
                                && label.text().matches(".*\\p{L}.*|['’]?[0-9]{2}|20[0-9]{2}.*|[0-9]+[/-][0-9/-]+")
                                && names.heading(label.text()).isEmpty()
                                && (Head.tells(label.text()).isEmpty() || Whose.isSaid(label.text())));
        if (!areWords) {
            return Optional.empty();
        }
        var whose = whose(labels);
        return whose.contains(Whose.OTHERS) || whose.contains(Whose.ASKED)
                ? Optional.of(new LabelsAcross(labels))
                : Optional.empty();
    }

    private static boolean isCorner(String text) {
        return ColumnWords.isNames(text)
                || Whose.isColumn(text)
                || Head.tells(text).isPresent();
    }

    private static List<Whose> whose(List<Word> labels) {
        return Whose.of(
                labels.stream().map(label -> Whose.said(label.text()).who()).toList());
    }

    /** Each column of figures with what stands over it. */
    List<Column> over(List<Column> columns, Names names) {
        if (labels.isEmpty()) {
            return columns;
        }
        var figures = columns.stream()
                .filter(c -> c.tells() == null && c.analyte() != null)
                .toList();
        var blocks = blocks(figures);
        var whose = whose(labels);
        var all = new ArrayList<Column>();
        for (var column : columns) {
            var label = figures.contains(column) ? label(column, figures, blocks) : null;
            if (label == null) {
                all.add(column);
                continue;
            }
            var own = column.heading();
            var heading = own.with(label.text() + " " + own.text());
            var said = names.words().column(heading.text()).orElse(null);
            var analyte = column.analyte();
            boolean isCommon = isCommonPerhaps(column, figures, blocks);
            var is = said != null
                    ? said == ColumnIs.LEFT_OUT ? Whose.OTHERS : Whose.OWN
                    : isCommon ? Whose.ASKED : whose.get(labels.indexOf(label));
            var basis = said != null && said.basis() != null
                    ? said.basis()
                    : column.basis() != null || analyte == null || analyte.basis() != null
                            ? column.basis()
                            : Whose.said(label.text()).basis().orElse(null);
            boolean isOwn = is == Whose.OWN || is == Whose.UNSAID;
            all.add(new Column(isOwn && said == null ? own : heading, analyte, basis, null, is));
        }
        return all;
    }

    /** An analyte that comes again begins the next. */
    private static List<List<Column>> blocks(List<Column> figures) {
        var blocks = new ArrayList<List<Column>>();
        var seen = new HashSet<String>();
        for (var column : figures) {
            if (blocks.isEmpty() || !seen.add(key(column))) {
                blocks.add(new ArrayList<>());
                seen.clear();
                seen.add(key(column));
            }
            blocks.get(blocks.size() - 1).add(column);
        }
        return blocks;
    }

    private static String key(Column column) {
        var heading = column.analyte();
        var basis = heading == null || heading.basis() == null ? column.basis() : heading.basis();
        return (heading == null ? column.heading().text() : heading.analyte().id()) + " " + basis;
    }

    private @Nullable Word label(Column column, List<Column> figures, List<List<Column>> blocks) {
        var own = column.heading();
        if (own.isInCell()) {
            return labels.stream()
                    .filter(label -> label.cell() <= own.cell())
                    .max(Comparator.comparingInt(Word::cell))
                    .orElse(null);
        }
        if (isBefore(column, figures) && isCommon(column, figures, blocks)) {
            return null;
        }
        int block = IntStream.range(0, blocks.size())
                .filter(at -> blocks.get(at).contains(column))
                .findFirst()
                .orElse(0);
        if (labels.size() == 1) {
            var label = labels.get(0);
            boolean isUnder = blocks.size() == 1
                    ? own.to() > label.from() - NEAR
                    : IntStream.range(0, blocks.size())
                                    .boxed()
                                    .min(Comparator.comparingDouble(
                                            at -> Math.abs(middle(blocks.get(at)) - label.middle())))
                                    .orElse(0)
                            == block;
            return isUnder ? label : null;
        }
        return blocks.size() == labels.size()
                ? labels.get(block)
                : labels.stream()
                        .min(Comparator.comparingDouble(label -> Math.abs(label.middle() - own.middle())))
                        .orElse(null);
    }

    /** Left of all labels, with an analyte that no other column has. */
    private boolean isBefore(Column column, List<Column> figures) {
        var analyte = column.analyte();
        Analyte own = analyte == null ? null : analyte.analyte();
        return column.heading().to() <= labels.get(0).from()
                && figures.stream()
                                .map(Column::analyte)
                                .filter(other -> other != null && other.analyte() == own)
                                .count()
                        == 1;
    }

    /** The first label begins over a later column, or stands over the middle of those without it. */
    private boolean isCommon(Column column, List<Column> figures, List<List<Column>> blocks) {
        var first = labels.get(0);
        var later = figures.subList(figures.indexOf(column) + 1, figures.size());
        if (later.stream().anyMatch(c -> Math.abs(c.heading().from() - first.from()) <= NEAR)) {
            return true;
        }
        var block = blocks.get(0);
        var without = block.stream().filter(c -> !isBefore(c, figures)).toList();
        return !without.isEmpty()
                && Math.abs(middle(without) - first.middle()) < Math.abs(middle(block) - first.middle());
    }

    /** It may be of all, or of what the first label says. */
    private boolean isCommonPerhaps(Column column, List<Column> figures, List<List<Column>> blocks) {
        return !column.heading().isInCell() && isBefore(column, figures) && !isCommon(column, figures, blocks);
    }

    private static double middle(List<Column> block) {
        return (block.get(0).heading().from()
                        + block.get(block.size() - 1).heading().to())
                / 2.0;
    }
}
