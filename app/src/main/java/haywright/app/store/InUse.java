package haywright.app.store;

import haywright.workings.Refused;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Whether anybody has a data folder open. A database that is renamed under somebody takes their saves with it and nobody
 * notices: so whoever opens it shares a lock, and whoever puts another in its place must have the lock alone. The
 * system lets go of it when a process ends, however it ends.
 */
final class InUse implements AutoCloseable {
    private static final String NAME = "haywright.lock";
    /** A process holds a lock once, however often it has the folder open. */
    private static final Map<Path, Shared> HERE = new HashMap<>();

    private static final class Shared {
        private final @Nullable FileChannel channel;
        private int users;

        Shared(@Nullable FileChannel channel) {
            this.channel = channel;
        }
    }

    private final Path folder;

    private InUse(Path folder) {
        this.folder = folder;
    }

    static InUse shared(Path folder) {
        var key = folder.toAbsolutePath().normalize();
        synchronized (HERE) {
            HERE.computeIfAbsent(key, k -> new Shared(lock(k, true))).users++;
        }
        return new InUse(key);
    }

    /** @throws Refused when somebody has it open */
    static InUse alone(Path folder) {
        var key = folder.toAbsolutePath().normalize();
        synchronized (HERE) {
            var channel = HERE.containsKey(key) ? null : lock(key, false);
            if (channel == null) {
                throw new Refused(
                        "data",
                        folder.toString(),
                        "these data are open in another Haywright",
                        "End that one first, then do this again.");
            }
            var held = new Shared(channel);
            held.users = 1;
            HERE.put(key, held);
        }
        return new InUse(key);
    }

    /** Null where it is taken, or where the disk knows no locks. */
    private static @Nullable FileChannel lock(Path folder, boolean shared) {
        FileChannel channel = null;
        try {
            var file = folder.resolve(NAME);
            OwnerOnly.file(file);
            channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE);
            if (channel.tryLock(0, Long.MAX_VALUE, shared) != null) {
                return channel;
            }
            channel.close();
            return null;
        } catch (IOException | OverlappingFileLockException e) {
            close(channel);
            return null;
        }
    }

    private static void close(@Nullable FileChannel channel) {
        try {
            if (channel != null) {
                channel.close();
            }
        } catch (IOException e) {
            // it held nothing
        }
    }

    @Override
    public void close() {
        synchronized (HERE) {
            var held = HERE.get(folder);
            if (held != null && --held.users == 0) {
                HERE.remove(folder);
                close(held.channel);
            }
        }
    }
}
