package haywright.forage.hazard;

import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Crops that store nitrate under drought, hail, shade, frost or heavy nitrogen: oats, barley, wheat, rye, triticale, corn
 * and its stalks, sorghum, millet, brassicas, weeds such as kochia and pigweed. An untested lot of one is a danger, never
 * an average. Ripe straw, seed, hulls and cobs are not among them; a lot can be marked as a risk whatever its class.
 */
public final class NitrateRisk {
    private static final Pattern CROP = Pattern.compile(
            "\\b(oats?|barley|wheat|rye|triticale|cornstalks?|corn stalks?|stover|sorghum|sudan\\w*|milo|millet|rape|brassicas?"
                    + "|turnips?|kale|beet tops|sugarbeet tops?|kochia|pigweed)\\b",
            Pattern.CASE_INSENSITIVE);

    private NitrateRisk() {}

    /** @param row of the feed book that stands for it; empty for any of its class */
    public static boolean isRisk(FeedClass feedClass, Optional<FeedBook.Row> row) {
        return switch (feedClass) {
            case CEREAL_HAY, CEREAL_SILAGE, CORN_SILAGE -> true;
            case CROP_RESIDUE ->
                row.or(() -> FeedBook.published().usual(feedClass))
                        .filter(r -> !isCrop(r))
                        .isEmpty();
            case GRASS_HAY, MIXED_HAY, PASTURE, LEGUME_SILAGE, BYPRODUCT_ENERGY ->
                row.filter(NitrateRisk::isCrop).isPresent();
            default -> false;
        };
    }

    private static boolean isCrop(FeedBook.Row row) {
        return CROP.matcher(row.feed()).find()
                && !row.feed().matches("(?i).*(middlings|bran|offal|screenings|hulls|cobs).*");
    }
}
