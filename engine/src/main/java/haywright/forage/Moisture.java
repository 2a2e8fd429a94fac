package haywright.forage;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * Moisture as some reports print it in place of dry matter.
 *
 * <pre>
 * DM = 100 − moisture      both percent of the feed as received
 * </pre>
 *
 * @param moisture percent of the feed as received: 10.0 means 10 %; at least 0 and below 100
 * @see "University of Nevada SP-09-19"
 */
public record Moisture(double moisture) implements Worked {
    public Moisture {
        if (!(moisture >= 0 && moisture < 100)) { // also refuses NaN
            throw new Refused(
                    "moisture",
                    Say.number(moisture) + " % moisture",
                    "moisture is at least 0 and below 100 % of the feed as received",
                    "Is this the dry matter?");
        }
    }

    public double dryMatter() {
        return 100 - moisture;
    }

    @Override
    public List<Line> lines() {
        return List.of(Line.of(
                "DM",
                "100 − moisture",
                dryMatter(),
                Unit.PERCENT,
                Source.read("University of Nevada SP-09-19"),
                Input.typed("moisture", moisture, Unit.PERCENT)));
    }
}
