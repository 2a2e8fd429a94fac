package haywright.feeding.hay;

import haywright.cattle.herd.Group;
import haywright.diet.CheckedNeed;
import haywright.diet.Diet;
import haywright.diet.DietOptions;
import haywright.diet.DietRow;
import haywright.diet.GrainFed;
import haywright.diet.HowNitrateIsFed;
import haywright.diet.LeftOut;
import haywright.diet.Sureness;
import haywright.feeding.ColdSnap;
import haywright.feeding.Rations;
import haywright.forage.Analyte;
import haywright.outlook.HayFacts;
import haywright.quantity.Unit;
import haywright.ration.Allotment;
import haywright.ration.HandMix;
import haywright.ration.LeastCostRation;
import haywright.ration.PricedFeed;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What is printed of an allotment: a row for those of a group that have calved or not, from one day to another. */
final class HayRows {
    /** Of a limit, below which missing it is not said. */
    private static final double LEAST_SAID = 0.01;

    private static final double HAIR = 1e-6;

    /** Days before calving (common practice, no source). */
    private static final int MAGNESIUM_AHEAD = 30;

    private final Rations rations;
    private final HayEaters eaters;
    private final HayPlan plan;
    private final Allotment fed;

    HayRows(Rations rations, HayEaters eaters, HayPlan plan, Allotment fed) {
        this.rations = rations;
        this.eaters = eaters;
        this.plan = plan;
        this.fed = fed;
    }

    /** In the order of days, those that have not calved first. */
    List<HayRow> of(Group group) {
        var rows = new ArrayList<HayRow>();
        for (boolean milking : new boolean[] {false, true}) {
            for (var eaten : eats(group, milking)) {
                rows.add(row(group, eaten, milking, rows));
            }
        }
        rows.sort(Comparator.comparing(HayRow::from).thenComparing(HayRow::inMilk));
        return rows.stream().map(row -> aheadOfCalving(row, rows)).toList();
    }

    /** What the first feeds after calving lack of magnesium, in the rows of the month before it. */
    private static HayRow aheadOfCalving(HayRow row, List<HayRow> rows) {
        return row.inMilk()
                ? row
                : rows.stream()
                        .filter(HayRow::inMilk)
                        .findFirst()
                        .filter(calved -> !row.until().isBefore(calved.from().minusDays(MAGNESIUM_AHEAD)))
                        .map(HayRow::magnesium)
                        .map(row::withMagnesium)
                        .orElse(row);
    }

    /** From the row before, or what they get now; those that have calved since then, from the dry ones on their own day. */
    private List<HayChange> changes(
            List<HayRow> rows, Group group, boolean milking, Map<PricedFeed, Double> fed, LocalDate from) {
        var changes = new ArrayList<HayChange>();
        var today = rations.yard().day();
        var before = rows.stream()
                .filter(row -> row.inMilk() == milking && row.until().equals(from.minusDays(1)))
                .findFirst();
        if (milking) {
            rows.stream()
                    .filter(row -> !row.inMilk() && row.from().equals(from))
                    .findFirst()
                    .or(() -> before.isPresent()
                            ? Optional.empty()
                            : rows.stream()
                                    .filter(row -> !row.inMilk() && row.until().equals(from.minusDays(1)))
                                    .findFirst())
                    .flatMap(dry -> HayChange.of(true, dry.feeds(), fed, from, today, List.of()))
                    .ifPresent(changes::add);
        }
        if (before.isPresent()) {
            var was = before.get();
            HayChange.of(false, was.feeds(), fed, from, today, List.of()).ifPresent(changes::add);
        } else if (from.equals(today)) {
            HayChange.of(false, now(group), fed, from, today, stops(group)).ifPresent(changes::add);
        }
        return changes;
    }

    /** kg put out a head and day; empty where nobody said it. */
    private Map<PricedFeed, Double> now(Group group) {
        var kg = new LinkedHashMap<PricedFeed, Double>();
        var now = rations.ranch().fedNow().get(group.id());
        if (now != null) {
            rations.yard().feeds().forEach(feed -> {
                var amount = now.amounts().get(UUID.fromString(feed.feed().id()));
                if (amount != null) {
                    kg.put(feed, amount.in(Unit.KILOGRAM_A_DAY));
                }
            });
        }
        return kg;
    }

    /** Names of what they get now that is a danger to them. */
    private List<String> stops(Group group) {
        return eaters.questions().stops(group).stream()
                .filter(LeftOut::danger)
                .map(out -> out.feed().name())
                .toList();
    }

    /** By need, the largest share that is not met at any time. */
    Map<String, Double> unmet(Group group) {
        var unmet = new LinkedHashMap<String, Double>();
        for (boolean milking : new boolean[] {false, true}) {
            for (var eaten : eats(group, milking)) {
                eaten.unmet().forEach((row, share) -> unmet.merge(row, share, Math::max));
                eaters.part(group, eaten.stretch(), milking)
                        .filter(part -> part.gain() < 1)
                        .ifPresent(part -> unmet.merge("growth", 1 - part.gain(), Math::max));
            }
        }
        return unmet;
    }

