package haywright.app.web.lab;

import haywright.app.exchange.lab.Days;
import haywright.app.exchange.lab.Understood;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.words.Said;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Tested;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What was understood of a file, beside what was read.
 *
 * @param sheet tells it from every other: the forms on its page carry it
 * @param names every name of a figure, with what it was taken for
 * @param columns those that are asked about, and marks
 * @param notTaken lines and columns that were not understood
 * @param rest what else stands on the sheet
 */
public record BringView(
        String sheet,
        String layout,
        List<Sample> samples,
        List<NamesForm.Row> names,
        List<ColumnsForm.Row> columns,
        List<String> notTaken,
        List<String> rest,
        List<Option> lots) {
    /**
     * @param also other names of it; may be empty
     * @param head laboratory, days and method, as the file has them; may be empty
     * @param left the basis of the left column, in words
     * @param lines what was understood
     * @param typed what goes into the form
     * @param match the lot that its code speaks of; null where none does
     * @param noMatch why there is none, in words; empty where there is one
     * @param kept the lot that has this very report already; null where none has
     * @param like a report that this one may replace, which is asked; null where there is none
     * @param likeWords that report, in words
     */
    public record Sample(
            int number,
            String name,
            String also,
            String laboratory,
            String head,
            String left,
            int figures,
            List<Line> lines,
            Map<String, String> typed,
            @Nullable Match match,
            String noMatch,
            @Nullable Lot kept,
            @Nullable LabReport like,
            String likeWords) {
        /** Its lot is known, and nothing is asked about it before the checks. */
        boolean isReady() {
            return match != null && isNew();
        }

        /** Neither kept already nor perhaps the same as another, which is asked sample by sample. */
        public boolean isNew() {
            return kept == null && like == null;
        }
    }

    /**
     * One name with its figures.
     *
     * @param left as received, or at 90 % dry matter; empty where there is none
     * @param one the figure of what has one whatever the basis; empty where it has two
     */
    public record Line(String name, String left, String dry, String one, String read) {
        private Line with(Line more) {
            return new Line(
                    name,
                    left + more.left,
                    dry + more.dry,
                    one + more.one,
                    read.equals(more.read) ? read : read + "; " + more.read);
        }
    }

    /** @param why in words: "bag label S4K2P1 of its field sheet" */
    public record Match(Lot lot, String why, boolean byPlan) {}

    static String words(Basis basis) {
        return switch (basis) {
            case AS_RECEIVED -> "as received (as fed, as is)";
            case DRY_MATTER -> "on dry matter";
            case NINETY_PCT -> "at 90 % dry matter";
        };
    }

    static BringView of(Page page, Form form, Understood found) {
        var notTaken = new ArrayList<>(found.notTaken());
        var samples = new ArrayList<Sample>();
        var order = BringReader.order(form);
        for (var sample : found.samples()) {
            boolean isOnlyOne = found.samples().stream()
                            .filter(other -> key(other.code()).equals(key(sample.code())))
                            .count()
                    == 1;
            samples.add(sample(page.ranch(), form, sample, samples.size(), order, isOnlyOne, notTaken));
        }
        var lots = page.ranch().lots().values().stream()
                .map(lot -> new Option(lot.id().toString(), lot.name()))
                .toList();
        return new BringView(
                Original.tag(form, found),
                found.layout(),
                samples,
                NamesForm.rows(form, found),
                ColumnsForm.rows(found),
                List.copyOf(notTaken),
                found.rest(),
                lots);
    }

    /** Whether a day on the sheet could be two, and nobody said how they are written. */
    public boolean areDaysOpen() {
        return samples.stream()
                .anyMatch(sample -> Stream.of(ReportForm.SAMPLED, ReportForm.REPORTED)
                        .anyMatch(
                                ask -> sample.typed.getOrDefault(ask.name(), "").endsWith("?")));
    }

    /** Whether samples can be kept all at once: then what is asked of all of them stands there. */
    public boolean isKeepOffered() {
        return !lots.isEmpty() && samples.stream().anyMatch(Sample::isNew);
    }

    /** Columns and marks of which nobody has said what they are; a figure that stands there several times is one. */
    public long openColumns() {
        return columns.stream()
                .filter(row -> row.said().isEmpty())
                .map(ColumnsForm.Row::question)
                .distinct()
                .count();
    }

    public long ready() {
        return samples.stream().filter(Sample::isReady).count();
    }

    public long left() {
        return samples.stream().filter(s -> s.kept == null).count();
    }

    private static Sample sample(
            Ranch ranch,
            Form form,
            Understood.Sample sample,
            int number,
            Days.Order order,
            boolean isOnlyOne,
            List<String> notTaken) {
        var called = Stream.of(sample.code(), sample.lot())
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
        var name = called.isEmpty() ? "Sample " + (number + 1) : called;
        var laboratory = sample.laboratory().isEmpty()
                ? form.value(BringPages.LABORATORY).strip()
                : sample.laboratory();
        var left = Readings.left(
                sample.cells().stream().<@Nullable Basis>map(c -> c.basis()).toList());
        var lines = new ArrayList<Line>();
        var typed = new LinkedHashMap<String, String>();
        var method = sample.method();
        var methods = new EnumMap<Analyte, Tested.Method>(Analyte.class);
        var match = Stream.concat(Stream.of(sample.code(), sample.lot()), sample.also().stream())
                .map(words ->
                        match(ranch, words, Days.read(sample.sampled(), order).orElse(null)))
                .filter(one -> one != null)
                .findFirst()
                .orElse(null);
        typed.put(ReportForm.LABORATORY.name(), laboratory);
        typed.put(ReportForm.SAMPLE_CODE.name(), sample.code());
        typed.put(ReportForm.SAMPLED.name(), day(sample.sampled(), order));
        typed.put(ReportForm.REPORTED.name(), day(sample.reported(), order));
        typed.put(ReportForm.METHOD.name(), method == null ? "" : Form.id(method));
        typed.put(ReportForm.HOW.name(), match != null && match.byPlan ? Form.id(LabReport.HowSampled.PLAN) : "");
        typed.put(Readings.NINETY.name(), left == Basis.NINETY_PCT ? "yes" : "");
        for (var cell : sample.cells()) {
            var box = Readings.box(cell.analyte(), cell.basis(), left);
            if (box == null) {
                notTaken.add("%s, %s %s: the form has no place for it"
                        .formatted(name, Readings.name(cell.analyte()), figure(cell)));
                continue;
            }
            Readings.put(typed, box, cell.analyte(), cell.unit(), cell.text());
            if (cell.method() != null) {
                methods.put(cell.analyte(), cell.method());
            }
            var figure = figure(cell);
            var basis = cell.basis();
            var line = new Line(
                    Readings.name(cell.analyte()),
                    basis != null && basis != Basis.DRY_MATTER ? figure : "",
                    basis == Basis.DRY_MATTER ? figure : "",
                    basis == null ? figure : "",
                    cell.read() + FigureMethods.words(cell.method()));
            var before = lines.isEmpty() ? null : lines.get(lines.size() - 1);
            if (before != null && before.name.equals(line.name)) {
                lines.set(lines.size() - 1, before.with(line));
            } else {
                lines.add(line);
            }
        }
        FigureMethods.show(typed, methods);
        var earlier = Earlier.of(ranch, form, typed, isOnlyOne);
        var like = earlier.like();
        var likeLot = like == null ? null : ranch.lots().get(like.lot());
        if (match == null && likeLot != null) {
            match = new Match(
                    likeLot,
                    like != null && like.sampleCode().isBlank()
                            ? "a report out of this file is on it already"
                            : "a report under this code is on it already",
                    false);
        }
        return new Sample(
                number,
                name,
                String.join(", ", sample.also()),
                laboratory,
                head(sample),
                words(left),
                sample.cells().size(),
                lines,
                typed,
                match,
                match == null ? noMatch(ranch, sample.code()) : "",
                earlier.kept(),
                like,
                like == null ? "" : Earlier.words(like, ranch));
    }

    /** As it is typed into the form; as it stands, or as the days it can be, where the form has to ask. */
    private static String day(String printed, Days.Order order) {
        var days = Days.all(printed, order);
        return days.isEmpty()
                ? printed
                : days.size() == 1
                        ? Show.date(days.get(0))
                        : days.stream().map(Show::date).collect(Collectors.joining(" or ")) + "?";
    }

    private static String figure(Understood.Cell cell) {
        var unit = cell.unit();
        if (Said.isWithoutLimit(cell.text())) {
            return cell.text();
        }
        if (unit != null) {
            return Show.withUnit(cell.text(), unit);
        }
        var usual = cell.analyte().unit();
        return Readings.isUnitAsked(cell.analyte())
                ? cell.text() + ", unit not said: asked in the form"
                : usual.symbol().isEmpty() ? cell.text() : cell.text() + ", unit not said: taken as " + usual.symbol();
    }

    private static String head(Understood.Sample sample) {
        var method = sample.method();
        return Stream.of(
                        sample.also().isEmpty() ? "" : "also called " + String.join(", ", sample.also()),
                        sample.laboratory(),
                        sample.sampled().isEmpty() ? "" : "sampled " + sample.sampled(),
                        sample.reported().isEmpty() ? "" : "reported " + sample.reported(),
                        method == null ? "" : ReportForm.words(method))
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
    }

    /** A bag label, an earlier report under the same code, or the lot's own name. */
    private static @Nullable Match match(Ranch ranch, String code, @Nullable LocalDate sampled) {
        var asked = key(code);
        if (asked.isEmpty()) {
            return null;
        }
        for (var sheet : ranch.samplings().values()) {
            var lot = sheet.lot() == null ? null : ranch.lots().get(sheet.lot());
            if (lot != null && List.of(asked.split("[^A-Z0-9]+")).contains(sheet.code())) {
                return new Match(lot, "bag label " + sheet.code() + " of its field sheet", true);
            }
        }
        var named = ranch.lots().values().stream()
                .filter(lot -> key(lot.name()).equals(asked))
                .toList();
        if (named.size() == 1) {
            return new Match(named.get(0), "it is the lot’s name", false);
        }
        var earlier = ranch.reports().values().stream()
                .filter(report ->
                        key(report.sampleCode()).equals(asked) && !Earlier.isAnotherSample(report.sampled(), sampled))
                .map(LabReport::lot)
                .distinct()
                .toList();
        var lot = earlier.size() == 1 ? ranch.lots().get(earlier.get(0)) : null;
        return lot == null ? null : new Match(lot, "a report under this code has it already", false);
    }

    /** Codes come again, so one that an earlier report has is no more than a hint. */
    private static String noMatch(Ranch ranch, String code) {
        var lots = ranch.reports().values().stream()
                .filter(report ->
                        !key(code).isEmpty() && key(report.sampleCode()).equals(key(code)))
                .flatMap(report -> Stream.ofNullable(ranch.lots().get(report.lot())))
                .map(Lot::name)
                .distinct()
                .toList();
        return lots.isEmpty()
                ? "No lot here goes by this name or code."
                : "A sample of another day under this code was of %s. Codes come again, so say which lot."
                        .formatted(String.join(", ", lots));
    }

    private static String key(String words) {
        return Earlier.key(words);
    }
}
