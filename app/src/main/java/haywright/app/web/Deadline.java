package haywright.app.web;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicReference;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.http.HttpStatus;
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
 * anybody looks at them. For the rest of a long file a thread stands still, and for whoever does not take their answer. So
 * few may wait like that at once that the others answer everybody else; who goes when there are more, {@link Places} says.
 */
public final class Deadline extends Handler.Wrapper {
    /**
     * @param answer from the head of a request to the first byte of its answer
     * @param silence with nothing of what is being sent; from its end on, less than {@link #SLOWEST} is too slow. A head is
     *     to have come whole by then
     */
    public record Patience(Duration answer, Duration silence) {
        public static final Patience USUAL = new Patience(Duration.ofSeconds(60), Duration.ofSeconds(5));
    }

    /** Bytes a second; a telephone line does three times that. */
    private static final int SLOWEST = 1000;

    /** Bytes of a request that come in before its work begins; times the connections there are, a part of what there is. */
    private static final int BEGINNING = 256 * 1024;
    /** Bytes that a piece holds however small it is. */
    private static final int PIECE = 4 * 1024;

    private static final String CROWDED =
            "Haywright is busy and did not take what you sent. Wait a few seconds and send it again.";

    private static final String ASKED =
            "It was stopped after %d seconds; nothing was being saved. A ranch of many groups and stacks takes long the first time, and longer while other pages or a winter book are being figured. Open it again in a minute."
                    .formatted(Patience.USUAL.answer().toSeconds());

    private final Patience patience;
    private final Places places;

    Deadline(Patience patience, Places places) {
        super(beforehand(new Work()));
        this.patience = patience;
        this.places = places;
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
        /** Both more than those who may stand still ({@link Places}), and together fewer than the threads there are. */
        private final Limits.Turns pages = new Limits.Turns(16);
        /** Files, which wait for each other, and batches of questions: each may take many times what a page takes. */
        private final Limits.Turns slow = new Limits.Turns(10);

        @Override
        public boolean handle(Request request, Response response, Callback callback) {
            var place = Response.as(response, Watched.class).place;
            place.queues();
            var turns = isSlow(request) ? slow : pages;
            turns.take(place.inARow(), request.getComponents().getExecutor(), () -> work(request, response, callback));
            return true;
        }

        private static boolean isSlow(Request request) {
            var type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
            return HttpMethod.POST.is(request.getMethod())
                    && type != null
                    && (type.regionMatches(true, 0, "multipart/", 0, "multipart/".length())
                            || request.getHttpURI().getPath().startsWith("/api/"));
        }

        private void work(Request request, Response response, Callback callback) {
            var watched = Response.as(response, Watched.class);
            if (!watched.isTaken(Thread.currentThread())) {
                return;
            }
            try {
                if (!super.handle(request, response, callback)) {
                    Response.writeError(request, response, callback, HttpStatus.NOT_FOUND_404);
                }
            } catch (Throwable e) {
                Response.writeError(request, response, callback, e);
            } finally {
                watched.handled();
            }
        }
    }

    /** One request and its answer; whoever is first, handler or clock, decides what is written. */
    private final class Watched extends Response.Wrapper implements Callback {
        private final Callback callback;
        private final Arriving arriving;
        private final Places.Place place;
        private Scheduler.@Nullable Task timer;
        private @Nullable Thread worker;
        private boolean begun;
        private boolean expired;

        Watched(Request request, Response response, Callback callback) {
            super(request, response);
            this.callback = callback;
            arriving = new Arriving(request, this);
            place = places.of(request);
        }

        private synchronized void begin() {
            place.asks();
            timer = getRequest()
                    .getComponents()
                    .getScheduler()
                    .schedule(this::expire, patience.answer.toMillis(), TimeUnit.MILLISECONDS);
        }

        /** False when the clock was first. */
        private synchronized boolean isTaken(Thread by) {
            worker = by;
            place.works();
            arriving.isWorkedOn = true;
            return !expired;
        }

        private synchronized boolean isExpired() {
            return expired;
        }

        private void expire() {
            int status = arriving.isWhole ? 503 : 408;
            boolean isAsking =
                    Set.of("GET", "HEAD").contains(getWrapped().getRequest().getMethod());
            expire(status, arriving.isWhole && isAsking ? ASKED : Errors.usual(status));
        }

