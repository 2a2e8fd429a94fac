package haywright.app.web.lots;

import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.form.Field;
import haywright.app.web.form.Fields;
import haywright.quantity.Unit;
import haywright.sampling.stock.Bin;
import haywright.sampling.stock.LooseStack;
import haywright.sampling.stock.PartFed;
import haywright.sampling.stock.Pile;
import haywright.sampling.stock.Rick;
import haywright.sampling.stock.RoundPyramid;
import haywright.sampling.stock.Sacks;
import haywright.sampling.stock.Stock;
import haywright.sampling.stock.UprightSilo;
import java.util.Arrays;

/** How a lot can lie there, and the boxes that each way is measured by. */
public enum StockKind {
    BALES(
            "Bales",
            "Counted, with the weight of one.",
            Fields.of(Stock.Bales.class)
                    .section(
                            "",
                            Field.choice(
                                            "bale",
                                            "Kind of bale",
                                            "",
                                            Option.of(Stock.BaleKind.class, Stock.BaleKind::words))
                                    .needed("Which kind of bale is it?"))
                    .section("", Box.COUNT, Box.BALE_WEIGHT)
                    .folded(
                            "If stacked: rows and tiers, for which bales to sample",
                            Field.count("rows", "Rows", ""),
                            Field.count("columns", "Bales in a row", ""),
                            Field.count("tiers", "Tiers high", ""))),
    PYRAMID(
            "Pyramid of rounds",
            "Round bales stacked narrower upward, counted, with the weight of one.",
            Fields.of(RoundPyramid.class)
                    .section(
                            "",
                            Box.COUNT,
                            Box.BALE_WEIGHT
                                    .needed("Weigh 5 to 10 and enter the average.")
                                    .usually(350, 2500))
                    .section(
                            "",
                            Field.count("base", "Bales side by side on the ground", "")
                                    .needed("How many on the ground, across?"),
                            Field.count("tiers", "Tiers high", "Each is one bale narrower.")
                                    .needed("How many tiers?"),
                            Field.count("length", "Bales along the pile", "").needed("How many along?"))),
    LOOSE_STACK(
            "Loose stack",
            "A tape along, across and over the top.",
            Fields.of(LooseStack.class)
                    .section(
                            "",
                            Box.list("shape", "Shape of the stack", LooseStack.Shape.class, "Which is it most like?"))
                    .section(
                            "",
                            Box.LENGTH,
                            Box.WIDTH,
                            Field.amount("over", "Over the top", Unit.FOOT, "Tape from ground to ground.")
                                    .needed("Throw a tape over it.")
                                    .usually(10, 200))),
    RICK(
            "Rick with a gable",
            "Length, width, height to the eaves and to the ridge.",
            Fields.of(Rick.class)
                    .section(
                            "",
                            Box.LENGTH,
                            Box.WIDTH,
                            Field.amount("eaves", "Height to the eaves", Unit.FOOT, "")
                                    .needed("Judge it from the side.")
                                    .usually(3, 40),
                            Field.amount("top", "From the eaves to the ridge", Unit.FOOT, "")
                                    .needed("Judge it from the end.")
                                    .usually(1, 30))),
    BUNKER(
            "Bunker",
            "Length, width, height, and packing density.",
            Fields.of(Stock.Bunker.class)
                    .section("", Box.LENGTH, Box.WIDTH, Box.HEIGHT)
                    .section("", Box.DENSITY)
                    .section("", Box.DRY_MATTER)),
    PILE(
            "Drive-over pile",
            "Length, width, height and slope of the sides.",
            Fields.of(Pile.class)
                    .section("", Box.LENGTH, Box.WIDTH, Box.HEIGHT)
                    .section(
                            "",
                            Field.number(
                                            "slope",
                                            "Slope of the sides",
                                            "Feet out for each foot up; 3 is safe to drive on.")
                                    .needed("3 if it is driven over."))
                    .section("", Box.DENSITY)
                    .section("", Box.DRY_MATTER)),
    BAG(
            "Silage bag",
            "Diameter, length, and packing density.",
            Fields.of(Stock.Bag.class)
                    .section(
                            "",
                            Field.amount("diameter", "Diameter of the bag", Unit.FOOT, "")
                                    .needed("It is printed on the bag.")
                                    .usually(4, 16),
                            Field.amount("length", "Length of packed feed", Unit.FOOT, "Without the ends.")
                                    .needed("Pace it out.")
                                    .usually(5, 1000))
                    .section("", Box.DENSITY)
                    .section("", Box.DRY_MATTER)),
    UPRIGHT_SILO(
            "Upright silo",
            "Diameter, depth, and what was fed from the top.",
            Fields.of(UprightSilo.class)
                    .section("", Box.list("filling", "What is in it", UprightSilo.Filling.class, "Which is it?"))
                    .section(
                            "",
                            Box.inside("It is in the silo’s papers."),
                            Field.amount("depth", "Depth of settled silage when full", Unit.FOOT, "")
                                    .needed("As deep as it settled.")
                                    .usually(5, 120),
                            Field.amount("fed", "Depth already fed from the top", Unit.FOOT, "0 if none.")
                                    .needed("0 if none."))
                    .section("", Box.DRY_MATTER)),
    BIN(
            "Bin",
            "Grain, cake or pellets: diameter, depth at the wall, and the heap.",
            Fields.of(Bin.class)
                    .section(
                            "",
                            Box.inside("Measure around it and divide by 3.14."),
                            Field.amount("wall", "Depth at the wall", Unit.FOOT, "")
                                    .needed("From outside, or through the hatch.")
                                    .usually(1, 80),
                            Field.amount("cone", "Height of the heap above that", Unit.FOOT, "0 where it is level.")
                                    .needed("0 where it is level."))
                    .section(
                            "",
                            Field.amount(
                                            "bushelWeight",
                                            "Weight of a bushel",
                                            Unit.POUND,
                                            "Corn 56, barley 48, wheat 60.")
                                    .needed("56 of corn.")
                                    .usually(20, 70))),
    SACKS(
            "Feed in bags",
            "Bags of cake, pellets or grain, counted.",
            Fields.of(Sacks.class)
                    .section(
                            "",
                            Field.count("bags", "How many bags", "").needed("How many are there?"),
                            Field.amount("bagWeight", "Weight of a bag", Unit.POUND, "As printed on it.")
                                    .needed("It is printed on it.")
                                    .usually(10, 2500))),
    WEIGHED(
            "Weighed",
            "By scale or load tickets.",
            Fields.of(Stock.Weighed.class)
                    .section(
                            "",
                            Field.amount(
                                            "mass",
                                            "Weight of the whole lot",
                                            Unit.TON,
                                            "By scale or load tickets, as fed. {1 ton}")
                                    .needed("What do the load tickets add up to?")
                                    .usually(0.1, 20_000))),
    STANDING(
            "Standing forage",
            "In a field of this ranch.",
            Fields.of(Stock.Standing.class)
                    .section(
                            "",
                            Field.amount(
                                    "yield",
                                    "What it yields",
                                    Unit.LB_PER_ACRE,
                                    "Leave it empty and clip plots first if not known.")));

