package haywright.app.compute;

import haywright.app.compute.topic.Topics;
import haywright.workings.Refused;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.io.ByteArrayInputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.util.Map;
import java.util.concurrent.Semaphore;
import java.util.function.BiConsumer;

/**
 * The topics over HTTP: {@code POST /api/compute/TOPIC}, and their OpenAPI document at {@code GET /api}. A batch is read
 * whole before its first answer is sent, because many clients do not read until they have sent everything. Its answers
 * are sent as they come; so the status tells of all of them only when they fit into the first {@value #HELD} bytes, and
 * of the first ones otherwise.
 */
public final class ComputeHttp {
    /** The most bytes of questions that are held at a time, and so the most in one batch. */
    private static final int MOST = 32 * 1024 * 1024;

    private static final int HELD = 64 * 1024;

    private final Compute compute;
    private final BiConsumer<String, Throwable> log;
    private final Semaphore room = new Semaphore(MOST);

    /** @param log writes what failed inside where it belongs, with what was asked */
    public ComputeHttp(InstantSource clock, BiConsumer<String, Throwable> log) {
        this.log = log;
        compute = new Compute(Topics.ALL, clock);
    }

    public void register(RoutesConfig routes) {
        routes.get("/api", ctx -> json(ctx).result(OpenApi.document(Topics.ALL).toPrettyString()));
        routes.post("/api/compute/{topic}", this::run);
        routes.get("/api/compute/{topic}", ctx -> {
            ctx.header("Allow", "POST");
            throw new HttpResponseException(405, "A question is sent by POST, as JSON. GET /api lists them.", Map.of());
        });
    }

    private void run(Context ctx) throws IOException {
        // A page of another site can send a form or plain text without asking first, but never this type.
        if (!"application/json".equals(mediaType(ctx))) {
            ctx.status(415).result("Send JSON, with the heading Content-Type: application/json.");
            return;
        }
        var name = ctx.pathParam("topic");
        try {
            compute.topic(name);
        } catch (Refused refused) {
            json(ctx.status(404)).result(Compute.refused(refused).body().toString());
            return;
        }
        int length = (int) Math.max(0, Math.min(MOST, ctx.req().getContentLengthLong()));
        if (!room.tryAcquire(length)) {
            throw new HttpResponseException(
                    503, "Large batches are being worked out. Try again in a minute.", Map.of());
        }
        try {
            answer(ctx, name, ctx.req().getInputStream().readNBytes(length));
        } finally {
            room.release(length);
        }
    }

    private void answer(Context ctx, String name, byte[] questions) throws IOException {
        var response = json(ctx).res();
        response.setBufferSize(HELD);
        var out = new OutputStreamWriter(new Unhurried(response.getOutputStream()), StandardCharsets.UTF_8);
        int exit = compute.run(name, new ByteArrayInputStream(questions), Compute.generator(out), new Log(ctx));
        out.flush();
        if (!response.isCommitted()) {
            ctx.status(exit == Compute.FAILED ? 500 : exit == Compute.REFUSED ? 422 : 200);
        }
    }

    private static String mediaType(Context ctx) {
        var type = ctx.contentType();
        return type == null ? "" : type.split(";", 2)[0].strip();
    }

    private static Context json(Context ctx) {
        return ctx.contentType("application/json");
    }

    /** Sends what has gathered when the buffer is full, not after each answer. */
    private static final class Unhurried extends FilterOutputStream {
        Unhurried(OutputStream out) {
            super(out);
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            out.write(bytes, from, length);
        }

        @Override
        public void flush() {
            // the buffer behind it sends when it is full
        }
    }

    /** One failure of a batch is enough to mend it by; a hundred thousand would fill the log. */
    private final class Log implements Compute.Heard {
        private final Context ctx;
        private boolean isLogged;

        Log(Context ctx) {
            this.ctx = ctx;
        }

        @Override
        public void refused(String line) {
            // it stands in the answer
        }

        @Override
        public void failed(Throwable failure) {
            if (!isLogged) {
                log.accept(ctx.method() + " " + ctx.path(), failure);
                isLogged = true;
            }
        }
    }
}
