package haywright.app.web.lots;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.words.Show;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.sampling.stock.Stock;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** How a lot lies there: each kind of stock with the fields of its own. */
public final class StockForm {
    public static final Ask BALE = Ask.choice("bale", "Kind of bale", "");
    public static final Ask COUNT = Ask.number("count", "How many bales", "");
    public static final Ask BALE_WEIGHT = Ask.amount(
            "baleWeight",
            "Weight of a bale",
            Unit.POUND,
            "The mean of five to ten over a scale, if you can: a guess by eye is often 100 lb off.");
    public static final Ask ROWS = Ask.number("rows", "Rows", "");
    public static final Ask COLUMNS = Ask.number("columns", "Bales in a row", "");
    public static final Ask TIERS = Ask.number("tiers", "Tiers high", "");
    public static final Ask LENGTH = Ask.amount("length", "Length", Unit.FOOT, "");
    public static final Ask WIDTH = Ask.amount("width", "Width", Unit.FOOT, "");
    public static final Ask HEIGHT = Ask.amount("height", "Height", Unit.FOOT, "The mean over its length.");
    public static final Ask DIAMETER = Ask.amount("diameter", "Diameter of the bag", Unit.FOOT, "");
    public static final Ask BAG_LENGTH = Ask.amount("length", "Length of packed feed", Unit.FOOT, "Without the ends.");
    public static final Ask DENSITY = Ask.amount(
            "densityDryMatter",
            "How tightly it is packed",
            Unit.LB_PER_FT3,
            "Pounds of dry matter in a cubic foot. In a bunker 14 is a reasonable value and 16 is well packed (Holmes,"
                    + " University of Wisconsin); bags hold 11 to 15 (Jarek and others, University of Wisconsin).");
    public static final Ask DRY_MATTER =
            new Ask("dryMatterPercent", "Dry matter", Unit.PERCENT, "Of the feed as it lies there.", 6);
    public static final Ask MASS = Ask.amount(
            "mass",
            "Weight of the whole lot",
            Unit.TON,
            "Off the scale or the load tickets, as fed. 1 ton is 2,000 lb.");
    public static final Ask FIELD = Ask.choice("field", "Field", "");
    public static final Ask YIELD = Ask.amount(
            "yield", "What it yields", Unit.LB_PER_ACRE, "As far as known; otherwise until plots have been clipped.");

    private static final int MOST_USUAL = 20_000;

    private StockForm() {}

    /** How a lot can lie there. */
    public enum Kind {
        BALES("Bales", "Counted, with the weight of one."),
        PYRAMID("Pyramid of rounds", "Round bales stacked narrower upward, counted, with the weight of one."),
        LOOSE_STACK("Loose stack", "A tape along, across and over the top."),
        RICK("Rick with a gable", "Length, width, height to the eaves and to the ridge."),
        BUNKER("Bunker", "Length, width, height, and how tightly it is packed."),
        PILE("Drive-over pile", "Length, width, height and slope of the sides."),
        BAG("Silage bag", "Diameter, length, and how tightly it is packed."),
        UPRIGHT_SILO("Upright silo", "Diameter, depth, and what was fed from the top."),
        BIN("Bin", "Grain, cubes or pellets: diameter, depth at the wall, and the heap."),
        SACKS("Feed in bags", "Bags of cubes, pellets or grain, counted."),
        WEIGHED("Weighed", "Off the scale or the load tickets."),
        STANDING("Still standing", "In a field of this ranch.");

        private final String words;
        private final String how;

        Kind(String words, String how) {
            this.words = words;
            this.how = how;
        }

        public String words() {
            return words;
        }

        public String how() {
            return how;
        }

        static Kind of(Stock stock) {
            if (stock instanceof Stock.Bales) {
                return BALES;
            } else if (stock instanceof Stock.Bunker) {
                return BUNKER;
            } else if (stock instanceof Stock.Bag) {
                return BAG;
            }
            if (stock instanceof Stock.Standing) {
                return STANDING;
            }
            return stock instanceof Stock.Weighed ? WEIGHED : OtherStock.kind(stock);
        }
    }

    /** Whether round bales may lie there: of those it is known what weather does to them. */
    public static boolean mayBeRound(Kind kind) {
        return kind == Kind.BALES || kind == Kind.PYRAMID;
    }

