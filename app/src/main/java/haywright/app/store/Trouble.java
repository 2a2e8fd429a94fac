package haywright.app.store;

import java.io.IOException;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Locale;
import java.util.Optional;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Why nothing could be kept or read, as the database or the disk says it. */
public enum Trouble {
    DISK_FULL("The disk is full.", "Make room on it, then try again."),
    DISK_FAILS(
            "The disk did not take what was written. It may be full, over its quota, or failing.",
            "Make room or look at the disk, then try again."),
    LOCKED(
            "Another program is holding the database.",
            "Close the other program, or wait until it is done; then try again."),
    AWAY("The database does not answer.", "Start it, or look for its file and its disk; then try again."),
    READ_ONLY(
            "The database cannot be written to: its file, folder or disk is read-only.",
            "Allow writing there, then try again."),
    DAMAGED(
            "The database file is damaged.",
            "End Haywright and start it again: it then offers the newest good copy. Nothing is deleted by that."),
    REPLACED(
            "The database file was removed or replaced while Haywright had it open.",
            "Nothing more is saved. End Haywright and start it again."),
    NEWER(
            "A newer Haywright has changed the database since this one was started.",
            "End this one and use the newer one.");

    private final String cause;
    private final String fix;

    Trouble(String cause, String fix) {
        this.cause = cause;
        this.fix = fix;
    }

    /** A sentence. */
    public String cause() {
        return cause;
    }

    /** What to do about it. */
    public String fix() {
        return fix;
    }

    /** Empty when it was something else that failed. */
    public static Optional<Trouble> of(Throwable failure) {
        for (var each = failure; each != null; each = each.getCause()) {
            var found = ofOne(each);
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    private static Optional<Trouble> ofOne(Throwable one) {
        if (one instanceof OpenedFile.Replaced) {
            return Optional.of(REPLACED);
        }
        if (one instanceof SQLiteException e) {
            return ofSqlite(e);
        }
        if (one instanceof SQLTransientConnectionException e) {
            // the pool's own words for having waited in vain; what it waited for, where it knows, is the cause
            return Optional.of(e.getCause() == null ? AWAY : of(e.getCause()).orElse(AWAY));
        }
        if (one instanceof SQLException e) {
            return ofState(e);
        }
        return one instanceof IOException e ? ofFile(e) : Optional.empty();
    }

    private static Optional<Trouble> ofSqlite(SQLiteException e) {
        int extended = e.getResultCode().code;
        int code = extended & 0xff;
        if (e.getResultCode() == SQLiteErrorCode.SQLITE_READONLY_DBMOVED) {
            return Optional.of(REPLACED);
        }
        return switch (code) {
            case 5, 6 -> Optional.of(LOCKED);
            case 8, 3 -> Optional.of(READ_ONLY);
            case 10 -> Optional.of(DISK_FAILS);
            case 11, 26 -> Optional.of(DAMAGED);
            case 13 -> Optional.of(DISK_FULL);
            case 14 -> Optional.of(AWAY);
            default -> isSchema(e) ? Optional.of(NEWER) : Optional.empty();
        };
    }

    private static boolean isSchema(SQLException e) {
        return String.valueOf(e.getMessage()).matches("(?s).*(no such (table|column)|has no column).*");
    }

    /** By the classes of the SQL standard and PostgreSQL's appendix of error codes. */
    private static Optional<Trouble> ofState(SQLException e) {
        var state = String.valueOf(e.getSQLState());
        return switch (state) {
            case "53100" -> Optional.of(DISK_FULL);
            case "55P03", "40P01" -> Optional.of(LOCKED);
            case "25006", "42501" -> Optional.of(READ_ONLY);
            case "42P01", "42703" -> Optional.of(NEWER);
            case "XX001", "XX002" -> Optional.of(DAMAGED);
            default ->
                state.startsWith("08") || state.startsWith("57P") || state.startsWith("53")
                        ? Optional.of(AWAY)
                        : Optional.empty();
        };
    }

    private static Optional<Trouble> ofFile(IOException e) {
        var words = String.valueOf(e.getMessage()).toLowerCase(Locale.ROOT);
        if (words.contains("no space left") || words.contains("not enough space")) {
            return Optional.of(DISK_FULL);
        }
        if (words.contains("file too large") || words.contains("quota")) {
            return Optional.of(DISK_FAILS);
        }
        return words.contains("read-only file system") ? Optional.of(READ_ONLY) : Optional.empty();
    }
}
