package haywright.forage.book;

import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.workings.Origin;
import haywright.workings.PublishedTable;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Published composition of feeds, one row a feed and source: sources are not merged, so one feed can have several rows
 * and they differ. People pick a {@link Feed}, which is all its rows. A row stands in for what no report says, and is always named beside the figure.
 */
public final class FeedBook {
    private final List<Row> rows;
    private final Map<FeedClass, Usual> usual;
    private final List<Feed> feeds;

    /** As many names as a reader looks through beside a box. */
    private static final int MOST_NAMED = 12;

    /** Known basis first, then what a ration needs, then what was read, then the longest row. */
    private static final Comparator<Row> FULLEST = Comparator.<Row, Boolean>comparing(r -> !r.basisIsKnown())
            .thenComparing(r -> !r.composition
                    .values()
                    .keySet()
                    .containsAll(Set.of(Analyte.CP, Analyte.TDN, Analyte.CA, Analyte.P)))
            .thenComparing(r -> r.source.known() != Source.Known.READ)
            .thenComparing(r -> -r.composition.values().size());

    private FeedBook(List<Row> rows, Map<FeedClass, Usual> usual) {
        this.rows = List.copyOf(rows);
        this.usual = Collections.unmodifiableMap(usual);
        var byName = new LinkedHashMap<List<Object>, List<Row>>();
        rows.forEach(row -> byName.computeIfAbsent(List.of(row.feedClass, row.group), k -> new ArrayList<>())
                .add(row));
        this.feeds = byName.values().stream()
                .map(this::feed)
                .sorted(Comparator.comparing(Feed::feedClass).thenComparing(Feed::name))
                .toList();
    }

    private Feed feed(List<Row> rows) {
        var first = rows.get(0);
        var lead = usual(first.feedClass)
                .filter(rows::contains)
                .orElseGet(() -> rows.stream().min(FULLEST).orElseThrow());
        return new Feed(
                first.group.substring(0, 1).toUpperCase(Locale.ROOT) + first.group.substring(1),
                first.feedClass,
                List.copyOf(rows),
                lead);
    }

    /**
     * @param id of the row, {@code C154}
     * @param feed its name in the source
     * @param group what ties rows of the same feed together
     * @param composition on dry matter, each value with the row's source; the row's own dry matter only where it prints
     *     one. Figures of minerals and urea are as is: their dry matter is set to 100, so that a kilogram is a kilogram
     * @param spread standard deviation between samples where the row prints one
     * @param samples how many samples stand behind its protein, where printed
     * @param basis what the source's page used, in words
     * @param address where it was read; empty for memory
     * @param note what is to be known of the row
     */
    public record Row(
            String id,
            String feed,
            String group,
            FeedClass feedClass,
            Composition composition,
            Map<Analyte, Double> spread,
            OptionalDouble samples,
            Source source,
            String basis,
            String address,
            String note) {
        /** False where the source does not say its basis: such a row is never taken unless it is picked. */
        public boolean basisIsKnown() {
            return !basis.contains("not stated");
        }
    }

    /** @param dryMatterFrom the row that lends its dry matter where {@code row} has none */
    private record Usual(Row row, Optional<Row> dryMatterFrom, String reason) {}

    public static FeedBook published() {
        return Shipped.BOOK;
    }

    public List<Row> rows() {
        return rows;
    }

    public Optional<Row> row(String id) {
        return rows.stream().filter(r -> r.id.equalsIgnoreCase(id.strip())).findFirst();
    }

    /**
     * The row a lot or a feed for sale names, or the usual one of its class when it names none. Empty for a class without
     * a usual row.
     *
     * @throws Refused if it names a row that the book does not have
     */
    public Optional<Row> rowFor(String id, FeedClass feedClass) {
        if (id.isBlank()) {
            return usual(feedClass);
        }
        return Optional.of(row(id).orElseThrow(() -> new Refused(
                "bookRow",
                id,
                "the feed book has no such row",
                "Pick one by the feed's name, or leave it empty for the usual row of " + feedClass.words() + ".")));
    }

    /** Rows whose feed or group holds every word, in the book's order. */
    public List<Row> search(String words) {
        var asked = words.strip().toLowerCase(Locale.ROOT).split("\\s+");
        return rows.stream()
                .filter(row -> {
                    var text = (row.feed + " " + row.group + " " + row.id).toLowerCase(Locale.ROOT);
                    for (var word : asked) {
                        if (!text.contains(word)) {
                            return false;
                        }
                    }
                    return true;
                })
                .toList();
    }

