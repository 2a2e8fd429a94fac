package haywright.app.exchange.lab;

import haywright.app.exchange.lab.Understood.Cell;
import haywright.app.exchange.lab.Understood.Column;
import haywright.app.exchange.lab.Understood.Sample;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Which samples of a sheet count: none that its laboratory takes back, none of another customer and none of two
 * measurements of one sample, unless somebody says so.
 */
public final class Counted {
    /** Before the name of a customer, where somebody says whether his figures are this ranch's. */
    static final String CUSTOMER = "customer ";
    /** Before the code of a sample that was measured more than once. */
    static final String RESULT = "result ";

    private final Vocabulary words;
    private final List<String> notTaken;
    private final List<Column> columns;

    private Counted(Understood found, Vocabulary words) {
        this.words = words;
        this.notTaken = new ArrayList<>(found.notTaken());
        this.columns = new ArrayList<>(found.columns());
    }

    /** @throws Refused where the sheet takes all of it back, in its own words */
    public static Understood of(Understood found, Vocabulary words) {
        var counted = new Counted(found, words);
        var left = counted.standing(found.samples());
        boolean isBack = left.isEmpty() && !found.samples().isEmpty() && counted.columns.isEmpty();
        if (isBack) {
            var last = counted.notTaken.get(counted.notTaken.size() - 1);
            throw allBack(last);
        }
        left = counted.measuredAgain(counted.ours(left));
        return new Understood(found.layout(), left, found.names(), counted.columns, counted.notTaken, found.rest());
    }

    /** @param why in the words of the sheet */
    public static Refused allBack(String why) {
        return new Refused("text", "", why, "If its figures count after all, type them in the form.");
    }

    private List<Sample> standing(List<Sample> samples) {
        var left = new ArrayList<Sample>();
        for (var sample : samples) {
            var why = sample.remarks().stream()
                    .map(Standing::why)
                    .flatMap(Optional::stream)
                    .findFirst();
            why.ifPresentOrElse(because -> list(sample, because), () -> left.add(sample));
        }
        return left;
    }

    private void list(Sample sample, String why) {
        var about = Stream.concat(
                        Stream.of(sample.lot(), sample.laboratory(), sample.sampled(), sample.reported()),
                        sample.also().stream())
                .filter(said -> !said.isBlank() && !said.equals(called(sample)))
                .distinct()
                .collect(Collectors.joining(", "));
        notTaken.add("%s%s: %s: %s"
                .formatted(called(sample), about.isEmpty() ? "" : " (" + about + ")", figures(sample.cells()), why));
    }

    private static String called(Sample sample) {
        var name = name(sample);
        return name.isEmpty() ? "A sample without a name" : name;
    }

    private static String name(Sample sample) {
        return sample.code().isEmpty() ? sample.lot() : sample.code();
    }

    private static String figures(List<Cell> cells) {
        return cells.stream()
                .map(cell -> cell.analyte() + " " + cell.text()
                        + (cell.read().contains(": ") ? " (" + cell.read() + ")" : ""))
                .collect(Collectors.joining("; "));
    }

    /** Of several customers: those of this ranch, and of others what is said to be. */
    private List<Sample> ours(List<Sample> samples) {
        var customers = new LinkedHashMap<String, String>();
        samples.stream()
                .map(Sample::customer)
                .filter(Counted::isName)
                .forEach(customer -> customers.putIfAbsent(Heading.key(customer), customer));
        if (customers.size() < 2) {
            return samples;
        }
        var left = new ArrayList<Sample>();
        for (var sample : samples) {
            if (!isName(sample.customer()) || words.ours().is(sample.customer())) {
                left.add(sample);
                continue;
            }
            var written = CUSTOMER + customers.get(Heading.key(sample.customer()));
            var said = ask(written, called(sample) + ": " + figures(sample.cells()));
            if (said != null && said != ColumnIs.LEFT_OUT) {
                left.add(sample);
            } else {
                list(
                        sample,
                        said == null
                                ? "several customers stand on the sheet, and this is of “%s”. Say below whether it is this ranch’s"
                                        .formatted(sample.customer())
                                : "“%s” was said to be another customer".formatted(sample.customer()));
            }
        }
        return left;
    }

    /** A number of an account, a day or another label is nobody. */
    private static boolean isName(String customer) {
        return customer.matches(".*\\p{L}{2}.*")
                && !Days.isDay(customer)
                && Told.of(customer).isEmpty();
    }

    private @Nullable ColumnIs ask(String written, String example) {
        var said = words.column(written).orElse(null);
        if (columns.stream().noneMatch(column -> column.written().equals(written))) {
            columns.add(new Column(written, example, said, false));
        }
        return said;
    }

    private List<Sample> measuredAgain(List<Sample> samples) {
        var asked = new LinkedHashSet<Sample>();
        for (var again : samples) {
            for (var first : samples) {
                if (first != again && isAgain(again, first)) {
                    asked.add(first);
                    asked.add(again);
                }
            }
        }
        var open = asked.stream()
                .filter(sample -> said(sample, samples) != ColumnIs.LEFT_OUT)
                .toList();
        var own = open.stream().filter(sample -> said(sample, samples) != null).collect(Collectors.toSet());
        asked.forEach(sample -> ask(written(sample, samples), figures(sample.cells())));
        var taken = own.isEmpty() && open.size() < asked.size() ? Set.copyOf(open) : own;
        var left = new ArrayList<Sample>();
        for (var sample : samples) {
            if (!asked.contains(sample) || taken.contains(sample)) {
                left.add(sample);
            } else {
                list(
                        sample,
                        said(sample, samples) == ColumnIs.LEFT_OUT
                                ? "it was said not to count"
                                : "it was measured more than once. Say below which counts; until then neither is taken");
            }
        }
        return left;
    }

    private @Nullable ColumnIs said(Sample sample, List<Sample> all) {
        return words.column(written(sample, all)).orElse(null);
    }

    private static String written(Sample sample, List<Sample> all) {
        var same =
                all.stream().filter(other -> name(other).equals(name(sample))).toList();
        int number = 1;
        for (var other : same) {
            if (other == sample) {
                break;
            }
            number++;
        }
        return RESULT + called(sample) + (same.size() < 2 ? "" : " (%d of %d)".formatted(number, same.size()));
    }

    /** Whether one was measured after the other, of the same bag and day, by its own words. */
    private static boolean isAgain(Sample again, Sample first) {
        boolean isSameDay = again.sampled().isBlank()
                || first.sampled().isBlank()
                || again.sampled().equals(first.sampled());
        if (!isSameDay || name(first).isBlank() || again.cells().equals(first.cells())) {
            return false;
        }
        var code = key(name(first));
        boolean isByCode = !key(name(again)).equals(code)
                && key(Standing.once(name(again))).equals(code);
        boolean isByRemark = again.remarks().stream()
                .filter(remark -> Standing.of(remark) == Standing.AGAIN)
                .anyMatch(remark -> key(name(again)).equals(code)
                        || key(remark)
                                .matches("(?s).*(?<![\\p{L}\\p{N}-])" + Pattern.quote(code) + "(?![\\p{L}\\p{N}-]).*"));
        return isByCode || isByRemark;
    }

    private static String key(String code) {
        return Heading.key(code).toLowerCase(Locale.ROOT);
    }
}
