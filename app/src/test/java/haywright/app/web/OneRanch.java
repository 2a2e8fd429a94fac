package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import haywright.ranch.Ranch;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.io.TempDir;

/** Cold Spring Ranch, new and empty for each test, on a server of its own; paths begin behind the ranch's own. */
final class OneRanch implements BeforeEachCallback, AfterEachCallback {
    private Path folder;
    private Store store;
    private Server server;
    private RawClient client;
    private Home home;
    private String path;

    /** A desk on November 25, 2026. */
    static Desk desk(Store store) {
        return new Desk(
                store,
                Clock.fixed(Instant.parse("2026-11-25T12:00:00Z"), ZoneOffset.UTC),
                () -> Ranch.empty(new UUID(7, 7), "A demo"));
    }

    /** A stack of large round bales. */
    static Map<String, String> hay(String count, String baleWeight) {
        var hay = new LinkedHashMap<String, String>();
        hay.put("name", "Ditch-side stack");
        hay.put("feedClass", "grass_hay");
        hay.put("bale", "large_round");
        hay.put("count", count);
        hay.put("baleWeight", baleWeight);
        hay.put("storage", "tarped");
        hay.put("replacementPrice", "$165");
        return hay;
    }

    @Override
    public void beforeEach(ExtensionContext context) throws Exception {
        // through JUnit, which hands out a folder and takes it away after the test
        context.getExecutableInvoker().invoke(OneRanch.class.getDeclaredMethod("begin", Path.class), this);
    }

    void begin(@TempDir Path folder) {
        this.folder = folder;
        store = Store.inFolder(folder, Clock.systemUTC());
        home = Home.in(folder);
        server = Server.start(desk(store), home, "127.0.0.1", 0, routes -> {});
        client = new RawClient(server.port(), home);
        var made = client.submit(client.get("/"), "/ranches", Map.of("name", "Cold Spring Ranch"));
        assertThat(made.status()).isEqualTo(303);
        path = made.header("Location");
    }

    @Override
    public void afterEach(ExtensionContext context) {
        server.close();
        store.close();
    }

    Path folder() {
        return folder;
    }

    /** Who asks, for addresses outside of the ranch. */
    RawClient client() {
        return client;
    }

    int port() {
        return server.port();
    }

    /** Begins and ends with a slash. */
    String path() {
        return path;
    }

    /** What a script sends to be let in. */
    String key() {
        return home.key();
    }

    UUID id() {
        return UUID.fromString(path.split("/")[2]);
    }

    /** The database, as another program would open it. */
    Connection database() throws SQLException {
        return DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("haywright.db"));
    }

    Store store() {
        return store;
    }

    Ranch kept() {
        return store.ranches().open(id()).ranch();
    }

    RawClient.Answer get(String at) {
        return client.get(path + at);
    }

    RawClient.Answer submit(RawClient.Answer page, String to, Map<String, String> fields) {
        return client.submit(page, path + to, fields);
    }

    /** Follows the link that throws away what was left unfinished of a form; the page where there is none. */
    RawClient.Answer afresh(String at) {
        var page = get(at);
        var link = Pattern.compile("href=\"([?]afresh=[^\"]*)\"").matcher(page.body());
        return link.find() ? get(at + link.group(1).replace("&amp;", "&")) : page;
    }

    /** Opens the page of a form and sends it, as a person would. */
    RawClient.Answer send(String at, Map<String, String> fields) {
        return send(at, at, fields);
    }

    RawClient.Answer send(String from, String to, Map<String, String> fields) {
        return submit(get(from), to, fields);
    }

    /** A stack of grass hay in bales of 1,200 lb. */
    void hay(String bales) {
        assertThat(send("lots/new/bales", hay(bales, "1200 lb")).status()).isEqualTo(303);
    }

    /** A hundred mature cows of 1,300 lb. */
    void cows() {
        cows("Cows");
    }

    void cows(String name) {
        var cows = new LinkedHashMap<String, String>();
        cows.put("name", name);
        cows.put("head", "100");
        cows.put("weight", "1300");
        cows.put("shrunk", "no");
        cows.put("weighedOn", "Nov 12, 2026");
        cows.put("conditionScore", "5");
        cows.put("breed", "Angus");
        var page = get("herd/new/mature_cow");
        assertThat(submit(page, "herd/new/mature_cow", cows).status()).isEqualTo(303);
    }

    /** As another window would. */
    void change(UnaryOperator<Ranch> change) {
        var now = store.ranches().open(id());
        store.ranches().save(id(), now.rev(), "test", "changed", change.apply(now.ranch()));
    }

    /** The page that an answer leads to. */
    RawClient.Answer after(RawClient.Answer answer) {
        return client.get(answer.header("Location"));
    }

    /** Puts in a lot of 120 tons; its id. */
    String weighedLot(String name, String feedClass) {
        var hay = Map.of(
                "name", name, "feedClass", feedClass, "mass", "120", "storage", "tarped", "replacementPrice", "150");
        assertThat(send("lots/new/weighed", hay).status()).isEqualTo(303);
        return lot(name);
    }

    /** Id of the first lot on the page of the lots. */
    String anyLot() {
        return get("lots").body().replaceAll("(?s).*?/lots/([0-9a-f]{8}-[0-9a-f-]{27})\".*", "$1");
    }

    /** Id of the lot of this name. */
    String lot(String name) {
        return kept().lots().values().stream()
                .filter(lot -> lot.name().equals(name))
                .findFirst()
                .orElseThrow()
                .id()
                .toString();
    }
}
