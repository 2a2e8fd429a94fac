package haywright.app.web.lab;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Ours;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.lab.Vocabulary.Meaning;
import haywright.app.store.LaboratoryNames;
import haywright.app.web.Form;
import haywright.app.web.Frame;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What the names on a sheet stand for, as somebody puts it right, and as it is remembered of the laboratory. */
public final class NamesForm {
    /** Every field of a name begins so. */
    static final String FIELDS = "name-";

    private static final int MOST_NAMES = 400;

    private static final String LEAVE_OUT = "leave-out";

    /** Said of a name that an earlier answer leaves out: read it as the house does. */
    private static final String AS_READ = "as-read";

    /** The button that says so; it carries the name. */
    public static final String TAKE = "take-name";

    private static final List<Unit> UNITS = Stream.of(Analyte.CP, Analyte.NEM, Analyte.DCAD)
            .flatMap(a -> a.accepts().stream())
            .toList();

    private NamesForm() {}

    /**
     * One name on the sheet.
     *
     * @param taken what it was taken for, in words; empty where it was not understood
     * @param isEarlier whether it is left out because of an answer to an earlier sheet
     * @param analyte what was said of it; empty for nothing
     */
    public record Row(
            int number,
            String written,
            String example,
            String taken,
            boolean leftOut,
            boolean isEarlier,
            String analyte,
            String unit,
            String basis) {
        /** Whether somebody has to look at it. */
        public boolean isOpen() {
            return taken.isEmpty() || !analyte.isEmpty();
        }

        Row at(int place) {
            return new Row(place, written, example, taken, leftOut, isEarlier, analyte, unit, basis);
        }

        public String field(String what) {
            return FIELDS + what + "-" + number;
        }
    }

    /** A laboratory with what is remembered of it, in words. */
    public record Remembered(String laboratory, List<String> names) {}

    public static List<Option> analytes() {
        return Stream.concat(
                        Stream.of(new Option(LEAVE_OUT, "Leave it out"), new Option(AS_READ, "What the sheet says")),
                        Arrays.stream(Analyte.values()).map(a -> new Option(a.id(), Readings.name(a))))
                .toList();
    }

    public static List<Option> units() {
        return UNITS.stream().map(u -> new Option(Form.id(u), u.symbol())).toList();
    }

    public static List<Option> bases() {
        return Option.of(Basis.class, BringView::words);
    }

    static List<Row> rows(Form form, Understood found) {
        var said = said(form);
        var rows = new ArrayList<Row>();
        for (var name : found.names()) {
            var now = said.get(Heading.key(name.written()));
            var taken = name.taken();
            rows.add(new Row(
                    rows.size(),
                    name.written(),
                    name.example(),
                    taken == null ? "" : Readings.name(taken.analyte()),
                    name.leftOut(),
                    name.leftOut() && now == null,
                    now == null ? "" : now.analyte(),
                    now == null ? "" : now.unit(),
                    now == null ? "" : now.basis()));
        }
        return rows;
    }

    /** What was said stays on the page, where nothing was understood of the file this time. */
    static List<Row> typed(Form form) {
        return said(form).values().stream()
                .map(one -> new Row(0, one.name(), "", "", false, false, one.analyte(), one.unit(), one.basis()))
                .collect(ArrayList::new, (all, row) -> all.add(row.at(all.size())), ArrayList::addAll);
    }

    /** What was said in the form, by name as written. */
    private static Map<String, LaboratoryNames.Said> said(Form form) {
        var said = new LinkedHashMap<String, LaboratoryNames.Said>();
        for (int i = 0; i < MOST_NAMES; i++) {
            var key = Heading.key(form.value(FIELDS + "written-" + i));
            var unit = form.value(FIELDS + "unit-" + i);
            var basis = form.value(FIELDS + "basis-" + i);
            boolean isSaid = !unit.isEmpty() || !basis.isEmpty();
            // a unit or a basis said beside a name that is understood is of what it was taken for
            var analyte = form.value(FIELDS + "analyte-" + i).isEmpty() && isSaid
                    ? Heading.of(key).map(taken -> taken.analyte().id()).orElse("")
                    : form.value(FIELDS + "analyte-" + i);
            if (!key.isEmpty() && (isSaid || !analyte.isEmpty())) {
                said.put(key, new LaboratoryNames.Said("", key, analyte, unit, basis));
            }
        }
        return said;
    }

    /** The house's names, what is remembered of the laboratories that the text names, and what was said just now. */
    private static Ours ours(Page page) {
        var ranch = page.ranch();
        return new Ours(
                Frame.name(ranch), ranch.lots().values().stream().map(Lot::name).toList());
    }

