package haywright.cattle.cold;

import static haywright.quantity.Unit.CELSIUS;
import static haywright.quantity.Unit.FAHRENHEIT;
import static haywright.quantity.Unit.KILOMETER_AN_HOUR;
import static haywright.quantity.Unit.MILE_AN_HOUR;

import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import java.util.List;

/**
 * Wind chill of a human face, by the National Weather Service since November 2001.
 * <pre>
 * WC = 35.74 + 0.6215·T − 35.75·V^0.16 + 0.4275·T·V^0.16      °F, V in mph at 10 m
 * </pre>
 * Above 50 °F or under 3 mph it is the temperature of the air. Cattle wear a coat: {@link CattleWindChill} is theirs.
 *
 * @param temperature °C
 * @param wind km/h
 * @see "National Weather Service, New wind chill chart, 2001 (read)"
 */
public record Nws2001WindChill(double temperature, double wind) implements WindChill {
    private static final Source FORMULA = Source.read("National Weather Service, wind chill chart of 2001");
    private static final double WARM = 50;
    private static final double STILL = 3;

    public Nws2001WindChill {
        WindChill.check(temperature, wind);
    }

    private boolean holds() {
        return FAHRENHEIT.fromBase(temperature) <= WARM && MILE_AN_HOUR.fromBase(wind) >= STILL;
    }

    private double fahrenheit() {
        double t = FAHRENHEIT.fromBase(temperature);
        double v = Math.pow(MILE_AN_HOUR.fromBase(wind), 0.16);
        return holds() ? 35.74 + 0.6215 * t - 35.75 * v + 0.4275 * t * v : t;
    }

    @Override
    public double celsius() {
        return FAHRENHEIT.toBase(fahrenheit());
    }

    @Override
    public List<Line> lines() {
        return List.of(
                CattleWindChill.air(temperature),
                Line.of(
                        "V",
                        "v / 1.609344",
                        MILE_AN_HOUR.fromBase(wind),
                        MILE_AN_HOUR,
                        Source.ARITHMETIC,
                        Input.typed("v", wind, KILOMETER_AN_HOUR)),
                Line.of(
                        "WC",
                        holds() ? "35.74 + 0.6215·T − 35.75·V^0.16 + 0.4275·T·V^0.16" : "T",
                        fahrenheit(),
                        FAHRENHEIT,
                        FORMULA),
                Line.of("EAT", "(WC − 32) / 1.8", celsius(), CELSIUS, Source.ARITHMETIC));
    }
}
