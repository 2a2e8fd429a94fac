package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Saves that fail, ranches that cannot be read: the cause is said, and nothing that was typed is gone. */
class UnsavedTest {
    private static final String HAY = "lots/new/bales";

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private static Map<String, String> hay() {
        var hay = new LinkedHashMap<>(OneRanch.hay("210", "1,250 lb"));
        hay.put("notes", "two <b>rows</b>\nby the ditch");
        return hay;
    }

    @Test
    void aFormThatCouldNotBeSavedComesBackFilledUnderTheCause() throws SQLException {
        RawClient.Answer answer;
        try (var other = ranch.database();
                var statement = other.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            answer = ranch.send(HAY, hay());
        }
        assertThat(answer.status()).isEqualTo(503);
        assertThat(answer.body())
                .contains("Another program is holding the database", "It could not be kept as a draft")
                .contains("value=\"Ditch-side stack\"", "value=\"1,250 lb\"", "value=\"tarped\" selected")
                .contains("two &lt;b&gt;rows")
                .contains("action=\"" + ranch.path() + HAY + "\"");
        assertThat(ranch.kept().lots()).isEmpty();
        assertThat(ranch.submit(answer, HAY, hay()).status()).isEqualTo(303);
        assertThat(ranch.kept().lots()).hasSize(1);
    }

    /** The journal beside it would get into whatever file is put in its place after a power cut. */
    @Test
    void onceASaveIsAcknowledgedTheDatabaseHasItByItself() {
        assertThat(ranch.send(HAY, hay()).status()).isEqualTo(303);
        assertThat(ranch.folder().resolve("haywright.db-wal")).isEmptyFile();
    }

    @Test
    void aFormAboveTheRanchesComesBackFilledToo() throws SQLException {
        var round = ranch.client().get("/");
        RawClient.Answer answer;
        try (var other = ranch.database();
                var statement = other.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            answer = ranch.client().submit(round, "/ranches", Map.of("name", "Étang \"Nord\""));
        }
        assertThat(answer.status()).isEqualTo(503);
        assertThat(answer.body())
                .contains("Another program is holding the database", "name=\"name\" value=\"Étang &#34;Nord&#34;\"");
    }

    @Test
    void aFormSentToARanchThatIsDamagedMeanwhileComesBackFilled() throws SQLException {
        var page = ranch.get(HAY);
        damage("{\"half");
        var answer = ranch.submit(page, HAY, hay());
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.body())
                .contains("Not saved", "this is not JSON", "value=\"Ditch-side stack\"", "name=\"rev\"")
                .contains("two &lt;b&gt;rows");
    }

    private void damage(String doc) throws SQLException {
        try (var other = ranch.database();
                var update = other.prepareStatement("UPDATE ranch SET doc = ? WHERE id = ?")) {
            update.setString(1, doc);
            update.setString(2, ranch.id().toString());
            assertThat(update.executeUpdate()).isEqualTo(1);
        }
    }

    @Test
    void oneDamagedRanchIsARowAndAPageWithItsWaysBack() throws SQLException {
        ranch.send(HAY, hay());
        ranch.store().dailyCopy();
        ranch.send("settings/ranch", Map.of("name", "Warm Spring Ranch"));
        ranch.client().submit(ranch.client().get("/"), "/ranches", Map.of("name", "Second Ranch"));
        damage("{\"half");
        var round = ranch.client().get("/");
        assertThat(round.status()).isEqualTo(200);
        assertThat(round.body()).contains("Second Ranch", "Can’t be read", "this is not JSON");
        var page = ranch.get("lots");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.body()).contains("this is not JSON", ranch.path() + "recover/copy");
        assertThat(ranch.get("raw").body()).isEqualTo("{\"half");
        assertThat(ranch.submit(page, "recover/copy", Map.of()).status()).isEqualTo(303);
        assertThat(ranch.kept().lots()).hasSize(1);
        assertThat(ranch.get("lots").status()).isEqualTo(200);
        assertThat(ranch.submit(ranch.client().get("/"), "recover/copy", Map.of())
                        .status())
                .as("a ranch that can be read is not set back by an old page")
                .isEqualTo(422);
    }

    @Test
    void aFormThatComesBackStillKnowsWhatItWasMadeFrom() {
        ranch.send(HAY, hay());
        var at = "lots/" + ranch.anyLot();
        var mine = ranch.get(at);
        var theirs = hay();
        theirs.put("count", "209");
        assertThat(ranch.submit(ranch.get(at), at + "/as/bales", theirs).status())
                .isEqualTo(303);
        var wrong = hay();
        wrong.put("count", "many");
        var again = ranch.submit(mine, at + "/as/bales", wrong);
        assertThat(again.status()).isEqualTo(422);
        var right = hay();
        right.put("count", "211");
        assertThat(ranch.submit(again, at + "/as/bales", right).status())
                .as("what the other window saved is not overwritten unseen")
                .isEqualTo(409);
        ranch.submit(mine, at + "/as/bales", wrong);
        assertThat(ranch.submit(ranch.get(at), at + "/as/bales", right).status())
                .as("nor through a draft")
                .isEqualTo(409);
    }

    @Test
    void whatIsNoRevisionIsSaidToBeNone() {
        var odd = hay();
        odd.put("rev", "abc");
        var answer = ranch.send(HAY, odd);
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.body()).contains("abc: not a version", "value=\"Ditch-side stack\"");
        assertThat(ranch.kept().lots()).isEmpty();
    }

    /** It is whole in its form. */
    @Test
    void aLongNameLeftUnfinishedDoesNotFillThePageOfTheRanch() {
        var wrong = hay();
        wrong.put("name", "x".repeat(100_000));
        assertThat(ranch.send(HAY, wrong).status()).isEqualTo(422);
        assertThat(ranch.get("").body()).contains(HAY).hasSizeLessThan(50_000);
        assertThat(ranch.get(HAY).body()).contains("x".repeat(100_000));
    }
}
