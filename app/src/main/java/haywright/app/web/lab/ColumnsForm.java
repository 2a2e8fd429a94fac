package haywright.app.web.lab;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Understood;
import haywright.app.web.Form;
import haywright.app.web.Option;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What the columns of a sheet hold whose headings are not known, and what its marks mean: each asked for itself. */
public final class ColumnsForm {
    private static final String FIELDS = NamesForm.FIELDS + "column-";
    private static final int MOST_COLUMNS = 100;

    private ColumnsForm() {}

    /** @param said what was said of it; empty for nothing */
    public record Row(int number, String written, String example, boolean isMark, String said) {
        public String field(String what) {
            return FIELDS + what + "-" + number;
        }

        public String label() {
            return isMark
                    ? "Figures that the laboratory marks with “%s” are".formatted(written.replaceFirst("^mark ", ""))
                    : "The column “%s” holds".formatted(written);
        }

        public List<Option> options() {
            return Stream.of(ColumnIs.values())
                    .filter(is -> !isMark || is != ColumnIs.SAMPLE)
                    .map(is -> new Option(Form.id(is), words(is)))
                    .toList();
        }

        private String words(ColumnIs is) {
            return switch (is) {
                case AS_RECEIVED -> "figures as received (as fed, as is)";
                case DRY_MATTER -> "figures on dry matter";
                case NINETY_PCT -> "figures at 90 % dry matter";
                case RESULT ->
                    isMark ? "taken as they are printed" : "figures of the sample, their basis is said elsewhere";
                case SAMPLE -> "figures of a sample of this name";
                case LEFT_OUT -> isMark ? "left out" : "nothing of the sample: leave it out";
            };
        }
    }

    static List<Row> rows(Understood found) {
        return IntStream.range(0, Math.min(MOST_COLUMNS, found.columns().size()))
                .mapToObj(i -> {
                    var column = found.columns().get(i);
                    var said = column.said();
                    return new Row(
                            i, column.written(), column.example(), column.isMark(), said == null ? "" : Form.id(said));
                })
                .toList();
    }

    /** What was said stays on the page, where nothing was understood of the file this time. */
    static List<Row> typed(Form form) {
        var rows = new ArrayList<Row>();
        said(form)
                .forEach((written, is) ->
                        rows.add(new Row(rows.size(), written, "", written.startsWith("mark "), Form.id(is))));
        return rows;
    }

    /** What was said, by heading. */
    static Map<String, ColumnIs> said(Form form) {
        var said = new LinkedHashMap<String, ColumnIs>();
        for (int i = 0; i < MOST_COLUMNS; i++) {
            var is = form.value(FIELDS + "is-" + i);
            var key = Heading.key(form.value(FIELDS + "written-" + i));
            Arrays.stream(ColumnIs.values())
                    .filter(one -> Form.id(one).equals(is))
                    .forEach(one -> said.put(key, one));
        }
        return said;
    }
}
