package haywright.app.web.lab;

import haywright.app.exchange.lab.Understood;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.forage.lab.LabReport;
import haywright.ranch.Lot;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** From samples that were understood to reports: looked over one by one, or kept together where none raises a question. */
final class BringTake {
    private BringTake() {}

    /**
     * Whether a form came from the page of another sheet than the one that lies here, as from a window that was opened
     * earlier. Then the page of this one is shown, which says so, and nothing is kept.
     */
    static boolean isOfAnotherSheet(Page page) {
        var lies = Form.posted(BringPages.KEY, page.unfinished().of(BringPages.KEY));
        var found = lies.part(() -> BringReader.understood(page, lies));
        if (found.isEmpty()) {
            return false;
        }
        var view = BringView.of(page, lies, found.get());
        if (view.sheet().equals(page.http().formParam(BringPages.SHEET.name()))) {
            return false;
        }
        lies.text(BringPages.TEXT);
        lies.refuse(
                BringPages.TEXT.name(),
                "",
                "what you sent was of another sheet, or of this one before it was read again; this is the one that was read last, and nothing was kept",
                "Look at its figures and go on from here, or bring the other sheet in again.");
        page.http().status(409);
        page.show(BringPages.PAGE, new BringPages.View(lies, view));
        return true;
    }

    /** From what was understood to the form, where the checks stand beside each figure. */
    static void take(Page page) {
        if (isOfAnotherSheet(page)) {
            return;
        }
        var form = picked(page);
        var found = form.part(() -> BringReader.understood(page, form));
        var view = found.map(read -> BringView.of(page, form, read)).orElse(null);
        var number = page.http().formParam("sample");
        if (view == null
                || number == null
                || !number.matches("[0-9]{1,4}")
                || Integer.parseInt(number) >= view.samples().size()) {
            Page.leave(page.http(), page.at(BringPages.KEY));
            return;
        }
        if (view.areDaysOpen()) {
            askDays(form);
            again(page, form, view, number);
            return;
        }
        var sample = view.samples().get(Integer.parseInt(number));
        var lot = page.ranch().lots().values().stream()
                .filter(one -> one.id().toString().equals(page.http().formParam("lot")))
                .findFirst();
        if (lot.isEmpty()) {
            var ask = BringPages.lot(sample.number());
            form.text(ask);
            form.refuse(ask.name(), "", "no lot was chosen", "A report is of one lot: choose which.");
            again(page, form, view, number);
            return;
        }
        var like = sample.like();
        var answer = page.http().formParam("replaces-" + sample.number());
        if (like != null && !"new".equals(answer) && !"replace".equals(answer)) {
            var ask = BringPages.replaces(sample);
            form.text(ask);
            form.refuse(ask.name(), "", "nobody said whether it is new", "Choose one of the two.");
            again(page, form, view, number);
            return;
        }
        var before = "replace".equals(answer) ? like : null;
        var known = new LinkedHashMap<>(ReportForm.fresh());
        known.putAll(sample.typed());
        if (before != null && known.getOrDefault(ReportForm.HOW.name(), "").isEmpty()) {
            known.put(ReportForm.HOW.name(), Form.id(before.howSampled()));
        }
        known.put(ReportForm.ASKED.name(), like == null ? "" : like.id().toString());
        known.put(ReportForm.FROM.name(), view.left() > 1 ? BringPages.KEY : "");
        known.put(Original.FIELD.name(), form.value(Original.FIELD));
        known.put(ReportForm.NAMES_OF.name(), sample.laboratory());
        var on = before == null ? lot.get() : page.ranch().lots().getOrDefault(before.lot(), lot.get());
        var filled = Form.of(ReportPages.path(on, before), known);
        page.anew();
        page.keep(filled);
        page.show(ReportPages.FORM, ReportPages.view(page, filled, on, before));
    }

