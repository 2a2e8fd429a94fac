package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.app.exchange.weather.GhcnDaily;
import haywright.app.exchange.weather.GhcnDaily.Units;
import haywright.app.exchange.weather.WeatherFile;
import haywright.app.words.Show;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FoundPlace;
import haywright.weather.Climate;
import haywright.weather.Doubt;
import haywright.weather.KeptWinter;
import haywright.weather.MeanWinter;
import haywright.weather.Normals;
import haywright.weather.PlaceWeather;
import haywright.weather.StationWinters;
import haywright.weather.Winter;
import haywright.workings.Caution;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** How hard the winters of a place were, from its name or from a station's own record. */
final class WintersTopic {
    /** 18 °F, °C. */
    private static final double BASE = Unit.FAHRENHEIT.toBase(18);

    private static final double F_A_C = 1.8;
    private static final double KM_A_MILE = 1.609344;

    private WintersTopic() {}

    static final Topic<In, Out> TOPIC = new Topic<>(
            "winters",
            "How hard each winter was at a town or county, or by a station's record: November to March, day means.",
            In.class,
            Out.class,
            "{\"place\":\"Valentine, NE\"}",
            WintersTopic::winters);

    record In(
            @Key(words = "A town or county with its state: Valentine, NE.") @Nullable
            String place,

            @Key(
                    words =
                            "In place of a name: the text of a station's daily record, .dly or CSV of GHCN-Daily. To the command, the name of the file.")
            @Nullable
            String stationFile,

            @Key(words = "What a CSV with a heading is in; found out from its figures when not said.") @Nullable
            Units units,

            @Key(value = Unit.METER, words = "Of the place above the sea: picks a station of like height.")
            OptionalDouble height,

            @Key(
                    name = "warmer_by_f",
                    words = "How much milder the place is than the station, all year; negative where it is colder.")
            OptionalDouble warmerBy) {
        In {
            if ((place == null) == (stationFile == null)) {
                throw new Refused(
                        "place",
                        place == null ? "nothing" : place,
                        "winters are of a place or of a station's record",
                        "Give place or station_file, not both.");
            }
            if (place == null && (height.isPresent() || warmerBy.isPresent())) {
                throw new Refused(
                        "stationFile",
                        "a record",
                        "a record is taken as it is, without height or difference",
                        "Leave height and warmer_by_f out.");
            }
        }
    }

    record Out(
            @Key(words = "How the winters are known.") String from,
            @Key(Unit.FAHRENHEIT) double januaryMean,
            List<One> winters) {}

    record One(
            @Key(words = "1996-97; of a drawn one, its number.")
            String winter,

            @Key(name = "degree_days_below_18f") double degreeDays,
            @Key(Unit.FAHRENHEIT) double coldestWeek,

            @Key(words = "true for a winter that never was, drawn like those of the record; else not there.") @Nullable
            Boolean drawn) {}

    private static Answer<Out> winters(In in) {
        return in.stationFile == null ? byName(in) : byRecord(in);
    }

    private static Answer<Out> byName(In in) {
        var found = FoundPlace.of(
                in.place == null ? "" : in.place,
                in.height.isEmpty() ? null : Quantity.of(in.height.getAsDouble(), Unit.METER),
                in.warmerBy.orElse(0));
        var weather = found.weather();
        var cautions = new ArrayList<Caution>();
        if (weather.winters().isEmpty()) {
            cautions.add(new Caution(
                    "No station whose days are known is near enough to say how single winters were. Use the file of a station near the place.",
                    Climate.SOURCES.get(0)));
        } else {
            cautions.add(new Caution(
                    "These are estimates for %s. Of 32 stations left out and worked out this way half were within %s %% of the degree-days measured, 1 in 10 was off by more than %s %%. A station's own record is better."
                            .formatted(
                                    found.place(),
                                    Show.number(100 * Doubt.OF_A_PLACE.middle(), 0),
                                    Show.number(100 * Doubt.OF_A_PLACE.nineInTen(), 0)),
                    Climate.SOURCES.get(0)));
        }
        return answer(
                "nearest station %s, %s%s"
                        .formatted(
                                weather.station().place().words(),
                                miles(weather.distance()),
                                in.warmerBy.orElse(0) == 0
                                        ? ""
                                        : ", moved by %s °F".formatted(Show.significant(in.warmerBy.getAsDouble(), 4))),
                weather.monthly().get(0),
                weather.winters(),
                false,
                List.of(level(weather)),
                cautions);
    }

