package haywright.cattle.cold;

import static haywright.quantity.Unit.CELSIUS;
import static haywright.quantity.Unit.FAHRENHEIT;
import static haywright.quantity.Unit.NONE;

import haywright.cattle.Breed;
import haywright.cattle.Limits;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The effective temperature below which cattle burn feed to stay warm, by coat and condition.
 * <pre>
 * F   = t1 + (t2 − t1)·s + (t3 − t2)·u      °F
 * LCT = (F − 32) / 1.8                      °C
 * </pre>
 * The table is printed for thin, average and fleshy cattle. Score 5 is its average, score 4 its thin (University of
 * Nebraska), score 6 its fleshy (by symmetry); between them it is interpolated, outside them it stands. A coat on the way
 * from one class to the next has a share q of the difference: F = F1 + (F2 − F1)·q.
 *
 * @param wet wet through, or covered with mud
 * @param conditionScore 1 to 9
 * @see "University of Nebraska, Cedar County, Feeding Cows in the Cold: chart of lower critical temperatures (read)"
 */
public record LowerCritical(HairCoat coat, boolean wet, double conditionScore) implements Worked {
    /** Condition scores of the three columns. */
    public static final double THIN = 4;

    public static final double AVERAGE = 5;
    public static final double FLESHY = 6;

    private static final PublishedTable TABLE = PublishedTable.read(LowerCritical.class, "lower_critical.csv");
    /** By coat; dry and wet; thin, average and fleshy. */
    private static final double[][][] PRINTED = Stream.of(Coat.values())
            .map(coat -> new double[][] {numbers(coat, false), numbers(coat, true)})
            .toArray(double[][][]::new);

    private static final Source BETWEEN = Source.judgment(
            "score 5 is average, 4 thin (University of Nebraska, Helping Cows Cope with Cold Stress), 6 fleshy");

    public LowerCritical {
        Limits.of("condition_score")
                .check("conditionScore", conditionScore, NONE)
                .refuse();
    }

    /** In one coat of the table. */
    public LowerCritical(Coat coat, boolean wet, double conditionScore) {
        this(HairCoat.of(coat), wet, conditionScore);
    }

    private static PublishedTable.Row row(Coat coat, boolean wet) {
        return TABLE.row("key", coat.id() + (wet ? " wet" : " dry"));
    }

    private static double[] numbers(Coat coat, boolean wet) {
        return Stream.of("thin_f", "average_f", "fleshy_f")
                .mapToDouble(column -> row(coat, wet).number(column).orElseThrow())
                .toArray();
    }

    private double printed(Coat of, int column) {
        return PRINTED[of.ordinal()][wet ? 1 : 0][column];
    }

    private static double way(double score, double from, double to) {
        return Math.max(0, Math.min(1, (score - from) / (to - from)));
    }

    private double fahrenheit(Coat of) {
        return printed(of, 0)
                + (printed(of, 1) - printed(of, 0)) * way(conditionScore, THIN, AVERAGE)
                + (printed(of, 2) - printed(of, 1)) * way(conditionScore, AVERAGE, FLESHY);
    }

    private double fahrenheit() {
        return coat.between(fahrenheit(coat.lighter()), fahrenheit(coat.heavier()));
    }

    private Line line(Coat of, String symbol) {
        var source = Breed.source(row(of, wet));
        return Line.of(
                symbol,
                "t1 + (t2 − t1)·s + (t3 − t2)·u",
                fahrenheit(of),
                FAHRENHEIT,
                source,
                Input.published("t1", printed(of, 0), FAHRENHEIT, source),
                Input.published("t2", printed(of, 1), FAHRENHEIT, source),
                Input.published("t3", printed(of, 2), FAHRENHEIT, source));
    }

    /** °C. */
    public double celsius() {
        return FAHRENHEIT.toBase(fahrenheit());
    }

    @Override
    public List<Line> lines() {
        var score = Input.typed("CS", conditionScore, NONE);
        var lines = new ArrayList<Line>();
        lines.add(Line.of("s", "max(0, min(1, CS − 4))", way(conditionScore, THIN, AVERAGE), NONE, BETWEEN, score));
        lines.add(Line.of("u", "max(0, min(1, CS − 5))", way(conditionScore, AVERAGE, FLESHY), NONE, BETWEEN, score));
        if (coat.isPrinted()) {
            lines.add(line(coat.lighter(), "F"));
        } else {
            lines.add(line(coat.lighter(), "F1"));
            lines.add(line(coat.heavier(), "F2"));
            lines.add(Line.of(
                    "F",
                    "F1 + (F2 − F1)·q",
                    fahrenheit(),
                    FAHRENHEIT,
                    HairCoat.SEASON,
                    Input.published("q", coat.share(), NONE, HairCoat.SEASON)));
        }
        lines.add(Line.of("LCT", "(F − 32) / 1.8", celsius(), CELSIUS, Source.ARITHMETIC));
        return List.copyOf(lines);
    }
}
