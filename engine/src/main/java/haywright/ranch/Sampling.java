package haywright.ranch;

import haywright.sampling.CheckLetter;
import haywright.sampling.Material;
import haywright.sampling.Precision;
import haywright.sampling.Purpose;
import haywright.sampling.Rule;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Spread;
import haywright.sampling.Subject;
import haywright.sampling.Taken;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A field sheet that was made for a lot: the plan as it was printed, and what came back.
 *
 * @param lot null for what is no lot: a mixed ration at the bunk, a water tank, loads at filling
 * @param what its name as it was printed, which outlives the lot
 * @param code printed on the sheet and on every bag of it
 * @param picks numbers of the bales in walking order; 1, 2, … where units are not numbered in a stack
 * @param taken null until the sheet has come back
 */
public record Sampling(
        UUID id,
        @Nullable UUID lot,
        String what,
        String code,
        LocalDate made,
        Material material,
        Rule rule,
        Purpose purpose,
        String analyte,
        double halfWidth,
        double confidencePercent,
        int seed,
        int increments,
        int analyses,
        List<Integer> picks,
        @Nullable Taken taken) {
    public Sampling {
        picks = List.copyOf(picks);
    }

    public static Sampling of(SamplingPlan plan, UUID id, @Nullable UUID lot, String what, LocalDate made) {
        var used = plan.used();
        var picks = plan.picks()
                .map(p ->
                        p.inWalkingOrder().stream().map(place -> place.number()).toList())
                .orElseGet(() -> java.util.stream.IntStream.rangeClosed(
                                1, used.design().units())
                        .boxed()
                        .toList());
        return new Sampling(
                id,
                lot,
                what,
                code(id),
                made,
                plan.subject().material(),
                used.rule(),
                plan.aim().purpose(),
                plan.aim().analyte(),
                plan.aim().halfWidth(),
                plan.aim().confidencePercent(),
                (int) plan.aim().seed(),
                used.design().increments(),
                used.design().analyses(),
                picks,
                null);
    }

    /** Five signs of the sheet's own id, short enough for a cold hand, and none that looks like another. */
    private static String code(UUID id) {
        var all = Long.toString(id.getLeastSignificantBits() >>> 1, 36)
                .toUpperCase(Locale.ROOT)
                .replace('I', '7')
                .replace('O', '8');
        return "S" + all.substring(all.length() - 5);
    }

    /** What stands on a bag: the sheet's code, the bag's number, a check letter. */
    public String bag(int number) {
        return CheckLetter.add(code + "-" + number);
    }

    /**
     * How sure the answer is with what was really taken; empty until the sheet is back.
     *
     * @param subject what it was taken from, as it is known now
     */
    public Optional<Precision> reached(Subject subject) {
        if (taken == null || material == Material.STOCK_WATER) {
            return Optional.empty();
        }
        var crop = subject.crop();
        var spread = Spread.ofBook(crop == null ? material.usualCrop() : crop, analyte);
        int lotUnits = material.isDrawn() ? Math.max(subject.units(), taken.units()) : 0;
        return Optional.of(new Precision(spread, taken.design(analyses), lotUnits, confidencePercent));
    }

    public Sampling with(Taken came) {
        return new Sampling(
                id,
                lot,
                what,
                code,
                made,
                material,
                rule,
                purpose,
                analyte,
                halfWidth,
                confidencePercent,
                seed,
                increments,
                analyses,
                picks,
                came);
    }
}
