package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Requests that no browser sends, on every page that takes a file: a sentence each, and nothing is done with half of one. */
class SentTest {
    private static final Pattern TOKEN = Pattern.compile("name=\"token\" value=\"([^\"]+)\"");
    private static final String END = "--x--\r\n";

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private String token() {
        var found = TOKEN.matcher(ranch.client().get("/").body());
        assertThat(found.find()).isTrue();
        return found.group(1);
    }

    private static String part(String disposition, String value) {
        return "--x\r\nContent-Disposition: form-data; " + disposition + "\r\n\r\n" + value + "\r\n";
    }

    private static String file(String name) {
        return part("name=\"file\"; filename=\"" + name + "\"", "{}");
    }

    private void isRefused(String as, RawClient.Answer answer) {
        assertThat(answer.status()).as(as).isBetween(400, 422);
        assertThat(answer.body())
                .as(as)
                .contains("<h1")
                .doesNotContain("Exception")
                .doesNotContain("at haywright");
    }

    @ParameterizedTest
    @ValueSource(strings = {"import", "reports/bring", "settings/weather/record", "take/file", "take/fields/new"})
    void aBrokenFormWithAFile(String to) {
        var path = to.equals("import") ? "/import" : ranch.path() + to;
        var token = part("name=\"token\"", token());
        var whole = token + file("a.json") + END;
        var bodies = new LinkedHashMap<String, String>();
        bodies.put("no end", token + file("a.json"));
        bodies.put("cut in the middle of a part", token + "--x\r\nContent-Disposition: form-d");
        bodies.put("no name", token + "--x\r\n\r\nvalue\r\n" + END);
        bodies.put("no file", token + END);
        bodies.put("no filename", token + part("name=\"file\"", "{}") + END);
        bodies.put("a name with NUL", token + file("a\0b.json") + END);
        bodies.put("a file in the place of the token", file("a.json").replace("file\"", "token\"") + END);
        bodies.put("thousands of parts", token + part("name=\"p\"", "v").repeat(6000) + END);
        bodies.put("a long field", token + part("name=\"text\"", "v".repeat(2_000_000)) + END);
        bodies.put("long headings", token + "--x\r\nX: " + "v".repeat(100_000) + "\r\n\r\nv\r\n" + END);
        var type = Map.of("Content-Type", "multipart/form-data; boundary=x");
        bodies.forEach((as, body) -> isRefused(as, ranch.client().send("POST", path, type, body)));
        for (var other : new String[] {
            "multipart/form-data",
            "multipart/form-data; boundary=",
            "multipart/form-data; boundary=y",
            "multipart/form-data; boundary=x; charset=nonsense",
            "text/plain"
        }) {
            isRefused(other, ranch.client().send("POST", path, Map.of("Content-Type", other), whole));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"name=a%00b", "na%00me=a", "name=%zz", "name=%"})
    void aFieldThatNobodyCanHaveTyped(String field) {
        isRefused(field, ranch.client().send("POST", "/ranches", Map.of(), "token=" + token() + "&" + field));
        assertThat(ranch.client().get("/").body()).contains("1 ranch");
    }

    @Test
    void tooManyFieldsAreSaid() {
        var body = "token=" + token() + "&a=b".repeat(6000);
        isRefused("fields", ranch.client().send("POST", "/ranches", Map.of(), body));
    }

    @ParameterizedTest
    @ValueSource(strings = {"abc", "-1", "0", "1e3", "99999", "999999999999999999999", ""})
    void whatIsNoRevisionIsSaidAndNothingSaved(String rev) {
        var before = ranch.kept();
        var hay = OneRanch.hay("60", "1200 lb");
        hay.put("rev", rev);
        var answer = ranch.send("lots/new/bales", hay);
        assertThat(answer.status()).isBetween(400, 422);
        assertThat(answer.body()).containsAnyOf("not a version", "older copy");
        assertThat(ranch.kept()).isEqualTo(before);
        assertThat(ranch.send("lots/new/bales", "undo/" + rev + "x", Map.of()).status())
                .isEqualTo(404);
    }

    @Test
    void aZipThatIsNoneIsNamedAsItWasSent() {
        var page = ranch.client().get("/");
        for (var name : new String[] {"copy of all.zip", "all.db"}) {
            var answer = ranch.client().upload(page, "/import", name, "PK\u0003\u0004" + "x".repeat(300));
            assertThat(answer.status()).isEqualTo(422);
            assertThat(answer.body()).contains(name).doesNotContain("/tmp");
        }
    }
}
