package haywright.diet;

import haywright.cattle.AnimalClass;
import haywright.cattle.RequirementSystem;
import haywright.cattle.need.DietaryNeed;
import haywright.cattle.need.Nutrient;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * The minerals of a feed beside what cattle need in all they eat, as if they ate it alone: what a mineral mix has to
 * bring, and what the feed already has too much of. Only what is known is judged; unknown is never taken for short.
 */
public record MineralsAlone(Composition made, RequirementSystem system) {
    private static final Map<Nutrient, Analyte> KNOWN = Map.of(
            Nutrient.MAGNESIUM, Analyte.MG,
            Nutrient.POTASSIUM, Analyte.K,
            Nutrient.SODIUM, Analyte.NA,
            Nutrient.SULFUR, Analyte.S,
            Nutrient.COPPER, Analyte.CU,
            Nutrient.ZINC, Analyte.ZN,
            Nutrient.MANGANESE, Analyte.MN,
            Nutrient.SELENIUM, Analyte.SE,
            Nutrient.IRON, Analyte.FE,
            Nutrient.COBALT, Analyte.CO);

    /** @param has and what a dry cow needs, in the need's unit */
    public record Finding(Nutrient nutrient, Analyte analyte, double has, DietaryNeed need) {
        public boolean isShort() {
            return has < need.share();
        }

        public boolean isTooMuch() {
            return need.tolerated().isPresent() && has > need.tolerated().getAsDouble();
        }
    }

    /** For dry cows, in the order of the minerals. */
    public List<Finding> findings() {
        var findings = new ArrayList<Finding>();
        for (var nutrient : Nutrient.values()) {
            if (KNOWN.containsKey(nutrient)) {
                var analyte = Objects.requireNonNull(KNOWN.get(nutrient));
                var need = new DietaryNeed(nutrient, AnimalClass.MATURE_COW, system, 0);
                made.value(analyte)
                        .ifPresent(value -> findings.add(
                                new Finding(nutrient, analyte, analyte.unit().to(need.unit(), value), need)));
            }
        }
        return findings;
    }
}
