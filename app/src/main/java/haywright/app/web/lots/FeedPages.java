package haywright.app.web.lots;

import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.forage.book.FeedBook;
import haywright.outlook.Yard;
import haywright.ranch.FeedForSale;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The feeds that can be bought; listed beside the lots. */
public final class FeedPages {
    private static final String FORM = "haywright/app/web/lots/feed.jte";

    private FeedPages() {}

    public static void routes(Routes on) {
        on.get("feeds/new", page -> page.show(FORM, view(page, page.form(path(null), () -> named(page)), null)));
        on.post("feeds/new", page -> save(page, null));
        on.get("feeds/{feed}", FeedPages::change);
        on.post("feeds/{feed}", page -> save(page, feed(page)));
        on.get("feeds/{feed}/delete", page -> page.show("haywright/app/web/lots/deleteFeed.jte", feed(page)));
        on.post("feeds/{feed}/delete", FeedPages::delete);
    }

    /** @param values where its values come from, in words */
    public record Row(FeedForSale feed, String price, String values, String limit) {}

    /** @param feed null for a new one */
    public record FormView(Form form, @Nullable FeedForSale feed, String action, List<Option> classes) {}

    static Row row(Yard yard, FeedForSale feed) {
        boolean isInTheBook =
                FeedBook.published().rowFor(feed.bookRow(), feed.feedClass()).isPresent();
        var book = isInTheBook
                ? "the feed book: "
                        + (feed.bookRow().isBlank()
                                ? "usual " + feed.feedClass().words()
                                : FeedPick.words(feed.bookRow()))
                : "none yet";
        return new Row(
                feed,
                Show.price(feed.price(), yard.dryMatter(feed)),
                feed.tag().isEmpty() ? book : isInTheBook ? "its tag, then " + book : "its tag",
                (feed.atMost() == null ? "no limit" : "at most " + Show.quantity(feed.atMost())) + loads(feed));
    }

    /** How many loads that is, and what each adds to the price of a ton. */
    private static String loads(FeedForSale feed) {
        var load = feed.load();
        if (load == null) {
            return "";
        }
        var most = feed.atMost();
        var loads = most == null
                ? ", in loads of " + Show.quantity(load)
                : ", %s of %s".formatted(Show.count(feed.loads(most.base()).orElse(0), "load"), Show.quantity(load));
        double freight = feed.freightALoad();
        return freight == 0
                ? loads
                : "%s; %s freight a load, %s a %s on top"
                        .formatted(
                                loads,
                                Show.dollars(freight),
                                Show.dollars(freight / load.in(Measures.mass())),
                                Measures.ton());
    }

    /** Under the name that the address brings, if any. */
    private static Map<String, String> named(Page page) {
        var name = page.http().queryParam("name");
        return name == null ? Map.of() : Map.of(FeedForm.NAME.name(), name);
    }

    private static void change(Page page) {
        var feed = feed(page);
        page.show(FORM, view(page, page.form(path(feed), () -> FeedForm.known(feed)), feed));
    }

    /** @param before null for a new one */
    private static void save(Page page, @Nullable FeedForSale before) {
        var id = before == null ? UUID.randomUUID() : before.id();
        var form = page.posted(path(before));
        var feed = FeedForm.read(form, id, before);
        if (feed.isEmpty()) {
            page.reject(form, FORM, view(page, form, before));
            return;
        }
        var kept = feed.get();
        var book = FeedPick.words(kept.bookRow());
        var words = "%s: %s%s"
                .formatted(
                        before == null ? "Feed to buy added" : "Feed to buy changed",
                        kept.name(),
                        form.isEmpty(FeedForm.FEED_CLASS)
                                ? ", taken as %s%s"
                                        .formatted(
                                                kept.feedClass().words(),
                                                book.isEmpty() ? "" : " (" + book + " in the feed book)")
                                : "");
        page.save(form, words, ranch -> ranch.with(kept), page.wantsMore() ? "feeds/new" : "lots");
    }

    private static void delete(Page page) {
        var feed = feed(page);
        page.save(
                page.posted(path(feed)),
                "Feed to buy deleted: " + feed.name(),
                ranch -> ranch.withoutFeedForSale(feed.id()),
                "lots");
    }

    private static FeedForSale feed(Page page) {
        return page.find(page.ranch().feedsForSale(), "feed");
    }

    /** The path of a feed's form; what is left unfinished is kept under it. */
    private static String path(@Nullable FeedForSale feed) {
        return "feeds/" + (feed == null ? "new" : feed.id());
    }

    private static FormView view(Page page, Form form, @Nullable FeedForSale feed) {
        return new FormView(form, feed, page.at(path(feed)), FeedNames.kinds());
    }
}
