package haywright.app.store;

import haywright.workings.Refused;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * A data folder seen from outside of its database: {@code haywright.db}, and in {@code copies} one copy a day.
 *
 * <p>Kept are the 14 newest copies, and of those before them the first of each month, for 12 months. It is a matter of
 * how many there are, never of how old they are: a clock that was set wrong takes none away.
 */
public final class DataFolder {
    static final int DAYS_KEPT = 14;
    static final int MONTHS_KEPT = 12;

    private static final String NAME = "haywright.db";
    private static final List<String> WITH_IT = List.of("", "-wal", "-shm");
    private static final DateTimeFormatter AT = DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmmss");

    private final Path folder;
    private final Clock clock;

    public DataFolder(Path folder, Clock clock) {
        this.folder = folder;
        this.clock = clock;
    }

    /**
     * A daily copy that can be read.
     *
     * @param ranches how many it holds, those put away too
     */
    public record Copy(Path file, LocalDate day, int ranches) {}

    public Path path() {
        return folder;
    }

    public Path database() {
        return folder.resolve(NAME);
    }

    public Path copies() {
        return folder.resolve("copies");
    }

    /** Whether anything was ever kept there. */
    static boolean isOne(Path folder) {
        return Files.exists(folder.resolve(NAME))
                || Files.exists(folder.resolve("key")) && Files.isDirectory(folder.resolve("copies"));
    }

    /** @throws Refused where nothing was ever kept there: a name may be mistyped */
    public void refuseMissing() {
        boolean canBeLookedInto = !Files.exists(folder)
                || Files.isDirectory(folder) && Files.isReadable(folder) && Files.isExecutable(folder);
        if (canBeLookedInto && !isOne(folder) && all().isEmpty()) { // of any other, opening it says what is wrong
            throw new Refused(
                    "data",
                    folder.toAbsolutePath().toString(),
                    "there are no data of Haywright in this place, and nothing was made there",
                    "Is the name right? Name yours with --data; opening the pages, or taking in a file,"
                            + " begins a new place.");
        }
    }

    Path copyOf(LocalDate day) {
        return copies().resolve("haywright-" + day + ".db");
    }

