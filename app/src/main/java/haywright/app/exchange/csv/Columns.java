package haywright.app.exchange.csv;

import haywright.app.exchange.lab.Days;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Vocabulary;
import haywright.forage.Basis;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVRecord;

/**
 * A line read as headings.
 *
 * @param names every heading as written
 * @param told where the columns that are no figures stand
 * @param analytes columns of figures in a wide file
 * @param bases columns of figures in a long file; those under {@code value} have no basis of their own
 * @param value the column of a long file whose figures have no basis in their heading; −1 for none
 */
record Columns(
        List<String> names,
        Map<Told, Integer> told,
        Map<Integer, Heading> analytes,
        Map<Integer, Basis> bases,
        int value) {
    /** What a column can tell beside figures. */
    enum Told {
        NAME(
                "analyte",
                "name",
                "test",
                "component",
                "item",
                "parameter",
                "constituent",
                "nutrient",
                "analysis",
                "determination",
                "assay"),
        CODE(
                "sample",
                "sample id",
                "sample code",
                "sample no",
                "sample no.",
                "sample number",
                "sample name",
                "bag",
                "bag label",
                "lab no",
                "lab no.",
                "lab number",
                "lab id",
                "id",
                "description"),
        REPORT("report", "report no", "report no.", "report number"),
        LOT("lot", "lot name", "stack", "feed", "feed name", "field"),
        LABORATORY("laboratory", "lab", "lab name"),
        SAMPLED(
                "sampled",
                "sampled on",
                "date sampled",
                "sampling date",
                "sample date",
                "taken",
                "taken on",
                "collected",
                "date collected"),
        REPORTED("reported", "reported on", "date reported", "report date", "date"),
        METHOD("method", "methods", "analysis method", "procedure"),
        UNIT("unit", "units"),
        BASIS("basis");

        private final Set<String> names;

        Told(String... names) {
            this.names = Set.of(names);
        }
    }

    private static final Set<String> VALUES = Set.of("value", "result", "results", "amount", "figure");

    static Columns of(CSVRecord line, Vocabulary words) {
        var names = line.stream().toList();
        var told = new EnumMap<Told, Integer>(Told.class);
        var analytes = new LinkedHashMap<Integer, Heading>();
        var bases = new LinkedHashMap<Integer, Basis>();
        int value = -1;
        for (int i = 0; i < names.size(); i++) {
            int column = i;
            var key = Heading.key(names.get(i));
            for (var one : Told.values()) {
                if (one.names.contains(key)) {
                    told.putIfAbsent(one, i);
                }
            }
            Heading.basis(key).ifPresent(basis -> bases.put(column, basis));
            words.heading(key).ifPresent(heading -> analytes.put(column, heading));
            if (VALUES.contains(key)) {
                value = i;
            }
        }
        return new Columns(List.copyOf(names), told, analytes, bases, value);
    }

    /** Names down the side, one column a basis. A heading "DM" is a basis there, and an analyte in a wide file. */
    boolean isLong() {
        return told.containsKey(Told.NAME)
                && (!bases.isEmpty() || value >= 0)
                && bases.keySet().containsAll(analytes.keySet());
    }

    boolean isHeadings() {
        return isLong() || analytes.size() >= 2 || samples().size() >= 2;
    }

    /** Names down the side, and one column a sample under its own code, which has a figure in it. */
    Map<Integer, String> samples() {
        var samples = new LinkedHashMap<Integer, String>();
        boolean isSideBySide = told.containsKey(Told.NAME) && bases.isEmpty() && value < 0 && analytes.isEmpty();
        for (int i = 0; isSideBySide && i < names.size(); i++) {
            var name = names.get(i);
            if (!told.containsValue(i)
                    && name.matches(".*[0-9].*")
                    && Days.read(name).isEmpty()) {
                samples.put(i, name);
            }
        }
        return samples;
    }

    int column(Told what) {
        return told.getOrDefault(what, -1);
    }

    /** Headings that say nothing that is understood here. */
    List<String> unknown() {
        var unknown = new ArrayList<String>();
        var samples = samples();
        for (int i = 0; i < names.size(); i++) {
            boolean isFigure =
                    isLong() ? bases.containsKey(i) || i == value : analytes.containsKey(i) || samples.containsKey(i);
            if (!isFigure && !told.containsValue(i) && !names.get(i).isBlank()) {
                unknown.add(names.get(i));
            }
        }
        return unknown;
    }
}
