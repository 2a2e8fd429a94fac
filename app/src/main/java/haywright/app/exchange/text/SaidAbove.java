package haywright.app.exchange.text;

import haywright.app.exchange.lab.BasisSaid;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.line.TextLine;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What the lines over a table say of its samples, gathered until the table is whole. */
final class SaidAbove {
    private static final Pattern MAILED = Pattern.compile("(?i)^\\s*>?\\s*(?:date|sent):.*[0-9]:[0-9]{2}");

    private final Footnotes footnotes;
    private final Ledger ledger;
    private final Letterhead letterhead;

    private List<Head.Field> fields = new ArrayList<>();
    /** The day of a mail, which counts where the sheet in it has none. */
    private final List<Head.Field> mailed = new ArrayList<>();

    private StringBuilder told = new StringBuilder();
    private @Nullable Basis basis;
    private @Nullable Unit unit;
    /** What samples side by side are called in the lines over their columns, where there are several. */
    private List<List<String>> over = List.of();

    private int page = 1;
    private boolean isOfSamples;

    SaidAbove(Footnotes footnotes, Ledger ledger) {
        this.footnotes = footnotes;
        this.ledger = ledger;
        this.letterhead = new Letterhead(ledger);
        this.basis = footnotes.onlyBasis();
    }

    Letterhead letterhead() {
        return letterhead;
    }

    /** A line that is neither headings nor figures. */
    void line(TextLine line, List<Head.Field> said) {
        if (line.page() != page) {
            page = line.page();
            if (isOfSamples) { // it held for all samples of its table, and holds for no other page
                clear();
                isOfSamples = false;
            }
        }
        (MAILED.matcher(line.text()).find() ? mailed : fields).addAll(said);
        if (!footnotes.isLegend(line)) {
            told.append(line.text()).append('\n');
        }
        letterhead.above(line, said);
    }

    /** Of all figures. */
    void basis(TextLine line, BasisSaid said) {
        basis = said.basis();
        ledger.settle(line.number(), said.from(), said.to());
    }

    /** Of all figures whose own place says none. */
    void unit(TextLine line, Unit said) {
        unit = said;
        ledger.settle(line);
    }

    /** Of all figures, as the foot of the sheet says. */
    void unitOfAll(Unit said) {
        unit = said;
    }

    @Nullable
    Unit unit() {
        return unit;
    }

    void corner(TableHead head) {
        basis = head.corner() == null ? basis : head.corner();
        unit = head.cornerUnit() == null ? unit : head.cornerUnit();
    }

    /** Of all figures; null where nothing says it, or something unknown is taken out of it. */
    @Nullable
    Basis basis() {
        return footnotes.except().isAllOpen() ? null : basis;
    }

    /** Of the figures of this analyte, which a sentence may take out of the basis of the others. */
    @Nullable
    Basis basis(Analyte analyte) {
        return footnotes.except().of(analyte).orElse(basis());
    }

    /** What a sentence of the sheet says that it is a share of; empty where none does. */
    Optional<String> share(Analyte analyte) {
        return footnotes.share(analyte);
    }

    boolean isTakenOut(Analyte analyte) {
        return footnotes.except().isOpen(analyte);
    }

    void addAll(List<Head.Field> said) {
        fields.addAll(said);
    }

    /** A line that names the sample of the figures under it. */
    void name(TextLine line) {
        fields.addAll(Head.sample(line));
    }

    /** The headings themselves name the samples that stand side by side. */
    void codes(List<String> codes) {
        codes.forEach(code -> fields.add(new Head.Field(Told.BAG, code, 0, 0, 0)));
    }

    /** Line by line what each of the samples side by side is called; all of it together, and each for itself. */
    void samplesOver(List<List<String>> names) {
        fields.removeIf(field -> field.told() == Told.BAG);
        codes(IntStream.range(0, names.get(0).size())
                .mapToObj(i -> names.stream().map(line -> line.get(i)).collect(Collectors.joining(" ")))
                .toList());
        over = names.size() > 1 ? names : List.of();
    }

    Samples.Above all() {
        return of(Stream.concat(fields.stream(), mailed.stream()).toList(), over);
    }

    /** With what a line of a table says of its own sample. */
    Samples.Above with(List<Head.Field> told) {
        isOfSamples = true;
        var own = new ArrayList<>(told);
        boolean isNamed = own.stream().anyMatch(SaidAbove::isName);
        fields.stream().filter(field -> !isNamed || !isName(field)).forEach(own::add);
        return of(own, List.of());
    }

    private static boolean isName(Head.Field field) {
        return field.told() == Told.BAG || field.told() == Told.NUMBER;
    }

    private Samples.Above of(List<Head.Field> said, List<List<String>> names) {
        return new Samples.Above(names, new Head(said), letterhead.laboratory(), Understood.method(told.toString()));
    }

    /** The table is whole. */
    void clear() {
        fields = new ArrayList<>();
        told = new StringBuilder();
        over = List.of();
    }
}
