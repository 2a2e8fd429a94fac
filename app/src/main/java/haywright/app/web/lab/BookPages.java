package haywright.app.web.lab;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.NutrientPrice;
import haywright.forage.book.FeedBook;
import haywright.outlook.OwnBook;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ration.PricedFeed;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The feed book, to browse and to search: each feed once with its range, and behind it every row with its source. */
public final class BookPages {
    public static final Ask WORDS = new Ask("q", "Feed", Unit.NONE, "Any words of its name.", 24);
    public static final Ask FEED_CLASS = Ask.choice("class", "Kind of feed", "");

    private static final List<Analyte> SHOWN =
            List.of(Analyte.DM, Analyte.CP, Analyte.TDN, Analyte.NEM, Analyte.NEG, Analyte.CA, Analyte.P);

    private static final List<Analyte> OWN =
            List.of(Analyte.DM, Analyte.CP, Analyte.ADF, Analyte.NDF, Analyte.CA, Analyte.P);

    private BookPages() {}

    public static void routes(Routes on) {
        on.get("reports/book", page -> page.show("haywright/app/web/lab/book.jte", view(page)));
    }

    /**
     * @param asked whether anything is searched for; otherwise the shelves are shown
     * @param own what this ranch's tested lots have had
     * @param prices of what is here and what can be bought
     */
    public record View(
            Form form,
            boolean asked,
            List<Shelf> shelves,
            List<Option> classes,
            List<String> heads,
            List<Feed> feeds,
            List<String> ownHeads,
            List<Own> own,
            List<Price> prices) {}

    /** A class of feed and how many feeds of the book it has. */
    public record Shelf(String id, String words, int feeds) {}

    /**
     * One feed.
     *
     * @param ranges on dry matter, in the order of the heads, over its rows; empty where none prints it
     * @param usual why it is taken where nobody names a feed of its class; empty for others
     */
    public record Feed(FeedBook.Feed feed, List<String> ranges, List<Row> rows, String usual) {}

    /** One class of the ranch's own lots. @param figures in the order of the heads */
    public record Own(String feed, String from, List<String> figures) {}

    /** What a feed costs, as fed and by what is in it; empty where that is not known. */
    public record Price(String feed, String asFed, String dry, String energy, String protein) {}

    /**
     * What one source prints of a feed.
     *
     * @param figures "CP 12.8 ± 0.5 %; TDN 84.1 %", on dry matter
     * @param known how the source is known, and its basis, in words
     */
    public record Row(FeedBook.Row row, String figures, String known, boolean leads) {}

    private static View view(Page page) {
        var asked = new LinkedHashMap<String, String>();
        for (var ask : List.of(WORDS, FEED_CLASS)) {
            var value = page.http().queryParam(ask.name());
            asked.put(ask.name(), value == null ? "" : value);
        }
        var form = Form.of("reports/book", Map.copyOf(asked));
        var book = FeedBook.published();
        boolean isAsked = !form.isEmpty(WORDS) || !form.isEmpty(FEED_CLASS);
        var feeds = isAsked
                ? book.feeds(form.value(WORDS)).stream()
                        .filter(feed -> form.isEmpty(FEED_CLASS)
                                || Form.id(feed.feedClass()).equals(form.value(FEED_CLASS)))
                        .map(feed -> feed(book, feed))
                        .toList()
                : List.<Feed>of();
        return new View(
                form,
                isAsked,
                Stream.of(FeedClass.values())
                        .map(c -> new Shelf(Form.id(c), c.words(), (int) book.feeds().stream()
                                .filter(f -> f.feedClass() == c)
                                .count()))
                        .toList(),
                Option.of(FeedClass.class, FeedClass::words),
                SHOWN.stream().map(BookPages::head).toList(),
                feeds,
                OWN.stream().map(BookPages::head).toList(),
                OwnBook.of(page.ranch()).rows().stream().map(BookPages::own).toList(),
                prices(page.yard()));
    }

    private static Own own(OwnBook.Row row) {
        var last = row.last();
        return new Own(
                row.feedClass().words(),
                Show.count(row.lots(), "lot") + (last == null ? "" : ", the last report of " + Show.date(last)),
                OWN.stream()
                        .map(analyte -> figure(analyte, row.figures().get(analyte)))
                        .toList());
    }

