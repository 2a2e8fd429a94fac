package haywright.lp;

import haywright.lp.LinearProgram.Column;
import haywright.lp.LinearProgram.Row;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Free-format MPS. A maximization is written as the minimization of its negative: OBJSENSE is an extension that some
 * solvers refuse and others overlook. Names keep letters, digits, dots and underscores; a comment lists the others.
 */
final class MpsWriter {
    private final LinearProgram program;
    private final List<String> columnNames;
    private final List<String> rowNames;
    private final StringBuilder text = new StringBuilder();

    MpsWriter(LinearProgram program) {
        this.program = program;
        columnNames = safe('x', program.columns().stream().map(Column::name).toList());
        List<String> rows =
                new ArrayList<>(program.rows().stream().map(Row::name).toList());
        rows.add("objective");
        rowNames = safe('r', rows);
    }

    String text() {
        String objective = rowNames.get(rowNames.size() - 1);
        double sign = program.maximizing() ? -1 : 1;
        if (program.maximizing()) {
            text.append("* A maximization, written as the minimization of its negative.\n");
        }
        for (int j = 0; j < columnNames.size(); j++) {
            comment("column", columnNames.get(j), program.columns().get(j).name());
        }
        for (int i = 0; i < program.rows().size(); i++) {
            comment("row", rowNames.get(i), program.rows().get(i).name());
        }
        text.append("NAME program\nROWS\n N ").append(objective).append('\n');
        for (int i = 0; i < program.rows().size(); i++) {
            text.append(' ')
                    .append(type(program.rows().get(i)))
                    .append(' ')
                    .append(rowNames.get(i))
                    .append('\n');
        }
        text.append("COLUMNS\n");
        columns(objective, sign);
        text.append("RHS\n");
        if (program.offset() != 0) {
            line("RHS", objective, -sign * program.offset());
        }
        for (int i = 0; i < program.rows().size(); i++) {
            Row r = program.rows().get(i);
            double side = type(r) == 'G' ? r.lower() : r.upper();
            if (type(r) != 'N' && side != 0) {
                line("RHS", rowNames.get(i), side);
            }
        }
        text.append("RANGES\n");
        for (int i = 0; i < program.rows().size(); i++) {
            Row r = program.rows().get(i);
            if (type(r) == 'L' && Double.isFinite(r.lower())) {
                line("RANGE", rowNames.get(i), r.upper() - r.lower());
            }
        }
        text.append("BOUNDS\n");
        for (int j = 0; j < columnNames.size(); j++) {
            bounds(columnNames.get(j), program.columns().get(j));
        }
        return text.append("ENDATA\n").toString();
    }

    private void comment(String what, String written, String name) {
        if (!written.equals(name)) {
            text.append("* ").append(what).append(' ').append(written).append(" is ");
            text.append(name.replaceAll("\\p{Cntrl}", " ")).append('\n');
        }
    }

    private static char type(Row r) {
        if (LinearProgram.crossed(r.lower(), r.upper())) {
            throw new IllegalStateException(
                    "Row “" + r.name() + "” has its lower limit above its upper one, which MPS" + " cannot say.");
        }
        if (r.lower() >= r.upper()) {
            return 'E';
        }
        return Double.isFinite(r.upper()) ? 'L' : Double.isFinite(r.lower()) ? 'G' : 'N';
    }

    private void columns(String objective, double sign) {
        List<StringBuilder> entries = new ArrayList<>();
        for (int j = 0; j < columnNames.size(); j++) {
            entries.add(new StringBuilder());
            double cost = program.columns().get(j).cost();
            if (cost != 0) {
                line(entries.get(j), columnNames.get(j), objective, sign * cost);
            }
        }
        for (int i = 0; i < program.rows().size(); i++) {
            int[] index = program.rows().get(i).columns();
            double[] value = program.rows().get(i).coefficients();
            for (int k = 0; k < index.length; k++) {
                line(entries.get(index[k]), columnNames.get(index[k]), rowNames.get(i), value[k]);
            }
        }
        boolean whole = false;
        for (int j = 0; j < entries.size(); j++) {
            if (program.columns().get(j).whole() != whole) {
                whole = !whole;
                text.append(" MARKER 'MARKER' ").append(whole ? "'INTORG'\n" : "'INTEND'\n");
            }
            if (entries.get(j).isEmpty()) {
                line(entries.get(j), columnNames.get(j), objective, 0);
            }
            text.append(entries.get(j));
        }
        if (whole) {
            text.append(" MARKER 'MARKER' 'INTEND'\n");
        }
    }

    /**
     * The lower bound last: some readers take an upper bound of 0 or less for a missing lower one. FR and MI carry a
     * number that means nothing, because some readers count four fields.
     */
    private void bounds(String name, Column c) {
        boolean below = Double.isFinite(c.lower());
        boolean above = Double.isFinite(c.upper());
        if (!below && !above) {
            line(" FR BOUND", name, 0);
        } else if (c.lower() == c.upper()) {
            line(" FX BOUND", name, c.lower());
        } else {
            if (!below) {
                line(" MI BOUND", name, 0);
            }
            if (above) {
                line(" UP BOUND", name, c.upper());
            } else if (c.whole()) {
                // Some readers take a whole column without one for 0 or 1.
                line(" PL BOUND", name, 0);
            }
            if (below && (c.lower() != 0 || c.upper() <= 0)) {
                line(" LO BOUND", name, c.lower());
            }
        }
    }

    private void line(String first, String second, double value) {
        line(text, first, second, value);
    }

    private static void line(StringBuilder to, String first, String second, double value) {
        to.append(first.startsWith(" ") ? "" : " ")
                .append(first)
                .append(' ')
                .append(second)
                .append(' ');
        to.append(value).append('\n');
    }

    /** Letters, digits, dots and underscores only, none twice, in the order given. */
    private static List<String> safe(char letter, List<String> names) {
        Set<String> taken = new HashSet<>();
        List<String> safe = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i).replaceAll("[^A-Za-z0-9._]+", "_");
            if (!name.matches("[A-Za-z].{2,59}") || taken.contains(name)) {
                name = letter + String.valueOf(i) + "_" + name.substring(0, Math.min(name.length(), 40));
            }
            while (!taken.add(name)) {
                name += "_";
            }
            safe.add(name);
        }
        return safe;
    }
}
