package haywright.app.web.ranch;

import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.cattle.Coat;
import haywright.cattle.ColdSystem;
import haywright.ranch.RanchWeather;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How cold it gets here, as the ranch says it. */
public final class WeatherPages {
    private static final String PATH = "settings/weather";
    private static final String PAGE = "haywright/app/web/ranch/weather.jte";

    private WeatherPages() {}

    public record View(Form form, List<Option> coats, List<Option> systems, boolean isSaid) {}

    static void routes(Routes on) {
        on.get(
                PATH,
                page -> page.show(
                        PAGE,
                        view(
                                page,
                                page.form(
                                        PATH,
                                        () -> WeatherForm.known(
                                                page.ranch().settings().weather())))));
        on.post(PATH, WeatherPages::save);
        on.post(PATH + "/forget", WeatherPages::forget);
    }

    private static View view(Page page, Form form) {
        return new View(
                form,
                Option.of(Coat.class, WeatherPages::words),
                Option.of(ColdSystem.class, ColdSystem::words),
                page.ranch().settings().weather() != null);
    }

    private static void save(Page page) {
        var form = page.posted(PATH);
        var weather = WeatherForm.read(form);
        if (weather.isEmpty()) {
            page.reject(form, PAGE, view(page, form));
            return;
        }
        page.save(
                form,
                "How cold it gets here",
                ranch -> ranch.with(ranch.settings().with(weather.get())),
                "settings");
    }

    private static void forget(Page page) {
        page.save(
                page.posted(PATH + "/forget"),
                "Weather taken out",
                ranch -> ranch.with(ranch.settings().with((RanchWeather) null)),
                "settings");
    }

    private static String words(Coat coat) {
        return switch (coat) {
            case SUMMER -> "summer, under 0.2 in";
            case FALL -> "fall, 0.3 to 0.6 in";
            case WINTER -> "winter, 0.7 to 1.0 in";
            case HEAVY_WINTER -> "heavy winter, over 1.0 in";
        };
    }

    static List<RanchPages.Line> lines(@Nullable RanchWeather weather) {
        var lines = new ArrayList<RanchPages.Line>();
        if (weather == null) {
            lines.add(new RanchPages.Line("How cold it gets", "not said: needs are those of mild days"));
            return lines;
        }
        lines.add(new RanchPages.Line("Temperatures of", weather.place()));
        lines.add(new RanchPages.Line(
                "January", Show.fahrenheit(weather.normals().monthly().get(0)) + ", mean of the month"));
        lines.add(new RanchPages.Line("Wind", Show.quantity(weather.wind()) + ", mean of a day"));
        lines.add(new RanchPages.Line("Coat", words(weather.coat())));
        lines.add(new RanchPages.Line("Windbreak", weather.windbreak() ? "yes" : "no"));
        lines.add(new RanchPages.Line("Cold counted by", weather.coldSystem().words()));
        return lines;
    }
}