    /**
     * One feed as people name it, with every row that a source prints of it.
     *
     * @param name as it is typed: "Barley grain"
     * @param rows in the book's order; at least one
     * @param lead the row whose figures stand in for a lot of which nothing more is said
     */
    public record Feed(String name, FeedClass feedClass, List<Row> rows, Row lead) {
        /** Least and most that its rows print; empty where none prints it. */
        public Optional<Analyte.Range> range(Analyte analyte) {
            return rows.stream()
                    .flatMap(row -> row.composition.value(analyte).stream().boxed())
                    .map(v -> new Analyte.Range(v, v))
                    .reduce(Analyte.Range::with);
        }
    }

    /** Every feed once, by class and name. */
    public List<Feed> feeds() {
        return feeds;
    }

    /** Feeds of which the name, or the name of a row, holds every word. */
    public List<Feed> feeds(String words) {
        var found = search(words);
        return feeds.stream()
                .filter(f -> f.rows.stream().anyMatch(found::contains))
                .toList();
    }

    /**
     * How a lot names a feed of which nothing more is said. Empty for the usual one of a class whose lots range from young
     * to ripe: by its row the lot would be of that one ripeness.
     */
    public String idOf(Feed feed) {
        return usual(feed.feedClass).filter(feed.lead::equals).isPresent() && Prior.isOfAnyRipeness(feed.feedClass)
                ? ""
                : feed.lead.id;
    }

    /** The feed that a row is of. */
    public Feed feed(Row row) {
        return feeds.stream().filter(f -> f.rows.contains(row)).findFirst().orElseThrow();
    }

    /**
     * The row that is meant by what somebody typed: the name of a feed, of a row, or words that only one feed has, of
     * this class before others. A name that several rows bear means the fullest of them.
     *
     * @throws Refused naming the feeds that could be meant
     */
    public Row named(String field, String typed, FeedClass feedClass) {
        var name = typed.strip();
        var exact = row(name)
                .or(() -> feeds.stream()
                        .filter(f -> f.name.equalsIgnoreCase(name))
                        .min(Comparator.comparing(f -> f.feedClass != feedClass))
                        .map(Feed::lead))
                .or(() -> rows.stream()
                        .filter(r -> r.feed.equalsIgnoreCase(name))
                        .min(Comparator.<Row, Boolean>comparing(r -> r.feedClass != feedClass)
                                .thenComparing(FULLEST)));
        if (exact.isPresent()) {
            return exact.get();
        }
        var all = feeds(name);
        var ofClass = all.stream().filter(f -> f.feedClass == feedClass).toList();
        var meant = ofClass.isEmpty() ? all : ofClass;
        if (meant.size() == 1) {
            return meant.get(0).lead;
        }
        throw new Refused(
                field,
                typed,
                meant.isEmpty()
                        ? "the feed book has no feed of this name"
                        : "%d feeds of the book have these words".formatted(meant.size()),
                meant.isEmpty()
                        ? "Try one word of it, or leave it empty for the usual %s.".formatted(feedClass.words())
                        : "Type one of: "
                                + meant.stream()
                                        .limit(MOST_NAMED)
                                        .map(Feed::name)
                                        .collect(Collectors.joining("; "))
                                + ".");
    }

    public List<Row> rows(FeedClass feedClass) {
        return rows.stream().filter(r -> r.feedClass == feedClass).toList();
    }

    /**
     * The row taken for a class when nobody picks one: an ordinary feed of the class whose row has protein, TDN, calcium
     * and phosphorus where any does, one that was read before one from memory. Empty for minerals and NPN, where there is
     * no such thing as the usual one.
     */
    public Optional<Row> usual(FeedClass feedClass) {
        return Optional.ofNullable(usual.get(feedClass)).map(Usual::row);
    }

    /** Why this row is the usual one. */
    public Optional<String> whyUsual(FeedClass feedClass) {
        return Optional.ofNullable(usual.get(feedClass)).map(Usual::reason);
    }

    /** The row whose dry matter is taken for a feed of this class when neither a report nor its own row has one. */
    public Optional<Row> dryMatterRow(FeedClass feedClass) {
        return Optional.ofNullable(usual.get(feedClass))
                .map(u -> u.dryMatterFrom.orElse(u.row))
                .filter(r -> r.composition.knows(Analyte.DM));
    }

