package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.sampling.stock.BaleSize;
import haywright.sampling.stock.Bin;
import haywright.sampling.stock.LooseStack;
import haywright.sampling.stock.Pile;
import haywright.sampling.stock.Stock;
import haywright.sampling.stock.UprightSilo;
import haywright.workings.Refused;
import haywright.workings.Worked;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** What lies there, in tons as fed and of dry matter, with the least and the most it may be. */
final class StockTopic {
    private StockTopic() {}

    static final Topic<In, Out> TOPIC = new Topic<>(
            "stock",
            "What a stack, bale, bag, bunker, pile, silo or bin weighs.",
            In.class,
            Out.class,
            """
            {"kind":"round_bale","width_ft":5,"diameter_ft":5,"weight_lb":1100}""",
            StockTopic::weigh);

    enum What {
        BALES,
        ROUND_BALE,
        SQUARE_BALE,
        SILAGE_BAG,
        BUNKER,
        STACK,
        PILE,
        UPRIGHT_SILO,
        BIN
    }

    record In(
            What kind,
            @Nullable Integer count,
            @Key(Unit.POUND) OptionalDouble weight,
            @Key(Unit.FOOT) OptionalDouble width,
            @Key(Unit.FOOT) OptionalDouble diameter,
            @Key(Unit.FOOT) OptionalDouble length,
            @Key(Unit.FOOT) OptionalDouble height,

            @Key(value = Unit.FOOT, words = "Of settled silage, or of grain at the wall.")
            OptionalDouble depth,

            @Key(value = Unit.FOOT, words = "Depth already fed from the top of an upright silo.")
            OptionalDouble fed,

            @Key(value = Unit.FOOT, words = "Over the top of a loose stack, ground to ground.")
            OptionalDouble over,

            @Key(value = Unit.FOOT, words = "Of the whole bag, laid out.")
            OptionalDouble plastic,

            @Key(value = Unit.FOOT, words = "Both ends of the bag together, that hold no feed.")
            OptionalDouble ends,

            @Key(value = Unit.FOOT, words = "Height of the heap in a bin above the wall's level.")
            OptionalDouble cone,

            @Key(words = "Run of a pile's sides to one of rise.")
            OptionalDouble slope,

            @Key(name = "density_lb_dm_per_ft3") OptionalDouble density,

            @Key(value = Unit.POUND, words = "Of one bushel: corn 56, barley 48.")
            OptionalDouble bushel,

            @Key(words = "Of a loose stack.") LooseStack.@Nullable Shape shape,
            UprightSilo.@Nullable Filling filling,
            @Key(value = Unit.PERCENT, name = "dm") OptionalDouble dryMatter) {}

    record Out(
            @Key(Unit.CUBIC_FOOT) OptionalDouble volume,
            @Key(Unit.LB_PER_FT3) OptionalDouble density,
            OptionalDouble tonsAsFed,
            OptionalDouble tonsDm,
            OptionalDouble lowTonsAsFed,
            OptionalDouble highTonsAsFed,
            @Nullable String range) {}

    private static Answer<Out> weigh(In in) {
        return switch (in.kind) {
            case ROUND_BALE -> bale(in, new BaleSize.Round(meters("width", in.width), meters("diameter", in.diameter)));
            case SQUARE_BALE ->
                bale(
                        in,
                        new BaleSize.Square(
                                meters("length", in.length), meters("width", in.width), meters("height", in.height)));
            default -> stock(in, stock(in));
        };
    }

    private static Stock stock(In in) {
        return switch (in.kind) {
            case BALES ->
                new Stock.Bales(
                        Stock.BaleKind.LARGE_ROUND,
                        count(in),
                        Quantity.of(needed("weight", in.weight), Unit.POUND),
                        null,
                        null,
                        null);
            case SILAGE_BAG ->
                new Stock.Bag(
                        feet("diameter", in.diameter),
                        Quantity.of(
                                needed("plastic", in.plastic) - in.ends.orElse(2 * needed("diameter", in.diameter)),
                                Unit.FOOT),
                        density(in),
                        dm(in));
            case BUNKER -> level(in);
            case PILE ->
                new Pile(
                        feet("length", in.length),
                        feet("width", in.width),
                        feet("height", in.height),
                        in.slope.orElse(3),
                        density(in),
                        dm(in));
            case STACK ->
                in.over.isEmpty()
                        ? level(in)
                        : new LooseStack(
                                in.shape == null ? LooseStack.Shape.LOW_ROUND_TOPPED : in.shape,
                                feet("length", in.length),
                                feet("width", in.width),
                                feet("over", in.over));
            case UPRIGHT_SILO ->
                new UprightSilo(
                        in.filling == null ? UprightSilo.Filling.CORN_SILAGE : in.filling,
                        feet("diameter", in.diameter),
                        feet("depth", in.depth),
                        Quantity.of(in.fed.orElse(0), Unit.FOOT),
                        dm(in));
            default ->
                new Bin(
                        feet("diameter", in.diameter),
                        feet("depth", in.depth),
                        Quantity.of(in.cone.orElse(0), Unit.FOOT),
                        Quantity.of(in.bushel.orElse(56), Unit.POUND));
        };
    }

    /** Silage between walls, or in a stack with upright sides; a loose stack is measured over its top instead. */
    private static Stock level(In in) {
        return new Stock.Bunker(
                feet("length", in.length), feet("width", in.width), feet("height", in.height), density(in), dm(in));
    }

    private static Answer<Out> stock(In in, Stock stock) {
        double kg = stock.asFedKg().orElseThrow();
        var range = stock.range();
        return Answer.of(
                new Out(
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        tons(kg),
                        in.dryMatter.isPresent() ? tons(kg * in.dryMatter.getAsDouble() / 100) : OptionalDouble.empty(),
                        range.map(r -> tons(r.lowKg())).orElse(OptionalDouble.empty()),
                        range.map(r -> tons(r.highKg())).orElse(OptionalDouble.empty()),
                        range.map(r -> r.words()).orElse(null)),
                stock);
    }

    private static Answer<Out> bale(In in, BaleSize size) {
        var density = in.weight.isPresent()
                ? OptionalDouble.of(Unit.LB_PER_FT3.fromBase(size.density(Unit.POUND.toBase(in.weight.getAsDouble()))))
                : OptionalDouble.empty();
        return new Answer<>(
                new Out(
                        OptionalDouble.of(Unit.CUBIC_FOOT.fromBase(size.volume())),
                        density,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        null),
                true,
                java.util.List.<Worked>of(size),
                java.util.List.of());
    }

    private static OptionalDouble tons(double kilograms) {
        return OptionalDouble.of(Unit.TON.fromBase(kilograms));
    }

    private static int count(In in) {
        if (in.count == null) {
            throw missing("count");
        }
        return in.count;
    }

    private static double dm(In in) {
        return needed("dryMatter", in.dryMatter);
    }

    private static Quantity density(In in) {
        return Quantity.of(needed("density", in.density), Unit.LB_PER_FT3);
    }

    private static Quantity feet(String field, OptionalDouble value) {
        return Quantity.of(needed(field, value), Unit.FOOT);
    }

    private static double meters(String field, OptionalDouble value) {
        return Unit.FOOT.toBase(needed(field, value));
    }

    private static double needed(String field, OptionalDouble value) {
        return value.orElseThrow(() -> missing(field));
    }

    private static Refused missing(String field) {
        return new Refused(field, "nothing", "it is needed for this kind of stock", "Add it.");
    }
}
