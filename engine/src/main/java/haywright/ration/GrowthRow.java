package haywright.ration;

import haywright.cattle.need.Need;
import haywright.diet.DietRow;
import haywright.diet.GrowthEnergy;
import haywright.diet.Law;
import haywright.diet.RowId;
import haywright.forage.Analyte;
import haywright.quantity.Unit;
import java.util.List;
import java.util.stream.DoubleStream;

/** The growth row as a reader sees it: energy left for gain after upkeep, Mcal of NEg a day. */
final class GrowthRow {
    static final String ID = "growth";

    private GrowthRow() {}

    static DietRow of(GrowthEnergy energy) {
        return new DietRow(
                new RowId.Nutrient(ID),
                DietRow.Kind.NEED,
                "energy left for gain",
                DietRow.Sense.AT_LEAST,
                energy.neg(),
                Unit.MEGACALORIE,
                new Law(Need::neg, (feed, made) -> made.value(Analyte.NEG).orElse(0), null, Law.Counted.SURE),
                DoubleStream.of(energy.inNeg().mean()).boxed().toList(),
                List.of(),
                0,
                GrowthEnergy.SOURCE);
    }
}
