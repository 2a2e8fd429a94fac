package haywright.ranch;

import haywright.sampling.CheckLetter;
import haywright.sampling.Material;
import haywright.sampling.OnSite;
import haywright.sampling.Purpose;
import haywright.sampling.Rule;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Taken;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A field sheet that was made for a lot: the plan as it was printed, and what came back.
 *
 * @param lot null for what is no lot: a mixed ration at the bunk, a water tank, loads at filling
 * @param what its name as it was printed, which outlives the lot
 * @param code printed on the sheet and on every bag of it
 * @param picks numbers of the bales in walking order; 1, 2, … where units are not numbered in a stack
 * @param taken null until the sheet has come back
 * @param twoComposites whether every other pick went into a composite of its own, A and B, as sheets once could; none is
 *     made so any more, and those that were keep their two bags
 * @param site what was said of the lot and the probe; null on sheets that were made before this was kept
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
        @Nullable Taken taken,
        boolean twoComposites,
        @Nullable OnSite site) {
    public Sampling {
        picks = List.copyOf(picks);
    }

    public static Sampling of(SamplingPlan plan, UUID id, @Nullable UUID lot, String what, LocalDate made) {
        var used = plan.used();
        var picks = plan.picks()
                .map(p ->
                        p.inWalkingOrder().stream().map(place -> place.number()).toList())
                .orElseGet(() ->
                        IntStream.rangeClosed(1, used.design().units()).boxed().toList());
        return new Sampling(
                id,
                lot,
                what,
                SheetCode.of("S", id),
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
                null,
                false,
                OnSite.of(plan.subject()));
    }

    /** What stands on a bag: the sheet's code, the bag's number, a check letter. */
    public String bag(int number) {
        return bag(String.valueOf(number));
    }

    private String bag(String which) {
        return CheckLetter.add(code + "-" + which);
    }

    /** Of every bag: one an analysis and one to spare, or those of the composites A and B. */
    public List<String> bags() {
        return twoComposites
                ? List.of(bag("A"), bag("B"))
                : IntStream.rangeClosed(1, analyses + 1).mapToObj(this::bag).toList();
    }

    /** Which composite a pick goes into: "A", "B", or nothing where there is but one. @param order in walking order, from 1 */
    public String composite(int order) {
        return !twoComposites ? "" : order % 2 == 1 ? "A" : "B";
    }

    /**
     * What was really taken for a bag.
     *
     * @param composite "A" or "B"; empty for the whole sheet
     */
    public Optional<Taken> taken(String composite) {
        var all = Optional.ofNullable(taken);
        return twoComposites && !composite.isEmpty()
                ? all.flatMap(t -> t.everyOther(composite.equals("A") ? 0 : 1))
                : all;
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
                came,
                twoComposites,
                site);
    }
}
