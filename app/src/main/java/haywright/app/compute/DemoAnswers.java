package haywright.app.compute;

import haywright.app.compute.topic.Answer;
import haywright.app.compute.topic.CattleTopics;
import haywright.app.compute.topic.OfARanch;
import haywright.app.compute.topic.RationTopic;
import haywright.app.compute.topic.RationsTopic;
import haywright.app.compute.topic.ReportTopic;
import haywright.app.compute.topic.TestWorthTopic;
import haywright.app.document.TinLantern;
import haywright.cattle.herd.Group;
import haywright.cattle.need.Need;
import haywright.feeding.Rations;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.ReportCheck;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What the topics that look at a ranch say of the demo: an answer for each of its groups or reports, by name. */
final class DemoAnswers {
    private static final List<String> KNOWN = List.of("requirement", "ration", "rations", "report-check", "test-worth");

    /** Topics that have one answer for a ranch, and are asked of a ranch alone. */
    private static final Set<String> OF_THE_RANCH = Set.of("rations", "test-worth");

    static boolean isOfTheRanch(String topic) {
        return OF_THE_RANCH.contains(topic);
    }

    /** Whether a lot can be named to it; without one every lot is answered. */
    static boolean asksOfLots(String topic) {
        return topic.equals("test-worth");
    }

    private final Rations rations;

    private DemoAnswers(Rations rations) {
        this.rations = rations;
    }

    /**
     * @param lot the name of the one that is asked about; null for all
     * @throws Refused when the topic looks at no ranch, and for a lot that is not there
     */
    static Map<String, Answer<?>> to(String topic, @Nullable String lot) {
        var ranch = TinLantern.ranch();
        var demo = new DemoAnswers(new Rations(ranch, ranch.settings().today(LocalDate.EPOCH)));
        var answers = new LinkedHashMap<String, Answer<?>>();
        switch (topic) {
            case "requirement" -> ranch.groups().values().forEach(g -> answers.put(g.name(), demo.requirement(g)));
            case "ration" ->
                ranch.groups().values().forEach(g -> answers.put(g.name(), RationTopic.answer(demo.rations, g)));
            case "rations" -> answers.put(ranch.name(), RationsTopic.answer(demo.rations));
            case "test-worth" ->
                OfARanch.lots(ranch, lot).forEach(l -> answers.put(l.name(), TestWorthTopic.answer(demo.rations, l)));
            case "report-check" -> ranch.reports().values().forEach(r -> answers.put(demo.name(r), demo.report(r)));
            default ->
                throw new Refused(
                        "topic",
                        topic,
                        "this topic looks at no ranch; those that do are " + String.join(", ", KNOWN),
                        "Leave --demo out and give it JSON.");
        }
        return answers;
    }

    private Answer<?> requirement(Group group) {
        Need need = rations.yard().need(group);
        return Answer.of(CattleTopics.Needed.of(need), need);
    }

    private String name(LabReport report) {
        var lot = rations.ranch().lots().get(report.lot());
        return lot == null ? report.id().toString() : lot.name();
    }

    private Answer<?> report(LabReport report) {
        var lot = rations.ranch().lots().get(report.lot());
        if (lot == null) {
            throw new IllegalStateException("a report of the demo has no lot");
        }
        return ReportTopic.answer(ReportCheck.check(
                lot.feedClass(), rations.yard().composition(lot).row(), report.readings()));
    }
}
