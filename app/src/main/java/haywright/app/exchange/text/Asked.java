package haywright.app.exchange.text;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Label;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Understood.Named;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.line.Row;
import haywright.app.exchange.line.TextLine;
import haywright.forage.Analyte;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The names and the headings met on a sheet: what each was taken for, and which of them are asked about. */
final class Asked {
    private static final int MOST_NAMES = 400;

    private static final Pattern ION = Pattern.compile(
            "(?i)\\bnitrates?\\b[\\s(,:]*(?:(?:is|are|was|were|reported|expressed|given|shown|calculated) )*as (?:NO ?3(?:\\W{0,2}ion)?|the (?:nitrate )?ion|nitrate ion)(?![\\p{L}\\p{N}]| ?[-–] ?N)");

    private static final Pattern ETHANOL = Pattern.compile("(?i)esc|ethanol|alcohol|\\b80\\b");

    private final Vocabulary words;
    private final boolean isIon;
    private final Map<String, Named> written = new LinkedHashMap<>();
    /** What stands under headings that are known to hold no figures of the feed, column by column. */
    private final Map<String, List<String>> ignored = new LinkedHashMap<>();

    /** What stands under names of no analyte, behind the reason, likewise. */
    private final Map<String, List<String>> unknown = new LinkedHashMap<>();

    /** What stands under headings that nobody knows, likewise. */
    private final Map<String, List<String>> columns = new LinkedHashMap<>();

    /** Letters for a basis, each of which is asked. */
    private final Map<String, Understood.Column> marks = new LinkedHashMap<>();

    /** Headings of which somebody said what they mean. */
    private final Set<String> saidColumns = new LinkedHashSet<>();

    /** @param isIon whether a sentence of the sheet says that nitrate is the ion, NO3 */
    Asked(Vocabulary words, boolean isIon) {
        this.words = words;
        this.isIon = isIon;
    }

    /** Headings over the next table. */
    void head(TableHead next) {
        next.columns().stream()
                .map(c -> Heading.key(c.heading().text()))
                .filter(heading -> words.column(heading).isPresent())
                .forEach(saidColumns::add);
        next.columns().stream()
                .filter(c -> c.role() == TableHead.Role.IGNORED)
                .forEach(c -> ignored.computeIfAbsent(c.heading().text(), k -> new ArrayList<>()));
    }

    /** A column, of which somebody may have said what it holds. */
    void said(String heading) {
        if (words.column(heading).isPresent()) {
            saidColumns.add(Heading.key(heading));
        }
    }

    /** A column with figures of others. */
    void others(String heading) {
        ignored.computeIfAbsent(heading, k -> new ArrayList<>());
    }

    /** A column of figures whose name nobody knows: why they are not taken, and then each of them. */
    void unknown(String heading, String word) {
        unknown.computeIfAbsent(heading, k -> new ArrayList<>()).add(word);
    }

    /** What stands under a heading that is known to hold no figures of the feed. */
    void ignored(String heading, String word) {
        ignored.computeIfAbsent(heading, k -> new ArrayList<>()).add(word);
    }

    /** A figure under a heading that nobody knows. */
    void column(String heading, String figure) {
        columns.computeIfAbsent(heading, k -> new ArrayList<>()).add(figure);
    }

    void mark(Understood.Column mark) {
        marks.putIfAbsent(mark.written(), mark);
    }

    /** A name that was taken before, and has to be explained after all. */
    void again(String name, String figure) {
        written.put(Heading.key(name), new Named(name, figure, null, false));
    }

    boolean isOpen() {
        return !columns.isEmpty() || !marks.isEmpty();
    }

    List<Named> names() {
        return List.copyOf(written.values());
    }

    /** The columns that hold no figures of the feed, in words. */
    List<String> ignored() {
        return Stream.concat(
                        ignored.entrySet().stream()
                                .map(column ->
                                        column(column.getKey(), "it holds no figures of the feed", column.getValue())),
                        unknown.entrySet().stream()
                                .map(column -> column(
                                        column.getKey(),
                                        column.getValue().get(0),
                                        column.getValue()
                                                .subList(1, column.getValue().size()))))
                .toList();
    }

    private static String column(String heading, String why, List<String> figures) {
        return "Column “%s”: %s%s"
                .formatted(heading, why, figures.isEmpty() ? "" : " (" + String.join("; ", figures) + ")");
    }

    void name(String written, TextLine line, @Nullable Heading taken) {
        if (this.written.size() < MOST_NAMES || this.written.containsKey(Heading.key(written))) {
            this.written.putIfAbsent(
                    Heading.key(written), new Named(written, line.shown(), taken, words.leavesOut(written)));
        }
    }

    /** The columns that are asked about, and what was said of those that were. */
    List<Understood.Column> columns() {
        var asked = new ArrayList<Understood.Column>();
        words.columns().forEach((heading, said) -> {
            if (saidColumns.contains(heading)) {
                asked.add(new Understood.Column(heading, "", said, false));
            }
        });
        columns.forEach((heading, figures) -> asked.add(new Understood.Column(
                heading, String.join("; ", figures.subList(0, Math.min(4, figures.size()))), null, false)));
        asked.addAll(marks.values());
        return asked;
    }

    /** Why the figures of a name that could mean two things are not taken; empty where it means one. */
    String question(Row row, @Nullable List<TableHead.@Nullable Column> places) {
        var heading = row.heading();
        if (heading == null || !row.why().isEmpty()) {
            return "";
        }
        var column = places == null || places.isEmpty() ? null : places.get(0);
        var unit = row.unit() != null
                ? row.unit()
                : heading.unit() == null && column != null ? column.unit() : heading.unit();
        var first = row.figures().stream().filter(TextLine.Word::isFigure).findFirst();
        var all = TextLine.join(row.words()).text();
        return first.flatMap(word -> question(row.name(), all, heading, unit, word.text()))
                .orElse("");
    }

    /** What has to be asked of a figure before it is taken; empty where nothing has. */
    Optional<String> question(String name, String all, Heading heading, @Nullable Unit unit, String figure) {
        boolean isSugar = heading.analyte() == Analyte.ESC
                && unit == Unit.GRAM_PER_KG
                && !words.own().containsKey(Heading.key(name))
                && !ETHANOL.matcher(all).find();
        if (isSugar) { // where feed is weighed so, sugars are as a rule those that water takes up
            return Optional.of("sugars soluble in water (WSC) or in ethanol (ESC)? Say below which it is");
        }
        return words.own().containsKey(Heading.key(name))
                ? words.unitAsked(name, heading.analyte(), heading.share() == null ? unit : Unit.PERCENT, figure)
                : Label.asked(all, heading.analyte(), figure)
                        .filter(question -> !isIon || heading.analyte() != Analyte.NO3);
    }

    /** Whether a sentence of the sheet says it for all nitrate on it. */
    static boolean saysIon(String sheet) {
        return ION.matcher(sheet).find();
    }
}
