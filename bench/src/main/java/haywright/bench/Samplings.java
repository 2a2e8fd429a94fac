package haywright.bench;

import haywright.sampling.Aim;
import haywright.sampling.Costs;
import haywright.sampling.Crop;
import haywright.sampling.LotFacts;
import haywright.sampling.Material;
import haywright.sampling.Rule;
import haywright.sampling.SampleSize;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Spread;
import haywright.sampling.Subject;
import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldWalk;
import haywright.sampling.stock.Layout;
import haywright.sampling.stock.Picks;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntConsumer;

/**
 * What a plan costs for a stack of 100,000 bales beside one of 100, its picks, the search for the cheapest design beside
 * the rule that only counts, and a walk across a field of 1,000 corners beside one of four.
 */
public final class Samplings {
    private static final int SMALL = 100;
    private static final int LARGE = 100_000;
    private static final int CORNERS = 1_000;
    private static final int STOPS = 15;

    private Samplings() {}

    public static void main(String[] ignored) {
        Locale.setDefault(Locale.ROOT);
        double plan = microseconds(10_000, i -> plan(SMALL, i));
        say("plan and picks, 100 bales", plan, plan);
        say("plan and picks, 100,000 bales", microseconds(50, i -> plan(LARGE, i)), plan);
        say("picks alone, 100 bales, 1,000 draws", 1000 * microseconds(50_000, i -> picks(SMALL, i)), plan);
        say("picks alone, 100,000 bales, 1,000 draws", 1000 * microseconds(100, i -> picks(LARGE, i)), plan);
        double counted = microseconds(100_000, i -> size(i).of(Rule.TEN_PERCENT));
        say("ten percent, 100 bales", counted, counted);
        say("cheapest, 100 bales", microseconds(100_000, i -> size(i).of(Rule.CHEAPEST)), counted);
        say("cheapest design, 100 bales", microseconds(20_000, i -> size(i).of(Rule.CHEAPEST)), counted);
        var four = field(4);
        double walk = microseconds(500, i -> FieldWalk.of(four, STOPS, i));
        say("walk, 4 corners", walk, walk);
        say("outline read and checked, 1,000 corners", microseconds(20, i -> field(CORNERS)), walk);
        var many = field(CORNERS);
        say("walk, 1,000 corners", microseconds(20, i -> FieldWalk.of(many, STOPS, i)), walk);
        boolean again = FieldWalk.of(many, STOPS, 7).equals(FieldWalk.of(many, STOPS, 7))
                && picks(LARGE, 7).equals(picks(LARGE, 7))
                && !picks(LARGE, 7).equals(picks(LARGE, 8))
                && FieldWalk.of(many, STOPS, 7).stops().stream().allMatch(many::contains);
        System.out.println(
                again ? "The same seed gives the same bales and stops." : "Drawn again, it is not the same.");
        System.exit(again ? 0 : 1);
    }

    private static void say(String what, double microseconds, double against) {
        System.out.printf("  %-42s %,12.1f µs CPU, %,10.1f times%n", what, microseconds, microseconds / against);
    }

    /** After a tenth of the rounds to warm up. */
    private static double microseconds(int rounds, IntConsumer work) {
        for (int i = 0; i < Math.max(2, rounds / 10); i++) {
            work.accept(i);
        }
        double started = Cpu.seconds();
        for (int i = 0; i < rounds; i++) {
            work.accept(i);
        }
        return (Cpu.seconds() - started) * 1e6 / rounds;
    }

    private static Layout stack(int bales) {
        return Layout.Block.open(10, bales / 50, 5, bales, 2);
    }

    private static void plan(int bales, int seed) {
        SamplingPlan.of(
                new Subject(
                        Material.LARGE_SQUARE_BALE, bales, stack(bales), Crop.GRASS_HAY, 0, 0, null, LotFacts.PLAIN),
                Aim.USUAL.withSeed(seed));
    }

    private static Picks picks(int bales, int seed) {
        return Picks.of(stack(bales), 20, seed);
    }

    private static SampleSize size(int i) {
        return new SampleSize(
                Material.LARGE_SQUARE_BALE,
                SMALL,
                Spread.ofBook(Crop.GRASS_HAY, "cp"),
                0.4 + i % 10 * 0.05,
                95,
                Costs.usual(Material.LARGE_SQUARE_BALE));
    }

    /** About a quarter section; with more corners its edge bays in and out. */
    private static FieldShape field(int corners) {
        var ring = new ArrayList<FieldShape.Corner>();
        for (int i = 0; i < corners; i++) {
            double turn = 2 * Math.PI * (i + 0.5) / corners;
            double out = i % 2 == 0 || corners == 4 ? 1 : 0.97;
            ring.add(
                    new FieldShape.Corner(-109.5 + 0.005 * out * Math.cos(turn), 44.5 + 0.0036 * out * Math.sin(turn)));
        }
        return new FieldShape(List.of(ring));
    }
}