    /** With the lot that was chosen for this sample. */
    private static void again(Page page, Form form, BringView view, String number) {
        page.http().status(422);
        var lot = page.http().formParam("lot");
        page.show(
                BringPages.PAGE,
                new BringPages.View(
                        form, view, lot == null ? Map.of() : Map.of("lot-" + Integer.parseInt(number), lot)));
    }

    /** The lot that was chosen for a sample among all of them, or that its code speaks of; null where neither is. */
    private static @Nullable Lot lotOf(Page page, Form form, BringView.Sample sample) {
        var name = BringPages.lot(sample.number()).name();
        var sent = page.http().formParam(name);
        var chosen = sent == null ? form.value(name) : sent;
        var match = sample.match();
        return sent == null && chosen.isEmpty()
                ? match == null ? null : match.lot()
                : page.ranch().lots().values().stream()
                        .filter(one -> one.id().toString().equals(chosen))
                        .findFirst()
                        .orElse(null);
    }

    /** Keeps every sample whose lot is known and that raises no question; the others stay to be looked over. */
    static void takeAll(Page page) {
        if (isOfAnotherSheet(page)) {
            return;
        }
        var form = picked(page);
        var found = form.part(() -> BringReader.understood(page, form));
        var how = page.http().formParam(ReportForm.HOW.name());
        if (found.isEmpty() || how == null || how.isBlank()) {
            noneKept(
                    page,
                    form,
                    found,
                    "how the samples were taken is not entered",
                    "Choose “not known” if nobody remembers.");
            return;
        }
        if (BringView.of(page, form, found.get()).areDaysOpen()) {
            askDays(form);
            noneKept(page, form, found, "it is not said how the dates on the sheet are written", "Say so below.");
            return;
        }
        var reports = new ArrayList<LabReport>();
        var laboratories = new LinkedHashSet<String>();
        var view = BringView.of(page, form, found.get());
        var questions = questions(page, form, view, reports, laboratories);
        if (reports.isEmpty()) {
            ask(form, view, questions);
            noneKept(
                    page,
                    form,
                    found,
                    "each of them raises a question",
                    "The question stands beside each sample. Look them over one by one.");
            return;
        }
        var left = Form.of(BringPages.KEY + "/all", Map.of());
        page.anew();
        page.keep(form); // what was chosen for those that stay
        page.save(
                left,
                "Reports added: " + reports.size(),
                ranch -> {
                    var with = ranch;
                    for (var report : reports) {
                        with = Original.on(page, form, with.with(report), report.id());
                    }
                    return with;
                },
                BringPages.KEY);
        if (isSaved(page)) {
            laboratories.forEach(laboratory -> NamesForm.remember(page, form, laboratory));
        }
    }

    /** Looks over every sample: those that pass go to the reports, of the others it is said why they do not. */
    private static Map<Integer, String> questions(
            Page page, Form form, BringView view, List<LabReport> reports, Set<String> laboratories) {
        var questions = new LinkedHashMap<Integer, String>();
        var how = form.value(ReportForm.HOW);
        for (var sample : view.samples()) {
            if (isNoSample(page, form, sample)) {
                continue;
            }
            var lot = lotOf(page, form, sample);
            if (lot != null && sample.isNew()) {
                var known = new LinkedHashMap<>(ReportForm.fresh());
                known.putAll(sample.typed());
                known.put(ReportForm.HOW.name(), how);
                var filled = Form.of(BringPages.KEY, known);
                var others = Stream.concat(page.ranch().reports().values().stream(), reports.stream())
                        .toList();
                ReportForm.read(filled, lot, UUID.randomUUID(), null, page.today(), others)
                        .ifPresentOrElse(
                                report -> {
                                    reports.add(report);
                                    laboratories.add(sample.laboratory());
                                },
                                () -> questions.put(
                                        sample.number(),
                                        filled.messages().stream()
                                                .map(message -> message.words())
                                                .findFirst()
                                                .orElse("it raises a question")));
            } else if (sample.kept() == null) {
                questions.put(
                        sample.number(),
                        lot == null
                                ? "No lot was chosen."
                                : "There may be a report of it already: look it over below.");
            }
        }
        return questions;
    }

