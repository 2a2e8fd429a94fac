package haywright.app.web.ranch;

import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.form.Field;
import haywright.app.web.form.Fields;
import haywright.app.web.form.Part;
import haywright.cattle.cold.ColdSystem;
import haywright.quantity.Unit;
import haywright.ranch.FoundPlace;
import haywright.ranch.RanchWeather;
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
                    "The nearest town, or the county, with its state: Valentine, NE or Cherry County, Nebraska. In Canada, a weather station and its"
                            + " province: no towns are listed there.")
            .needed("Enter the nearest town, or the county, with its state.");
    private static final Field WARMER = Field.number(
            "warmer",
            "Colder or milder than that station in January, in °F",
            "−3 where your place is 3 °F colder, 2 where it is 2 °F milder. Leave empty if you don’t know. Every day is moved by as much.");
    private static final Field HEIGHT = Field.amount(
            "height",
            "Height above sea level",
            Unit.FOOT,
            "In hilly country it picks a station of like height. Leave empty on the plains.");

    /** Where no record has the wind: the place, and what they stand in. */
    public static final Fields<RanchWeather> ASKED =
            Fields.of(RanchWeather.class).section("", new Found(), WeatherForm.WIND, WeatherForm.WINDBREAK);

    /** Where the wind was said beside a record or typed months: the place alone. */
    static final Fields<RanchWeather> PLACE = Fields.of(RanchWeather.class).section("", new Found());

    private PlaceForm() {}

    static Fields<RanchWeather> of(@Nullable RanchWeather weather) {
        return weather == null || weather.found() != null ? ASKED : PLACE;
    }

    static Map<String, String> known(@Nullable RanchWeather weather) {
        return weather == null ? Map.of() : of(weather).known(weather);
    }

    /** @param before the weather as it was; null where none was said */
    static Optional<RanchWeather> read(Form form, @Nullable RanchWeather before, LocalDate today) {
        var given = new LinkedHashMap<String, Object>();
        given.put("place", "");
        given.put("monthly", List.of());
        given.put("departures", List.of());
        given.put("coldSystem", before == null ? ColdSystem.USUAL : before.coldSystem());
        return of(before)
                .read(form, given, before, today)
                .filter(read -> !form.hasProblems())
                .map(read -> read.found() == null ? read : read.at(read.found()));
    }

    /** The place, how much colder it is than its station, and its height. */
    record Found() implements Part {
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
                fields.add(which(choices));
            }
            if (!form.isEmpty(TOWN.ask())) {
                fields.addAll(List.of(WARMER, HEIGHT));
            }
            return fields;
        }

        private static Field which(List<Option> choices) {
            return Field.choice("which", "Which of these is it?", "", choices);
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
            var typed = form.text(TOWN.ask(), TOWN.needed());
            var chosen = form.text(which(List.of()).ask());
            var height = form.maybeQuantity(HEIGHT.ask());
            var warmer = form.maybeNumber(WARMER.ask());
            if (form.hasProblems()) {
                return null;
            }
            try {
                var found = FoundPlace.of(chosen.isEmpty() ? typed : chosen, height, warmer == null ? 0 : warmer);
                return new FoundPlace(typed, found.place(), found.height(), found.warmerByF());
            } catch (Refused refused) {
                refused.problems().forEach(p -> form.refuse(box(p.field()), p.value(), p.rule(), p.fix()));
                return null;
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
                known.put(WARMER.name(), found.warmerByF() == 0 ? "" : WARMER.typed(found.warmerByF()));
                known.put(HEIGHT.name(), HEIGHT.typed(found.height()));
            }
        }
    }
}
