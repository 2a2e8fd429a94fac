package haywright.forage.energy;

import haywright.forage.Analyte;
import haywright.quantity.Unit;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A straight line by which laboratories print net energy, a row of {@code net_energy_lines.csv} or the first of two steps
 * of an {@link AdfEquation}. Kept to name what a laboratory did: what is worked out here is {@link NetEnergy}. At 58 % TDN
 * the straight lines give NEm 0.63 and NEg 0.31 Mcal/lb where the cubics give 0.56 and 0.31. None prints its range or its
 * error.
 *
 * @param gives NEl, NEm or NEg
 * @param from TDN or ADF, percent of dry matter
 * @param unit of what it gives, as printed
 */
public record EnergyLine(
        String id, Analyte gives, String name, Analyte from, double intercept, double slope, Unit unit, Source source) {
    public static List<EnergyLine> published() {
        return Table.ALL;
    }

    /** The lines to one kind of net energy. */
    public static List<EnergyLine> to(Analyte energy) {
        return Table.ALL.stream().filter(line -> line.gives == energy).toList();
    }

    /** Read when first asked for. */
    private static final class Table {
        static final List<EnergyLine> ALL;

        static {
            var all = new ArrayList<EnergyLine>();
            for (var row : PublishedTable.read(EnergyLine.class, "net_energy_lines.csv")
                    .rows()) {
                all.add(new EnergyLine(
                        row.text("id"),
                        Analyte.named(row.text("analyte")),
                        row.text("name"),
                        Analyte.named(row.text("from")),
                        row.number("intercept").orElseThrow(),
                        row.number("slope").orElseThrow(),
                        Unit.valueOf(row.text("unit").toUpperCase(Locale.ROOT)),
                        row.source()));
            }
            for (var equation : AdfEquation.published()) {
                var step = equation.step();
                if (step != null) {
                    all.add(new EnergyLine(
                            "nel-" + equation.id(),
                            Analyte.NEL,
                            equation.name(),
                            Analyte.ADF,
                            step.intercept(),
                            step.slope(),
                            Unit.MCAL_PER_LB,
                            equation.source()));
                }
            }
            ALL = List.copyOf(all);
        }
    }
}
