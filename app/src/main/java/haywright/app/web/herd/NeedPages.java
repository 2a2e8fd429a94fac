package haywright.app.web.herd;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Parse;
import haywright.app.words.Show;
import haywright.cattle.AnimalClass;
import haywright.cattle.RequirementSystem;
import haywright.cattle.herd.Group;
import haywright.cattle.need.HeiferTarget;
import haywright.cattle.need.Need;
import haywright.cattle.need.Nutrient;
import haywright.cattle.need.RuleOfThumb;
import haywright.cattle.need.Watch;
import haywright.diet.PoorestDiet;
import haywright.outlook.HerdWeather;
import haywright.quantity.Unit;
import haywright.ranch.Settings;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What one head of a group needs on a day of the reader's choice, opened wide. */
public final class NeedPages {
    public static final Ask ON = Ask.date("on", "On which day", "For example Feb 15, 2027.");

    private NeedPages() {}

    public static void routes(Routes on) {
        on.get("herd/{group}/need", page -> page.show("haywright/app/web/herd/need.jte", view(page)));
    }

    /**
     * @param form holds the day as typed, and what is wrong with it
     * @param day that the need is of
     * @param need null where the day gives none
     */
    public record View(
            Group group, Form form, LocalDate day, @Nullable Shown need) {}

    /**
     * @param watch what to watch at this stage
     * @param dietary minerals and vitamins, as a share of all they eat
     * @param editions where the two editions of the equations part; empty where they do not
     */
    public record Shown(
            List<Row> rows,
            List<StageNotes.Note> watch,
            List<NeedFigures.Dietary> dietary,
            List<NeedFigures.Alike> alike,
            List<Editions> editions,
            String edition) {}

    /** @param most where nine in ten of the group lie; empty where they are all alike, or nobody asks */
    public record Row(String what, String amount, String most, String rule) {
        Row(String what, String amount, String rule) {
            this(what, amount, "", rule);
        }
    }

    public record Editions(String what, List<String> by) {}

    private static View view(Page page) {
        var group = GroupPages.group(page);
        var typed = page.http().queryParam(ON.name());
        var form = Form.of("need", Map.of(ON.name(), typed == null ? Show.date(page.today()) : typed));
        try {
            var day = Parse.date(ON.name(), form.value(ON));
            return new View(group, form, day, shown(page.ranch().settings(), group, day));
        } catch (Refused refused) {
            form.text(ON);
            refused.problems().forEach(p -> form.refuse(ON.name(), p.value(), p.rule(), p.fix()));
            return new View(group, form, page.today(), null);
        }
    }

