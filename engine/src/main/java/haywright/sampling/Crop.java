package haywright.sampling;

import java.util.Locale;

/** What the material is made of, as far as it decides how much one core differs from the next. */
public enum Crop {
    LEGUME_HAY("legume or mixed hay"),
    GRASS_HAY("grass or small-grain hay"),
    STRAW("straw or stover"),
    CORN_SILAGE("corn silage"),
    HAYLAGE("haylage or cereal silage"),
    PASTURE("pasture or range, clipped"),
    HAY_FIELD("hay field, plots of 25 m² and up"),
    MIXED_RATION("mixed ration"),
    DISTILLERS_GRAINS("distillers grains");

    private final String words;

    Crop(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
