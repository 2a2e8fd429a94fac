package haywright.app.web.lots;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.words.Show;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.sampling.stock.Bin;
import haywright.sampling.stock.LooseStack;
import haywright.sampling.stock.Pile;
import haywright.sampling.stock.Rick;
import haywright.sampling.stock.RoundPyramid;
import haywright.sampling.stock.Sacks;
import haywright.sampling.stock.Stock;
import haywright.sampling.stock.UprightSilo;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Stocks that are measured by a shape of their own: pyramids of rounds, loose stacks, piles, towers, bins. */
public final class OtherStock {
    private static final Ask BASE = Ask.number("base", "Bales side by side on the ground", "");
    private static final Ask TIERS = Ask.number("tiers", "Tiers high", "Each is one bale narrower.");
    private static final Ask ALONG = Ask.number("length", "Bales along the pile", "");
    public static final Ask SHAPE = Ask.choice("shape", "Shape of the stack", "");
    public static final Ask FILLING = Ask.choice("filling", "What is in it", "");
    private static final Ask OVER =
            Ask.amount("over", "Over the top", Unit.FOOT, "A tape thrown over, from ground to ground.");
    private static final Ask SLOPE =
            Ask.number("slope", "Slope of the sides", "Feet outward to one foot up; 3 is safe to drive on.");
    private static final Ask DIAMETER = Ask.amount("diameter", "Diameter inside", Unit.FOOT, "");
    private static final Ask DEPTH = Ask.amount("depth", "Depth of settled silage when full", Unit.FOOT, "");
    private static final Ask FED = Ask.amount("fed", "Depth already fed from the top", Unit.FOOT, "0 if none.");
    private static final Ask WALL = Ask.amount("wall", "Depth at the wall", Unit.FOOT, "");
    private static final Ask CONE =
            Ask.amount("cone", "Height of the heap above that", Unit.FOOT, "0 where it is level.");
    private static final Ask BUSHEL =
            Ask.amount("bushelWeight", "Weight of a bushel", Unit.POUND, "Corn 56, barley 48, wheat 60.");

    private static final Ask EAVES = Ask.amount("eaves", "Height to the eaves", Unit.FOOT, "");
    private static final Ask TOP = Ask.amount("top", "From the eaves to the ridge", Unit.FOOT, "");
    private static final Ask BAGS = Ask.number("bags", "How many bags", "");
    private static final Ask BAG_WEIGHT = Ask.amount("bagWeight", "Weight of a bag", Unit.POUND, "As printed on it.");

    private OtherStock() {}

    /** Whether a kind is one of these. */
    public static boolean has(StockForm.Kind kind) {
        return !asks(kind).isEmpty();
    }

    /** Boxes of a kind, in the order they are measured; {@link #SHAPE} and {@link #FILLING} are lists. */
    public static List<Ask> asks(StockForm.Kind kind) {
        return switch (kind) {
            case PYRAMID -> List.of(StockForm.COUNT, StockForm.BALE_WEIGHT, BASE, TIERS, ALONG);
            case LOOSE_STACK -> List.of(SHAPE, StockForm.LENGTH, StockForm.WIDTH, OVER);
            case PILE ->
                List.of(
                        StockForm.LENGTH,
                        StockForm.WIDTH,
                        StockForm.HEIGHT,
                        SLOPE,
                        StockForm.DENSITY,
                        StockForm.DRY_MATTER);
            case UPRIGHT_SILO -> List.of(FILLING, DIAMETER, DEPTH, FED, StockForm.DRY_MATTER);
            case BIN -> List.of(DIAMETER, WALL, CONE, BUSHEL);
            case RICK -> List.of(StockForm.LENGTH, StockForm.WIDTH, EAVES, TOP);
            case SACKS -> List.of(BAGS, BAG_WEIGHT);
            default -> List.of();
        };
    }

    public static List<Option> options(Ask ask) {
        return ask.equals(SHAPE)
                ? Option.of(LooseStack.Shape.class, s -> Form.id(s).replace('_', ' '))
                : Option.of(UprightSilo.Filling.class, f -> Form.id(f).replace('_', ' '));
    }

    public static boolean isList(Ask ask) {
        return ask.equals(SHAPE) || ask.equals(FILLING);
    }

