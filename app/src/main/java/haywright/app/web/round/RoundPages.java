package haywright.app.web.round;

import haywright.app.store.RanchFiles;
import haywright.app.store.Ranches;
import haywright.app.store.Temporary;
import haywright.app.store.Trouble;
import haywright.app.web.Ask;
import haywright.app.web.Desk;
import haywright.app.web.Form;
import haywright.app.web.Frame;
import haywright.app.web.KeptBooks;
import haywright.app.web.Page;
import haywright.app.web.Pages;
import haywright.app.web.Sent;
import haywright.app.web.trail.ToDo;
import haywright.app.words.DateWords;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.app.words.WinterWords;
import haywright.outlook.DaysOfFeed;
import haywright.outlook.NextDate;
import haywright.outlook.Yard;
import haywright.ranch.FoundPlace;
import haywright.ranch.Ranch;
import haywright.ranch.RanchWeather;
import haywright.workings.Problem;
import haywright.workings.Refused;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The first page. */
public final class RoundPages {
    public static final Ask NAME = Ask.text("name", "Ranch name", "");
    public static final Ask TOWN = Ask.text(
            "town",
            "Nearest town and state",
            "Valentine, NE. Its winters raise what the cattle need. May be entered later.");
    public static final Ask TURNOUT =
            Ask.date("turnout", "Turnout date", "When grass should carry the cows: May 10. May be entered later.");

    private static final int LONGEST_NAME = 100;
    /** More ranches than anybody looks after; of those beyond, a line is made for every page. */
    private static final int MOST_LINES = 10_000;

    private final Desk desk;
    private final Map<UUID, Line> lines = new ConcurrentHashMap<>();

    private RoundPages(Desk desk) {
        this.desk = desk;
    }

    public static void routes(RoutesConfig on, Desk desk) {
        var round = new RoundPages(desk);
        on.get("/", http -> round.show(http, Form.of("ranch/new", Map.of()), List.of()));
        on.post("/ranches", round::add);
        on.post("/demo", round::openDemo);
        on.post("/import", round::takeIn);
        on.post("/ranches/{ranch}/restore", round::bringBack);
    }

    /**
     * @param refused what was wrong with a file that was sent, a line each
     * @param rows those that were looked for, in the order asked for
     * @param ids of all ranches there are
     * @param looked for, as typed; empty for all
     */
    public record View(
            Form form,
            String token,
            List<Row> rows,
            List<UUID> ids,
            String looked,
            Order order,
            List<Ranches.Listed> archived,
            List<String> refused,
            boolean hasDemo) {
        /**
         * Another once there is another ranch, and another in every home: what is sent twice from one page adds one ranch, and
         * two people who type the same name have two.
         */
        public String mark() {
            return "0-" + Integer.toHexString(Objects.hash(token, ids, archived));
        }

        /** The address of the same rows in another order. */
        public String by(Order other) {
            return "/?by=" + other.id()
                    + (looked.isEmpty() ? "" : "&find=" + URLEncoder.encode(looked, StandardCharsets.UTF_8));
        }
    }

    /** What the rows go by. */
    public enum Order {
        NAME("Ranch", Comparator.comparing(row -> row.name.toLowerCase(Locale.US))),
        TODO("To do", Comparator.comparing((Row row) -> row.waits.isEmpty()).thenComparing(row -> row.waits)),
        FEED("Hay on hand lasts", Comparator.comparingLong(row -> row.days)),
        NEXT("Next date", Comparator.comparing(row -> row.nextOn));

        private final String title;
        private final Comparator<Row> by;

        Order(String title, Comparator<Row> by) {
            this.title = title;
            this.by = by;
        }

        public String title() {
            return title;
        }

        public String id() {
            return name().toLowerCase(Locale.ROOT);
        }

        static Order of(@Nullable String id) {
            return Stream.of(values())
                    .filter(order -> order.id().equals(id))
                    .findFirst()
                    .orElse(NAME);
        }
    }

