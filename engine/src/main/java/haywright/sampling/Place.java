package haywright.sampling;

/**
 * One bale's place in a lot.
 *
 * @param number as the stack was built: tier by tier, row by row, from 1
 * @param row from the front, from 1
 * @param column from the left, from 1
 * @param tier from the ground, from 1
 * @param side the face of the stack it shows, walked in this order
 * @param reachable whether a person on the ground can core it
 */
public record Place(int number, int row, int column, int tier, Side side, boolean reachable) {
    /** Faces in the order they are walked round; a loose row has only itself. */
    public enum Side {
        FRONT("front"),
        RIGHT("right side"),
        BACK("back"),
        LEFT("left side"),
        ROW("row"),
        INSIDE("inside");

        private final String words;

        Side(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** How far along its face, in walking order. */
    int along() {
        return switch (side) {
            case FRONT, ROW, INSIDE -> column;
            case RIGHT -> row;
            case BACK -> -column;
            case LEFT -> -row;
        };
    }

    /** "front, 3rd from the left, tier 2", as one faces that side; a loose bale is only counted. */
    public String words() {
        return switch (side) {
            case ROW -> "bale " + number;
            case FRONT -> facing(column, "left");
            // what is left from the front is right from behind; the front is at the left end of the right side
            case BACK -> facing(column, "right");
            case RIGHT -> facing(row, "left");
            case LEFT -> facing(row, "right");
            case INSIDE -> "inside, row %d, column %d, tier %d".formatted(row, column, tier);
        };
    }

    private String facing(int along, String end) {
        return "%s, %s from the %s as you face it, tier %d".formatted(side.words(), ordinal(along), end, tier);
    }

    private static String ordinal(int n) {
        int last = n % 10;
        boolean teen = n % 100 / 10 == 1;
        return n + (teen || last == 0 || last > 3 ? "th" : last == 1 ? "st" : last == 2 ? "nd" : "rd");
    }
}
