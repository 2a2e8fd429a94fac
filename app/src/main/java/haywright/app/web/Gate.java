package haywright.app.web;

import haywright.app.store.Home;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import io.javalin.http.SameSite;
import java.net.URI;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Runs before every request. Whoever asks must show that the data folder is open to them: by the cookie that an address
 * with the key leaves in a browser, or by the key as a bearer token. Another site open in the same browser must not be able
 * to read or change anything here: the Host header is checked against names of this machine (a foreign name that was
 * pointed at it is turned away), and whatever changes something must come from one of our own pages and bring the token of
 * its form.
 */
public final class Gate {
    private static final Pattern CHARSET = Pattern.compile("(?i)charset\\s*=\\s*\"?([^\\s;\"]*)");

    static final String TOKEN = "token";

    static final int FORM_LIMIT = 1024 * 1024;
    static final int FIELD_LIMIT = 5000;
    static final int FILE_LIMIT = 64 * 1024 * 1024;
    static final int QUESTION_LIMIT = 32 * 1024 * 1024;

    private static final String KEY = "key";
    /** As long as browsers allow; each page begins it anew. */
    private static final int COOKIE_SECONDS = 400 * 24 * 3600;

    private static final String POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
                    + " font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    /** On every answer, also of those that no handler of ours makes. */
    static final Map<String, String> HEADERS = Map.of(
            "Content-Security-Policy", POLICY,
            "X-Content-Type-Options", "nosniff",
            "Referrer-Policy", "same-origin",
            "Cross-Origin-Opener-Policy", "same-origin",
            "Cross-Origin-Resource-Policy", "same-origin",
            "Cache-Control", "private, no-cache",
            "Vary", "HX-Request");

    private final Set<String> hosts;
    private final Home home;

    /** @param bound the address that the server listens on, which may be asked for by name too */
    public Gate(String bound, Home home) {
        this.home = home;
        hosts = Stream.of("localhost", "127.0.0.1", "[::1]", bound.toLowerCase(Locale.ROOT))
                .collect(Collectors.toUnmodifiableSet());
    }

    void before(Context http) {
        HEADERS.forEach(http::header);
        var host = http.header("Host");
        if (host == null || !hosts.contains(name(host))) {
            throw new HttpResponseException(421, "Not an address of this Haywright.", Map.of());
        }
        checkLetters(http);
        boolean reads = http.method() == HandlerType.GET || http.method() == HandlerType.HEAD;
        if (!reads && http.method() != HandlerType.POST) {
            http.header("Allow", "GET, HEAD, POST");
            throw new HttpResponseException(405, "Open pages with GET; send forms with POST.", Map.of());
        }
        if (reads && http.path().startsWith("/static/")) {
            return;
        }
        if (reads && http.queryParam(KEY) != null) {
            enter(http);
            return;
        }
        boolean script = isScript(http);
        if (!script && !home.isOpen() && !hasCookie(http)) {
            throw closed(http);
        }
        http.attribute(TOKEN, home.token());
        if (reads) {
            if (!script && !home.isOpen()) {
                giveCookie(http);
            }
            return;
        }
        checkOrigin(http, host);
        checkLength(http);
        if (!isQuestion(http)) {
            Sent.read(http);
            if (!script) {
                checkToken(http);
            }
        }
    }

    private static void checkLetters(Context http) {
        // the heading itself: the server reads its own idea of the type by the code that is looked at here
        var named = CHARSET.matcher(String.valueOf(http.header("Content-Type")));
        try {
            if (!named.find() || Charset.isSupported(named.group(1))) {
                return;
            }
        } catch (IllegalCharsetNameException e) {
            // said below
        }
        throw new HttpResponseException(415, "The character set is not known. Send it as charset=utf-8.", Map.of());
    }

    private static boolean isQuestion(Context http) {
        return http.path().startsWith("/api/") && http.isJson();
    }

