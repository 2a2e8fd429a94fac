package haywright.forage.energy;

import haywright.forage.Analyte;
import haywright.workings.Source;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Non-fiber carbohydrates by difference, percent of dry matter, by both ways in use.
 *
 * <pre>
 * whole = 100 − (NDF + CP + EE + ash)
 * free  = 100 − (NDFn + CP + EE + ash),   NDFn = NDF − NDICP, or 0.93·NDF where NDICP was not measured
 * </pre>
 *
 * They differ by the protein in the NDF, 1 to 5 points in hay. Figures that do not belong to one sample give less than 0.
 *
 * @param ndf percent of dry matter, as the rest
 * @param ndicp protein in the NDF; empty where it was not measured
 */
public record NonFiber(double ndf, OptionalDouble ndicp, double cp, double fat, double ash) {
    public static final Source WHOLE = Source.read("what is left of 100, PMC10188088 Table 2");
    public static final Source FREE = Source.read("Georgia Forages glossary");

    /** @return empty where one of the four figures is not known */
    public static Optional<NonFiber> of(Function<Analyte, OptionalDouble> measured) {
        var parts = List.of(Analyte.NDF, Analyte.CP, Analyte.FAT, Analyte.ASH).stream()
                .flatMapToDouble(analyte -> measured.apply(analyte).stream())
                .toArray();
        return parts.length < 4
                ? Optional.empty()
                : Optional.of(new NonFiber(parts[0], measured.apply(Analyte.NDICP), parts[1], parts[2], parts[3]));
    }

    /** With the whole NDF taken off, and so the protein in it twice. */
    public double whole() {
        return 100 - (ndf + cp + fat + ash);
    }

    /** With the protein in the NDF counted once. */
    public double free() {
        return whole() + ndicp.orElse(0.07 * ndf);
    }
}
