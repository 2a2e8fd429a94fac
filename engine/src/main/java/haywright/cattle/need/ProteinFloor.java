package haywright.cattle.need;

import static haywright.quantity.Unit.NONE;
import static haywright.quantity.Unit.PERCENT;

import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.Pregnancy;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * The least crude protein in what they eat, percent of its dry matter, whatever the sum of the needs says: with less, the
 * microbes of the rumen starve, cattle eat less, and straw feeds nobody.
 * <pre>
 * F = f0 + (f1 − f0)·m      m: share of the group in milk
 * </pre>
 * f0 is that of the middle or the last third of gestation, of heifers or of bulls; f1 that of cows in milk. Where two
 * published figures part, the one nearer to the equations is taken and both stand in the row.
 *
 * @param milkingShare m, 0 to 1
 */
public record ProteinFloor(Stage stage, double milkingShare) implements Worked {
    /** What f0 is of. */
    public enum Stage {
        MID,
        LATE,
        MILK,
        HEIFER,
        BULL
    }

    private static final PublishedTable TABLE = PublishedTable.read(ProteinFloor.class, "protein_floor.csv");

    public static ProteinFloor of(Need need) {
        return new ProteinFloor(stage(need), need.milkingShare());
    }

    private static Stage stage(Need need) {
        return switch (need.animals()) {
            case BULL -> Stage.BULL;
            case GROWING -> Stage.HEIFER;
            case BRED_HEIFER, FIRST_CALF_HEIFER, MATURE_COW ->
                need.daysPregnant() > Pregnancy.LAST_THIRD
                        ? Stage.LATE
                        : need.animals() == AnimalClass.BRED_HEIFER ? Stage.HEIFER : Stage.MID;
        };
    }

    /** Percent of dry matter. */
    public double percent() {
        return printed(stage) + (printed(Stage.MILK) - printed(stage)) * milkingShare;
    }

    /** Of the row that decides most. */
    public Source source() {
        return Breed.source(row(milkingShare > 0.5 ? Stage.MILK : stage));
    }

    private static PublishedTable.Row row(Stage stage) {
        return TABLE.rows().stream()
                .filter(row -> row.text("stage").equals(stage.name()))
                .findFirst()
                .orElseThrow();
    }

    private static double printed(Stage stage) {
        return row(stage).number("percent").orElseThrow();
    }

    @Override
    public List<Line> lines() {
        var dry = Input.published("f0", printed(stage), PERCENT, Breed.source(row(stage)));
        return List.of(
                milkingShare == 0
                        ? Line.of("F", "f0", percent(), PERCENT, source(), dry)
                        : Line.of(
                                "F",
                                "f0 + (f1 − f0)·m",
                                percent(),
                                PERCENT,
                                source(),
                                dry,
                                Input.published("f1", printed(Stage.MILK), PERCENT, Breed.source(row(Stage.MILK))),
                                Input.typed("m", milkingShare, NONE)));
    }
}
