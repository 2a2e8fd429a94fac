package haywright.cattle.need;

import static haywright.quantity.Unit.CELSIUS;
import static haywright.quantity.Unit.FAHRENHEIT;
import static haywright.quantity.Unit.GALLON;
import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.LITER;
import static haywright.quantity.Unit.NONE;
import static haywright.quantity.Unit.POUND;

import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.Limits;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;

/**
 * Water that one head takes in a day, by the printed table: what it drinks and what its feed brings.
 * <pre>
 * D = d1 + (d2 − d1)·xd     dry cows, growing cattle, bulls; US gallons
 * Wm = m1 + (m2 − m1)·xm     cows in milk
 * G  = Wd + (Wm − Wd)·Y / 8
 * W  = 3.785411784·G         L
 * </pre>
 * xd and xm are how far the day lies between the printed temperatures; each printed temperature lies between the printed weights, and a
 * pregnant heifer of 750 lb drinks less than a cow of 1,100. The table begins at 40 °F: colder than that nobody printed anything, and its figure stands. The milking column is
 * taken as that of a cow with 8 kg of milk, by judgment. Cows above 1,100 lb and bulls are printed without regard to weight. The water in
 * feed counts: take off what silage or wet grains bring ({@link #fromTrough}). Snow serves only cattle whose need is low.
 *
 * @param bodyWeight full, kg
 * @param milk Y, kg a day
 * @param temperature °C
 */
public record Water(AnimalClass animals, double bodyWeight, double milk, double temperature) implements Worked {
    /** °C: the coldest that is printed. */
    public static final double COLDEST_PRINTED = FAHRENHEIT.toBase(40);

    private static final double PRINTED_MILK = 8;
    private static final List<PublishedTable.Row> TABLE =
            PublishedTable.read(Water.class, "water.csv").rows();
    private static final Source MILK =
            Source.judgment("the printed cow in milk gives 8 kg, and water goes with the milk");

    public Water {
        Limits.of("day_temperature").check("temperature", temperature, CELSIUS).refuse();
    }

    /** Two printed cells and how far between them. */
    private record Between(double low, double high, double way) {
        double value() {
            return low + (high - low) * way;
        }

        /** @param marks ascending, as many as values */
        static Between of(List<Double> marks, List<Double> values, double at) {
            int i = 0;
            while (i < marks.size() - 2 && at > marks.get(i + 1)) {
                i++;
            }
            int j = Math.min(i + 1, marks.size() - 1);
            double way = i == j ? 0 : (at - marks.get(i)) / (marks.get(j) - marks.get(i));
            return new Between(values.get(i), values.get(j), Math.max(0, Math.min(1, way)));
        }
    }

    private static List<PublishedTable.Row> rows(String drinker) {
        return TABLE.stream().filter(r -> r.text("drinker").equals(drinker)).toList();
    }

    private Between between(String drinker) {
        var rows = rows(drinker);
        var temperatures =
                rows.stream().map(r -> number(r, "temperature_f")).distinct().toList();
        var gallons = temperatures.stream().map(t -> atWeight(rows, t)).toList();
        return Between.of(temperatures, gallons, FAHRENHEIT.fromBase(temperature));
    }

    private double atWeight(List<PublishedTable.Row> rows, double printed) {
        var cells =
                rows.stream().filter(r -> number(r, "temperature_f") == printed).toList();
        return Between.of(
                        cells.stream().map(r -> number(r, "weight_lb")).toList(),
                        cells.stream().map(r -> number(r, "gallons")).toList(),
                        POUND.fromBase(bodyWeight))
                .value();
    }

    /** Of the warmest printed temperature that is not above that of the day. */
    private Source source(String drinker) {
        var rows = rows(drinker);
        var row = rows.get(0);
        for (var next : rows) {
            row = FAHRENHEIT.fromBase(temperature) >= number(next, "temperature_f") - 1e-9 ? next : row;
        }
        return Breed.source(row);
    }

    private static double number(PublishedTable.Row row, String column) {
        return row.number(column).orElseThrow();
    }

    private String dry() {
        return switch (animals) {
            case GROWING -> "growing";
            case BULL -> "bull";
            default -> "dry";
        };
    }

    private double gallons() {
        double dry = between(dry()).value();
        return milk > 0 ? dry + (between("milking").value() - dry) * milk / PRINTED_MILK : dry;
    }

    /** L a day, the water in the feed included. */
    public double liters() {
        return GALLON.toBase(gallons()) * 1000;
    }

    /**
     * L a day to drink.
     *
     * @param feedWater kg a day that the feed brings: as fed less dry matter
     */
    public double fromTrough(double feedWater) {
        return Math.max(0, liters() - feedWater);
    }

    @Override
    public List<Line> lines() {
        var lines = new ArrayList<Line>();
        lines.add(line("Wd", dry()));
        if (milk > 0) {
            lines.add(line("Wm", "milking"));
            lines.add(Line.of(
                    "G", "Wd + (Wm − Wd)·Y / 8", gallons(), GALLON, MILK, Input.typed("Y", milk, KILOGRAM_A_DAY)));
        } else {
            lines.add(Line.of("G", "Wd", gallons(), GALLON, Source.ARITHMETIC));
        }
        lines.add(Line.of("W", "3.785411784·G", liters(), LITER, Source.ARITHMETIC));
        return lines;
    }

    private Line line(String symbol, String drinker) {
        var cell = symbol.substring(1);
        var between = between(drinker);
        var source = source(drinker);
        return Line.of(
                symbol,
                "%s1 + (%s2 − %s1)·x%s".formatted(cell, cell, cell, cell),
                between.value(),
                GALLON,
                source,
                Input.published(cell + "1", between.low, GALLON, source),
                Input.published(cell + "2", between.high, GALLON, source),
                Input.typed("x" + cell, between.way, NONE));
    }
}
