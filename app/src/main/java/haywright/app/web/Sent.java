package haywright.app.web;

import haywright.app.document.Fingerprint;
import haywright.app.store.Trouble;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;

/** What a form sends, read here once: what breaks off or is no form is said before anything is done with half of it. */
public final class Sent {
    private static final int BAD_REQUEST = 400;
    private static final int TOO_LARGE = 413;
    private static final int NO_ROOM = 507;

    /** Digits of a print: half of the hash tells forms apart. */
    private static final int PRINT = 32;

    /** What was sent could not be read, and cannot be filled in again. */
    static final String UNREAD = "unread";

    private Sent() {}

    /** @throws HttpResponseException in words */
    static void read(Context http) {
        Map<String, List<String>> fields;
        try {
            fields = http.formParamMap();
            http.uploadedFileMap();
        } catch (Exception e) { // whatever the library makes of it: it came from outside
            http.attribute(UNREAD, true);
            var trouble = Trouble.of(e); // a large file is put on the disk as it comes
            if (trouble.isPresent()) {
                throw new HttpResponseException(
                        NO_ROOM,
                        trouble.get().cause() + " Nothing was changed. "
                                + trouble.get().fix(),
                        Map.of());
            }
            throw isTooMuch(e)
                    ? new HttpResponseException(
                            TOO_LARGE,
                            "A form holds at most %d MB besides its files, and %,d fields. Paste less at once, or send it as a file."
                                    .formatted(Gate.FORM_LIMIT / 1024 / 1024, Gate.FIELD_LIMIT),
                            Map.of())
                    : new HttpResponseException(
                            BAD_REQUEST,
                            "What was sent breaks off, or it is not a form a browser sends. Nothing was changed: go back and send it again.",
                            Map.of());
        }
        fields.forEach((name, values) -> {
            if (name.indexOf('\0') >= 0 || values.stream().anyMatch(value -> value.indexOf('\0') >= 0)) {
                throw new HttpResponseException(
                        BAD_REQUEST,
                        "“%s” has a character nobody can type (NUL). Go back, delete it and send it again."
                                .formatted(name.replace("\0", "")),
                        Map.of());
            }
        });
    }

    /**
     * A print of all that a form sent and of what it was made from: the same only where one page is sent twice. Empty for what
     * has no revision in it, as a script's. A file is told by its name and how long it is.
     */
    static Optional<String> print(Context http) {
        if (http.formParam(Page.REV) == null) {
            return Optional.empty();
        }
        var all = new TreeMap<String, List<String>>(http.formParamMap());
        if (http.isMultipart()) {
            http.uploadedFiles()
                    .forEach(file ->
                            all.put("file/" + all.size(), List.of(file.filename(), Long.toString(file.size()))));
        }
        all.keySet().removeAll(Set.of(Gate.TOKEN, Unfinished.DRAFT, Page.SEEN));
        return Optional.of(Fingerprint.sha256(http.path() + all).substring(0, PRINT));
    }

    /** For a ranch that a form makes: the same where the form is sent twice. */
    public static UUID newId(Context http) {
        return print(http)
                .map(print -> UUID.nameUUIDFromBytes(print.getBytes(StandardCharsets.UTF_8)))
                .orElseGet(UUID::randomUUID);
    }

    /** The name of a file that was sent, without its folders and what no name has; empty where nothing is left. */
    public static String fileName(String sent) {
        return sent.replaceAll("^.*[/\\\\]|[\\p{Cntrl}\"]", "").strip();
    }

    private static boolean isTooMuch(Throwable e) {
        for (var cause = e; cause != null; cause = cause.getCause()) {
            var message = String.valueOf(cause.getMessage());
            if (message.contains("larger than max") || message.contains("too many keys")) {
                return true;
            }
        }
        return false;
    }
}
