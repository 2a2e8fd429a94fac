package haywright.app.web.herd;

import haywright.app.exchange.csv.HerdOut;
import haywright.app.report.picture.CalvingPicture;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.web.form.JsonForm;
import haywright.app.words.HerdWords;
import haywright.app.words.Show;
import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.HerdCheck;
import haywright.diet.PoorestDiet;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.workings.Note;
import haywright.workings.Refused;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The groups of a ranch: the list with what each needs today, and the form of one. */
public final class GroupPages {
    private static final String FORM = "haywright/app/web/herd/group.jte";

    private GroupPages() {}

    public static void routes(Routes on) {
        BackCastPages.routes(on);
        RegroupPages.routes(on);
        Thin.routes(on);
        HerdTable.routes(on);
        on.get("herd", page -> page.show("haywright/app/web/herd/herd.jte", list(page)));
        on.get("herd/herd.csv", page -> page.csv("herd", HerdOut.herd(page.ranch())));
        on.get("herd/new", page -> page.show("haywright/app/web/herd/classes.jte", AnimalClass.values()));
        on.get("herd/new/{class}", GroupPages::add);
        on.post("herd/new/{class}", page -> save(page, animals(page), null));
        on.get("herd/{group}", GroupPages::change);
        on.post("herd/{group}", page -> save(page, group(page).animals(), group(page)));
        on.get("herd/{group}/figure/{figure}", page -> page.show("haywright/app/web/herd/figure.jte", figure(page)));
        on.get("herd/{group}/delete", page -> page.show("haywright/app/web/herd/deleteGroup.jte", group(page)));
        on.post("herd/{group}/delete", GroupPages::delete);
    }

    /**
     * @param total of all groups together, in words; empty when there are none
     * @param lastWinter fed and needed, side by side
     */
    public record ListView(List<Row> rows, String head, String total, String lastWinter) {}

    /**
     * @param facts what is known of them, in words
     * @param calving when they calve, in words; empty where nothing does
     * @param figures empty where {@code refused} says why there are none
     * @param main how many of them, from the first, stand in the list; minerals, water and cold are folded
     * @param diet the poorest diet that is enough for them, in words
     * @param notes what is unusual, in words
     * @param thin null where they are to calve in the condition wanted
     */
    public record Row(
            Group group,
            String facts,
            String calving,
            List<NeedFigures.Figure> figures,
            int main,
            String diet,
            String refused,
            List<String> notes,
            @Nullable Thin thin) {}

    /**
     * @param group null for a new one
     * @param weeks the need of the weeks to come; null for a new one, or where there is none
     */
    public record FormView(
            Form form,
            AnimalClass animals,
            @Nullable Group group,
            String action,
            @Nullable CalvingPicture calving,
            @Nullable WeeksAhead weeks,
            List<String> notes) {}

    /** The name of the class on its link, and who belongs there. */
    public static String who(AnimalClass animals) {
        return switch (animals) {
            case MATURE_COW -> "Cows that calve: bred, nursing or open.";
            case FIRST_CALF_HEIFER -> "Nursing or just weaned from their first calf, still growing.";
            case BRED_HEIFER -> "Bred for the first time.";
            case BULL -> "Herd bulls, mature or nearly.";
            case GROWING -> "Weaned calves, replacement heifers, anything fed to gain.";
        };
    }

    /** Begins a heading or a line. */
    public static String title(AnimalClass animals) {
        return Show.capital(animals.words());
    }

    private static ListView list(Page page) {
        var rows = new ArrayList<Row>();
        double pounds = 0;
        boolean all = true;
        for (var group : page.ranch().groups().values()) {
            try {
                var need = page.yard().need(group);
                var diet = PoorestDiet.of(need);
                pounds += group.head()
                        * Math.rint(Unit.POUND.fromBase(
                                diet.map(PoorestDiet::kilograms).orElse(0.0)));
                all &= diet.isPresent();
                var carries = diet.map(d -> "They hold on %s TDN and %s crude protein (dry matter basis)."
                                .formatted(Show.percent(d.tdn()), Show.percent(d.crudeProteinPercent())))
                        .orElse("No diet is enough for the gain set.");
                rows.add(
                        row(page, group, NeedFigures.of(group, need, diet), NeedFigures.main(need, diet), carries, ""));
            } catch (Refused refused) {
                all = false;
                rows.add(row(
                        page, group, List.of(), 0, "", refused.problems().get(0).sentence()));
            }
        }
        var total = all
                ? "Together they eat about %s lb of dry matter per day (%s)."
                        .formatted(Show.number(pounds, 0), Show.tons(Unit.POUND.toBase(pounds)))
                : "";
        return new ListView(
                rows,
                Show.number(page.ranch().head(), 0),
                total,
                rows.isEmpty() ? "" : BackCastPages.view(page).says());
    }

    /** One figure of the list, opened; the list itself would be megabytes with all of them in it. */
    public record FigureView(Group group, NeedFigures.Figure figure) {}

