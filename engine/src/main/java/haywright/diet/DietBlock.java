package haywright.diet;

import haywright.cattle.need.Need;
import haywright.forage.Analyte;
import haywright.forage.lot.Shared;
import haywright.forage.lot.Spread;
import haywright.lp.ConeRow;
import haywright.lp.ProgramBuilder;
import haywright.lp.Session;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * One group over one stretch of days, in any program: a column for each feed, its kilograms of dry matter that all head
 * eat in all those days, and a row for each limit of its diet.
 *
 * <p>It is made of feeds, stage and way of feeding, never of weather, so that what the program multiplies stays: a colder
 * or a shorter stretch moves right sides only ({@link #move}), and a solver goes on from where it stood.
 *
 * <p>A row that is kept more surely than even odds stands twice: plainly, and as a curved row that takes its doubt off.
 *
 * @param diet of the stage, on any day of it
 */
public record DietBlock(Diet diet, Sureness sureness) {
    /** As expected. */
    public DietBlock(Diet diet) {
        this(diet, Sureness.EXPECTED);
    }

    /**
     * Where it lies in a program.
     *
     * @param feed the column of each feed, in the diet's order
     * @param row the row of each limit
     * @param sure the curved row of those that are kept surely
     * @param growth the curved row of energy, where they gain
     */
    public record Placed(int[] feed, Map<RowId, Integer> row, Map<RowId, Curve> sure, Optional<Growth> growth) {}

    /** @param index which of the program's curved rows it is */
    public record Curve(int index, ConeRow row) {}

    /** @param energy of one head and day */
    public record Growth(int index, GrowthEnergy energy) {}

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
        var sure = new LinkedHashMap<RowId, Curve>();
        for (var row : diet.rows()) {
            double right = headDays * row.rightHandSide();
            rows.put(row.of(), program.row(row.id(), row.lower(right), row.upper(right), feeds, row.coefficients()));
        }
        for (var row : diet.rows()) {
            cone(row).ifPresent(cone -> {
                var placed = limited(cone, row, headDays * row.rightHandSide());
                sure.put(row.of(), new Curve(program.convex(row.id() + "_sure", feeds, placed), cone));
            });
        }
        return new Placed(
                feeds,
                rows,
                sure,
                diet.growth()
                        .map(this::sure)
                        .map(energy -> new Growth(program.convex(growth, feeds, energy.over(headDays)), energy)));
    }

    /** What amounts are held against, worked out once for many of them. */
    public Judge judge() {
        var cones = new LinkedHashMap<DietRow, ConeRow>();
        diet.rows()
                .forEach(row -> cone(row).ifPresent(cone -> cones.put(row, limited(cone, row, row.rightHandSide()))));
        return new Judge(diet, cones, diet.growth().map(this::sure));
    }

    /** @param sure rows that are kept surely, for one head and day */
    public record Judge(Diet diet, Map<DietRow, ConeRow> sure, Optional<GrowthEnergy> growth) {
        /** The worst share by which amounts miss any row as surely as it is kept; 0 or less where they keep all. */
        public double misses(double[] kg) {
            double worst = growth.map(energy -> energy.broken(kg)).orElse(Double.NEGATIVE_INFINITY);
            for (var row : diet.rows()) {
                worst = Math.max(worst, -row.margin(kg) / Math.max(1e-9, Math.abs(row.limit())));
            }
            for (var cone : sure.values()) {
                worst = Math.max(worst, cone.broken(kg));
            }
            return worst;
        }
    }

    private Optional<ConeRow> cone(DietRow row) {
        double z = sureness.z(row);
        return z == 0
                ? Optional.empty()
                : Optional.of(cone(row.sense(), z, row::spread)).filter(DietBlock::isDoubtful);
    }

    /** Asks for another need of the same stage and another stretch: limits move, and nothing else. */
    public void move(Session in, Placed placed, Need need, double headDays) {
        for (var row : diet.rows()) {
            if (placed.row().containsKey(row.of())) {
                right(in, placed, row, headDays * row.law().rightHandSide(need));
            }
        }
        placed.growth()
                .ifPresent(growth ->
                        in.convex(growth.index(), growth.energy().of(need).over(headDays)));
    }

    /**
     * Keeps the same rows more or less surely. Walking upward, cuts that were taken hold on: what is left of a sum with
     * more of its doubt taken off lies below.
     *
     * @param placed where the block stands at its own sureness: rows that it keeps at even odds stay so
     * @return where it stands now
     */
    public Placed keep(Session in, Placed placed, Sureness asked, double headDays) {
        var sure = new LinkedHashMap<RowId, Curve>();
        for (var row : diet.rows()) {
            var curve = placed.sure().get(row.of());
            if (curve != null) {
                var cone = cone(row.sense(), asked.z(row), row::spread);
                in.convex(curve.index(), limited(cone, row, headDays * row.rightHandSide()));
                sure.put(row.of(), new Curve(curve.index(), cone));
            }
        }
        var growth = diet.growth()
                .map(energy ->
                        new Growth(placed.growth().orElseThrow().index(), new DietBlock(diet, asked).sure(energy)));
        growth.ifPresent(now -> in.convex(now.index(), now.energy().over(headDays)));
        return new Placed(placed.feed(), placed.row(), sure, growth);
    }

    /** Moves one absolute row's limit, for one head and day. */
    public void limit(Session in, Placed placed, DietRow row, double limit) {
        if (row.isRatio()) {
            throw new IllegalArgumentException(row.id() + " is a ratio: its coefficients move with its limit");
        }
        right(in, placed, row, limit - row.beside());
    }

    private static void right(Session in, Placed placed, DietRow row, double right) {
        int at = Optional.ofNullable(placed.row().get(row.of())).orElseThrow();
        in.rowBounds(at, row.lower(right), row.upper(right));
        var curve = placed.sure().get(row.of());
        if (curve != null) {
            in.convex(curve.index(), limited(curve.row(), row, right));
        }
    }

    private static ConeRow limited(ConeRow cone, DietRow row, double right) {
        return cone.withLimit(row.sense() == DietRow.Sense.AT_LEAST ? right : -right);
    }

    /** Asks for another gain, for one head and day. */
    public void gain(Session in, Placed placed, double neg) {
        var growth = placed.growth().orElseThrow();
        in.convex(growth.index(), growth.energy().forGain(neg));
    }

    /** The energy of both kinds comes of one TDN: each is lowered by its own doubt. */
    private GrowthEnergy sure(GrowthEnergy energy) {
        double z = sureness.energy();
        return z == 0
                ? energy
                : new GrowthEnergy(
                        energy.nem(),
                        energy.neg(),
                        cone(DietRow.Sense.AT_LEAST, z, feed -> Diet.spread(feed, Analyte.NEM)),
                        cone(DietRow.Sense.AT_LEAST, z, feed -> Diet.spread(feed, Analyte.NEG)));
    }

    private ConeRow cone(DietRow.Sense sense, double z, Function<Feed, Spread> spread) {
        int sign = sense == DietRow.Sense.AT_LEAST ? 1 : -1;
        List<Spread> spreads = diet.feeds().stream().map(spread).toList();
        SortedSet<Shared> doubts = new TreeSet<>();
        spreads.forEach(one -> doubts.addAll(one.shared().keySet()));
        return new ConeRow(
                spreads.stream().mapToDouble(one -> sign * one.mean()).toArray(),
                spreads.stream().mapToDouble(Spread::own).toArray(),
                doubts.stream()
                        .map(doubt -> spreads.stream()
                                .mapToDouble(one -> one.shared().getOrDefault(doubt, 0.0))
                                .toArray())
                        .toArray(double[][]::new),
                z,
                0);
    }

    private static boolean isDoubtful(ConeRow cone) {
        return cone.shared().length > 0 || IntStream.range(0, cone.own().length).anyMatch(i -> cone.own()[i] > 0);
    }
}
