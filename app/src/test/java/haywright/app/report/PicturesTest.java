package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.report.picture.CalvingPicture;
import haywright.app.report.picture.LotsPicture;
import haywright.app.report.picture.NeedPicture;
import haywright.app.report.picture.NeedPicture.Band;
import haywright.cattle.herd.Group.CalvingWeek;
import java.io.StringReader;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

class PicturesTest {
    private static final LocalDate TODAY = LocalDate.of(2027, 3, 24);
    private static final LocalDate FIRST = LocalDate.of(2027, 3, 1);

    private static Document read(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    private static List<String> texts(Document svg) {
        var texts = new ArrayList<String>();
        var nodes = svg.getElementsByTagName("text");
        for (int i = 0; i < nodes.getLength(); i++) {
            texts.add(nodes.item(i).getTextContent());
        }
        return texts;
    }

    private static String filled(Document svg, int bar) {
        var bars = svg.getDocumentElement().getElementsByTagName("rect");
        int inPatterns = 3;
        return ((Element) bars.item(inPatterns + bar)).getAttribute("fill");
    }

    @Test
    void calvingWeeksCarryTheirCounts() throws Exception {
        var picture = new CalvingPicture(
                "<b>Cows & calves</b>",
                List.of(new CalvingWeek(FIRST.plusDays(28), 7), new CalvingWeek(FIRST, 12)),
                TODAY);
        var svg = read(picture.svg());
        assertThat(texts(svg)).contains("12", "7", "today", "Mar 1");
        assertThat(svg.getElementsByTagName("title").item(0).getTextContent()).contains("<b>Cows & calves</b>");
        assertThat(filled(svg, 0)).as("a week that is past is white").isEqualTo("#fff");
        assertThat(filled(svg, 1)).as("a week still due is hatched").startsWith("url(#");
        assertThat(picture.words()).isEqualTo("19 due or calved from Mar 1 to Apr 4, 2027, most in the week of Mar 1");
    }

    @Test
    void theNeedSaysItsEndsAndItsHighestWeek() throws Exception {
        var dates = List.of(FIRST, FIRST.plusDays(30), FIRST.plusDays(60), FIRST.plusDays(90));
        var picture = new NeedPicture(
                "nem",
                "Energy",
                "Mcal",
                1,
                dates,
                List.of(
                        new Band("to stay alive", List.of(9.0, 9.0, 9.0, 9.0)),
                        new Band("for milk", List.of(0.0, 2.0, 6.04, 5.0)),
                        new Band("for nothing", List.of(0.0, 0.0, 0.0, 0.0))));
        assertThat(texts(read(picture.svg())))
                .contains("to stay alive", "for milk", "9.0 Mcal now", "15.0 Mcal", "14.0 Mcal")
                .doesNotContain("for nothing");
        assertThat(picture.words())
                .isEqualTo("Energy: 9.0 Mcal per day now, 15.0 Mcal at most, in the week of Apr 30,"
                        + " 14.0 Mcal in the week of May 30");
    }

    /** 200 of 250 tons is four fifths of 150 points; half the protein is half of 66. */
    @Test
    void lotsAreBarsOfTonsAndOfProteinEachByWhatIsKnown() throws Exception {
        var svg = read(new LotsPicture(List.of(
                        new LotsPicture.One(
                                "Bottom <hay>",
                                LotsPicture.Fill.TESTED,
                                "tested",
                                OptionalDouble.of(200_000),
                                150_000,
                                250_000,
                                OptionalDouble.of(8)),
                        new LotsPicture.One(
                                "Oat hay",
                                LotsPicture.Fill.DANGER,
                                "not tested",
                                OptionalDouble.empty(),
                                0,
                                0,
                                OptionalDouble.of(16))))
                .svg());
        assertThat(texts(svg)).contains("Bottom <hay>", "220 tons", "8.0 %", "not known", "16.0 %");
        assertThat(filled(svg, 0)).isEqualTo("#1d1b17");
        assertThat(filled(svg, 2)).isEqualTo("url(#lots-due)");
        assertThat(wide(svg, 0)).isEqualTo("120.0");
        assertThat(wide(svg, 1)).isEqualTo("33.0");
        assertThat(wide(svg, 2)).isEqualTo("66.0");
    }

    private static String wide(Document svg, int bar) {
        int inPatterns = 3;
        return ((Element) svg.getElementsByTagName("rect").item(inPatterns + bar)).getAttribute("width");
    }
}
