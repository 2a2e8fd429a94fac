package haywright.app.web;

import haywright.app.store.BadDatabase;
import haywright.app.store.Trouble;
import haywright.lp.SolverMissing;
import haywright.workings.Problem;
import haywright.workings.Refused;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import java.io.EOFException;
import java.io.InterruptedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.concurrent.TimeoutException;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.jetty.io.EofException;
import org.jspecify.annotations.Nullable;

/**
 * What cannot be answered, as a page in plain words: the true cause, and what was typed, filled in to be sent again. It
 * claims nothing that it does not know.
 */
public final class Errors {
    /** Short for whoever waits, long for a machine that figures. */
    private static final String AGAIN_SECONDS = "3";

    private static final String FAILED = "failed-";
    private static final String SCRIPT = "Send the key that ./haywright key prints: Authorization: Bearer KEY.";

    private Errors() {}

    /** Thrown for an answer of its own, which is no fault. */
    interface Answered {}

    /**
     * @param details each its own line; never a stack trace
     * @param offer null where nothing can be brought back
     */
    public record View(
            String title,
            String words,
            List<String> details,
            Sent sent,
            @Nullable Offer offer) {}

    /**
     * To bring back what is gone.
     *
     * @param action where its button goes
     * @param again the id of what is gone
     * @param back the page that was asked for; empty where a form was sent, which is sent again then
     * @param left what was left unfinished of that page's form, a line each
     */
    public record Offer(String action, String button, String again, String back, List<String> left) {}

    /**
     * What a form sent, to be sent again; empty when nothing was.
     *
     * @param token empty where it is to be copied, and not to be sent
     * @param action where it goes
     * @param rev the revision that the form was made from; empty for none
     * @param files names of the boxes that had a file in them, which no page can fill in again
     */
    public record Sent(String token, String action, String rev, Map<String, List<String>> typed, Set<String> files) {
        static final Sent NOTHING = new Sent("", "", "", Map.of(), Set.of());

        private static final Pattern ID =
                Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}");
        /** Hidden boxes of single pages. */
        private static final Set<String> HIDDEN = Set.of("table-seen", "sheet");

        /** A field's name as words: {@code baleWeight} is a bale weight. Which lot a box was of only its page can say. */
        public static String words(String name) {
            var words = ID.matcher(name)
                    .replaceAll("")
                    .replaceAll("([a-z])([A-Z])", "$1 $2")
                    .replaceAll("[_/-]", " ")
                    .strip();
            return words.isEmpty() ? "Typed" : words;
        }

