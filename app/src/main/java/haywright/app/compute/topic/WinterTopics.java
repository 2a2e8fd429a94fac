package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.cattle.Reserves;
import haywright.cattle.cold.CattleWindChill;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdStress;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Exposure;
import haywright.cattle.cold.Hide;
import haywright.cattle.cold.LowerCritical;
import haywright.cattle.cold.Nws2001WindChill;
import haywright.cattle.cold.WindChill;
import haywright.cattle.intake.HayNeed;
import haywright.quantity.Unit;
import haywright.workings.Caution;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** What the cold costs, what lies on the back of a cow, and the hay for a winter. */
final class WinterTopics {
    /** % over maintenance: nobody can feed more. */
    private static final double MOST_THAT_CAN_BE_FED = 50;

    private WinterTopics() {}

    static final List<Topic<?, ?>> ALL = List.of(
            new Topic<>(
                    "cold",
                    "How much more energy cattle need in the cold, by the rule of thumb.",
                    ColdIn.class,
                    Colder.class,
                    """
                    {"coat":"heavy_winter","wet":false,"condition":"average","temperature_f":15,"wind_mph":5,\
                    "tdn_lb":15.5}""",
                    WinterTopics::cold),
            new Topic<>(
                    "wind-chill",
                    "What a temperature feels like in wind, to cattle or to a human face.",
                    WindIn.class,
                    Felt.class,
                    "{\"temperature_f\":-20,\"wind_mph\":5,\"table\":\"nws-2001\"}",
                    WinterTopics::windChill),
            new Topic<>(
                    "reserves",
                    "Energy and weight between two condition scores of a mature cow.",
                    ReservesIn.class,
                    OnHerBack.class,
                    "{\"body_weight_kg\":533,\"condition_score\":5,\"to_condition_score\":6}",
                    WinterTopics::reserves),
            new Topic<>(
                    "hay-need",
                    "Hay to have for so many days of feeding, with what is lost.",
                    HayIn.class,
                    Hay.class,
                    """
                    {"groups":[{"head":100,"dmi_lb":26}],"days":120,"dm_pct":90,"feeding_loss_pct":15,\
                    "storage_loss_pct":10}""",
                    WinterTopics::hayNeed));

    /** The weather of a day, as keys among those of an animal. */
    record WeatherIn(
            @Key(value = Unit.CELSIUS, words = "Mean of the day; no weather is counted when not said.")
            OptionalDouble temperature,

            @Key(value = Unit.KILOMETER_AN_HOUR, words = "Mean of the day, in the open; still when not said.")
            OptionalDouble wind,

            @Key(words = "winter when not said.") @Nullable Coat coat,

            @Key(words = "dry when not said.") @Nullable Hide hide,

            @Key(words = "Whether they can stand behind one; false when not said.") @Nullable
            Boolean windbreak,

            @Key(words = "rule_of_thumb when not said; the two are never added.") @Nullable
            ColdSystem coldSystem) {
        WeatherIn {
            if (temperature.isEmpty()
                    && (wind.isPresent() || coat != null || hide != null || windbreak != null || coldSystem != null)) {
                throw new Refused(
                        "temperature",
                        "nothing",
                        "wind, coat and windbreak change nothing without a temperature",
                        "Add temperature_c or temperature_f, or leave the weather out.");
            }
        }

        /** One, or none where no weather is counted. */
        List<Exposure> days() {
            return temperature.isEmpty()
                    ? List.of()
                    : List.of(new Exposure(
                            temperature.getAsDouble(),
                            wind.orElse(0),
                            coat == null ? Coat.WINTER : coat,
                            hide == null ? Hide.DRY : hide,
                            windbreak != null && windbreak,
                            coldSystem == null ? ColdSystem.USUAL : coldSystem));
        }
    }

    /** The columns of the table of critical temperatures. */
    enum Condition {
        THIN(LowerCritical.THIN),
        AVERAGE(LowerCritical.AVERAGE),
        FLESHY(LowerCritical.FLESHY);

