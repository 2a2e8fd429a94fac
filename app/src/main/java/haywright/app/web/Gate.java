package haywright.app.web;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import io.javalin.http.SameSite;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Runs before every request. Another site open in the same browser must not be able to read or change anything here:
 * the Host header is checked against names of this machine (a foreign name that was pointed at it is turned away), and
 * whatever changes something must come from one of our own pages and bring the token of its form.
 */
final class Gate {
    static final String TOKEN = "token";

    static final int FORM_LIMIT = 1024 * 1024;
    static final int FIELD_LIMIT = 5000;
    static final int FILE_LIMIT = 64 * 1024 * 1024;
    static final int QUESTION_LIMIT = 32 * 1024 * 1024;

    private static final String COOKIE = "haywright";
    /** Longer than a form stays open: one that was left open over a restart of the browser can still be sent. */
    private static final int COOKIE_SECONDS = 90 * 24 * 3600;

    private static final String POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
                    + " font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
    private static final SecureRandom RANDOM = new SecureRandom();

    private final Set<String> hosts;

    /** @param bound the address that the server listens on, which may be asked for by name too */
    Gate(String bound) {
        hosts = Stream.of("localhost", "127.0.0.1", "[::1]", bound.toLowerCase(Locale.ROOT))
                .collect(Collectors.toUnmodifiableSet());
    }

    void before(Context http) {
        http.header("Content-Security-Policy", POLICY)
                .header("X-Content-Type-Options", "nosniff")
                .header("Referrer-Policy", "same-origin")
                .header("Cross-Origin-Opener-Policy", "same-origin")
                .header("Cross-Origin-Resource-Policy", "same-origin")
                .header("Cache-Control", "no-cache")
                .header("Vary", "HX-Request");
        var host = http.header("Host");
        if (host == null || !hosts.contains(name(host))) {
            throw new HttpResponseException(421, "This address is not one of ours.", Map.of());
        }
        if (http.method() == HandlerType.GET || http.method() == HandlerType.HEAD) {
            return;
        }
        checkOrigin(http, host);
        checkLength(http);
        if (!isQuestion(http)) {
            Sent.read(http);
            checkToken(http);
        }
    }

    private static boolean isQuestion(Context http) {
        return http.path().startsWith("/api/") && http.isJson();
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
            throw new HttpResponseException(411, "The length of what is sent must be said first.", Map.of());
        }
        int most = http.isMultipart() ? FILE_LIMIT : isQuestion(http) ? QUESTION_LIMIT : FORM_LIMIT;
        if (length > most) {
            throw new HttpResponseException(
                    413,
                    "%d MB were sent, and this is more than can be taken in at once, which is %d MB. Is it the right file? Nothing was changed: go back and choose another."
                            .formatted(length / 1_000_000, most / 1_000_000),
                    Map.of());
        }
    }

    private static void checkToken(Context http) {
        var sent = http.formParam(TOKEN);
        var kept = http.cookie(COOKIE);
        if (sent == null || kept == null || kept.isEmpty() || !MessageDigest.isEqual(bytes(sent), bytes(kept))) {
            throw new HttpResponseException(
                    403, "The form was open since before this browser last started, or came from elsewhere.", Map.of());
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static HttpResponseException foreign() {
        return new HttpResponseException(403, "This came from another site.", Map.of());
    }

    /** The token for the forms of a page: that of the browser's cookie, or a new one. */
    static String token(Context http) {
        var kept = http.cookie(COOKIE);
        if (kept != null && kept.length() == 43) {
            return kept;
        }
        String made = http.attribute(COOKIE);
        if (made == null) {
            var random = new byte[32];
            RANDOM.nextBytes(random);
            made = Base64.getUrlEncoder().withoutPadding().encodeToString(random);
            http.attribute(COOKIE, made);
            http.cookie(new Cookie(COOKIE, made, "/", COOKIE_SECONDS, false, true, null, SameSite.STRICT));
        }
        return made;
    }
}