    private static Shown shown(Settings settings, Group group, LocalDate day) {
        var weather = new HerdWeather(settings);
        var need = weather.need(group, day);
        var rows = new ArrayList<Row>();
        var eaten = PoorestDiet.of(need);
        rows.add(new Row(
                "Energy, NEm",
                NeedFigures.mcal(need.nem()),
                NeedFigures.band(need.spread(Need::nem), mcal -> Show.number(mcal, 1)),
                ""));
        part(rows, "for maintenance on a mild day", need.nemMaintenance() - need.nemAcclimatization());
        part(rows, "for the unborn calf", need.nemPregnancy());
        part(rows, "for milk", need.nemLactation());
        if (settings.weather() == null) {
            rows.add(new Row("for the cold", "not counted", ""));
        } else {
            part(rows, "for the cold of that day", need.nemCold());
            part(rows, "for the cold of the month before", need.nemAcclimatization());
        }
        part(rows, "to regain condition", need.nemRegain());
        if (need.neg() > 0) {
            rows.add(new Row("Energy for gain, NEg", NeedFigures.mcal(need.neg()), ""));
        }
        rows.add(new Row("Metabolizable protein", NeedFigures.grams(need.metabolizableProtein()), ""));
        rows.add(new Row(
                "Crude protein",
                NeedFigures.crudeProteinSays(need, eaten) + NeedFigures.ofAny(need, eaten),
                NeedFigures.band(
                        need.spread(one ->
                                eaten.map(diet -> diet.crudeProteinOf(one)).orElse(one.crudeProtein())),
                        NeedPages::pounds),
                ""));
        rows.add(new Row("Calcium", NeedFigures.grams(need.calcium()), ""));
        rows.add(new Row("Phosphorus", NeedFigures.grams(need.phosphorus()), ""));
        eaten.ifPresent(diet -> {
            rows.add(new Row(
                    "Expected intake, dry matter",
                    NeedFigures.eats(diet),
                    NeedFigures.band(need.spread(diet::eatenBy), kg -> Show.number(Unit.POUND.fromBase(kg), 0)),
                    ""));
            rows.add(new Row("TDN needed, dry matter basis", Show.percent(diet.tdn()), rule(RuleOfThumb.tdn(need))));
            rows.add(new Row(
                    "Crude protein needed, dry matter basis",
                    Show.percent(diet.crudeProteinPercent()),
                    rule(RuleOfThumb.protein(need))));
            rows.add(new Row("Of it, rumen degradable (RDP) at least", NeedFigures.degradable(diet), ""));
        });
        var weeks = Watch.firstWeeks(group, day);
        if (weeks != null && weeks.eatsLittle()) {
            rows.add(new Row("Intake in these first weeks", "about " + Show.pounds(weeks.kilograms()), ""));
        }
        rows.add(new Row("Water, including water in feed", NeedFigures.gallons(need.water()), ""));
        return new Shown(
                rows,
                StageNotes.of(settings, group, day),
                NeedFigures.dietary(group, need, eaten),
                NeedFigures.opened(group, need),
                editions(weather, group, day),
                need.system().words());
    }

    private static String pounds(double kg) {
        return Show.number(Unit.POUND.fromBase(kg), 1);
    }

    private static void part(List<Row> rows, String what, double mcal) {
        if (mcal >= NeedFigures.NOTHING_MCAL) {
            rows.add(new Row(what, NeedFigures.mcal(mcal), ""));
        }
    }

    private static String rule(Optional<RuleOfThumb> beside) {
        return beside.map(rule -> "%s to %s %%: %s"
                        .formatted(Show.significant(rule.low(), 3), Show.significant(rule.high(), 3), rule.about()))
                .orElse("");
    }

    /** Only where the two give different numbers. */
    private static List<Editions> editions(HerdWeather weather, Group group, LocalDate day) {
        var rows = new ArrayList<Editions>();
        if (group.animals() == AnimalClass.GROWING) {
            rows.add(new Editions("Expected intake, dry matter", by(weather, group, day, NeedFigures::eats)));
            rows.add(new Editions("TDN needed", by(weather, group, day, diet -> Show.percent(diet.tdn()))));
        }
        if (group.animals() == AnimalClass.BRED_HEIFER) {
            rows.add(new Editions(
                    "Target weight at first calving",
                    List.of(target(group, RequirementSystem.NRC_1996), target(group, RequirementSystem.NASEM_2016))));
        }
        rows.add(new Editions("Rumen degradable protein (RDP)", by(weather, group, day, NeedFigures::degradable)));
        for (var nutrient : Nutrient.values()) {
            var by = Stream.of(RequirementSystem.values())
                    .map(system ->
                            NeedFigures.share(weather.need(group, day, system).dietary(nutrient)))
                    .toList();
            if (!by.get(0).equals(by.get(1))) {
                rows.add(new Editions(NeedFigures.title(nutrient), by));
            }
        }
        return rows;
    }

    private static List<String> by(
            HerdWeather weather, Group group, LocalDate day, Function<PoorestDiet, String> says) {
        var both = new ArrayList<String>();
        for (var system : RequirementSystem.values()) {
            Optional<PoorestDiet> diet = PoorestDiet.of(weather.need(group, day, system));
            both.add(diet.map(says).orElse("no diet is enough for the gain"));
        }
        return both;
    }

    private static String target(Group group, RequirementSystem system) {
        var target = new HeiferTarget(group.matureWeight().base(), system);
        return Show.number(Unit.POUND.fromBase(target.firstCalving()), 0) + " lb";
    }
}
