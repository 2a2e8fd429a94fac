package haywright.sampling.stock;

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
}
