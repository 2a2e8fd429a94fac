package haywright.sampling.field;

import java.util.List;

/**
 * The WGS 84 ellipsoid, as far as a field needs it.
 *
 * <p>Area: Lambert's equal-area latitude integrated along each edge, which is straight in longitude and latitude:
 * {@code A = ∮ b²/2·q(φ) dλ} with {@code q = sin φ/(1 − e²sin²φ) + artanh(e·sin φ)/e}.
 *
 * @see "Snyder, Map Projections: A Working Manual, US Geological Survey Professional Paper 1395, equation 3-12 (from
 *     memory; checked against a geodesic library)"
 */
final class Ellipsoid {
    static final double A = 6_378_137;
    private static final double F = 1 / 298.257223563;
    private static final double B = A * (1 - F);
    private static final double E2 = F * (2 - F);
    private static final double E = StrictMath.sqrt(E2);

    /** Gauss–Legendre nodes and weights on −1 to 1, five points: exact far beyond need on an edge of a field. */
    private static final double[] NODES = {
        -0.9061798459386640, -0.5384693101056831, 0, 0.5384693101056831, 0.9061798459386640
    };

    private static final double[] WEIGHTS = {
        0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665, 0.2369268850561891
    };

    private Ellipsoid() {}

    /** Of a ring, always above 0, whichever way round it is written. */
    static double squareMeters(List<FieldShape.Corner> ring) {
        double sum = 0;
        // From the first corner's own q, so that the sum is of differences and small fields keep their digits.
        double datum = q(radians(ring.get(0).latitude()));
        for (int i = 0; i < ring.size(); i++) {
            var a = ring.get(i);
            var b = ring.get((i + 1) % ring.size());
            double from = radians(a.latitude());
            double to = radians(b.latitude());
            double mean = 0;
            for (int k = 0; k < NODES.length; k++) {
                mean += WEIGHTS[k] / 2 * (q((from + to) / 2 + (to - from) / 2 * NODES[k]) - datum);
            }
            sum += mean * radians(b.longitude() - a.longitude());
        }
        return Math.abs(sum) * B * B / 2;
    }

    private static double q(double latitude) {
        double s = StrictMath.sin(latitude);
        double es = E * s;
        return s / (1 - es * es) + StrictMath.log((1 + es) / (1 - es)) / (2 * E);
    }

    /** Meters a degree of longitude is long at a latitude. */
    static double metersPerLongitude(double latitudeDegrees) {
        double s = StrictMath.sin(radians(latitudeDegrees));
        return radians(1) * A / StrictMath.sqrt(1 - E2 * s * s) * StrictMath.cos(radians(latitudeDegrees));
    }

    /** Meters along the meridian from one latitude to another. */
    static double metersNorth(double fromDegrees, double toDegrees) {
        double from = radians(fromDegrees);
        double to = radians(toDegrees);
        double mean = 0;
        for (int k = 0; k < NODES.length; k++) {
            double s = StrictMath.sin((from + to) / 2 + (to - from) / 2 * NODES[k]);
            mean += WEIGHTS[k] / 2 * A * (1 - E2) / StrictMath.pow(1 - E2 * s * s, 1.5);
        }
        return mean * (to - from);
    }

    static double within180(double longitude) {
        double turned = (longitude + 180) % 360;
        return turned < 0 ? turned + 180 : turned - 180;
    }

    private static double radians(double degrees) {
        return degrees * Math.PI / 180;
    }
}
