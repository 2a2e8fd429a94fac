package haywright.app.compute;

import haywright.workings.Refused;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;

/** The topics over HTTP: {@code POST /api/compute/TOPIC}, and their OpenAPI document at {@code GET /api}. */
public final class ComputeHttp {
    private final Compute compute = new Compute(Topics.ALL);

    public void register(RoutesConfig routes) {
        routes.get("/api", ctx -> json(ctx, 200, OpenApi.document(Topics.ALL).toPrettyString()));
        routes.post("/api/compute/{topic}", this::run);
    }

    private void run(Context ctx) {
        // A page of another site can send a form or plain text without asking first, but never this type.
        if (!"application/json".equals(mediaType(ctx))) {
            ctx.status(415).result("Send JSON, with the heading Content-Type: application/json.");
            return;
        }
        var name = ctx.pathParam("topic");
        try {
            compute.topic(name);
        } catch (Refused refused) {
            ctx.status(404);
        }
        var outcome = compute.run(name, ctx.body());
        int status = outcome.exit() == Compute.REFUSED ? 422 : 200;
        json(ctx, ctx.statusCode() == 404 ? 404 : status, outcome.body().toString());
    }

    private static String mediaType(Context ctx) {
        var type = ctx.contentType();
        return type == null ? "" : type.split(";", 2)[0].strip();
    }

    private static void json(Context ctx, int status, String body) {
        ctx.status(status).contentType("application/json").result(body);
    }
}
