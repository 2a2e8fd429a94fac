package haywright.app.web.winter;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jspecify.annotations.Nullable;

/**
 * Does long work beside the pages, one after another, and first what was asked for last: somebody looks at that. What is
 * dropped before its turn is not begun.
 */
final class LastFirst {
    private record Waiting(Object of, Runnable work) {}

    private final Deque<Waiting> waiting = new ArrayDeque<>();
    private final ExecutorService thread;
    private @Nullable Object running;

    LastFirst(String name) {
        thread = Executors.newSingleThreadExecutor(run -> {
            var made = new Thread(run, name);
            made.setDaemon(true);
            made.setPriority(Thread.MIN_PRIORITY);
            return made;
        });
    }

    /** @param of what it may be dropped by */
    void put(Object of, Runnable work) {
        synchronized (waiting) {
            waiting.push(new Waiting(of, work));
        }
        thread.execute(this::next);
    }

    void drop(Object of) {
        synchronized (waiting) {
            waiting.removeIf(one -> one.of().equals(of));
        }
    }

    /** What is being worked at; empty where nothing is. */
    Optional<Object> running() {
        synchronized (waiting) {
            return Optional.ofNullable(running);
        }
    }

    private void next() {
        Waiting next;
        synchronized (waiting) {
            next = waiting.poll();
            running = next == null ? null : next.of();
        }
        if (next != null) {
            try {
                next.work().run();
            } finally {
                synchronized (waiting) {
                    running = null;
                }
            }
        }
    }
}
