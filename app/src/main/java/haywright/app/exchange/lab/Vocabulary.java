package haywright.app.exchange.lab;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Kind;
import haywright.quantity.Unit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The names a laboratory uses: the house's own table of analytes, and before it what somebody said of this laboratory.
 *
 * @param own by name as the file writes it, without regard to case and spaces
 * @param columns what columns hold whose headings the house does not know, by heading likewise
 * @param ours who reads the sheet
 */
public record Vocabulary(Map<String, Meaning> own, Map<String, ColumnIs> columns, Ours ours) {
    public static final Vocabulary HOUSE = new Vocabulary(Map.of());

    public Vocabulary(Map<String, Meaning> own) {
        this(own, Map.of());
    }

    public Vocabulary(Map<String, Meaning> own, Map<String, ColumnIs> columns) {
        this(own, columns, Ours.NOBODY);
    }

    /**
     * What somebody said a name stands for.
     *
     * @param analyte null: leave it out
     * @param unit null: as the file says
     * @param basis null: as the file says
     */
    public record Meaning(
            @Nullable Analyte analyte,
            @Nullable Unit unit,
            @Nullable Basis basis) {}

    public Vocabulary {
        own = Map.copyOf(own);
        columns = Map.copyOf(columns);
    }

    /** What somebody said the column under this heading holds; empty where nobody did. */
    public Optional<ColumnIs> column(String heading) {
        var said = columns.get(Heading.key(heading));
        return said == null && ours.hasLot(heading) ? Optional.of(ColumnIs.SAMPLE) : Optional.ofNullable(said);
    }

    /** These names first, then mine. */
    public Vocabulary with(Map<String, Meaning> more) {
        var all = new LinkedHashMap<>(own);
        all.putAll(more);
        return new Vocabulary(all, columns, ours);
    }

    public boolean leavesOut(String name) {
        var meaning = own.get(Heading.key(name));
        return meaning != null && meaning.analyte() == null;
    }

    /** Whether somebody said unit or basis of this name, whatever stands beside it. */
    public boolean says(String name) {
        var meaning = own.get(Heading.key(name));
        return meaning != null && (meaning.unit() != null || meaning.basis() != null);
    }

    /** Empty where the name is not known, or is to be left out. */
    public Optional<Heading> heading(String name) {
        return label(name).map(Label::heading);
    }

    /** As {@link #heading}, and with the reason where a name is understood and its figure is still not to be taken. */
    public Optional<Label> label(String name) {
        return label(name, "");
    }

    /** @param measure what stands beside the name or under it: its unit, its basis, a share; may be empty */
    public Optional<Label> label(String name, String measure) {
        var meaning = own.get(Heading.key(name));
        return meaning != null
                ? label(name, meaning, measure)
                : Label.of(measure.isBlank() ? name : name + ", " + measure);
    }

    /** What the file says of unit and basis counts as it does of a name that the house knows. */
    private static Optional<Label> label(String name, Meaning meaning, String measure) {
        var analyte = meaning.analyte();
        if (analyte == null) {
            return Optional.empty();
        }
        var own = Label.of(name).map(Label::why).orElse("");
        if (own.startsWith(analyte.words()) && own.endsWith(Label.ANOTHER)) {
            return Optional.of(new Label(null, own));
        }
        var beside = measure.isBlank() ? Optional.<Heading>empty() : Heading.measured(analyte, measure);
        if (!measure.isBlank() && beside.isEmpty()) {
            return Optional.of(new Label(null, "its unit “%s” is not understood".formatted(measure)));
        }
        var inName = Heading.of(name).or(() -> Label.end(name, analyte));
        var file = beside.map(said -> said.with(
                        inName.map(Heading::unit).orElse(null),
                        inName.map(Heading::basis).orElse(null)))
                .or(() -> inName)
                .filter(said -> said.unit() == null
                        || said.unit().kind() == analyte.unit().kind());
        var told = file.map(Heading::unit).orElse(null);
        var unit = meaning.unit();
        if (unit != null && told != null && unit.kind() == told.kind() && unit.toBase(1) != told.toBase(1)) {
            return Optional.of(new Label(
                    null,
                    "the file says %s, and it was said to be in %s. Say below “as the file says”, or type it in the form"
                            .formatted(told.symbol(), unit.symbol())));
        }
        var basis = meaning.basis() != null
                ? meaning.basis()
                : file.map(Heading::basis).orElse(null);
        var share = unit == null && meaning.basis() == null
                ? file.filter(said -> said.analyte() == analyte)
                        .map(Heading::share)
                        .orElse(null)
                : null;
        return Optional.of(new Label(new Heading(analyte, unit == null ? told : unit, basis, share), ""));
    }

    /**
     * What has to be said of a name that somebody explained before its figure is taken: the unit, where the file tells
     * none. One in a thousand and one in a hundred look alike.
     */
    public Optional<String> unitAsked(String name, Analyte analyte, @Nullable Unit unit, String figure) {
        var meaning = own.get(Heading.key(name));
        boolean isAsked = meaning != null
                && meaning.analyte() == analyte
                && unit == null
                && analyte.unit() != Unit.NONE
                && analyte.unit().kind() == Kind.SHARE
                && figure.matches("[^\\p{L}%]*[0-9][^\\p{L}%]*");
        return isAsked
                ? Optional.of("the file does not say its unit: say it below, beside its name")
                : Optional.empty();
    }
}
