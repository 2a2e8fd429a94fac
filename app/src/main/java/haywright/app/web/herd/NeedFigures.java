package haywright.app.web.herd;

import haywright.app.words.CheckedWords;
import haywright.app.words.HerdWords;
import haywright.app.words.Show;
import haywright.cattle.Animal;
import haywright.cattle.Growth;
import haywright.cattle.Lactation;
import haywright.cattle.LiveWeight;
import haywright.cattle.Maintenance;
import haywright.cattle.Pregnancy;
import haywright.cattle.cold.Cold;
import haywright.cattle.cold.ColdStress;
import haywright.cattle.cold.HeatBalance;
import haywright.cattle.cold.LowerCritical;
import haywright.cattle.cold.MeanCold;
import haywright.cattle.cold.WindChill;
import haywright.cattle.herd.Group;
import haywright.cattle.need.DietaryNeed;
import haywright.cattle.need.GroupRequirement;
import haywright.cattle.need.MetabolizableProtein;
import haywright.cattle.need.MicrobialProtein;
import haywright.cattle.need.Nutrient;
import haywright.cattle.need.Requirement;
import haywright.cattle.need.Spread;
import haywright.cattle.need.VitaminE;
import haywright.diet.PoorestDiet;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;

/** What one head needs, as figures that open, and as workings opened wide. */
public final class NeedFigures {
    private static final Pattern HEAD = Pattern.compile("n[0-9]+");

    private static final Origin ABOVE = new Origin.Typed("figured above");

    private static final Origin ALIKE = new Origin.Typed("figured like the middle day");

    /** Below this a share of the energy would be shown as 0.0. */
    static final double NOTHING_MCAL = 0.05;

    private static final Set<String> CRUDE_PROTEIN = Set.of("CPn", "CPd", "CPk");

    private NeedFigures() {}

    /** One figure with its workings, cut down to the lines that it stands on. */
    public record Figure(String label, String says, Worked worked) {}

    /** A step of the workings under its heading; what comes from an earlier step only says so. */
    public record Part(String heading, Worked worked) {}

    /** Those of the group that are alike, and all that was worked out for one of them. */
    public record Alike(String says, List<Part> parts) {}

    /** Pounds of protein that are two figures and not one rounded twice. */
    private static final double LEAST_POUNDS = 0.1;

    static List<Figure> of(Group group, GroupRequirement need, Optional<PoorestDiet> diet) {
        var figures = new ArrayList<Figure>();
        figures.add(new Figure("Energy, NEm", mcal(need.nem()), only(group, need, "NEm", Set.of("NEm"))));
        figures.add(new Figure(
                "Crude protein",
                crudeProteinSays(need, diet) + ofAny(need, diet),
                diet.map(d -> deep(group, lines(d, CRUDE_PROTEIN)))
                        .orElse(only(group, need, "CP", Set.of("MP", "CP")))));
        diet.ifPresent(d -> figures.add(new Figure("Eats, dry matter", eats(d), deep(group, d))));
        if (need.neg() > 0) {
            figures.add(new Figure("For gain, NEg", mcal(need.neg()), only(group, need, "NEg", Set.of("NEg"))));
        }
        figures.add(new Figure("Calcium", grams(need.calcium()), only(group, need, "Ca", Set.of("Ca"))));
        figures.add(new Figure("Phosphorus", grams(need.phosphorus()), only(group, need, "P", Set.of("P"))));
        figures.add(new Figure("Water", gallons(need.water()), only(group, need, "W", Set.of("Wd", "Wm", "G", "W"))));
        if (need.nemCold() >= NOTHING_MCAL) {
            figures.add(new Figure("NEm for today’s cold", mcal(need.nemCold()), deep(group, need.cold())));
        }
        if (need.nemAcclimatization() >= NOTHING_MCAL) {
            var worked = with(need.acclimatization(), input -> cut(group, input, Set.of("a2", "NEma")));
            figures.add(new Figure("NEm for last month’s cold", mcal(need.nemAcclimatization()), worked));
        }
        return figures;
    }

    /** How many of the figures, from the first, are energy, protein, intake and gain. */
    static int main(GroupRequirement need, Optional<PoorestDiet> diet) {
        return 2 + (diet.isPresent() ? 1 : 0) + (need.neg() > 0 ? 1 : 0);
    }

    /** kg a day: of the diet they are expected to eat, that it is the share shown; by need alone where there is none. */
    static double crudeProtein(GroupRequirement need, Optional<PoorestDiet> diet) {
        return diet.map(PoorestDiet::crudeProtein).orElse(need.crudeProtein());
    }

    /** The share shown times the pounds shown, that a pencil finds it too; by need alone where no diet is enough for them. */
    static String crudeProteinSays(GroupRequirement need, Optional<PoorestDiet> diet) {
        return diet.map(d -> Show.number(shownProtein(d), 1) + " lb").orElse(protein(need.crudeProtein()));
    }

