package haywright.app.web.lab;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.book.FeedBook;
import haywright.forage.lab.Issue;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.forage.lab.ReportCheck;
import haywright.forage.lab.Tested;
import haywright.outlook.SameHay;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The form of one report, in the order a sheet prints it, and the report that comes out of it. */
public final class ReportForm {
    public static final Ask LABORATORY = Ask.text("laboratory", "Laboratory", "");
    public static final Ask SAMPLE_CODE =
            new Ask("sampleCode", "Sample code", Unit.NONE, "As written on the bag, or the laboratory’s number.", 18);
    public static final Ask SAMPLED = Ask.date("sampled", "Sampled on", "For example Oct 6, 2026.");
    public static final Ask REPORTED = Ask.date("reported", "Reported on", "For example Oct 14, 2026.");
    public static final Ask HOW = Ask.choice(
            "howSampled",
            "How the sample was taken",
            "Choose one; “not known” will do. A grab sample can miss the lot, however good the laboratory.");

    public static final Ask METHOD = Ask.choice(
            "method",
            "How the laboratory worked",
            "Usually printed at the top or bottom of the sheet. Wet chemistry is more accurate.");

    /** Asked where another report of the lot was sampled long before or after. */
    public static final Ask SAME_HAY = Ask.choice(
            "sameHay",
            "Is this still the same hay?",
            "Another report on this lot was sampled more than %d months before or after. Hay of another year is another lot."
                    .formatted(SameHay.MONTHS));

    /** Hidden: the report of which it was asked already whether this one is new. */
    public static final Ask ASKED = Ask.choice("asked", "", "");

    /** Hidden: where to go on to when it is kept, if it came out of a file with more reports. */
    public static final Ask FROM = Ask.choice("from", "", "");

    /** Hidden: the laboratory whose names were explained on the sheet that it came from. */
    public static final Ask NAMES_OF = Ask.text("names-of", "", "");

    private ReportForm() {}

    public static List<Option> methods() {
        return Stream.of(Tested.Method.WET, Tested.Method.NIR)
                .map(method -> new Option(Form.id(method), words(method)))
                .toList();
    }

    public static List<Option> sameOrNot() {
        return List.of(
                new Option("yes", "Yes: both reports count"),
                new Option("no", "No: the older is kept and not counted"));
    }

    static String words(Tested.Method method) {
        return switch (method) {
            case WET -> "wet chemistry";
            case NIR -> "near infrared (NIR)";
            case UNKNOWN -> "a method that is not said";
        };
    }

    public static List<Option> ways() {
        return Option.of(LabReport.HowSampled.class, LabReport.HowSampled::words);
    }

    static Map<String, String> fresh() {
        var known = new LinkedHashMap<String, String>();
        Readings.start(known);
        return known;
    }

    static Map<String, String> known(LabReport report) {
        var known = new LinkedHashMap<String, String>();
        known.put(LABORATORY.name(), report.laboratory());
        known.put(SAMPLE_CODE.name(), report.sampleCode());
        known.put(SAMPLED.name(), report.sampled() == null ? "" : Show.date(report.sampled()));
        known.put(REPORTED.name(), report.reported() == null ? "" : Show.date(report.reported()));
        known.put(HOW.name(), Form.id(report.howSampled()));
        var method = report.method();
        known.put(METHOD.name(), method == null ? "" : Form.id(method));
        if (report.confirmed().stream().anyMatch(question -> question.startsWith(SameHay.CONFIRMED))) {
            known.put(SAME_HAY.name(), "yes");
        }
        Printed.of(report).show(known);
        return known;
    }

    /**
     * The report of a form, or nothing if anything is wrong with it or still doubted; then the form says what.
     *
     * @param before the report as it was; null for a new one
     * @param others every report there is: the same one typed again would count as a second sample
     */
    @SuppressWarnings("NullAway") // the method may be null, but a class file loses that of a nested type in a record
    static Optional<LabReport> read(
            Form form, Lot lot, UUID id, @Nullable LabReport before, LocalDate today, Collection<LabReport> others) {
        var laboratory = form.text(LABORATORY);
        var code = form.text(SAMPLE_CODE);
        var sampled = form.maybePast(SAMPLED, today);
        var reported = form.maybePast(REPORTED, today);
        stillToCome(form, SAMPLED, sampled, today);
        stillToCome(form, REPORTED, reported, today);
        var how = form.choice(HOW, LabReport.HowSampled.class, "Choose “not known” if nobody remembers.");
        var method = form.isEmpty(METHOD) ? null : form.choice(METHOD, Tested.Method.class, "Choose one of the list.");
        var read = FigureMethods.read(form, Printed.read(form, before == null ? Printed.NOTHING : Printed.of(before)));
        var dryMatter = Readings.row(Analyte.DM);
        form.text(dryMatter.right());
        if (read.isEmpty() && !form.hasProblems()) {
            form.refuse(dryMatter.right().name(), "", "no figure is written here yet", "Type what the sheet prints.");
        }
        if (before == null) {
            twice(form, lot, laboratory, code, sampled, read, others);
        }
        var confirmed = new ArrayList<String>();
        if (form.problem(dryMatter.right()).isEmpty()) {
            confirmed.addAll(check(form, lot, LabReport.counted(read.readings(), read.notMeasured()), before));
        }
        confirmed.addAll(form.confirmed());
        confirmed.addAll(sameHay(form, lot, id, sampled, reported, others));
        return form.build(() -> new LabReport(
                id,
                lot.id(),
                laboratory,
                code,
                sampled,
                reported,
                how,
                read.readings(),
                confirmed,
                method,
                read.notMeasured()));
    }

