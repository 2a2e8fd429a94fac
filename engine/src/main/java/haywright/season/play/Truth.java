package haywright.season.play;

import haywright.chance.Draws;
import haywright.forage.Made;
import haywright.forage.lot.Shared;
import haywright.season.given.Energies;
import haywright.season.given.Facts;
import haywright.season.given.Season;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * One winter as it truly is: its weather, what every lot weighs and is made of, what this herd needs and eats, when grass
 * comes. Only the judge has it.
 *
 * @param winter of the record
 * @param weight true kg of each feed for each that is believed
 * @param made energy and protein of each
 * @param animals what they need, over what the equations say
 * @param appetite what they eat free choice, over what the equation says
 * @param seed for what is seen of them on the way
 */
@SuppressWarnings("ArrayRecordComponent")
public record Truth(int winter, double[] weight, Energies made, double animals, double appetite, long seed) {
    /** As is expected, in a winter of the record. */
    public static Truth expected(Season season, int winter) {
        var weight = new double[season.feeds().size()];
        Arrays.fill(weight, 1);
        return new Truth(
                winter,
                weight,
                Energies.expected(season.feeds()),
                1,
                season.appetite().times(),
                0);
    }

    /** Doubts that lots share are one draw, whatever lot they stand in. */
    public static Truth drawn(Season season, int winter, long seed) {
        var random = new SplittableRandom(seed);
        var tons = new Draws(random.nextLong());
        var herd = new Draws(random.nextLong());
        var own = new Draws(random.nextLong());
        long sharedSeed = random.nextLong();
        Map<Shared, Double> shared = new HashMap<>();
        var weight = new double[season.feeds().size()];
        var made = new ArrayList<Made>();
        for (int f = 0; f < weight.length; f++) {
            var feed = season.feeds().get(f);
            weight[f] = Math.max(0.2, 1 + feed.sd() * tons.normal());
            var lot = feed.priced().feed().lot();
            if (lot.isEmpty()) {
                made.add(feed.priced().feed().composition());
            } else {
                var z = new double[lot.get().size()];
                for (int i = 0; i < z.length; i++) {
                    z[i] = own.normal();
                }
                made.add(lot.get()
                        .at(
                                z,
                                doubt -> shared.computeIfAbsent(
                                        doubt,
                                        d -> new Draws(sharedSeed ^ d.toString().hashCode()).normal())));
            }
        }
        double animals = Math.max(0.5, 1 + Facts.value("animals_sd") / 100 * herd.normal());
        double appetite =
                Math.max(0.5, season.appetite().times() + season.appetite().sd() * herd.normal());
        return new Truth(winter, weight, Energies.of(season.feeds(), made), animals, appetite, random.nextLong());
    }

    /** The same with only some of it as it is, the rest as expected. */
    public Truth with(Season season, boolean tons, boolean feed, boolean cattle) {
        var as = expected(season, winter);
        return new Truth(
                winter,
                tons ? weight : as.weight,
                feed ? made : as.made,
                cattle ? animals : 1,
                cattle ? appetite : as.appetite,
                seed);
    }
}
