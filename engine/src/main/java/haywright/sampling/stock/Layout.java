package haywright.sampling.stock;

import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** How the bales of a lot lie: a block, a pyramid of rounds, or loose in the order they are walked past. */
public sealed interface Layout {
    /** More bales than any stackyard; above it a figure was typed wrong. */
    int MOST_BALES = 1_000_000;

    int count();

    /** Every bale, as the stack was built. */
    List<Place> places();

    /** Bales of its row and tier that are there: the last row of the last tier may be short. */
    int inRow(Place place);

    /** Rows of its tier that have a bale. */
    int rowsOf(Place place);

    /**
     * "back, 3rd from the left as you face it, tier 2": on every face one counts from the left, as one reads, whichever way
     * one walks.
     */
    default String words(Place place) {
        return switch (place.side()) {
            case ROW -> "bale " + place.number();
            case INSIDE -> "inside, row %d, column %d, tier %d".formatted(place.row(), place.column(), place.tier());
            case FRONT -> facing(place, place.column());
            case RIGHT -> facing(place, place.row());
            // what is right from the front is left from behind, and the back is at the left end of the left side
            case BACK -> facing(place, inRow(place) + 1 - place.column());
            case LEFT -> facing(place, rowsOf(place) + 1 - place.row());
        };
    }

    private static String facing(Place place, int fromLeft) {
        int last = fromLeft % 10;
        boolean teen = fromLeft % 100 / 10 == 1;
        return "%s, %d%s from the left as you face it, tier %d"
                .formatted(
                        place.side().words(),
                        fromLeft,
                        teen || last == 0 || last > 3 ? "th" : last == 1 ? "st" : last == 2 ? "nd" : "rd",
                        place.tier());
    }

    /**
     * How a stock of bales lies; empty for everything else. Where more were counted than the stack is drawn for, nobody
     * knows where the others are, and all are taken as loose.
     */
    static Optional<Layout> of(Stock stock) {
        if (stock instanceof RoundPyramid p) {
            return Optional.of(
                    new Pyramid(p.base(), p.tiers(), p.length(), p.count(), reach(Stock.BaleKind.LARGE_ROUND)));
        }
        if (stock instanceof Stock.Bales b) {
            return Optional.of(
                    b.rows() == null
                                    || b.columns() == null
                                    || b.tiers() == null
                                    || b.count() > (long) b.rows() * b.columns() * b.tiers()
                            ? new Loose(b.count())
                            : Block.open(b.rows(), b.columns(), b.tiers(), b.count(), reach(b.bale())));
        }
        // which of them were taken nobody knows
        return stock instanceof PartFed p && p.bales() > 0 ? Optional.of(new Loose(p.bales())) : Optional.empty();
    }

    /**
     * Tiers that a person on the ground can core at chest height or below: judged from how high a bale of the kind is. A
     * ladder against a stack is not offered.
     */
    static int reach(Stock.BaleKind bale) {
        return switch (bale) {
            case SMALL_SQUARE -> 4;
            case LARGE_SQUARE -> 2;
            case LARGE_ROUND -> 1;
        };
    }

    /**
     * Rows behind each other, columns side by side, tiers upward.
     *
     * @param reachTiers tiers a person on the ground can core; a ladder is not offered
     * @param open faces one can walk up to; a stack against a wall shows fewer
     */
    record Block(int rows, int columns, int tiers, int count, int reachTiers, Set<Place.Side> open) implements Layout {
        public Block {
            fits(count, (long) rows * columns * tiers, rows, columns, tiers);
            open = Collections.unmodifiableSet(
                    open.isEmpty() ? EnumSet.noneOf(Place.Side.class) : EnumSet.copyOf(open));
        }

        public static Block open(int rows, int columns, int tiers, int count, int reachTiers) {
            return new Block(
                    rows,
                    columns,
                    tiers,
                    count,
                    reachTiers,
                    EnumSet.of(Place.Side.FRONT, Place.Side.RIGHT, Place.Side.BACK, Place.Side.LEFT));
        }

        @Override
        public List<Place> places() {
            var places = new ArrayList<Place>(count);
            for (int i = 0; i < count; i++) {
                int tier = i / (rows * columns) + 1;
                int row = i / columns % rows + 1;
                int column = i % columns + 1;
                var side = side(row, column);
                places.add(new Place(i + 1, row, column, tier, side, side != Place.Side.INSIDE && tier <= reachTiers));
            }
            return List.copyOf(places);
        }

        @Override
        public int inRow(Place place) {
            return Math.min(columns, inTier(place) - (place.row() - 1) * columns);
        }

