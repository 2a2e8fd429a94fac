package haywright.ranch;

import haywright.sampling.CheckLetter;
import haywright.sampling.Material;
import haywright.sampling.Purpose;
import haywright.sampling.Rule;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Taken;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A field sheet that was made for a lot: the plan as it was printed, and what came back.
 *
 * @param code printed on the sheet and on every bag of it
 * @param picks numbers of the bales in walking order; 1, 2, … where units are not numbered in a stack
 * @param taken null until the sheet has come back
 */
public record Sampling(
        UUID id,
        UUID lot,
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

    public static Sampling of(SamplingPlan plan, UUID id, UUID lot, LocalDate made) {
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

    public Sampling with(Taken what) {
        return new Sampling(
                id,
                lot,
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
                what);
    }
}
