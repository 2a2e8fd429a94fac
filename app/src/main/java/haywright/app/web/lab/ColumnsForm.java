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
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

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
            return kind().label.formatted(name());
        }

        public String hint() {
            return kind() == Kind.FIGURE
                    ? "There: " + example + ". Choose the one that counts; the others are then left out."
                    : (kind() == Kind.COLUMN ? "Under it: " : "There: ") + example;
        }

        public List<Option> options() {
            return Stream.of(ColumnIs.values())
                    .filter(is -> kind().counts == null || is == ColumnIs.RESULT || is == ColumnIs.LEFT_OUT)
                    .filter(is -> !isMark || is != ColumnIs.SAMPLE)
                    .map(is -> new Option(Form.id(is), words(is)))
                    .toList();
        }

        /** The same for the figures of which one counts. */
        String question() {
            return kind() == Kind.FIGURE ? example : written;
        }

        private Kind kind() {
            return Stream.of(Kind.values())
                    .filter(kind ->
                            kind != Kind.COLUMN && isMark == (kind == Kind.MARK) && written.startsWith(kind.prefix()))
                    .findFirst()
                    .orElse(Kind.COLUMN);
        }

        private String name() {
            return kind() == Kind.COLUMN
                    ? written
                    : written.substring(kind().prefix().length());
        }

        private String words(ColumnIs is) {
            var counts = kind().counts;
            return switch (is) {
                case AS_RECEIVED -> "figures as received (as fed, as is)";
                case DRY_MATTER -> "figures on dry matter";
                case NINETY_PCT -> "figures at 90 % dry matter";
                case RESULT ->
                    counts != null
                            ? counts
                            : isMark
                                    ? "taken as they are printed"
                                    : "figures of the sample, their basis is said elsewhere";
                case SAMPLE -> "figures of a sample of this name";
                case LEFT_OUT -> isMark || counts != null ? "left out" : "nothing of the sample: leave it out";
            };
        }
    }

    /** What is asked, as the first word of what is written tells. */
    private enum Kind {
        COLUMN("The column “%s” holds", null),
        MARK("Figures that the laboratory marks with “%s” are", null),
        FIGURE("Of several figures, “%s” is", "the one that counts"),
        RESULT("Measured more than once: “%s” is", "a result that counts"),
        CUSTOMER("Of several customers, the figures of “%s” are", "this ranch’s"),
        REPORT("What the sheet heads “%s” is", "to be taken as it is");

        private final String label;
        private final @Nullable String counts;

        Kind(String label, @Nullable String counts) {
            this.label = label;
            this.counts = counts;
        }

        private String prefix() {
            return name().toLowerCase(Locale.ROOT) + " ";
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
