package haywright.app.web.winter;

import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.feeding.Rations;
import haywright.feeding.SeasonByRations;
import haywright.outlook.Yard;
import haywright.season.BookMaker;
import haywright.season.WinterBook.Alternative;
import haywright.season.kept.KeptBook;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.ServiceUnavailableResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/** Two things that could be done, put together: tap one, then the other. Priced when it is asked for, and kept in memory. */
public final class BothPages {
    private static final int MOST = 200;
    private static final long MOST_NANOS = 40_000_000_000L;

    private final Map<String, Alternative> priced = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.@Nullable Entry<String, Alternative> eldest) {
            return size() > MOST;
        }
    };

    private final ReentrantLock turn = new ReentrantLock();

    BothPages() {}

    void routes(Routes on) {
        on.get("winter/with/{first}", this::show);
        on.get("winter/with/{first}/{second}", this::show);
    }

    /**
     * @param second null until it is chosen
     * @param both null until it is, or where they could not be priced
     * @param isOlder whether the ranch has changed since the book, so that nothing can be added to it
     */
    public record View(
            Alternative first,
            List<Alternative> others,
            @Nullable Alternative second,
            @Nullable Alternative both,
            boolean isOlder) {}

    private void show(Page page) {
        var shown = WinterPages.view(page);
        var book = WinterPages.book(shown);
        var first = named(book, page.http().pathParam("first"));
        var second =
                Optional.ofNullable(page.http().pathParamMap().get("second")).map(id -> named(book, id));
        if (second.filter(first::equals).isPresent()) {
            throw new NotFoundResponse("It takes two different ones.");
        }
        var hardness = book.hardness();
        boolean isOlder = hardness == null || shown.age().isOlder();
        page.show(
                "haywright/app/web/winter/both.jte",
                new View(
                        first,
                        single(book).stream()
                                .filter(one -> !one.equals(first)
                                        && second.filter(one::equals).isEmpty())
                                .toList(),
                        second.orElse(null),
                        second.filter(two -> !isOlder)
                                .map(two -> together(page, book, hardness == null ? 0 : hardness, first, two))
                                .orElse(null),
                        isOlder));
    }

    /** Not those that are two already. */
    private static List<Alternative> single(KeptBook book) {
        return book.alternatives().stream()
                .filter(one -> !one.id().contains("+"))
                .toList();
    }

    private static Alternative named(KeptBook book, String id) {
        return single(book).stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new NotFoundResponse("That is not in this book."));
    }

    /** One pair after another, and no queue of them: each that waits holds a place that other pages need. */
    private Alternative together(Page page, KeptBook book, double hardness, Alternative first, Alternative second) {
        boolean inOrder = first.id().compareTo(second.id()) < 0;
        var key = String.join(
                " ",
                book.hash(),
                book.day().toString(),
                inOrder ? first.id() : second.id(),
                inOrder ? second.id() : first.id());
        var known = known(key);
        if (known != null) {
            return known;
        }
        if (!turn.tryLock()) {
            throw new ServiceUnavailableResponse(
                    "Another pair is being priced. Nothing was changed; open this again in half a minute.");
        }
        try {
            return price(page, book, hardness, first, second, key);
        } finally {
            turn.unlock();
        }
    }

    private @Nullable Alternative known(String key) {
        synchronized (priced) {
            return priced.get(key);
        }
    }

    private Alternative price(
            Page page, KeptBook book, double hardness, Alternative first, Alternative second, String key) {
        long began = System.nanoTime();
        var asking = Thread.currentThread();
        BooleanSupplier enough = () -> asking.isInterrupted() || System.nanoTime() - began > MOST_NANOS;
        var yard = new Yard(page.ranch(), book.day());
        var both = new BookMaker(Making.SEED, BookMaker.DRAWS, Books.threads(), true, true, enough)
                .together(yard, SeasonByRations.of(new Rations(yard)), hardness, first.id(), second.id())
                .orElseThrow(() -> new ServiceUnavailableResponse(
                        "This took too long on a busy machine. Nothing was changed; open it again in a minute."));
        synchronized (priced) {
            priced.put(key, both);
        }
        return both;
    }
}
