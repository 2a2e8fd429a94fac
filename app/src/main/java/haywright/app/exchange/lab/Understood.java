package haywright.app.exchange.lab;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.Tested;
import haywright.quantity.Unit;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What was understood of a laboratory's file.
 *
 * @param layout how the file was read, in words
 * @param names every name of a figure met in it, understood or not, in order
 * @param notTaken every line, column and cell that was not understood, in words
 * @param columns those with figures whose heading is not known, each of which is asked
 * @param rest what else stands on the sheet and was not needed: addresses, remarks, days that are not kept; as it stands
 */
public record Understood(
        String layout,
        List<Sample> samples,
        List<Named> names,
        List<Column> columns,
        List<String> notTaken,
        List<String> rest) {
    public Understood {
        samples = List.copyOf(samples);
        names = List.copyOf(names);
        columns = List.copyOf(columns);
        notTaken = List.copyOf(notTaken);
        rest = List.copyOf(rest);
    }

    private static final Pattern NIR = Pattern.compile("(?i)\\bNIRS?\\b|near[- ]infra-?red");
    private static final Pattern WET = Pattern.compile("(?i)\\bwet[- ]chem");

    /** How the laboratory worked, by its own words; null where they do not say, or say both. */
    public static Tested.@Nullable Method method(String text) {
        boolean nir = NIR.matcher(text).find();
        boolean wet = WET.matcher(text).find();
        return nir == wet ? null : nir ? Tested.Method.NIR : Tested.Method.WET;
    }

    /** What a cell beside a figure, or a mark explained on the sheet, says of its method; null where it says none. */
    public static Tested.@Nullable Method ownMethod(String words) {
        var bare = words.strip().replaceAll("^[(\\[]|[)\\]]$", "");
        return bare.matches("(?i)wet|w|wc|wet[- ]?chem.*|(?:oven|combustion|kjeldahl|dumas|icp)\\b.*")
                ? Tested.Method.WET
                : bare.matches("(?i)n|nirs?|(?:near[- ])?infra-?red") ? Tested.Method.NIR : method(words);
    }

    /**
     * What the file says of one sample; empty text where it says nothing.
     *
     * @param lot what else it is called beside its code, perhaps the name of its lot
     * @param also other names of it: the laboratory's number, a description
     * @param customer for whom it was tested, as the sheet says
     * @param remarks what the sheet says of it as a whole: a status, a remark
     */
    public record Sample(
            String code,
            String lot,
            List<String> also,
            String laboratory,
            String sampled,
            String reported,
            Tested.@Nullable Method method,
            List<Cell> cells,
            String customer,
            List<String> remarks) {
        public Sample {
            also = List.copyOf(also);
            remarks = List.copyOf(remarks);
            var measured = cells.stream().filter(c -> c.analyte().isMeasured()).toList();
            var methods = measured.stream()
                    .<Tested.@Nullable Method>map(Cell::method)
                    .distinct()
                    .toList();
            boolean isOne = methods.size() == 1 && methods.get(0) != null && method == null;
            method = isOne ? methods.get(0) : method;
            var of = method; // what was measured as the rest was needs no word of its own
            cells = cells.stream()
                    .map(c -> isOne || c.method() == of ? c.by(null) : c)
                    .toList();
        }

        /** Whether another table speaks of this sample too: under the same names, and nothing in it differs. */
        public boolean goesOn(Sample other) {
            return code.equals(other.code)
                    && lot.equals(other.lot)
                    && customer.equals(other.customer)
                    && remarks.equals(other.remarks)
                    && other.cells.stream()
                            .allMatch(cell -> cells.stream()
                                    .filter(mine -> mine.analyte == cell.analyte && mine.basis == cell.basis)
                                    .allMatch(mine -> mine.text.equals(cell.text)));
        }

        /** With more of its figures. */
        public Sample with(List<Cell> more) {
            var both = new LinkedHashSet<>(cells);
            more.stream()
                    .filter(cell ->
                            cells.stream().noneMatch(mine -> mine.analyte == cell.analyte && mine.basis == cell.basis))
                    .forEach(both::add);
            return new Sample(
                    code, lot, also, laboratory, sampled, reported, method, List.copyOf(both), customer, remarks);
        }
    }

    /**
     * One figure as it stands in the file.
     *
     * @param unit null where the file does not tell
     * @param basis null for what has no pair of bases
     * @param text with a point before the decimals; may be no number at all
     * @param read the line or heading it was read from, with the sum behind it where it was printed as a share
     * @param share what it is printed a share of, until {@link Shares} has carried it; null as a rule
     * @param method how this figure was measured, where the sheet says so of single figures; null as a rule
     */
    public record Cell(
            Analyte analyte,
            @Nullable Unit unit,
            @Nullable Basis basis,
            String text,
            String read,
            Heading.@Nullable Share share,
            Tested.@Nullable Method method) {
        public Cell(Analyte analyte, @Nullable Unit unit, @Nullable Basis basis, String text, String read) {
            this(analyte, unit, basis, text, read, null, null);
        }

        Cell by(Tested.@Nullable Method other) {
            return new Cell(analyte, unit, basis, text, read, share, other);
        }
    }

    /**
     * A name as the file writes it.
     *
     * @param example what stands beside or under it
     * @param taken what it was taken for; null where it was not understood or is left out
     * @param leftOut whether somebody said to leave it out
     */
    public record Named(
            String written, String example, @Nullable Heading taken, boolean leftOut) {}

    /**
     * A column of figures whose heading nobody knows, or a mark of the laboratory beside figures.
     *
     * @param written its heading, or which column it is where it has none; a mark behind the word
     * @param example the first figures under it, or a line with the mark
     * @param said what somebody said it holds; null where nobody has
     */
    public record Column(
            String written, String example, @Nullable ColumnIs said, boolean isMark) {}
}
