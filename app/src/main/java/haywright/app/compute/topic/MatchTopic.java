package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.match.CarryChart;
import haywright.quantity.Unit;
import haywright.workings.Caution;
import haywright.workings.Source;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Which lot carries which group, alone. */
public final class MatchTopic {
    private MatchTopic() {}

    record Out(String sentence, List<Cell> cells) {}

    record Cell(
            String lot,
            String group,
            String stage,
            LocalDate date,

            @Key(words = "That all of the lot carries all of the group, as it is on that day.")
            OptionalDouble days,

            @Key(words = "Where it does not: what is missed by the largest share when they are full of it.") @Nullable
            String shortOf,

            @Key(Unit.PERCENT) OptionalDouble shortBy,
            @Key(words = "Why it may not be fed.") @Nullable String danger,

            @Key(name = "sure_pct", words = "Of the ways that the lot may be made, those in which every need is met.")
            OptionalDouble sure) {
        static Cell of(CarryChart.Cell cell) {
            return new Cell(
                    cell.lot(),
                    cell.group(),
                    cell.stage().words(),
                    cell.day(),
                    cell.days(),
                    cell.shortOf().orElse(null),
                    cell.shortOf().isPresent() ? OptionalDouble.of(cell.shortPercent()) : OptionalDouble.empty(),
                    cell.danger().orElse(null),
                    cell.carries() ? OptionalDouble.of(cell.surePercent()) : OptionalDouble.empty());
        }
    }

    public static Answer<?> answer(CarryChart chart) {
        return new Answer<>(
                new Out(sentence(chart), chart.cells().stream().map(Cell::of).toList()),
                true,
                List.of(),
                List.of(new Caution(
                        "Each lot alone, with a loose mineral, by expected figures and usual weather: a mix of two may carry what neither does.",
                        Source.ARITHMETIC)));
    }

    private static String sentence(CarryChart chart) {
        var now = new ArrayList<String>();
        for (var cell : chart.cells()) {
            if (cell.stage() == CarryChart.Stage.NOW) {
                var said = cell.carries()
                        ? "carries %s for %.0f days"
                                .formatted(cell.group(), cell.days().orElseThrow())
                        : cell.danger().isPresent()
                                ? "may not be fed to %s yet".formatted(cell.group())
                                : "is short of %s for %s"
                                        .formatted(cell.shortOf().orElse("feed"), cell.group());
                now.add("%s %s".formatted(cell.lot(), said));
            }
        }
        return now.isEmpty() ? "No lot stands beside a group." : String.join("; ", now) + ".";
    }
}
