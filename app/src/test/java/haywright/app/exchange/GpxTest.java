package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.exchange.gpx.Gpx;
import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldWalk;
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
                    .newSchema(GpxTest.class.getResource("gpx-1.1.xsd"));
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
        for (var wrong : List.of(
                gpx.replaceFirst("lon=\"-109", "lon=\"180.0"),
                gpx.replaceFirst(" lon=\"[^\"]*\"", ""),
                gpx.replace("version=\"1.1\"", "version=\"1.0\""),
                gpx.replace(" creator=\"Haywright\"", ""),
                gpx.replaceFirst("<name>S01</name>", "<desc>first</desc><name>S01</name>"),
                gpx.replaceFirst("(?s)(<metadata>.*</metadata>)(.*)(<rte>)", "$2$1$3"),
                gpx.replaceFirst("<name>S01</name>", "<name>S01</name><fix>4d</fix>"))) {
            assertThat(wrong).isNotEqualTo(gpx);
            assertThatThrownBy(() -> validate(wrong)).isInstanceOf(SAXException.class);
        }
    }

    /** The parts that this house does not write are in the schema too, or it would not be the whole one. */
    @Test
    void theSchemaKnowsWhatOthersWrite() {
        var point = "<trkpt lat=\"44.5\" lon=\"-109.5\"><ele>1370.5</ele><time>2026-11-25T12:00:00Z</time>"
                + "<magvar>11.2</magvar><name>gate</name><link href=\"a.jpg\"><text>gate</text></link><sym>Flag</sym>"
                + "<fix>3d</fix><sat>7</sat><hdop>1.1</hdop><dgpsid>1023</dgpsid>"
                + "<extensions><x xmlns=\"urn:other\">1</x></extensions></trkpt>";
        var gpx =
                "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" creator=\"other\"><metadata><name>n</name>"
                        + "<author><name>a</name><email id=\"a\" domain=\"b.example\"/></author>"
                        + "<copyright author=\"a\"><year>2026</year></copyright><time>2026-11-25T12:00:00Z</time>"
                        + "<bounds minlat=\"44\" minlon=\"-110\" maxlat=\"45\" maxlon=\"-109\"/></metadata>"
                        + "<trk><name>t</name><number>1</number><trkseg>" + point + "</trkseg></trk></gpx>";
        assertThatCode(() -> validate(gpx)).doesNotThrowAnyException();
        assertThatThrownBy(() -> validate(gpx.replace("1023", "1024"))).isInstanceOf(SAXException.class);
        assertThatThrownBy(() -> validate(gpx.replace("<magvar>11.2", "<magvar>360")))
                .isInstanceOf(SAXException.class);
    }
}
