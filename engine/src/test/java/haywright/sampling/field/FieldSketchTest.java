package haywright.sampling.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.quantity.Unit;
import haywright.sampling.field.FieldSketch.Point;
import haywright.workings.Refused;
import java.util.Collections;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;

class FieldSketchTest {
    private static final FieldShape.Corner GATE = new FieldShape.Corner(-109.5, 44.5);

    private static FieldSketch sketch(double... eastNorth) {
        var sketch = new FieldSketch(GATE, List.of());
        for (int i = 0; i < eastNorth.length; i += 2) {
            sketch = sketch.with(new Point(eastNorth[i], eastNorth[i + 1]));
        }
        return sketch;
    }

    // A quarter section is half a mile a side and 160 acres by definition of the acre (640 to the square mile).
    @Test
    void aQuarterSectionPacedOffIsAHundredAndSixtyAcres() {
        double side = Unit.MILE.toBase(0.5);
        var sketch = sketch(0, 0);
        for (double bearing : new double[] {0, 90, 180}) {
            sketch = sketch.with(sketch.last().leg(side, bearing));
        }
        assertThat(sketch.corners()).hasSize(4);
        assertThat(Unit.ACRE.fromBase(sketch.shape().squareMeters())).isCloseTo(160, within(0.01));
    }

    /** GeographicLib carries the same legs over the ellipsoid: within a thousandth of the way. */
    @Test
    void aLegLandsWhereAGeodesicReferencePutsIt() {
        for (double bearing = 0; bearing < 360; bearing += 30) {
            for (double meters : new double[] {50, 800, 5000}) {
                var sketch = sketch(0, 0, 30, 40).with(new Point(30, 40).leg(meters, bearing));
                var corners = sketch.shape().outer();
                var from = corners.get(1);
                var to = corners.get(2);
                var line = Geodesic.WGS84.Direct(from.latitude(), from.longitude(), bearing, meters);
                double off = Geodesic.WGS84.Inverse(line.lat2, line.lon2, to.latitude(), to.longitude()).s12;
                assertThat(off).as("%s m at %s°", meters, bearing).isLessThan(meters / 1000 + 0.02);
            }
        }
    }

    @Test
    void whatIsDrawnIsReadBackAsItWas() {
        var sketch = sketch(0, 0, 400, 10, 380, 300, -20, 310);
        var again = FieldSketch.of(sketch.shape().outer());
        for (int i = 0; i < 4; i++) {
            assertThat(again.corners().get(i).to(sketch.corners().get(i))).isLessThan(0.01);
        }
        assertThat(again.withoutLast().corners()).hasSize(3);
        assertThat(new FieldSketch(GATE, List.of()).withoutLast().corners()).isEmpty();
    }

    @Test
    void aFieldOnTheDateLineIsOneField() {
        var sketch = new FieldSketch(
                new FieldShape.Corner(179.999, 51.5),
                List.of(new Point(0, 0), new Point(800, 0), new Point(800, 400), new Point(0, 400)));
        assertThat(sketch.shape().squareMeters()).isCloseTo(320_000, within(100.0));
        assertThat(sketch.shape().outer().get(1).onTheGlobe().longitude()).isBetween(-180.0, -179.9);
    }

    @Test
    void anEdgeThatCrossesAnEarlierOneIsRefusedWhereItDoes() {
        var three = sketch(0, 0, 400, 0, 400, 400);
        assertThatThrownBy(() -> three.with(new Point(200, -200)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("edge 3 to 4")
                .hasMessageContaining("crosses edge 1 to 2 at -109.49")
                .hasMessageContaining(", 44.500000");
        // closing it is an edge too
        var spiral = sketch(0, 0, 400, 0, 400, 400, -100, 400, -100, -100, 500, -100, 500, 200);
        assertThatThrownBy(spiral::shape).hasMessageContaining("edges cross at -109.49");
    }

    @Test
    void cornersThatCannotBeAreRefused() {
        assertThatThrownBy(() -> sketch(0, 0, 400, 0, 400.1, 0)).hasMessageContaining("the one before");
        assertThatThrownBy(() -> sketch(0, 0, 60_000, 0)).hasMessageContaining("within 50 km");
        assertThatThrownBy(() -> sketch(0, 0, Double.NaN, 0)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> sketch(0, 0, 400, 0).shape()).hasMessageContaining("2 corners");
        assertThatThrownBy(() -> new FieldSketch(new FieldShape.Corner(44.5, -109.5), List.of()))
                .hasMessageContaining("swapped");
        assertThatThrownBy(
                        () -> new FieldSketch(GATE, Collections.nCopies(FieldSketch.MOST_CORNERS + 1, new Point(1, 1))))
                .hasMessageContaining("GeoJSON");
    }
}
