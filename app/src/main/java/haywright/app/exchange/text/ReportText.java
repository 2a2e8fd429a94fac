package haywright.app.exchange.text;

import haywright.app.exchange.lab.BasisSaid;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Delimited;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Standing;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.UnitSaid;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.line.Names;
import haywright.app.exchange.line.Row;
import haywright.app.exchange.line.Rows;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.Wrapped;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Reads a laboratory's report from lines of text: a name, and behind it one figure or one under each heading. Several
 * reports may follow each other or stand side by side. Nothing is guessed: a figure whose column cannot be told, a name
 * that is not known and a basis that is not said are listed or asked for.
 */
public final class ReportText {
    private static final int MOST_LINES = 40_000;
    /** As wide as is read. What may stand in a line grows with it, and the ways to read it grow faster. */
    private static final int MOST_LONG_LINES = 100;

    private static final int MOST_WORDS_OF_A_NAME = 10;
    private static final Pattern PAGE = Pattern.compile("^--- page ([0-9]{1,4}) ---$");

    private final List<TextLine> lines;
    private final Names names;
    private final Gathering gathering;
    private final StrayHeadings stray;
    private final HeadingLines headings;
    private @Nullable Across across;
    private Set<Integer> samplesNamed = Set.of();
    private OfOthers.Found others = new OfOthers.Found(Map.of(), Set.of(), List.of());

    private ReportText(List<TextLine> lines, Names names, Gathering gathering) {
        this.lines = lines;
        this.names = names;
        this.gathering = gathering;
        this.headings = new HeadingLines(lines, names, gathering);
        this.stray = new StrayHeadings(lines, names, gathering.above().letterhead());
    }

    /**
     * @param decimals what stands before the decimals, where somebody said
     * @param untold the basis of figures that no heading gives one; null where nobody has said
     * @param words the names this laboratory uses
     * @throws Refused with one sentence: nothing in it, no figure understood, a basis or a comma to be told
     */
    public static Understood read(String text, Decimals decimals, @Nullable Basis untold, Vocabulary words) {
        if (text.isBlank()) {
            throw new Refused("text", "", "there is nothing in it", "Paste the report, or choose a file.");
        }
        var ledger = new Ledger();
        var names = new Names(words);
        var plain = Delimited.plain(text).replace('\f', '\n').lines().toList();
        var raw = Delimited.laidOut(OfOthers.quoteOnly(plain, names));
        if (raw.size() > MOST_LINES) {
            throw new Refused("text", raw.size() + " lines", "this is more than reports have", "Split the file.");
        }
        double longLines = raw.stream()
                .mapToDouble(line -> Math.pow(Math.min(1, line.length() / (double) TextLine.MOST_COLUMNS), 3))
                .sum();
        if (longLines > MOST_LONG_LINES) {
            throw new Refused(
                    "text",
                    raw.size() + " lines",
                    "these are longer lines than reports have",
                    "Paste only the lines of the report.");
        }
        var footnotes = new Footnotes(raw);
        var lines = lines(raw, footnotes, names, ledger);
        var figures = lines.stream()
                .flatMap(line -> line.words().stream())
                .filter(TextLine.Word::isFigure)
                .map(TextLine.Word::figure)
                .toList();
        var gathering = new Gathering(names, decimals.of(figures), untold, ledger, footnotes, Asked.saysIon(text));
        new ReportText(lines, names, gathering).take();
        return gathering.done();
    }

    private static List<TextLine> lines(List<String> all, Footnotes footnotes, Names names, Ledger ledger) {
        var plain = new ArrayList<String>();
        all.forEach(raw -> plain.add(footnotes.without(plain.size() + 1, raw)));
        var lines = new ArrayList<TextLine>();
        int page = 1;
        int number = 0;
        for (var raw : Wrapped.joined(plain, names)) {
            number++;
            var mark = PAGE.matcher(raw.strip());
            if (mark.matches()) {
                page = Integer.parseInt(mark.group(1));
                continue;
            }
            lines.add(TextLine.of(number, page, raw));
            ledger.open(lines.get(lines.size() - 1), raw.length());
        }
        return lines;
    }

    /**
     * Lines that name a sample and nothing else: one stands alone over each of several blocks that begin with the same
     * figure, as in a letter about two stacks.
     */
    private Set<Integer> samplesNamed() {
        var first = new TreeMap<Integer, Analyte>();
        for (int at = 0; at + 1 < lines.size(); at++) {
            if ((at == 0 || lines.get(at - 1).isBlank()) && canName(lines.get(at))) {
                var row = names.rows(lines.get(at + 1)).stream().findFirst().orElse(null);
                var heading = row == null ? null : row.heading();
                if (heading != null) {
                    first.put(at, heading.analyte());
                }
            }
        }
        first.values()
                .removeIf(one -> first.values().stream().filter(one::equals).count() < 2);
        return first.keySet();
    }

    private boolean canName(TextLine line) {
        var text = line.text().strip();
        return !line.isBlank()
                && line.cells().size() == 1
                && line.words().size() <= MOST_WORDS_OF_A_NAME
                && text.matches(".*\\p{L}.*[^.,;:!?]")
                && !text.contains(":")
                && Understood.method(text) == null
                && Heading.basis(text).isEmpty()
                && BasisSaid.in(text).isEmpty()
                && !Told.speaksOfOthers(text)
                && names.label(text).isEmpty()
                && names.rows(line).stream().noneMatch(Row::isTold)
                && headings.alone(line).isEmpty();
    }

