package haywright.app.web;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.jspecify.annotations.Nullable;

/**
 * A time limit on every request, from its head to the first byte of its answer. Whoever is too slow with what they send, or
 * asks what takes too long, gets a page that says so; the work is interrupted, and what it still writes goes nowhere.
 */
final class Deadline extends Handler.Wrapper {
    static final Duration LIMIT = Duration.ofSeconds(60);

    private final Duration limit;

    Deadline(Duration limit) {
        this.limit = limit;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        var watched = new Watched(request, response, callback, Thread.currentThread());
        var timer = request.getComponents()
                .getScheduler()
                .schedule(watched::expire, limit.toMillis(), TimeUnit.MILLISECONDS);
        try {
            return super.handle(watched.arriving, watched, watched);
        } finally {
            timer.cancel();
            watched.handled();
        }
    }

    /** One request and its answer; whoever is first, handler or clock, decides what is written. */
    private static final class Watched extends Response.Wrapper implements Callback {
        private final Callback callback;
        private final Arriving arriving;
        private @Nullable Thread worker;
        private boolean begun;
        private boolean expired;

        Watched(Request request, Response response, Callback callback, Thread worker) {
            super(request, response);
            this.callback = callback;
            this.worker = worker;
            arriving = new Arriving(request);
        }

        private synchronized void expire() {
            if (begun || worker == null) {
                return;
            }
            expired = true;
            var answer = getWrapped();
            int status = arriving.isWhole ? 503 : 408;
            answer.reset();
            answer.setStatus(status);
            answer.getHeaders().put("Connection", "close");
            Limits.answer(answer, callback, status);
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

    /** Knows whether all of what is sent has been read. */
    private static final class Arriving extends Request.Wrapper {
        private volatile boolean isWhole;

        Arriving(Request request) {
            super(request);
            isWhole = request.getLength() == 0
                    || request.getLength() < 0 && !request.getHeaders().contains("Transfer-Encoding");
        }

        @Override
        public Content.@Nullable Chunk read() {
            var chunk = super.read();
            if (chunk != null && chunk.isLast()) {
                isWhole = true;
            }
            return chunk;
        }
    }
}
