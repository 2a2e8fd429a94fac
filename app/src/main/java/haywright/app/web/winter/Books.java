package haywright.app.web.winter;

import haywright.app.web.KeptBooks;
import haywright.app.web.Page;
import haywright.app.web.Pages;
import haywright.ranch.Ranch;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Winter books that are being made, one after another beside the pages; each is kept in the store once it is made. */
final class Books {
    private static final int MOST = 40;

    private final Map<UUID, Making> books = new LinkedHashMap<>();
    private final LastFirst maker = new LastFirst("winter book");

    /** What is being made of the ranch, could not be made of it as it is, or was made and could not be kept. */
    synchronized Optional<Making> of(Page page) {
        var making = books.get(page.ranch().id());
        boolean isOver = making != null
                && (making.isKept()
                        || making.now().isRefused() && !making.hash().equals(KeptBooks.hash(page.ranch())));
        return isOver ? Optional.empty() : Optional.ofNullable(making);
    }

    /** One of the ranch as it is now that was made and is gone from the store since; where there is none it is begun. */
    synchronized Making madeOrBegun(Page page) {
        var making = books.get(page.ranch().id());
        if (making == null || making.now().book() == null || !making.hash().equals(KeptBooks.hash(page.ranch()))) {
            return begin(page);
        }
        making.lost();
        return making;
    }

    /** Begins a book of the ranch as it is now; one that is still being made of it is stopped. */
    synchronized Making begin(Page page) {
        return begin(page, page.ranch(), page.rev());
    }

    /** @param ranch as it is after what was asked for was done */
    synchronized Making begin(Page page, Ranch ranch, long rev) {
        var old = books.remove(ranch.id());
        if (old != null) {
            old.stop();
            maker.drop(old);
        }
        if (books.size() >= MOST) {
            var oldest = books.values().iterator();
            var gone = oldest.next();
            gone.stop();
            maker.drop(gone);
            oldest.remove();
        }
        var making = new Making(page, ranch, rev, threads());
        books.put(ranch.id(), making);
        var log = Pages.logger(page.http(), "A winter book");
        maker.put(making, () -> making.make().ifPresent(log));
        return making;
    }

    /** The one that is being worked at, where this one waits for it. */
    Optional<Making> before(Making making) {
        return making.now().isMaking() && !making.now().hasBegun()
                ? maker.running().map(Making.class::cast).filter(other -> !other.equals(making))
                : Optional.empty();
    }

    /** One core stays for the pages. */
    static int threads() {
        return Math.max(1, Runtime.getRuntime().availableProcessors() - 1);
    }
}
