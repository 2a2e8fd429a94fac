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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The feed book, to browse and to search: every row with where it is from and how that is known. */
public final class BookPages {
    public static final Ask WORDS =
            new Ask("q", "Feed", haywright.quantity.Unit.NONE, "Any words of its name, or a row’s number.", 24);
    public static final Ask FEED_CLASS = Ask.choice("class", "Kind of feed", "");

    private static final List<Analyte> SHOWN =
            List.of(Analyte.DM, Analyte.CP, Analyte.TDN, Analyte.NEM, Analyte.NEG, Analyte.CA, Analyte.P);

    private BookPages() {}

    public static void routes(Routes on) {
        on.get("reports/book", page -> page.show("haywright/app/web/lab/book.jte", view(page)));
    }

    public record View(Form form, List<Option> classes, List<String> heads, List<Row> rows) {}

    /**
     * @param figures on dry matter, in the order of the heads; empty where the source prints none
     * @param known how the source is known, and its basis, in words
     * @param usual why it is the row taken for its class; empty for others
     */
    public record Row(FeedBook.Row row, List<String> figures, String known, String usual) {}

    private static View view(Page page) {
        var asked = new LinkedHashMap<String, String>();
        for (var ask : List.of(WORDS, FEED_CLASS)) {
            var value = page.http().queryParam(ask.name());
            asked.put(ask.name(), value == null ? "" : value);
        }
        var form = Form.of("reports/book", Map.copyOf(asked));
        var book = FeedBook.published();
        var rows = book.search(form.value(WORDS)).stream()
                .filter(row ->
                        form.isEmpty(FEED_CLASS) || Form.id(row.feedClass()).equals(form.value(FEED_CLASS)))
                .map(row -> row(book, row))
                .toList();
        return new View(
                form,
                Option.of(FeedClass.class, FeedClass::words),
                SHOWN.stream().map(BookPages::head).toList(),
                rows);
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
