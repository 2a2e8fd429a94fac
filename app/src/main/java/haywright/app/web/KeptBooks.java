package haywright.app.web;

import haywright.app.document.BookDocument;
import haywright.app.store.WinterBooks;
import haywright.ranch.Ranch;
import haywright.season.kept.KeptBook;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Winter books as the store has them, read once. No page but the winter book's own ever waits for one to be made: it shows
 * a line of the newest, and only where nothing that moves a book has changed since.
 */
public final class KeptBooks {
    private static final int MOST = 60;

    private static final Map<UUID, Read> READ = eldestDropped();
    private static final Map<UUID, Hashed> HASHED = eldestDropped();

    private KeptBooks() {}

    /**
     * @param hash of what it was made from
     * @param rev the revision of the ranch it was made from
     * @param isCurrent whether nothing that moves it has changed since
     */
    public record Kept(KeptBook book, String hash, long rev, boolean isCurrent) {}

    /** @param state what the store had then. @param isDamaged whether the newest of them can't be read */
    private record Read(String state, List<Of> books, boolean isDamaged) {}

    private record Of(KeptBook book, String hash, long rev) {}

    /** @param ranch that very one: a revision is read once, and comparing all of two ranches would cost more */
    private record Hashed(Ranch ranch, String hash) {}

    /** The one of the ranch as it is now; where there is none, the newest that can be read. */
    public static Optional<Kept> newest(Desk desk, Ranch ranch) {
        var books = read(desk, ranch).books();
        var hash = hash(ranch);
        return books.stream()
                .filter(book -> book.hash().equals(hash))
                .findFirst()
                .or(() -> books.stream().findFirst())
                .map(book -> kept(book, ranch));
    }

    /** The newest of those that were made from something else. @param hash of what it was not made from */
    public static Optional<Kept> before(Desk desk, Ranch ranch, String hash) {
        return read(desk, ranch).books().stream()
                .filter(book -> !book.hash().equals(hash))
                .findFirst()
                .map(book -> kept(book, ranch));
    }

    /** The newest, where it is of the ranch as it is now. */
    public static Optional<KeptBook> current(Desk desk, Ranch ranch) {
        return newest(desk, ranch).filter(Kept::isCurrent).map(Kept::book);
    }

    /** Whether one was kept after the newest that can be read, and is damaged or of another build of the program. */
    public static boolean isDamaged(Desk desk, Ranch ranch) {
        return read(desk, ranch).isDamaged();
    }

    private static Kept kept(Of of, Ranch ranch) {
        return new Kept(of.book(), of.hash(), of.rev(), of.hash().equals(hash(ranch)));
    }

    private static Read read(Desk desk, Ranch ranch) {
        var books = desk.store().winterBooks();
        var state = books.state(ranch.id());
        synchronized (READ) {
            var known = READ.get(ranch.id());
            if (known != null && known.state().equals(state)) {
                return known;
            }
        }
        var kept = state.isEmpty() ? List.<WinterBooks.Kept>of() : books.of(ranch.id());
        var read = kept.stream()
                .flatMap(one -> BookDocument.read(one.doc()).map(book -> new Of(book, one.hash(), one.rev())).stream())
                .toList();
        boolean isDamaged = !kept.isEmpty()
                && (read.isEmpty() || !read.get(0).hash().equals(kept.get(0).hash()));
        var now = new Read(state, read, isDamaged);
        synchronized (READ) {
            READ.put(ranch.id(), now);
        }
        return now;
    }

    /** Of what moves a book of this ranch. */
    @SuppressWarnings("ReferenceEquality")
    public static String hash(Ranch ranch) {
        synchronized (HASHED) {
            var known = HASHED.get(ranch.id());
            if (known != null && known.ranch() == ranch) {
                return known.hash();
            }
        }
        var hash = BookDocument.hash(ranch);
        synchronized (HASHED) {
            HASHED.put(ranch.id(), new Hashed(ranch, hash));
        }
        return hash;
    }

    static <T> Map<UUID, T> eldestDropped() {
        return new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1;

            @Override
            protected boolean removeEldestEntry(Map.@Nullable Entry<UUID, T> eldest) {
                return size() > MOST;
            }
        };
    }
}
