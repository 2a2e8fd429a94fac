package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.ranch.FoundPlace;
import haywright.ranch.Ranch;
import haywright.ranch.RanchWeather;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Match and the winter book, from a new ranch without anything, on November 25, without scripts. */
class WinterPagesTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private static Ranch placed(Ranch now) {
        var weather = RanchWeather.of(FoundPlace.of("Valentine, NE", null, 0));
        return now.with(now.settings().with(weather).withTurnout(LocalDate.of(2027, 5, 5)));
    }

    private String whole() throws InterruptedException {
        var page = ranch.get("winter").body();
        while (page.contains("hx-trigger=\"every")) {
            Thread.sleep(500);
            page = ranch.get("winter").body();
        }
        return page;
    }

    @Test
    void whatIsLackingIsSaid() throws Exception {
        assertThat(ranch.get("match").status()).isEqualTo(200);
        assertThat(whole()).contains("<li>").doesNotContain("class=\"do\"");
    }

    @Test
    void aBookIsMadeBesideThePageAndAskedToBeMadeAgainOnceTheRanchChanges() throws Exception {
        ranch.hay("300");
        ranch.cows();
        ranch.change(WinterPagesTest::placed);
        var book = whole();
        assertThat(book).contains("class=\"do\"", "id=\"dots-title\"", "id=\"stack-title\"", "Ditch-side stack");
        assertThat(ranch.get("winter").body()).isEqualTo(book);
        ranch.change(now -> now.withName("Another name"));
        var older = ranch.get("winter").body();
        assertThat(older).contains("href=\"" + ranch.path() + "history\"", "id=\"dots-title\"");
        assertThat(ranch.send("winter", Map.of()).status()).isEqualTo(303);
        assertThat(ranch.get("winter").body()).contains("hx-trigger=\"every");
        assertThat(ranch.send("winter", "winter/stop", Map.of()).status()).isEqualTo(303);
        assertThat(whole()).contains("class=\"do\"");
    }

    @Test
    void aLotStandsBesideEachGroupAtEachStage() {
        ranch.hay("300");
        ranch.cows();
        ranch.change(WinterPagesTest::placed);
        assertThat(ranch.get("match").body()).contains("class=\"match\"", "<td class=\"");
    }
}
