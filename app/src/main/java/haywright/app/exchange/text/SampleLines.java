package haywright.app.exchange.text;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.ShareSaid;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.lab.Whose;
import haywright.app.exchange.line.TextLine;
import haywright.forage.Basis;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A table with one sample in each line, its analytes across the top. */
final class SampleLines {
    private final Samples samples;
    private final SaidAbove above;
    private final Asked asked;
    private final Set<String> notTaken;
    private final Ledger ledger;
    private final Vocabulary words;

    SampleLines(Samples samples, SaidAbove above, Asked asked, Set<String> notTaken, Ledger ledger, Vocabulary words) {
        this.samples = samples;
        this.above = above;
        this.asked = asked;
        this.notTaken = notTaken;
        this.ledger = ledger;
        this.words = words;
    }

    private void list(TextLine line, String why) {
        notTaken.add(line.notTaken(why));
        ledger.settle(line);
    }

    /** A table with one sample in each line begins. */
    void begin(Across table, TextLine line, List<TextLine> headings) {
        ledger.settle(
                headings, table.columns().stream().map(Across.Column::heading).toList());
        for (var column : table.columns()) {
            var written = column.heading().text();
            asked.said(written);
            if (column.whose() == Whose.OTHERS) {
                asked.others(written);
                continue;
            }
            if (column.whose() == Whose.ASKED) {
                continue;
            }
            if (column.tells() == null) {
                asked.name(written, line, column.analyte());
            }
            if (column.analyte() == null && column.tells() == null) {
                asked.unknown(
                        written, words.leavesOut(written) ? Gathering.LEFT_OUT : "no analyte of this name is known");
            }
        }
    }

    void take(TextLine line, Across.Line sample) {
        var places = sample.places();
        if (places.contains(null)) {
            list(line, "no heading over the figure says what it is");
            return;
        }
        if (sample.told().stream().anyMatch(field -> Told.isOfMany(field.value()) || Whose.isOfOthers(field.value()))) {
            list(line, "it is no sample");
            return;
        }
        sample.strange().forEach(word -> {
            notTaken.add(line.notTaken("“%s” is not a number".formatted(word.text())));
            ledger.settle(line, List.of(word));
        });
        var on = basis(line, sample);
        if (on == null && sample.basis() != null) {
            return;
        }
        var read = new ArrayList<Figure>();
        for (int i = 0; i < places.size(); i++) {
            var column = Objects.requireNonNull(places.get(i));
            var word = sample.figures().get(i);
            var named = column.analyte();
            var share =
                    named == null || named.share() != null ? Optional.<String>empty() : above.share(named.analyte());
            var analyte = named == null || share.isEmpty()
                    ? named
                    : Heading.measured(named.analyte(), share.get()).orElse(named);
            boolean isOfFeed = column.basis() != null || named != null && named.basis() != null;
            if (share.isPresent() && word.isFigure() && isOfFeed) {
                notTaken.add(line.notTaken(ShareSaid.contradicted(share.get())));
                ledger.settle(line, List.of(word));
                continue;
            }
            if (column.whose() == Whose.OTHERS) {
                asked.ignored(column.heading().text(), word.text());
                ledger.settle(line, List.of(word));
                continue;
            }
            if (column.whose() == Whose.ASKED) {
                if (word.isFigure()) {
                    asked.column(column.heading().text(), word.text());
                    notTaken.add(Gathering.underUnknown(line, word, column.heading()));
                }
                ledger.settle(line, List.of(word));
                continue;
            }
            if (analyte != null && word.isFigure()) {
                if (on != null
                        && column.basis() != null
                        && on != column.basis()
                        && analyte.analyte().hasBasis()) {
                    notTaken.add(line.notTaken(
                            "the line of “%s” says one basis, and the heading over it another".formatted(word.text())));
                    ledger.settle(line, List.of(word));
                    continue;
                }
                var basis = on != null ? on : column.basis() == null ? above.basis(analyte.analyte()) : column.basis();
                var name = column.heading().text();
                var question = asked.question(name, name, analyte, analyte.unit(), word.text())
                        .or(() -> Optional.of(Gathering.TAKEN_OUT)
                                .filter(out -> column.basis() == null
                                        && analyte.basis() == null
                                        && above.isTakenOut(analyte.analyte())));
                if (question.isPresent()) {
                    notTaken.add("“%s” %s: %s".formatted(name, word.text(), question.get()));
                    ledger.settle(line, List.of(word));
                    asked.again(name, word.text());
                    continue;
                }
                read.add(new Figure(
                        line,
                        name,
                        analyte.analyte(),
                        0,
                        0,
                        basis,
                        analyte.unit(),
                        analyte.share(),
                        null,
                        List.of(),
                        line.shown(),
                        word));
            } else if (analyte == null) {
                asked.unknown(column.heading().text(), word.text());
                ledger.settle(line, List.of(word));
            }
        }
        if (read.isEmpty()) {
            return;
        }
        var said = above.with(sample.told());
        var codes = Stream.of(Told.BAG, Told.NUMBER, Told.LOT).flatMap(told -> said.said().all(told).stream());
        samples.inLine(codes.findFirst().orElse(""), read, said);
        read.stream()
                .collect(Collectors.groupingBy(Figure::analyte, LinkedHashMap::new, Collectors.toList()))
                .values()
                .forEach(row -> samples.take(0, row));
    }

    /** What the line says of its own basis; null where it says none, or what is not understood: that is asked. */
    private @Nullable Basis basis(TextLine line, Across.Line sample) {
        var word = sample.basis();
        if (word == null) {
            return null;
        }
        ledger.settle(line, List.of(word));
        var known = Heading.basis(word.text()).orElse(null);
        if (known != null) {
            return known;
        }
        var mark = "mark " + word.text();
        var said = words.column(mark).orElse(null);
        asked.mark(new Understood.Column(mark, line.shown(), said, true));
        if (said == null || said.basis() == null) {
            list(line, Gathering.marked(word.text(), said));
        }
        return said == null ? null : said.basis();
    }
}
