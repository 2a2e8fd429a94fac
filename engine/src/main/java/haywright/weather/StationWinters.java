package haywright.weather;

import haywright.chance.Draws;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The winters of a station's record that a ranch keeps: the latest thirty that are whole. Ten or more are kept as they
 * were. Where fewer are whole, but the record has ten years of days, thirty are drawn like them by {@link WeatherGenerator},
 * and marked; where it has not, the few that there are stand.
 *
 * @param station its name
 * @param first day of its record
 * @param last day of its record
 * @param missing days between them that it has not
 * @param leftOut winters, by the year of their spring, that are not whole
 * @param drawn whether these are drawn ones
 * @param winters the latest last
 */
public record StationWinters(
        String station,
        LocalDate first,
        LocalDate last,
        int missing,
        List<Integer> leftOut,
        boolean drawn,
        List<KeptWinter> winters) {
    /** Years of a climate normal. */
    static final int MOST = 30;

    /** One winter in ten is as far as these can speak: the hardest of ten real ones says more than drawn ones do. */
    public static final int ENOUGH = 10;

    private static final long SEED = 1;

    public StationWinters {
        leftOut = List.copyOf(leftOut);
        winters = List.copyOf(winters);
        if (winters.size() > MOST) {
            throw new Refused(
                    "winters", winters.size() + " winters", "thirty are kept", "Import the station’s file again.");
        }
    }

    public static StationWinters of(Station station) {
        var real = station.winters();
        boolean drawn = real.size() < ENOUGH && WeatherGenerator.canFit(station);
        return new StationWinters(
                station.name(),
                station.first(),
                station.last(),
                station.gaps().stream().mapToInt(gap -> (int) gap.days()).sum(),
                station.leftOut(),
                drawn,
                drawn
                        ? drawn(station)
                        : real.subList(Math.max(0, real.size() - MOST), real.size()).stream()
                                .map(KeptWinter::of)
                                .toList());
    }

    private static List<KeptWinter> drawn(Station station) {
        var generator = WeatherGenerator.fit(station);
        var draws = new Draws(SEED);
        return IntStream.rangeClosed(1, MOST)
                .mapToObj(number -> KeptWinter.of(generator.winter(2001, draws).numbered(number)))
                .toList();
    }
}
