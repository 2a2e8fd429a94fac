package haywright.app.web.ranch;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.words.Show;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FoundPlace;
import haywright.ranch.RanchWeather;
import haywright.weather.Places;
import haywright.workings.Refused;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The form that asks where the ranch is. */
public final class PlaceForm {
    public static final Ask TOWN = Ask.text(
            "town",
            "Where is the ranch?",
            "The nearest town, or the county, with its state: Valentine, NE or Cherry County, Nebraska.");
    public static final Ask WHICH = Ask.choice("which", "Which of these is it?", "");
    public static final Ask WARMER = new Ask(
            "warmer",
            "Colder or milder than that station in January, in °F",
            Unit.NONE,
            "−3 where your place is 3 °F colder, 2 where it is 2 °F milder. Leave empty if you don’t know. Every day is moved by as much.",
            6);
    public static final Ask HEIGHT = Ask.amount(
            "height",
            "Height above sea level",
            Unit.FOOT,
            "In hilly country it picks a station of like height. Leave empty on the plains.");

    private PlaceForm() {}

    static Map<String, String> known(@Nullable RanchWeather weather) {
        var known = new LinkedHashMap<String, String>();
        var found = weather == null ? null : weather.found();
        if (found != null) {
            known.put(TOWN.name(), found.place());
            known.put(WARMER.name(), found.warmerByF() == 0 ? "" : Show.significant(found.warmerByF(), 4));
            known.put(HEIGHT.name(), found.height() == null ? "" : HEIGHT.typed(found.height()));
        }
        return known;
    }

    /** What was chosen of several, else what was typed. */
    private static String asked(Form form) {
        var chosen = form.value(WHICH).strip();
        return chosen.isEmpty() ? form.value(TOWN).strip() : chosen;
    }

    static Optional<FoundPlace> read(Form form) {
        var typed = form.text(TOWN, "Enter the nearest town, or the county, with its state.");
        form.text(WHICH);
        var height = form.maybeQuantity(HEIGHT);
        var warmer = form.maybeNumber(WARMER);
        if (form.hasProblems()) {
            return Optional.empty();
        }
        try {
            var asked = asked(form);
            var found = FoundPlace.of(asked, height, warmer == null ? 0 : warmer);
            return Optional.of(new FoundPlace(typed, found.place(), found.height(), found.warmerByF()));
        } catch (Refused refused) {
            refused.problems().forEach(p -> form.refuse(box(p.field()), p.value(), p.rule(), p.fix()));
            return Optional.empty();
        }
    }

    private static String box(String field) {
        return switch (field) {
            case "warmerByF" -> WARMER.name();
            case "height" -> HEIGHT.name();
            default -> TOWN.name();
        };
    }

    /** Names that what was typed may mean; empty where it is one place, or none that is known. */
    static List<Option> choices(Form form) {
        var places = Places.known();
        var found = places.find(form.value(TOWN));
        return form.problem(TOWN).isEmpty() || found.places().size() == 1
                ? List.of()
                : places.choices(found).stream()
                        .map(name -> new Option(name, name))
                        .toList();
    }

    /** Stand and coat as they were said; where nothing was, the usual. */
    static RanchWeather weather(FoundPlace found, @Nullable RanchWeather before) {
        return before == null
                ? RecordForm.usual(
                                found.place(),
                                found.weather().normals().monthly().stream()
                                        .map(mean -> Quantity.of(mean, Unit.CELSIUS))
                                        .toList())
                        .at(found)
                : before.at(found);
    }
}
