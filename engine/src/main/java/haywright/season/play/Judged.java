package haywright.season.play;

import haywright.diet.DietRow;
import haywright.season.given.Energies;
import haywright.season.given.NeedRecord;
import haywright.season.given.Season;
import haywright.season.given.Stage;
import java.util.ArrayList;
import java.util.List;

/**
 * What one group's week is judged by: the rows of its diet that can be missed, over every feed of the season, also those that
 * the diet leaves out and somebody feeds all the same.
 *
 * @param perKg by row and feed of the season, as expected
 */
@SuppressWarnings("ArrayRecordComponent")
public record Judged(Stage stage, List<DietRow> rows, double[][] perKg) {
    public static Judged of(Season season, Stage stage) {
        var rows = stage.diet().rows();
        var perKg = new double[rows.size()][season.feeds().size()];
        for (int r = 0; r < perKg.length; r++) {
            for (int f = 0; f < perKg[r].length; f++) {
                var feed = season.feeds().get(f).priced().feed();
                var row = rows.get(r);
                perKg[r][f] = row.law().perKg(feed, feed.composition(), row.limit());
            }
            // what the row itself counts goes first
            var own = rows.get(r).coefficients();
            for (int i = 0; i < own.length; i++) {
                perKg[r][stage.feeds()[i]] = own[i];
            }
        }
        return new Judged(stage, rows, perKg);
    }

    /**
     * Dollars counted for what is missed, of everything but energy.
     *
     * @param kg of dry matter eaten of each feed
     */
    public double missed(double[] kg, double headDays, Energies made, NeedRecord.Week need) {
        double dollars = 0;
        for (int r = 0; r < rows.size(); r++) {
            var row = rows.get(r);
            if (row.id().equals(Stage.ENERGY)) {
                continue;
            }
            double usual = stage.rights().getOrDefault(row.of(), 0.0);
            double price = Stage.missPrice(row, usual);
            if (Double.isFinite(price)) {
                double right = headDays * stage.right(row, need.nem(), need.factor());
                var coefficients = row.id().equals(Stage.PROTEIN) ? made.cp() : perKg[r];
                double sum = sum(coefficients, kg);
                double shortOf = row.sense() == DietRow.Sense.AT_LEAST ? right - sum : sum - right;
                dollars += price * Math.max(0, shortOf);
            }
        }
        return dollars;
    }

    /** By how much more or less than these amounts they eat free choice; 1 where nothing says. */
    public double appetite(double[] kg, double headDays, NeedRecord.Week need) {
        for (int r = 0; r < rows.size(); r++) {
            if (Stage.isEaten(rows.get(r))) {
                double sum = sum(perKg[r], kg);
                return sum > 0 ? headDays * stage.right(rows.get(r), need.nem(), need.factor()) / sum : 1;
            }
        }
        return 1;
    }

    public static double sum(double[] perKg, double[] kg) {
        double sum = 0;
        for (int f = 0; f < kg.length; f++) {
            sum += perKg[f] * kg[f];
        }
        return sum;
    }

    /** Of every week of every group. */
    public static List<List<Judged>> all(Season season) {
        var all = new ArrayList<List<Judged>>();
        for (var eater : season.eaters()) {
            all.add(eater.stages().stream().map(stage -> of(season, stage)).toList());
        }
        return all;
    }
}
