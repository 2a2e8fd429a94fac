package haywright.ranch;

import haywright.forage.hazard.HazardClass.Hazard;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Names;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A well, creek, dugout or tank that cattle drink from, with the latest report of its water. What was not tested is null
 * and never taken for none.
 *
 * @param name in the rancher's words: "creek by the calving shed"
 * @param solids total dissolved solids, mg a liter
 * @param sulfate SO4, mg a liter
 * @param nitrate mg a liter
 * @param asNitrogen whether the report means the nitrogen of nitrate (NO3-N) and not nitrate itself
 * @param conductivity stands in for the dissolved solids where they were not tested
 * @param asSulfur whether the report means the sulfur of sulfate (SO4-S) and not sulfate itself
 */
public record WaterSource(
        UUID id,
        String name,
        String laboratory,
        @Nullable LocalDate sampled,
        @Nullable Quantity solids,
        @Nullable Quantity sulfate,
        @Nullable Quantity nitrate,
        boolean asNitrogen,
        @Nullable Quantity conductivity,
        boolean asSulfur) {
    /** mg a liter of dissolved solids for one µmho/cm; crop file 5.03.011, livestock water quality. */
    static final double SOLIDS_OF_CONDUCTIVITY = 0.64;

    /** mg a liter: the sea has 35,000, and no laboratory reports stock water above brine. */
    private static final double MOST = 100_000;

    /** Molar masses: NO3 62.005, N 14.007. */
    public static final double NO3_OF_N = 62.005 / 14.007;

    /** Molar masses: SO4 96.06, S 32.06 (standard atomic weights, IUPAC 2021, to two decimals). */
    public static final double SO4_OF_S = 96.06 / 32.06;

    public WaterSource {
        Names.require("name", name, "a water source");
        var problems = new ArrayList<Problem>();
        check(problems, "solids", solids);
        check(problems, "sulfate", sulfate);
        check(problems, "nitrate", nitrate);
        if (conductivity != null) {
            Refused.unlessOfKind(Kind.CONDUCTIVITY, "conductivity", conductivity);
            if (!(conductivity.base() >= 0 && conductivity.base() * SOLIDS_OF_CONDUCTIVITY <= MOST)) {
                problems.add(new Problem(
                        "conductivity",
                        conductivity.asTyped(),
                        "stock water conducts from 0 to 150,000 µmho/cm",
                        "Is it µmho/cm (µS/cm), or mmho/cm (mS/cm, dS/m), a thousand times as much?"));
            }
        }
        double sulfateItself = sulfate == null ? 0 : sulfate.base() * (asSulfur ? SO4_OF_S : 1);
        if (problems.isEmpty() && solids != null && sulfate != null && sulfateItself > solids.base()) {
            problems.add(new Problem(
                    "sulfate",
                    sulfate.asTyped(),
                    "sulfate is part of the dissolved solids, %s".formatted(solids.asTyped()),
                    "Check whether the two are swapped, or one is the conductivity."));
        }
        Refused.unlessEmpty(problems);
    }

    private static void check(List<Problem> problems, String field, @Nullable Quantity typed) {
        if (typed == null) {
            return;
        }
        Refused.unlessOfKind(Kind.WATER_CONCENTRATION, field, typed);
        if (!(typed.base() >= 0 && typed.base() <= MOST)) {
            problems.add(new Problem(
                    field,
                    typed.asTyped(),
                    "water holds 0 to 100,000 mg of it per liter",
                    "Check the decimal point, and that it is mg/L (the same as ppm in water)."));
        }
    }

    /** What was tested, mg a liter, nitrate as NO3 and sulfate as SO4; solids from conductivity where they were not. */
    public Map<Hazard, Double> found() {
        var found = new EnumMap<Hazard, Double>(Hazard.class);
        if (solids != null) {
            found.put(Hazard.TDS, solids.in(Unit.MILLIGRAM_PER_LITER));
        } else if (conductivity != null) {
            found.put(Hazard.TDS, SOLIDS_OF_CONDUCTIVITY * conductivity.in(Unit.MICROMHO_PER_CM));
        }
        if (sulfate != null) {
            found.put(Hazard.SO4W, sulfate.in(Unit.MILLIGRAM_PER_LITER) * (asSulfur ? SO4_OF_S : 1));
        }
        if (nitrate != null) {
            found.put(Hazard.NO3W, nitrate.in(Unit.MILLIGRAM_PER_LITER) * (asNitrogen ? NO3_OF_N : 1));
        }
        return found;
    }
}
