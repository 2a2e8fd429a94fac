package haywright.app.web.lab;

import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.web.form.Field;
import haywright.app.web.form.Fields;
import haywright.app.words.Said;
import haywright.app.words.Show;
import haywright.cattle.herd.Group;
import haywright.cattle.need.Water;
import haywright.diet.SulfurEaten;
import haywright.feeding.Rations;
import haywright.forage.Analyte;
import haywright.forage.hazard.HazardClass;
import haywright.forage.hazard.HazardClass.Hazard;
import haywright.quantity.Unit;
import haywright.ranch.WaterSource;
import haywright.ration.Ration;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What the cattle drink: each source with its report, what published classes make of it, and its sulfur with the feed's. */
public final class WaterPages {
    private static final Fields<WaterSource> FIELDS = Fields.of(WaterSource.class)
            .section(
                    "",
                    Field.text("name", "Name", "Well, creek or dugout, and where it is.")
                            .needed("Where do they drink?"))
            .section(
                    "",
                    Field.pastDate(
                            "sampled",
                            "Sampled on",
                            "Before freeze-up, where the cattle drink, and cold to the laboratory."),
                    Field.text("laboratory", "Laboratory", ""))
            .section(
                    "Leave empty what was not tested: empty is not none.",
                    Field.amount(
                            "solids",
                            "Total dissolved solids (TDS)",
                            Unit.MILLIGRAM_PER_LITER,
                            "ppm in water is the same."),
                    Field.amount(
                            "conductivity",
                            "Conductivity (EC)",
                            Unit.MICROMHO_PER_CM,
                            "Used where dissolved solids were not tested; 1 mS/cm is 1,000."),
                    Field.amount("sulfate", "Sulfate", Unit.MILLIGRAM_PER_LITER, ""))
            .section(
                    "",
                    Field.tick(
                            "asSulfur",
                            "That is sulfate sulfur (SO4-S)",
                            "Leave it unticked if the report says sulfate or SO4, which is three times as much."))
            .section("", Field.amount("nitrate", "Nitrate", Unit.MILLIGRAM_PER_LITER, ""))
            .section(
                    "",
                    Field.tick(
                            "asNitrogen",
                            "That is nitrate nitrogen (NO3-N)",
                            "Leave it unticked if the report says nitrate or NO3."))
            .section("pH, nitrite, sodium, iron, hardness and the rest have no place here: keep the sheet, and ask your"
                    + " veterinarian or extension office about them.");

    private static final List<String> FIGURES = List.of("solids", "conductivity", "sulfate", "nitrate");

    private static final String LIST = "reports/water";
    private static final String FORM = "haywright/app/web/lab/waterForm.jte";

    private WaterPages() {}

    public static void routes(Routes on) {
        on.get(LIST, page -> page.show("haywright/app/web/lab/water.jte", list(page)));
        on.get(LIST + "/new", page -> page.show(FORM, new FormView(page.form(LIST + "/new", Map::of), null)));
        on.post(LIST + "/new", page -> save(page, null));
        on.get(LIST + "/{water}", page -> {
            var water = water(page);
            page.show(FORM, new FormView(page.form(path(water), () -> FIELDS.known(water)), water));
        });
        on.post(LIST + "/{water}", page -> save(page, water(page)));
        on.get(LIST + "/{water}/delete", page -> page.show("haywright/app/web/lab/deleteWater.jte", water(page)));
        on.post(LIST + "/{water}/delete", WaterPages::delete);
    }

    /** @param water null for a new one */
    public record FormView(Form form, @Nullable WaterSource water) {
        /** Where they drink. */
        public List<Fields.Section> where() {
            return FIELDS.sections().subList(0, 2);
        }

        /** What the report says. */
        public List<Fields.Section> report() {
            return FIELDS.sections().subList(2, FIELDS.sections().size());
        }
    }

    /** @param day and laboratory, in words */
    public record Source(WaterSource water, String day, List<Found> found, List<Sulfur> sulfur) {
        public boolean danger() {
            return found.stream().anyMatch(f -> f.classes().get(0).level() == HazardClass.Level.DANGER);
        }
    }

    /** @param classes of every source, the stricter first */
    public record Found(String name, String value, List<HazardClass> classes) {}

    /** One group's sulfur from feed and water. */
    public record Sulfur(String says, boolean careful, Worked worked) {}