    /**
     * @param place where it is; empty until it is said
     * @param waits what it waits for, in words; empty when nothing does
     * @param days of hay and silage on hand; the greatest number where nothing is known of it
     * @param feed the same in words; empty when unknown
     * @param book its newest winter book in a line; empty where there is none of the ranch as it is
     * @param next the next date that matters; empty when none is known
     * @param nextOn the same as a day; the last day there is where none is known
     * @param wrong why nothing else can be said of it; empty when all is well
     */
    public record Row(
            UUID id,
            String name,
            boolean invented,
            String place,
            String waits,
            long days,
            String feed,
            String book,
            String next,
            LocalDate nextOn,
            String wrong) {
        boolean holds(String looked) {
            return (name + " " + place + " " + waits).toLowerCase(Locale.US).contains(looked.toLowerCase(Locale.US));
        }
    }

    /** A row as long as it is true: on one day, of one version of the ranch and of its winter book. */
    private record Line(String version, String book, LocalDate day, Row row) {}

    private void show(Context http, Form form, List<String> refused) {
        var ranches = desk.store().ranches();
        var find = http.queryParam("find");
        var looked = find == null ? "" : find.strip();
        var order = Order.of(http.queryParam("by"));
        var books = desk.store().winterBooks().states();
        var all = ranches.list().stream()
                .map(listed -> row(http, listed, books.getOrDefault(listed.id(), "")))
                .toList();
        var frame = Frame.plain(http, "Ranches").withProblems(form.hasProblems() || !refused.isEmpty());
        var demo = desk.demo().get().id();
        var view = new View(
                form,
                frame.token(),
                all.stream().filter(row -> row.holds(looked)).sorted(order.by).toList(),
                all.stream().map(Row::id).toList(),
                looked,
                order,
                ranches.deleted(),
                refused,
                all.stream().anyMatch(row -> row.id().equals(demo)));
        Pages.render(http, "haywright/app/web/round/round.jte", Map.of("frame", frame, "view", view));
    }

    /** What is wrong with one ranch stays in its row. */
    private Row row(Context http, Ranches.Listed listed, String book) {
        var today = desk.today();
        var line = lines.get(listed.id());
        if (line != null
                && line.version().equals(listed.version())
                && line.book().equals(book)
                && line.day().equals(today)) {
            return line.row();
        }
        try {
            var ranch = desk.store().ranches().open(listed.id()).ranch();
            var row = Measures.in(ranch, () -> row(ranch, today));
            if (lines.size() < MOST_LINES || line != null) {
                lines.put(listed.id(), new Line(listed.version(), book, today, row));
            }
            return row;
        } catch (RuntimeException e) {
            if (Trouble.of(e).isPresent()) {
                throw e;
            }
            var wrong = e instanceof Refused refused
                    ? refused.problems().get(0).sentence()
                    : "Something in it can’t be used. " + Pages.log(http, e);
            return new Row(listed.id(), listed.name(), false, "", "", Long.MAX_VALUE, "", "", "", LocalDate.MAX, wrong);
        }
    }

    private Row row(Ranch ranch, LocalDate day) {
        var today = ranch.settings().today(day);
        var current = KeptBooks.current(desk, ranch);
        var waits = ToDo.of(ranch, current.isPresent());
        var weather = ranch.settings().weather();
        var feed = DaysOfFeed.of(new Yard(ranch, today));
        var next = NextDate.of(ranch, today);
        return new Row(
                ranch.id(),
                Frame.name(ranch),
                ranch.settings().invented(),
                weather == null ? "" : weather.place(),
                waits.isEmpty() ? "" : waits.get(0).says(),
                feed.map(DaysOfFeed::days).orElse(Long.MAX_VALUE),
                feed.map(lasts -> "about %s, to %s"
                                .formatted(Show.count(lasts.days(), "day"), Show.day(lasts.until(today))))
                        .orElse(""),
                current.map(book -> WinterWords.line(book, today)).orElse(""),
                next.map(DateWords::brief).orElse(""),
                next.map(NextDate::on).orElse(LocalDate.MAX),
                "");
    }

