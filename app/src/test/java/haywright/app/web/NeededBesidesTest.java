package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** What decides no mix, since most feeds have no figure for it: the same need on the herd's page and on the bench. */
class NeededBesidesTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    /** The row of a table that begins with this heading. */
    private static String row(String page, String heading) {
        return page.replaceAll("(?s).*?<th scope=\"row\">" + heading + "(.*?)</tr>.*", "$1");
    }

    /** The line of a list. */
    private static String line(String page, String heading) {
        return page.replaceAll("(?s).*?<li><b>" + heading + "</b>(.*?)</li>.*", "$1");
    }

    // Arkansas MP391: 0.12 % magnesium; Merck: 1,270 IU of vitamin A a lb, 3,900 IU a kg (1,770 a lb) of bulls.
    @Test
    void herdAndBenchShowTheSameNeedWithItsSource() {
        assertThat(ranch.send("lots/new/bales", OneRanch.hay("120", "1200 lb")).status())
                .isEqualTo(303);
        assertThat(ranch.send("herd/new/bull", "herd/new/bull", WeatherPagesTest.BULLS)
                        .status())
                .isEqualTo(303);
        var group = ranch.kept().groups().keySet().iterator().next();
        var herd = ranch.get("herd/" + group + "/need").body();
        var bench = ranch.get("bench/" + group + "/workings").body();
        assertThat(row(herd, "Magnesium")).contains("0.12 %");
        assertThat(herd).contains("MP391", "MSD", "NRC 1996");
        assertThat(line(bench, "Magnesium")).contains("0.12 %", "MP391", "Met.");
        assertThat(row(herd, "Vitamin A")).contains("1,770 IU/lb");
        assertThat(line(bench, "Vitamin A")).contains("1,770 IU/lb", "MSD", "not counted");
        assertThat(line(bench, "Degradable protein, for the rumen"))
                .contains("NRC 1996", "no figure for Ditch-side stack");
    }
}