    static Vocabulary vocabulary(Page page, Form form) {
        var about = (form.value(BringPages.LABORATORY) + "\n" + form.value(BringPages.TEXT))
                .toLowerCase(Locale.ROOT)
                .replaceAll("[ \\t]+", " ");
        var words = new LinkedHashMap<String, Meaning>();
        page.desk().store().laboratoryNames().all().stream()
                .filter(one -> names(about, one.laboratory()) && !(isLeftOut(one) && isKnown(one.name())))
                .forEach(one -> put(words, one));
        said(form).values().forEach(one -> put(words, taken(words, one)));
        return new Vocabulary(words, ColumnsForm.said(form), ours(page));
    }

    /** What is said of unit and basis alone goes with what was said of the name before. */
    private static LaboratoryNames.Said taken(Map<String, Meaning> words, LaboratoryNames.Said said) {
        var before = words.get(said.name());
        var analyte = before == null ? null : before.analyte();
        return !said.analyte().isEmpty()
                ? said
                : new LaboratoryNames.Said(
                        said.laboratory(),
                        said.name(),
                        analyte == null ? AS_READ : analyte.id(),
                        said.unit(),
                        said.basis());
    }

    /** As words of their own: "Bench Lab" does not print a sheet that speaks of a "workbench lab". */
    private static boolean names(String about, String laboratory) {
        return Pattern.compile("(?<![\\p{L}\\p{N}])" + Pattern.quote(laboratory) + "(?![\\p{L}\\p{N}])")
                .matcher(about)
                .find();
    }

    private static boolean isLeftOut(LaboratoryNames.Said said) {
        return said.analyte().isEmpty() || said.analyte().equals(LEAVE_OUT);
    }

    /** A name that the house knows is left out of one sheet, never of the next. */
    private static boolean isKnown(String name) {
        return Heading.of(name).isPresent();
    }

    /** The button beside a name that is left out because of an earlier answer: from here on it is read. */
    static void take(Map<String, List<String>> typed) {
        var name = typed.getOrDefault(TAKE, List.of("")).get(0);
        typed.remove(TAKE);
        for (int i = 0; i < MOST_NAMES && !name.isEmpty(); i++) {
            if (typed.getOrDefault(FIELDS + "written-" + i, List.of()).contains(name)) {
                typed.put(FIELDS + "analyte-" + i, List.of(AS_READ));
            }
        }
    }

    private static void put(Map<String, Meaning> words, LaboratoryNames.Said said) {
        if (said.analyte().equals(AS_READ)) {
            words.remove(said.name());
            return;
        }
        var analyte = Arrays.stream(Analyte.values())
                .filter(a -> a.id().equals(said.analyte()))
                .findFirst();
        if (analyte.isPresent() || isLeftOut(said)) {
            words.put(
                    said.name(),
                    new Meaning(
                            analyte.orElse(null), one(Unit.values(), said.unit()), one(Basis.values(), said.basis())));
        }
    }

    private static <E extends Enum<E>> @Nullable E one(E[] all, String id) {
        return Arrays.stream(all).filter(e -> Form.id(e).equals(id)).findFirst().orElse(null);
    }

    /**
     * Keeps what was said of the names for the next sheet of this laboratory, once a report of this one is kept. That a
     * name which the house knows was left out is of this sheet alone.
     *
     * @param typed of the form in which it was said
     */
    static void remember(Page page, Form typed, String laboratory) {
        if (laboratory.isBlank()) {
            return;
        }
        var names = page.desk().store().laboratoryNames();
        for (var one : said(typed).values()) {
            if (one.analyte().isEmpty()) {
                continue; // a unit of a name that nobody has said anything else of
            }
            boolean isForgotten = one.analyte().equals(AS_READ);
            if (isForgotten) {
                names.forget(laboratory, one.name());
            } else if (!isLeftOut(one) || !isKnown(one.name())) {
                names.keep(new LaboratoryNames.Said(
                        laboratory,
                        one.name(),
                        one.analyte().equals(LEAVE_OUT) ? "" : one.analyte(),
                        one.unit(),
                        one.basis()));
            }
        }
    }

    static List<Remembered> remembered(Page page) {
        var by = new LinkedHashMap<String, List<String>>();
        for (var said : page.desk().store().laboratoryNames().all()) {
            by.computeIfAbsent(said.laboratory(), k -> new ArrayList<>()).add(words(said));
        }
        return by.entrySet().stream()
                .map(e -> new Remembered(e.getKey(), e.getValue()))
                .toList();
    }

    private static String words(LaboratoryNames.Said said) {
        if (said.analyte().isEmpty()) {
            return "“%s” is left out".formatted(said.name());
        }
        var unit = one(Unit.values(), said.unit());
        var basis = one(Basis.values(), said.basis());
        return "“%s” is %s%s%s"
                .formatted(
                        said.name(),
                        Analyte.find(said.analyte()).map(Readings::name).orElse(said.analyte()),
                        unit == null ? "" : ", in " + unit.symbol(),
                        basis == null ? "" : ", " + BringView.words(Objects.requireNonNull(basis)));
    }
}