    private void add(Context http) {
        var form = Form.posted("ranch/new", new LinkedHashMap<>(http.formParamMap()));
        var name = form.name(NAME, "Enter a name.");
        var place = place(form, form.text(TOWN));
        var turnout = form.maybeDate(TURNOUT, desk.today());
        var made = form.build(() -> {
            var empty = Ranch.empty(Sent.newId(http), name);
            var ranch = place == null ? empty : empty.at(place);
            return turnout == null ? ranch : ranch.with(ranch.settings().withTurnout(turnout));
        });
        if (made.isEmpty()) {
            http.status(422);
            show(http, form, List.of());
            return;
        }
        desk.store().ranches().createOnce(made.get());
        Page.leave(http, "/ranch/" + made.get().id() + "/");
    }

    /** Wind and shelter are asked where they count. */
    private static @Nullable RanchWeather place(Form form, String town) {
        if (town.isEmpty()) {
            return null;
        }
        try {
            return RanchWeather.of(FoundPlace.of(town, null, 0));
        } catch (Refused e) {
            var why = e.problems().get(0);
            form.refuse(TOWN.name(), town, why.rule(), why.fix());
            return null;
        }
    }

    /** Opened again it is as it was left. */
    private void openDemo(Context http) {
        var demo = desk.demo().get();
        var ranches = desk.store().ranches();
        if (ranches.deleted().stream().anyMatch(r -> r.id().equals(demo.id()))) {
            ranches.restore(demo.id());
        } else {
            ranches.createOnce(demo);
        }
        Page.leave(http, "/ranch/" + demo.id() + "/");
    }

    /** One ranch as JSON, or a backup: a zip of them or a daily copy. */
    private void takeIn(Context http) throws IOException {
        var file = http.uploadedFile("file");
        if (file == null || file.size() == 0) {
            http.status(422);
            var why = file == null || file.filename().isEmpty()
                    ? "No file was chosen. Choose one, then send it."
                    : "“%s” is empty. Choose another, or export it again.".formatted(file.filename());
            show(http, Form.of("ranch/new", Map.of()), List.of(why));
            return;
        }
        try {
            take(http, file);
        } catch (Refused e) {
            http.status(422);
            var lines = e.problems().stream()
                    .map(p -> (p.field().isBlank() ? "" : p.field() + ": ") + p.sentence())
                    .toList();
            show(http, Form.of("ranch/new", Map.of()), lines);
        }
    }

    private void take(Context http, UploadedFile file) throws IOException {
        // under its own name, which the history and every message have
        var name = file.filename();
        var own = name.replaceAll("^.*[/\\\\]", "").replaceAll("[^\\w. -]", "_");
        var folder = Temporary.folder();
        boolean isCopy = name.endsWith(".zip") || name.endsWith(".db");
        var copy = folder.resolve(isCopy ? own.substring(Math.max(0, own.length() - LONGEST_NAME)) : "document");
        try {
            try (var in = file.content()) {
                Files.copy(in, copy);
            }
            if (isCopy && !RanchFiles.isDocument(copy)) {
                var wrong = desk.store().files().restore(copy, Desk.WHO).stream()
                        .filter(one -> !one.wrong().isEmpty())
                        .map(one -> "%s cannot be read in this file: %s The others are here."
                                .formatted(one.name(), one.wrong()))
                        .toList();
                if (wrong.isEmpty()) {
                    Page.leave(http, "/");
                } else {
                    http.status(422);
                    show(http, Form.of("ranch/new", Map.of()), wrong);
                }
            } else {
                boolean replace = "yes".equals(http.formParam("replace"));
                var taken = desk.store().files().take(copy, Desk.WHO, "Imported from " + name, replace);
                // what could not be read, and gave way, is there
                var on = taken.became() == RanchFiles.Became.MENDED ? "history" : "";
                Page.leave(http, "/ranch/" + taken.id() + "/" + on);
            }
        } catch (Refused e) {
            throw new Refused(e.problems().stream()
                    .map(p -> new Problem(
                            p.field(), p.value().contains(folder.toString()) ? name : p.value(), p.rule(), p.fix()))
                    .toList());
        } finally {
            for (var left : Files.list(folder).toList()) {
                Files.deleteIfExists(left);
            }
            Files.deleteIfExists(folder);
        }
    }

    private void bringBack(Context http) {
        try {
            desk.store().ranches().restore(UUID.fromString(http.pathParam("ranch")));
        } catch (IllegalArgumentException e) {
            throw new NotFoundResponse();
        }
        Page.leave(http, "/");
    }
}
