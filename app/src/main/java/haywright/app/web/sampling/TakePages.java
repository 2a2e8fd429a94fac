package haywright.app.web.sampling;

import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.web.trail.Trail;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.outlook.LotSubject;
import haywright.outlook.LotTons;
import haywright.ranch.Field;
import haywright.ranch.Lot;
import haywright.ranch.Sampling;
import haywright.sampling.Material;
import haywright.sampling.Subject;
import io.javalin.http.NotFoundResponse;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Every lot with its plan, and the plan of one. */
public final class TakePages {
    private static final String PLAN = "haywright/app/web/sampling/plan.jte";

    /** What is sampled although nobody keeps it as a lot. */
    private static final List<Material> OTHER = List.of(
            Material.MIXED_RATION,
            Material.STOCK_WATER,
            Material.CHOPPER_WAGON,
            Material.GRAZED_PASTURE,
            Material.CUBES);

    private TakePages() {}

    public static void routes(Routes on) {
        on.get("take", page -> page.show("haywright/app/web/sampling/take.jte", list(page)));
        on.get("take/lots/{lot}", TakePages::plan);
        on.post("take/lots/{lot}/sheet", TakePages::makeSheet);
        on.get("take/other/{material}", TakePages::planOther);
        on.post("take/other/{material}/sheet", TakePages::makeOtherSheet);
        SheetPages.routes(on);
        ReturnPages.routes(on);
        WalkPages.routes(on);
        WeighPages.routes(on);
    }

    /**
     * @param sheets made for the lot, newest last
     * @param needsSample whether it has neither a report nor a sample on its way
     */
    public record Row(Lot lot, String material, String amount, List<Sheet> sheets, boolean needsSample) {}

    public record Sheet(UUID id, String says, boolean back) {}

    /**
     * @param others sheets of what is no lot, or of a lot that is gone
     * @param otherMaterials what can be sampled without being a lot
     * @param line form for the line of text that a phone gave back
     * @param spokenOf the sheet that a line which was refused speaks of; null where there is none
     */
    public record ListView(
            List<Row> rows,
            List<Field> fields,
            List<Sheet> others,
            List<Material> otherMaterials,
            Form line,
            @Nullable Sheet spokenOf) {}

    static ListView list(Page page, Form line, @Nullable Sampling spokenOf) {
        var ranch = page.ranch();
        return new ListView(
                ranch.lots().values().stream()
                        .map(lot -> row(page, lot))
                        .sorted(Comparator.comparing(row -> !row.needsSample()))
                        .toList(),
                List.copyOf(ranch.fields().values()),
                ranch.samplings().values().stream()
                        .filter(s -> s.lot() == null || !ranch.lots().containsKey(s.lot()))
                        .map(TakePages::sheet)
                        .toList(),
                OTHER,
                line,
                spokenOf == null ? null : sheet(spokenOf));
    }

    private static ListView list(Page page) {
        return list(page, page.form("take", java.util.Map::of), null);
    }

    private static Row row(Page page, Lot lot) {
        var subject = LotSubject.of(lot);
        var kg = LotTons.of(lot).kg();
        return new Row(
                lot,
                subject.material().words(),
                (subject.units() > 0
                                ? Show.count(subject.units(), subject.material().unit()) + ", "
                                : "")
                        + (kg.isPresent() ? Show.tons(kg.getAsDouble()) : Measures.tons() + " not known"),
                page.ranch().samplingsOf(lot.id()).stream()
                        .map(TakePages::sheet)
                        .toList(),
                Trail.needsSample(page.ranch(), lot));
    }

    private static Sheet sheet(Sampling s) {
        var taken = s.taken();
        return new Sheet(
                s.id(),
                taken == null
                        ? "%s: sheet %s of %s, not back yet".formatted(s.what(), s.code(), Show.date(s.made()))
                        : "%s: sheet %s, taken %s by %s"
                                .formatted(s.what(), s.code(), Show.date(taken.on()), taken.by()),
                taken != null);
    }

    private static void plan(Page page) {
        var lot = page.find(page.ranch().lots(), "lot");
        var subject = LotSubject.of(lot);
        var form = asked(page, path(lot), subject, lot.isNitrateDanger());
        page.show(PLAN, PlanView.ofLot(form, lot, page.at(path(lot)), PlanForm.read(form, subject)));
    }

    private static void planOther(Page page) {
        var subject = other(page);
        var form = asked(page, path(subject), subject, false);
        page.show(PLAN, PlanView.ofOther(form, subject, page.at(path(subject)), PlanForm.read(form, subject)));
    }

    private static Subject other(Page page) {
        return OTHER.stream()
                .filter(m -> m.id().equals(page.http().pathParam("material")))
                .findFirst()
                .map(m -> Subject.of(m, 0))
                .orElseThrow(NotFoundResponse::new);
    }

    private static String path(Lot lot) {
        return "take/lots/" + lot.id();
    }

    private static String path(Subject other) {
        return "take/other/" + other.material().id();
    }

    /** What the address asks for, or the usual. Nothing is kept until a sheet is made. */
    private static Form asked(Page page, String key, Subject subject, boolean danger) {
        var query = page.http().queryParamMap();
        return query.containsKey(PlanForm.PURPOSE.name())
                ? Form.posted(key, PlanForm.fitted(query, subject))
                : Form.of(key, PlanForm.usual(subject, danger));
    }

    private static void makeSheet(Page page) {
        var lot = page.find(page.ranch().lots(), "lot");
        var form = page.posted(path(lot));
        var plan = PlanForm.read(form, LotSubject.of(lot));
        if (plan.isEmpty()) {
            page.reject(form, PLAN, PlanView.ofLot(form, lot, page.at(path(lot)), plan));
            return;
        }
        keep(page, form, Sampling.of(plan.get(), UUID.randomUUID(), lot.id(), lot.name(), page.today()));
    }

    private static void makeOtherSheet(Page page) {
        var subject = other(page);
        var form = page.posted(path(subject));
        var plan = PlanForm.read(form, subject);
        var what = form.name(PlanForm.WHAT, "Enter a name.");
        if (plan.isEmpty() || form.hasProblems()) {
            page.reject(form, PLAN, PlanView.ofOther(form, subject, page.at(path(subject)), plan));
            return;
        }
        keep(page, form, Sampling.of(plan.get(), UUID.randomUUID(), null, what, page.today()));
    }

    private static void keep(Page page, Form form, Sampling sampling) {
        page.save(
                form,
                "Field sheet made: %s, %s".formatted(sampling.what(), sampling.code()),
                ranch -> ranch.with(sampling),
                "take/sheets/" + sampling.id());
    }
}