        private final double score;

        Condition(double score) {
            this.score = score;
        }
    }

    record ColdIn(
            @Key(words = "Needed unless lower_critical is given.") @Nullable
            Coat coat,

            @Key(words = "false when not said.") @Nullable Boolean wet,

            @Key(words = "average when not said.") @Nullable Condition condition,
            @Key(Unit.CELSIUS) double temperature,

            @Key(value = Unit.KILOMETER_AN_HOUR, words = "Still when not said.")
            OptionalDouble wind,

            @Key(value = Unit.CELSIUS, words = "In place of the table's.")
            OptionalDouble lowerCritical,

            @Key(value = Unit.POUND, words = "TDN of the whole ration on a mild day.")
            OptionalDouble tdn) {
        ColdIn {
            if (coat == null && lowerCritical.isEmpty()) {
                throw new Refused(
                        "coat",
                        "nothing",
                        "the coat decides where cold begins",
                        "Add coat (summer, fall, winter or heavy_winter), or lower_critical_f.");
            }
            if (!(tdn.orElse(1) > 0)) {
                throw new Refused(
                        "tdn", String.valueOf(tdn.getAsDouble()), "a ration has TDN above 0", "How much is fed a day?");
            }
        }
    }

    record Colder(
            @Key(Unit.FAHRENHEIT) double effectiveTemperature,
            @Key(Unit.FAHRENHEIT) double lowerCritical,

            @Key(name = "degrees_below_f") double degreesBelow,

            @Key(value = Unit.PERCENT, words = "Of maintenance.")
            double energyIncrease,

            @Key(value = Unit.POUND, words = "The whole ration raised by that share, as the published examples do.")
            OptionalDouble tdn) {}

    private static Answer<Colder> cold(ColdIn in) {
        boolean wet = in.wet != null && in.wet;
        var chill = new CattleWindChill(in.temperature, in.wind.orElse(0));
        var condition = in.condition == null ? Condition.AVERAGE : in.condition;
        var stress = in.lowerCritical.isPresent() || in.coat == null
                ? ColdStress.given(in.lowerCritical.orElseThrow(), chill, wet)
                : ColdStress.of(new LowerCritical(in.coat, wet, condition.score), chill);
        var workings = new ArrayList<Worked>(List.of(stress));
        var tdn = OptionalDouble.empty();
        if (in.tdn.isPresent()) {
            tdn = OptionalDouble.of(in.tdn.getAsDouble() * (1 + stress.percent() / 100));
            workings.add(wholeRation(in.tdn.getAsDouble(), tdn.getAsDouble(), stress));
        }
        var answer = new Colder(
                Unit.FAHRENHEIT.fromBase(chill.celsius()),
                Unit.FAHRENHEIT.fromBase(stress.lowerCritical().value()),
                stress.degreesBelow() * 1.8,
                stress.percent(),
                tdn);
        return new Answer<>(answer, true, workings, cautions(stress, in.tdn.isPresent()));
    }

    private static Worked wholeRation(double mild, double cold, ColdStress stress) {
        return () -> List.of(Line.of(
                "TDNcold",
                "TDN·(1 + pct/100)",
                cold,
                Unit.POUND,
                Source.read("Kansas State University, Cottonwood Connections, January 2025: of the whole ration"),
                Input.typed("TDN", mild, Unit.POUND),
                Input.computed("pct", stress.percent(), Unit.PERCENT, stress)));
    }

    private static List<Caution> cautions(ColdStress stress, boolean ofTheWholeRation) {
        var cautions = new ArrayList<Caution>();
        if (ofTheWholeRation) {
            cautions.add(new Caution(
                    "The TDN is the whole ration's, raised as the published examples do it. The rule is one of maintenance:"
                            + " late in pregnancy this is too much. The topic requirement takes it of maintenance.",
                    Source.read("Ohio State University, The cost of mud to the beef cow: 14 against 8.5 Mcal")));
        }
        if (stress.percent() > MOST_THAT_CAN_BE_FED) {
            cautions.add(new Caution(
                    "So much more cannot be fed in a day: give what they clean up, more hay rather than more grain, and"
                            + " make up for it over the days that follow. Shelter and bedding do more.",
                    Source.read("Oklahoma State University, in Drovers: an increase of 110 % cannot be fed")));
        }
        return cautions;
    }