    static Map<String, String> known(Stock stock) {
        var known = new LinkedHashMap<String, String>();
        if (stock instanceof Stock.Bales b) {
            known.put(BALE.name(), Form.id(b.bale()));
            known.put(COUNT.name(), Show.number(b.count(), 0));
            known.put(BALE_WEIGHT.name(), BALE_WEIGHT.typed(b.baleWeight()));
            known.put(ROWS.name(), b.rows() == null ? "" : b.rows().toString());
            known.put(COLUMNS.name(), b.columns() == null ? "" : b.columns().toString());
            known.put(TIERS.name(), b.tiers() == null ? "" : b.tiers().toString());
        } else if (stock instanceof Stock.Bunker b) {
            known.put(LENGTH.name(), LENGTH.typed(b.length()));
            known.put(WIDTH.name(), WIDTH.typed(b.width()));
            known.put(HEIGHT.name(), HEIGHT.typed(b.height()));
            known.put(DENSITY.name(), DENSITY.typed(b.densityDryMatter()));
            known.put(DRY_MATTER.name(), Show.significant(b.dryMatterPercent(), 6));
        } else if (stock instanceof Stock.Bag b) {
            known.put(DIAMETER.name(), DIAMETER.typed(b.diameter()));
            known.put(BAG_LENGTH.name(), BAG_LENGTH.typed(b.length()));
            known.put(DENSITY.name(), DENSITY.typed(b.densityDryMatter()));
            known.put(DRY_MATTER.name(), Show.significant(b.dryMatterPercent(), 6));
        } else if (stock instanceof Stock.Weighed w) {
            known.put(MASS.name(), MASS.typed(w.mass()));
        } else if (stock instanceof Stock.Standing s) {
            known.put(FIELD.name(), s.field().toString());
            known.put(YIELD.name(), s.yield() == null ? "" : YIELD.typed(s.yield()));
        } else {
            known.putAll(OtherStock.known(stock));
        }
        return known;
    }

    /** @param before the stock as it was; null for a new one */
    static Optional<Stock> read(Form form, Kind kind, @Nullable Stock before, Ranch ranch) {
        var sizes = new Sizes(form, before == null ? Map.of() : known(before));
        return switch (kind) {
            case BALES -> bales(form, before instanceof Stock.Bales b ? b : null);
            case BUNKER -> {
                var length = sizes.of(LENGTH, "Pace it out.", 5, 2000);
                var width = sizes.of(WIDTH, "Pace it out.", 5, 400);
                var height = sizes.of(HEIGHT, "Judge the mean from the side.", 3, 40);
                var density = sizes.of(DENSITY, "14 if nothing better is known.", 6, 25);
                double dryMatter = sizes.of(DRY_MATTER, "From a report, or 35 if nothing better is known.", 15, 75)
                        .value();
                yield form.part(() -> new Stock.Bunker(length, width, height, density, dryMatter));
            }
            case BAG -> {
                var diameter = sizes.of(DIAMETER, "It is printed on the bag.", 4, 16);
                var length = sizes.of(BAG_LENGTH, "Pace it out.", 5, 1000);
                var density = sizes.of(DENSITY, "13 if nothing better is known.", 6, 25);
                double dryMatter = sizes.of(DRY_MATTER, "From a report, or 35 if nothing better is known.", 15, 75)
                        .value();
                yield form.part(() -> new Stock.Bag(diameter, length, density, dryMatter));
            }
            case WEIGHED -> {
                var mass = sizes.of(MASS, "What do the load tickets add up to?", 0.1, 20000);
                yield form.part(() -> new Stock.Weighed(mass));
            }
            case STANDING -> {
                var chosen = form.text(FIELD, "Which field does it stand in?");
                var grows = form.maybeQuantity(YIELD);
                var field = ranch.fields().keySet().stream()
                        .filter(id -> id.toString().equals(chosen))
                        .findFirst();
                if (field.isEmpty() && !chosen.isEmpty()) {
                    form.refuse(
                            FIELD.name(), chosen, "there is no such field on this ranch", "Choose one of the list.");
                }
                yield form.part(() -> new Stock.Standing(field.orElseThrow(), grows));
            }
            default -> OtherStock.read(form, kind, sizes);
        };
    }

    private static Optional<Stock> bales(Form form, Stock.@Nullable Bales before) {
        var bale = form.choice(BALE, Stock.BaleKind.class, "Which kind of bale is it?");
        int count = form.count(COUNT, "How many are there?");
        var weight = form.quantity(BALE_WEIGHT, "Weigh five to ten and put in the mean.");
        var rows = form.maybeCount(ROWS);
        var columns = form.maybeCount(COLUMNS);
        var tiers = form.maybeCount(TIERS);
        // beyond what balers make; a slip of the decimal point lands there
        boolean small = bale == Stock.BaleKind.SMALL_SQUARE;
        form.doubtUnless(
                BALE_WEIGHT,
                before == null ? null : before.baleWeight(),
                weight,
                Quantity.of(small ? 25 : 350, Unit.POUND),
                Quantity.of(small ? 160 : 2500, Unit.POUND));
        if (count > MOST_USUAL && (before == null || before.count() != count)) {
            form.doubt(COUNT, "count-unusual", "%s is more than most yards hold.".formatted(Show.count(count, "bale")));
        }
        if (rows != null && columns != null && tiers != null) {
            // rounds narrow upwards, so fewer than the full block is usual and more is not
            long stacked = (long) rows * columns * tiers;
            boolean same = before != null && before.count() == count;
            if (count > stacked && stacked > 0 && !same) {
                form.doubt(
                        COUNT,
                        "count-above-stack",
                        "Rows, bales in a row and tiers of %d, %d and %d make %s, fewer than the %s counted."
                                .formatted(rows, columns, tiers, Show.count(stacked, "bale"), Show.number(count, 0)));
            }
        }
        return form.part(() -> new Stock.Bales(bale, count, weight, rows, columns, tiers));
    }
}