    private static List<Source> list(Page page) {
        var rations = page.rations();
        return page.ranch().waters().values().stream()
                .map(water -> source(rations, water))
                .toList();
    }

    private static Source source(Rations rations, WaterSource water) {
        var found = new ArrayList<Found>();
        water.found()
                .forEach((hazard, value) -> found.add(new Found(
                        hazard == Hazard.TDS && water.solids() == null
                                ? hazard.words() + ", from its conductivity"
                                : hazard.words(),
                        Show.number(value, 0) + "\u00a0mg/L",
                        HazardClass.of(hazard, value))));
        var sulfur = new ArrayList<Sulfur>();
        var sulfate = water.found().get(Hazard.SO4W);
        if (sulfate != null) {
            for (var group : rations.ranch().groups().values()) {
                sulfur(rations, group, sulfate).ifPresent(sulfur::add);
            }
        }
        var sampled = water.sampled();
        var day = (sampled == null ? "day not known" : "sampled " + Show.date(sampled))
                + (water.laboratory().isBlank() ? "" : ", " + water.laboratory());
        return new Source(water, day, found, sulfur);
    }

    /** By the group's cheapest ration; empty where it has none. */
    private static Optional<Sulfur> sulfur(Rations rations, Group group, double sulfate) {
        if (!(rations.ration(group) instanceof Ration ration)) {
            return Optional.empty();
        }
        double eaten = 0;
        double grams = 0;
        var unknown = new ArrayList<String>();
        for (var portion : ration.portions()) {
            eaten += portion.kg();
            var share = portion.feed().feed().composition().value(Analyte.S);
            grams += 10 * share.orElse(0) * portion.kg();
            if (share.isEmpty()) {
                unknown.add(portion.feed().feed().name());
            }
        }
        var need = rations.yard().need(group);
        var water = new Water(need.animals(), need.bodyWeight(), need.milkingShare() * 8, Water.COLDEST_PRINTED);
        var sulfur = new SulfurEaten(grams / (10 * eaten), eaten, water.liters(), sulfate);
        boolean careful = sulfur.percent() > SulfurEaten.watchAbove();
        var says =
                "%s: %s\u00a0%% of what they eat is sulfur, %s\u00a0%% of it from this water (about %s gallons per head per day in the cold)%s."
                        .formatted(
                                group.name(),
                                Show.number(sulfur.percent(), 2),
                                Show.number(100 * (sulfur.percent() - sulfur.feed()) / sulfur.percent(), 0),
                                Show.number(Unit.GALLON.fromBase(Unit.LITER.toBase(water.liters())), 0),
                                unknown.isEmpty() ? "" : "; sulfur not tested in " + String.join(", ", unknown));
        return Optional.of(new Sulfur(says, careful, sulfur));
    }

    /** @param before null for a new one */
    private static void save(Page page, @Nullable WaterSource before) {
        var id = before == null ? UUID.randomUUID() : before.id();
        var form = page.posted(before == null ? LIST + "/new" : path(before));
        if (areLimits(form)) {
            page.reject(form, FORM, new FormView(form, before));
            return;
        }
        var water = FIELDS.read(form, Map.of("id", id), before, page.today());
        if (water.isEmpty() || form.hasProblems()) {
            page.reject(form, FORM, new FormView(form, before));
            return;
        }
        page.save(form, "Water: " + water.get().name(), ranch -> ranch.with(water.get()), LIST);
    }

    /** Less than a figure, or not detected: the most that it can be is what counts, and nobody types it unasked. */
    private static boolean areLimits(Form form) {
        for (var name : FIGURES) {
            var typed = form.value(name);
            Said.of(typed)
                    .ifPresent(said -> form.refuse(
                            name,
                            typed,
                            "it says how much the water holds at most, and the box takes a figure",
                            said.limit().isEmpty()
                                    ? "Leave it empty, or type the laboratory’s limit: then the most it can be counts."
                                    : "Type %s: then the most it can be counts.".formatted(said.limit())));
        }
        return form.hasProblems();
    }

    private static void delete(Page page) {
        var water = water(page);
        page.save(
                page.posted(path(water)),
                "Water deleted: " + water.name(),
                ranch -> ranch.withoutWater(water.id()),
                LIST);
    }

    private static WaterSource water(Page page) {
        return page.find(page.ranch().waters(), "water");
    }

    private static String path(WaterSource water) {
        return LIST + "/" + water.id();
    }
}
