package haywright.app.web.ranch;

import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.form.Field;
import haywright.app.web.form.Fields;
import haywright.app.web.form.Part;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Hide;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.RanchWeather;
import java.time.LocalDate;
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

/** The form of how the cattle stand in the cold, and of monthly means where neither a place nor a record has them. */
public final class WeatherForm {
    public static final Field WIND = Field.amount(
            "wind",
            "Wind on a usual winter day",
            Unit.MILE_AN_HOUR,
            "Daily average where the cattle are, not gusts. {usual wind} is usual behind hills; more on the open plains."
                    + " Empty: {usual wind}, and every figure tells you.");
    public static final Field WINDBREAK = Field.choice(
                    "windbreak",
                    "Do they have a windbreak?",
                    "Trees, a draw or boards. The rule of thumb halves the cost of cold; in the heat balance three"
                            + " tenths of the wind reaches them.",
                    List.of(
                            new Option("yes", "Yes"),
                            new Option("no", "No"),
                            new Option("", "Not known: counted as none")))
            .needed("");
    static final Field PLACE = Field.text(
                    "place", "Whose temperatures these are", "Your own, or the nearest station’s.")
            .needed("Name the ranch or the station.");
    static final Field COAT = Field.pick(
            "coat",
            "Their coat in midwinter",
            "By hair depth. Empty: a heavy seasonal coat for dry cattle at score 5 or better; thin cattle"
                    + " and pairs at most a winter coat.",
            Option.of(Coat.class, WeatherForm::words),
            "Seasonal, by condition and milk");
    static final Field HIDE = Field.choice(
                    "hide",
                    "Usual state of their coats",
                    "Counts every day of the year. If only spring is wet, leave it dry: each group’s page shows what a"
                            + " wet day takes. The rule of thumb"
                            + " counts a coat as wet from the third on; the heat balance counts each. Bedding keeps them"
                            + " dry and warmer; no figure for that is published, so it is not counted.",
                    hides())
            .needed("");
    static final Field COLD_SYSTEM = Field.choice(
                    "coldSystem", "Figure cold by", "", Option.of(ColdSystem.class, ColdSystem::words))
            .needed("The rule of thumb is usual.");

    /** Beside a place by its name, whose own form has wind and windbreak. */
    private static final Fields<RanchWeather> BESIDE_A_PLACE =
            Fields.of(RanchWeather.class).section("", COAT, HIDE, COLD_SYSTEM);

    private static final Fields<RanchWeather> BESIDE_A_RECORD =
            Fields.of(RanchWeather.class).section("", WIND, WINDBREAK, COAT, HIDE, COLD_SYSTEM);

    private static final Fields<RanchWeather> WITH_MONTHS =
            Fields.of(RanchWeather.class).section("", PLACE, new Months(), WIND, WINDBREAK, COAT, HIDE, COLD_SYSTEM);

    private WeatherForm() {}

    static Fields<RanchWeather> of(@Nullable RanchWeather weather) {
        return weather == null
                ? WITH_MONTHS
                : weather.found() != null
                        ? BESIDE_A_PLACE
                        : weather.departures().isEmpty() ? WITH_MONTHS : BESIDE_A_RECORD;
    }

    static Map<String, String> known(@Nullable RanchWeather weather) {
        var known = new LinkedHashMap<String, String>();
        known.put(COLD_SYSTEM.name(), Form.id(ColdSystem.USUAL));
        if (weather != null) {
            known.putAll(of(weather).known(weather));
        }
        return known;
    }

    /** @param before the weather as it was; means that a record or a place gave are not typed, and stay */
    static Optional<RanchWeather> read(Form form, @Nullable RanchWeather before, LocalDate today) {
        var given = before == null ? Map.<String, Object>of("departures", List.of()) : Map.<String, Object>of();
        return of(before).read(form, given, before, today).filter(read -> !form.hasProblems());
    }

    /** Nobody has said it until they choose: a button for something else must not say it for them. */
    private static List<Option> hides() {
        var hides = new ArrayList<>(Option.of(Hide.class, WeatherForm::words));
        hides.add(new Option("", "Not known: counted as dry"));
        return hides;
    }

    static String words(Coat coat) {
        return switch (coat) {
            case SUMMER -> "summer, under 0.2 in";
            case FALL -> "fall, 0.3 to 0.6 in";
            case WINTER -> "winter, 0.7 to 1.0 in";
            case HEAVY_WINTER -> "heavy winter, over 1.0 in";
        };
    }

    static String words(Hide hide) {
        return switch (hide) {
            case DRY -> "nothing: dry and clean";
            case SOME_MUD -> "some mud, low on the body";
            case WET -> "wet through, or matted with mud";
            case COVERED -> "covered with wet snow or mud";
        };
    }

    static String title(int month) {
        return Month.of(month + 1).getDisplayName(TextStyle.FULL, Locale.ENGLISH);
    }

    /** The means of January to December. */
    record Months() implements Part {
        private static final List<Field> MONTHS = Arrays.stream(Month.values())
                .map(month -> Field.amount(
                                month.name().toLowerCase(Locale.ROOT), title(month.ordinal()), Unit.FAHRENHEIT, "")
                        .needed("The mean of the whole month, day and night."))
                .toList();

        /** °F: no place where cattle are wintered has its warmest month under it. */
        private static final double COOLEST_SUMMER = 45;

        @Override
        public String component() {
            return "monthly";
        }

        @Override
        public List<Field> fields() {
            return MONTHS;
        }

        @Override
        public boolean isRow() {
            return true;
        }

        @Override
        public Object read(Form form, Class<?> type, LocalDate today) {
            var monthly = new ArrayList<Quantity>();
            for (var month : MONTHS) {
                monthly.add(form.quantity(month.ask(), month.needed()));
            }
            double warmest = monthly.stream()
                    .mapToDouble(mean -> mean.in(Unit.FAHRENHEIT))
                    .max()
                    .orElse(0);
            if (!form.hasProblems() && warmest < COOLEST_SUMMER) {
                form.doubt(
                        MONTHS.get(Month.JULY.ordinal()).ask(),
                        "celsius",
                        Measures.say(
                                        "The warmest month is %s. If these are {other}, write the unit after each, as in {-6 C}")
                                .formatted(Show.temperature(Unit.FAHRENHEIT.toBase(warmest))));
            }
            return monthly;
        }

        @Override
        public void know(Map<String, String> known, @Nullable Object value) {
            if (value instanceof List<?> means) {
                for (int i = 0; i < means.size(); i++) {
                    known.put(MONTHS.get(i).name(), MONTHS.get(i).typed(means.get(i)));
                }
            }
        }
    }
}
