package haywright.app.web.ranch;

import haywright.app.exchange.weather.GhcnDaily;
import haywright.app.exchange.weather.WeatherFile;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.web.form.Fields;
import haywright.app.web.form.JsonForm;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.ranch.RanchWeather;
import haywright.weather.Station;
import haywright.weather.StationWinters;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Winter weather: the name of the place, a station's record, or monthly means as the ranch says them. */
public final class WeatherPages {
    private static final String PATH = "settings/weather";
    private static final String RECORD = PATH + "/record";
    private static final String PLACE = PATH + "/place";

    /** Pages that ask for the place, and are gone back to. */
    private static final Pattern ASKING = Pattern.compile("(bench|letter|herd)(/[0-9a-f-]{36})?");

    private static final String PAGE = "haywright/app/web/ranch/weather.jte";

    private WeatherPages() {}

    /**
     * @param place the form of where the ranch is
     * @param upload the form of a station's file
     * @param months mean of each month, in words; empty where they are entered the form
     * @param kept what is kept of a record, in words; empty where none was imported
     * @param found what was understood of the place; empty where none was named
     * @param then the page that asked for the place; empty for this one
     */
    public record View(
            Form form,
            Form place,
            Form upload,
            Fields<RanchWeather> placeFields,
            Fields<RanchWeather> standFields,
            List<RanchPages.Line> months,
            List<RanchPages.Line> kept,
            List<RanchPages.Line> found,
            Optional<WintersView> winters,
            String then,
            boolean isSaid) {
        public Form open() {
            return place.hasProblems() ? place : upload.hasProblems() ? upload : form;
        }

        /** Whether the months are asked for: nothing was said yet. What was said is one form with the place. */
        public boolean asksMonths() {
            return !isSaid;
        }

        public List<Option> units() {
            return RecordForm.units();
        }
    }

    static void routes(Routes on) {
        on.get(PATH, page -> page.show(PAGE, view(page, form(page), place(page), none())));
        on.post(PATH, WeatherPages::save);
        on.postBeside(PLACE, WeatherPages::savePlace);
        on.post(RECORD, WeatherPages::record);
        on.post(PATH + "/forget", WeatherPages::forget);
    }

    private static Form form(Page page) {
        return page.form(PATH, () -> WeatherForm.known(page.ranch().settings().weather()));
    }

    private static Form place(Page page) {
        return page.form(PLACE, () -> PlaceForm.known(page.ranch().settings()));
    }

    private static Form none() {
        return Form.of(RECORD, Map.of());
    }

    private static String then(Page page) {
        var then = page.http().formParam("then");
        return then != null && ASKING.matcher(then).matches() ? then : "";
    }

    private static View view(Page page, Form form, Form place, Form upload) {
        var weather = page.ranch().settings().weather();
        var winters = page.ranch().winters();
        var found = weather == null ? null : weather.found();
        return new View(
                form,
                place,
                upload,
                PlaceForm.of(weather),
                WeatherForm.of(weather),
                weather == null || weather.departures().isEmpty() ? List.of() : months(weather),
                weather == null || winters == null ? List.of() : kept(winters),
                found == null ? List.of() : WintersView.lines(found),
                WintersView.of(page.ranch()),
                then(page),
                weather != null);
    }

    private static List<RanchPages.Line> months(RanchWeather weather) {
        var lines = new ArrayList<RanchPages.Line>();
        for (var mean : weather.monthly()) {
            lines.add(new RanchPages.Line(WeatherForm.title(lines.size()), Show.quantity(mean)));
        }
        return lines;
    }

    private static void save(Page page) {
        var form = page.posted(PATH);
        var weather = WeatherForm.read(form, page.ranch().settings().weather(), page.today());
        if (weather.isEmpty()) {
            page.reject(form, PAGE, view(page, form, place(page), none()));
            return;
        }
        page.save(form, "Winter weather", ranch -> ranch.with(ranch.settings().with(weather.get())), "settings");
    }

    private static void savePlace(Page page) {
        var before = page.ranch().settings().weather();
        var known = PlaceForm.known(page.ranch().settings());
        var form = page.http().isJson()
                ? JsonForm.posted(page, PLACE, PlaceForm.of(before), known)
                : page.posted(PLACE, typed(page, known));
        var weather = PlaceForm.read(form, before, page.today());
        var units = PlaceForm.units(form, page.ranch().settings());
        if (weather.isEmpty() || form.hasProblems()) {
            page.reject(form, PAGE, view(page, form(page), form, none()));
            return;
        }
        var then = then(page);
        page.save(
                form,
                weather.get().found() == null
                        ? "Winter weather"
                        : "The ranch is at " + weather.get().place(),
                ranch -> {
                    var placed = weather.get().found() == null
                            ? ranch.with(ranch.settings().with(weather.get()))
                            : ranch.at(weather.get());
                    return units == null || units == placed.settings().measures()
                            ? placed
                            : placed.with(placed.settings().withPreset(units));
                },
                then.isEmpty() ? PATH : then);
    }

    /** A box that a form does not show, as where the bench asks, stays as it was. */
    private static Map<String, List<String>> typed(Page page, Map<String, String> known) {
        var typed = new LinkedHashMap<>(page.http().formParamMap());
        known.forEach((name, value) -> typed.putIfAbsent(name, List.of(value)));
        return typed;
    }

