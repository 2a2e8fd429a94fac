package haywright.app.web.ranch;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Hide;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.RanchWeather;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The form of how cold it gets here. */
public final class WeatherForm {
    public static final Ask PLACE =
            Ask.text("place", "Whose temperatures these are", "The ranch’s own, or the nearest weather station’s.");
    public static final Ask WIND = Ask.amount(
            "wind",
            "Wind on a usual winter day",
            Unit.MILE_AN_HOUR,
            "Mean of the day where the cattle stand, not gusts.");
    public static final Ask COAT = Ask.choice(
            "coat",
            "Their coat in midwinter",
            "By the depth of the hair. Left open, dry cattle in score 5 or better have the heavy coat of the season, thin cattle"
                    + " and those in milk one class less.");
    public static final Ask WINDBREAK = Ask.choice(
            "windbreak",
            "They can stand behind a windbreak",
            "Trees, a draw or boards. By the rule of thumb it halves what the cold costs; by the heat balance three tenths of"
                    + " the wind reach them. Never both.");
    public static final Ask HIDE = Ask.choice(
            "hide",
            "What usually lies on their coats",
            "The rule of thumb counts a coat as wet from the third on; the heat balance counts each. Bedding keeps them"
                    + " dry and warmer; how much that saves is published nowhere we know, so it is not counted.");
    public static final Ask COLD_SYSTEM =
            Ask.choice("coldSystem", "Cold is counted by", "One or the other, never both for the same cold.");

    /** January to December. */
    public static final List<Ask> MONTHS = Arrays.stream(Month.values())
            .map(month -> new Ask(name(month), title(month), Unit.FAHRENHEIT, "", 5))
            .toList();

    /** °F: no place where cattle are wintered has its warmest month under it. */
    private static final double COOLEST_SUMMER = 45;

    private WeatherForm() {}

    private static String name(Month month) {
        return month.name().toLowerCase(Locale.ROOT);
    }

    private static String title(Month month) {
        return month.getDisplayName(TextStyle.FULL, Locale.ENGLISH);
    }

    static Map<String, String> known(@Nullable RanchWeather weather) {
        var known = new LinkedHashMap<String, String>();
        if (weather == null) {
            known.put(COLD_SYSTEM.name(), Form.id(ColdSystem.USUAL));
            known.put(HIDE.name(), Form.id(Hide.DRY));
            return known;
        }
        known.put(PLACE.name(), weather.place());
        known.put(HIDE.name(), Form.id(weather.coats()));
        for (int i = 0; i < weather.monthly().size(); i++) {
            known.put(
                    MONTHS.get(i).name(), MONTHS.get(i).typed(weather.monthly().get(i)));
        }
        var wind = weather.wind();
        known.put(WIND.name(), wind == null ? "" : WIND.typed(wind));
        var coat = weather.coat();
        known.put(COAT.name(), coat == null ? "" : Form.id(coat));
        known.put(WINDBREAK.name(), weather.windbreak() ? "yes" : "");
        known.put(COLD_SYSTEM.name(), Form.id(weather.coldSystem()));
        return known;
    }

    /** @param before the weather as it was; means that a record or a place gave are not typed, and stay */
    static Optional<RanchWeather> read(Form form, @Nullable RanchWeather before) {
        var recorded = before == null || before.departures().isEmpty() && before.found() == null ? null : before;
        var place = recorded != null ? recorded.place() : form.text(PLACE, "Name the ranch or the station.");
        var monthly = recorded != null ? recorded.monthly() : monthly(form);
        var wind = form.quantity(WIND, "8 mph is usual behind hills; the open plains have more.");
        var coat = form.isEmpty(COAT) ? null : form.choice(COAT, Coat.class, "How deep is their hair?");
        boolean windbreak = form.isTicked(WINDBREAK);
        var hide = form.choice(HIDE, Hide.class, "Dry, if nothing else is usual.");
        var coldSystem = form.choice(COLD_SYSTEM, ColdSystem.class, "The rule of thumb, if nothing else is wanted.");
        return form.build(() -> new RanchWeather(
                place,
                monthly,
                wind,
                coat,
                windbreak,
                coldSystem,
                hide,
                recorded == null ? List.of() : recorded.departures(),
                recorded == null ? null : recorded.found()));
    }

    private static List<Quantity> monthly(Form form) {
        var monthly = new ArrayList<Quantity>();
        for (var month : MONTHS) {
            monthly.add(form.quantity(month, "The mean of the whole month, day and night."));
        }
        double warmest = monthly.stream()
                .mapToDouble(mean -> mean.in(Unit.FAHRENHEIT))
                .max()
                .orElse(0);
        if (!form.hasProblems() && warmest < COOLEST_SUMMER) {
            form.doubt(
                    MONTHS.get(Month.JULY.ordinal()),
                    "celsius",
                    "The warmest month has %.0f °F. Are these °C? Then write the unit behind each, as in -6 C"
                            .formatted(warmest));
        }
        return monthly;
    }
}
