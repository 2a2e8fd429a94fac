package haywright.app.compute.topic;

import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.compute.shape.Key;
import haywright.feeding.Rations;
import haywright.quantity.Unit;
import haywright.ration.JointChance;
import haywright.ration.Ration;
import haywright.workings.Caution;
import haywright.workings.Worked;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** All groups of a ranch at once, on the lots that they share. */
public final class RationsTopic {
    private RationsTopic() {}

    static final Topic<In, Out> TOPIC = new Topic<>(
            "rations",
            "The cheapest rations of all groups of a ranch, on the lots that they share.",
            In.class,
            Out.class,
            "{\"ranch\":" + OfARanch.small() + "}",
            in -> answer(OfARanch.rations(in.ranch(), in.date())));

    record In(
            @Key(words = OfARanch.WORDS) ObjectNode ranch,

            @Key(words = OfARanch.DATE) @Nullable LocalDate date) {}

    record OfGroup(String name, RationTopic.@Nullable Made ration, RationTopic.@Nullable NotMade noRation) {}

    /** @param date the day before which it is used up, if every group goes on being fed so */
    record RunsOut(String lot, LocalDate date) {}

    public record Out(
            LocalDate date,
            List<OfGroup> groups,
            List<RunsOut> runsOut,

            @Key(
                    value = Unit.PERCENT,
                    words =
                            "Of the ways that all feeds may be made, that meet every need of every group that has a ration.")
            double jointChance) {}

    public static Answer<Out> answer(Rations rations) {
        var groups = new ArrayList<OfGroup>();
        var made = new LinkedHashMap<String, Ration>();
        var workings = new ArrayList<Worked>();
        var cautions = new ArrayList<Caution>();
        boolean all = true;
        for (var group : rations.ranch().groups().values()) {
            var answer = rations.ration(group);
            var said = RationTopic.answer(rations, group);
            groups.add(new OfGroup(
                    group.name(), said.answer().ration(), said.answer().noRation()));
            said.cautions().stream().filter(c -> !cautions.contains(c)).forEach(cautions::add);
            if (answer instanceof Ration ration) {
                made.put(group.id().toString(), ration);
                workings.add(ration);
            } else {
                all = false;
            }
        }
        // two stacks may bear one name
        var runsOut = new LinkedHashMap<String, RunsOut>();
        made.values().stream()
                .flatMap(ration -> ration.portions().stream())
                .forEach(portion -> rations.lastsUntil(portion.feed())
                        .ifPresent(day -> runsOut.put(
                                portion.feed().feed().id(),
                                new RunsOut(portion.feed().feed().name(), day))));
        return new Answer<>(
                new Out(
                        rations.day(),
                        groups,
                        List.copyOf(runsOut.values()),
                        JointChance.of(made).percent()),
                all,
                workings,
                cautions);
    }
}
