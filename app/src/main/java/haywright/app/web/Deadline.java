package haywright.app.web;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.Collections;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.EagerContentHandler;
import org.eclipse.jetty.server.handler.EagerContentHandler.RetainedContentLoaderFactory;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Scheduler;
import org.jspecify.annotations.Nullable;

/**
 * A time limit on every request, from its head to the first byte of its answer. Whoever is too slow with what they send, or
 * asks what takes too long, gets a page that says so; the work is interrupted, and what it still writes goes nowhere.
 *
 * <p>While the beginning of what is sent comes in, no thread waits for it: forms and reports have mostly come whole before
 * anybody looks at them. For the rest of a long file a thread stands still. So few may wait like that at once that the
 * others answer everybody else, and when there are more, the one goes of whom nothing has come for longest.
 */
public final class Deadline extends Handler.Wrapper {
    /**
     * @param answer from the head of a request to the first byte of its answer
     * @param silence with nothing of what is being sent; from its end on, less than {@link #SLOWEST} is too slow
     */
    public record Patience(Duration answer, Duration silence) {
        public static final Patience USUAL = new Patience(Duration.ofSeconds(60), Duration.ofSeconds(5));
    }

    /** Bytes a second; a telephone line does three times that. */
    private static final int SLOWEST = 1000;

    /** Well below the threads there are. */
    private static final int MOST_WAITING = 8;

    /** Bytes of a request that come in before its work begins; times the connections there are, a part of what there is. */
    private static final int BEGINNING = 256 * 1024;
    /** Bytes that a piece holds however small it is. */
    private static final int PIECE = 4 * 1024;

    private static final String CROWDED =
            "Too many others are sending something to Haywright right now, and nothing of yours was taken. Wait a few seconds and send it again.";

    private final Patience patience;
    private final Waiting waiting = new Waiting();

    Deadline(Patience patience) {
        super(beforehand(new Work()));
        this.patience = patience;
    }

    /** What says that it is longer than a form, or does not say how long it is, may be refused for that before it comes. */
    private static Handler beforehand(Handler work) {
        var eager = new EagerContentHandler(work, new RetainedContentLoaderFactory(BEGINNING, PIECE, false));
        eager.exclude(request -> request.getLength() < 0 || request.getLength() > Gate.FORM_LIMIT);
        return eager;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        var watched = new Watched(request, response, callback);
        watched.begin();
        boolean handled = false;
        try {
            handled = super.handle(watched.arriving, watched, watched);
        } finally {
            if (!handled) {
                watched.finish();
            }
        }
        return handled;
    }

    /** Where the thread that does the work comes by. */
    private static final class Work extends Handler.Wrapper {
        @Override
        public boolean handle(Request request, Response response, Callback callback) throws Exception {
            var watched = Response.as(response, Watched.class);
            if (!watched.isTaken(Thread.currentThread())) {
                return true;
            }
            try {
                return super.handle(request, response, callback);
            } finally {
                watched.handled();
            }
        }
    }

    /** One request and its answer; whoever is first, handler or clock, decides what is written. */
    private final class Watched extends Response.Wrapper implements Callback {
        private final Callback callback;
        private final Arriving arriving;
        private Scheduler.@Nullable Task timer;
        private @Nullable Thread worker;
        private boolean begun;
        private boolean expired;

        Watched(Request request, Response response, Callback callback) {
            super(request, response);
            this.callback = callback;
            arriving = new Arriving(request, this);
        }

        private synchronized void begin() {
            timer = getRequest()
                    .getComponents()
                    .getScheduler()
                    .schedule(this::expire, patience.answer.toMillis(), TimeUnit.MILLISECONDS);
        }

        /** False when the clock was first. */
        private synchronized boolean isTaken(Thread by) {
            worker = by;
            arriving.isWorkedOn = true;
            return !expired;
        }

        private void expire() {
            int status = arriving.isWhole ? 503 : 408;
            expire(status, Errors.usual(status));
        }

        private void expire(int status, String words) {
            synchronized (this) {
                if (begun || expired) {
                    return;
                }
                expired = true;
                var answer = getWrapped();
                answer.reset();
                answer.setStatus(status);
                answer.getHeaders().put("Connection", "close");
                Limits.answer(answer, callback, Errors.title(status), words);
                if (worker != null) {
                    worker.interrupt(); // after the answer, which its own last words would otherwise get into
                }
            }
            done();
        }

        /** The thread goes on to other requests, which must not be interrupted for this one. */
        private void handled() {
            synchronized (this) {
                worker = null;
                if (expired) {
                    Thread.interrupted();
                }
            }
            arriving.goOn();
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
        private boolean finish() {
            boolean wasExpired;
            synchronized (this) {
                begun |= !expired;
                wasExpired = expired;
            }
            done();
            return wasExpired;
        }

        private void done() {
            synchronized (this) {
                if (timer != null) {
                    timer.cancel();
                }
            }
            arriving.goOn();
        }

        @Override
        public InvocationType getInvocationType() {
            return callback.getInvocationType();
        }
    }

    /** Knows whether all of what is sent has been read, and ends the wait for what comes too slowly. */
    private final class Arriving extends Request.Wrapper {
        private final Watched watched;
        private volatile boolean isWhole;
        private volatile boolean isWorkedOn;
        private final long began = System.nanoTime();
        private long lastHeard = began;
        private long bytes;
        private Scheduler.@Nullable Task silence;

        Arriving(Request request, Watched watched) {
            super(request);
            this.watched = watched;
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
            lastHeard = System.nanoTime();
        }

        @Override
        public void demand(Runnable arrived) {
            if (!isWhole && isTooSlow()) {
                watched.expire();
                return;
            }
            if (!isWhole) {
                hold();
            }
            super.demand(() -> {
                goOn();
                arrived.run();
            });
        }

        private synchronized boolean isTooSlow() {
            long millis = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - began);
            return millis > patience.silence.toMillis() && bytes * 1000 < millis * SLOWEST;
        }

        private synchronized long lastHeard() {
            return lastHeard;
        }

        private void hold() {
            synchronized (this) {
                silence = getComponents()
                        .getScheduler()
                        .schedule(watched::expire, patience.silence.toMillis(), TimeUnit.MILLISECONDS);
            }
            if (isWorkedOn) {
                waiting.add(this);
            }
        }

        /** Something came, or nothing is waited for any more. */
        private void goOn() {
            waiting.remove(this);
            synchronized (this) {
                if (silence != null) {
                    silence.cancel();
                    silence = null;
                }
            }
        }
    }

    /** Those for which a thread waits. */
    private static final class Waiting {
        private final Set<Arriving> all = new HashSet<>();

        void add(Arriving one) {
            Arriving stillest = null;
            synchronized (this) {
                all.add(one);
                if (all.size() > MOST_WAITING) {
                    // by difference: such clocks may wrap
                    stillest = Collections.min(all, (a, b) -> Long.signum(a.lastHeard() - b.lastHeard()));
                    all.remove(stillest);
                }
            }
            if (stillest != null) {
                stillest.watched.expire(503, CROWDED);
            }
        }

        synchronized void remove(Arriving one) {
            all.remove(one);
        }
    }
}
