package haywright.app.web.lab;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.FeedBook;
import haywright.forage.FeedClass;
import haywright.forage.NutrientPrice;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.OwnBook;
import haywright.ranch.Ranch;
import haywright.ranch.Yard;
import haywright.ration.PricedFeed;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The feed book, to browse and to search: every row with where it is from and how that is known. */
public final class BookPages {
    public static final Ask WORDS = new Ask("q", "Feed", Unit.NONE, "Any words of its name, or a row’s number.", 24);
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
            List<Row> rows,
            List<String> ownHeads,
            List<Own> own,
            List<Price> prices) {}

    /** A class of feed and how many rows of the book it has. */
    public record Shelf(String id, String words, int rows) {}

    /** One class of the ranch's own lots. @param figures in the order of the heads */
    public record Own(String feed, String from, List<String> figures) {}

    /** What a feed costs, as fed and by what is in it; empty where that is not known. */
    public record Price(String feed, String asFed, String dry, String energy, String protein) {}

    /**
     * @param figures on dry matter, in the order of the heads; empty where the source prints none
     * @param rest what else it prints: "ADF 38.0 %; NDF 62.0 %"
     * @param known how the source is known, and its basis, in words
     * @param usual why it is the row taken for its class; empty for others
     */
    public record Row(FeedBook.Row row, List<String> figures, String rest, String known, String usual) {}

    private static View view(Page page) {
        var asked = new LinkedHashMap<String, String>();
        for (var ask : List.of(WORDS, FEED_CLASS)) {
            var value = page.http().queryParam(ask.name());
            asked.put(ask.name(), value == null ? "" : value);
        }
        var form = Form.of("reports/book", Map.copyOf(asked));
        var book = FeedBook.published();
        boolean isAsked = !form.isEmpty(WORDS) || !form.isEmpty(FEED_CLASS);
        var rows = isAsked
                ? book.search(form.value(WORDS)).stream()
                        .filter(row -> form.isEmpty(FEED_CLASS)
                                || Form.id(row.feedClass()).equals(form.value(FEED_CLASS)))
                        .map(row -> row(book, row))
                        .toList()
                : List.<Row>of();
        return new View(
                form,
                isAsked,
                Stream.of(FeedClass.values())
                        .map(c -> new Shelf(Form.id(c), c.words(), book.rows(c).size()))
                        .toList(),
                Option.of(FeedClass.class, FeedClass::words),
                SHOWN.stream().map(BookPages::head).toList(),
                rows,
                OWN.stream().map(BookPages::head).toList(),
                OwnBook.of(page.ranch()).rows().stream().map(BookPages::own).toList(),
                prices(new Yard(page.ranch(), page.today())));
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
                            Show.dollars(Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_TON, feed.pricePerKgAsFed())),
                            Show.dollars(Unit.DOLLAR_PER_KG.to(
                                    Unit.DOLLAR_PER_TON, feed.pricePerKgAsFed() * 100 / feed.dryMatterPercent())),
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

    private static Row row(FeedBook book, FeedBook.Row row) {
        boolean isUsual = book.usual(row.feedClass()).filter(row::equals).isPresent();
        var samples = row.samples();
        return new Row(
                row,
                SHOWN.stream().map(analyte -> figure(row, analyte)).toList(),
                row.composition().values().entrySet().stream()
                        .filter(e -> !SHOWN.contains(e.getKey()))
                        .map(e -> Readings.name(e.getKey()) + " "
                                + Figures.say(e.getKey(), e.getValue().value()))
                        .collect(Collectors.joining("; ")),
                "%s; printed as %s%s"
                        .formatted(
                                row.source().known().words(),
                                row.basis(),
                                samples.isPresent()
                                        ? "; protein of %s".formatted(Show.count((int) samples.getAsDouble(), "sample"))
                                        : ""),
                isUsual ? book.whyUsual(row.feedClass()).orElse("") : "");
    }

    /** Without its unit, which stands in the heading. */
    private static String figure(FeedBook.Row row, Analyte analyte) {
        var value = row.composition().value(analyte);
        if (value.isEmpty()) {
            return "";
        }
        var spread = row.spread().get(analyte);
        return bare(analyte, value.getAsDouble()) + (spread == null ? "" : " ±\u00a0" + bare(analyte, spread));
    }

    private static String bare(Analyte analyte, double value) {
        return Figures.say(analyte, value).replaceAll("\u00a0.*", "");
    }
}