    /** Whether somebody said that what was offered as a sample is none, as an average beside samples. */
    private static boolean isNoSample(Page page, Form form, BringView.Sample sample) {
        var name = BringPages.lot(sample.number()).name();
        var sent = page.http().formParam(name);
        return BringPages.NO_SAMPLE.equals(sent == null ? form.value(name) : sent);
    }

    private static void ask(Form form, BringView view, Map<Integer, String> questions) {
        questions.forEach((number, question) -> {
            form.text(BringPages.lot(number));
            form.refuse(
                    BringPages.lot(number).name(),
                    "",
                    view.samples().get(number).name() + ": " + question,
                    "");
        });
    }

    /** After some were kept, each of the others still shows why it was not, beside the lot that was chosen for it. */
    static BringPages.View left(Page page, Form form, BringView view) {
        boolean areSomeKept = view.samples().stream().anyMatch(sample -> sample.kept() != null);
        if (areSomeKept && !form.isEmpty(ReportForm.HOW) && !view.areDaysOpen()) {
            ask(form, view, questions(page, form, view, new ArrayList<>(), new LinkedHashSet<>()));
        }
        var picks = new LinkedHashMap<String, String>();
        for (var sample : view.samples()) {
            var name = BringPages.lot(sample.number()).name();
            if (!form.value(name).isEmpty()) {
                picks.put(name, form.value(name));
            }
        }
        return new BringPages.View(form, view, picks);
    }

    private static boolean isSaved(Page page) {
        return Stream.of("Location", "HX-Redirect").anyMatch(page.http().res()::containsHeader);
    }

    /** What was said of the names on the sheet that a report came from is kept with the report, not sooner. */
    static void saved(Page page, Form report) {
        var typed = page.unfinished().of(BringPages.KEY);
        var form = Form.posted(BringPages.KEY, typed);
        if (isSaved(page)
                && !report.isEmpty(Original.FIELD)
                && report.value(Original.FIELD).equals(form.value(Original.FIELD))) {
            NamesForm.remember(page, form, report.value(ReportForm.NAMES_OF));
        }
    }

    /** The form as it was read, with what was picked beside the samples since. */
    private static Form picked(Page page) {
        var all = new LinkedHashMap<>(page.unfinished().of(BringPages.KEY));
        page.http().formParamMap().forEach((name, values) -> {
            if (name.matches("lot-[0-9]+|replaces-[0-9]+|" + ReportForm.HOW.name() + "|" + BringPages.DAYS.name())) {
                all.put(name, values);
            }
        });
        var form = Form.posted(BringPages.KEY, all);
        var days = page.http().formParam(BringPages.DAYS.name());
        if (days != null && !days.isBlank()) {
            page.keep(form); // it holds for every sample of the sheet, whichever is kept first
        }
        return form;
    }

    private static void askDays(Form form) {
        form.text(BringPages.DAYS);
        form.refuse(BringPages.DAYS.name(), "", "a date on the sheet could be two days", "Choose one of the two.");
    }

    /** What was picked for each sample stays picked. */
    private static void noneKept(Page page, Form form, Optional<Understood> found, String rule, String fix) {
        form.text(ReportForm.HOW);
        form.refuse(ReportForm.HOW.name(), "", rule, fix);
        page.http().status(422);
        var picks = new LinkedHashMap<String, String>();
        page.http().formParamMap().forEach((name, values) -> {
            if (name.startsWith("lot-") && !values.isEmpty()) {
                picks.put(name, values.get(0));
            }
        });
        page.show(
                BringPages.PAGE,
                new BringPages.View(
                        form, found.map(read -> BringView.of(page, form, read)).orElse(null), picks));
    }
}
