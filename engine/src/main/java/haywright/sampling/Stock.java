package haywright.sampling;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** How a lot lies there. Each kind has its own geometry; what it weighs is counted, weighed or worked out. */
public sealed interface Stock extends Worked {
    /** Kilograms as fed, where this can be told from what is known; the last of {@link #lines()}. */
    OptionalDouble asFedKg();

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
            var problems = new ArrayList<Problem>();
            if (count < 1) {
                problems.add(
                        new Problem("count", count + " bales", "a stack has at least one bale", "How many are there?"));
            }
            Refused.unlessOfKind(Kind.MASS, "baleWeight", baleWeight);
            positive("baleWeight", baleWeight, "a bale weighs something", "Weigh five to ten of them.", problems);
            atLeastOne("rows", rows, problems);
            atLeastOne("columns", columns, problems);
            atLeastOne("tiers", tiers, problems);
            Refused.unlessEmpty(problems);
        }

        @Override
        public OptionalDouble asFedKg() {
            return OptionalDouble.of(count * baleWeight.base());
        }

        @Override
        public List<Line> lines() {
            return List.of(Line.of(
                    "mass",
                    "n·w",
                    asFedKg().orElseThrow(),
                    Unit.KILOGRAM,
                    Source.ARITHMETIC,
                    Input.typed("n", count, Unit.NONE),
                    typed("w", baleWeight, Unit.KILOGRAM)));
        }
    }

    /** Silage in a bunker or a drive-over pile; the density is of dry matter, the per cent of the feed as it lies. */
    record Bunker(Quantity length, Quantity width, Quantity height, Quantity densityDryMatter, double dryMatterPercent)
            implements Stock {
        public Bunker {
            Refused.unlessOfKind(Kind.LENGTH, "length", length);
            Refused.unlessOfKind(Kind.LENGTH, "width", width);
            Refused.unlessOfKind(Kind.LENGTH, "height", height);
            Refused.unlessOfKind(Kind.BULK_DENSITY, "densityDryMatter", densityDryMatter);
            var problems = new ArrayList<Problem>();
            positive("length", length, "a bunker has a length", "Pace it out.", problems);
            positive("width", width, "a bunker has a width", "Pace it out.", problems);
            positive("height", height, "silage has a height", "Judge the mean of the face.", problems);
            silage(densityDryMatter, dryMatterPercent, problems);
            Refused.unlessEmpty(problems);
        }

        @Override
        public OptionalDouble asFedKg() {
            return OptionalDouble.of(
                    length.base() * width.base() * height.base() * densityDryMatter.base() * 100 / dryMatterPercent);
        }

        @Override
        public List<Line> lines() {
            double volume = length.base() * width.base() * height.base();
            return packed(
                    Line.of(
                            "volume",
                            "length·width·height",
                            volume,
                            Unit.CUBIC_METRE,
                            Source.ARITHMETIC,
                            typed("length", length, Unit.METRE),
                            typed("width", width, Unit.METRE),
                            typed("height", height, Unit.METRE)),
                    densityDryMatter,
                    dryMatterPercent);
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
            positive("diameter", diameter, "a bag has a diameter", "It is printed on the bag.", problems);
            positive("length", length, "a bag has a length", "Pace it out, without the ends.", problems);
            silage(densityDryMatter, dryMatterPercent, problems);
            Refused.unlessEmpty(problems);
        }

        @Override
        public OptionalDouble asFedKg() {
            return OptionalDouble.of(volume() * densityDryMatter.base() * 100 / dryMatterPercent);
        }

        private double volume() {
            double r = diameter.base() / 2;
            return Math.PI * r * r * length.base();
        }

        @Override
        public List<Line> lines() {
            return packed(
                    Line.of(
                            "volume",
                            "pi·(diameter/2)^2·length",
                            volume(),
                            Unit.CUBIC_METRE,
                            Source.ARITHMETIC,
                            Input.published("pi", Math.PI, Unit.NONE, Source.ARITHMETIC),
                            typed("diameter", diameter, Unit.METRE),
                            typed("length", length, Unit.METRE)),
                    densityDryMatter,
                    dryMatterPercent);
        }
    }

    /** A weight that somebody knows: off the scale, or from the load tickets. */
    record Weighed(Quantity mass) implements Stock {
        public Weighed {
            Refused.unlessOfKind(Kind.MASS, "mass", mass);
            var problems = new ArrayList<Problem>();
            positive("mass", mass, "a lot weighs something", "What do the load tickets add up to?", problems);
            Refused.unlessEmpty(problems);
        }

        @Override
        public OptionalDouble asFedKg() {
            return OptionalDouble.of(mass.base());
        }

        @Override
        public List<Line> lines() {
            return List.of(Line.of(
                    "mass",
                    "weighed",
                    mass.base(),
                    Unit.KILOGRAM,
                    Source.ARITHMETIC,
                    typed("weighed", mass, Unit.KILOGRAM)));
        }
    }

    /** Feed that still stands in a field. What it yields is judged when plots have been clipped; until then no lines. */
    record Standing(UUID field, @Nullable Quantity yield) implements Stock {
        public Standing {
            if (yield != null) {
                Refused.unlessOfKind(Kind.YIELD, "yield", yield);
                var problems = new ArrayList<Problem>();
                positive("yield", yield, "a crop yields something", "Leave it empty if it is not known.", problems);
                Refused.unlessEmpty(problems);
            }
        }

        @Override
        public OptionalDouble asFedKg() {
            return OptionalDouble.empty();
        }

        @Override
        public List<Line> lines() {
            return List.of();
        }
    }

    /** Dry matter from volume and density, then as fed: what lies there is heavier by its water. */
    private static List<Line> packed(Line volume, Quantity density, double dryMatterPercent) {
        double dryMatter = volume.value() * density.base();
        return List.of(
                volume,
                Line.of(
                        "drymatter",
                        "volume·density",
                        dryMatter,
                        Unit.KILOGRAM,
                        Source.ARITHMETIC,
                        typed("density", density, Unit.KG_PER_M3)),
                Line.of(
                        "mass",
                        "drymatter·100/dm",
                        dryMatter * 100 / dryMatterPercent,
                        Unit.KILOGRAM,
                        Source.ARITHMETIC,
                        Input.typed("dm", dryMatterPercent, Unit.PERCENT)));
    }

    /** In the engine's unit, and saying what was really typed. */
    private static Input typed(String symbol, Quantity quantity, Unit base) {
        var as = quantity.unit() == base
                ? Origin.TYPED
                : new Origin.Typed("typed in as " + quantity.value() + " "
                        + quantity.unit().symbol());
        return new Input(symbol, quantity.base(), base, as);
    }

    private static void positive(String field, Quantity size, String rule, String fix, List<Problem> problems) {
        if (!(size.base() > 0)) {
            problems.add(new Problem(field, size.value() + " " + size.unit().symbol(), rule, fix));
        }
    }

    private static void atLeastOne(String field, @Nullable Integer count, List<Problem> problems) {
        if (count != null && count < 1) {
            problems.add(new Problem(
                    field,
                    count.toString(),
                    "a stack has at least one of them",
                    "Leave all three empty if they lie loose."));
        }
    }

    private static void silage(Quantity density, double dryMatterPercent, List<Problem> problems) {
        positive(
                "densityDryMatter",
                density,
                "packed silage has a density",
                "14 lb of dry matter a cubic foot?",
                problems);
        if (!(dryMatterPercent > 0 && dryMatterPercent <= 100)) {
            problems.add(new Problem(
                    "dryMatterPercent",
                    dryMatterPercent + " %",
                    "dry matter lies above 0 and up to 100 %",
                    "Silage is mostly between 25 and 50."));
        }
    }
}
