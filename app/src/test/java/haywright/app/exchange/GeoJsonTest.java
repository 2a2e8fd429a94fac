package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.ObjectMapper;
import haywright.app.exchange.geojson.GeoJson;
import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldWalk;
import haywright.workings.Refused;
import java.util.List;
import org.junit.jupiter.api.Test;

class GeoJsonTest {
    private static final String RING = "[[-109.5,44.5],[-109.49,44.5],[-109.49,44.51],[-109.5,44.51],[-109.5,44.5]]";
    private static final String POLYGON = "{\"type\":\"Polygon\",\"coordinates\":[" + RING + "]}";

    @Test
    void aFieldIsReadHoweverItIsWritten() {
        var typed = FieldShape.of(GeoJson.rings("−109.5, 44.5\n-109.49 44.5\n\n-109.49; 44.51\n-109.5,44.51\n"));
        for (var json : List.of(
                POLYGON,
                "{\"type\":\"MultiPolygon\",\"coordinates\":[[" + RING + "]]}",
                "{\"type\":\"Feature\",\"properties\":{},\"geometry\":" + POLYGON + "}",
                "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"geometry\":" + POLYGON
                        + "}]}")) {
            assertThat(FieldShape.of(GeoJson.rings(json))).isEqualTo(typed);
        }
    }

    @Test
    void zonesAreBlocksOrACollection() {
        var blocks = "-109.5,44.5\n-109.49,44.5\n-109.49,44.505\n\n-109.5,44.51\n-109.49,44.51\n-109.49,44.506";
        assertThat(GeoJson.zones(blocks)).hasSize(2);
        var feature = "{\"type\":\"Feature\",\"geometry\":" + POLYGON + "}";
        assertThat(GeoJson.zones("{\"type\":\"FeatureCollection\",\"features\":[" + feature + "," + feature + "]}"))
                .hasSize(2);
    }

    @Test
    void aWalkIsWrittenWithItsStopsNumberedThrough() throws Exception {
        var shape = FieldShape.of(GeoJson.rings(POLYGON));
        var json = new ObjectMapper()
                .readTree(GeoJson.write(List.of(FieldWalk.of(shape, 5, 1), FieldWalk.of(shape, 4, 2))));
        assertThat(json.path("type").asText()).isEqualTo("FeatureCollection");
        assertThat(json.path("features")).hasSize(2 + 5 + 4);
        assertThat(json.toString()).contains("\"S09\"").doesNotContain("\"S10\"");
    }

    @Test
    void whatIsNoFieldIsRefused() {
        for (var wrong : List.of(
                "{",
                "{\"type\":\"MultiPolygon\",\"coordinates\":[[" + RING + "],[" + RING + "]]}",
                "{\"type\":\"Point\"}",
                "north gate",
                "-109.5",
                POLYGON.replace("44.51", "\"x\""))) {
            assertThatThrownBy(() -> FieldShape.of(GeoJson.rings(wrong))).isInstanceOf(Refused.class);
        }
    }

    @Test
    void whatIsFarMoreThanAFieldIsRefusedWhileItIsRead() {
        var deep = "{\"type\":\"Polygon\",\"coordinates\":" + "[".repeat(100_000);
        var positions = "{\"type\":\"Polygon\",\"coordinates\":[[" + "[1,1],".repeat(100_000) + "[1,1]]]}";
        var rings = "{\"type\":\"Polygon\",\"coordinates\":[" + "[],".repeat(100_000) + "[]]}";
        var features = "{\"type\":\"FeatureCollection\",\"features\":[" + "{},".repeat(1000) + "{}]}";
        for (var wrong : List.of(deep, positions, rings, features, "1,1\n\n".repeat(1000))) {
            assertThatThrownBy(() -> GeoJson.zones(wrong)).isInstanceOf(Refused.class);
        }
        for (var wrong : List.of(deep, positions, "1,1\n".repeat(100_000))) {
            assertThatThrownBy(() -> FieldShape.of(GeoJson.rings(wrong))).isInstanceOf(Refused.class);
        }
    }
}
