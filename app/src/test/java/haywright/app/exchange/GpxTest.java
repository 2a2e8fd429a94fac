package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.exchange.gpx.Gpx;
import haywright.sampling.FieldShape;
import haywright.sampling.FieldWalk;
import java.io.StringReader;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.Test;
import org.xml.sax.SAXException;

class GpxTest {
    private static final Schema SCHEMA = schema();

    private static Schema schema() {
        try {
            return SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
                    .newSchema(GpxTest.class.getResource("gpx-part.xsd"));
        } catch (SAXException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void validate(String gpx) throws Exception {
        SCHEMA.newValidator().validate(new StreamSource(new StringReader(gpx)));
    }

    private static List<FieldWalk> walk(double west, double east) {
        var ring = List.of(List.of(west, 51.5), List.of(east, 51.5), List.of(east, 51.507), List.of(west, 51.507));
        return List.of(FieldWalk.of(FieldShape.of(List.of(ring)), 12, 7));
    }

    @Test
    void aWalkIsValidAndNamesItsStops() {
        var gpx = new Gpx("North \"pivot\" <1> & more \u0007", walk(-109.5, -109.49)).text();
        assertThatCode(() -> validate(gpx)).doesNotThrowAnyException();
        assertThat(gpx).contains("<name>S01</name>", "<name>S12</name>", "&lt;1&gt; &amp; more");
    }

    @Test
    void aWalkAcrossTheDateLineIsValid() {
        for (double west : new double[] {179.995, 179.99999999, -180, 179.9}) {
            assertThatCode(() -> validate(new Gpx("f", walk(west, west + 0.01)).text()))
                    .doesNotThrowAnyException();
        }
    }

    @Test
    void theSchemaRefusesWhatIsWrong() {
        var gpx = new Gpx("f", walk(-109.5, -109.49)).text();
        assertThatThrownBy(() -> validate(gpx.replaceFirst("lat=\"", "lat=\"9")))
                .isInstanceOf(SAXException.class);
        assertThatThrownBy(() -> validate(gpx.replace("<rte>", "<trek>"))).isInstanceOf(SAXException.class);
    }
}