    private List<Allotment.Eaten> eats(Group group, boolean milking) {
        var id = HayEaters.id(group, milking);
        return fed.eaten().stream().filter(e -> e.eater().equals(id)).toList();
    }

    private HayRow row(Group group, Allotment.Eaten eaten, boolean milking, List<HayRow> before) {
        int begins = eaters.begins(group, eaten.stretch());
        int days = eaters.days(group, eaten.stretch());
        var today = rations.yard().day();
        var question =
                eaters.part(group, eaten.stretch(), milking).orElseThrow().question();
        var each = new LinkedHashMap<PricedFeed, Double>();
        eaten.feeds().forEach((feed, kg) -> each.put(feed, kg / eaten.headDays()));
        boolean twice = HayChange.grain(each)
                > GrainFed.percentAFeeding() / 100 * question.need().bodyWeight() + HAIR;
        var diet = question.diet();
        return new HayRow(
                milking,
                (int) Math.rint(eaten.headDays() / days),
                today.plusDays(begins),
                today.plusDays(begins + days - 1L),
                each,
                below(group, eaten, question),
                twice,
                changes(before, group, milking, each, today.plusDays(begins)),
                each.keySet().stream()
                        .filter(feed -> HayRow.pounds(Objects.requireNonNull(each.get(feed))) > 0)
                        .filter(feed -> HowNitrateIsFed.of(feed.feed(), diet) != HowNitrateIsFed.FREE)
                        .toList(),
                nitrate(eaten, question),
                plan.limited() && HayFacts.isSturdy(group),
                magnesium(each, question),
                eaters.isLimited(plan, group, eaten.stretch(), milking),
                cold(group, eaten, question, today.plusDays(begins + days / 2L)));
    }

    /** The bench's line, of what is fed here and in the usual cold of these days. */
    private @Nullable ColdSnap cold(Group group, Allotment.Eaten eaten, LeastCostRation question, LocalDate day) {
        return ColdSnap.of(rations.yard(), group, judged(eaten, question, question.options()), day)
                .orElse(null);
    }

    private static HandMix judged(Allotment.Eaten eaten, LeastCostRation question, DietOptions options) {
        var kg = new LinkedHashMap<String, Double>();
        eaten.feeds().forEach((feed, all) -> kg.put(feed.feed().id(), all / eaten.headDays()));
        return HandMix.judge(
                new LeastCostRation(
                        List.copyOf(eaten.feeds().keySet()),
                        question.need(),
                        options,
                        Sureness.EXPECTED,
                        LeastCostRation.Amounts.EXACT),
                kg);
    }

    /** Where its feeds have too little magnesium by what is known of them: what has no figure is not taken to bring enough. */
    private static @Nullable CheckedNeed magnesium(Map<PricedFeed, Double> each, LeastCostRation question) {
        // of a mineral whose tag does not say it none counts
        var fed = each.keySet().stream()
                .map(PricedFeed::feed)
                .filter(feed -> !feed.isLooseMineral() || feed.composition().knows(Analyte.MG))
                .toList();
        var diet = Diet.of(fed, question.need(), question.options());
        var kg = diet.feeds().stream()
                .mapToDouble(one -> each.entrySet().stream()
                        .filter(e -> e.getKey().feed().equals(one))
                        .mapToDouble(e -> e.getKey().eaten(e.getValue()))
                        .sum())
                .toArray();
        return diet.checked(kg).stream()
                .filter(need -> need.id().equals("mg") && need.verdict() != CheckedNeed.Verdict.MET)
                .findFirst()
                .orElse(null);
    }

    private static double nitrate(Allotment.Eaten eaten, LeastCostRation question) {
        return judged(eaten, question, question.options()).limits().stream()
                .filter(limit -> limit.row().id().equals("nitrate"))
                .mapToDouble(limit -> limit.supplied() / limit.row().limit())
                .max()
                .orElse(0);
    }

    /** By which usual limits of the bench it is knowingly short. */
    private Map<String, Double> below(Group group, Allotment.Eaten eaten, LeastCostRation question) {
        var usual = rations.question(group).options();
        var judged = judged(eaten, question, usual);
        var below = new LinkedHashMap<String, Double>();
        for (var limit : judged.limits()) {
            var row = limit.row();
            boolean isHabit = row.kind() == DietRow.Kind.PRACTICE || row.id().equals("intake");
            double share = Math.abs(limit.supplied() - row.limit()) / Math.abs(row.limit());
            if (isHabit && !limit.isMet() && share > LEAST_SAID) {
                below.put(row.id(), share);
            }
        }
        return below;
    }
}
