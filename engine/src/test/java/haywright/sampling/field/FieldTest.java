package haywright.sampling.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.PolygonArea;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FieldTest {
    private static FieldShape field(double... numbers) {
        return FieldShape.of(List.of(ring(numbers)));
    }

    private static List<List<Double>> ring(double... numbers) {
        var ring = new ArrayList<List<Double>>();
        for (int i = 0; i < numbers.length; i += 2) {
            ring.add(List.of(numbers[i], numbers[i + 1]));
        }
        return ring;
    }

    /** A rectangle about so many meters, its south-west corner in the high sagebrush. */
    private static FieldShape rectangle(double east, double north) {
        double x = east / 79_000;
        double y = north / 111_150;
        return field(-109.5, 44.5, -109.5 + x, 44.5, -109.5 + x, 44.5 + y, -109.5, 44.5 + y, -109.5, 44.5);
    }

    static Stream<FieldShape> shapes() {
        return Stream.of(
                rectangle(800, 400),
                rectangle(2000, 3),
                field(
                        -109.5, 44.5, -109.49, 44.5, -109.49, 44.503, -109.497, 44.503, -109.497, 44.51, -109.5,
                        44.51), // L
                FieldShape.of(List.of(
                        ring(-109.5, 44.5, -109.49, 44.5, -109.49, 44.508, -109.5, 44.508),
                        ring(-109.497, 44.502, -109.493, 44.502, -109.493, 44.505, -109.497, 44.505))),
                field(179.995, 51.5, -179.994, 51.5, -179.994, 51.507, 179.995, 51.507, 179.995, 51.5),
                field(-109.5, 44.5, -109.49, 44.505, -109.5, 44.51, -109.496, 44.505), // an arrowhead
                field(20, 0.0, 20.01, 0.001, 20.003, -0.012),
                rectangle(12_700, 12_700));
    }

    /** GeographicLib's edges are geodesics; cut into short steps along our straight ones they are the same line. */
    @ParameterizedTest
    @MethodSource("shapes")
    void theAreaIsThatOfAGeodesicReference(FieldShape field) {
        double expected = 0;
        for (int r = 0; r < field.rings().size(); r++) {
            expected += (r == 0 ? 1 : -1) * geodesic(field.rings().get(r), 400);
        }
        assertThat(field.squareMeters() / expected).isCloseTo(1, within(1e-7));
    }

    @Test
    void straightInDegreesAndGeodesicDifferByLessThanAThousandthOnAField() {
        var field = rectangle(1600, 800);
        assertThat(field.squareMeters() / geodesic(field.outer(), 1)).isCloseTo(1, within(1e-3));
    }

    private static double geodesic(List<FieldShape.Corner> ring, int steps) {
        var area = new PolygonArea(Geodesic.WGS84, false);
        for (int i = 0; i < ring.size(); i++) {
            var a = ring.get(i);
            var b = ring.get((i + 1) % ring.size());
            for (int k = 0; k < steps; k++) {
                double s = (double) k / steps;
                area.AddPoint(
                        a.latitude() + s * (b.latitude() - a.latitude()),
                        a.longitude() + s * (b.longitude() - a.longitude()));
            }
        }
        return Math.abs(area.Compute().area);
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void theWalkStaysInTheFieldAndIsAsLongAsItSays(FieldShape field) {
        var walk = FieldWalk.of(field, 15, 7);
        assertThat(walk.stops()).hasSize(15).allMatch(field::contains);
        double length = 0;
        for (int i = 0; i + 1 < walk.path().size(); i++) {
            var a = walk.path().get(i);
            var b = walk.path().get(i + 1);
            length += Geodesic.WGS84.Inverse(a.latitude(), a.longitude(), b.latitude(), b.longitude()).s12;
        }
        assertThat(walk.lengthMeters() / length).isCloseTo(1, within(1e-3));
        assertThat(walk.outsideMeters()).isBetween(0.0, walk.lengthMeters()); // round a bay it is more than half
        FormulaCheck.reEvaluates(walk);
        assertThat(FieldWalk.of(field, 15, 7)).isEqualTo(walk);
        assertThat(FieldWalk.of(field, 15, 8).stops()).isNotEqualTo(walk.stops());
    }

    /** A slough in the middle, and a field bent round its neighbor's yard: nobody is sent through either. */
    @Test
    void theWalkGoesRoundWhatIsNoField() {
        var slough = ring(-109.4970, 44.5006, -109.4930, 44.5006, -109.4930, 44.5030, -109.4970, 44.5030);
        var around = ring(-109.4999, 44.5001, -109.4901, 44.5001, -109.4901, 44.5036, -109.4999, 44.5036);
        var bent = FieldShape.of(List.of(ring(
                -109.5, 44.5, -109.49, 44.5, -109.49, 44.5036, -109.493, 44.5036, -109.493, 44.501, -109.497, 44.501,
                -109.497, 44.5036, -109.5, 44.5036)));
        for (var field : List.of(FieldShape.of(List.of(around, slough)), bent)) {
            var rings = new Plane(field).flat(field);
            for (var walk : List.of(FieldWalk.of(field, 15, 7), FieldWalk.grid(field, 15, 7))) {
                var path = walk.path().stream().map(new Plane(field)::flat).toList();
                double outside = 0;
                for (int i = 0; i + 1 < path.size(); i++) {
                    double inside = 0;
                    for (var piece : Plane.clipped(rings, path.get(i), path.get(i + 1))) {
                        inside += piece[0].to(piece[1]);
                    }
                    // along an edge neither side counts; a step across leaves whole meters outside
                    var middle = path.get(i).toward(path.get(i + 1), 0.5);
                    boolean onEdge = rings.stream().anyMatch(ring -> nearEdge(ring, middle));
                    outside += onEdge ? 0 : path.get(i).to(path.get(i + 1)) - inside;
                }
                assertThat(outside).isLessThan(0.1);
                assertThat(walk.outsideMeters()).isPositive();
                FormulaCheck.reEvaluates(walk);
            }
        }
    }

    private static boolean nearEdge(List<Plane.Point> ring, Plane.Point p) {
        for (int i = 0; i < ring.size(); i++) {
            var a = ring.get(i);
            var b = ring.get((i + 1) % ring.size());
            if (a.to(p) + p.to(b) - a.to(b) < 1e-6) {
                return true;
            }
        }
        return false;
    }

    /** Over seeds, stops fall on every tenth of the length and of the width equally often. */
    @Test
    void stopsSpreadEvenlyOverARectangle() {
        var along = new int[10];
        var across = new int[10];
        int seeds = 2000;
        double x = 800.0 / 79_000;
        double y = 400.0 / 111_150;
        // Inside the strip the walk keeps off: ten meters or a twentieth of the width.
        double edge = 10.0;
        for (long seed = 0; seed < seeds; seed++) {
            for (var stop : FieldWalk.of(rectangle(800, 400), 1, seed).stops()) {
                double east = (stop.longitude() + 109.5) / x * 800;
                double north = (stop.latitude() - 44.5) / y * 400;
                along[(int) Math.max(0, Math.min(9, (east - edge) / (800 - 2 * edge) * 10))]++;
                across[(int) Math.max(0, Math.min(9, (north - edge) / (400 - 2 * edge) * 10))]++;
            }
        }
        double limit = new ChiSquaredDistribution(9).inverseCumulativeProbability(0.999);
        assertThat(chiSquare(along, seeds / 10.0)).isLessThan(limit);
        assertThat(chiSquare(across, seeds / 10.0)).isLessThan(limit);
    }

    private static double chiSquare(int[] seen, double expected) {
        double sum = 0;
        for (int count : seen) {
            sum += Math.pow(count - expected, 2) / expected;
        }
        return sum;
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void theFarthestPointIsAtLeastAsFarAsAnyPointOfALattice(FieldShape field) {
        var walk = FieldWalk.of(field, 12, 3);
        var plane = new Plane(field);
        var rings = plane.flat(field);
        var stops = walk.stops().stream().map(plane::flat).toList();
        var box = Plane.smallestBox(rings.get(0));
        double lattice = 0;
        for (int i = 0; i <= 300; i++) {
            for (int j = 0; j <= 300; j++) {
                var point = box.at(i / 300.0, j / 300.0);
                if (Plane.inside(rings, point)) {
                    lattice = Math.max(
                            lattice, stops.stream().mapToDouble(point::to).min().orElseThrow());
                }
            }
        }
        double cell = Math.hypot(box.length(), box.width()) / 300;
        assertThat(walk.farthestMeters()).isBetween(lattice * (1 - 1e-9), lattice + cell);
    }

    @Test
    void anEvenGridReachesFartherCornersThanTheM() {
        var walk = FieldWalk.of(rectangle(800, 400), 15, 7);
        assertThat(walk.gridFarthestMeters()).isLessThan(walk.farthestMeters());
        assertThat(walk.farthestMeters() / walk.gridFarthestMeters()).isLessThan(3);
    }

    @Test
    void aFieldAcrossTheDateLineIsOneField() {
        var field = field(179.995, 51.5, -179.994, 51.5, -179.994, 51.507, 179.995, 51.507);
        assertThat(field.squareMeters() / 1e4).isBetween(50.0, 70.0);
        assertThat(field.contains(new FieldShape.Corner(180.001, 51.503))).isTrue();
    }

    @Test
    void aSelfCrossingFieldIsRefusedWithTheCrossingPoint() {
        assertThatThrownBy(() -> field(-109.5, 44.5, -109.49, 44.51, -109.49, 44.5, -109.5, 44.51, -109.5, 44.5))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("-109.495000, 44.505000")
                .hasMessageContaining("order of the corners");
    }

    @Test
    void fieldsThatCannotBeAreRefused() {
        assertThatThrownBy(() -> field(-109.5, 44.5, -109.49, 44.5, -109.5, 44.5))
                .hasMessageContaining("2 corners");
        assertThatThrownBy(() -> field(-109.5, 44.5, -109.49, 44.5, -109.48, 44.5))
                .hasMessageContaining("area");
        assertThatThrownBy(() -> field(44.5, -109.5, 44.5, -109.4, 44.6, -109.4))
                .hasMessageContaining("swapped");
        assertThatThrownBy(() -> FieldShape.of(List.of())).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> field(-109.5, 44.5, -109.49, -1, -109.49, 44.504, -109.5, 44.504))
                .hasMessageContaining("miles across"); // 45.5° of 69 miles
        assertThatThrownBy(() -> field(0, 44.5, 90, 44.5, 90, 44.504, 0, 44.504))
                .hasMessageContaining("miles across");
        assertThatThrownBy(() -> FieldShape.of(List.of(
                        ring(-109.5, 44.5, -109.49, 44.5, -109.49, 44.51, -109.5, 44.51),
                        ring(-109.4, 44.5, -109.39, 44.5, -109.39, 44.51))))
                .hasMessageContaining("inside the field");
        assertThatThrownBy(() -> FieldShape.of(List.of(
                        ring(-109.5, 44.5, -109.49, 44.5, -109.49, 44.51, -109.5, 44.51),
                        ring(-109.495, 44.505, -109.48, 44.505, -109.495, 44.506))))
                .hasMessageContaining("cross at -109.490000");
        assertThatThrownBy(() -> FieldWalk.of(rectangle(800, 400), 0, 1)).hasMessageContaining("0 stops");
    }

    @Test
    void fortyThousandAcresAreWalkedAndSaidToBeTooMuch() {
        var field = rectangle(12_700, 12_700);
        double acres = Unit.SQUARE_METER.to(Unit.ACRE, field.squareMeters());
        assertThat(acres).isCloseTo(40_000, within(500.0));
        assertThat(FieldWalk.advised(acres, false).why()).contains("mark zones");
        assertThat(FieldWalk.of(field, 20, 1).stops()).hasSize(20);
    }

    @Test
    void zonesShareTheStopsByArea() {
        var walks = FieldWalk.ofZones(
                List.of(
                        field(-109.5, 44.5, -109.494, 44.5, -109.494, 44.51, -109.5, 44.51),
                        field(-109.494, 44.5, -109.492, 44.5, -109.492, 44.51, -109.494, 44.51)),
                16,
                1);
        assertThat(walks).extracting(w -> w.stops().size()).containsExactly(12, 4);
    }
}
