package haywright.forage.energy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * TDN of a lot as its laboratory prints it, as the feed book has it, and which was used and by what rule.
 *
 * <p>The rule: an equation read in a source that names this feed, from an ADF that was measured and lies where such
 * lines hold, held near the laboratory's own where that is less ({@link HeldTdn}); else the laboratory's own; else a line
 * from memory; else the book. Somebody may pick another for one lot and one laboratory.
 *
 * @param laboratory that printed TDN, else of the newest report; empty where none is said
 * @param printed by it; empty where no report prints TDN
 * @param book as the row prints it
 * @param used empty where TDN is not known
 * @param way what was used: an id of {@link WaysToTdn}, or one of the constants here
 * @param picked whether somebody picked it
 * @param ways every equation made for such feed that the figures allow, the least first
 */
public record EnergyChoice(
        String laboratory,
        Optional<StatedTdn> printed,
        OptionalDouble book,
        Optional<Tdn> used,
        String way,
        boolean picked,
        List<WaysToTdn.Way> ways) {
    /** The laboratory's own figure. */
    public static final String LABORATORY = "laboratory";

    /** The feed book's. */
    public static final String BOOK = "book";

    /** How lots of the kind lie. */
    public static final String KIND = "kind";

    static final EnergyChoice NONE =
            new EnergyChoice("", Optional.empty(), OptionalDouble.empty(), Optional.empty(), KIND, false, List.of());

    public EnergyChoice {
        ways = List.copyOf(ways);
    }
}
