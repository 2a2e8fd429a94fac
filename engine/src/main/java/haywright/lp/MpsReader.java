package haywright.lp;

import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Reads MPS, the old card format and its free form. Rules where readers differ:
 *
 * <ul>
 *   <li>the first N row is the objective, further ones are left out; an RHS on it is minus the objective's constant;
 *   <li>RANGES R on an equality: from the side up to side + R, or if R is negative from side − |R| up to it; on G and
 *       L rows |R| is the width;
 *   <li>UP with a negative number and no lower bound said before or after: no lower bound; MI leaves the upper bound;
 *   <li>a bound of 1e20 or more in size is none;
 *   <li>OBJSENSE MAX or MAXIMIZE maximizes;
 *   <li>a whole-number column (INTORG, BV, LI, UI) without an upper bound has none;
 *   <li>a bound of type SC is refused.
 * </ul>
 */
final class MpsReader {
    /** Where the card format keeps its six fields, counted from 0. */
    private static final int[][] CARD = {{1, 3}, {4, 12}, {14, 22}, {24, 36}, {39, 47}, {49, 61}};

    private final boolean cards;
    private final Map<String, RowCard> rows = new LinkedHashMap<>();
    private final Map<String, ColumnCard> columns = new LinkedHashMap<>();
    private @Nullable String objective;
    private double constant;
    private boolean maximizing;
    private boolean whole;
    private String section = "";
    private String line = "";
    private int number;

    private MpsReader(boolean cards) {
        this.cards = cards;
    }

    /** Free form first: names with spaces, which only cards can hold, break its count of fields. */
    static LinearProgram read(String text) {
        try {
            return new MpsReader(false).program(text);
        } catch (Refused free) {
            try {
                return new MpsReader(true).program(text);
            } catch (Refused asCards) {
                throw free;
            }
        }
    }

    private static final class RowCard {
        final char type;
        double side;
        double range = Double.NaN;
        final List<Integer> index = new ArrayList<>();
        final List<Double> value = new ArrayList<>();

        RowCard(char type) {
            this.type = type;
        }

        void addTo(ProgramBuilder builder, String name) {
            double lower = type == 'L' ? Double.NEGATIVE_INFINITY : side;
            double upper = type == 'G' ? Double.POSITIVE_INFINITY : side;
            if (!Double.isNaN(range)) {
                lower = type == 'L' || (type == 'E' && range < 0) ? side - Math.abs(range) : side;
                upper = type == 'G' || (type == 'E' && range > 0) ? side + Math.abs(range) : side;
            }
            builder.row(
                    name,
                    lower,
                    upper,
                    index.stream().mapToInt(Integer::intValue).toArray(),
                    value.stream().mapToDouble(Double::doubleValue).toArray());
        }
    }

    private static final class ColumnCard {
        final int index;
        double cost;
        double lower;
        boolean lowerSaid;
        double upper = Double.POSITIVE_INFINITY;
        boolean whole;

        ColumnCard(int index, boolean whole) {
            this.index = index;
            this.whole = whole;
        }

        void addTo(ProgramBuilder builder, String name) {
            double least = !lowerSaid && upper < 0 ? Double.NEGATIVE_INFINITY : lower;
            if (whole) {
                builder.whole(name, cost, least, upper);
            } else {
                builder.column(name, cost, least, upper);
            }
        }
    }

    private LinearProgram program(String text) {
        for (String next : text.lines().toList()) {
            line = next.stripTrailing();
            number++;
            if (line.isBlank() || line.startsWith("*")) {
                continue;
            }
            if (!Character.isWhitespace(line.charAt(0))) {
                header(line.split("\\s+"));
            } else {
                data();
            }
            if (section.equals("ENDATA")) {
                return build();
            }
        }
        throw refused("the text ends without ENDATA", "Was the file cut short?");
    }

    private LinearProgram build() {
        try {
            ProgramBuilder builder = maximizing ? LinearProgram.maximize() : LinearProgram.minimize();
            columns.forEach((name, card) -> card.addTo(builder, name));
            rows.forEach((name, card) -> {
                if (card.type != 'N') {
                    card.addTo(builder, name);
                }
            });
            return builder.offset(constant).build();
        } catch (IllegalArgumentException e) {
            throw refused(String.valueOf(e.getMessage()), "");
        }
    }

    private void header(String[] words) {
        section = words[0].toUpperCase(Locale.ROOT);
        switch (section) {
            case "NAME", "ROWS", "COLUMNS", "RHS", "RANGES", "BOUNDS", "ENDATA" -> {}
            case "OBJSENSE" -> {
                if (words.length > 1) {
                    sense(words[1]);
                }
            }
            default -> throw refused("“" + words[0] + "” is no section of a linear program", "Is this MPS?");
        }
    }

    private void sense(String word) {
        switch (word.toUpperCase(Locale.ROOT)) {
            case "MAX", "MAXIMIZE" -> maximizing = true;
            case "MIN", "MINIMIZE" -> maximizing = false;
            default -> throw refused("OBJSENSE is MIN or MAX", "Which of the two is meant?");
        }
    }

