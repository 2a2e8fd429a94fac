package haywright.app.exchange.text;

import haywright.app.exchange.lab.Told;
import haywright.app.exchange.line.Names;
import haywright.app.exchange.line.TextLine;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** What stands over figures where no line says by its words that it is one of headings. */
final class StrayHeadings {
    private static final int LINES_OF_HEADINGS = 3;
    /** Lines under headings in which one with all its figures is looked for. */
    private static final int LOOK_AHEAD = 40;

    /** Lines over the first figures in which their samples are looked for. */
    private static final int LINES_OF_SAMPLES = 12;

    /** Columns of text by which a heading may stand beside its figures. */
    private static final int NEAR = 8;

    private final List<TextLine> lines;
    private final Names names;
    private final Letterhead letterhead;

    /** @param line that they stand in */
    record Over(TableHead head, TextLine line) {}

    StrayHeadings(List<TextLine> lines, Names names, Letterhead letterhead) {
        this.lines = lines;
        this.names = names;
        this.letterhead = letterhead;
    }

    /** Where no headings stand, a line over the figures may name one sample for each of them. */
    Optional<Over> samples(int at, List<TextLine.Word> figures) {
        if (figures.size() < 2 || !lines.get(at).isAligned()) {
            return Optional.empty();
        }
        var above = lines.subList(Math.max(0, at - LINES_OF_SAMPLES), at);
        for (var told : List.of(Told.BAG, Told.NUMBER)) {
            for (var line : above) {
                var cells = line.cells().stream().map(TextLine::join).toList();
                if (cells.size() == figures.size() + 1
                        && Told.of(cells.get(0).text()).filter(told::equals).isPresent()) {
                    return Optional.of(new Over(TableHead.ofSamples(cells.subList(1, cells.size()), figures), line));
                }
            }
        }
        return Optional.empty();
    }

    /** Where several figures stand beside a name, words over each of them are its heading, whatever they say. */
    Optional<Over> unknown(int at) {
        for (int above = at - 1; above >= Math.max(0, at - LINES_OF_HEADINGS); above--) {
            var line = lines.get(above);
            var cells = line.cells().stream().map(TextLine::join).toList();
            boolean isOver = cells.size() > 1
                    && !line.text().contains(":")
                    && line.words().stream().noneMatch(word -> word.isFigure() || word.isGarbled());
            if (isOver) {
                var figures = figuresFrom(at);
                int wanted = figures.size();
                if (wanted < 2 || cells.size() < wanted) {
                    return Optional.empty();
                }
                boolean isInCells = cells.get(0).isInCell();
                var headings = isInCells
                        ? cells.stream().filter(cell -> cell.cell() > 0).toList()
                        : cells.subList(cells.size() - wanted, cells.size());
                // one for each figure, with a word over the names or without
                boolean areAsMany = cells.size() - wanted <= 1;
                boolean areOver = isInCells
                        || areAsMany
                        || IntStream.range(0, wanted)
                                .allMatch(i -> Math.abs(headings.get(i).middle()
                                                - figures.get(i).middle())
                                        < NEAR);
                if (headings.size() > 1 && areOver && !letterhead.isAll(line)) {
                    return Optional.of(new Over(TableHead.unknown(headings, figures, names.words()), line));
                }
                return Optional.empty();
            }
        }
        return Optional.empty();
    }

    /** Of the first line from here on with several beside one name; none where there is no such line. */
    private List<TextLine.Word> figuresFrom(int at) {
        return lines.subList(at, Math.min(lines.size(), at + LOOK_AHEAD)).stream()
                .filter(TextLine::isAligned)
                .map(names::rows)
                .filter(rows ->
                        rows.size() == 1 && rows.get(0).isTold() && !rows.get(0).areTold())
                .map(rows -> rows.get(0).figures())
                .filter(some -> some.size() > 1)
                .findFirst()
                .orElse(List.of());
    }
}