    private final String words;
    private final String how;
    private final Fields<?> fields;

    StockKind(String words, String how, Fields<?> fields) {
        this.words = words;
        this.how = how;
        this.fields = fields;
    }

    public String words() {
        return words;
    }

    public String how() {
        return how;
    }

    /** Its boxes, those side by side in one section. */
    public Fields<?> fields() {
        return fields;
    }

    /** Of what is part fed: as it was put up. */
    static StockKind of(Stock stock) {
        if (stock instanceof PartFed part) {
            return of(part.before());
        }
        return Arrays.stream(values())
                .filter(kind -> kind.fields.isOf(stock))
                .findFirst()
                .orElseThrow();
    }

    /** Boxes that several kinds have. */
    static final class Box {
        static final Field COUNT = Field.count("count", "How many bales", "").needed("How many are there?");
        static final Field BALE_WEIGHT = Field.amount(
                "baleWeight",
                "Weight of a bale",
                Unit.POUND,
                "Average of 5 to 10 weighed. Empty: 1,200 lb for a large bale, 60 for a small one, marked as assumed.");
        static final Field LENGTH = Field.amount("length", "Length", Unit.FOOT, "")
                .needed("Pace it out.")
                .usually(5, 2000);
        static final Field WIDTH = Field.amount("width", "Width", Unit.FOOT, "")
                .needed("Pace it out.")
                .usually(5, 400);
        static final Field HEIGHT = Field.amount("height", "Height", Unit.FOOT, "Average along its length.")
                .needed("Judge the average from the side.")
                .usually(3, 40);
        static final Field DENSITY = Field.amount(
                        "densityDryMatter",
                        "Packing density",
                        Unit.LB_PER_FT3,
                        "Pounds of dry matter per cubic foot. Bunker: 14 is reasonable, 16 well packed"
                                + " (Holmes, University of Wisconsin); bags: 11 to 15 (Jarek and others, University of"
                                + " Wisconsin).")
                .needed("14 if not known, 13 in a bag.")
                .usually(6, 25);
        static final Field DRY_MATTER = Field.amount(
                        "dryMatterPercent", "Dry matter", Unit.PERCENT, "Of the feed as stored.")
                .needed("From a report, or 35 if not known.")
                .usually(15, 75);

        private Box() {}

        private static <E extends Enum<E>> Field list(String name, String label, Class<E> type, String fix) {
            return Field.pick(
                            name, label, "", Option.of(type, one -> Form.id(one).replace('_', ' ')), "Choose one")
                    .needed(fix);
        }

        private static Field inside(String fix) {
            return Field.amount("diameter", "Diameter inside", Unit.FOOT, "")
                    .needed(fix)
                    .usually(5, 110);
        }
    }
}
