package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Single rows that another program or a failing disk has damaged: said where they are, and every other page stands. */
class DamageTest {
    private static final String HAY = "lots/new/bales";

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private void damage(String sql) throws SQLException {
        try (var other = ranch.database();
                var statement = other.createStatement()) {
            assertThat(statement.executeUpdate(sql)).isEqualTo(1);
        }
    }

    @Test
    void aRowWhoseIdIsNoneIsARowOfTheRoundWithItsOwnPage() throws SQLException {
        damage("INSERT INTO ranch SELECT 'no id', 'Odd', rev, format, doc, NULL FROM ranch");
        var round = ranch.client().get("/");
        assertThat(round.status()).isEqualTo(200);
        assertThat(round.body()).contains("Cold Spring Ranch", "Odd", "no id of a ranch");
        var at = Pattern.compile("/ranch/[0-9a-f-]{36}")
                .matcher(round.body())
                .results()
                .map(found -> found.group())
                .filter(path -> !(path + "/").equals(ranch.path()))
                .findFirst()
                .orElseThrow();
        var page = ranch.client().get(at + "/");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.body()).contains("This ranch can’t be read", "no id");
        assertThat(ranch.client().get(at + "/raw").body()).contains("Cold Spring Ranch");
        assertThat(ranch.client()
                        .submit(round, at + "/recover/history", Map.of())
                        .status())
                .isEqualTo(404);
    }

    @ParameterizedTest
    @ValueSource(strings = {"{{", "[]", "{\"name\":17}", "{\"name\":[null]}"})
    void aDraftThatCannotBeReadClosesNeitherItsFormNorTheRanch(String fields) throws SQLException {
        var wrong = OneRanch.hay("many", "1,250 lb");
        assertThat(ranch.send(HAY, wrong).status()).isEqualTo(422);
        damage("UPDATE draft SET fields = '" + fields + "'");
        assertThat(ranch.get("").status()).isEqualTo(200);
        assertThat(ranch.client().get("/").status()).isEqualTo(200);
        var form = ranch.get(HAY);
        assertThat(form.status()).isEqualTo(200);
        assertThat(form.body()).contains("id=\"lost-draft\"");
        assertThat(ranch.submit(form, HAY, OneRanch.hay("210", "1,250 lb")).status())
                .isEqualTo(303);
        assertThat(ranch.get(HAY).body()).doesNotContain("id=\"lost-draft\"");
        var home = ranch.get("");
        var link = Pattern.compile("href=\"([^\"]*/drafts/[^\"]*)\"").matcher(home.body());
        assertThat(link.find()).isTrue();
        assertThat(ranch.client().get(link.group(1)).body()).isEqualTo(fields);
        assertThat(ranch.client().get(link.group(1) + "9").status()).isEqualTo(404);
        assertThat(ranch.client().submit(home, link.group(1), Map.of()).status())
                .isEqualTo(303);
        assertThat(ranch.get("").body()).doesNotContain("/drafts/");
    }

    @ParameterizedTest
    @ValueSource(strings = {"set-aside/zzz", "set-aside/7e000000-0000-4000-8000-000000000000", "set-aside/"})
    void aDraftOfANameThatIsNoneIsOfferedOnTheRanchsHome(String name) throws SQLException {
        damage("INSERT INTO draft VALUES ('" + ranch.id() + "', '" + name + "', 'torn')");
        var home = ranch.get("");
        assertThat(home.status()).isEqualTo(200);
        var link = Pattern.compile("href=\"([^\"]*/drafts/[^\"]*)\"").matcher(home.body());
        assertThat(link.find()).isTrue();
        assertThat(ranch.client().get(link.group(1)).body()).isEqualTo("torn");
        assertThat(ranch.client().submit(home, link.group(1), Map.of()).status())
                .isEqualTo(303);
        assertThat(ranch.get("").body()).doesNotContain("/drafts/");
    }

    @Test
    void whatAnImportTookThePlaceOfIsOnThePageThatItLeadsTo() throws SQLException {
        var good = ranch.get("export").body();
        damage("UPDATE ranch SET doc = '{<b>half'");
        var round = ranch.client().get("/");
        assertThat(ranch.client().upload(round, "/import", "ranch.json", good).body())
                .contains("is here already and cannot be read");
        var answer = ranch.client()
                .upload(
                        round,
                        "/import",
                        "ranch.json",
                        good + "\r\n--part-of-a-form\r\nContent-Disposition: form-data; name=\"replace\"\r\n\r\nyes");
        assertThat(answer.status()).isEqualTo(303);
        var page = ranch.client().get(answer.header("Location").replaceFirst("^http://[^/]*", ""));
        assertThat(page.status()).isEqualTo(200);
        var link = Pattern.compile("href=\"([^\"]*/set-aside/[^\"]*)\"").matcher(page.body());
        assertThat(link.find()).isTrue();
        assertThat(ranch.client().get(link.group(1)).body()).isEqualTo("{<b>half");
        assertThat(ranch.client().get(link.group(1) + "9").status()).isEqualTo(404);
    }

    @Test
    void anEditWhosePatchCannotBeReadIsSaidNotToBeTakenBack() throws SQLException {
        assertThat(ranch.send(HAY, OneRanch.hay("210", "1,250 lb")).status()).isEqualTo(303);
        damage("UPDATE edit SET inverse_patch = '{{'");
        var history = ranch.get("history");
        assertThat(history.status()).isEqualTo(200);
        assertThat(ranch.submit(history, "undo/2", Map.of()).status()).isEqualTo(409);
    }

    @Test
    void anEmptyFileIsNotCalledNone() {
        var client = ranch.client();
        var page = client.get("/");
        assertThat(client.upload(page, "/import", "ranch.json", "").body()).contains("“ranch.json” is empty");
        assertThat(client.upload(page, "/import", "", "").body()).contains("No file was chosen");
    }

    @ParameterizedTest
    @ValueSource(strings = {"OPTIONS", "PUT", "DELETE", "PATCH"})
    void whatIsNeitherAskedNorSentIsNotAllowed(String method) {
        for (var path : new String[] {"/", ranch.path(), "/api/mix"}) {
            var answer = ranch.client().send(method, path, Map.of(), "");
            assertThat(answer.status()).isEqualTo(405);
            assertThat(answer.header("Allow")).isEqualTo("GET, HEAD, POST");
        }
    }
}