    /** Of which diet that is, and what is the least of any: a ration is judged by the least. Empty where both are one. */
    static String ofAny(GroupRequirement need, Optional<PoorestDiet> diet) {
        double least = Unit.POUND.fromBase(need.crudeProtein());
        return diet.filter(d -> shownProtein(d) - least >= LEAST_POUNDS)
                .map(d -> " on the poorest diet, %s lb on a richer one".formatted(Show.number(least, 1)))
                .orElse("");
    }

    private static double shownProtein(PoorestDiet diet) {
        return Math.rint(Unit.POUND.fromBase(diet.kilograms())) * Math.rint(10 * diet.crudeProteinPercent()) / 1000;
    }

    /** What the rumen takes of a protein; never more than all that is shown. */
    static String degradable(PoorestDiet diet) {
        double takes = new MicrobialProtein(diet.need().system(), diet.kilograms(), diet.tdn()).grams() / 1000;
        var all = Show.number(shownProtein(diet), 1);
        var of = Show.number(Unit.POUND.fromBase(takes), 1);
        return Double.parseDouble(of) <= Double.parseDouble(all)
                ? of + " lb"
                : "all %s lb (the rumen could use %s lb)".formatted(all, of);
    }

    /**
     * A mineral or a vitamin.
     *
     * @param figure its share of the dry matter of all they eat
     * @param day what that makes in a day, on what they are expected to eat; empty where no diet is known
     * @param most what is too much; empty where nobody says
     */
    public record Dietary(Figure figure, String day, String most) {}

    static List<Dietary> dietary(Group group, GroupRequirement need, Optional<PoorestDiet> diet) {
        var rows = new ArrayList<Dietary>();
        diet.ifPresent(d -> {
            var rumen = new MicrobialProtein(need.system(), d.kilograms(), d.tdn());
            double most = Math.min(rumen.grams() / 1000, d.crudeProtein());
            rows.add(new Dietary(
                    new Figure(
                            "Rumen degradable protein (RDP)",
                            share(100 * most / d.kilograms(), Unit.PERCENT),
                            // what they eat and how well it is digested are of the poorest diet that is enough for them
                            deep(
                                    group,
                                    with(
                                            rumen,
                                            input -> Input.computed(input.symbol(), input.value(), input.unit(), d)))),
                    degradable(d),
                    ""));
        });
        for (var nutrient : Nutrient.values()) {
            var asked = need.dietary(nutrient);
            var most = asked.tolerated();
            rows.add(new Dietary(
                    new Figure(title(nutrient), share(asked.share(), asked.unit()), deep(group, asked)),
                    diet.map(d -> amount(asked, d.kilograms())).orElse(""),
                    most.isEmpty() ? "" : share(most.getAsDouble(), asked.unit())));
        }
        var e = new VitaminE(need.bodyWeight(), false);
        rows.add(new Dietary(new Figure("Vitamin E", "by weight", deep(group, e)), units(e.units()), ""));
        return rows;
    }

    private static String amount(DietaryNeed asked, double kg) {
        return switch (asked.unit()) {
            case PERCENT -> Show.significant(asked.share() * 10 * kg, 2) + " g";
            case PPM -> Show.significant(asked.share() * kg, 2) + " mg";
            default -> units(asked.share() * kg);
        };
    }

    private static String units(double units) {
        return Show.significant(units, 2) + " IU";
    }

    static String share(double share, Unit unit) {
        return CheckedWords.share(share, unit);
    }

    static String title(Nutrient nutrient) {
        return Show.capital(nutrient.words());
    }

    /** With what is too much, where it is known. */
    static String share(DietaryNeed asked) {
        var most = asked.tolerated();
        return share(asked.share(), asked.unit())
                + (most.isEmpty() ? "" : ", at most " + share(most.getAsDouble(), asked.unit()));
    }

    /** {@code 10.9 to 13.6}; empty where all are alike. */
    static String band(Spread spread, DoubleFunction<String> show) {
        var low = show.apply(spread.low());
        var high = show.apply(spread.high());
        return low.equals(high) ? "" : low + " to " + high;
    }

    static String gallons(double liters) {
        return Show.number(Unit.GALLON.fromBase(liters / 1000), 1) + " gal";
    }

    static String mcal(double mcal) {
        return Show.number(mcal, 1) + " Mcal";
    }

    static String protein(double kg) {
        return Show.number(Unit.POUND.fromBase(kg), 1) + " lb";
    }

    static String grams(double grams) {
        return Show.number(grams, 0) + " g";
    }

    static String eats(PoorestDiet diet) {
        return HerdWords.eats(diet.kilograms());
    }

    /** Every member with all its lines. */
    static List<Alike> opened(Group group, GroupRequirement need) {
        return need.members().stream()
                .map(member -> new Alike(
                        Show.number(member.head(), 0) + " head: "
                                + stage(member.need().animal()),
                        parts(group, member.need())))
                .toList();
    }

    private static String stage(Animal animal) {
        var pregnancy = animal.pregnancy();
        var lactation = animal.lactation();
        if (pregnancy != null) {
            return "day %s of gestation, %s days to calving"
                    .formatted(Show.number(pregnancy.day(), 0), Show.number(Pregnancy.GESTATION - pregnancy.day(), 0));
        }
        return lactation != null
                ? "in milk, %s weeks after calving".formatted(Show.number(lactation.weeks(), 1))
                : GroupForm.calves(animal.animals()) ? "open and dry" : "all alike";
    }

