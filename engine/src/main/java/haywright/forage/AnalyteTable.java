package haywright.forage;

import haywright.workings.EditDistance;
import haywright.workings.PublishedTable;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** {@code analytes.csv}, joined to {@link Analyte} by id when the first name is asked for. */
record AnalyteTable(
        String words,
        List<String> synonyms,
        String method,
        boolean measured,
        Analyte.Range possible,
        Map<String, Analyte.Range> usual) {
    private static final List<String> CLASSES =
            List.of("legume_hay", "grass_cereal_hay", "straw_residue", "silage", "pasture", "grain_pulse", "byproduct");
    private static final Map<Analyte, AnalyteTable> ROWS = read();
    private static final Map<String, Analyte> NAMES = names();

    static AnalyteTable of(Analyte analyte) {
        var row = ROWS.get(analyte);
        if (row == null) {
            throw new IllegalStateException("analytes.csv has no row " + analyte.id());
        }
        return row;
    }

    static Optional<Analyte> find(String name) {
        return Optional.ofNullable(NAMES.get(key(name)));
    }

    /**
     * The known name with the fewest letters to change, or the one that begins as a short form does ("Mag", "Potas.");
     * empty where none is near enough to be meant.
     */
    static Optional<String> nearest(String name) {
        if (name.length() > EditDistance.LONGEST) {
            return Optional.empty();
        }
        var asked = key(name).replaceAll("\\.$", "");
        var begun = NAMES.keySet().stream()
                .filter(known -> asked.matches("\\p{L}{3,}") && known.startsWith(asked))
                .sorted(Comparator.comparingInt(String::length))
                .toList();
        // "potassium nitrate" begins as potassium does, and then potassium is meant
        if (!begun.isEmpty() && begun.stream().allMatch(known -> known.startsWith(begun.get(0)))) {
            return Optional.of(Objects.requireNonNull(NAMES.get(begun.get(0))).words());
        }
        return NAMES.keySet().stream()
                .min((a, b) -> {
                    int nearer = Integer.compare(EditDistance.between(asked, a), EditDistance.between(asked, b));
                    return nearer != 0 ? nearer : a.compareTo(b);
                })
                .filter(near -> 3 * EditDistance.between(asked, near) <= Math.min(asked.length(), near.length()));
    }

    Optional<Analyte.Range> usual(FeedClass feedClass) {
        return switch (feedClass) {
            case LEGUME_HAY -> range("legume_hay");
            case GRASS_HAY, CEREAL_HAY -> range("grass_cereal_hay");
            case MIXED_HAY ->
                range("legume_hay")
                        .map(a -> range("grass_cereal_hay").map(a::with).orElse(a));
            case STRAW, CROP_RESIDUE -> range("straw_residue");
            case CORN_SILAGE, LEGUME_SILAGE, CEREAL_SILAGE -> range("silage");
            case PASTURE -> range("pasture");
            case GRAIN -> range("grain_pulse");
            case PROTEIN_MEAL, DISTILLERS_GRAINS, BYPRODUCT_PROTEIN, BYPRODUCT_ENERGY, CAKE -> range("byproduct");
            case TUB, MINERAL, NPN -> Optional.empty();
        };
    }

    private Optional<Analyte.Range> range(String column) {
        return Optional.ofNullable(usual.get(column));
    }

    private static Map<Analyte, AnalyteTable> read() {
        var rows = new EnumMap<Analyte, AnalyteTable>(Analyte.class);
        for (var row : PublishedTable.read(AnalyteTable.class, "analytes.csv").rows()) {
            var usual = new HashMap<String, Analyte.Range>();
            for (var column : CLASSES) {
                row.some(column + "_range").ifPresent(text -> usual.put(column, range(row.text("analyte_id"), text)));
            }
            rows.put(
                    Analyte.valueOf(row.text("analyte_id").toUpperCase(Locale.ROOT)),
                    new AnalyteTable(
                            row.text("common_name"),
                            row.some("synonyms")
                                    .map(s -> List.of(s.split("; ")))
                                    .orElse(List.of()),
                            row.text("method"),
                            row.text("kind").equals("measured"),
                            new Analyte.Range(
                                    row.number("hard_min").orElseThrow(),
                                    row.number("hard_max").orElseThrow()),
                            Map.copyOf(usual)));
        }
        return Collections.unmodifiableMap(rows);
    }

    /** "83.8-91 (n=13)" */
    private static Analyte.Range range(String id, String text) {
        var ends = text.substring(0, text.indexOf(' ')).split("-");
        if (ends.length != 2) {
            throw new IllegalStateException("analytes.csv, %s: the range %s is not two numbers".formatted(id, text));
        }
        return new Analyte.Range(Double.parseDouble(ends[0]), Double.parseDouble(ends[1]));
    }

    private static Map<String, Analyte> names() {
        var names = new HashMap<String, Analyte>();
        ROWS.forEach((analyte, row) -> {
            names.put(key(analyte.id()), analyte);
            names.put(key(row.words), analyte);
            row.synonyms.forEach(synonym -> names.put(key(synonym), analyte));
        });
        return Map.copyOf(names);
    }

    /** Case, spaces, hyphens and the spellings of two countries make no difference. */
    private static String key(String name) {
        return name.toLowerCase(Locale.ROOT)
                .replaceAll("[\\s_-]+", " ")
                .strip()
                .replace("fibre", "fiber")
                .replace("isable", "izable")
                .replace("sulph", "sulf");
    }
}