    private void take() {
        samplesNamed = samplesNamed();
        others = OfOthers.in(lines, names, samplesNamed, gathering::hasMeaning);
        gathering.ask(others.asked());
        unitAtTheFoot().ifPresent(gathering.above()::unitOfAll);
        lines.stream()
                .filter(line -> !line.isBlank())
                .findFirst()
                .ifPresent(gathering.above().letterhead()::first);
        for (int at = 0; at < lines.size(); ) {
            at += step(at);
        }
        gathering.table();
    }

    /** "All in percent." under the last figure is of those above it, where no other line says a unit. */
    private Optional<Unit> unitAtTheFoot() {
        int last = IntStream.range(0, lines.size())
                .filter(at -> names.rows(lines.get(at)).stream().anyMatch(Row::isTold))
                .max()
                .orElse(lines.size());
        var said = IntStream.range(0, lines.size())
                .filter(at -> !UnitSaid.in(lines.get(at).text()).isEmpty())
                .boxed()
                .toList();
        return said.size() == 1 && said.get(0) > last
                ? UnitSaid.in(lines.get(said.get(0)).text())
                : Optional.empty();
    }

    /** @return how many lines were taken */
    private int step(int at) {
        var line = lines.get(at);
        if (line.isBlank()) {
            gathering.gap();
            return 1;
        }
        var why = others.why().get(at);
        if (why != null) {
            gathering.back(line, why);
            return 1;
        }
        if (others.skipped().contains(at)) {
            return 1;
        }
        if (gathering.isLegend(line)) {
            gathering.above().line(line, List.of());
            return 1;
        }
        if (samplesNamed.contains(at)) {
            gathering.named(line);
            return 1;
        }
        var bases = BasisSaid.in(line.text());
        bases.forEach(said -> gathering.above().basis(line, said));
        UnitSaid.in(line.text()).ifPresent(unit -> gathering.above().unit(line, unit));
        var dry = bases.isEmpty() ? Optional.<Row>empty() : DryMatterSaid.in(line);
        boolean hasOthers = names.rows(line).stream()
                .map(Row::heading)
                .anyMatch(heading -> heading != null && heading.analyte().hasBasis());
        if (dry.isPresent() && !hasOthers) {
            gathering.beside(line, dry.get());
            return 1;
        }
        var next = line.hasDecimals() ? Optional.<Across.Found>empty() : Across.at(lines, at, names);
        if (next.isPresent()) {
            across = next.get().table();
            gathering.across(across, line, lines.subList(at, at + next.get().lines()));
            return next.get().lines();
        }
        var sample = across == null ? Optional.<Across.Line>empty() : across.line(line, names);
        if (sample.isPresent() && isTakenBack(line)) {
            return 1;
        }
        if (sample.isPresent()) {
            gathering.sample(line, sample.get());
            return 1;
        }
        var read = headings.read(line);
        var rows = read.size() == line.words().size() ? names.rows(line) : Rows.of(read, line.isAligned(), names);
        if (HeadingLines.areYears(line, rows)) {
            gathering.years(line);
            return 1;
        }
        boolean isOfFigures = !HeadingLines.isOfTimes(line) && rows.stream().anyMatch(Row::isTold);
        if (isOfFigures && isTakenBack(line)) {
            return 1;
        }
        if (isOfFigures) {
            gathering.lot(line);
            if (headings.head().columns().isEmpty() && rows.size() == 1) {
                stray.samples(at, rows.get(0).figures()).ifPresent(headings::put);
            }
            if (headings.head().columns().isEmpty()) {
                stray.unknown(at).ifPresent(headings::put);
            }
            gathering.beside(line, rows);
            gathering.rows(line, read, rows);
            return 1;
        }
        var of = OfAllBelow.in(line);
        if (of.isPresent() && headings.isUnder(at, of.get())) {
            gathering.above().basis(line, of.get().basis());
        } else {
            int taken = headings.take(at);
            if (taken > 0) {
                return taken;
            }
        }
        var fields = gathering.above().letterhead().isAll(line)
                ? List.<Head.Field>of()
                : Head.of(line, names.words().ours());
        line.cells().forEach(cell -> gathering.section(line, cell));
        if (gathering.begins(fields)) {
            gathering.table();
        }
        gathering.above().line(line, fields);
        if (fields.isEmpty() && !OfOthers.isFurniture(line)) {
            if (isEmptyRow(line)) {
                gathering.empty(line);
            } else {
                gathering.unknown(line, rows);
            }
        }
        return 1;
    }

    /** Whether the words of a line take its figures back; then it is listed. */
    private boolean isTakenBack(TextLine line) {
        var why = Standing.why(line.text());
        why.ifPresent(because -> gathering.back(line, because));
        return why.isPresent();
    }

    /** A name that is known, with words beside it that are no figure. */
    private boolean isEmptyRow(TextLine line) {
        var cells = line.cells();
        return line.isAligned()
                && cells.size() > 1
                && names.label(TextLine.join(cells.get(0)).text()).isPresent();
    }
}
