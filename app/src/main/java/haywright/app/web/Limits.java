package haywright.app.web;

import io.javalin.config.JettyConfig;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** How much may come at once, and how long it may take: nobody who sends slowly or without end keeps others out. */
final class Limits {
    /** Enough for a browser's six connections and a few programs; each may hold a good part of the heap. */
    private static final int THREADS = 24;

    /** No more can wait than are connected: each sends its next request after its last answer. */
    private static final int CONNECTIONS = 256;

    private static final int HEAD_BYTES = 16 * 1024;
    private static final int SILENCE_MILLIS = 15_000;
    private static final int FORM_KEYS = 5000;

    private Limits() {}

    /** @param longest that a request may take */
    static void set(JettyConfig jetty, Duration longest) {
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
            context.setMaxFormKeys(FORM_KEYS);
            context.setErrorHandler(new Plain());
        });
        jetty.modifyServer(server -> {
            server.setErrorHandler(new Plain());
            server.setHandler(new Deadline(longest));
            server.addBean(new NetworkConnectionLimit(CONNECTIONS, server));
        });
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
}
