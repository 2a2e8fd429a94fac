package haywright.cattle.cold;

import static haywright.quantity.Unit.MEGACALORIE;

import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;

/**
 * The cold of days that are equally likely.
 * <pre>
 * NEmc = (c1 + c2 + …) / n      Mcal a day
 * </pre>
 *
 * @param days at least one, the coldest first
 */
public record MeanCold(List<Cold> days) implements Cold {
    public MeanCold {
        days = List.copyOf(days);
    }

    /** One of them, neither the coldest nor the mildest. */
    public Cold middle() {
        return days.get(days.size() / 2);
    }

    @Override
    public double nem() {
        return days.stream().mapToDouble(Cold::nem).average().orElseThrow();
    }

    @Override
    public List<Line> lines() {
        var parts = new ArrayList<Input>();
        for (var day : days) {
            parts.add(Input.computed("c" + (parts.size() + 1), day.nem(), MEGACALORIE, day));
        }
        var formula = "(" + Input.sum(parts) + ") / " + parts.size();
        return List.of(new Line("NEmc", formula, nem(), MEGACALORIE, Source.ARITHMETIC, parts));
    }
}