    /** What a new one is measured with unless it is changed: a safe slope, nothing fed, a level top. */
    static Map<String, String> usual(StockForm.Kind kind) {
        return switch (kind) {
            case PILE -> Map.of(SLOPE.name(), "3");
            case UPRIGHT_SILO -> Map.of(FED.name(), "0");
            case BIN -> Map.of(CONE.name(), "0");
            default -> Map.of();
        };
    }

    static Map<String, String> known(Stock stock) {
        var known = new LinkedHashMap<String, String>();
        if (stock instanceof RoundPyramid p) {
            known.put(StockForm.COUNT.name(), Show.number(p.count(), 0));
            put(known, StockForm.BALE_WEIGHT, p.baleWeight());
            known.put(BASE.name(), String.valueOf(p.base()));
            known.put(TIERS.name(), String.valueOf(p.tiers()));
            known.put(ALONG.name(), String.valueOf(p.length()));
        } else if (stock instanceof LooseStack s) {
            known.put(SHAPE.name(), Form.id(s.shape()));
            put(known, StockForm.LENGTH, s.length());
            put(known, StockForm.WIDTH, s.width());
            put(known, OVER, s.over());
        } else if (stock instanceof Pile p) {
            put(known, StockForm.LENGTH, p.length());
            put(known, StockForm.WIDTH, p.width());
            put(known, StockForm.HEIGHT, p.height());
            known.put(SLOPE.name(), Show.significant(p.slope(), 4));
            put(known, StockForm.DENSITY, p.densityDryMatter());
            known.put(StockForm.DRY_MATTER.name(), Show.significant(p.dryMatterPercent(), 6));
        } else if (stock instanceof UprightSilo s) {
            known.put(FILLING.name(), Form.id(s.filling()));
            put(known, DIAMETER, s.diameter());
            put(known, DEPTH, s.depth());
            put(known, FED, s.fed());
            known.put(StockForm.DRY_MATTER.name(), Show.significant(s.dryMatterPercent(), 6));
        } else if (stock instanceof Bin b) {
            put(known, DIAMETER, b.diameter());
            put(known, WALL, b.wall());
            put(known, CONE, b.cone());
            put(known, BUSHEL, b.bushelWeight());
        } else if (stock instanceof Rick r) {
            put(known, StockForm.LENGTH, r.length());
            put(known, StockForm.WIDTH, r.width());
            put(known, EAVES, r.eaves());
            put(known, TOP, r.top());
        } else if (stock instanceof Sacks s) {
            known.put(BAGS.name(), Show.number(s.bags(), 0));
            put(known, BAG_WEIGHT, s.bagWeight());
        }
        return known;
    }

    private static void put(Map<String, String> known, Ask ask, Quantity quantity) {
        known.put(ask.name(), ask.typed(quantity));
    }

