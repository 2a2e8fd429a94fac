package haywright.ration;

import haywright.diet.DietRow;
import haywright.diet.GrowthEnergy;
import haywright.quantity.Unit;
import java.util.List;

/** The growth row as a reader sees it: energy left for gain after upkeep, Mcal of NEg a day. */
final class GrowthRow {
    static final String ID = "growth";

    private GrowthRow() {}

    static DietRow of(GrowthEnergy energy) {
        return new DietRow(
                ID,
                DietRow.Kind.NEED,
                "energy left for gain",
                DietRow.Sense.AT_LEAST,
                energy.neg(),
                Unit.MEGACALORIE,
                energy.negPerKg(),
                List.of(),
                GrowthEnergy.SOURCE);
    }
}
