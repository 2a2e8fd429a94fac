package haywright.sampling;

import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** Everything that can be sampled. What counts as a unit, the usual take and the published method come with it. */
public enum Material {
    SMALL_SQUARE_BALE("small square bales"),
    LARGE_SQUARE_BALE("large square bales"),
    LARGE_ROUND_BALE("large round bales"),
    LOOSE_STACK("loose stack"),
    CUBES("hay cubes or pellets"),
    BALEAGE("baleage, wrapped bales"),
    CHOPPER_WAGON("chopper wagons at filling"),
    UPRIGHT_SILO("upright silo"),
    BUNKER_OR_PILE("bunker or drive-over pile"),
    SILAGE_BAG("silage bag"),
    MIXED_RATION("mixed ration at the bunk"),
    GRAIN_OR_BYPRODUCT("grain or by-product"),
    BAGGED_FEED("feed in bags"),
    STANDING_FORAGE("standing hay or pasture, clipped"),
    GRAZED_PASTURE("grazed pasture, plucked by hand"),
    STOCK_WATER("stock water");

    /** How an increment leaves the lot. */
    public enum Way {
        CORED,
        GRABBED,
        CLIPPED,
        BOTTLED
    }

    private static final PublishedTable TAKES = PublishedTable.read(Material.class, "takes.csv");
    private static final PublishedTable METHODS = PublishedTable.read(Material.class, "materials.csv");

    private final String words;

    Material(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** As documents and topics write it: {@code large_round_bale}. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** A unit in words: "bale", "scoop", "plot". */
    public String unit() {
        return take().text("unit");
    }

    public String units() {
        return take().text("units");
    }

    public Way way() {
        return Way.valueOf(take().text("way"));
    }

    /** Bales are counted, so that a share of them and a finite lot mean something. */
    public boolean isCounted() {
        return unit().equals("bale");
    }

    /** Bales and bags: which ones are drawn. */
    public boolean isDrawn() {
        return isCounted() || this == BAGGED_FEED;
    }

    public boolean isBaled() {
        return List.of(SMALL_SQUARE_BALE, LARGE_SQUARE_BALE, LARGE_ROUND_BALE, BALEAGE)
                .contains(this);
    }

    /** Wet feed goes on within minutes: cold, sealed, frozen for the road. */
    public boolean needsCold() {
        return take().text("cold").equals("yes");
    }

    /** Quartering is for chopped and mixed feeds; splitting cored hay parts leaf from stem. */
    public boolean maySplit() {
        return take().text("split").equals("yes");
    }

    /** The published method, text as the sources have it. */
    public Method method() {
        var row = METHODS.row("material", name());
        return new Method(
                row.text("lot"),
                row.text("count"),
                row.text("statistical"),
                row.text("increments"),
                row.text("tool"),
                row.text("bore"),
                row.text("depth"),
                row.text("entry"),
                row.text("split"),
                row.text("mass"),
                row.text("package"),
                row.text("storage"),
                row.text("timing"),
                row.text("do"),
                row.text("do_not"),
                row.text("safety"),
                row.text("left_out"),
                Practice.named(row.text("practice")),
                Source.read(row.text("source")));
    }

    double take(String column) {
        return take().number(column).orElseThrow();
    }

    OptionalDouble takeIfAny(String column) {
        return take().number(column);
    }

    /** What it is mostly made of, where nothing better is known; water is made of nothing that spreads. */
    public Crop usualCrop() {
        var crop = take().text("crop");
        return crop.isEmpty() ? Crop.MIXED_RATION : Crop.valueOf(crop);
    }

    private PublishedTable.Row take() {
        return TAKES.row("material", name());
    }

    public static List<String> ids() {
        return Arrays.stream(values()).map(Material::id).toList();
    }
}
