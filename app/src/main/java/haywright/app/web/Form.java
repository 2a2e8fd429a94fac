package haywright.app.web;

import haywright.app.document.Spelling;
import haywright.app.words.Letters;
import haywright.app.words.Parse;
import haywright.app.words.ParseList;
import haywright.app.words.Show;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.text.Normalizer;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A form as it was typed, and what is wrong with it. Reading a field never throws: it notes the problem and hands out a
 * stand-in, and {@link #build} then builds nothing. So every field that is wrong is named at once.
 */
public final class Form {
    /** A tick box that is asked about something unusual sends the name of the question under this name. */
    static final String CONFIRM = "confirm";

    /** Boxes that nobody types in: they belong to the request. */
    static final Set<String> OWN = Set.of(
            Gate.TOKEN,
            Page.REV,
            Page.SEEN,
            Unfinished.DRAFT,
            Unfinished.LEFT,
            Page.MORE,
            TwoVersions.UPON,
            Gone.AGAIN);

    private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(\\.[0-9]+)?");

    private final String key;
    private final boolean draft;
    private final Map<String, List<String>> typed;
    private final Findings findings = new Findings();

    private final Map<String, String> before;
    private final Map<String, Boxes.Shown> shown = new LinkedHashMap<>();
    private boolean oneAnswer;

    private Form(String key, boolean draft, Map<String, List<String>> typed, Map<String, String> before) {
        this.key = key;
        this.draft = draft;
        this.typed = typed;
        this.before = before;
    }

    /** A form with what is known already. */
    public static Form of(String key, Map<String, String> values) {
        var typed = new LinkedHashMap<String, List<String>>();
        values.forEach((name, value) -> typed.put(name, List.of(value)));
        return new Form(key, false, typed, Map.of());
    }

    /** A form somebody left unfinished, as typed. @param known what the boxes would hold without it */
    static Form draft(String key, Map<String, List<String>> typed, Map<String, String> known) {
        return new Form(key, true, typed, known);
    }

    /** What is kept now of a box in which something else was left unfinished; empty where nothing is, or the same. */
    public String before(Ask ask) {
        var now = before.getOrDefault(ask.name(), "");
        var box = shown.get(ask.name());
        if (now.isBlank() || now.equals(value(ask))) {
            return "";
        }
        return box == null ? now : box.words(now).equals(box.words(value(ask))) ? "" : box.words(now);
    }

    /** @param known what stands beside the boxes where it is another */
    static Form posted(String key, Map<String, List<String>> typed, Map<String, String> known) {
        return new Form(key, false, typed, known);
    }

    public static Form posted(String key, Map<String, List<String>> typed) {
        return new Form(key, false, typed, Map.of());
    }

    /** Everything typed, without what belongs to the request. */
    Map<String, List<String>> typed() {
        var values = new LinkedHashMap<>(typed);
        values.keySet().removeAll(OWN);
        values.keySet().removeIf(TwoVersions::isOfTheChoice);
        return values;
    }

    public String key() {
        return key;
    }

    /** Its boxes are one answer: where two windows changed any of them, one of the two stands whole. */
    public void isOneAnswer() {
        oneAnswer = true;
    }

    boolean asksAsOne() {
        return oneAnswer;
    }

    /** For the page that shows it: it has this box. */
    public void shows(Ask ask) {
        shows(ask, List.of());
    }

    /** @param options what can be chosen in it */
    public void shows(Ask ask, List<Option> options) {
        shown.putIfAbsent(ask.name(), new Boxes.Shown(ask, options));
    }

    /** The boxes that its page showed, by name. */
    Map<String, Boxes.Shown> shown() {
        return shown;
    }

    /** Whether this was left unfinished earlier and is shown again. */
    public boolean isDraft() {
        return draft;
    }

    public String value(String name) {
        var all = typed.getOrDefault(name, List.of());
        return all.isEmpty() ? "" : Letters.withBreaks(all.get(0));
    }

    public String value(Ask ask) {
        return value(ask.name());
    }

    /** Everything that was sent under a name. */
    public List<String> all(String name) {
        return List.copyOf(typed.getOrDefault(name, List.of()));
    }

    public boolean isTicked(String name, String value) {
        return typed.getOrDefault(name, List.of()).contains(value);
    }

    public boolean isTicked(Ask ask) {
        return isTicked(ask.name(), "yes");
    }

    public boolean isEmpty(Ask ask) {
        return value(ask).isBlank();
    }

    // Reading

    /** Required. */
    public String text(Ask ask, String fix) {
        var text = text(ask);
        if (!Letters.isSeen(text)) {
            refuse(ask.name(), "", "nothing entered", fix);
        }
        return text;
    }

    /** Required, and in one line as its box on a page has it, whatever sent it. */
    public String name(Ask ask, String fix) {
        return text(ask, fix).replaceAll("\\h*\\R\\s*", " ");
    }

    /**
     * Asks where another of its kind bears the name that was just given: papers know them by name alone.
     *
     * @param before its name until now; empty for a new one
     * @param others names of the others
     * @param words with a place for the name
     */
    public void doubtIfTaken(Ask ask, String before, Stream<String> others, String words) {
        var name = value(ask).strip();
        if (!name.equals(before)) {
            others.filter(other -> seen(other).equals(seen(name)))
                    .findFirst()
                    .ifPresent(other -> doubt(ask, "name-twice", words.formatted(other)));
        }
    }

    /** What an eye takes for the same name. */
    private static String seen(String name) {
        return Normalizer.normalize(name, Normalizer.Form.NFKC)
                .strip()
                .replaceAll("\\s+", " ")
                .toLowerCase(Locale.ROOT);
    }

    /** Empty where nothing was typed. */
    public String text(Ask ask) {
        findings.read(ask);
        var text = value(ask).strip();
        if (!Letters.isXml(text)) {
            refuse(
                    ask.name(),
                    Letters.inOneLine(text),
                    "it has a character that can’t be printed; its number is in < >",
                    "Delete it and type what belongs there.");
        }
        return text;
    }

    /** @param fix what to do if it is left empty */
    public Quantity quantity(Ask ask, String fix) {
        var standIn = new Quantity(1, ask.unit());
        return required(ask, fix) ? parsed(ask).orElse(standIn) : standIn;
    }

    public @Nullable Quantity maybeQuantity(Ask ask) {
        findings.read(ask);
        return isEmpty(ask) ? null : parsed(ask).orElse(null);
    }

    public double number(Ask ask, String fix) {
        return quantity(ask, fix).in(ask.unit());
    }

    public @Nullable Double maybeNumber(Ask ask) {
        var quantity = maybeQuantity(ask);
        return quantity == null ? null : (Double) quantity.in(ask.unit());
    }

    /** Several with spaces between; none where the box is empty or one of them cannot be read. */
    public List<Double> numbers(Ask ask) {
        return text(ask).isEmpty()
                ? List.of()
                : read(() -> ParseList.of(ask.name(), value(ask))).orElse(List.of());
    }

    /** A bare number counts what the box asks for; with a unit it is that amount. */
    public @Nullable Quantity maybeCountOr(Unit other, Ask ask) {
        findings.read(ask);
        if (isEmpty(ask)) {
            return null;
        }
        try {
            return Parse.quantity(ask.name(), value(ask), ask.unit());
        } catch (Refused asCount) {
            return read(() -> {
                        try {
                            return Parse.quantity(ask.name(), value(ask), other);
                        } catch (Refused neither) {
                            throw asCount;
                        }
                    })
                    .orElse(null);
        }
    }

    public int count(Ask ask, String fix) {
        return required(ask, fix) ? counted(ask).orElse(1) : 1;
    }

    public @Nullable Integer maybeCount(Ask ask) {
        findings.read(ask);
        return isEmpty(ask) ? null : counted(ask).orElse(null);
    }

    public LocalDate date(Ask ask, String fix) {
        return required(ask, fix) ? dated(ask).orElse(LocalDate.EPOCH) : LocalDate.EPOCH;
    }

    public @Nullable LocalDate maybeDate(Ask ask) {
        findings.read(ask);
        return isEmpty(ask) ? null : dated(ask).orElse(null);
    }

    /** @param earliest a date without its year is the first such day from here on */
    public LocalDate date(Ask ask, String fix, LocalDate earliest) {
        return required(ask, fix) ? dated(ask, earliest).orElse(LocalDate.EPOCH) : LocalDate.EPOCH;
    }

    public @Nullable LocalDate maybeDate(Ask ask, LocalDate earliest) {
        findings.read(ask);
        return isEmpty(ask) ? null : dated(ask, earliest).orElse(null);
    }

    /** Of something past: without its year it is the last such day up to today. */
    public @Nullable LocalDate maybePast(Ask ask, LocalDate today) {
        return maybeDate(ask, afterAYearAgo(today));
    }

    /** The same, required. */
    public LocalDate past(Ask ask, String fix, LocalDate today) {
        return date(ask, fix, afterAYearAgo(today));
    }

    private static LocalDate afterAYearAgo(LocalDate today) {
        return today.minusYears(1).plusDays(1);
    }

    public <E extends Enum<E>> E choice(Ask ask, Class<E> type, String fix) {
        var all = type.getEnumConstants();
        if (!required(ask, fix)) {
            return all[0];
        }
        for (var one : all) {
            if (id(one).equals(value(ask))) {
                return one;
            }
        }
        refuse(ask.name(), value(ask), "not one of the choices", fix);
        return all[0];
    }

    /** How a choice is written in a form: its name in lower case. */
    public static String id(Enum<?> one) {
        return one.name().toLowerCase(Locale.ROOT);
    }

    private boolean required(Ask ask, String fix) {
        return !text(ask, fix).isEmpty();
    }

    private Optional<Quantity> parsed(Ask ask) {
        return read(() -> Parse.quantity(ask.name(), value(ask), ask.unit()));
    }

    private Optional<Integer> counted(Ask ask) {
        return read(() -> Parse.count(ask.name(), value(ask), ask.unit()));
    }

    private Optional<LocalDate> dated(Ask ask) {
        return read(() -> Parse.date(ask.name(), value(ask)));
    }

    private Optional<LocalDate> dated(Ask ask, LocalDate earliest) {
        return read(() -> Parse.date(ask.name(), value(ask), earliest));
    }

    private <T> Optional<T> read(Supplier<? extends T> reading) {
        try {
            return Optional.of(reading.get());
        } catch (Refused refused) {
            refused.problems().forEach(p -> findings.problems.add(asTyped(p)));
            return Optional.empty();
        }
    }

    /** A record writes a number its own way; where it is the number in the box, the box is what the reader knows. */
    private Problem asTyped(Problem problem) {
        var box = value(problem.field()).strip();
        var number = NUMBER.matcher(box);
        var said = NUMBER.matcher(problem.value());
        return number.find()
                        && said.find()
                        && Double.parseDouble(number.group()) == Double.parseDouble(said.group())
                        && !number.find()
                        && !said.find()
                ? new Problem(problem.field(), box, problem.rule(), problem.fix())
                : problem;
    }

    // Judging

    /** Notes a problem of the form itself, where no record owns the rule. */
    public void refuse(String field, String value, String rule, String fix) {
        findings.problems.add(new Problem(field, value, rule, fix));
    }

    /**
     * Asks whether something unusual is right. Counts as a problem until the box beside the field is ticked; then the
     * value is kept, and {@link #confirmed()} has the question.
     */
    public void doubt(Ask ask, String question, String words) {
        findings.doubts.add(new Findings.Doubt(ask.name(), question, words, isTicked(CONFIRM, question)));
    }

    /**
     * Asks about a figure outside of what is usual, and names the slip of the decimal point that would explain it. A
     * figure that stood there before was asked about then.
     */
    public void doubtUnless(Ask ask, @Nullable Quantity before, Quantity now, Quantity low, Quantity high) {
        if (!isEmpty(ask) && problem(ask).isEmpty() && !now.equals(before)) {
            Findings.unusual(ask, now, low, high).ifPresent(words -> doubt(ask, ask.name() + "-unusual", words));
        }
    }

    /** The questions that were answered with "yes, this is right". */
    public List<String> confirmed() {
        return findings.doubts.stream()
                .filter(Findings.Doubt::isConfirmed)
                .map(Findings.Doubt::question)
                .toList();
    }

    /** Whatever the record refuses lands beside its field; empty if anything at all is wrong or still doubted. */
    public <T> Optional<T> build(Supplier<T> record) {
        Optional<T> built = part(record);
        return hasProblems() ? Optional.empty() : built;
    }

    /** A part of what is built; what it refuses is noted at once, so that it is beside the rest. */
    public <T> Optional<T> part(Supplier<? extends T> record) {
        return findings.problems.isEmpty() ? read(record) : Optional.empty();
    }

    /** The same, with whatever is refused beside this box: all of it was read out of what stands there. */
    public <T> Optional<T> buildFrom(Ask ask, Supplier<T> record) {
        return build(() -> {
            try {
                return record.get();
            } catch (Refused refused) {
                throw new Refused(refused.problems().stream()
                        .map(p -> new Problem(ask.name(), p.value(), p.rule(), p.fix()))
                        .toList());
            }
        });
    }

    public boolean hasProblems() {
        return findings.areOpen();
    }

    /** Whether one of these boxes has something to fix or to confirm, so that a fold with it in has to be open. */
    public boolean isAsking(List<Ask> asks) {
        return asks.stream()
                .anyMatch(ask -> !problem(ask).isEmpty() || !doubts(ask).isEmpty());
    }

    /** Every problem and open question, as JSON has them: the field in snake_case. */
    List<Map<String, String>> problems() {
        return Stream.concat(
                        findings.problems.stream(),
                        findings.doubts.stream()
                                .filter(doubt -> !doubt.isConfirmed())
                                .map(doubt -> new Problem(
                                        doubt.field(),
                                        value(doubt.field()),
                                        doubt.words(),
                                        "If it is right, add \"%s\": [\"%s\"].".formatted(CONFIRM, doubt.question()))))
                .map(p -> Map.of(
                        "field", Spelling.snake(p.field()), "value", p.value(), "rule", p.rule(), "fix", p.fix()))
                .toList();
    }

    /** Every message, in the order found, for the summary at the top. */
    public List<Findings.Message> messages() {
        return findings.messages();
    }

    /** The message that is beside a field; empty if there is none. */
    public String problem(Ask ask) {
        return findings.beside(ask);
    }

    /** Everything that is asked, confirmed or not. */
    public List<Findings.Doubt> doubts() {
        return List.copyOf(findings.doubts);
    }

    public List<Findings.Doubt> doubts(Ask ask) {
        return findings.doubts.stream()
                .filter(d -> d.field().equals(ask.name()))
                .toList();
    }

    /** What was typed, in a second unit; empty where it cannot be read or has no other unit. */
    public String echo(Ask ask) {
        return echo(value(ask), ask.unit());
    }

    public static String echo(String typed, Unit asked) {
        if (typed.isBlank() || asked == Unit.NONE) {
            return "";
        }
        try {
            return Show.twin(Parse.quantity("", typed, asked));
        } catch (Refused refused) {
            return "";
        }
    }
}
