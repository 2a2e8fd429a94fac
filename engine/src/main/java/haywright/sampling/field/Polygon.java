package haywright.sampling.field;

import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;

/**
 * The boundary of a field as GeoJSON writes it.
 *
 * @param coordinates rings of positions, each longitude then latitude in degrees (WGS 84); the outer ring first, holes
 *     after it, each ring closed
 * @see "RFC 7946, The GeoJSON Format, section 3.1.6"
 */
public record Polygon(List<List<List<Double>>> coordinates) {
    public Polygon {
        coordinates = coordinates.stream()
                .map(ring -> ring.stream().map(List::copyOf).toList())
                .toList();
        var problems = new ArrayList<Problem>();
        if (coordinates.isEmpty()) {
            problems.add(problem("no ring", "a field has an outer boundary", "Draw it or import it again."));
        }
        for (var ring : coordinates) {
            for (var position : ring) {
                if (position.size() < 2 || !isOnEarth(position.get(0), position.get(1))) {
                    problems.add(problem(
                            position.toString(),
                            "a position is longitude (−180 to 180), then latitude (−90 to 90)",
                            "Check whether the two are swapped, or it is in another grid."));
                }
            }
            if (ring.size() < 4) {
                problems.add(problem(
                        ring.size() + " positions",
                        "a ring has at least four positions, the last the same as the first",
                        "Add the missing corners."));
            } else if (!ring.get(0).equals(ring.get(ring.size() - 1))) {
                problems.add(problem(
                        ring.get(ring.size() - 1).toString(),
                        "a ring ends where it began, at " + ring.get(0),
                        "Repeat the first position at the end."));
            }
        }
        Refused.unlessEmpty(problems);
    }

    private static boolean isOnEarth(double longitude, double latitude) {
        return Math.abs(longitude) <= 180 && Math.abs(latitude) <= 90;
    }

    private static Problem problem(String value, String rule, String fix) {
        return new Problem("coordinates", value, rule, fix);
    }
}
