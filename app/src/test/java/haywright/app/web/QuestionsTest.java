package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import haywright.app.compute.ComputeHttp;
import haywright.app.document.RanchDocument;
import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import haywright.ranch.Ranch;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Collections;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Questions over HTTP, one and many. */
class QuestionsTest {
    private static final String GOOD = "{\"tdn_pct_dm\":60}";
    private static final String BAD = "{\"tdn_pct_dm\":\"60\"}";

    private static Store store;
    private static Server server;
    private static Home home;

    @BeforeAll
    static void start(@TempDir Path folder) {
        store = Store.inFolder(folder, Clock.systemUTC());
        home = Home.in(folder);
        server = Server.start(
                OneRanch.desk(store), home, "127.0.0.1", 0, new ComputeHttp(Clock.systemUTC(), home::log)::register);
    }

    @AfterAll
    static void stop() {
        server.close();
        store.close();
    }

    private static HttpResponse<String> post(String topic, String json) throws IOException, InterruptedException {
        return post(server, topic, json);
    }

    private static HttpResponse<String> post(Server of, String topic, String json)
            throws IOException, InterruptedException {
        var request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + of.port() + "/api/compute/" + topic))
                .header("Content-Type", "application/json")
                .header("Authorization", "Bearer " + home.key())
                .POST(HttpRequest.BodyPublishers.ofString(json))
                .build();
        return HttpClient.newHttpClient().send(request, BodyHandlers.ofString());
    }

    private static JsonNode json(HttpResponse<String> response) throws IOException {
        return new ObjectMapper().readTree(response.body());
    }

    private static String batch(int count, String of) {
        return "[" + String.join(",", Collections.nCopies(count, of)) + "]";
    }

    @Test
    void theStatusOfFewAnswersTellsOfAllOfThem() throws IOException, InterruptedException {
        assertThat(post("net-energy", GOOD).statusCode()).isEqualTo(200);
        assertThat(post("net-energy", batch(3, GOOD)).statusCode()).isEqualTo(200);
        assertThat(post("net-energy", BAD).statusCode()).isEqualTo(422);
        assertThat(post("net-energy", "[" + GOOD + "," + BAD + "]").statusCode())
                .isEqualTo(422);
        assertThat(post("net-energy", "{").statusCode()).isEqualTo(422);
        assertThat(post("no-energy", GOOD).statusCode()).isEqualTo(404);
        assertThat(json(post("no-energy", GOOD)).at("/errors/0/fix").asText()).contains("net-energy");
    }

    @Test
    void aFewAnswersSayTheirLength() throws IOException, InterruptedException {
        var response = post("net-energy", batch(3, GOOD));
        assertThat(response.headers().firstValueAsLong("Content-Length").orElseThrow())
                .isEqualTo(response.body().getBytes(StandardCharsets.UTF_8).length);
    }

    @Test
    void manyAnswersComeWholeWithWhatIsWrongInItsPlace() throws IOException, InterruptedException {
        var response = post("net-energy", batch(500, GOOD).replaceFirst("]$", "," + BAD + "," + GOOD + ",7 7"));
        assertThat(response.statusCode()).isEqualTo(200);
        assertThat(response.headers().firstValue("Content-Length")).isEmpty();
        var answers = json(response);
        assertThat(answers).hasSize(504);
        assertThat(answers.at("/500/errors/0/field").asText()).isEqualTo("tdn_pct_dm");
        assertThat(answers.get(501).has("answer")).isTrue();
        assertThat(answers.at("/503/errors/0/rule").asText()).contains("not JSON");
    }

    @Test
    void aBatchLargerThanAFormIsTaken() throws IOException, InterruptedException {
        var blank = " ".repeat(2 * Gate.FORM_LIMIT);
        assertThat(json(post("net-energy", "[" + GOOD + blank + "]"))).hasSize(1);
        var request = "POST /api/compute/net-energy HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\n"
                + "Authorization: Bearer " + home.key() + "\r\n"
                + "Content-Length: " + (Gate.QUESTION_LIMIT + 1) + "\r\nConnection: close\r\n\r\n[";
        try (var socket = new Socket("127.0.0.1", server.port())) {
            socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
            assertThat(new String(socket.getInputStream().readNBytes(12), StandardCharsets.US_ASCII))
                    .isEqualTo("HTTP/1.1 413");
        }
    }

    /** More than once over, so that nothing that was held for those who left is still held. */
    @Test
    void whoLeavesBeforeTheAnswersAreThereStopsNobody() throws IOException, InterruptedException {
        var batch = batch(100_000, GOOD);
        assertThat(batch.length() * 24).isGreaterThan(Gate.QUESTION_LIMIT);
        for (int i = 0; i < 24; i++) {
            try (var socket = new Socket("127.0.0.1", server.port())) {
                socket.getOutputStream()
                        .write(("POST /api/compute/net-energy HTTP/1.1\r\nHost: 127.0.0.1\r\n"
                                        + "Authorization: Bearer " + home.key()
                                        + "\r\nContent-Type: application/json\r\nContent-Length: " + batch.length()
                                        + "\r\n\r\n" + batch)
                                .getBytes(StandardCharsets.US_ASCII));
                socket.getInputStream().read();
            }
        }
        assertThat(post("net-energy", GOOD).statusCode()).isEqualTo(200);
    }

    /** A fault of the program's own: its clock. */
    @Test
    void aFaultInsideIsWrittenWherePagesWriteTheirs() throws IOException, InterruptedException {
        InstantSource broken = () -> Instant.MAX; // a day that no calendar has
        var logged = new ArrayList<String>();
        var compute = new ComputeHttp(
                broken,
                (where, fault) -> logged.add(where + " " + fault.getClass().getSimpleName()));
        try (var failing = Server.start(OneRanch.desk(store), home, "127.0.0.1", 0, compute::register)) {
            var ranch = new RanchDocument().write(Ranch.empty(new UUID(7, 7), "Cold Spring Ranch"));
            var response = post(failing, "rations", "[" + ranch + "," + ranch + "]");
            assertThat(response.statusCode()).isEqualTo(500);
            assertThat(json(response)).hasSize(2);
        }
        assertThat(logged).containsExactly("POST /api/compute/rations DateTimeException");
    }
}