    private static List<Part> parts(Group group, Requirement need) {
        var steps = new LinkedHashSet<Worked>();
        collect(need, steps);
        return steps.stream()
                .map(step -> new Part(heading(step), with(step, input -> said(group, closed(input)))))
                .toList();
    }

    /** What a figure stands on comes before it. */
    private static void collect(Worked worked, Set<Worked> steps) {
        if (worked instanceof MeanCold mean) {
            collect(mean.middle(), steps);
            steps.add(mean);
            return;
        }
        for (var line : worked.lines()) {
            for (var input : line.inputs()) {
                if (input.origin() instanceof Origin.Computed computed && !steps.contains(computed.by())) {
                    collect(computed.by(), steps);
                }
            }
        }
        steps.add(worked);
    }

    private static String heading(Worked step) {
        if (step instanceof LiveWeight) {
            return "The weight";
        } else if (step instanceof Maintenance) {
            return "Maintenance";
        } else if (step instanceof Pregnancy) {
            return "For the unborn calf";
        } else if (step instanceof Lactation) {
            return "For milk";
        } else if (step instanceof Growth) {
            return "For gain";
        } else if (step instanceof MetabolizableProtein) {
            return "Protein";
        } else if (step instanceof LowerCritical) {
            return "Where cold starts to cost feed";
        } else if (step instanceof WindChill) {
            return "The wind, on the middle day of the week";
        } else if (step instanceof MeanCold) {
            return "For the cold, the average of seven days";
        } else if (step instanceof Cold || step instanceof ColdStress || step instanceof HeatBalance) {
            return "The cold of the middle day";
        }
        return "Total";
    }

    private static Input closed(Input input) {
        return input.origin() instanceof Origin.Computed
                ? new Input(input.symbol(), input.value(), input.unit(), ABOVE)
                : input;
    }

    private static Worked only(Group group, GroupRequirement need, String symbol, Set<String> ofEach) {
        return with(lines(need, Set.of(symbol)), input -> cut(group, input, ofEach));
    }

    private static Input cut(Group group, Input input, Set<String> symbols) {
        return input.origin() instanceof Origin.Computed computed
                ? Input.computed(
                        input.symbol(), input.value(), input.unit(), deep(group, lines(computed.by(), symbols)))
                : said(group, input);
    }

    private static Worked deep(Group group, Worked worked) {
        return with(
                worked,
                input -> input.origin() instanceof Origin.Computed computed
                        ? worked instanceof MeanCold mean && computed.by() != mean.middle()
                                ? new Input(input.symbol(), input.value(), input.unit(), ALIKE)
                                : Input.computed(
                                        input.symbol(), input.value(), input.unit(), deep(group, computed.by()))
                        : said(group, input));
    }

    /** Where a figure of the group itself comes from: not all of them were typed. */
    private static Input said(Group group, Input input) {
        return input.origin() == Origin.TYPED
                ? new Input(input.symbol(), input.value(), input.unit(), new Origin.Typed(where(group, input)))
                : input;
    }

    private static String where(Group group, Input input) {
        return switch (input.symbol()) {
            case "CBW" -> group.calfBirthWeight() == null ? "of their breed" : "entered";
            case "PKYD" -> group.peakMilk() == null ? "of their breed" : "entered";
            case "T" -> "where the published tables have the peak";
            case "t", "n" -> "counted from the middle of their calving week";
            case "SBW", "FBW", "W" -> group.gain().value() > 0 ? "as weighed, with the gain since" : "as weighed";
            case "FSBW" -> "mature weight, after shrink";
            case "Tp" ->
                input.value() == Animal.NO_ACCLIMATIZATION
                        ? "no weather entered; this changes nothing"
                        : "average of the month before, from the ranch’s weather";
            case "Tair", "v", "WIND", "EAT" -> "of the ranch’s weather";
            case "h" -> "accepted from what was fed last winter";
            case "HAIR" -> "of the coat assumed";
            case "MEI", "NEFP" -> "of the need above, on hay that is enough for it";
            case "CS", "CS1" -> "as they were scored";
            case "CS2" -> "target score at calving";
            case "SBW5" -> "mature weight, after shrink";
            case "d" -> "from the day they were scored to the first calf";
            case "BW" -> "of their weight";
            case "SWG" -> "entered";
            default -> HEAD.matcher(input.symbol()).matches() ? "head in that calving week" : "figured for this group";
        };
    }

    private static Worked lines(Worked worked, Set<String> symbols) {
        return () -> worked.lines().stream()
                .filter(line -> symbols.contains(line.symbol()))
                .toList();
    }

    private static Worked with(Worked worked, UnaryOperator<Input> change) {
        return () -> worked.lines().stream()
                .map(line -> new Line(
                        line.symbol(),
                        line.formula(),
                        line.value(),
                        line.unit(),
                        line.source(),
                        line.inputs().stream().map(change).toList()))
                .toList();
    }
}
