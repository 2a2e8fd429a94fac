package haywright.ranch;

import haywright.sampling.LotFacts;
import org.jspecify.annotations.Nullable;

/**
 * How a lot came about, as far as somebody said; it decides whether it is one lot.
 *
 * @param cuttings, fields, species how many lie in it, at least 1; null where was not entered, and then it counts as one
 * @param balingHours from the first bale to the last
 * @param partRained some of it was rained on, the rest was not
 * @param storedApart some of it is kept differently
 * @param tornWrap wrapped feed with holes among sound
 */
public record Makeup(
        @Nullable Integer cuttings,
        @Nullable Integer fields,
        @Nullable Integer species,
        @Nullable Double balingHours,
        boolean partRained,
        boolean storedApart,
        boolean tornWrap) {
    public Makeup {
        facts(0, cuttings, fields, species, balingHours, partRained, storedApart, tornWrap);
    }

    /** @param tons short tons as fed; 0 when not known */
    public LotFacts facts(double tons) {
        return facts(tons, cuttings, fields, species, balingHours, partRained, storedApart, tornWrap);
    }

    private static LotFacts facts(
            double tons,
            @Nullable Integer cuttings,
            @Nullable Integer fields,
            @Nullable Integer species,
            @Nullable Double hours,
            boolean rained,
            boolean apart,
            boolean torn) {
        return new LotFacts(
                tons,
                cuttings == null ? 1 : cuttings,
                fields == null ? 1 : fields,
                hours == null ? 0 : hours,
                rained,
                apart,
                torn,
                species == null ? 1 : species);
    }
}
