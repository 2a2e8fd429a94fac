package haywright.app.exchange.text;

import haywright.app.exchange.lab.BasisSaid;
import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Delimited;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.UnitSaid;
import haywright.app.exchange.lab.Vocabulary;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
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

    private static final int LINES_OF_HEADINGS = 3;

    /** Over the columns of samples side by side: name, number, feed, day. */
    private static final int MOST_LINES_OF_NAMES = 6;

    private static final int MOST_WORDS_OF_A_NAME = 10;
    /** Lines under headings in which one with all its figures is looked for. */
    private static final int LOOK_AHEAD = 40;

    private static final Pattern PAGE = Pattern.compile("^--- page ([0-9]{1,4}) ---$");

    private final List<TextLine> lines;
    private final Names names;
    private final Gathering gathering;
    private final Map<TextLine, Optional<TableHead>> heads = new IdentityHashMap<>();
    private TableHead head = TableHead.NONE;
    private final StrayHeadings stray;
    /** Of columns whose headings stand in the next line. */
    private List<TextLine.Word> unitsOver = List.of();

    /** What says whose figures stand under the headings of the next line. */
    private Optional<OverColumns> overColumns = Optional.empty();

    private @Nullable Across across;
    private Set<Integer> samplesNamed = Set.of();
    private Set<Integer> others = Set.of();

    private ReportText(List<TextLine> lines, Names names, Gathering gathering) {
        this.lines = lines;
        this.names = names;
        this.gathering = gathering;
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
                && alone(line).isEmpty();
    }

    private void take() {
        samplesNamed = samplesNamed();
        others = OfOthers.in(lines, names);
        lines.stream()
                .filter(line -> !line.isBlank())
                .findFirst()
                .ifPresent(gathering.above().letterhead()::first);
        for (int at = 0; at < lines.size(); ) {
            at += step(at);
        }
        gathering.table();
    }

    /** @return how many lines were taken */
    private int step(int at) {
        var line = lines.get(at);
        if (line.isBlank()) {
            gathering.gap();
            return 1;
        }
        if (samplesNamed.contains(at)) {
            gathering.named(line);
            return 1;
        }
        if (others.contains(at)) {
            gathering.ofOthers(line);
            return 1;
        }
        var bases = BasisSaid.in(line.text());
        bases.forEach(said -> gathering.above().basis(line, said));
        UnitSaid.in(line.text()).ifPresent(unit -> gathering.above().unit(line, unit));
        var dry = bases.isEmpty() ? Optional.<Row>empty() : DryMatterSaid.in(line);
        if (dry.isPresent()) {
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
        if (sample.isPresent()) {
            gathering.sample(line, sample.get());
            return 1;
        }
        var read = withoutIgnored(line);
        var rows = read.size() == line.words().size() ? names.rows(line) : Rows.of(read, line.isAligned(), names);
        if (rows.stream().anyMatch(Row::isTold)) {
            if (head.columns().isEmpty() && rows.size() == 1) {
                head(stray.samples(at, rows.get(0).figures()));
            }
            if (head.columns().isEmpty()) {
                head(stray.unknown(at));
            }
            gathering.beside(line, rows);
            gathering.rows(line, read, rows);
            return 1;
        }
        var of = OfAllBelow.in(line);
        if (of.isPresent() && isOverHeadings(at, of.get())) {
            gathering.above().basis(line, of.get().basis());
        } else {
            int headings = headings(at);
            if (headings > 0) {
                return headings;
            }
        }
        var fields = gathering.above().letterhead().isAll(line) ? List.<Head.Field>of() : Head.of(line);
        line.cells().forEach(cell -> gathering.section(line, cell));
        if (gathering.begins(fields)) {
            gathering.table();
        }
        gathering.above().line(line, fields);
        if (fields.isEmpty()) {
            if (isEmptyRow(line)) {
                gathering.empty(line);
            } else {
                gathering.unknown(line, rows);
            }
        }
        return 1;
    }

    private void head(Optional<StrayHeadings.Over> over) {
        over.ifPresent(one -> {
            head = one.head();
            gathering.head(head, List.of(one.line()));
        });
    }

    /** A name that is known, with words beside it that are no figure. */
    private boolean isEmptyRow(TextLine line) {
        var cells = line.cells();
        return line.isAligned()
                && cells.size() > 1
                && names.label(TextLine.join(cells.get(0)).text()).isPresent();
    }

    /** What stands under a heading that is known to hold no figures of the feed is not read. */
    private List<TextLine.Word> withoutIgnored(TextLine line) {
        if (!line.isAligned() || head.columns().isEmpty()) {
            return line.words();
        }
        return line.words().stream()
                .filter(word -> isOfName(line, word)
                        || head.isNameless() && line.cells().get(0).contains(word)
                        || head.nearest(word).role() != TableHead.Role.IGNORED
                                && !(head.nearest(word).role() == TableHead.Role.UNIT && word.isNothing()))
                .toList();
    }

    /** The first word of a line, and those behind it in its cell up to a figure. */
    private static boolean isOfName(TextLine line, TextLine.Word word) {
        for (var one : line.cells().get(0)) {
            if (one == word) {
                return true;
            }
            if (one.isFigure()) {
                return false;
            }
        }
        return false;
    }

    /** @return how many lines the headings take; 0 where none stand here */
    private int headings(int at) {
        if (at + 1 < lines.size() && overColumns.isEmpty()) {
            overColumns = under(at)
                    .flatMap(head -> OverColumns.in(
                            lines.get(at), lines.subList(Math.max(0, at - MOST_LINES_OF_NAMES), at), head));
            if (overColumns.isPresent()) {
                gathering.table();
                return 1;
            }
        }
        boolean isOverHead = at + 1 < lines.size()
                && !lines.get(at + 1).isBlank()
                && alone(lines.get(at)).isEmpty()
                && alone(lines.get(at + 1)).isPresent();
        if (isOverHead && !TableHead.units(lines.get(at).cells()).isEmpty()) {
            unitsOver = TableHead.units(lines.get(at).cells());
            gathering.settle(lines.get(at));
            return 1;
        }
        if (alone(lines.get(at)).isPresent()) {
            gathering.table();
        }
        TableHead best = null;
        int taken = 0;
        List<List<TextLine.Word>> cells = null;
        for (int i = 0; i < LINES_OF_HEADINGS && at + i < lines.size(); i++) {
            var line = lines.get(at + i);
            boolean isRow = line.hasDecimals() || names.rows(line).stream().anyMatch(Row::isTold);
            if (line.isBlank() || isRow || i > 0 && line.text().contains(":")) {
                break;
            }
            var alone = alone(line);
            if (i > 0
                    && best != null
                    && best.bases() == 0
                    && alone.isPresent()
                    && alone.get().bases() > 0) {
                gathering
                        .above()
                        .codes(best.values().stream()
                                .map(c -> c.heading().text())
                                .toList());
                best = best.over(alone.get());
                taken = i + 1;
                break;
            }
            if (i > 0
                    && best != null
                    && best.bases() > 1
                    && alone.isPresent()
                    && alone.get().bases() == 0
                    && alone.get().values().size() >= best.bases()) {
                best = alone.get().under(best);
                taken = i + 1;
                break;
            }
            if (i > 0 && best == null && alone.isPresent()) {
                return 0; // the headings begin in the next line
            }
            cells = cells == null ? line.cells() : TableHead.over(cells, line.cells());
            var head = i == 0 ? alone : TableHead.of(cells, names.words());
            if (head.isPresent() && (best == null || head.get().bases() > best.bases())) {
                best = head.get();
                taken = i + 1;
            }
        }
        if (best != null) {
            int next = at + taken;
            var under = next < lines.size() ? TableHead.units(lines.get(next).cells()) : List.<TextLine.Word>of();
            best = best.in(unitsOver).in(under);
            taken += under.isEmpty() ? 0 : 1;
            unitsOver = List.of();
            if (overColumns.isPresent()) {
                var over = overColumns.get();
                best = over.over(best, names.words());
                gathering.above().codes(over.names(best));
                overColumns = Optional.empty();
            }
            head = placed(best, at + taken);
            nameGroups(at);
            gathering.head(head, lines.subList(at, at + taken));
        }
        return taken;
    }

    /** Headings that say no basis of their own stand in the next lines, or this line has a label with a value. */
    private boolean isOverHeadings(int at, OfAllBelow said) {
        if (said.isBesideAValue()) {
            return true;
        }
        for (int next = at + 1; next < Math.min(lines.size(), at + LINES_OF_HEADINGS + 1); next++) {
            if (lines.get(next).isBlank()) {
                continue;
            }
            var head = alone(lines.get(next));
            if (head.isPresent()) {
                return head.get().bases() == 0
                        && head.get().columns().stream()
                                        .filter(TableHead.Column::isOfFigures)
                                        .count()
                                > 1;
            }
            if (names.rows(lines.get(next)).stream().anyMatch(Row::isTold)) {
                return false;
            }
        }
        return false;
    }

    /** The headings in the next line that draws no rule; empty where there are none, or where units stand between. */
    private Optional<TableHead> under(int at) {
        for (int next = at + 1; next < Math.min(lines.size(), at + LINES_OF_HEADINGS); next++) {
            var line = lines.get(next);
            boolean isRule = !line.isBlank()
                    && line.words().stream().allMatch(word -> word.text().matches("[-–—=_]{2,}"));
            if (!isRule) {
                return line.isBlank() ? Optional.empty() : alone(line);
            }
        }
        return Optional.empty();
    }

    /** The headings in one line, looked for once. */
    private Optional<TableHead> alone(TextLine line) {
        return heads.computeIfAbsent(line, one -> TableHead.of(one.cells(), names.words()));
    }

    /** The headings over the figures of the first line that lacks none, which tell better where figures stand. */
    private TableHead placed(TableHead best, int from) {
        return lines.subList(from, Math.min(lines.size(), from + LOOK_AHEAD)).stream()
                .filter(TextLine::isAligned)
                .map(names::rows)
                .filter(rows ->
                        rows.size() == 1 && rows.get(0).isTold() && rows.get(0).hasCells())
                .map(rows -> best.placed(rows.get(0).figures()))
                .flatMap(Optional::stream)
                .findFirst()
                .orElse(best);
    }

    /** The cells of a line but for a heading over the names of analytes. */
    private static List<List<TextLine.Word>> withoutCorner(TextLine line) {
        var cells = line.cells();
        boolean isCorner = cells.size() > 1
                && ColumnWords.isNames(TextLine.join(cells.get(0)).text());
        return isCorner ? cells.subList(1, cells.size()) : cells;
    }

    /** Samples side by side can be named over their columns, in lines above the headings; days among them are no names. */
    private void nameGroups(int at) {
        int from = at;
        while (from > Math.max(0, at - MOST_LINES_OF_NAMES)
                && !lines.get(from - 1).isBlank()
                && !lines.get(from - 1).text().contains(":")
                && head.areOver(withoutCorner(lines.get(from - 1)))) {
            from--;
        }
        var all = new ArrayList<List<String>>();
        for (var line : lines.subList(from, at)) {
            var groups = new TreeMap<Integer, String>();
            withoutCorner(line).stream()
                    .flatMap(List::stream)
                    .forEach(word -> groups.merge(head.groupOver(word), word.text(), (a, b) -> a + " " + b));
            boolean areDays =
                    Head.of(line).stream().anyMatch(field -> field.told().isDay());
            boolean areNumbers =
                    groups.values().stream().allMatch(name -> name.matches("(?i)(?:sample|no\\.?|#) ?[0-9]{1,2}"));
            if (head.groups() > 1 && groups.size() == head.groups() && !areDays && !areNumbers) {
                all.add(List.copyOf(groups.values()));
                gathering.settle(line);
            }
        }
        if (!all.isEmpty()) {
            gathering.above().samplesOver(all);
        }
    }
}
