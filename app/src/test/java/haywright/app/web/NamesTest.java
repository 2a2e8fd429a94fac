package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Papers and pages know a group by its name alone. */
class NamesTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private static Map<String, String> cows(String name) {
        var typed = new LinkedHashMap<String, String>();
        typed.put("name", name);
        typed.put("head", "100");
        typed.put("weight", "1300");
        typed.put("weighedOn", "Nov 12");
        typed.put("shrunk", "no");
        typed.put("conditionScore", "5");
        typed.put("breed", "Angus");
        return typed;
    }

    @Test
    void aNameThatAnotherGroupHasIsAsked() {
        ranch.cows();
        var typed = cows("Cows");
        typed.put("name", "\u00a0COWS  ");
        var asked = ranch.send("herd/new/mature_cow", typed);
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body()).contains("name-twice");
        assertThat(ranch.kept().groups()).hasSize(1);
        typed.put("confirm", "name-twice");
        assertThat(ranch.submit(asked, "herd/new/mature_cow", typed).status()).isEqualTo(303);
        assertThat(ranch.kept().groups()).hasSize(2);
    }

    @Test
    void aGroupMayKeepItsName() {
        ranch.cows();
        var id = ranch.kept().groups().keySet().iterator().next();
        assertThat(ranch.send("herd/" + id, cows("Cows")).status()).isEqualTo(303);
    }

    /** 200 letters are more than any gate carries. */
    @Test
    void aNameEndsSomewhere() {
        var refused = ranch.send("herd/new/mature_cow", cows("n".repeat(201)));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("href=\"#f-name\"");
        assertThat(ranch.send("herd/new/mature_cow", cows("n".repeat(200))).status())
                .isEqualTo(303);
        assertThat(ranch.kept().groups()).hasSize(1);
    }

    @Test
    void aPartSplitOffHasANameOfItsOwn() {
        ranch.cows();
        var id = ranch.kept().groups().keySet().iterator().next();
        var split = Map.of("head", "10", "name", "Cows", "who", "alike");
        assertThat(ranch.send("herd/" + id + "/split", split).body()).contains("name-twice");
        assertThat(ranch.kept().groups()).hasSize(1);
    }

    /** No calving ahead, so each of the two has one box for the one stack. */
    @Test
    void theChartTellsTwoOfOneNameApart() {
        ranch.hay("400");
        ranch.cows();
        var again = cows("Cows");
        again.put("confirm", "name-twice");
        assertThat(ranch.send("herd/new/mature_cow", again).status()).isEqualTo(303);
        var links = Pattern.compile("/match/[0-9a-f-]{36}/[0-9a-f-]{36}/[a-z_]+")
                .matcher(ranch.get("match").body())
                .results()
                .map(MatchResult::group)
                .toList();
        assertThat(links).hasSize(2).doesNotHaveDuplicates();
    }
}
