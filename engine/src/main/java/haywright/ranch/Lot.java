package haywright.ranch;

import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.energy.Weathered;
import haywright.forage.hazard.NitrateRisk;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.sampling.stock.Stock;
import haywright.workings.Names;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Feed that is taken as one thing: one cutting of one field, put up and stored alike.
 *
 * @param feedClass decides equations, limits and dangers
 * @param bookRow row of the feed book that stands in for what no report says; empty takes the class's own
 * @param where in the rancher's words: "north stackyard, against the road"
 * @param cutting "first", "second"; empty where it means nothing
 * @param madeOn the day it was baled or ensiled
 * @param storage how it is kept; null until somebody says
 * @param replacementPrice what a ton as fed would cost to replace, delivered; above zero, because a ration that counts
 *     hay as free gives it away; null until somebody says, and the usual price of its kind is taken till then
 * @param nitrateRisk drought, frost, shade or heavy nitrogen: a danger until it is tested, whatever the class
 * @param notes the rancher's own words
 * @param makeup whether it is one lot, as far as somebody said; null where nobody did
 * @param weathered what the weather did to its bales since they were sampled; null for nothing
 * @param weighings what was put over a scale, oldest first; what was entered stays beside it
 * @param use what is meant to be done with it; null where nobody said anything
 */
public record Lot(
        UUID id,
        String name,
        FeedClass feedClass,
        String bookRow,
        String where,
        String cutting,
        @Nullable LocalDate madeOn,
        @Nullable Storage storage,
        Stock stock,
        @Nullable Quantity replacementPrice,
        boolean nitrateRisk,
        String notes,
        @Nullable Makeup makeup,
        @Nullable Weathered weathered,
        List<LotWeighing> weighings,
        @Nullable Use use) {
    /**
     * What is meant to be done with a lot, as far as somebody said.
     *
     * @param sells price as fed in the yard at which some of it can be sold
     * @param left what is left of it at turnout is worth, as fed
     * @param face least that has to come off its open face a day: a depth, or a mass as fed
     * @param keep as fed, kept clean until the first calves come
     */
    public record Use(
            @Nullable Quantity sells,
            @Nullable Quantity left,
            @Nullable Quantity face,
            @Nullable Quantity keep) {
        public Use {
            price("sells", sells);
            price("left", left);
            if (face != null && face.unit().kind() != Kind.LENGTH) {
                Refused.unlessOfKind(Kind.MASS, "face", face);
            }
            notBelowNothing("face", face);
            if (keep != null) {
                Refused.unlessOfKind(Kind.MASS, "keep", keep);
            }
            notBelowNothing("keep", keep);
        }

        private static void price(String field, @Nullable Quantity price) {
            if (price != null) {
                Refused.unlessOfKind(Kind.PRICE, field, price);
            }
            notBelowNothing(field, price);
        }

        private static void notBelowNothing(String field, @Nullable Quantity value) {
            if (value != null) {
                Refused.ifBelowNothing(field, value, "this is 0 or more");
            }
        }

        boolean isNothing() {
            return sells == null && left == null && face == null && keep == null;
        }
    }

    /** Of which nobody said what is meant to be done with it. */
    public Lot(
            UUID id,
            String name,
            FeedClass feedClass,
            String bookRow,
            String where,
            String cutting,
            @Nullable LocalDate madeOn,
            @Nullable Storage storage,
            Stock stock,
            @Nullable Quantity replacementPrice,
            boolean nitrateRisk,
            String notes,
            @Nullable Makeup makeup,
            @Nullable Weathered weathered,
            List<LotWeighing> weighings) {
        this(
                id,
                name,
                feedClass,
                bookRow,
                where,
                cutting,
                madeOn,
                storage,
                stock,
                replacementPrice,
                nitrateRisk,
                notes,
                makeup,
                weathered,
                weighings,
                null);
    }

    public Lot {
        weighings = List.copyOf(weighings);
        use = use == null || use.isNothing() ? null : use;
        Names.require("name", name, "a lot");
        if (replacementPrice != null) {
            Refused.unlessOfKind(Kind.PRICE, "replacementPrice", replacementPrice);
        }
        if (replacementPrice != null && !(replacementPrice.value() > 0)) {
            throw new Refused(
                    "replacementPrice",
                    "$" + replacementPrice.value(),
                    "a ration gives away hay priced at nothing",
                    "Enter what it would cost delivered.");
        }
    }

    public enum Storage {
        BARN("under a roof"),
        TARPED("under a tarp"),
        OUTSIDE_OFF_GROUND("outside, off the ground"),
        OUTSIDE_ON_GROUND("outside, on the ground"),
        WRAPPED("wrapped in plastic"),
        BUNKER("in a bunker or pile"),
        BAG("in a bag"),
        SILO("in a silo"),
        BIN("in a bin"),
        STANDING("uncut, in the field");

        private final String words;

        Storage(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public boolean isNitrateDanger() {
        return nitrateRisk || NitrateRisk.isRisk(feedClass, FeedBook.published().rowFor(bookRow, feedClass));
    }

    public Lot with(List<LotWeighing> weighings) {
        return with(stock, weighings, use);
    }

    /** With another stock. */
    public Lot with(Stock other) {
        return with(other, weighings, use);
    }

    /** Meant for something else. */
    public Lot meant(@Nullable Use other) {
        return with(stock, weighings, other);
    }

    private Lot with(Stock stock, List<LotWeighing> weighings, @Nullable Use use) {
        return new Lot(
                id,
                name,
                feedClass,
                bookRow,
                where,
                cutting,
                madeOn,
                storage,
                stock,
                replacementPrice,
                nitrateRisk,
                notes,
                makeup,
                weathered,
                weighings,
                use);
    }

    /** The same weighing twice is kept once. */
    public Lot with(LotWeighing weighing) {
        if (weighings.contains(weighing)) {
            return this;
        }
        var all = new ArrayList<>(weighings);
        all.add(weighing);
        return with(all);
    }
}
