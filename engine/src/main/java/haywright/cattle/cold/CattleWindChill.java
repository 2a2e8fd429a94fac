package haywright.cattle.cold;

import static haywright.quantity.Unit.CELSIUS;
import static haywright.quantity.Unit.FAHRENHEIT;
import static haywright.quantity.Unit.KILOMETER_AN_HOUR;
import static haywright.quantity.Unit.MILE_AN_HOUR;
import static haywright.quantity.Unit.NONE;

import haywright.cattle.Breed;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Wind chill of cattle in their winter coat, from the printed table.
 * <pre>
 * A  = a1 + (a2 − a1)·(T − t1)/(t2 − t1)      at the lower wind of the table, °F
 * B  = b1 + (b2 − b1)·(T − t1)/(t2 − t1)      at the higher wind
 * WC = A + (B − A)·(V − v1)/(v2 − v1)
 * </pre>
 * Interpolated between the cells. The table ends at 40 mph and runs from −10 to 40 °F: beyond 40 mph nothing is
 * extrapolated, so that it understates a gale; beyond its temperatures the wind takes off as much as at its border.
 *
 * @param temperature °C
 * @param wind km/h, mean of the day, in the open
 * @param reaching the share of it that reaches them
 * @see "University of Nebraska, Cedar County, Feeding Cows in the Cold; 5 mph: South Dakota State University (read)"
 */
public record CattleWindChill(double temperature, double wind, double reaching) implements WindChill {
    private static final List<PublishedTable.Row> ROWS =
            PublishedTable.read(CattleWindChill.class, "wind_chill.csv").rows();
    private static final Source BEHIND_A_BREAK =
            Source.judgment("a windbreak leaves three tenths of the wind; published tables of"
                    + " 10 mph behind one have 8 of 19 °F left (Windbreak supporting information)");
    private static final double[] AIR = {-10, -5, 0, 5, 10, 20, 30, 40};
    private static final double[] MPH =
            ROWS.stream().mapToDouble(row -> row.number("mph").orElseThrow()).toArray();
    private static final double[][] CHILL = ROWS.stream()
            .map(row -> IntStream.range(0, AIR.length)
                    .mapToDouble(i -> row.number(String.valueOf((int) AIR[i])).orElseThrow())
                    .toArray())
            .toArray(double[][]::new);

    public CattleWindChill {
        WindChill.check(temperature, wind);
    }

    /** In the open. */
    public CattleWindChill(double temperature, double wind) {
        this(temperature, wind, 1);
    }

    static Line air(double temperature) {
        return Line.of(
                "T",
                "1.8·Tair + 32",
                FAHRENHEIT.fromBase(temperature),
                FAHRENHEIT,
                Source.ARITHMETIC,
                Input.typed("Tair", temperature, CELSIUS));
    }

    private double air() {
        return FAHRENHEIT.fromBase(temperature);
    }

    /** T, but not outside the table. */
    private double inside() {
        return Math.max(AIR[0], Math.min(AIR[AIR.length - 1], air()));
    }

    private double mph() {
        return Math.min(MPH[MPH.length - 1], MILE_AN_HOUR.fromBase(reaching * wind));
    }

    private static int lower(double[] marks, double value) {
        int i = 0;
        while (i < marks.length - 2 && value > marks[i + 1]) {
            i++;
        }
        return i;
    }

    private double along(int row) {
        int i = lower(AIR, inside());
        double way = (inside() - AIR[i]) / (AIR[i + 1] - AIR[i]);
        return CHILL[row][i] + (CHILL[row][i + 1] - CHILL[row][i]) * way;
    }

    private double fahrenheit() {
        int j = lower(MPH, mph());
        double way = (mph() - MPH[j]) / (MPH[j + 1] - MPH[j]);
        return along(j) + (along(j + 1) - along(j)) * way + air() - inside();
    }

    @Override
    public double celsius() {
        return FAHRENHEIT.toBase(fahrenheit());
    }

    @Override
    public List<Line> lines() {
        int i = lower(AIR, inside());
        int j = lower(MPH, mph());
        var low = Breed.source(ROWS.get(j));
        var high = Breed.source(ROWS.get(j + 1));
        return List.of(
                air(temperature),
                Line.of("Q", "max(−10, min(40, T))", inside(), FAHRENHEIT, high),
                Line.of(
                        "V",
                        "min(40, s·v / 1.609344)",
                        mph(),
                        MILE_AN_HOUR,
                        high,
                        Input.published("s", reaching, NONE, BEHIND_A_BREAK),
                        Input.typed("v", wind, KILOMETER_AN_HOUR)),
                Line.of(
                        "A",
                        "a1 + (a2 − a1)·(Q − t1)/(t2 − t1)",
                        along(j),
                        FAHRENHEIT,
                        low,
                        Input.published("t1", AIR[i], FAHRENHEIT, low),
                        Input.published("t2", AIR[i + 1], FAHRENHEIT, low),
                        Input.published("a1", CHILL[j][i], FAHRENHEIT, low),
                        Input.published("a2", CHILL[j][i + 1], FAHRENHEIT, low)),
                Line.of(
                        "B",
                        "b1 + (b2 − b1)·(Q − t1)/(t2 − t1)",
                        along(j + 1),
                        FAHRENHEIT,
                        high,
                        Input.published("t1", AIR[i], FAHRENHEIT, high),
                        Input.published("t2", AIR[i + 1], FAHRENHEIT, high),
                        Input.published("b1", CHILL[j + 1][i], FAHRENHEIT, high),
                        Input.published("b2", CHILL[j + 1][i + 1], FAHRENHEIT, high)),
                Line.of(
                        "WC",
                        "A + (B − A)·(V − v1)/(v2 − v1) + T − Q",
                        fahrenheit(),
                        FAHRENHEIT,
                        high,
                        Input.published("v1", MPH[j], MILE_AN_HOUR, low),
                        Input.published("v2", MPH[j + 1], MILE_AN_HOUR, high)),
                Line.of("EAT", "(WC − 32) / 1.8", celsius(), CELSIUS, Source.ARITHMETIC));
    }
}
