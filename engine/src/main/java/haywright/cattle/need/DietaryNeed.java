package haywright.cattle.need;

import static haywright.quantity.Unit.NONE;

import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.RequirementSystem;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What all they eat must hold of a mineral or a vitamin, as a share of its dry matter: printed by class, the same for a
 * thin animal and a fat one.
 * <pre>
 * c = c0 + (c1 − c0)·m      m: share of the group in milk
 * </pre>
 * Of one animal m is 0 or 1. Cows without a calf in them are counted as if they had one. Salt and mineral mixes bring most
 * of it; hay loses vitamin A, and after a year in the stack none should be counted on. The printed range of sodium is taken
 * at its upper end.
 *
 * @param milkingShare m, 0 to 1
 */
public record DietaryNeed(Nutrient nutrient, AnimalClass animals, RequirementSystem system, double milkingShare)
        implements Worked {
    private static final PublishedTable TABLE = PublishedTable.read(DietaryNeed.class, "dietary.csv");

    /** Of an animal, or of a group as the mean of its members. */
    public static DietaryNeed of(Nutrient nutrient, Need need) {
        return new DietaryNeed(nutrient, need.animals(), need.system(), need.milkingShare());
    }

    private PublishedTable.Row row() {
        return TABLE.rows().stream()
                .filter(r -> r.text("edition").equals(system.id())
                        && r.text("nutrient").equals(nutrient.name()))
                .findFirst()
                .orElseThrow();
    }

    private double printed(String column) {
        return row().number(column).orElseThrow();
    }

    private double dry() {
        return printed(
                switch (animals) {
                    case GROWING -> "growing";
                    case BULL -> "bull";
                    default -> "dry";
                });
    }

    private double milking() {
        return printed("milking");
    }

    /** Percent, parts in a million or IU in a kg of the dry matter of all they eat. */
    public Unit unit() {
        return Unit.valueOf(row().text("unit"));
    }

    /** In {@link #unit()}. */
    public double share() {
        return dry() + (milking() - dry()) * milkingShare;
    }

    /** Above this, in {@link #unit()}, it harms; empty where the tables give nothing. */
    public OptionalDouble tolerated() {
        return row().number("tolerated");
    }

    public Source source() {
        return Breed.source(row());
    }

    @Override
    public List<Line> lines() {
        var unit = unit();
        var dry = Input.published("c0", dry(), unit, source());
        return List.of(
                milkingShare == 0
                        ? Line.of(nutrient.symbol(), "c0", share(), unit, source(), dry)
                        : Line.of(
                                nutrient.symbol(),
                                "c0 + (c1 − c0)·m",
                                share(),
                                unit,
                                source(),
                                dry,
                                Input.published("c1", milking(), unit, source()),
                                Input.typed("m", milkingShare, NONE)));
    }
}