        /** Whether a person typed it: neither empty nor one of the form's own. */
        public static boolean isTyped(String name, String value) {
            return !value.isBlank() && !Form.OWN.contains(name) && !HIDDEN.contains(name);
        }
    }

    /** Why a request failed: the status, and a line for the cause and one for what to do. */
    record Failure(int status, List<String> lines) {
        static Failure of(Context http, Exception e) {
            Failure known = http.attribute(FAILED + System.identityHashCode(e));
            var failure = known == null ? made(http, e) : known;
            http.attribute(FAILED + System.identityHashCode(e), failure); // logged once, however often it is shown
            return failure;
        }

        private static Failure made(Context http, Exception e) {
            if (e instanceof Refused refused) {
                return new Failure(
                        422, refused.problems().stream().map(Problem::sentence).toList());
            }
            if (e instanceof SolverMissing missing) {
                return new Failure(503, List.of(String.valueOf(missing.getMessage())));
            }
            if (e instanceof BadDatabase bad) {
                return new Failure(503, List.of(bad.line() + ".", Trouble.DAMAGED.fix()));
            }
            return Trouble.of(e)
                    .map(trouble -> new Failure(
                            trouble == Trouble.DISK_FULL ? 507 : 503, List.of(trouble.cause(), trouble.fix())))
                    .orElseGet(() -> isCutOff(e)
                            ? new Failure(408, List.of(usual(408)))
                            : new Failure(
                                    500,
                                    List.of(
                                            Pages.log(http, e instanceof Inside inside ? inside.error() : e),
                                            isSending(http)
                                                    ? "Before you send it again, check whether it was saved."
                                                    : "Nothing was sent, and nothing was changed.")));
        }
    }

    public static void routes(RoutesConfig on) {
        on.exception(HttpResponseException.class, (e, http) -> {
            int status = e.getStatus();
            var message = message(e);
            show(http, status, title(status), message.isEmpty() ? usual(status) : message, List.of());
        });
        on.exception(
                Gone.class,
                (e, http) -> show(http, isSending(http) ? 409 : 404, "This is gone", e.words(), List.of(), e.offer()));
        on.exception(Yards.BeingFigured.class, (e, http) -> figured(http));
        on.exception(Exception.class, (e, http) -> {
            var failure = Failure.of(http, e);
            int status = failure.status();
            var title = status == 500 || status == 408 ? title(status) : isSending(http) ? "Not saved" : title(422);
            var lines = failure.lines();
            show(http, status, title, lines.get(0), lines.subList(1, lines.size()));
        });
    }

    /** Of the browser itself, so that it needs no script. A part of a page that is open already stays as it is. */
    private static void figured(Context http) {
        http.header("Retry-After", AGAIN_SECONDS);
        if (http.header("HX-Request") != null) {
            http.status(204);
            return;
        }
        http.header("Refresh", AGAIN_SECONDS);
        show(
                http,
                503,
                "The rations are being figured",
                "On a large ranch that takes up to a minute, and as long as a winter book of a large ranch is being made. This page opens by itself when they are ready; other pages"
                        + " open meanwhile.",
                List.of());
    }

    private static boolean isSending(Context http) {
        return http.method() != HandlerType.GET && http.method() != HandlerType.HEAD;
    }

    /** An error of the machine (out of stack, a class that is missing), on the way to the page that says so. */
    static final class Inside extends RuntimeException {
        private static final long serialVersionUID = 1;
        private final Error error;

        Inside(Error error) {
            super(error);
            this.error = error;
        }

        Error error() {
            return error;
        }
    }

    /** Nothing failed in here: what was being sent ended early, or took too long. */
    private static boolean isCutOff(Throwable e) {
        for (var cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof EofException
                    || cause instanceof EOFException
                    || cause instanceof TimeoutException
                    || cause instanceof InterruptedIOException
                    || cause instanceof InterruptedException
                    || cause instanceof CancellationException) {
                return true;
            }
        }
        return false;
    }

    private static String message(HttpResponseException e) {
        var message = e.getMessage();
        return message == null
                        || message.toLowerCase(Locale.ROOT).endsWith("not found")
                        || message.startsWith("Endpoint")
                ? ""
                : message;
    }

    private static void show(Context http, int status, String title, String words, List<String> details) {
        show(http, status, title, words, details, null);
    }

    private static void show(
            Context http, int status, String title, String words, List<String> details, @Nullable Offer offer) {
        http.status(status);
        if (http.path().startsWith("/api/")) {
            var lines = Stream.concat(Stream.of(title + ". " + (status == 401 ? SCRIPT : words)), details.stream());
            http.contentType("text/plain; charset=utf-8").result(lines.collect(Collectors.joining("\n")));
            return;
        }
        var view = new View(title, words, details, sent(http, status), offer);
        if (status == 401) {
            Pages.render(
                    http,
                    "haywright/app/web/closed.jte",
                    Map.of("frame", Frame.plain(http, title), "sent", view.sent()));
            return;
        }
        Pages.render(
                http, "haywright/app/web/error.jte", Map.of("frame", Frame.plain(http, view.title()), "view", view));
    }

    /** Of a form that the gate did not let in, to read alone: another site's must not come back with a token of ours in it. */
    private static Sent toCopy(Context http) {
        boolean isSmall = http.req().getContentLengthLong() <= Gate.FORM_LIMIT; // no large file is taken in to be shown
        if (!(http.isFormUrlencoded() || http.isMultipart())
                || !isSmall
                || http.attribute(haywright.app.web.Sent.UNREAD) != null) {
            return Sent.NOTHING;
        }
        try {
            var typed = new LinkedHashMap<>(http.formParamMap());
            typed.entrySet()
                    .removeIf(box -> box.getValue().stream().noneMatch(value -> Sent.isTyped(box.getKey(), value)));
            return new Sent("", "", "", typed, Set.of());
        } catch (RuntimeException e) {
            return Sent.NOTHING; // it breaks off, or is too large to be read
        }
    }

    private static Sent sent(Context http, int status) {
        boolean letIn = status == 404 || status == 409 || status == 422 || status >= 500;
        if (isSending(http) && (status == 401 || status == 403 || status == 421)) {
            return toCopy(http);
        }
        if (!letIn || !isSending(http) || http.attribute(haywright.app.web.Sent.UNREAD) != null) {
            return Sent.NOTHING;
        }
        var typed = new LinkedHashMap<>(http.formParamMap());
        typed.remove(Gate.TOKEN);
        typed.remove(Gone.AGAIN);
        String kept = http.attribute(Unfinished.DRAFT);
        if (kept != null) {
            typed.put(Unfinished.DRAFT, List.of(kept)); // of this window, when it is sent again
        }
        var rev = typed.remove(Page.REV);
        var files = new TreeSet<String>();
        if (http.isMultipart()) {
            files.addAll(http.uploadedFileMap().keySet());
        }
        return typed.isEmpty() && files.isEmpty()
                ? Sent.NOTHING
                : new Sent(Gate.token(http), http.path(), rev == null || rev.isEmpty() ? "" : rev.get(0), typed, files);
    }

    static String title(int status) {
        return switch (status) {
            case 401 -> "Haywright is locked";
            case 403 -> "Not accepted";
            case 404 -> "No such page";
            case 405 -> "That can’t be done here";
            case 408, 503 -> "That took too long";
            case 411 -> "Its length is missing";
            case 413 -> "Too much at once";
            case 414, 431 -> "The address or a header is too long";
            case 421 -> "Not this address";
            case 422, 507 -> "This can’t be done";
            default -> status >= 500 ? "Something went wrong" : "This can’t be answered";
        };
    }

    static String usual(int status) {
        return switch (status) {
            case 403 -> "Reload the page and send it again.";
            case 404 -> "It may have been deleted, or the address is mistyped.";
            case 401 -> "Open the address that Haywright printed when it started.";
            case 408 -> "It did not arrive whole, so nothing was changed. Send it again.";
            case 411 -> "Send its length first: Content-Length.";
            case 413 -> "Send less at once.";
            case 414, 431 ->
                "Open the start page. If it happens again, delete this browser’s cookies for this address.";
            case 503 ->
                "It was stopped after %d seconds. If you were saving, check whether it is there, then try again."
                        .formatted(Deadline.Patience.USUAL.answer().toSeconds());
            default -> "Go back and try another way.";
        };
    }
}
