package haywright.app.web;

import java.util.Comparator;
import java.util.PriorityQueue;
import java.util.concurrent.Executor;

/**
 * Who is worked for when more ask than can be at once: first whoever has asked least often without a pause, then whoever
 * asked first. A connection that sends one request after another, however many, waits behind somebody who opens a page.
 * No thread waits for its turn.
 */
final class Turns {
    private record Waiting(int inARow, long number, Executor on, Runnable work) {}

    private final PriorityQueue<Waiting> waiting =
            new PriorityQueue<>(Comparator.comparingInt(Waiting::inARow).thenComparingLong(Waiting::number));
    private final int atOnce;
    private int working;
    private long asked;

    /** @param atOnce for how many is worked at a time */
    Turns(int atOnce) {
        this.atOnce = atOnce;
    }

    /**
     * Does the work now, or later on another thread.
     *
     * @param inARow how often the same connection has asked without a pause
     */
    void take(int inARow, Executor on, Runnable work) {
        synchronized (this) {
            if (working == atOnce) {
                waiting.add(new Waiting(inARow, asked++, on, work));
                return;
            }
            working++;
        }
        run(work);
    }

    private void run(Runnable work) {
        try {
            work.run();
        } finally {
            next();
        }
    }

    private void next() {
        Waiting next;
        synchronized (this) {
            next = waiting.poll();
            if (next == null) {
                working--;
                return;
            }
        }
        try {
            next.on().execute(() -> run(next.work()));
        } catch (RuntimeException e) {
            next(); // the pages are being closed
        }
    }
}