    /** Newest first. A day still to come was a clock set wrong: it is looked at last. */
    List<Path> all() {
        if (!Files.isDirectory(copies())) {
            return List.of();
        }
        var today = LocalDate.now(clock);
        try (var files = Files.list(copies())) {
            return files.filter(file -> day(file).isPresent())
                    .sorted(Comparator.comparing(
                                    (Path file) -> day(file).orElseThrow().isAfter(today))
                            .thenComparing(file -> day(file).orElseThrow(), Comparator.reverseOrder()))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The last day to come, by this clock, that there is a copy of; empty where the clock goes well with the copies. */
    public Optional<LocalDate> dayToCome() {
        var today = LocalDate.now(clock);
        return all().stream()
                .flatMap(file -> day(file).stream())
                .filter(day -> day.isAfter(today))
                .max(Comparator.naturalOrder());
    }

    private static Optional<LocalDate> day(Path file) {
        var name = file.getFileName().toString();
        try {
            return name.matches("haywright-[0-9]{4}-[0-9]{2}-[0-9]{2}\\.db")
                    ? Optional.of(LocalDate.parse(name.substring(10, 20)))
                    : Optional.empty();
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }

    /** The newest copy that is whole and that this Haywright can read; one without ranches only where none has any. */
    public Optional<Copy> newestGood() {
        @org.jspecify.annotations.Nullable Copy empty = null;
        for (var file : all()) {
            var copy = copy(file).orElse(null);
            if (copy != null && copy.ranches() > 0) {
                return Optional.of(copy);
            }
            empty = empty == null ? copy : empty;
        }
        return Optional.ofNullable(empty);
    }

    /** Whether every page of a database that nobody has open is there, to the last byte, and in order. */
    static boolean isWhole(Path file) {
        return reading(file, connection -> isWhole(connection, file) ? file : null)
                .isPresent();
    }

    private static boolean isWhole(java.sql.Connection connection, Path file) throws SQLException {
        try (var asked = connection.createStatement()) {
            try (var size =
                    asked.executeQuery("SELECT page_count * page_size FROM pragma_page_count, pragma_page_size")) {
                if (!size.next() || size.getLong(1) != Files.size(file)) {
                    return false;
                }
            }
            try (var whole = asked.executeQuery("PRAGMA quick_check(1)")) {
                return whole.next() && whole.getString(1).equals("ok");
            }
        } catch (IOException e) {
            return false;
        }
    }

    private static Optional<Copy> copy(Path file) {
        return reading(file, connection -> {
            if (!isWhole(connection, file)) {
                return null;
            }
            try (var asked = connection.createStatement()) {
                try (var newest = asked.executeQuery(
                        "SELECT max(CAST(version AS INTEGER)), (SELECT count(*) FROM ranch) FROM flyway_schema_history")) {
                    return newest.next() && newest.getInt(1) <= Database.TABLES_VERSION
                            ? new Copy(file, day(file).orElseThrow(), newest.getInt(2))
                            : null;
                }
            }
        });
    }

    /** A ranch's document as the newest copy that has it holds it, copies looked at one after the other. */
    List<Held> holding(UUID ranch) {
        var found = new ArrayList<Held>();
        for (var file : all()) {
            held(file, ranch).ifPresent(found::add);
        }
        return found;
    }

    static Optional<Held> held(Path file, UUID ranch) {
        return reading(file, connection -> {
            try (var asked = connection.prepareStatement("SELECT " + OneRow.text("doc") + " FROM ranch WHERE id = ?")) {
                asked.setString(1, ranch.toString());
                try (var row = asked.executeQuery()) {
                    var doc = row.next() ? row.getString(1) : null;
                    return doc == null ? null : new Held(day(file).orElseThrow(), doc);
                }
            }
        });
    }

    record Held(LocalDate day, String doc) {}

    private interface Looking<T> {
        @org.jspecify.annotations.Nullable
        T at(java.sql.Connection connection) throws SQLException;
    }

    /** Immutable: a copy is only looked at, and nothing is written beside it. */
    private static <T> Optional<T> reading(Path file, Looking<T> looking) {
        var address = "jdbc:sqlite:file:" + file.toUri().getRawPath() + "?mode=ro&immutable=1";
        try (var connection = DriverManager.getConnection(address)) {
            return Optional.ofNullable(looking.at(connection));
        } catch (SQLException e) {
            return Optional.empty(); // this copy is no help; the next one may be
        }
    }

    /** @throws BadDatabase when the database is gone or empty, and a copy holds ranches */
    void refuseEmpty() {
        boolean there = Files.exists(database());
        if ((!there || isBare())
                && newestGood().filter(copy -> copy.ranches() > 0).isPresent()) {
            throw new BadDatabase(
                    this,
                    true,
                    there
                            ? "this database is empty, and its daily copies are not"
                            : "this database is gone, and its" + " daily copies are here",
                    null);
        }
    }

    private boolean isBare() {
        try {
            var log = Path.of(database() + "-wal");
            return Files.size(database()) == 0 && (!Files.exists(log) || Files.size(log) == 0);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Puts the newest good copy in the place of the database. What was in that place is renamed, never deleted.
     *
     * @return the copy, and where the other is now, if there was any
     * @throws Refused when no copy can be read, or somebody has the data open
     */
    public Restored restoreNewest() {
        var copy = newestGood()
                .orElseThrow(() -> new Refused(
                        "data",
                        copies().toString(),
                        all().isEmpty() ? "there is no daily copy here" : "none of the daily copies can be read",
                        "Restore a backup with: ranch restore FILE."));
        try (var alone = InUse.alone(folder)) {
            var beside = folder.resolve(NAME + ".part");
            Files.copy(copy.file(), beside, StandardCopyOption.REPLACE_EXISTING);
            var aside = setAside();
            Files.move(beside, database(), StandardCopyOption.ATOMIC_MOVE);
            return new Restored(copy, aside);
        } catch (IOException e) {
            throw cannotBeWritten(e);
        }
    }

    /** @param aside where the database that could not be read is now; empty when there was none */
    public record Restored(Copy copy, Optional<Path> aside) {}

    /** Sets an empty database and every copy aside, so that nothing asks about them again. */
    public void beginAnew() {
        try (var alone = InUse.alone(folder)) {
            setAside();
            if (Files.isDirectory(copies())) {
                Files.move(copies(), free("copies-", ""));
            }
        } catch (IOException e) {
            throw cannotBeWritten(e);
        }
    }

    /**
     * The journal of a database that is no longer here is renamed: the next to open the other one would take it for that
     * one's, and spoil it.
     */
    void setAsideJournal() {
        try {
            if (Files.exists(journal()) && Files.size(journal()) == 0) {
                Files.delete(journal());
            } else if (Files.exists(journal())) {
                Files.move(journal(), free("haywright-set-aside-", ".db-wal"));
            }
            Files.deleteIfExists(Path.of(database() + "-shm"));
        } catch (IOException e) {
            // where this folder is gone or cannot be written, neither can anybody open the other
        }
    }

    Path journal() {
        return Path.of(database() + "-wal");
    }

    private Optional<Path> setAside() throws IOException {
        var aside = free("haywright-set-aside-", ".db");
        for (var end : WITH_IT) {
            var file = Path.of(database() + end);
            if (Files.exists(file)) {
                Files.move(file, Path.of(aside + end));
            }
        }
        return Files.exists(aside) ? Optional.of(aside) : Optional.empty();
    }

    /** A name with the time in it that nothing has yet. */
    private Path free(String begins, String ends) {
        var time = LocalDateTime.now(clock).format(AT);
        var name = folder.resolve(begins + time + ends);
        for (int n = 2; Files.exists(name); n++) {
            name = folder.resolve(begins + time + "-" + n + ends);
        }
        return name;
    }

    private Refused cannotBeWritten(IOException e) {
        return new Refused(
                "data",
                folder.toString(),
                "this folder cannot be written to: " + e.getMessage(),
                "Allow writing there or make room; nothing was deleted.");
    }

    /** Deletes the copies that the rule does not keep; today's is kept whatever the clock says. */
    void prune(Path today) throws IOException {
        var kept = new HashSet<Path>();
        kept.add(today);
        var byDay = all().stream()
                .sorted(Comparator.comparing((Path file) -> day(file).orElseThrow())
                        .reversed())
                .toList();
        byDay.stream().limit(DAYS_KEPT).forEach(kept::add);
        var firsts = new java.util.TreeMap<String, Path>(Comparator.reverseOrder());
        for (var file : byDay) {
            firsts.put(day(file).orElseThrow().toString().substring(0, 7), file); // the last one put is the first of it
        }
        firsts.values().stream()
                .filter(file -> !kept.contains(file))
                .limit(MONTHS_KEPT)
                .forEach(kept::add);
        for (var file : byDay) {
            if (!kept.contains(file)) {
                Files.delete(file);
            }
        }
    }
}
