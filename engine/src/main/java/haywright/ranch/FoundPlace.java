package haywright.ranch;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.weather.Climate;
import haywright.weather.PlaceWeather;
import haywright.weather.Places;
import haywright.workings.Refused;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Where a ranch lies, by a name that was looked up. Its months and winters are worked out from it each time
 * ({@link Climate}) and are not kept.
 *
 * @param typed as somebody typed it
 * @param place the full name of what was found: {@code Valentine, NE}; it finds one place again
 * @param height of the ranch above the sea; null where it was not said
 * @param warmerByF by how many °F it is milder than the nearest listed station, −20 to 20; negative where it is colder
 */
public record FoundPlace(
        String typed, String place, @Nullable Quantity height, double warmerByF) {
    private static final double MOST_WARMER = 20;
    private static final double LOWEST_M = -100;
    private static final double HIGHEST_M = 4500;
    private static final double F_A_C = 1.8;
    /** Postal letters of Canada's provinces and territories. */
    private static final Set<String> PROVINCES =
            Set.of("AB", "BC", "MB", "NB", "NL", "NS", "NT", "NU", "ON", "PE", "QC", "SK", "YT");

    public FoundPlace {
        if (!(Math.abs(warmerByF) <= MOST_WARMER)) {
            throw new Refused(
                    "warmerByF",
                    warmerByF + " °F",
                    "a place is at most 20 °F (11 °C) colder or milder than the nearest station",
                    "Enter the difference, not the temperature.");
        }
        if (height != null) {
            Refused.unlessOfKind(Kind.LENGTH, "height", height);
            if (!(height.base() >= LOWEST_M && height.base() <= HIGHEST_M)) {
                throw new Refused(
                        "height",
                        height.asTyped(),
                        "cattle winter between sea level and 14,000 ft",
                        "Check feet or meters.");
            }
        }
        Places.known().one("place", place);
    }

    /** Of what somebody typed. */
    public static FoundPlace of(String typed, @Nullable Quantity height, double warmerByF) {
        var places = Places.known();
        return new FoundPlace(typed, places.full(places.one("place", typed)), height, warmerByF);
    }

    /** Whether it lies in a province or territory. */
    public boolean isInCanada() {
        return PROVINCES.contains(Places.known().one("place", place).state());
    }

    public PlaceWeather weather() {
        return Climate.known()
                .at(
                        Places.known().one("place", place),
                        height == null ? OptionalDouble.empty() : OptionalDouble.of(height.in(Unit.METER)),
                        warmerByF / F_A_C);
    }
}