    /**
     * An address with the key: the browser gets its cookie and goes on without the key, so that neither bookmarks nor the
     * addresses that other pages learn of carry it.
     */
    private void enter(Context http) {
        if (!home.opensWith(http.queryParam(KEY))) {
            throw closed(http);
        }
        giveCookie(http);
        var site = http.header("Sec-Fetch-Site");
        // never two slashes, which would lead to another machine
        var on = "/" + http.path().replaceFirst("^[/\\\\]+", "");
        if (site == null || site.equals("none") || site.equals("same-origin")) {
            http.redirect(on, HttpStatus.SEE_OTHER);
        } else {
            // a browser that comes from elsewhere, such as a file, would follow a redirect without the new cookie
            Pages.render(http, "haywright/app/web/goOn.jte", Map.of("to", on));
        }
        http.skipRemainingHandlers();
    }

    private boolean isScript(Context http) {
        var sent = http.header("Authorization");
        return sent != null
                && sent.regionMatches(true, 0, "Bearer ", 0, "Bearer ".length())
                && home.opensWith(sent.substring("Bearer ".length()));
    }

    private boolean hasCookie(Context http) {
        var kept = http.cookie(home.cookieName());
        return kept != null && Home.same(kept, home.cookie());
    }

    private void giveCookie(Context http) {
        http.cookie(
                new Cookie(home.cookieName(), home.cookie(), "/", COOKIE_SECONDS, false, true, null, SameSite.STRICT));
    }

    private static HttpResponseException closed(Context http) {
        http.header("WWW-Authenticate", "Bearer realm=\"Haywright\"");
        return new HttpResponseException(401, "", Map.of());
    }

    private static String name(String host) {
        return host.replaceAll(":[0-9]*$", "").toLowerCase(Locale.ROOT);
    }

    private static void checkOrigin(Context http, String host) {
        var site = http.header("Sec-Fetch-Site");
        if (site != null && !site.equals("same-origin") && !site.equals("none")) {
            throw foreign();
        }
        var origin = http.header("Origin");
        if (origin != null && !isOwn(origin, host)) {
            throw foreign();
        }
    }

    private static boolean isOwn(String origin, String host) {
        try {
            var uri = URI.create(origin);
            return host.equalsIgnoreCase(uri.getAuthority());
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    private static void checkLength(Context http) {
        long length = http.req().getContentLengthLong();
        if (length < 0 && http.header("Transfer-Encoding") != null) {
            throw new HttpResponseException(411, "Send its length first.", Map.of());
        }
        int most = http.isMultipart() ? FILE_LIMIT : isQuestion(http) ? QUESTION_LIMIT : FORM_LIMIT;
        if (length > most) {
            throw new HttpResponseException(
                    413,
                    "%s were sent; the most at once is %s. %s"
                            .formatted(
                                    size(length, most),
                                    size(most, most),
                                    http.isMultipart()
                                            ? "Nothing was changed. Check that it is the right file, then choose another."
                                            : isQuestion(http)
                                                    ? "Ask in several batches."
                                                    : "Nothing was changed. Shorten it and save again, or send it as a file."),
                    Map.of());
        }
    }

    /** Fine enough that what was too much differs from what may be. */
    private static String size(long bytes, int most) {
        return most < 10_000_000
                ? "%,d kB".formatted((bytes + 999) / 1000)
                : "%,d MB".formatted((bytes + (bytes > most ? 999_999 : 0)) / 1_000_000);
    }

    private void checkToken(Context http) {
        var sent = http.formParam(TOKEN);
        if (sent == null && looksLikeJson(http)) {
            throw new HttpResponseException(
                    403,
                    "JSON needs the key (./haywright key prints it: Authorization: Bearer KEY)"
                            + " and its type (Content-Type: application/json).",
                    Map.of());
        }
        if (sent == null || !Home.same(sent, home.token())) {
            throw new HttpResponseException(403, "The form came from elsewhere.", Map.of());
        }
    }

    /** Also where it was sent as a form: then all of it stands where the name of the first field should. */
    private static boolean looksLikeJson(Context http) {
        return http.isJson()
                || http.contentType() == null
                || http.formParamMap().keySet().stream()
                        .anyMatch(name -> name.stripLeading().startsWith("{")
                                || name.stripLeading().startsWith("["));
    }

    private static HttpResponseException foreign() {
        return new HttpResponseException(403, "This came from another site.", Map.of());
    }

    /** The token for the forms of a page; empty for whoever was not let in. */
    static String token(Context http) {
        String token = http.attribute(TOKEN);
        return token == null ? "" : token;
    }
}
