package haywright.ranch;

import haywright.cattle.herd.Group;
import haywright.forage.lab.LabReport;
import haywright.sampling.stock.Stock;
import haywright.workings.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

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
            Map<UUID, EnergyPicks> energyPicks) {
        var problems = new ArrayList<Problem>();
        lots.forEach((id, lot) -> {
            if (lot.stock() instanceof Stock.Standing s && !fields.containsKey(s.field())) {
                problems.add(stray("lots/" + id + "/stock/field", s.field(), "field"));
            }
        });
        reports.forEach((id, report) -> {
            if (!lots.containsKey(report.lot())) {
                problems.add(stray("reports/" + id + "/lot", report.lot(), "lot"));
            }
        });
        fedNow.forEach((group, fed) -> {
            if (!groups.containsKey(group)) {
                problems.add(stray("fedNow/" + group, group, "group"));
            }
            for (var feed : fed.amounts().keySet()) {
                if (!lots.containsKey(feed) && !feeds.containsKey(feed)) {
                    problems.add(stray("fedNow/" + group + "/amounts", feed, "lot and no feed to buy"));
                }
            }
        });
        wishes.forEach((group, wanted) -> {
            if (!groups.containsKey(group)) {
                problems.add(stray("wishes/" + group, group, "group"));
            }
            for (var wish : wanted.feeds()) {
                if (!lots.containsKey(wish.feed()) && !feeds.containsKey(wish.feed())) {
                    problems.add(stray("wishes/" + group + "/feeds", wish.feed(), "lot and no feed to buy"));
                }
            }
        });
        letters.keySet().stream()
                .filter(group -> !groups.containsKey(group))
                .forEach(group -> problems.add(stray("letters/" + group, group, "group")));
        energyPicks.keySet().stream()
                .filter(lot -> !lots.containsKey(lot))
                .forEach(lot -> problems.add(stray("energyPicks/" + lot, lot, "lot")));
        return problems;
    }

    private static Problem stray(String field, UUID id, String what) {
        return new Problem(
                field,
                id.toString(),
                "there is no " + what + " of this id on the ranch",
                "Take this entry away too, or put back what it speaks of.");
    }
}
