package haywright.forage;

import java.util.Locale;

/** Classes of feed, as the feed book sorts them. The class decides which equation, which limits and which dangers. */
public enum FeedClass {
    LEGUME_HAY("legume hay", true, 88),
    GRASS_HAY("grass hay", true, 88),
    MIXED_HAY("mixed hay", true, 88),
    CEREAL_HAY("cereal hay", true, 88),
    STRAW("straw", true, 90),
    CROP_RESIDUE("crop residue", true, 89),
    CORN_SILAGE("corn silage", true, 34),
    LEGUME_SILAGE("legume silage", true, 33),
    CEREAL_SILAGE("cereal/grass silage", true, 34),
    PASTURE("pasture", true, 30),
    GRAIN("grain/pulse", false, 89),
    PROTEIN_MEAL("protein meal", false, 90),
    DISTILLERS_GRAINS("distillers grains", false, 90),
    BYPRODUCT_PROTEIN("by-product protein", false, 90),
    BYPRODUCT_ENERGY("by-product energy", false, 90),
    CAKE("cake or cubes", false, 90),
    TUB("tub or block", false, 96),
    MINERAL("mineral", false, 98),
    NPN("NPN", false, 98);

    private final String words;
    private final boolean forage;
    private final double usualDryMatter;

    FeedClass(String words, boolean forage, double usualDryMatter) {
        this.words = words;
        this.forage = forage;
        this.usualDryMatter = usualDryMatter;
    }

    public String words() {
        return words;
    }

    /** Percent of dry matter as fed that stands in until somebody measures it: the middle of the feed book's rows. */
    public double usualDryMatterPercent() {
        return usualDryMatter;
    }

    public boolean isForage() {
        return forage;
    }

    /** Dried and stacked; straw is none. */
    public boolean isHay() {
        return switch (this) {
            case LEGUME_HAY, GRASS_HAY, MIXED_HAY, CEREAL_HAY -> true;
            default -> false;
        };
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
