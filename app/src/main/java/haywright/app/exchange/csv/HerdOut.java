package haywright.app.exchange.csv;

import haywright.cattle.herd.Group;
import haywright.feeding.Rations;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** A ranch's groups, and what each is to be fed, as tables for a spreadsheet. */
public final class HerdOut {
    private static final List<String> HERD = List.of(
            "group",
            "class",
            "head",
            "average weight lb",
            "scale",
            "weighed on",
            "body condition score",
            "mature weight lb",
            "breed",
            "first calves due",
            "weeks of calving",
            "head due",
            "gain lb/day",
            "turnout");
    private static final List<String> RATIONS = List.of(
            "day",
            "group",
            "head",
            "feed",
            "from",
            "lb per head per day as fed",
            "lb per day whole group",
            "$ per head per day");

    private HerdOut() {}

    public static String herd(Ranch ranch) {
        return TableCsv.of(
                HERD,
                ranch.groups().values().stream()
                        .map(group -> List.of(
                                group.name(),
                                group.animals().words(),
                                String.valueOf(group.head()),
                                round(group.weight().in(Unit.POUND), 0),
                                group.shrunk() ? "shrunk" : "full",
                                group.weighedOn().toString(),
                                round(group.conditionScore(), 2),
                                round(group.matureWeight().in(Unit.POUND), 0),
                                group.breed(),
                                group.firstCalving().map(Object::toString).orElse(""),
                                group.calving().isEmpty() ? "" : String.valueOf(weeks(group)),
                                group.calving().isEmpty() ? "" : String.valueOf(due(group)),
                                round(group.gain().in(Unit.POUND_A_DAY), 2),
                                orEmpty(group.turnout())))
                        .toList());
    }

    /** One line for each feed of each group, waste included, rounded as it is weighed out; a group without a ration has one. */
    public static String rations(Rations rations) {
        var lines = new ArrayList<List<String>>();
        for (var group : rations.ranch().groups().values()) {
            var head = List.of(rations.day().toString(), group.name(), String.valueOf(group.head()));
            var toFeed = rations.toFeed(group);
            if (!toFeed.isEmpty()) {
                for (var portion : toFeed) {
                    double pounds = Unit.POUND.fromBase(portion.kgPutOut());
                    lines.add(with(
                            head,
                            portion.feed().feed().name(),
                            portion.feed().own() ? "on hand" : "bought",
                            round(pounds, 2),
                            round(pounds * group.head(), 0),
                            round(portion.cost(), 3)));
                }
            } else {
                lines.add(with(head, "no ration works", "", "", "", ""));
            }
        }
        return TableCsv.of(RATIONS, lines);
    }

    private static List<String> with(List<String> head, String... more) {
        var line = new ArrayList<>(head);
        line.addAll(List.of(more));
        return line;
    }

    private static int due(Group group) {
        return group.calving().stream().mapToInt(Group.CalvingWeek::head).sum();
    }

    /** From the first week to the last, both counted. */
    private static long weeks(Group group) {
        var weeks = group.calving();
        return ChronoUnit.WEEKS.between(
                        weeks.get(0).begins(), weeks.get(weeks.size() - 1).begins())
                + 1;
    }

    private static String orEmpty(@Nullable Object value) {
        return Objects.toString(value, "");
    }

    private static String round(double value, int decimals) {
        var rounded = BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .stripTrailingZeros();
        return (rounded.signum() == 0 ? BigDecimal.ZERO : rounded).toPlainString();
    }
}