    /** Read when first asked for. */
    private static final class Shipped {
        private static final Map<String, Analyte> COLUMNS = Map.ofEntries(
                Map.entry("dm_pct", Analyte.DM),
                Map.entry("cp_pct_dm", Analyte.CP),
                Map.entry("rup_pct_cp", Analyte.RUP),
                Map.entry("adf_pct_dm", Analyte.ADF),
                Map.entry("ndf_pct_dm", Analyte.NDF),
                Map.entry("lignin_pct_dm", Analyte.LIGNIN),
                Map.entry("ash_pct_dm", Analyte.ASH),
                Map.entry("fat_pct_dm", Analyte.FAT),
                Map.entry("tdn_pct_dm", Analyte.TDN),
                Map.entry("nem_mcal_per_kg_dm", Analyte.NEM),
                Map.entry("neg_mcal_per_kg_dm", Analyte.NEG),
                Map.entry("starch_pct_dm", Analyte.STARCH),
                Map.entry("ca_pct_dm", Analyte.CA),
                Map.entry("p_pct_dm", Analyte.P),
                Map.entry("mg_pct_dm", Analyte.MG),
                Map.entry("k_pct_dm", Analyte.K),
                Map.entry("na_pct_dm", Analyte.NA),
                Map.entry("s_pct_dm", Analyte.S),
                Map.entry("cu_ppm", Analyte.CU),
                Map.entry("zn_ppm", Analyte.ZN),
                Map.entry("mn_ppm", Analyte.MN),
                Map.entry("fe_ppm", Analyte.FE),
                Map.entry("mo_ppm", Analyte.MO),
                Map.entry("se_ppm", Analyte.SE),
                Map.entry("cl_pct_dm", Analyte.CL),
                Map.entry("ndicp_pct_dm", Analyte.NDICP),
                Map.entry("adicp_pct_dm", Analyte.ADICP));
        private static final List<String> SPREADS =
                List.of("dm", "cp", "rup", "adf", "ndf", "lignin", "ash", "fat", "starch", "ca", "p");
        static final FeedBook BOOK = read();

        private static FeedBook read() {
            var rows = new ArrayList<Row>();
            for (var row :
                    PublishedTable.read(FeedBook.class, "composition.csv").rows()) {
                rows.add(row(row));
            }
            var book = new FeedBook(rows, Map.of());
            var usual = new EnumMap<FeedClass, Usual>(FeedClass.class);
            for (var row : PublishedTable.read(FeedBook.class, "usual_rows.csv").rows()) {
                usual.put(
                        FeedClass.valueOf(row.text("class").toUpperCase(Locale.ROOT)),
                        new Usual(
                                book.row(row.text("row_id")).orElseThrow(),
                                row.some("dry_matter_row")
                                        .map(id -> book.row(id).orElseThrow()),
                                row.text("reason")));
            }
            return new FeedBook(rows, usual);
        }

        private static Row row(PublishedTable.Row cells) {
            var cite = "%s (row %s, %s)".formatted(cells.text("source"), cells.text("row_id"), cells.text("feed"));
            var source = switch (cells.text("tier")) {
                case "read" -> Source.read(cite);
                case "judgment" -> Source.judgment(cite);
                default -> Source.memory(cite);
            };
            var values = new EnumMap<Analyte, Composition.Known>(Analyte.class);
            COLUMNS.forEach((column, analyte) -> cells.number(column)
                    .ifPresent(v -> values.put(analyte, new Composition.Known(v, new Origin.Published(source)))));
            if (cells.text("source_basis").equals("as is")) {
                values.put(
                        Analyte.DM,
                        new Composition.Known(
                                100,
                                new Origin.Published(Source.judgment(
                                        "the row's figures are as is, so a kilogram is counted as it comes"))));
            }
            var spread = new EnumMap<Analyte, Double>(Analyte.class);
            for (var id : SPREADS) {
                cells.number(id + "_sd").ifPresent(sd -> spread.put(Analyte.valueOf(id.toUpperCase(Locale.ROOT)), sd));
            }
            return new Row(
                    cells.text("row_id"),
                    cells.text("feed"),
                    cells.text("feed_group"),
                    FeedClass.valueOf(cells.text("class").toUpperCase(Locale.ROOT)),
                    new Composition(values),
                    Collections.unmodifiableMap(spread),
                    cells.number("n_cp"),
                    source,
                    cells.text("source_basis"),
                    cells.text("source_url"),
                    cells.text("notes"));
        }
    }
}
