package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedNow;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** From a new ranch without anything to one that is short of hay, on November 25, without scripts. */
class ShortOfHayPageTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private static UnaryOperator<Ranch> turnout(@Nullable LocalDate on) {
        return now -> now.with(now.settings().withTurnout(on));
    }

    @Test
    void whatIsLackingIsAskedForWithAWayThere() {
        var empty = ranch.get("bench/short");
        assertThat(empty.status()).isEqualTo(200);
        assertThat(empty.body())
                .contains("href=\"" + ranch.path() + "herd\"", "href=\"" + ranch.path() + "lots\"")
                .contains("href=\"" + ranch.path() + "settings\"");
        ranch.hay("100");
        ranch.cows();
        assertThat(ranch.get("bench/short").body())
                .contains("href=\"" + ranch.path() + "settings\"")
                .doesNotContain("class=\"ladder\"");
    }

    /** 100 cows at 30 lb take 1.5 tons a day; 100 bales of 1,200 lb are 60 tons: gone in 40 days, on January 4. */
    @Test
    void theBenchAndThePageSayTonsDayAndOrders() {
        ranch.hay("100");
        ranch.cows();
        ranch.change(turnout(LocalDate.of(2027, 5, 10)));
        ranch.change(now -> now.with(new FedNow(
                now.groups().keySet().iterator().next(),
                Map.of(now.lots().keySet().iterator().next(), Quantity.of(30, Unit.POUND_A_DAY)))));
        var bench = ranch.get("bench").body();
        assertThat(bench).contains("href=\"" + ranch.path() + "bench/short\"", "Jan 4, 2027", "126 days");
        var page = ranch.get("bench/short");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.body()).contains("Jan 4, 2027", "126 days", "class=\"ladder\"", "60 tons");
        var asked = ranch.get("bench/short?sold=25&dollarsSold=1600&away=40&awayDays=20")
                .body();
        assertThat(asked).contains("Sell 25 ", "value=\"25\"", "value=\"1600\"", "Send 40 dry cows");
        assertThat(page.body()).contains("class=\"picture\"", "href=\"#f-away\"", "id=\"f-away\"", "id=\"f-sold\"");
        // one tap leaves a step out, and keeps what was asked
        assertThat(asked)
                .contains("bench/short?sold=25&amp;dollarsSold=1600&amp;away=40&amp;awayDays=20&amp;not=sell_open");
        var without = ranch.get("bench/short?sold=25&not=sell_open").body();
        assertThat(without).contains("class=\"out\"", "bench/short?sold=25\"");
    }

    @Test
    void aRanchWithPlentyHasNoLadder() {
        ranch.hay("900");
        ranch.cows();
        ranch.change(turnout(LocalDate.of(2027, 5, 10)));
        assertThat(ranch.get("bench").body()).doesNotContain("tons short");
        assertThat(ranch.get("bench/short").body()).contains("540 tons").doesNotContain("class=\"ladder\"");
    }

    @Test
    void badNumbersAreNamedBesideTheirFieldAndKept() {
        ranch.hay("100");
        ranch.cows();
        ranch.change(turnout(LocalDate.of(2027, 5, 10)));
        for (var query : List.of("sold=-3", "sold=many", "away=1.5", "dollarsSold=x")) {
            var page = ranch.get("bench/short?" + query);
            var field = query.replaceAll("=.*", "");
            assertThat(page.status()).as(query).isEqualTo(422);
            assertThat(page.body())
                    .as(query)
                    .contains("href=\"#f-" + field + "\"", "value=\"" + query.replaceAll(".*=", "") + "\"");
        }
    }
}
