package haywright.forage.energy;

import haywright.quantity.Unit;
import haywright.workings.Line;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;

/**
 * Digestible energy at maintenance from what is digested of each fraction (NRC 2001), Mcal per kg of dry matter.
 *
 * <pre>
 * DE = 0.042·tdNFC + 0.042·tdNDF + 0.056·tdCP + 0.094·tdFA − 0.3
 * </pre>
 *
 * Protein and fat count for what they hold, so a feed rich in either has more than its TDN says. The beef editions take
 * DE from TDN instead, and so does everything worked out here: see {@link NetEnergy}. Its source prints no error.
 *
 * @param of the fractions, put together; not for animal proteins or fats
 * @see "NRC, Nutrient Requirements of Dairy Cattle, 7th revised edition 2001, chapter 2; from memory"
 */
public record DigestibleEnergy(SummativeTdn of) implements Worked {
    public double mcalPerKg() {
        return 0.042 * of.nonFiberCarbohydrate()
                + 0.042 * of.fiber()
                + 0.056 * of.protein()
                + 0.094 * of.fattyAcids()
                - 0.3;
    }

    @Override
    public List<Line> lines() {
        var lines = new ArrayList<>(of.lines());
        lines.removeIf(line -> line.symbol().equals("TDN"));
        lines.add(Line.of(
                "DE",
                "0.042·tdNFC + 0.042·tdNDF + 0.056·tdCP + 0.094·tdFA − 0.3",
                mcalPerKg(),
                Unit.MCAL_PER_KG,
                SummativeTdn.SOURCE));
        return lines;
    }
}
