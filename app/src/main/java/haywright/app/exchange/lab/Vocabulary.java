package haywright.app.exchange.lab;

import haywright.forage.Analyte;
import haywright.forage.Basis;
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
 */
public record Vocabulary(Map<String, Meaning> own, Map<String, ColumnIs> columns) {
    public static final Vocabulary HOUSE = new Vocabulary(Map.of());

    public Vocabulary(Map<String, Meaning> own) {
        this(own, Map.of());
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
        return Optional.ofNullable(columns.get(Heading.key(heading)));
    }

    /** These names first, then mine. */
    public Vocabulary with(Map<String, Meaning> more) {
        var all = new LinkedHashMap<>(own);
        all.putAll(more);
        return new Vocabulary(all, columns);
    }

    public boolean leavesOut(String name) {
        var meaning = own.get(Heading.key(name));
        return meaning != null && meaning.analyte() == null;
    }

    /** Empty where the name is not known, or is to be left out. */
    public Optional<Heading> heading(String name) {
        return label(name).map(Label::heading);
    }

    /** As {@link #heading}, and with the reason where a name is understood and its figure is still not to be taken. */
    public Optional<Label> label(String name) {
        var meaning = own.get(Heading.key(name));
        if (meaning == null) {
            return Label.of(name);
        }
        var analyte = meaning.analyte();
        if (analyte == null) {
            return Optional.empty();
        }
        var said = Heading.of(name);
        var unit = meaning.unit() != null
                ? meaning.unit()
                : said.map(Heading::unit).orElse(null);
        boolean fits = unit == null || unit.kind() == analyte.unit().kind();
        var basis = meaning.basis() != null
                ? meaning.basis()
                : said.map(Heading::basis).orElse(null);
        return Optional.of(new Label(new Heading(analyte, fits ? unit : null, basis), ""));
    }
}
