package haywright.app.web.ranch;

import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.form.Field;
import haywright.app.web.form.Fields;
import haywright.app.web.form.Part;
import haywright.app.words.Measures;
import haywright.cattle.cold.ColdSystem;
import haywright.quantity.Preset;
import haywright.quantity.Unit;
import haywright.ranch.FoundPlace;
import haywright.ranch.RanchWeather;
import haywright.ranch.Settings;
import haywright.weather.Places;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The form that asks where the ranch is, and what wind its cattle stand in. */
public final class PlaceForm {
    public static final Field TOWN = Field.text(
                    "town",
                    "Where is the ranch?",
                    "Nearest town or county and state: Valentine, NE or Cherry County, Nebraska. In Canada, a weather station and its"
                            + " province.")
            .needed("Enter the nearest town or county with its state.");
    private static final Field WARMER = Field.number(
            "warmer",
            "Colder or milder than that station in January, {°}",
            "−3 if your place is 3 {°} colder, 2 if 2 {°} milder. Shifts every day. Empty if not known.");
    private static final Field HEIGHT = Field.amount(
            "height",
            "Elevation",
            Unit.FOOT,
            "Hill country: picks a station near your elevation. Plains: leave empty.");

    /** Beside the place, once there is one: its country says which units are shown at first. */
    public static final Field UNITS = Field.choice(
                    "units",
                    "Units",
                    "What figures are shown in and what a number without its unit is read in. No ration changes.",
                    Option.of(Preset.class, Preset::words))
            .needed("");

    private static final String STAND = "Wind, shelter and coats";

    /** Of a ranch whose place nobody has named yet: the place, and the wind there. */
    public static final Fields<RanchWeather> ASKED = asked();

    /** Once it is named, all of it together: one button keeps whatever was typed. */
    private static final Fields<RanchWeather> NAMED =
            asked().section(STAND, WeatherForm.COAT, WeatherForm.HIDE, WeatherForm.COLD_SYSTEM);

    private static final Fields<RanchWeather> RECORD = recorded();

    private static final Fields<RanchWeather> MONTHS =
            recorded().section("The monthly means", WeatherForm.PLACE, new WeatherForm.Months());

    private static Fields<RanchWeather> asked() {
        return Fields.of(RanchWeather.class).section("", new Found(true), WeatherForm.WIND, WeatherForm.WINDBREAK);
    }

    private static Fields<RanchWeather> recorded() {
        return Fields.of(RanchWeather.class)
                .section("", new Found(false))
                .section(
                        STAND,
                        WeatherForm.WIND,
                        WeatherForm.WINDBREAK,
                        WeatherForm.COAT,
                        WeatherForm.HIDE,
                        WeatherForm.COLD_SYSTEM);
    }

    private PlaceForm() {}

    static Fields<RanchWeather> of(@Nullable RanchWeather weather) {
        return weather == null
                ? ASKED
                : weather.found() != null ? NAMED : weather.departures().isEmpty() ? MONTHS : RECORD;
    }

    static Map<String, String> known(Settings settings) {
        var weather = settings.weather();
        if (weather == null) {
            return Map.of();
        }
        var known = new LinkedHashMap<>(of(weather).known(weather));
        known.put(UNITS.name(), UNITS.typed(settings.measures()));
        return known;
    }

    /** The units chosen; as they were where the form had no such box. */
    static @Nullable Preset units(Form form, Settings before) {
        return form.isEmpty(UNITS.ask())
                ? before.preset()
                : form.choice(UNITS.ask(), Preset.class, "Choose the units.");
    }

    /** @param before the weather as it was; null where none was said */
    static Optional<RanchWeather> read(Form form, @Nullable RanchWeather before, LocalDate today) {
        var given = new LinkedHashMap<String, Object>();
        if (before == null || !form.isEmpty(TOWN.ask())) {
            given.put("place", "");
            given.put("monthly", List.of());
            given.put("departures", List.of());
        }
        if (before == null) {
            given.put("coldSystem", ColdSystem.USUAL);
        }
        return of(before)
                .read(form, given, before, today)
                .filter(read -> !form.hasProblems())
                .map(read -> read.found() == null ? read : read.at(read.found()));
    }

    /**
     * The place, how much colder it is than its station, and its height.
     *
     * @param needed whether there is nothing else to know the weather by
     */
    record Found(boolean needed) implements Part {
        @Override
        public String component() {
            return "found";
        }

        @Override
        public List<Field> fields() {
            return List.of(TOWN, WARMER, HEIGHT);
        }

        /** What differs from the nearest station is asked once there is one; of several places, which. */
        @Override
        public List<Field> fields(Form form) {
            var fields = new ArrayList<>(List.of(TOWN));
            var choices = choices(form);
            if (!choices.isEmpty()) {
                fields.add(which(
                        choices, Places.known().find(form.value(TOWN.ask())).andMore()));
            }
            if (!form.isEmpty(TOWN.ask())) {
                fields.addAll(List.of(WARMER, HEIGHT));
            }
            return fields;
        }

        private static Field which(List<Option> choices, String andMore) {
            return Field.choice(
                    "which",
                    "Choose the right one.",
                    andMore.isEmpty() ? "" : "Not listed? There are others: " + andMore + ".",
                    choices);
        }

        /** Names that what was typed may mean; empty where it is one place, or none that is known. */
        private static List<Option> choices(Form form) {
            var places = Places.known();
            var found = places.find(form.value(TOWN.ask()));
            return form.problem(TOWN.ask()).isEmpty() || found.places().size() == 1
                    ? List.of()
                    : places.choices(found).stream()
                            .map(name -> new Option(name, name))
                            .toList();
        }

        @Override
        public @Nullable Object read(Form form, Class<?> type, LocalDate today) {
            var typed = needed ? form.text(TOWN.ask(), TOWN.needed()) : form.text(TOWN.ask());
            var chosen = form.text(which(List.of(), "").ask());
            var height = form.maybeQuantity(HEIGHT.ask());
            var warmer = form.maybeNumber(WARMER.ask());
            if (form.hasProblems() || typed.isEmpty()) {
                return null;
            }
            askState(form, typed, chosen);
            try {
                var found = FoundPlace.of(
                        chosen.isEmpty() ? typed : chosen, height, warmer == null ? 0 : Measures.inFahrenheit(warmer));
                return new FoundPlace(typed, found.place(), found.height(), found.warmerByF());
            } catch (Refused refused) {
                refused.problems().forEach(p -> form.refuse(box(p.field()), p.value(), p.rule(), p.fix()));
                return null;
            }
        }

        /** The tables have not every state: the only one there may not be the one that is meant. */
        private static void askState(Form form, String typed, String chosen) {
            var found = Places.known().find(typed);
            if (chosen.isEmpty() && !found.saysState() && found.places().size() == 1) {
                form.doubt(
                        TOWN.ask(),
                        "state",
                        "No state entered. The only match is %s; the tables have only the northern states and Canada."
                                .formatted(Places.known().full(found.places().get(0))));
            }
        }

        private static String box(String field) {
            return switch (field) {
                case "warmerByF" -> WARMER.name();
                case "height" -> HEIGHT.name();
                default -> TOWN.name();
            };
        }

        @Override
        public void know(Map<String, String> known, @Nullable Object value) {
            if (value instanceof FoundPlace found) {
                known.put(TOWN.name(), found.place());
                known.put(
                        WARMER.name(),
                        found.warmerByF() == 0 ? "" : WARMER.typed(Measures.ofDegrees(found.warmerByF())));
                known.put(HEIGHT.name(), HEIGHT.typed(found.height()));
            }
        }
    }
}
