package haywright.forage;

import java.util.Locale;

/** Classes of feed, as the feed book sorts them. The class decides which equation, which limits and which dangers. */
public enum FeedClass {
    LEGUME_HAY("legume hay", true),
    GRASS_HAY("grass hay", true),
    MIXED_HAY("mixed hay", true),
    CEREAL_HAY("cereal hay", true),
    STRAW("straw", true),
    CROP_RESIDUE("crop residue", true),
    CORN_SILAGE("corn silage", true),
    LEGUME_SILAGE("legume silage", true),
    CEREAL_SILAGE("cereal/grass silage", true),
    PASTURE("pasture", true),
    GRAIN("grain/pulse", false),
    PROTEIN_MEAL("protein meal", false),
    DISTILLERS_GRAINS("distillers grains", false),
    BYPRODUCT_PROTEIN("by-product protein", false),
    BYPRODUCT_ENERGY("by-product energy", false),
    MINERAL("mineral", false),
    NPN("NPN", false);

    private final String words;
    private final boolean forage;

    FeedClass(String words, boolean forage) {
        this.words = words;
        this.forage = forage;
    }

    public String words() {
        return words;
    }

    public boolean isForage() {
        return forage;
    }

    /**
     * Crops that store nitrate under drought, shade, frost or heavy nitrogen: oats, barley, wheat, triticale, sorghum,
     * millet, corn stover. An untested lot of such a class is a danger, never an average. Corn silage of a normal year
     * is not in it; a lot can be marked as a risk whatever its class.
     */
    public boolean isNitrateRisk() {
        return this == CEREAL_HAY || this == CEREAL_SILAGE;
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
