package haywright.lp;

import static haywright.lp.LinearProgram.maximize;
import static haywright.lp.LinearProgram.minimize;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import haywright.workings.PublishedTable;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** The published problems of worked.csv as programs. Sources stand in that table, one row a problem. */
final class Published {
    static final double INF = Double.POSITIVE_INFINITY;
    static final PublishedTable WORKED = PublishedTable.read(Published.class, "worked.csv");
    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();

    private Published() {}

    static PublishedTable.Row row(String id) {
        return WORKED.row("id", id);
    }

    static String text(String resource) {
        try (InputStream in = Published.class.getResourceAsStream(resource)) {
            assertThat(in).as(resource).isNotNull();
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static JsonNode json(String text) {
        try {
            return JSON.readTree(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static LinearProgram program(String id) {
        return switch (id) {
            case "L01" -> stigler();
            case "L05" -> menu(false, INF, false);
            case "L06" -> menu(true, 50_000, false);
            case "L07" -> menu(true, 50_000, true);
            case "I02" -> menu(true, 40_000, false);
            case "L10" -> foodManufacture();
            case "L17" -> farmer();
            case "D03" -> fromJson(json(row("L03").text("inputs")));
            case "D04" -> fromJson(json(row("L04").text("inputs")));
            case "I01" -> twoCapsAndAFloor();
            case "I03" -> LinearProgram.fromMps(text("mps_infeasible/woodinfe.mps"));
            case "I04" -> LinearProgram.fromMps(text("mps_infeasible/forest6.mps"));
            case "I05" -> LinearProgram.fromMps(text("mps_infeasible/klein1.mps"));
            default -> fromJson(json(row(id).text("inputs")));
        };
    }

    static double[] numbers(JsonNode list) {
        return IntStream.range(0, list.size())
                .mapToDouble(i ->
                        list.get(i).asText().equals("inf") ? INF : list.get(i).asDouble())
                .toArray();
    }

    /** Half of the last digit printed; a number without decimals is exact, to the row's own tolerance. */
    static void agrees(String what, double ours, JsonNode printed, double exact) {
        if (printed.asText().equals("inf")) {
            assertThat(ours).as(what).isEqualTo(INF);
            return;
        }
        int scale = printed.isIntegralNumber() ? 0 : printed.decimalValue().scale();
        double tolerance = scale > 1 ? 0.5 * Math.pow(10, -scale) : exact;
        assertThat(ours).as(what).isCloseTo(printed.asDouble(), within(tolerance));
    }

    /** min or max: costs; ge, le: rows with their limit last; ranges: with both; rows: with sense and limit. */
    private static LinearProgram fromJson(JsonNode in) {
        ProgramBuilder b = in.has("max") ? maximize() : minimize();
        double[] cost = numbers(in.has("max") ? in.get("max") : in.has("min") ? in.get("min") : in.get("c"));
        int n = cost.length;
        for (int j = 0; j < n; j++) {
            double lower = in.has("bounds") ? numbers(in.get("bounds").get(j))[0] : 0;
            double upper = in.has("bounds") ? numbers(in.get("bounds").get(j))[1] : INF;
            b.column("x" + j, cost[j], lower, in.has("x_max") ? in.get("x_max").asDouble() : upper);
        }
        in.fieldNames().forEachRemaining(kind -> {
            switch (kind) {
                case "ge", "le", "ranges", "rows" -> {
                    for (JsonNode row : in.get(kind)) {
                        boolean atLeast = kind.equals("ge")
                                || (kind.equals("rows") && row.get(n).asText().equals(">="));
                        double last = row.get(row.size() - 1).asDouble();
                        double lower = kind.equals("ranges") ? row.get(n).asDouble() : atLeast ? last : -INF;
                        dense(b, kind + row, lower, atLeast ? INF : last, first(n, row));
                    }
                }
                case "protein", "fat", "oil" ->
                    dense(b, kind, in.get(kind + "_min").asDouble(), INF, lowered(in, kind));
                case "sum" ->
                    dense(
                            b,
                            "sum",
                            1,
                            1,
                            IntStream.range(0, n).mapToDouble(j -> 1).toArray());
                default -> {}
            }
        });
        if (in.has("mean")) {
            dense(b, "protein", in.get("protein_min").asDouble(), INF, lowered(in, "mean"));
        }
        return b.build();
    }

    /** All feeds wholly correlated: each mean less z standard deviations (worked.csv, note of C16). */
    private static double[] lowered(JsonNode in, String kind) {
        double[] values = numbers(in.get(kind));
        if (kind.equals("mean")) {
            double z = in.get("z").asDouble();
            for (int j = 0; j < values.length; j++) {
                values[j] -= z * Math.sqrt(in.get("var").get(j).asDouble());
            }
        }
        return values;
    }

    private static double[] first(int n, JsonNode row) {
        return IntStream.range(0, n).mapToDouble(j -> row.get(j).asDouble()).toArray();
    }

    static void dense(ProgramBuilder b, String name, double lower, double upper, double... coefficients) {
        b.row(name, lower, upper, IntStream.range(0, coefficients.length).toArray(), coefficients);
    }

    private static LinearProgram stigler() {
        ProgramBuilder b = minimize();
        var foods = PublishedTable.read(Published.class, "stigler_foods.csv").rows();
        foods.forEach(f -> b.column(f.text("food_id"), 1, 0, INF));
        for (var need :
                PublishedTable.read(Published.class, "stigler_requirements.csv").rows()) {
            String column = need.text("nutrient") + "_per_dollar";
            dense(
                    b,
                    need.text("nutrient"),
                    need.number("minimum_per_day").orElseThrow(),
                    INF,
                    foods.stream()
                            .mapToDouble(f -> f.number(column).orElseThrow())
                            .toArray());
        }
        return b.build();
    }

    /** The AMPL book's diet; the full one has amounts of 2 to 10, sodium and calories. */
    private static LinearProgram menu(boolean full, double sodium, boolean whole) {
        JsonNode in = json(row("L05").text("inputs"));
        ProgramBuilder b = minimize();
        String[] names = in.get("vars").asText().split(" ");
        for (int j = 0; j < names.length; j++) {
            double cost = in.get("cost").get(j).asDouble();
            if (whole) {
                b.whole(names[j], cost, 2, 10);
            } else {
                b.column(names[j], cost, full ? 2 : 0, full ? 10 : 100);
            }
        }
        for (String vitamin : List.of("A", "C", "B1", "B2")) {
            dense(b, vitamin, 700, full ? 20_000 : INF, numbers(in.get(vitamin)));
        }
        if (full) {
            dense(b, "NA", -INF, sodium, 938, 2180, 945, 278, 1182, 896, 1329, 1397);
            dense(b, "CAL", 16_000, 24_000, 295, 770, 440, 430, 315, 400, 370, 450);
        }
        return b.build();
    }

    /** Williams, Model Building in Mathematical Programming, Food Manufacture 1. */
    private static LinearProgram foodManufacture() {
        double[][] price = {
            {110, 120, 130, 110, 115}, {130, 130, 110, 90, 115}, {110, 140, 130, 100, 95},
            {120, 110, 120, 120, 125}, {100, 120, 150, 110, 105}, {90, 100, 140, 80, 135}
        };
        double[] hardness = {8.8, 6.1, 2.0, 4.2, 5.0};
        ProgramBuilder b = maximize();
        int[] stored = new int[5];
        for (int month = 0; month < 6; month++) {
            int[] use = new int[5];
            for (int oil = 0; oil < 5; oil++) {
                int buy = b.column("buy " + oil + " in " + month, -price[month][oil], 0, INF);
                use[oil] = b.column("use " + oil + " in " + month, 150, 0, INF);
                boolean last = month == 5;
                int store = b.column("store " + oil + " in " + month, -5, last ? 500 : 0, last ? 500 : 1000);
                String name = "oil " + oil + " in " + month;
                if (month == 0) {
                    b.row(name, -500, -500, new int[] {buy, use[oil], store}, new double[] {1, -1, -1});
                } else {
                    b.row(name, 0, 0, new int[] {stored[oil], buy, use[oil], store}, new double[] {1, 1, -1, -1});
                }
                stored[oil] = store;
            }
            b.row("vegetable in " + month, -INF, 200, new int[] {use[0], use[1]}, new double[] {1, 1});
            b.row("other in " + month, -INF, 250, new int[] {use[2], use[3], use[4]}, new double[] {1, 1, 1});
            b.row(
                    "hard in " + month,
                    -INF,
                    0,
                    use,
                    IntStream.range(0, 5).mapToDouble(o -> hardness[o] - 6).toArray());
            b.row(
                    "soft in " + month,
                    0,
                    INF,
                    use,
                    IntStream.range(0, 5).mapToDouble(o -> hardness[o] - 3).toArray());
        }
        return b.build();
    }

    /** Both stages of the farmer's problem as one program at mean yields. */
    private static LinearProgram farmer() {
        JsonNode data = json(text("farmer3.json"));
        ProgramBuilder b = minimize();
        Map<String, Integer> columns = new LinkedHashMap<>();
        for (String stage : List.of("first_stage", "second_stage")) {
            for (JsonNode v : data.get(stage).get("vars")) {
                double upper = v.get("ub").isNull() ? INF : v.get("ub").asDouble();
                String name = v.get("name").asText();
                columns.put(
                        name,
                        b.column(name, v.get("cost").asDouble(), v.get("lb").asDouble(), upper));
            }
            for (JsonNode r : data.get(stage).get("rows")) {
                List<Integer> index = new ArrayList<>();
                List<Double> value = new ArrayList<>();
                r.get("coef").fields().forEachRemaining(e -> {
                    index.add(columns.get(e.getKey()));
                    value.add(e.getValue().asDouble());
                });
                double rhs = r.get("rhs").asDouble();
                boolean atMost = r.get("sense").asText().equals("<=");
                b.row(
                        r.get("name").asText(),
                        atMost ? -INF : rhs,
                        atMost ? rhs : INF,
                        index.stream().mapToInt(i -> i).toArray(),
                        value.stream().mapToDouble(v -> v).toArray());
            }
        }
        return b.build();
    }

    private static LinearProgram twoCapsAndAFloor() {
        ProgramBuilder b = minimize();
        b.column("A", 1, 0, INF);
        b.column("B", 1, 0, INF);
        dense(b, "C1", -INF, 60, 1, 0);
        dense(b, "C2", -INF, 50, 0, 1);
        dense(b, "C3", 220, INF, 1, 2);
        return b.build();
    }
}
