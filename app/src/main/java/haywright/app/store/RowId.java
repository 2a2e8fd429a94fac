package haywright.app.store;

import haywright.workings.Refused;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * By what a row of a ranch is known. Another program, or a failing disk, may have left one whose id is none: it is listed
 * under an id made from what stands there, so that it can be looked at and exported, and every other ranch goes on.
 */
final class RowId {
    private RowId() {}

    static UUID of(@Nullable String kept) {
        return known(kept).orElseGet(() -> UUID.nameUUIDFromBytes(("row " + kept).getBytes(StandardCharsets.UTF_8)));
    }

    private static Optional<UUID> known(@Nullable String kept) {
        try {
            // exactly as it is written here: the library reads much else, and would not find it again
            return Optional.ofNullable(kept)
                    .map(UUID::fromString)
                    .filter(id -> id.toString().equals(kept));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /**
     * SQLite lets a key be null, and such a row is found under no name: it gets one that is no id of a ranch, under which
     * it is then listed like any other whose id is none.
     */
    static void nameTheNameless(Handle h) {
        int nameless = h.createQuery("SELECT count(*) FROM ranch WHERE id IS NULL")
                .mapTo(Integer.class)
                .one();
        if (nameless > 0) {
            h.execute("UPDATE ranch SET id = 'none ' || rowid WHERE id IS NULL");
        }
    }

    /** What stands in the row; itself where there is no such row. */
    static String kept(Handle h, UUID id) {
        boolean isHere = h.createQuery("SELECT count(*) FROM ranch WHERE id = :id")
                        .bind("id", id.toString())
                        .mapTo(Integer.class)
                        .one()
                > 0;
        return isHere
                ? id.toString()
                : h.createQuery("SELECT id FROM ranch").mapTo(String.class).list().stream()
                        .filter(kept -> of(kept).equals(id))
                        .findFirst()
                        .orElse(id.toString());
    }

    /** Why a ranch under such an id cannot be read; empty where the id is one. */
    static Optional<Refused> wrong(String kept) {
        return known(kept).isPresent()
                ? Optional.empty()
                : Optional.of(new Refused(
                        "id",
                        kept,
                        "this is no id of a ranch; another program may have changed it",
                        "Export it as it is kept and take that in: then it is here under its own id."));
    }
}