        @Override
        public int rowsOf(Place place) {
            return Math.min(rows, (inTier(place) + columns - 1) / columns);
        }

        private int inTier(Place place) {
            return count - (place.tier() - 1) * rows * columns;
        }

        private Place.Side side(int row, int column) {
            if (row == 1 && open.contains(Place.Side.FRONT)) {
                return Place.Side.FRONT;
            }
            if (column == columns && open.contains(Place.Side.RIGHT)) {
                return Place.Side.RIGHT;
            }
            if (row == rows && open.contains(Place.Side.BACK)) {
                return Place.Side.BACK;
            }
            return column == 1 && open.contains(Place.Side.LEFT) ? Place.Side.LEFT : Place.Side.INSIDE;
        }
    }

    /**
     * Round bales lying on their curved sides, each tier one bale narrower than the one below. Rounds are cored through
     * the curved side, which only the outer bales of a tier show; the flat ends of the pile are never cored.
     *
     * @param base bales across the bottom tier
     * @param length bales along the pile
     */
    record Pyramid(int base, int tiers, int length, int count, int reachTiers) implements Layout {
        public Pyramid {
            check(base, tiers, length, count);
        }

        static void check(int base, int tiers, int length, int count) {
            if (tiers > base) {
                throw new Refused(
                        "tiers",
                        tiers + " tiers on " + base + " bales",
                        "each pyramid tier is one bale narrower, so there are no more tiers than bales across",
                        "Enter how many are side by side on the ground.");
            }
            long perLength = 0;
            for (int tier = 1; tier <= tiers; tier++) {
                perLength += base - tier + 1;
            }
            fits(count, perLength * length, base, tiers, length);
        }

        @Override
        public List<Place> places() {
            var places = new ArrayList<Place>(count);
            for (int tier = 1; tier <= tiers; tier++) {
                int across = base - tier + 1;
                for (int row = 1; row <= length; row++) {
                    for (int column = 1; column <= across && places.size() < count; column++) {
                        var side =
                                column == 1 ? Place.Side.LEFT : column == across ? Place.Side.RIGHT : Place.Side.INSIDE;
                        places.add(new Place(
                                places.size() + 1,
                                row,
                                column,
                                tier,
                                side,
                                side != Place.Side.INSIDE && tier <= reachTiers));
                    }
                }
            }
            return List.copyOf(places);
        }

        @Override
        public int inRow(Place place) {
            return base - place.tier() + 1;
        }

        @Override
        public int rowsOf(Place place) {
            int below = 0;
            for (int tier = 1; tier < place.tier(); tier++) {
                below += (base - tier + 1) * length;
            }
            return Math.min(length, (count - below + inRow(place) - 1) / inRow(place));
        }
    }

    /** Bales that stand apart, counted in the order one walks past them. */
    record Loose(int count) implements Layout {
        public Loose {
            fits(count, count, 1, 1, 1);
        }

        @Override
        public List<Place> places() {
            var places = new ArrayList<Place>(count);
            for (int i = 1; i <= count; i++) {
                places.add(new Place(i, 1, i, 1, Place.Side.ROW, true));
            }
            return List.copyOf(places);
        }

        @Override
        public int inRow(Place place) {
            return count;
        }

        @Override
        public int rowsOf(Place place) {
            return 1;
        }
    }

    private static void fits(int count, long room, int a, int b, int c) {
        var problems = new ArrayList<Problem>();
        if (count < 1 || count > MOST_BALES) {
            problems.add(new Problem(
                    "count", count + " bales", "a stack has 1 to " + MOST_BALES + " bales", "Enter how many."));
        } else if (Math.max(a, Math.max(b, c)) > Sizes.MOST_ALONG && room > count) {
            problems.add(new Problem(
                    "rows",
                    a + " × " + b + " × " + c,
                    "no stack has more than " + Sizes.MOST_ALONG + " rows, columns or tiers",
                    "Check for an extra digit."));
        } else if (a < 1 || b < 1 || c < 1) {
            problems.add(new Problem(
                    "rows",
                    a + " × " + b + " × " + c,
                    "a stack has at least one row, one column and one tier",
                    "Leave all three out if the bales are not stacked."));
        } else if (room < count) {
            problems.add(new Problem(
                    "count",
                    count + " bales in " + a + " × " + b + " × " + c,
                    "as drawn, the stack holds only " + room + " bales",
                    "Check for a missing row or tier, or fewer bales."));
        }
        Refused.unlessEmpty(problems);
    }
}