    private static FigureView figure(Page page) {
        var group = group(page);
        var need = page.yard().need(group);
        var figures = NeedFigures.of(group, need, PoorestDiet.of(need));
        var asked = page.http().pathParam("figure");
        if (!asked.matches("[0-9]{1,2}") || Integer.parseInt(asked) >= figures.size()) {
            throw new NotFoundResponse();
        }
        return new FigureView(group, figures.get(Integer.parseInt(asked)));
    }

    private static Row row(
            Page page, Group group, List<NeedFigures.Figure> figures, int main, String diet, String refused) {
        return new Row(
                group,
                facts(group),
                group.calving().isEmpty() ? "" : calving(page, group).words(),
                figures,
                main,
                diet,
                refused,
                notes(page, group),
                Thin.of(group, page.today()).orElse(null));
    }

    private static CalvingPicture calving(Page page, Group group) {
        return new CalvingPicture(group.name(), group.calving(), page.today());
    }

    /** What is known of them, in words. */
    public static String facts(Group group) {
        var facts = new ArrayList<String>();
        facts.add(
                "%s %s".formatted(Show.number(group.head(), 0), group.animals().words()));
        facts.add("%s %s on %s"
                .formatted(
                        Show.quantity(group.weight()),
                        group.shrunk() ? "shrunk" : "full",
                        Show.day(group.weighedOn())));
        facts.add("condition " + Show.significant(group.conditionScore(), 3));
        if (!group.breed().isBlank()) {
            facts.add(group.breed());
        }
        if (group.gain().value() > 0) {
            facts.add(HerdWords.gain(group));
        }
        return String.join(", ", facts);
    }

    private static List<String> notes(Page page, Group group) {
        boolean isThin = Thin.of(group, page.today()).isPresent();
        return HerdCheck.of(group, page.today()).stream()
                .filter(note -> note.level() != Note.Level.REFUSE)
                .filter(note -> !isThin || !note.rule().startsWith("calving_score"))
                .map(GroupForm::sentence)
                .toList();
    }

    private static void add(Page page) {
        var animals = animals(page);
        page.show(
                FORM,
                view(
                        page,
                        page.form(key(animals, null), () -> GroupForm.fresh(page.ranch(), page.today())),
                        animals,
                        null));
    }

    private static void change(Page page) {
        var group = group(page);
        var form = page.form(key(group.animals(), group), () -> GroupForm.known(group));
        page.show(FORM, view(page, form, group.animals(), group));
    }

    private static void save(Page page, AnimalClass animals, @Nullable Group before) {
        var known = before == null ? Map.<String, String>of() : GroupForm.known(before);
        var form = JsonForm.posted(page, key(animals, before), GroupForm.of(animals), known);
        var id = before == null ? UUID.randomUUID() : before.id();
        doubtIfTaken(page, form, id, before == null ? "" : before.name());
        var group = GroupForm.read(form, animals, id, before, cowsWeigh(page.ranch()), page.today());
        if (group.isEmpty()) {
            page.reject(form, FORM, view(page, form, animals, before));
            return;
        }
        var words = "%s: %s%s"
                        .formatted(
                                before == null ? "Group added" : "Group changed",
                                group.get().name(),
                                GroupForm.SAID.containsAll(form.confirmed()) ? "" : ", with what was asked confirmed")
                + GroupForm.taken(form, group.get());
        page.save(form, words, ranch -> ranch.with(group.get()), page.wantsMore() ? "herd/new" : "herd");
    }

    static void doubtIfTaken(Page page, Form form, UUID id, String before) {
        form.doubtIfTaken(
                RegroupPages.NAME,
                before,
                page.ranch().groups().values().stream()
                        .filter(one -> !one.id().equals(id))
                        .map(Group::name),
                "A group named %s is already here. Whoever feeds could not tell their letters apart: add the pen or their age.");
    }

    static @Nullable Quantity cowsWeigh(Ranch ranch) {
        return ranch.groups().values().stream()
                .filter(group -> group.animals() == AnimalClass.MATURE_COW)
                .findFirst()
                .map(Group::matureWeight)
                .orElse(null);
    }

    private static void delete(Page page) {
        var group = group(page);
        var form = page.posted(key(group.animals(), group));
        page.save(form, "Group deleted: " + group.name(), ranch -> ranch.withoutGroup(group.id()), "herd");
    }

    static Group group(Page page) {
        return page.find(page.ranch().groups(), "group");
    }

    private static AnimalClass animals(Page page) {
        try {
            return AnimalClass.valueOf(page.http().pathParam("class").toUpperCase(Locale.ROOT));
        } catch (IllegalArgumentException e) {
            throw new NotFoundResponse();
        }
    }

    private static String key(AnimalClass animals, @Nullable Group group) {
        return "herd/" + (group == null ? "new/" + animals.id() : group.id());
    }

    private static FormView view(Page page, Form form, AnimalClass animals, @Nullable Group group) {
        var action = group == null ? "herd/new/" + animals.id() : "herd/" + group.id();
        return new FormView(
                form,
                animals,
                group,
                page.at(action),
                group == null || group.calving().isEmpty() ? null : calving(page, group),
                group == null ? null : WeeksAhead.of(page, group),
                group == null ? List.of() : notes(page, group));
    }
}