    private void data() {
        String[] words = cards ? card() : line.strip().split("\\s+");
        switch (section) {
            case "OBJSENSE" -> sense(words[0]);
            case "ROWS" -> row(words);
            case "COLUMNS" -> column(words);
            case "RHS", "RANGES" -> sides(words);
            case "BOUNDS" -> bound(words);
            default -> throw refused("this line stands outside every section", "Is a section's name indented?");
        }
    }

    /** The card's fields from the first to the last that is not empty; the first only where a section uses it. */
    private String[] card() {
        String wide = line.replace('\t', ' ');
        int from = section.equals("ROWS") || section.equals("BOUNDS") ? 0 : 1;
        List<String> fields = new ArrayList<>();
        for (int f = from; f < CARD.length && CARD[f][0] < wide.length(); f++) {
            fields.add(wide.substring(CARD[f][0], Math.min(CARD[f][1], wide.length()))
                    .strip());
        }
        return fields.toArray(String[]::new);
    }

    private void row(String[] words) {
        if (words.length != 2 || !words[0].toUpperCase(Locale.ROOT).matches("[NGLE]")) {
            throw refused("a row is N, G, L or E and a name", "Is one of them missing?");
        }
        char type = words[0].toUpperCase(Locale.ROOT).charAt(0);
        if (type == 'N' && objective == null) {
            objective = words[1];
        }
        if (rows.put(words[1], new RowCard(type)) != null) {
            throw refused("row “" + words[1] + "” stands twice", "Which one is meant?");
        }
    }

    private void column(String[] words) {
        if (words.length == 3 && words[1].equals("'MARKER'")) {
            whole = words[2].equals("'INTORG'");
            return;
        }
        if (words.length != 3 && words.length != 5) {
            throw refused("a column's line is its name and one or two pairs of row and number", "Is a field missing?");
        }
        ColumnCard card = columns.computeIfAbsent(words[0], n -> new ColumnCard(columns.size(), whole));
        for (int w = 1; w < words.length; w += 2) {
            double value = number(words[w + 1]);
            if (words[w].equals(objective)) {
                card.cost = value;
            } else {
                RowCard row = row(words[w]);
                row.index.add(card.index);
                row.value.add(value);
            }
        }
    }

    /** RHS and RANGES; the set's name may be missing. */
    private void sides(String[] words) {
        int start = words.length % 2;
        if (words.length < 2 || words.length > 5) {
            throw refused("a line of " + section + " is one or two pairs of row and number", "Is a field missing?");
        }
        for (int w = start; w < words.length; w += 2) {
            double value = number(words[w + 1]);
            if (section.equals("RANGES")) {
                row(words[w]).range = value;
            } else if (words[w].equals(objective)) {
                constant = -value;
            } else {
                row(words[w]).side = value;
            }
        }
    }

    private void bound(String[] words) {
        String type = words[0].toUpperCase(Locale.ROOT);
        boolean bare = type.matches("FR|MI|PL|BV");
        if (!bare && !type.matches("UP|LO|FX|UI|LI")) {
            throw refused(
                    "“" + words[0] + "” is no bound of a linear program", "UP, LO, FX, FR, MI, PL, BV, UI or LI?");
        }
        int fields = bare && words.length < 4 ? words.length : words.length - 1;
        if (fields < 2 || fields > 3) {
            throw refused("a bound is its type, a set's name, a column" + (bare ? "" : " and a number"), "");
        }
        String name = words[fields - 1];
        ColumnCard column = columns.get(name);
        if (column == null) {
            throw refused("no column is named “" + name + "”", "Is it spelled as in COLUMNS?");
        }
        double value = bare ? (type.equals("BV") ? 1 : 0) : number(words[fields]);
        if (Math.abs(value) >= LinearProgram.HUGE) {
            value = Math.copySign(Double.POSITIVE_INFINITY, value);
        }
        column.whole |= type.matches("BV|UI|LI");
        if (type.matches("LO|LI|FX|FR|MI")) {
            column.lower = type.matches("FR|MI") ? Double.NEGATIVE_INFINITY : value;
            column.lowerSaid = true;
        }
        if (type.matches("UP|UI|BV|FX|FR|PL")) {
            column.upper = type.matches("FR|PL") ? Double.POSITIVE_INFINITY : value;
        }
    }

    private RowCard row(String name) {
        RowCard row = rows.get(name);
        if (row == null) {
            throw refused("no row is named “" + name + "”", "Is it spelled as in ROWS?");
        }
        return row;
    }

    private double number(String word) {
        try {
            return Double.parseDouble(word.replace('d', 'e').replace('D', 'E'));
        } catch (NumberFormatException e) {
            throw refused("“" + word + "” is not a number", "Is a field missing before it?");
        }
    }

    private Refused refused(String rule, String fix) {
        return new Refused("mps", "line " + number + ", “" + line.strip() + "”", rule, fix);
    }
}
