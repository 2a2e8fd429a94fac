package haywright.app.web;

import haywright.workings.Refused;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.util.List;
import java.util.Map;

/** What cannot be answered, as a page in plain words. */
public final class Errors {
    private Errors() {}

    /** @param details each its own line; never a stack trace */
    public record View(String title, String words, List<String> details) {}

    static void routes(RoutesConfig on) {
        on.exception(HttpResponseException.class, (e, http) -> show(http, e.getStatus(), message(e), List.of()));
        on.exception(
                Refused.class,
                (e, http) -> show(
                        http,
                        422,
                        "",
                        e.problems().stream().map(p -> p.sentence()).toList()));
        on.exception(Exception.class, (e, http) -> {
            Server.log(e);
            show(http, 500, "", List.of());
        });
    }

    private static String message(HttpResponseException e) {
        var message = e.getMessage();
        return message == null || message.endsWith("not found") || message.startsWith("Endpoint") ? "" : message;
    }

    private static void show(Context http, int status, String words, List<String> details) {
        http.status(status);
        if (http.path().startsWith("/api/")) {
            http.contentType("text/plain; charset=utf-8").result(title(status) + " " + words);
            return;
        }
        var view = new View(title(status), words.isEmpty() ? usual(status) : words, details);
        Server.render(
                http, "haywright/app/web/error.jte", Map.of("frame", Frame.plain(http, view.title()), "view", view));
    }

    private static String title(int status) {
        return switch (status) {
            case 403 -> "This cannot be taken";
            case 404 -> "There is no such page";
            case 405 -> "That cannot be done here";
            case 411, 413 -> "Too much at once";
            case 421 -> "Not this address";
            case 422 -> "This cannot be done";
            default -> status >= 500 ? "Something went wrong in here" : "This cannot be answered";
        };
    }

    private static String usual(int status) {
        return switch (status) {
            case 403 -> "Open the page anew and send it again.";
            case 404 -> "It may have been taken away, or the address has a slip in it.";
            case 413 -> "Send less in one go.";
            case 422 -> "Nothing was changed. Go back, and what you typed is still there.";
            default ->
                status >= 500
                        ? "Nothing you typed was lost: go back and it is still there. What failed is written in the"
                                + " terminal that Haywright was started from."
                        : "Go back and try another way.";
        };
    }
}
