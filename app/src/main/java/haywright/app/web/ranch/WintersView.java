package haywright.app.web.ranch;

import haywright.app.report.picture.WintersPicture;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.quantity.Unit;
import haywright.ranch.FoundPlace;
import haywright.ranch.Ranch;
import haywright.weather.Doubt;
import haywright.weather.MeanWinter;
import haywright.weather.PlaceWeather;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The winters that a ranch counts with, one by one.
 *
 * @param rows the latest first
 */
public record WintersView(WintersPicture picture, List<Row> rows) {
    public record Row(String winter, String degreeDays, String coldestWeek) {}

    private static final double F_A_C = 1.8;

    /** Under a mile the two are one place. */
    private static final double KM_A_MILE = 1.609344;

    private static final double MOST_APART_F = 3;

    /** Empty where none is known, and of drawn ones, which are no winters that were. */
    static Optional<WintersView> of(Ranch ranch) {
        var weather = ranch.settings().weather();
        var kept = ranch.winters();
        var winters = ranch.winterMeans();
        if (weather == null || winters.isEmpty() || kept != null && kept.drawn()) {
            return Optional.empty();
        }
        var rows = new ArrayList<Row>();
        for (var winter : winters) {
            rows.add(
                    0,
                    new Row(
                            winter.words(),
                            Show.number(WintersPicture.degreeDays(winter), 0),
                            Show.temperature(winter.coldestWeek())));
        }
        return Optional.of(new WintersView(new WintersPicture(weather.place(), winters), rows));
    }

    /** What was understood of a place, and how far to trust what comes of it. */
    static List<RanchPages.Line> lines(FoundPlace found) {
        var weather = found.weather();
        var lines = new ArrayList<RanchPages.Line>();
        lines.add(new RanchPages.Line(
                "Place",
                found.typed().equals(found.place())
                        ? found.place()
                        : "%s (you entered “%s”)".formatted(found.place(), found.typed())));
        lines.add(new RanchPages.Line("Nearest listed station", station(weather) + picked(found)));
        lines.add(new RanchPages.Line("January", january(found, weather)));
        weather.countyJanuary().map(mean -> county(weather, mean)).ifPresent(lines::add);
        lines.add(new RanchPages.Line("Winters", winters(weather)));
        if (!weather.winters().isEmpty()) {
            lines.add(new RanchPages.Line("Coldest week", coldest(weather.winters())));
            lines.add(new RanchPages.Line("Accuracy", sure()));
        }
        return lines;
    }

    /** {@code 12 miles}; {@code under 1 mile}. */
    static String away(double km) {
        if (Measures.temperature() == Unit.CELSIUS) {
            return km < 1 ? "under 1 km" : Show.number(km, 0) + " km";
        }
        long miles = Math.round(km / KM_A_MILE);
        return miles < 1 ? "under 1 mile" : Show.count(miles, "mile");
    }

    private static String station(PlaceWeather weather) {
        return "%s, %s away%s. Its months, %s, set the cold here."
                .formatted(
                        weather.station().place().words(),
                        away(weather.distance()),
                        weather.station().place().height().isEmpty()
                                ? ""
                                : ", at %s ft"
                                        .formatted(Show.number(
                                                Unit.FOOT.fromBase(weather.station()
                                                        .place()
                                                        .height()
                                                        .getAsDouble()),
                                                0)),
                        weather.station().source());
    }

    /** Heights of towns are in no table here, so a valley may be given the station of the mountain beside it. */
    private static String picked(FoundPlace found) {
        return found.height() == null
                ? " Picked by distance; in hill country enter your elevation below."
                : " Picked by distance and elevation.";
    }

    private static String january(FoundPlace found, PlaceWeather weather) {
        var mean = Show.temperature(weather.monthly().get(0));
        if (found.warmerByF() == 0) {
            return mean + ", mean of the month";
        }
        return "%s, mean of the month: %s %s %s than the station, as you entered"
                .formatted(
                        mean,
                        Show.significant(Measures.ofDegrees(Math.abs(found.warmerByF())), 3),
                        Measures.degree(),
                        found.warmerByF() < 0 ? "colder" : "milder");
    }

    private static RanchPages.Line county(PlaceWeather weather, double mean) {
        double apart = F_A_C * (mean - weather.monthly().get(0));
        return new RanchPages.Line(
                "The whole county",
                Show.temperature(mean)
                        + " in January"
                        + (Math.abs(apart) < MOST_APART_F
                                ? ""
                                : ", %s %s %s. Enter the difference below if your place is nearer to that."
                                        .formatted(
                                                Show.number(Measures.ofDegrees(Math.abs(apart)), 0),
                                                Measures.degree(),
                                                apart < 0 ? "colder" : "milder")));
    }

    private static String winters(PlaceWeather weather) {
        var winters = weather.winters();
        return winters.isEmpty()
                ? "none: no daily station is near enough. Needs are for the usual cold."
                : "%d, %s to %s, estimated: each month as cold as this part of the state was, days as at %s, %s away"
                        .formatted(
                                winters.size(),
                                winters.get(0).words(),
                                winters.get(winters.size() - 1).words(),
                                weather.shape()
                                        .map(shape -> shape.place().words())
                                        .orElse(""),
                                weather.shape()
                                        .map(shape -> away(weather.place().distance(shape.place())))
                                        .orElse(""));
    }

    private static String coldest(List<MeanWinter> winters) {
        var sorted = winters.stream()
                .sorted(Comparator.comparingDouble(MeanWinter::coldestWeek))
                .toList();
        return "%s in the middle winter, %s in %s"
                .formatted(
                        Show.temperature(WintersPicture.middle(sorted, MeanWinter::coldestWeek)),
                        Show.temperature(sorted.get(0).coldestWeek()),
                        sorted.get(0).words());
    }

    /** The error of the whole, as it was found on stations left out. */
    static String sure() {
        var doubt = Doubt.OF_A_PLACE;
        return "Tested on 32 other stations: half were within %s %% of the measured cold (degree-days below %s), 1 in 10 off by more than %s %%. It tells hard winters well; check how cold your own place is."
                .formatted(
                        Show.number(100 * doubt.middle(), 0),
                        Show.temperature(WintersPicture.BASE),
                        Show.number(100 * doubt.nineInTen(), 0));
    }
}
