package haywright.forage.lot;

import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.Marginal;
import haywright.workings.Origin;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The figures and notes of a {@link LotComposition} while it is put together. */
final class Making {
    final Map<Analyte, Composition.Known> values = new EnumMap<>(Analyte.class);
    final Map<Analyte, Marginal> expected = new EnumMap<>(Analyte.class);
    /** Dangers found higher in one place than in the sample of the whole lot that counts. */
    final Map<Analyte, Double> single = new EnumMap<>(Analyte.class);

    final List<String> notes = new ArrayList<>();

    void put(Analyte analyte, double value, Worked work) {
        values.put(
                analyte,
                new Composition.Known(
                        value, new Origin.Computed(work instanceof Traced ? work : new Traced(work, origins()))));
    }

    /** Where the figures had so far came from, by the symbols the equations use. */
    Map<String, Origin> origins() {
        var origins = new HashMap<String, Origin>();
        values.forEach((analyte, known) -> origins.put(analyte.name(), known.origin()));
        return Map.copyOf(origins);
    }

    double number(Analyte analyte) {
        var known = values.get(analyte);
        if (known == null) {
            throw new IllegalStateException(analyte + " is not known");
        }
        return known.value();
    }
}
