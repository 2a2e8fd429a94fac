package haywright.bench;

import com.fasterxml.jackson.databind.node.ObjectNode;
import com.sun.management.ThreadMXBean;
import haywright.app.document.RanchDocument;
import haywright.app.document.TinLantern;
import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import haywright.app.web.Desk;
import haywright.ranch.Ranch;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.regex.Pattern;

/**
 * The pages with the settings that ship: the round by ranches, the lots by lots, and what the greediest page of the demo
 * allocates. Processor time of the whole process, asking and answering together.
 */
final class Pages implements AutoCloseable {
    private static final int TIMES = 20;
    private static final Pattern LINK = Pattern.compile("href=\"(/ranch/[^\"#?]*)\"");

    private final Path folder;
    private final Store store;
    private final Server server;
    private final HttpClient browser = HttpClient.newBuilder()
            .cookieHandler(new CookieManager())
            .followRedirects(HttpClient.Redirect.NORMAL)
            .build();

    private Pages() throws IOException, InterruptedException {
        folder = Files.createTempDirectory("haywright-bench");
        store = Store.inFolder(folder, Clock.systemUTC());
        var home = Home.in(folder);
        server =
                Server.start(new Desk(store, Clock.systemUTC(), TinLantern::ranch), home, "127.0.0.1", 0, routes -> {});
        get("/?key=" + home.key());
    }

    public static void main(String[] args) throws Exception {
        round();
        lots();
        greediest();
    }

    private static void round() throws Exception {
        System.out.println("The round               first page   later page   to 1 ranch   CPU ms of a later page");
        double one = 0;
        for (int ranches : new int[] {1, 10, 100, 1000}) {
            try (var pages = new Pages()) {
                for (int i = 0; i < ranches; i++) {
                    pages.store.ranches().create(demo(i));
                }
                pages.get("/nothing"); // what loads and warms up is not the round's
                double first = pages.cpu("/", 1);
                pages.cpu("/", TIMES);
                double later = pages.cpu("/", TIMES);
                one = one == 0 ? later : one;
                System.out.printf(
                        Locale.ROOT,
                        "%6d ranches          %10.2f   %10.2f   %10.1f   %10.1f%n",
                        ranches,
                        first / later,
                        1.0,
                        later / one,
                        later * 1000);
            }
        }
    }

    private static void lots() throws Exception {
        System.out.println("The lots                                          to 20 lots   CPU ms of a page");
        double least = 0;
        for (int lots : new int[] {20, 100, 500}) {
            try (var pages = new Pages()) {
                var ranch = pages.store.ranches().create(withLots(lots)).ranch();
                pages.cpu("/ranch/" + ranch.id() + "/lots", TIMES);
                double each = pages.cpu("/ranch/" + ranch.id() + "/lots", TIMES);
                least = least == 0 ? each : least;
                System.out.printf(
                        Locale.ROOT, "%6d lots             %35.1f   %10.1f%n", lots, each / least, each * 1000);
            }
        }
    }

    private static void greediest() throws Exception {
        try (var pages = new Pages()) {
            var demo = pages.store.ranches().create(TinLantern.ranch()).ranch();
            var seen = new HashSet<String>();
            var waiting = new ArrayDeque<>(List.of("/", "/ranch/" + demo.id() + "/"));
            long most = 0;
            var where = "";
            while (!waiting.isEmpty()) {
                var path = waiting.poll();
                if (!seen.add(path)) {
                    continue;
                }
                pages.get(path); // classes and tables that are loaded once
                long before = allocated();
                var body = pages.get(path);
                long taken = allocated() - before;
                if (taken > most) {
                    most = taken;
                    where = path;
                }
                LINK.matcher(body).results().forEach(link -> waiting.add(link.group(1)));
            }
            System.out.printf(
                    Locale.ROOT,
                    "Of %d pages and papers of the demo, %s allocates most: %.2f of the heap in all%n",
                    seen.size(),
                    where.replaceAll("[0-9a-f]{8}-[0-9a-f-]{27}", "ID"),
                    (double) most / Runtime.getRuntime().maxMemory());
        }
    }

    private static long allocated() {
        var threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long sum = 0;
        for (long bytes : threads.getThreadAllocatedBytes(threads.getAllThreadIds())) {
            sum += Math.max(0, bytes);
        }
        return sum;
    }

    private static Ranch demo(int number) {
        var documents = new RanchDocument();
        var tree = documents.tree(TinLantern.ranch());
        tree.put("id", new UUID(1, number).toString()).put("name", "Invented ranch " + number);
        return documents.ranch(tree);
    }

    /** The demo's lots and reports over and over, each with ids of its own. */
    private static Ranch withLots(int lots) {
        var documents = new RanchDocument();
        var tree = documents.tree(TinLantern.ranch());
        var ofDemo = List.copyOf(tree.path("lots").properties());
        var reports = List.copyOf(tree.path("reports").properties());
        var allLots = (ObjectNode) tree.path("lots");
        var allReports = (ObjectNode) tree.path("reports");
        for (int i = ofDemo.size(); i < lots; i++) {
            var like = ofDemo.get(i % ofDemo.size());
            var id = new UUID(2, i).toString();
            var lot = ((ObjectNode) like.getValue()).deepCopy().put("name", "Lot " + i);
            allLots.set(id, lot);
            for (int r = 0; r < reports.size(); r++) {
                var report = (ObjectNode) reports.get(r).getValue();
                if (report.path("lot").asText().equals(like.getKey())) {
                    allReports.set(
                            new UUID(3 + r, i).toString(), report.deepCopy().put("lot", id));
                }
            }
        }
        return documents.ranch(tree);
    }

    /** Seconds of processor for one of so many requests. */
    private double cpu(String path, int times) throws IOException, InterruptedException {
        double before = Cpu.seconds();
        for (int i = 0; i < times; i++) {
            get(path);
        }
        return (Cpu.seconds() - before) / times;
    }

    private String get(String path) throws IOException, InterruptedException {
        var request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port() + path))
                .build();
        return browser.send(request, HttpResponse.BodyHandlers.ofString()).body();
    }

    @Override
    public void close() throws IOException {
        server.close();
        store.close();
        try (var files = Files.walk(folder)) {
            for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