    /** Of every report sampled long before or after: what somebody says, or the question. */
    private static List<String> sameHay(
            Form form,
            Lot lot,
            UUID id,
            @Nullable LocalDate sampled,
            @Nullable LocalDate reported,
            Collection<LabReport> others) {
        var days = Stream.of(sampled, reported).map(Optional::ofNullable).toList();
        var apart = apart(lot, id, days, others).toList();
        var said = form.text(SAME_HAY);
        if (!apart.isEmpty() && sameOrNot().stream().noneMatch(o -> o.value().equals(said))) {
            form.refuse(
                    SAME_HAY.name(), said, "nobody said whether it is still the same hay", "Choose one of the two.");
        }
        return said.equals("yes") ? apart.stream().map(SameHay::confirmation).toList() : List.of();
    }

    /** Whether a form whose days are known already, from a sheet or a draft, asks {@link #SAME_HAY} before it is sent. */
    static boolean asksSameHay(Form form, Lot lot, @Nullable LabReport before, Collection<LabReport> others) {
        var days = Stream.of(SAMPLED, REPORTED)
                .map(ask -> Earlier.day(form.value(ask)))
                .toList();
        return apart(lot, before == null ? null : before.id(), days, others)
                .findAny()
                .isPresent();
    }

    /** Other reports on the lot that were sampled so long before or after that it may be of other hay. */
    private static Stream<LabReport> apart(
            Lot lot, @Nullable UUID own, List<Optional<LocalDate>> days, Collection<LabReport> others) {
        return others.stream()
                .filter(r -> r.lot().equals(lot.id()) && !r.id().equals(own))
                .filter(r -> SameHay.isApart(r, days.stream()));
    }

    private static void twice(
            Form form,
            Lot lot,
            String laboratory,
            String code,
            @Nullable LocalDate sampled,
            Printed read,
            Collection<LabReport> others) {
        others.stream()
                .filter(r -> r.lot().equals(lot.id()))
                .filter(r -> !r.id().toString().equals(form.value(ASKED)))
                .filter(r -> {
                    boolean isCode = r.sampleCode().strip().equalsIgnoreCase(code);
                    boolean isSame = !read.readings().isEmpty() && r.readings().equals(read.readings());
                    return Earlier.isAnotherSample(r.sampled(), sampled)
                                    || Earlier.isAnother(r.laboratory(), laboratory)
                            ? isCode && isSame
                            : isCode && !code.isEmpty() || isSame;
                })
                .findFirst()
                .ifPresent(r -> form.doubt(
                        SAMPLE_CODE,
                        "report-twice",
                        "%s%s. Kept again it would count as a second sample and make the lot look better known. If it is the same sheet, change that report instead."
                                .formatted(
                                        r.readings().equals(read.readings())
                                                ? "The same figures are on this lot already"
                                                : "A report with this sample code is on this lot already",
                                        r.sampled() == null ? "" : ", sampled " + Show.date(r.sampled()))));
    }

    private static void stillToCome(Form form, Ask ask, @Nullable LocalDate day, LocalDate today) {
        if (day != null && day.isAfter(today)) {
            form.doubt(
                    ask,
                    ask.name() + "-to-come",
                    Show.date(day) + " is still to come: it is " + Show.date(today) + ".");
        }
    }

    /** @return what was unusual, confirmed before and has not changed since */
    private static List<String> check(Form form, Lot lot, List<Reading> readings, @Nullable LabReport before) {
        var confirmed = new ArrayList<String>();
        boolean lacksDryMatter = false;
        for (var issue :
                ReportCheck.check(lot.feedClass(), bookRow(lot), readings).issues()) {
            var analyte = issue.field() == null ? Analyte.DM : issue.field();
            var row = Readings.row(analyte);
            var box = row.box(form);
            if (issue.level() == Issue.Level.E) {
                if (issue.rule().equals("dry-matter")) {
                    lacksDryMatter = true;
                } else {
                    form.refuse(box.name(), "", issue.words(), issue.fix());
                }
            } else if (issue.level() == Issue.Level.W) {
                var question = issue.rule() + "-" + analyte.id();
                if (before != null
                        && before.confirmed().contains(question)
                        && of(analyte, readings).equals(of(analyte, before.counted()))) {
                    confirmed.add(question);
                } else {
                    form.doubt(box, question, sentence(issue));
                }
            }
        }
        if (lacksDryMatter) {
            form.refuse(
                    Readings.row(Analyte.DM).right().name(),
                    "",
                    "without dry matter the figures as received cannot be carried to dry matter",
                    "Enter the dry matter or the moisture, or the figures on dry matter.");
        }
        return confirmed;
    }

    private static List<Reading> of(Analyte analyte, List<Reading> readings) {
        return readings.stream().filter(r -> r.analyte() == analyte).toList();
    }

    static Optional<FeedBook.Row> bookRow(Lot lot) {
        return FeedBook.published().rowFor(lot.bookRow(), lot.feedClass());
    }

    /** What is to be known of a report and is neither wrong nor unusual. */
    static List<String> noted(Lot lot, LabReport report) {
        return ReportCheck.check(lot.feedClass(), bookRow(lot), report.counted()).issues().stream()
                .filter(issue -> issue.level() == Issue.Level.I)
                .map(ReportForm::sentence)
                .toList();
    }

    static String sentence(Issue issue) {
        var words = Show.capital(issue.words());
        return (words + ". " + (issue.fix().equals("Nothing to do.") ? "" : issue.fix())).strip();
    }
}
