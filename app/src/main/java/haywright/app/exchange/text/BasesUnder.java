package haywright.app.exchange.text;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import haywright.app.exchange.text.TableHead.Column;
import haywright.app.exchange.text.TableHead.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Names of samples across, and in a line of its own under them the basis of each: "Lot, East, West" over "Basis, AF, DM".
 * Two lots stay two, though one is as received and the other on dry matter.
 *
 * @param lines how many both take
 */
record BasesUnder(TableHead head, int lines) {
    /** Lines that tell other things of the samples may stand between. */
    private static final int LOOK_AHEAD = 4;

    static Optional<BasesUnder> at(List<TextLine> lines, int at, Vocabulary words) {
        var names = cells(lines.get(at));
        if (names.size() < 2 || !isOverNames(names.get(0).text())) {
            return Optional.empty();
        }
        for (int next = at + 1; next < Math.min(lines.size(), at + LOOK_AHEAD); next++) {
            var bases = cells(lines.get(next));
            if (bases.size() < 2) {
                return Optional.empty();
            }
            if (ColumnWords.isBasis(bases.get(0).text())) {
                int taken = next + 1 - at;
                return head(names, bases.subList(1, bases.size()), words).map(head -> new BasesUnder(head, taken));
            }
        }
        return Optional.empty();
    }

    private static List<Word> cells(TextLine line) {
        return line.cells().stream().map(TextLine::join).toList();
    }

    private static boolean isOverNames(String corner) {
        var told = Told.of(corner);
        return ColumnWords.isNames(corner)
                || told.filter(what -> what == Told.BAG || what == Told.LOT || what == Told.NUMBER)
                        .isPresent();
    }

    /** Each basis with the name over it; one name can stand over several. Empty where they do not go with each other. */
    private static Optional<TableHead> head(List<Word> over, List<Word> bases, Vocabulary words) {
        var columns = new ArrayList<Column>();
        columns.add(new Column(Role.NAME, null, null, over.get(0)));
        var names = new ArrayList<Word>();
        for (var word : over.subList(1, over.size())) {
            if (ColumnWords.isUnits(word.text())) {
                columns.add(new Column(Role.UNIT, null, null, word));
            } else {
                names.add(word);
            }
        }
        boolean isOne = names.isEmpty()
                || bases.size() % names.size() != 0
                || bases.stream().noneMatch(word -> Heading.basis(word.text()).isPresent());
        if (isOne) {
            return Optional.empty();
        }
        for (int i = 0; i < bases.size(); i++) {
            var name = names.get(i * names.size() / bases.size()).text();
            var said = bases.get(i);
            var heading = said.with(name + " " + said.text());
            var told = words.column(heading.text()).orElse(null);
            var basis = Heading.basis(said.text()).orElse(told == null ? null : told.basis());
            var role = told == ColumnIs.LEFT_OUT ? Role.IGNORED : basis == null ? Role.OTHER : Role.VALUE;
            columns.add(new Column(role, basis, null, heading, said, name));
        }
        return Optional.of(new TableHead(columns));
    }
}
