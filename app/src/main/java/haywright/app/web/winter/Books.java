package haywright.app.web.winter;

import haywright.app.web.Page;
import haywright.app.web.Pages;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** The newest winter book of each ranch looked at last, made one after another beside the pages. */
final class Books {
    private static final int MOST = 40;

    private final Map<UUID, Making> books = new LinkedHashMap<>();
    private final LastFirst maker = new LastFirst("winter book");

    synchronized Optional<Making> of(UUID ranch) {
        return Optional.ofNullable(books.get(ranch));
    }

    /** Begins a book of the ranch as it is now; one that is still being made of it is stopped. */
    synchronized Making begin(Page page) {
        var old = books.remove(page.ranch().id());
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
        // one core stays for the pages
        int threads = Math.max(1, Runtime.getRuntime().availableProcessors() - 1);
        var making = new Making(page.ranch(), page.rev(), page.today(), threads);
        books.put(page.ranch().id(), making);
        var log = Pages.logger(page.http(), "A winter book");
        maker.put(making, () -> making.make().ifPresent(log));
        return making;
    }
}