    static Optional<Stock> read(Form form, StockForm.Kind kind, Sizes sizes) {
        return switch (kind) {
            case PYRAMID -> {
                int count = form.count(StockForm.COUNT, "How many are there?");
                var weight = sizes.of(StockForm.BALE_WEIGHT, "Weigh five to ten and put in the mean.", 350, 2500);
                int base = form.count(BASE, "How many lie on the ground, across?");
                int tiers = form.count(TIERS, "How many tiers?");
                int along = form.count(ALONG, "How many along?");
                yield form.part(() -> new RoundPyramid(count, weight, base, tiers, along));
            }
            case LOOSE_STACK -> {
                var shape = form.choice(SHAPE, LooseStack.Shape.class, "Which is it most like?");
                var length = sizes.of(StockForm.LENGTH, "Pace it out.", 5, 2000);
                var width = sizes.of(StockForm.WIDTH, "Pace it out.", 5, 400);
                var over = sizes.of(OVER, "Throw a tape over it.", 10, 200);
                yield form.part(() -> new LooseStack(shape, length, width, over));
            }
            case PILE -> {
                var length = sizes.of(StockForm.LENGTH, "Pace it out.", 5, 2000);
                var width = sizes.of(StockForm.WIDTH, "Pace it out.", 5, 400);
                var height = sizes.of(StockForm.HEIGHT, "Judge it from the side.", 3, 40);
                double slope = form.number(SLOPE, "3 if it is driven over.");
                var density = sizes.of(StockForm.DENSITY, "14 if nothing better is known.", 6, 25);
                double dryMatter = sizes.of(StockForm.DRY_MATTER, "From a report, or 35.", 15, 75)
                        .value();
                yield form.part(() -> new Pile(length, width, height, slope, density, dryMatter));
            }
            case UPRIGHT_SILO -> {
                var filling = form.choice(FILLING, UprightSilo.Filling.class, "Which is it?");
                var diameter = sizes.of(DIAMETER, "It is in the silo’s papers.", 5, 110);
                var depth = sizes.of(DEPTH, "As deep as it settled.", 5, 120);
                var fed = form.quantity(FED, "0 if none.");
                double dryMatter = sizes.of(StockForm.DRY_MATTER, "From a report, or 35.", 15, 75)
                        .value();
                yield form.part(() -> new UprightSilo(filling, diameter, depth, fed, dryMatter));
            }
            case RICK -> {
                var length = sizes.of(StockForm.LENGTH, "Pace it out.", 5, 2000);
                var width = sizes.of(StockForm.WIDTH, "Pace it out.", 5, 400);
                var eaves = sizes.of(EAVES, "Judge it from the side.", 3, 40);
                var top = sizes.of(TOP, "Judge it from the end.", 1, 30);
                yield form.part(() -> new Rick(length, width, eaves, top));
            }
            case SACKS -> {
                int bags = form.count(BAGS, "How many are there?");
                var weight = sizes.of(BAG_WEIGHT, "It is printed on it.", 10, 2500);
                yield form.part(() -> new Sacks(bags, weight));
            }
            default -> {
                var diameter = sizes.of(DIAMETER, "Measure round it and divide by 3.14.", 5, 110);
                var wall = sizes.of(WALL, "From outside, or through the hatch.", 1, 80);
                var cone = form.quantity(CONE, "0 where it is level.");
                var bushel = sizes.of(BUSHEL, "56 of corn.", 20, 70);
                yield form.part(() -> new Bin(diameter, wall, cone, bushel));
            }
        };
    }

    static StockForm.Kind kind(Stock stock) {
        if (stock instanceof RoundPyramid) {
            return StockForm.Kind.PYRAMID;
        } else if (stock instanceof LooseStack) {
            return StockForm.Kind.LOOSE_STACK;
        } else if (stock instanceof Pile) {
            return StockForm.Kind.PILE;
        }
        if (stock instanceof Rick) {
            return StockForm.Kind.RICK;
        } else if (stock instanceof Sacks) {
            return StockForm.Kind.SACKS;
        }
        return stock instanceof UprightSilo ? StockForm.Kind.UPRIGHT_SILO : StockForm.Kind.BIN;
    }

    /** What lies there, as it was counted or measured. */
    static String amount(Stock stock) {
        if (stock instanceof RoundPyramid p) {
            return "%s in a pyramid, %d wide and %d high, of %s"
                    .formatted(
                            Show.count(p.count(), "large round bale"),
                            p.base(),
                            p.tiers(),
                            Show.quantity(p.baleWeight()));
        } else if (stock instanceof LooseStack s) {
            return "loose stack, %s by %s, %s over"
                    .formatted(Show.quantity(s.length()), Show.quantity(s.width()), Show.quantity(s.over()));
        } else if (stock instanceof Pile p) {
            return "pile, %s by %s by %s"
                    .formatted(Show.quantity(p.length()), Show.quantity(p.width()), Show.quantity(p.height()));
        } else if (stock instanceof UprightSilo s) {
            return "upright silo, %s across, %s deep".formatted(Show.quantity(s.diameter()), Show.quantity(s.depth()));
        }
        if (stock instanceof Rick r) {
            return "rick, %s by %s, %s to the eaves and %s above"
                    .formatted(
                            Show.quantity(r.length()),
                            Show.quantity(r.width()),
                            Show.quantity(r.eaves()),
                            Show.quantity(r.top()));
        } else if (stock instanceof Sacks s) {
            return "%s of %s".formatted(Show.count(s.bags(), "bag"), Show.quantity(s.bagWeight()));
        }
        return stock instanceof Bin b
                ? "bin, %s across, %s at the wall".formatted(Show.quantity(b.diameter()), Show.quantity(b.wall()))
                : "";
    }
}
