package haywright.app.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.PriorityQueue;
import java.util.concurrent.Executor;
import java.util.concurrent.locks.ReentrantLock;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** How much may come at once, and how long it may take: nobody who sends slowly or without end keeps others out. */
final class Limits {
    /** Those who are worked for ({@link Deadline}), and a few for those who come and go. */
    private static final int THREADS = 32;

    private static final int HEAD_BYTES = 16 * 1024;
    private static final int SILENCE_MILLIS = 15_000;

    private Limits() {}

    static void set(JavalinConfig config, Deadline.Patience patience) {
        config.http.maxRequestSize = Gate.FORM_LIMIT;
        var oneAtATime = new ReentrantLock();
        config.router.handlerWrapper(endpoint -> endpoint.method.isHttpMethod()
                ? http -> inTurn(oneAtATime, endpoint.handler, http)
                : http -> told(endpoint.handler, http));
        var jetty = config.jetty;
        var threads = new QueuedThreadPool(THREADS, 4, 60_000);
        threads.setName("pages");
        jetty.threadPool = threads;
        jetty.modifyHttpConfiguration(http -> {
            http.setSendServerVersion(false);
            http.setRequestHeaderSize(HEAD_BYTES);
            http.setIdleTimeout(SILENCE_MILLIS);
            http.addCustomizer((request, headers) -> {
                Gate.HEADERS.forEach(headers::put);
                return request;
            });
        });
        jetty.modifyServletContextHandler(context -> {
            context.setMaxFormContentSize(Gate.FORM_LIMIT);
            context.setMaxFormKeys(Gate.FIELD_LIMIT);
            context.setErrorHandler(new Plain());
        });
        jetty.modifyServer(server -> {
            server.setErrorHandler(new Plain());
            server.setHandler(new Deadline(patience, new Places(server, patience.silence())));
        });
    }

    /** A file may unpack to half of the memory there is: once it is here whole, it waits until no other is worked on. */
    private static void inTurn(ReentrantLock turn, Handler handler, Context http) throws Exception {
        if (!http.isMultipart()) {
            told(handler, http);
            return;
        }
        turn.lockInterruptibly();
        try {
            told(handler, http);
        } finally {
            turn.unlock();
        }
    }

    private static void told(Handler handler, Context http) throws Exception {
        try {
            handler.handle(http);
        } catch (Error e) {
            throw new Errors.Inside(e);
        }
    }

    /** What is refused before a page of ours could say so, in our words and under our headers. */
    private static final class Plain extends ErrorHandler {
        @Override
        public boolean handle(Request request, Response response, Callback callback) {
            int status = response.getStatus();
            Limits.answer(response, callback, Errors.title(status), Errors.usual(status));
            return true;
        }

        @Override
        public ByteBuffer badMessageError(int status, String reason, HttpFields.Mutable fields) {
            headers(fields);
            return ByteBuffer.wrap(
                    page(Errors.title(status), Errors.usual(status)).getBytes(StandardCharsets.UTF_8));
        }
    }

    static void answer(Response response, Callback callback, String title, String words) {
        headers(response.getHeaders());
        Content.Sink.write(response, true, page(title, words), callback);
    }

    private static void headers(HttpFields.Mutable fields) {
        Gate.HEADERS.forEach(fields::put);
        fields.put(HttpHeader.CONTENT_TYPE, "text/html; charset=utf-8");
        fields.remove(HttpHeader.CONTENT_LENGTH);
    }

    private static String page(String title, String words) {
        return """
                <!doctype html>
                <html lang="en">
                <head><meta charset="utf-8"><title>%1$s · Haywright</title>
                <link rel="stylesheet" href="/static/haywright.css"></head>
                <body><main id="main"><h1>%1$s</h1><p class="say">%2$s</p><p><a href="/">Go to the start page</a></p></main></body>
                </html>
                """.formatted(title, words);
    }

    /**
     * Who is worked for when more ask than can be at once: first whoever has asked least often without a pause, then whoever
     * asked first. A connection that sends one request after another, however many, waits behind somebody who opens a page.
     * No thread waits for its turn.
     */
    static final class Turns {
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
}
