package haywright.app.words;

import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.lot.Derived;
import haywright.forage.lot.LotComposition;
import java.util.ArrayList;
import java.util.Optional;

/** How far a feed may lie from its figures, in plain words. "Likely" is nine times in ten. */
public final class Likely {
    /** The same lot shows the same figures each time. */
    public static final long SEED = 1;

    private Likely() {}

    /** "protein likely 9.1 to 10.4 %, TDN 54 to 61 %"; empty where nobody knows. */
    public static Optional<String> of(LotComposition made) {
        var said = new ArrayList<String>();
        protein(made.composition()).ifPresent(said::add);
        made.derived(SEED).stream()
                .filter(d -> d.analyte() == Analyte.TDN)
                .findFirst()
                .map(Likely::tdn)
                .ifPresent(said::add);
        return said.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", said));
    }

    /** "protein likely 9.1 to 10.4 %"; empty where nobody knows. */
    public static Optional<String> protein(Composition made) {
        var known = made.values().get(Analyte.CP);
        var lot = known == null ? null : known.lot();
        return lot == null
                ? Optional.empty()
                : Optional.of("protein likely %s to %s\u00a0%%"
                        .formatted(Show.number(Math.max(0, lot.low90()), 1), Show.number(lot.high90(), 1)));
    }

    private static String tdn(Derived d) {
        return "TDN likely %s to %s\u00a0%%".formatted(Show.number(d.low90(), 0), Show.number(d.high90(), 0));
    }

    /** Half of the likely range of protein in words without a digit: "about one and a half points"; empty where nobody knows. */
    public static Optional<String> pointsOfProtein(Composition made) {
        var known = made.values().get(Analyte.CP);
        var lot = known == null ? null : known.lot();
        if (lot == null) {
            return Optional.empty();
        }
        long halves = Math.round((lot.high90() - lot.low90())); // two halves of half a width
        return Optional.of(
                switch ((int) Math.max(1, halves)) {
                    case 1 -> "half a point";
                    case 2 -> "one point";
                    case 3 -> "one and a half points";
                    case 4 -> "two points";
                    case 5, 6 -> "three points";
                    case 7, 8 -> "four points";
                    default -> "five points or more";
                });
    }
}
