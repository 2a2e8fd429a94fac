package haywright.sampling.stock;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** How a lot is stored there. Each kind has its own geometry; what it weighs is counted, weighed or worked out. */
public sealed interface Stock extends Worked
        permits Stock.Bales,
                Stock.Bunker,
                Stock.Bag,
                Stock.Weighed,
                Stock.Standing,
                RoundPyramid,
                LooseStack,
                Pile,
                UprightSilo,
                Bin,
                Rick,
                Sacks,
                PartFed {
    /** Kilograms as fed, the last of {@link #lines()}; empty where this cannot be told from what is known. */
    default OptionalDouble asFedKg() {
        var lines = lines();
        return lines.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(lines.get(lines.size() - 1).value());
    }

    /**
     * What it weighs at the least and at the most, by how it was judged: the published range of its density, a guessed
     * bale, a weighed load. Empty where nothing is known.
     */
    Optional<MassRange> range();

    /** How many bales lie there; 0 for what does not lie in bales. */
    default int bales() {
        return 0;
    }

    /** Meters from the open face to the far end, of silage that is taken off a face; empty for all else. */
    default OptionalDouble alongFace() {
        return OptionalDouble.empty();
    }

    /** Dry matter that was typed where it was measured, % as it is stored there; empty for what is weighed without it. */
    default OptionalDouble dryMatter() {
        return OptionalDouble.empty();
    }

    /** How bales are made up. */
    enum BaleKind {
        SMALL_SQUARE("small square bales"),
        LARGE_SQUARE("large square bales"),
        LARGE_ROUND("large round bales");

        private final String words;

        BaleKind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * Bales in a stack.
     *
     * @param count bales, at least 1
     * @param baleWeight the mean of what was weighed or judged, as fed; null takes the usual one of its kind
     * @param rows, columns, tiers how they are stacked; null when they lie loose
     */
    record Bales(
            BaleKind bale,
            int count,
            @Nullable Quantity baleWeight,
            @Nullable Integer rows,
            @Nullable Integer columns,
            @Nullable Integer tiers)
            implements Stock {
        public Bales {
            var problems = new ArrayList<Problem>();
            if (count < 1) {
                problems.add(
                        new Problem("count", count + " bales", "a stack has at least one bale", "Enter how many."));
            } else if (count > Layout.MOST_BALES) {
                problems.add(new Problem(
                        "count",
                        String.format(Locale.US, "%,d bales", count),
                        String.format(Locale.US, "no yard has more than %,d", Layout.MOST_BALES),
                        "Check for an extra digit."));
            }
            if (baleWeight != null) {
                Refused.unlessOfKind(Kind.MASS, "baleWeight", baleWeight);
                Sizes.positive("baleWeight", baleWeight, "a bale weighs more than 0", "Weigh 5 to 10.", problems);
            }
            Sizes.atLeastOne("rows", rows, problems);
            Sizes.atLeastOne("columns", columns, problems);
            Sizes.atLeastOne("tiers", tiers, problems);
            Refused.unlessEmpty(problems);
        }

        @Override
        public int bales() {
            return count;
        }

        @Override
        public List<Line> lines() {
            return List.of(Sizes.counted(
                    count, baleWeight == null ? UsualBale.input(bale) : Sizes.typed("w", baleWeight, Unit.KILOGRAM)));
        }

        @Override
        public Optional<MassRange> range() {
            return Optional.of(
                    baleWeight == null
                            ? UsualBale.range(bale, count)
                            : MassRange.ofGuessedBales(bale, count, baleWeight));
        }
    }

    /** Silage in a bunker or a drive-over pile; the density is of dry matter, the percent of the feed as it lies. */
    record Bunker(Quantity length, Quantity width, Quantity height, Quantity densityDryMatter, double dryMatterPercent)
            implements Stock {
        public Bunker {
            Refused.unlessOfKind(Kind.LENGTH, "length", length);
            Refused.unlessOfKind(Kind.LENGTH, "width", width);
            Refused.unlessOfKind(Kind.LENGTH, "height", height);
            Refused.unlessOfKind(Kind.BULK_DENSITY, "densityDryMatter", densityDryMatter);
            var problems = new ArrayList<Problem>();
            Sizes.positive("length", length, "a bunker has a length", "Pace it out.", problems);
            Sizes.positive("width", width, "a bunker has a width", "Pace it out.", problems);
            Sizes.positive("height", height, "silage has a height", "Judge the average of the face.", problems);
            Sizes.silage(densityDryMatter, dryMatterPercent, problems);
            Refused.unlessEmpty(problems);
        }

        @Override
        public OptionalDouble alongFace() {
            return OptionalDouble.of(length.base());
        }

        @Override
        public OptionalDouble dryMatter() {
            return OptionalDouble.of(dryMatterPercent);
        }

        @Override
        public List<Line> lines() {
            double volume = length.base() * width.base() * height.base();
            return Sizes.packed(
                    Line.of(
                            "volume",
                            "length·width·height",
                            volume,
                            Unit.CUBIC_METER,
                            Source.ARITHMETIC,
                            Sizes.typed("length", length, Unit.METER),
                            Sizes.typed("width", width, Unit.METER),
                            Sizes.typed("height", height, Unit.METER)),
                    densityDryMatter,
                    dryMatterPercent);
        }

        @Override
        public Optional<MassRange> range() {
            return Optional.of(MassRange.ofDensity("BUNKER_OR_PILE", asFedKg().orElseThrow(), densityDryMatter));
        }
    }

    /** Silage in a plastic bag; the density is of dry matter, the length is of packed feed without the ends. */
    record Bag(Quantity diameter, Quantity length, Quantity densityDryMatter, double dryMatterPercent)
            implements Stock {
        public Bag {
            Refused.unlessOfKind(Kind.LENGTH, "diameter", diameter);
            Refused.unlessOfKind(Kind.LENGTH, "length", length);
            Refused.unlessOfKind(Kind.BULK_DENSITY, "densityDryMatter", densityDryMatter);
            var problems = new ArrayList<Problem>();
            Sizes.positive("diameter", diameter, "a bag has a diameter", "It is printed on the bag.", problems);
            Sizes.positive("length", length, "a bag has a length", "Pace it out, without the ends.", problems);
            Sizes.silage(densityDryMatter, dryMatterPercent, problems);
            Refused.unlessEmpty(problems);
        }

        @Override
        public OptionalDouble alongFace() {
            return OptionalDouble.of(length.base());
        }

        @Override
        public OptionalDouble dryMatter() {
            return OptionalDouble.of(dryMatterPercent);
        }

        private double volume() {
            double r = diameter.base() / 2;
            return Math.PI * r * r * length.base();
        }

        @Override
        public List<Line> lines() {
            return Sizes.packed(
                    Line.of(
                            "volume",
                            "pi·(diameter/2)^2·length",
                            volume(),
                            Unit.CUBIC_METER,
                            Source.ARITHMETIC,
                            Input.published("pi", Math.PI, Unit.NONE, Source.ARITHMETIC),
                            Sizes.typed("diameter", diameter, Unit.METER),
                            Sizes.typed("length", length, Unit.METER)),
                    densityDryMatter,
                    dryMatterPercent);
        }

        @Override
        public Optional<MassRange> range() {
            return Optional.of(MassRange.ofDensity("SILAGE_BAG", asFedKg().orElseThrow(), densityDryMatter));
        }
    }

    /** A weight that somebody knows: off the scale, or from the load tickets. */
    record Weighed(Quantity mass) implements Stock {
        public Weighed {
            Refused.unlessOfKind(Kind.MASS, "mass", mass);
            var problems = new ArrayList<Problem>();
            Sizes.positive(
                    "mass", mass, "a lot weighs more than 0", "Enter what the load tickets add up to.", problems);
            Refused.unlessEmpty(problems);
        }

        @Override
        public List<Line> lines() {
            return List.of(Line.of(
                    "mass",
                    "weighed",
                    mass.base(),
                    Unit.KILOGRAM,
                    Source.ARITHMETIC,
                    Sizes.typed("weighed", mass, Unit.KILOGRAM)));
        }

        @Override
        public Optional<MassRange> range() {
            return Optional.of(MassRange.ofScale(mass.base()));
        }
    }

    /** Feed that still stands in a field. What it yields is judged when plots have been clipped; until then no lines. */
    record Standing(UUID field, @Nullable Quantity yield) implements Stock {
        public Standing {
            if (yield != null) {
                Refused.unlessOfKind(Kind.YIELD, "yield", yield);
                var problems = new ArrayList<Problem>();
                Sizes.positive("yield", yield, "a yield is above 0", "Leave it empty if not known.", problems);
                Refused.unlessEmpty(problems);
            }
        }

        @Override
        public List<Line> lines() {
            return List.of();
        }

        @Override
        public Optional<MassRange> range() {
            return Optional.empty();
        }
    }
}