    private static void record(Page page) throws IOException {
        var upload = page.posted(RECORD);
        upload.text(RecordForm.FILE);
        upload.text(RecordForm.UNITS);
        var called = upload.text(RecordForm.CALLED);
        var file = page.http().uploadedFile(RecordForm.FILE.name());
        var units = upload.isEmpty(RecordForm.UNITS)
                ? null
                : upload.choice(RecordForm.UNITS, GhcnDaily.Units.class, "Choose the right one.");
        if (file == null || file.size() == 0) {
            upload.refuse(
                    RecordForm.FILE.name(),
                    file == null ? "" : file.filename(),
                    file == null ? "no file was chosen" : "the file is empty",
                    "Choose the file from the weather service.");
        } else if (!upload.hasProblems()) {
            try (var in = file.content()) {
                var read = WeatherFile.read(in, units);
                var own = read.station().name();
                var name = !called.isEmpty() ? called : own.isBlank() ? file.filename() : own;
                var station = new Station(name, read.station().days());
                take(page, upload, station, "Weather of " + station.name() + " imported" + left(read.leftOut()));
                return;
            } catch (Refused refused) {
                refused.problems().forEach(p -> refuse(upload, p));
            }
        }
        page.http().status(422);
        page.show(PAGE, view(page, form(page), place(page), upload));
    }

    private static String left(int days) {
        return days == 0 ? "" : ", without %s that can’t be read".formatted(Show.count(days, "day"));
    }

    /** Whatever is wrong with the file is beside it. */
    private static void refuse(Form upload, Problem problem) {
        boolean asksUnits = problem.field().equals(RecordForm.UNITS.name());
        boolean isPlace = problem.field().startsWith("line ");
        upload.refuse(
                asksUnits ? RecordForm.UNITS.name() : RecordForm.FILE.name(),
                isPlace ? problem.field() + ": " + problem.value() : problem.value(),
                problem.rule(),
                problem.fix());
    }

    private static void take(Page page, Form form, Station station, String words) {
        var weather = RecordForm.weather(station, page.ranch().settings().weather());
        var winters = StationWinters.of(station);
        page.save(form, words, ranch -> ranch.withWeather(weather, winters), PATH);
    }

    private static void forget(Page page) {
        page.save(page.posted(PATH + "/forget"), "Weather deleted", ranch -> ranch.withWeather(null, null), "settings");
    }

    /** What is kept of a record, and by which rule its gaps were filled. */
    private static List<RanchPages.Line> kept(StationWinters winters) {
        var lines = new ArrayList<RanchPages.Line>();
        lines.add(new RanchPages.Line("Station", winters.station()));
        lines.add(new RanchPages.Line(
                "Its record",
                "%s to %s, %s missing"
                        .formatted(
                                Show.date(winters.first()),
                                Show.date(winters.last()),
                                winters.missing() == 0 ? "none" : Show.count(winters.missing(), "day"))));
        lines.add(new RanchPages.Line("Winters", winters(winters)));
        if (!winters.leftOut().isEmpty()) {
            lines.add(new RanchPages.Line(
                    "Not whole, not used",
                    "%s: %s"
                            .formatted(
                                    Show.count(winters.leftOut().size(), "winter"),
                                    winters.leftOut().stream()
                                            .map(String::valueOf)
                                            .collect(Collectors.joining(", ")))));
        }
        boolean wind = winters.winters().stream().anyMatch(w -> !w.winds().isEmpty());
        lines.add(new RanchPages.Line(
                "Wind",
                wind ? "daily, where a winter has all its days" : "not in the record: the figure below is used"));
        return lines;
    }

    private static String winters(StationWinters winters) {
        var all = winters.winters();
        if (winters.drawn()) {
            return "%d simulated from the record, since fewer than ten are whole; hard ones come up too seldom"
                    .formatted(all.size());
        }
        return all.isEmpty()
                ? "none is whole"
                : "the latest %d whole ones, to spring %d"
                        .formatted(all.size(), all.get(all.size() - 1).year());
    }

    static List<RanchPages.Line> lines(@Nullable RanchWeather weather) {
        var lines = new ArrayList<RanchPages.Line>();
        if (weather == null) {
            lines.add(new RanchPages.Line("Winter weather", "not entered: needs are for mild days"));
            return lines;
        }
        lines.add(new RanchPages.Line("Temperatures of", weather.place()));
        var found = weather.found();
        if (found != null) {
            var at = found.weather();
            lines.add(new RanchPages.Line(
                    "Nearest listed station",
                    at.station().place().words() + ", " + WintersView.away(at.distance()) + " away"));
        }
        lines.add(new RanchPages.Line(
                "January", Show.temperature(weather.normals().monthly().get(0)) + ", mean of the month"));
        lines.add(new RanchPages.Line(
                "Wind", Show.quantity(weather.blows()) + (weather.wind() == null ? ": assumed" : ", mean of a day")));
        var coat = weather.coat();
        lines.add(new RanchPages.Line(
                "Coat", coat == null ? "seasonal, by condition and milk" : WeatherForm.words(coat)));
        lines.add(new RanchPages.Line("On their coats", WeatherForm.words(weather.coats())));
        lines.add(new RanchPages.Line(
                "Windbreak",
                weather.windbreak() == null ? "not entered: none counted" : weather.windbreak() ? "yes" : "no"));
        lines.add(new RanchPages.Line(
                "Cold figured by", Measures.say(weather.coldSystem().words())));
        return lines;
    }
}
