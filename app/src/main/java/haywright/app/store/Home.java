package haywright.app.store;

import haywright.workings.Refused;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.sql.SQLException;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What the pages keep in the data folder beside the ranches: the key that opens them, and what failed inside. Whoever can
 * read the folder can open the pages; another user of the machine cannot.
 *
 * @param key the secret, as an address or a script carries it
 * @param isOpen whether everybody on this machine may open the pages without it
 */
public record Home(Path folder, String key, boolean isOpen) {
    private static final Logger LOG = LoggerFactory.getLogger(Home.class);
    private static final SecureRandom RANDOM = new SecureRandom();
    private static final String KEY_FORM = "[A-Za-z0-9_-]{43}";
    /** Faults whose messages the machine makes of names in the program, of numbers and of files. */
    private static final List<Class<? extends Throwable>> SAYS_NOTHING_TYPED = List.of(
            Error.class,
            NullPointerException.class,
            IndexOutOfBoundsException.class,
            ClassCastException.class,
            ArithmeticException.class,
            FileSystemException.class);

    private static final long MOST_ERRORS = 1024 * 1024;

    /** With the key of a folder; a new one where none is kept yet, or what is kept is no key. */
    public static Home in(Path folder) {
        var file = folder.resolve("key");
        try {
            OwnerOnly.folder(folder);
            if (!isKey(file)) {
                writeKey(file);
            }
            return new Home(folder, read(file), false);
        } catch (IOException e) {
            throw new Refused(
                    "key",
                    file.toString(),
                    "the key to the pages is kept here and can’t be read or written: " + e.getMessage(),
                    "Check who owns this folder, or choose another with --data.");
        }
    }

    /**
     * The key that is kept; none is made, because pages that are open would not know it.
     *
     * @throws Refused where none is kept
     */
    public static String keyIn(Path folder) {
        var file = folder.resolve("key");
        try {
            if (isKey(file)) {
                return read(file);
            }
        } catch (IOException e) {
            throw new Refused("key", file.toString(), "this cannot be read: " + e.getMessage(), "Check who owns it.");
        }
        throw new Refused(
                "key",
                file.toString(),
                "no key to the pages here yet",
                "Start Haywright to make one. If it is running, stop it and start it again.");
    }

    private static boolean isKey(Path file) throws IOException {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new IOException("it is a folder or a device, not a file");
        }
        return Files.exists(file) && read(file).matches(KEY_FORM);
    }

    /** Whatever its bytes are: what is no key is found to be none by its form. */
    private static String read(Path file) throws IOException {
        return Files.readString(file, StandardCharsets.ISO_8859_1).strip();
    }

    /** Under another name until it is whole; of two programs that begin at once, the first one's stays. */
    private static void writeKey(Path file) throws IOException {
        var random = new byte[32];
        RANDOM.nextBytes(random);
        var beside = Files.createTempFile(file.toAbsolutePath().getParent(), "key", ".part");
        try {
            OwnerOnly.file(beside);
            Files.writeString(beside, text(random) + "\n");
            if (Files.exists(file) && !isKey(file)) {
                // somebody's file of that name
                Files.move(file, file.resolveSibling("key-set-aside-" + System.currentTimeMillis()));
            }
            Files.createLink(file, beside);
        } catch (FileAlreadyExistsException e) {
            // the other's is read
        } catch (UnsupportedOperationException e) {
            Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(beside);
        }
    }

    /** Everybody on this machine may open the pages. */
    public Home open() {
        return new Home(folder, key, true);
    }

    /** @param sent by whoever wants in; null when nothing was */
    public boolean opensWith(@Nullable String sent) {
        return sent != null && same(sent, key);
    }

    public static boolean same(String a, String b) {
        return MessageDigest.isEqual(a.getBytes(StandardCharsets.UTF_8), b.getBytes(StandardCharsets.UTF_8));
    }

    /** A browser keeps one jar for all ports of a machine, so each folder's cookie has a name of its own. */
    public String cookieName() {
        return "haywright-" + made("cookie name").substring(0, 8);
    }

    /** Not the key itself: what a browser keeps opens no script, and says nothing of the key. */
    public String cookie() {
        return made("cookie");
    }

    /** Hidden in every form. */
    public String token() {
        return made("form");
    }

    private String made(String purpose) {
        try {
            var mac = Mac.getInstance("HmacSHA256");
            mac.init(new SecretKeySpec(key.getBytes(StandardCharsets.UTF_8), "HmacSHA256"));
            return text(mac.doFinal(purpose.getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String text(byte[] bytes) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /**
     * Writes what failed to {@code errors.log}, under a number that the page and the terminal show too.
     *
     * @param where what was asked for
     * @return where it can be found, as a sentence
     */
    public String log(String where, Throwable e) {
        var sentence = written(folder, where, e);
        LOG.error("{} failed. {}", where, sentence);
        return sentence;
    }

    /** The same for a command, which says the sentence itself. */
    public static String written(Path folder, String where, Throwable e) {
        var number = String.format(Locale.ROOT, "%06X", RANDOM.nextInt(1 << 24));
        var file = folder.resolve("errors.log");
        try {
            OwnerOnly.folder(folder);
            if (Files.exists(file) && Files.size(file) > MOST_ERRORS) {
                Files.move(file, folder.resolve("errors.log.1"), StandardCopyOption.REPLACE_EXISTING);
            }
            OwnerOnly.file(file);
            var when = LocalDateTime.now().truncatedTo(ChronoUnit.SECONDS);
            Files.writeString(
                    file,
                    "%s error %s at %s%n%s%n".formatted(when, number, where, trace(e)),
                    StandardOpenOption.APPEND);
            return "What failed is written in %s as error %s.".formatted(file.toAbsolutePath(), number);
        } catch (IOException notWritten) {
            return "What failed could not be written in %s: error %s, %s."
                    .formatted(file.toAbsolutePath(), number, name(e));
        }
    }

    /** Where it failed, without what somebody typed: most messages repeat it, those of a database with whole rows. */
    private static String trace(Throwable fault) {
        var trace = new StringBuilder();
        var seen = new ArrayList<Throwable>();
        for (Throwable next = fault; next != null && !seen.contains(next); next = next.getCause()) {
            var e = next;
            seen.add(e);
            trace.append(seen.size() > 1 ? "Caused by: " : "")
                    .append(e.getClass().getName());
            if (e instanceof SQLException sql) {
                trace.append(": state %s, code %d".formatted(sql.getSQLState(), sql.getErrorCode()));
            } else if (SAYS_NOTHING_TYPED.stream().anyMatch(type -> type.isInstance(e))) {
                trace.append(": ").append(e.getMessage());
            }
            trace.append('\n');
            for (var at : e.getStackTrace()) {
                trace.append("\tat ").append(at).append('\n');
            }
        }
        return trace.toString();
    }

    /** The fault, and the line that it came from. */
    public static String name(Throwable fault) {
        var trace = fault.getStackTrace();
        var at = trace.length == 0 ? "" : " at %s:%d".formatted(trace[0].getFileName(), trace[0].getLineNumber());
        return fault.getClass().getSimpleName() + at;
    }
}
