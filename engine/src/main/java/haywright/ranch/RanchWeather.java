package haywright.ranch;

import haywright.cattle.Coat;
import haywright.cattle.ColdSystem;
import haywright.cattle.Exposure;
import haywright.cattle.Hide;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.weather.Normals;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;

/**
 * The winter of this place as far as its monthly means say it, and how the cattle stand in it.
 *
 * @param place whose temperatures these are: the ranch's own, or the nearest station's
 * @param monthly mean temperature of January to December
 * @param wind mean of the winter's days, in the open
 * @param coat of the cattle in midwinter
 * @param windbreak whether they can stand behind one
 * @param coldSystem how the cold is counted
 */
public record RanchWeather(
        String place, List<Quantity> monthly, Quantity wind, Coat coat, boolean windbreak, ColdSystem coldSystem) {
    public RanchWeather {
        monthly = List.copyOf(monthly);
        monthly.forEach(mean -> Refused.unlessOfKind(Kind.TEMPERATURE, "monthly", mean));
        Refused.unlessOfKind(Kind.SPEED, "wind", wind);
        normals(monthly);
        exposure(monthly.get(0).base(), wind, coat, windbreak, coldSystem);
    }

    public Normals normals() {
        return normals(monthly);
    }

    /** Days that are equally likely in the week that begins on a date. */
    public List<Exposure> week(LocalDate begins) {
        return normals().week(begins).stream().map(this::day).toList();
    }

    /** @param mean temperature of the day, °C */
    public Exposure day(double mean) {
        return exposure(mean, wind, coat, windbreak, coldSystem);
    }

    private static Normals normals(List<Quantity> monthly) {
        return new Normals(monthly.stream().map(Quantity::base).toList(), Normals.USUAL_SPREAD);
    }

    private static Exposure exposure(double mean, Quantity wind, Coat coat, boolean windbreak, ColdSystem coldSystem) {
        return new Exposure(mean, wind.base(), coat, Hide.DRY, windbreak, coldSystem);
    }
}
