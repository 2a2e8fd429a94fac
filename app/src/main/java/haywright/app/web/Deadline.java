package haywright.app.web;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Scheduler;
import org.jspecify.annotations.Nullable;

/**
 * A time limit on every request, from its head to the first byte of its answer. Whoever is too slow with what they send, or
 * asks what takes too long, gets a page that says so; the work is interrupted, and what it still writes goes nowhere. While what is sent is waited for,
 * a thread stands still: so few may wait at once that the others answer everybody else, and none waits long.
 */
final class Deadline extends Handler.Wrapper {
    static final Duration LIMIT = Duration.ofSeconds(60);

    /** Well below the threads there are. What comes in one piece, as forms do, never waits. */
    private static final int MOST_WAITING = 8;

    private static final int SILENCE_MILLIS = 5000;
    /** Bytes a second, from the end of the first silence on; a telephone line does three times that. */
    private static final int SLOWEST = 1000;

    private static final String CROWDED =
            "Too many others are sending something to Haywright right now, and nothing of yours was taken. Wait a few seconds and send it again.";

    private final Duration limit;
    private final Semaphore waiting = new Semaphore(MOST_WAITING);

    Deadline(Duration limit) {
        this.limit = limit;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        var watched = new Watched(request, response, callback, Thread.currentThread(), waiting);
        var timer = request.getComponents()
                .getScheduler()
                .schedule(watched::expire, limit.toMillis(), TimeUnit.MILLISECONDS);
        try {
            return super.handle(watched.arriving, watched, watched);
        } finally {
            timer.cancel();
            watched.handled();
            watched.arriving.goOn();
        }
    }

    /** One request and its answer; whoever is first, handler or clock, decides what is written. */
    private static final class Watched extends Response.Wrapper implements Callback {
        private final Callback callback;
        private final Arriving arriving;
        private @Nullable Thread worker;
        private boolean begun;
        private boolean expired;

        Watched(Request request, Response response, Callback callback, Thread worker, Semaphore waiting) {
            super(request, response);
            this.callback = callback;
            this.worker = worker;
            arriving = new Arriving(request, waiting, this::expire, () -> expire(503, CROWDED));
        }

        private void expire() {
            int status = arriving.isWhole ? 503 : 408;
            expire(status, Errors.usual(status));
        }

        private synchronized void expire(int status, String words) {
            if (begun || worker == null) {
                return;
            }
            expired = true;
            var answer = getWrapped();
            answer.reset();
            answer.setStatus(status);
            answer.getHeaders().put("Connection", "close");
            Limits.answer(answer, callback, Errors.title(status), words);
            worker.interrupt(); // after the answer, which its own last words would otherwise get into
        }

        /** The thread goes on to other requests, which must not be interrupted for this one. */
        private synchronized void handled() {
            worker = null;
            if (expired) {
                Thread.interrupted();
            }
        }

        @Override
        public void write(boolean last, ByteBuffer bytes, Callback written) {
            synchronized (this) {
                if (expired) {
                    written.failed(new TimeoutException("answered already"));
                    return;
                }
                begun = true;
            }
            super.write(last, bytes, written);
        }

        @Override
        public void succeeded() {
            if (!finish()) {
                callback.succeeded();
            }
        }

        @Override
        public void failed(Throwable x) {
            if (!finish()) {
                callback.failed(x);
            }
        }

        /** @return whether the clock was first */
        private synchronized boolean finish() {
            begun |= !expired;
            return expired;
        }

        @Override
        public InvocationType getInvocationType() {
            return callback.getInvocationType();
        }
    }

    /** Knows whether all of what is sent has been read, and ends the wait for what comes too slowly. */
    private static final class Arriving extends Request.Wrapper {
        private final Semaphore waiting;
        private final Runnable tooSlow;
        private final Runnable crowded;
        private volatile boolean isWhole;
        private long bytes;
        private long began;
        private Scheduler.@Nullable Task wait;

        Arriving(Request request, Semaphore waiting, Runnable tooSlow, Runnable crowded) {
            super(request);
            this.waiting = waiting;
            this.tooSlow = tooSlow;
            this.crowded = crowded;
            isWhole = request.getLength() == 0
                    || request.getLength() < 0 && !request.getHeaders().contains("Transfer-Encoding");
        }

        @Override
        public Content.@Nullable Chunk read() {
            var chunk = super.read();
            if (chunk != null) {
                took(chunk.remaining());
                isWhole |= chunk.isLast();
            }
            return chunk;
        }

        private synchronized void took(int more) {
            bytes += more;
        }

        @Override
        public void demand(Runnable arrived) {
            if (isWhole) {
                super.demand(arrived);
            } else if (isTooSlow()) {
                tooSlow.run();
            } else if (!waiting.tryAcquire()) {
                crowded.run();
            } else {
                hold();
                super.demand(() -> {
                    goOn();
                    arrived.run();
                });
            }
        }

        private synchronized boolean isTooSlow() {
            long now = System.nanoTime();
            began = began == 0 ? now : began;
            long millis = TimeUnit.NANOSECONDS.toMillis(now - began);
            return millis > SILENCE_MILLIS && bytes * 1000 < millis * SLOWEST;
        }

        private synchronized void hold() {
            wait = getComponents().getScheduler().schedule(tooSlow, SILENCE_MILLIS, TimeUnit.MILLISECONDS);
        }

        /** Something came, or nothing is waited for any more. */
        private synchronized void goOn() {
            if (wait != null) {
                wait.cancel();
                wait = null;
                waiting.release();
            }
        }
    }
}
