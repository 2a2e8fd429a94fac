package haywright.diet;

import haywright.cattle.need.Need;
import haywright.lp.ProgramBuilder;
import haywright.lp.Session;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * One group over one stretch of days, in any program: a column for each feed, its kilograms of dry matter that all head
 * eat in all those days, and a row for each limit of its diet.
 *
 * <p>It is made of feeds, stage and way of feeding, never of weather, so that what the program multiplies stays: a colder
 * or a shorter stretch moves right sides only ({@link #move}), and a solver goes on from where it stood.
 *
 * @param diet of the stage, on any day of it
 */
public record DietBlock(Diet diet) {
    /**
     * Where it lies in a program.
     *
     * @param feed the column of each feed, in the diet's order
     * @param row the row of each limit
     * @param growth which of the program's curved rows it is; empty where they need not gain
     */
    public record Placed(int[] feed, Map<RowId, Integer> row, Optional<Integer> growth) {}

    /**
     * @param program names are the block's own within its scope
     * @param costs of a kg of dry matter of each feed eaten, in the diet's order
     * @param growth its name in the program
     * @param headDays head times days; 1 for one head and day
     */
    public Placed addTo(ProgramBuilder program, double[] costs, String growth, double headDays) {
        var feeds = new int[costs.length];
        for (int i = 0; i < feeds.length; i++) {
            feeds[i] = program.column(diet.feeds().get(i).id(), costs[i], 0, Double.POSITIVE_INFINITY);
        }
        var rows = new LinkedHashMap<RowId, Integer>();
        for (var row : diet.rows()) {
            double limit = row.isRatio() ? 0 : headDays * row.limit();
            rows.put(row.of(), program.row(row.id(), row.lower(limit), row.upper(limit), feeds, row.coefficients()));
        }
        return new Placed(
                feeds, rows, diet.growth().map(energy -> program.convex(growth, feeds, energy.over(headDays))));
    }

    /** Asks for another need of the same stage and another stretch: limits move, and nothing else. */
    public void move(Session in, Placed placed, Need need, double headDays) {
        for (var row : diet.rows()) {
            var at = placed.row().get(row.of());
            if (at != null && !row.isRatio()) {
                double limit = headDays * row.law().asks().applyAsDouble(need);
                in.rowBounds(at, row.lower(limit), row.upper(limit));
            }
        }
        diet.growth()
                .ifPresent(energy ->
                        in.convex(placed.growth().orElseThrow(), energy.of(need).over(headDays)));
    }

    /** Moves one absolute row's limit, for one head and day. */
    public void limit(Session in, Placed placed, DietRow row, double limit) {
        if (row.isRatio()) {
            throw new IllegalArgumentException(row.id() + " is a ratio: its coefficients move with its limit");
        }
        in.rowBounds(Optional.ofNullable(placed.row().get(row.of())).orElseThrow(), row.lower(limit), row.upper(limit));
    }
}