    /** What the ranch's other tested lots of the class have had, a line a figure. */
    static List<String> beside(Ranch ranch, Lot lot) {
        return OwnBook.beside(ranch, lot).stream()
                .flatMap(row -> OWN.stream()
                        .filter(row.figures()::containsKey)
                        .map(analyte -> head(analyte) + ": "
                                + figure(analyte, row.figures().get(analyte))))
                .toList();
    }

    private static String figure(Analyte analyte, OwnBook.@Nullable Figure figure) {
        if (figure == null) {
            return "";
        }
        var mean = bare(analyte, figure.mean());
        return figure.sd().isEmpty()
                ? mean + " (one lot)"
                : "%s ±\u00a0%s (%d lots, %s to %s)"
                        .formatted(
                                mean,
                                bare(analyte, figure.sd().getAsDouble()),
                                figure.lots(),
                                bare(analyte, figure.least()),
                                bare(analyte, figure.most()));
    }

    private static List<Price> prices(Yard yard) {
        return yard.feeds().stream()
                .map(feed -> {
                    var made = feed.feed().composition();
                    var energy = price(feed, made.value(Analyte.TDN));
                    var protein = price(feed, made.value(Analyte.CP));
                    return new Price(
                            feed.feed().name(),
                            Show.dollars(Measures.price().fromBase(feed.pricePerKgAsFed())),
                            Show.dollars(
                                    Measures.price().fromBase(feed.pricePerKgAsFed() * 100 / feed.dryMatterPercent())),
                            energy,
                            protein);
                })
                .toList();
    }

    private static String price(PricedFeed feed, OptionalDouble share) {
        return share.isPresent() && share.getAsDouble() > 0
                ? Show.number(
                                100
                                        * Unit.DOLLAR_PER_KG.to(
                                                Unit.DOLLAR_PER_LB,
                                                new NutrientPrice(
                                                                feed.pricePerKgAsFed(),
                                                                feed.dryMatterPercent(),
                                                                Math.min(100, share.getAsDouble()))
                                                        .nutrient()),
                                0)
                        + "\u00a0¢"
                : "";
    }

    private static String head(Analyte analyte) {
        return switch (analyte) {
            case NEM -> "NEm, Mcal/lb";
            case NEG -> "NEg, Mcal/lb";
            case CA -> "Ca, %";
            default -> analyte.name() + ", %";
        };
    }

    private static Feed feed(FeedBook book, FeedBook.Feed feed) {
        return new Feed(
                feed,
                SHOWN.stream().map(analyte -> range(feed, analyte)).toList(),
                feed.rows().stream()
                        .map(row -> row(row, feed.rows().size() > 1 && row.equals(feed.lead())))
                        .toList(),
                book.usual(feed.feedClass()).filter(feed.lead()::equals).isPresent()
                        ? book.whyUsual(feed.feedClass()).orElse("")
                        : "");
    }

    /** "12.0 to 12.8", without its unit, which stands in the heading. */
    private static String range(FeedBook.Feed feed, Analyte analyte) {
        return feed.range(analyte)
                .map(range -> {
                    var low = bare(analyte, range.low());
                    var high = bare(analyte, range.high());
                    return low.equals(high) ? low : low + " to " + high;
                })
                .orElse("");
    }

    private static Row row(FeedBook.Row row, boolean leads) {
        var samples = row.samples();
        return new Row(
                row,
                row.composition().values().entrySet().stream()
                        .map(e -> figure(row, e.getKey(), e.getValue().value()))
                        .collect(Collectors.joining("; ")),
                "%s; printed as %s%s"
                        .formatted(
                                row.source().known().words(),
                                row.basis(),
                                samples.isPresent()
                                        ? "; protein of %s".formatted(Show.count((int) samples.getAsDouble(), "sample"))
                                        : ""),
                leads);
    }

    private static String figure(FeedBook.Row row, Analyte analyte, double value) {
        var spread = row.spread().get(analyte);
        return Readings.name(analyte) + " " + Figures.say(analyte, value)
                + (spread == null ? "" : " ±\u00a0" + bare(analyte, spread));
    }

    private static String bare(Analyte analyte, double value) {
        return Figures.say(analyte, value).replaceAll("\u00a0.*", "");
    }
}
