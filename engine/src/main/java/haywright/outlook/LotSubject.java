package haywright.outlook;

import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.sampling.Crop;
import haywright.sampling.LotFacts;
import haywright.sampling.Material;
import haywright.sampling.Subject;
import haywright.sampling.stock.Bin;
import haywright.sampling.stock.Layout;
import haywright.sampling.stock.LooseStack;
import haywright.sampling.stock.PartFed;
import haywright.sampling.stock.Pile;
import haywright.sampling.stock.Rick;
import haywright.sampling.stock.RoundPyramid;
import haywright.sampling.stock.Sacks;
import haywright.sampling.stock.Stock;
import haywright.sampling.stock.UprightSilo;
import org.jspecify.annotations.Nullable;

/** A lot as something to be sampled: which material it is, how it lies, what it is made of. */
public final class LotSubject {
    private LotSubject() {}

    public static Subject of(Lot lot) {
        var material = material(lot);
        var layout = Layout.of(lot.stock());
        double tons = Unit.TON.fromBase(LotTons.of(lot).kg().orElse(0));
        var makeup = lot.makeup();
        var facts = makeup == null ? LotFacts.PLAIN.with(tons) : makeup.facts(tons);
        return new Subject(
                material,
                lot.stock() instanceof Sacks s
                        ? s.bags()
                        : layout.map(Layout::count).orElse(0),
                layout.orElse(null),
                crop(lot.feedClass()),
                0,
                0,
                null,
                facts);
    }

    public static Material material(Lot lot) {
        var stock = lot.stock() instanceof PartFed part ? part.before() : lot.stock();
        if (stock instanceof Stock.Bales || stock instanceof RoundPyramid) {
            if (lot.storage() == Lot.Storage.WRAPPED || lot.storage() == null && isSilage(lot.feedClass())) {
                return Material.BALEAGE;
            }
            return stock instanceof Stock.Bales b ? bales(b.bale()) : Material.LARGE_ROUND_BALE;
        } else if (stock instanceof Stock.Bunker || stock instanceof Pile) {
            return Material.BUNKER_OR_PILE;
        } else if (stock instanceof Stock.Bag) {
            return Material.SILAGE_BAG;
        } else if (stock instanceof UprightSilo) {
            return Material.UPRIGHT_SILO;
        } else if (stock instanceof LooseStack || stock instanceof Rick) {
            return Material.LOOSE_STACK;
        } else if (stock instanceof Sacks) {
            return Material.BAGGED_FEED;
        } else if (stock instanceof Bin) {
            return inABin(lot.feedClass());
        } else if (stock instanceof Stock.Standing) {
            return Material.STANDING_FORAGE;
        }
        return weighed(lot.feedClass(), lot.storage());
    }

    /** Baled, it keeps only under plastic. */
    private static boolean isSilage(FeedClass feed) {
        return switch (feed) {
            case CORN_SILAGE, LEGUME_SILAGE, CEREAL_SILAGE -> true;
            default -> false;
        };
    }

    private static Material bales(Stock.BaleKind bale) {
        return switch (bale) {
            case SMALL_SQUARE -> Material.SMALL_SQUARE_BALE;
            case LARGE_SQUARE -> Material.LARGE_SQUARE_BALE;
            case LARGE_ROUND -> Material.LARGE_ROUND_BALE;
        };
    }

    /** Of a lot that is only known by its weight, the feed and how it is kept must say how it can lie. */
    private static Material weighed(FeedClass feed, Lot.@Nullable Storage storage) {
        return switch (feed) {
            case CORN_SILAGE, LEGUME_SILAGE, CEREAL_SILAGE ->
                storage == Lot.Storage.BAG
                        ? Material.SILAGE_BAG
                        : storage == Lot.Storage.SILO ? Material.UPRIGHT_SILO : Material.BUNKER_OR_PILE;
            case PASTURE -> Material.STANDING_FORAGE;
            default ->
                feed.isForage() && storage != Lot.Storage.BIN && storage != Lot.Storage.BAG
                        ? Material.LOOSE_STACK
                        : inABin(feed);
        };
    }

    /** Hay in a bin is cubes or pellets. */
    private static Material inABin(FeedClass feed) {
        return feed.isForage() ? Material.CUBES : Material.GRAIN_OR_BYPRODUCT;
    }

    static Crop crop(FeedClass feed) {
        return switch (feed) {
            case LEGUME_HAY, MIXED_HAY -> Crop.LEGUME_HAY;
            case GRASS_HAY, CEREAL_HAY -> Crop.GRASS_HAY;
            case STRAW, CROP_RESIDUE -> Crop.STRAW;
            case CORN_SILAGE -> Crop.CORN_SILAGE;
            case LEGUME_SILAGE, CEREAL_SILAGE -> Crop.HAYLAGE;
            case PASTURE -> Crop.PASTURE;
            default -> Crop.DISTILLERS_GRAINS;
        };
    }
}
