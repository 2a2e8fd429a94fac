package haywright.sampling;

import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.Locale;
import java.util.OptionalDouble;

/** What the sample is for. It changes what is taken, how it is kept and which method is asked for. */
public enum Purpose {
    NUTRIENTS,
    NITRATE,
    PRUSSIC_ACID,
    MOULDS,
    SILAGE_DRY_MATTER,
    WATER;

    private static final PublishedTable TABLE = PublishedTable.read(Purpose.class, "purposes.csv");

    public String words() {
        return row().text("words");
    }

    /** What to take and from where. */
    public String take() {
        return row().text("take");
    }

    /** How to keep it until the laboratory has it; empty where the material's own way will do. */
    public String keep(Material material) {
        return row().text(material.needsCold() ? "keep_wet" : "keep_dry");
    }

    /** What to ask the laboratory for. */
    public String askFor() {
        return row().text("ask_for");
    }

    public String why() {
        return row().text("why");
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }

    public Source source() {
        return Source.practice(row().text("source"));
    }

    /** Whether the number taken can be weighed against how far the lot spreads: nobody knows that of molds or poisons. */
    public boolean hasSpread() {
        return this == NUTRIENTS || this == NITRATE || this == SILAGE_DRY_MATTER;
    }

    /** Grams the laboratory needs for this purpose, where that differs from the material's own. */
    OptionalDouble needGrams() {
        return row().number("mass_g");
    }

    private PublishedTable.Row row() {
        return TABLE.row("purpose", name());
    }
}
