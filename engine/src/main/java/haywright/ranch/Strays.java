package haywright.ranch;

import haywright.cattle.herd.Group;
import haywright.forage.lab.LabReport;
import haywright.sampling.stock.Stock;
import haywright.workings.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** References inside a document that lead nowhere. */
final class Strays {
    private Strays() {}

    /** Whatever speaks of a lot, group or field that is not on this ranch. */
    static List<Problem> of(
            Map<UUID, Lot> lots,
            Map<UUID, Group> groups,
            Map<UUID, Field> fields,
            Map<UUID, FeedForSale> feeds,
            Map<UUID, LabReport> reports,
            Map<UUID, FedNow> fedNow,
            Map<UUID, Wishes> wishes,
            Map<UUID, Letter> letters,
            Map<UUID, EnergyPicks> energyPicks,
            Map<UUID, Pen> pens) {
        var problems = new ArrayList<Problem>();
        lots.forEach((id, lot) -> {
            if (lot.stock() instanceof Stock.Standing s && !fields.containsKey(s.field())) {
                problems.add(stray("lots/" + id + "/stock/field", "the lot " + lot.name(), s.field(), "field"));
            }
        });
        reports.forEach((id, report) -> {
            if (!lots.containsKey(report.lot())) {
                problems.add(stray("reports/" + id + "/lot", words(report), report.lot(), "lot"));
            }
        });
        fedNow.forEach((group, fed) -> {
            if (!groups.containsKey(group)) {
                problems.add(stray("fedNow/" + group, "what is fed now", group, "group"));
            }
            for (var feed : fed.amounts().keySet()) {
                if (!lots.containsKey(feed) && !feeds.containsKey(feed)) {
                    problems.add(stray(
                            "fedNow/" + group + "/amounts",
                            "what is fed now" + to(groups.get(group)),
                            feed,
                            "lot or a feed to buy"));
                }
            }
        });
        wishes.forEach((group, wanted) -> {
            if (!groups.containsKey(group)) {
                problems.add(stray("wishes/" + group, "limits set for a ration", group, "group"));
            }
            for (var wish : wanted.feeds()) {
                if (!lots.containsKey(wish.feed()) && !feeds.containsKey(wish.feed())) {
                    problems.add(stray(
                            "wishes/" + group + "/feeds",
                            "limits set for a ration" + to(groups.get(group)),
                            wish.feed(),
                            "lot or a feed to buy"));
                }
            }
        });
        letters.keySet().stream()
                .filter(group -> !groups.containsKey(group))
                .forEach(group -> problems.add(stray("letters/" + group, "a feed letter", group, "group")));
        pens.keySet().stream()
                .filter(group -> !groups.containsKey(group))
                .forEach(group -> problems.add(stray("pens/" + group, "where a group is", group, "group")));
        energyPicks.keySet().stream()
                .filter(lot -> !lots.containsKey(lot))
                .forEach(lot -> problems.add(stray("energyPicks/" + lot, "a choice of the way to TDN", lot, "lot")));
        return problems;
    }

    private static String words(LabReport report) {
        var day = report.reported() == null ? report.sampled() : report.reported();
        return "a report"
                + (report.laboratory().isBlank() ? "" : " of " + report.laboratory())
                + (day == null ? "" : ", " + LabReport.DAY.format(day));
    }

    private static String to(@Nullable Group group) {
        return group == null ? "" : " by " + group.name();
    }

    /** @param speaks what speaks of it, in words: an id says nothing to a person */
    private static Problem stray(String field, String speaks, UUID id, String what) {
        return new Problem(
                field,
                id.toString(),
                "%s points to a %s that is not on this ranch".formatted(speaks, what),
                "Delete it too, or restore what it points to.");
    }
}