        /** Others need the place of one who has not sent all yet. */
        private void expireCrowded() {
            synchronized (this) {
                if (!arriving.isWhole) {
                    expire(503, CROWDED);
                }
            }
        }

        private void expire(int status, String words) {
            synchronized (this) {
                if (begun || expired) {
                    return;
                }
                expired = true;
                place.waits(place.turn(), false);
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
            arriving.goOn(); // not everybody who waits for what is sent can be interrupted
        }

        /** The thread goes on to other requests, which must not be interrupted for this one. */
        private void handled() {
            synchronized (this) {
                worker = null;
                if (expired) {
                    Thread.interrupted();
                }
            }
            place.freesThread();
        }

        @Override
        public void write(boolean last, ByteBuffer bytes, Callback written) {
            boolean withThread;
            synchronized (this) {
                if (expired) {
                    written.failed(answered());
                    return;
                }
                begun = true;
                withThread = worker != null;
            }
            long turn = place.turn();
            super.write(last, bytes, Callback.from(place::works, written));
            place.waits(turn, withThread);
        }

        @Override
        public void succeeded() {
            if (!finish()) {
                callback.succeeded();
            }
            places.makeRoom();
        }

        @Override
        public void failed(Throwable x) {
            if (!finish()) {
                callback.failed(x);
            }
            places.makeRoom();
        }

        /** @return whether the clock was first */
        private boolean finish() {
            boolean wasExpired;
            synchronized (this) {
                begun |= !expired;
                wasExpired = expired;
            }
            done();
            place.rests();
            return wasExpired;
        }

        private void done() {
            synchronized (this) {
                if (timer != null) {
                    timer.cancel();
                }
            }
            arriving.silence(null);
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
        private long bytes;
        private Scheduler.@Nullable Task silence;
        private final AtomicReference<@Nullable Runnable> waiting = new AtomicReference<>();

        Arriving(Request request, Watched watched) {
            super(request);
            this.watched = watched;
            isWhole = request.getLength() == 0
                    || request.getLength() < 0 && !request.getHeaders().contains("Transfer-Encoding");
        }

        /** HEAD is answered as GET is, status and headings; the server itself leaves the body out. */
        @Override
        public String getMethod() {
            return HttpMethod.HEAD.is(super.getMethod()) ? HttpMethod.GET.asString() : super.getMethod();
        }

        /** Who was told that it did not come whole does not have it read to the end. */
        @Override
        public Content.@Nullable Chunk read() {
            var chunk = watched.isExpired() ? null : super.read();
            synchronized (watched) {
                if (watched.expired) {
                    if (chunk != null) {
                        chunk.release();
                    }
                    return Content.Chunk.from(answered());
                }
                if (chunk != null) {
                    bytes += chunk.remaining();
                    isWhole |= chunk.isLast();
                }
            }
            return chunk;
        }

        @Override
        public void demand(Runnable arrived) {
            if (!isWhole && isTooSlow()) {
                watched.expire();
                return;
            }
            if (!isWhole) {
                silence(getComponents()
                        .getScheduler()
                        .schedule(watched::expire, patience.silence.toMillis(), TimeUnit.MILLISECONDS));
            }
            waiting.set(arrived);
            long turn = watched.place.turn();
            super.demand(() -> {
                silence(null);
                watched.place.works();
                goOn();
            });
            if (!isWhole) {
                watched.place.waits(turn, isWorkedOn, watched::expireCrowded);
            }
        }

        /** Whoever waits for what is sent reads on, once. */
        private void goOn() {
            var arrived = waiting.getAndSet(null);
            if (arrived != null) {
                arrived.run();
            }
        }

        private boolean isTooSlow() {
            long millis = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - began);
            synchronized (watched) {
                return millis > patience.silence.toMillis() && bytes * 1000 < millis * SLOWEST;
            }
        }

        /** What ends the wait; null when something came, or nothing is waited for any more. */
        private synchronized void silence(Scheduler.@Nullable Task task) {
            if (silence != null) {
                silence.cancel();
            }
            silence = task;
        }
    }

    private static TimeoutException answered() {
        return new TimeoutException("answered already");
    }
}