    /** Whose wind chill. */
    enum Table {
        NWS_2001,
        CATTLE;

        /** As interfaces write it; called by name. */
        public String id() {
            return this == NWS_2001 ? "nws-2001" : "cattle";
        }
    }

    record WindIn(
            @Key(Unit.CELSIUS) double temperature,
            @Key(Unit.KILOMETER_AN_HOUR) double wind,

            @Key(
                    words =
                            "nws-2001 is of a human face; cattle is of cattle in a winter coat, and is taken when not said.")
            @Nullable
            Table table) {}

    record Felt(@Key(Unit.FAHRENHEIT) double windChill) {}

    private static Answer<Felt> windChill(WindIn in) {
        WindChill chill = in.table == Table.NWS_2001
                ? new Nws2001WindChill(in.temperature, in.wind)
                : new CattleWindChill(in.temperature, in.wind);
        return Answer.of(new Felt(Unit.FAHRENHEIT.fromBase(chill.celsius())), chill);
    }

    record ReservesIn(
            @Key(value = Unit.KILOGRAM, words = "Shrunk, at score 5.")
            double bodyWeight,

            double conditionScore,
            double toConditionScore) {}

    record OnHerBack(
            @Key(Unit.MEGACALORIE) double energy,
            @Key(Unit.KILOGRAM) double weightChange) {}

    private static Answer<OnHerBack> reserves(ReservesIn in) {
        var reserves = new Reserves(in.bodyWeight, in.conditionScore, in.toConditionScore);
        return Answer.of(new OnHerBack(reserves.energy(), reserves.weightChange()), reserves);
    }

    record GroupIn(
            int head,

            @Key(value = Unit.KILOGRAM, words = "Dry matter per head per day.")
            double dmi) {}

    record HayIn(
            List<GroupIn> groups,
            double days,

            @Key(value = Unit.PERCENT, name = "dm") double dryMatter,

            @Key(value = Unit.PERCENT, words = "Of what is put out; 0 when not said.")
            OptionalDouble feedingLoss,

            @Key(value = Unit.PERCENT, words = "Of what is in the stack; 0 when not said.")
            OptionalDouble storageLoss,

            @Key(value = Unit.POUND, words = "One bale, as fed.")
            OptionalDouble baleWeight) {
        HayIn {
            if (groups.isEmpty()) {
                throw new Refused("groups", "none", "hay is needed for cattle", "Name at least one group.");
            }
            if (baleWeight.orElse(1) <= 0) {
                throw new Refused(
                        "baleWeight",
                        Double.toString(baleWeight.orElseThrow()),
                        "a bale weighs something",
                        "Weigh a few bales of the lot, as fed.");
            }
        }
    }

    record Hay(@Key(value = Unit.POUND, of = "dm") double eaten, double neededTonsAsFed, OptionalDouble bales) {}

    private static Answer<Hay> hayNeed(HayIn in) {
        double herd = Sent.each("groups", in.groups, group -> HayNeed.herd(group.head, group.dmi)).stream()
                .mapToDouble(Double::doubleValue)
                .sum();
        var need = new HayNeed(herd, in.days, in.dryMatter, in.feedingLoss.orElse(0), in.storageLoss.orElse(0));
        var bales = in.baleWeight.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(Unit.POUND.fromBase(need.needed()) / in.baleWeight.getAsDouble());
        return Answer.of(new Hay(Unit.POUND.fromBase(need.eaten()), Unit.TON.fromBase(need.needed()), bales), need);
    }
}
