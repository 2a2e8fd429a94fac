package haywright.app.store;

import java.util.LinkedHashMap;
import java.util.Optional;
import java.util.UUID;

/**
 * Ranches as they were last read, so that a document is read once a version and not for every page. The version is asked
 * of the database each time: another process may have saved meanwhile. Those not asked for longest go first.
 */
final class ReadOnce {
    /** Characters of all documents together: a small part of a heap of 256 MB once they are read. */
    private static final long MOST = 8L * 1024 * 1024;

    private final LinkedHashMap<UUID, Held> held = new LinkedHashMap<>(16, 0.75f, true);
    private long characters;

    private record Held(String version, Ranches.Opened opened, long characters) {}

    synchronized Optional<Ranches.Opened> get(UUID id, String version) {
        return Optional.ofNullable(held.get(id))
                .filter(h -> h.version().equals(version))
                .map(Held::opened);
    }

    synchronized void put(UUID id, String version, Ranches.Opened opened, long size) {
        drop(id);
        if (size > MOST) {
            return;
        }
        held.put(id, new Held(version, opened, size));
        characters += size;
        while (characters > MOST) {
            drop(held.keySet().iterator().next());
        }
    }

    private void drop(UUID id) {
        var gone = held.remove(id);
        characters -= gone == null ? 0 : gone.characters();
    }
}