    private static String miles(double km) {
        long miles = Math.round(km / KM_A_MILE);
        return miles == 1 ? "1 mile" : miles + " miles";
    }

    private static Worked level(PlaceWeather weather) {
        return () -> List.of(Line.of(
                "Tjan",
                "Ts + w",
                weather.monthly().get(0),
                Unit.CELSIUS,
                Source.read(weather.station().source()),
                Input.typed("Ts", weather.station().monthly().get(0), Unit.CELSIUS),
                Input.typed("w", weather.warmer(), Unit.NONE)));
    }

    private static Answer<Out> byRecord(In in) {
        var read = read(in);
        var station = read.station();
        var kept = StationWinters.of(station);
        var cautions = new ArrayList<Caution>();
        if (kept.drawn()) {
            cautions.add(new Caution(
                    "Fewer than ten winters of the record are whole. These are drawn like its days; the hardest come too seldom among drawn ones.",
                    Source.read("Richardson 1981; Richardson and Wright 1984, WGEN")));
        }
        if (read.leftOut() > 0) {
            cautions.add(new Caution(
                    Show.count(read.leftOut(), "day") + " left out: their figures cannot be.", Source.ARITHMETIC));
        }
        var whole = station.winters();
        var means = kept.drawn()
                ? kept.winters().stream().map(KeptWinter::asMeans).toList()
                : whole.stream().map(Winter::means).toList();
        return answer(
                "the record of %s, %d to %d%s"
                        .formatted(
                                station.name().isBlank() ? "a station without a name" : station.name(),
                                station.first().getYear(),
                                station.last().getYear(),
                                kept.drawn() ? ": winters drawn like its days" : ""),
                Normals.of(station).monthly().get(0),
                means,
                kept.drawn(),
                List.of(),
                cautions);
    }

    private static GhcnDaily.Read read(In in) {
        var text = in.stationFile == null ? "" : in.stationFile;
        if (text.strip().lines().count() < 2) {
            throw new Refused(
                    "stationFile",
                    Show.count(text.strip().length(), "letter"),
                    "a record has a line for each day or month",
                    "To the command give the name of a file that is there; over HTTP send the text of the file.");
        }
        try {
            return WeatherFile.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), in.units);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Answer<Out> answer(
            String from,
            double january,
            List<MeanWinter> winters,
            boolean drawn,
            List<Worked> level,
            List<Caution> cautions) {
        var ones = winters.stream()
                .map(winter -> new One(
                        drawn ? "drawn " + winter.year() : winter.words(),
                        winter.degreeDaysUnder(BASE) * F_A_C,
                        Unit.FAHRENHEIT.fromBase(winter.coldestWeek()),
                        drawn ? true : null))
                .toList();
        var workings = new ArrayList<>(level);
        if (!ones.isEmpty()) {
            double sum = ones.stream().mapToDouble(One::degreeDays).sum();
            workings.add(() -> List.of(Line.of(
                    "DD",
                    "S/n",
                    sum / ones.size(),
                    Unit.NONE,
                    Source.ARITHMETIC,
                    Input.typed("S", sum, Unit.NONE),
                    Input.typed("n", ones.size(), Unit.NONE))));
        }
        return new Answer<>(
                new Out(from, Unit.FAHRENHEIT.fromBase(january), ones), !ones.isEmpty(), workings, cautions);
    }
}
