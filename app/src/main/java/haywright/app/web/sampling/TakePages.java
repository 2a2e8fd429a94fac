package haywright.app.web.sampling;

import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.ranch.Field;
import haywright.ranch.Lot;
import haywright.ranch.LotSubject;
import haywright.ranch.Sampling;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.UUID;

/** Every lot with its plan, and the plan of one. */
public final class TakePages {
    private static final String PLAN = "haywright/app/web/sampling/plan.jte";

    private TakePages() {}

    public static void routes(Routes on) {
        on.get("take", page -> page.show("haywright/app/web/sampling/take.jte", list(page)));
        on.get("take/lots/{lot}", TakePages::plan);
        on.post("take/lots/{lot}/sheet", TakePages::makeSheet);
        SheetPages.routes(on);
        WalkPages.routes(on);
    }

    /** @param sheets made for the lot, newest last */
    public record Row(Lot lot, String material, String amount, List<Sheet> sheets) {}

    public record Sheet(UUID id, String says, boolean back) {}

    /** @param line form for the line of text that a phone gave back */
    public record ListView(List<Row> rows, List<Field> fields, List<Sheet> ofLotsThatAreGone, Form line) {}

    static ListView list(Page page, Form line) {
        var ranch = page.ranch();
        return new ListView(
                ranch.lots().values().stream().map(lot -> row(page, lot)).toList(),
                List.copyOf(ranch.fields().values()),
                ranch.samplings().values().stream()
                        .filter(s -> !ranch.lots().containsKey(s.lot()))
                        .map(TakePages::sheet)
                        .toList(),
                line);
    }

    private static ListView list(Page page) {
        return list(page, page.form("take/line", java.util.Map::of));
    }

    private static Row row(Page page, Lot lot) {
        var subject = LotSubject.of(lot);
        var kg = lot.stock().asFedKg();
        return new Row(
                lot,
                subject.material().words(),
                (subject.units() > 0
                                ? Show.count(subject.units(), subject.material().unit()) + ", "
                                : "")
                        + (kg.isPresent() ? Show.tons(kg.getAsDouble()) : "tons not known"),
                page.ranch().samplingsOf(lot.id()).stream()
                        .map(TakePages::sheet)
                        .toList());
    }

    private static Sheet sheet(Sampling s) {
        var taken = s.taken();
        return new Sheet(
                s.id(),
                taken == null
                        ? "Sheet %s of %s, not back yet".formatted(s.code(), Show.date(s.made()))
                        : "Sheet %s, taken %s by %s".formatted(s.code(), Show.date(taken.on()), taken.by()),
                taken != null);
    }

    private static void plan(Page page) {
        var lot = page.find(page.ranch().lots(), "lot");
        var form = asked(page, lot);
        page.show(PLAN, PlanView.of(form, lot, PlanForm.read(form, lot)));
    }

    /** What the address asks for, or the usual. Nothing is kept until a sheet is made. */
    private static Form asked(Page page, Lot lot) {
        var query = page.http().queryParamMap();
        return query.containsKey(PlanForm.PURPOSE.name())
                ? Form.posted("take/lots/" + lot.id(), new LinkedHashMap<>(query))
                : Form.of("take/lots/" + lot.id(), PlanForm.usual(lot));
    }

    private static void makeSheet(Page page) {
        var lot = page.find(page.ranch().lots(), "lot");
        var form = page.posted("take/lots/" + lot.id());
        var plan = PlanForm.read(form, lot);
        if (plan.isEmpty()) {
            page.reject(form, PLAN, PlanView.of(form, lot, plan));
            return;
        }
        var sampling = Sampling.of(plan.get(), UUID.randomUUID(), lot.id(), page.today());
        page.save(
                form,
                "Field sheet made: %s, %s".formatted(lot.name(), sampling.code()),
                ranch -> ranch.with(sampling),
                "take/sheets/" + sampling.id());
    }
}
