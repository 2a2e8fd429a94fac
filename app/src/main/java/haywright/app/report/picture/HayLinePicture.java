package haywright.app.report.picture;

import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.quantity.Unit;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Optional;

/**
 * Hay on hand from today to grass: as it goes out now, and with the steps of the ladder taken.
 *
 * @param id names the picture on its page
 * @param tons on hand today
 * @param bought tons that a step buys
 * @param gone the day what is on hand is gone as fed now; empty where it lasts
 * @param left tons left at grass with the steps taken; below zero where it is short even so
 */
public record HayLinePicture(
        String id,
        LocalDate today,
        LocalDate grass,
        double tons,
        double bought,
        Optional<LocalDate> gone,
        double left) {
    private static final double LEFT = 6;
    private static final double RIGHT = 334;
    private static final double TOP = 34;
    private static final double BOTTOM = 150;

    private double x(LocalDate day) {
        double share = (double) ChronoUnit.DAYS.between(today, day) / ChronoUnit.DAYS.between(today, grass);
        return LEFT + (RIGHT - LEFT) * share;
    }

    private double y(double left) {
        return BOTTOM - (BOTTOM - TOP) * left / (tons + bought);
    }

    /** {@code 607 tons + 87 to buy}. */
    private String had() {
        var own = Show.tons(Unit.TON.toBase(tons));
        return bought < 1 ? own : own + " + " + Show.number(Measures.ofTons(bought), 0) + " to buy";
    }

    public String words() {
        return "%s on %s. %s. With these steps %s."
                .formatted(
                        had(),
                        Show.day(today),
                        gone.map(day -> "As fed now it is gone " + Show.day(day))
                                .orElse("As fed now it lasts until turnout"),
                        left < 0 ? "it still runs out before turnout" : "it reaches grass on " + Show.day(grass));
    }

    public String svg() {
        var drawn = new ArrayList<String>();
        drawn.add(Svg.line(LEFT, BOTTOM, RIGHT, BOTTOM));
        drawn.add(Svg.thick(RIGHT, TOP - 8, RIGHT, BOTTOM));
        drawn.add(Svg.text(RIGHT - 6, TOP - 14, "end", false, "grass, " + Show.day(grass)));
        drawn.add(Svg.text(LEFT, TOP - 14, "start", true, had()));
        gone.ifPresent(day -> {
            drawn.add(Svg.dashed(LEFT, y(tons), x(day), BOTTOM));
            drawn.add(Svg.text(
                    Math.min(x(day), RIGHT - 60), BOTTOM + 17, "middle", true, "as now: gone " + Show.day(day)));
        });
        double all = tons + bought;
        double end = left < 0 ? LEFT + (RIGHT - LEFT) * all / (all - left) : RIGHT;
        drawn.add(Svg.thick(LEFT, y(all), end, y(Math.max(0, left))));
        drawn.add(Svg.text(RIGHT - 90, y((all + 2 * Math.max(0, left)) / 3) - 14, "middle", false, "with these steps"));
        drawn.add(Svg.text(LEFT, BOTTOM + 17, "start", false, Show.day(today)));
        return Svg.picture(id, 340, 176, "Hay from today to turnout", words(), drawn);
    }
}
