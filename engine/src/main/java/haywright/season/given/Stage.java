package haywright.season.given;

import haywright.diet.Diet;
import haywright.diet.DietRow;
import haywright.diet.RowId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What one head of a group must be fed in one week, in the weather usual then: the rows of its diet that can bind at all.
 *
 * @param feeds season index of each feed of the diet, in its order
 * @param diet without its energy for growth and without rows that no amounts can break
 * @param growth for cattle that gain
 * @param rights what each row comes to a head and day in usual weather
 * @param nem Mcal a head and day in usual weather
 * @param factor on free-choice intake in usual weather
 */
@SuppressWarnings("ArrayRecordComponent")
public record Stage(
        int[] feeds, Diet diet, Optional<Growth> growth, Map<RowId, Double> rights, double nem, double factor) {
    public static final String ENERGY = "nem";
    public static final String PROTEIN = "cp";

    /** Free choice what is eaten moves with the weather and the appetite. */
    private static final String EATEN = "eaten";

    private static final double INF = Double.POSITIVE_INFINITY;

    /** @param nem Mcal of upkeep a head and day. @param neg Mcal for gain */
    public record Growth(double nem, double neg) {
        /** NEg in each Mcal of NEm of what is fed, along which tangents are taken: from poor hay to corn. */
        private static final double[] RAYS = {0.30, 0.40, 0.47, 0.53, 0.58, 0.63, 0.68};

        /** NEg that comes with a Mcal of NEm that is missed. */
        public static final double MISSED_NEG = 0.6;

        /** Weights of a Mcal of NEg beside one of NEm, one for each tangent. */
        public double[] weights() {
            return Arrays.stream(RAYS)
                    .map(ray -> {
                        double u = nem + neg / ray;
                        double v = ray * u;
                        return neg * u * u / (nem * v * v);
                    })
                    .toArray();
        }

        /** What NEm + q·NEg must come to at least. */
        public static double right(double weight, double nem, double neg) {
            double root = Math.sqrt(nem) + Math.sqrt(weight * neg);
            return root * root;
        }

        /** Mcal of NEm, each with its share of NEg, that are missing from u of NEm and v of NEg; 0 where they carry it. */
        public static double missed(double u, double v, double nem, double neg) {
            double c = MISSED_NEG;
            double half = v + c * u - c * nem - neg;
            double rest = u * v - v * nem - u * neg;
            double root = half * half - 4 * c * rest;
            return root < 0 ? 0 : Math.max(0, (-half + Math.sqrt(root)) / (2 * c));
        }
    }

    /** @param index of each feed of the season by its id */
    public static Stage of(Diet diet, Map<String, Integer> index, double nem) {
        var feeds = diet.feeds().stream().mapToInt(f -> index.get(f.id())).toArray();
        var rows = new ArrayList<DietRow>();
        var rights = new LinkedHashMap<RowId, Double>();
        for (var row : diet.rows()) {
            double right = (row.isRatio() ? 0 : row.limit()) - row.beside();
            if (canBind(row, right)) {
                rows.add(row);
                rights.put(row.of(), right);
            }
        }
        var growth = diet.growth().map(energy -> new Growth(nem, energy.neg()));
        return new Stage(
                feeds,
                new Diet(diet.need(), diet.feeds(), rows, Optional.empty(), diet.leftOut(), diet.options()),
                growth,
                rights,
                nem,
                diet.need().intakeFactor());
    }

    private static boolean canBind(DietRow row, double right) {
        var coefficients = row.coefficients();
        return row.sense() == DietRow.Sense.AT_LEAST
                ? right > 0 || Arrays.stream(coefficients).anyMatch(c -> c < 0)
                : right < 0 || Arrays.stream(coefficients).anyMatch(c -> c > 0);
    }

    /** What a row comes to a head and day, in weather that is given. */
    public double right(DietRow row, double nemNow, double factorNow) {
        double usual = rights.getOrDefault(row.of(), (row.isRatio() ? 0 : row.limit()) - row.beside());
        if (row.id().equals(ENERGY)) {
            return nemNow;
        }
        return isEaten(row) ? usual * factorNow / factor : usual;
    }

    public static boolean isEaten(DietRow row) {
        return row.id().startsWith(EATEN);
    }

    /** Dollars a unit that a row is missed by; infinite where it cannot be missed. */
    public static double missPrice(DietRow row, double right) {
        if (row.sense() == DietRow.Sense.AT_MOST) {
            return right < 0 ? Facts.value("unmet_need") / -right : INF;
        }
        if (right <= 0) {
            return INF;
        }
        return switch (row.id()) {
            case PROTEIN -> Facts.value("unmet_protein");
            case "ca", "p", "mineral" -> Facts.value("unmet_mineral") / right;
            case "intake" -> Facts.value("unmet_practice") / right;
            default ->
                switch (row.kind()) {
                    case NEED, DANGER -> Facts.value("unmet_need") / right;
                    case PRACTICE -> Facts.value("unmet_practice") / right;
                    case CHOICE -> Facts.value("unmet_wish") / right;
                };
        };
    }

    /** The rows with energy and protein as the feeds are made. */
    public List<DietRow> rows(Energies made) {
        return diet.rows().stream()
                .map(row -> switch (row.id()) {
                    case ENERGY -> with(row, made.nem());
                    case PROTEIN -> with(row, made.cp());
                    default -> row;
                })
                .toList();
    }

    private DietRow with(DietRow row, double[] perKg) {
        return new DietRow(
                row.of(),
                row.kind(),
                row.name(),
                row.sense(),
                row.limit(),
                row.unit(),
                row.law(),
                Arrays.stream(feeds).mapToObj(f -> perKg[f]).toList(),
                row.bottom(),
                row.beside(),
                row.source());
    }
}
