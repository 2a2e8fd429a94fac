package haywright.sampling;

import haywright.quantity.Quantity;
import haywright.workings.Refused;
import java.util.OptionalDouble;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** How a lot lies there. Each kind has its own geometry; what it weighs is counted, weighed or worked out. */
public sealed interface Stock {
    /** Kilograms as fed, where this can be told from what is known. */
    OptionalDouble asFedKg();

    /** In the reader's words: "210 large round bales of 1,250 lb". */
    enum BaleKind {
        SMALL_SQUARE,
        LARGE_SQUARE,
        LARGE_ROUND
    }

    /**
     * Bales in a stack.
     *
     * @param count bales, at least 1
     * @param baleWeight the mean of what was weighed or judged, as fed
     * @param rows, columns, tiers how they are stacked; null when they lie loose
     */
    record Bales(
            BaleKind bale,
            int count,
            Quantity baleWeight,
            @Nullable Integer rows,
            @Nullable Integer columns,
            @Nullable Integer tiers)
            implements Stock {
        public Bales {
            if (count < 1) {
                throw new Refused("count", count + " bales", "a stack has at least one bale", "How many are there?");
            }
            if (!(baleWeight.base() > 0)) {
                throw new Refused(
                        "baleWeight",
                        baleWeight.value() + " " + baleWeight.unit().symbol(),
                        "a bale weighs something",
                        "Weigh five to ten of them and put in the mean.");
            }
        }

        @Override
        public OptionalDouble asFedKg() {
            return OptionalDouble.of(count * baleWeight.base());
        }
    }

    /** Silage in a bunker or a drive-over pile; the density is of dry matter. */
    record Bunker(Quantity length, Quantity width, Quantity height, Quantity densityDryMatter, double dryMatterPercent)
            implements Stock {
        @Override
        public OptionalDouble asFedKg() {
            return OptionalDouble.of(
                    length.base() * width.base() * height.base() * densityDryMatter.base() * 100 / dryMatterPercent);
        }
    }

    /** Silage in a plastic bag; the density is of dry matter, the length is of packed feed without the ends. */
    record Bag(Quantity diameter, Quantity length, Quantity densityDryMatter, double dryMatterPercent)
            implements Stock {
        @Override
        public OptionalDouble asFedKg() {
            double r = diameter.base() / 2;
            return OptionalDouble.of(
                    Math.PI * r * r * length.base() * densityDryMatter.base() * 100 / dryMatterPercent);
        }
    }

    /** A weight that somebody knows: off the scale, or from the load tickets. */
    record Weighed(Quantity mass) implements Stock {
        @Override
        public OptionalDouble asFedKg() {
            return OptionalDouble.of(mass.base());
        }
    }

    /** Feed that still stands in a field. What it yields is judged when plots have been clipped. */
    record Standing(UUID field, @Nullable Quantity yield) implements Stock {
        @Override
        public OptionalDouble asFedKg() {
            return OptionalDouble.empty();
        }
    }
}
