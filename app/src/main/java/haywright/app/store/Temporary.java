package haywright.app.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;

/**
 * Where files on their way are put, and the libraries of the machine's own code that are unpacked at each start: into the
 * data folder, as the machine's temporary folder may be missing, full, or one that nothing may be run from.
 */
public final class Temporary {
    private static final String PLACE = "java.io.tmpdir";
    private static final String NAME = "tmp";
    /** What the libraries take is a third less. */
    private static final long ROOM = 16L * 1024 * 1024;
    /** Left by a process that was killed; one of another machine that shares the disk is not seen from here. */
    private static final Duration LEFT_BEHIND = Duration.ofDays(1);

    private static final Set<PosixFilePermission> RIGHTS = PosixFilePermissions.fromString("rwx------");

    private Temporary() {}

    /**
     * Chooses the place for this process, before anything is unpacked: below a data folder that is there, else the
     * machine's own, else below a data folder that is made for it.
     */
    public static void choose(Path home) {
        var usual = Path.of(System.getProperty(PLACE));
        if (!(Files.isDirectory(home) && isBelow(home)) && wrong(usual).isPresent()) {
            isBelow(home);
        }
    }

    private static boolean isBelow(Path home) {
        var all = home.toAbsolutePath().resolve(NAME);
        try {
            if (!Files.isDirectory(home)) {
                OwnerOnly.folder(home);
            }
            if (Files.isSymbolicLink(all)) {
                return false;
            }
            OwnerOnly.folder(all);
            if (!isMine(all) || wrong(all).isPresent()) {
                return false;
            }
            sweep(all);
            var own = Files.createTempDirectory(all, ProcessHandle.current().pid() + "-");
            Runtime.getRuntime().addShutdownHook(new Thread(() -> drop(own)));
            System.setProperty(PLACE, own.toString());
            // the largest stays for the next start
            var lasting = all.resolve("native");
            OwnerOnly.folder(lasting);
            System.setProperty("haywright.native.dir", lasting.toString());
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    /** What is run from there must not be another user's. */
    private static boolean isMine(Path folder) throws IOException {
        var probe = Files.createTempFile(folder, "owner", null);
        try {
            return Files.getOwner(folder).equals(Files.getOwner(probe))
                    && (!OwnerOnly.knowsRights(folder) || RIGHTS.containsAll(Files.getPosixFilePermissions(folder)));
        } finally {
            Files.delete(probe);
        }
    }

    private static void sweep(Path all) throws IOException {
        try (var held = Files.newDirectoryStream(all, "[0-9]*-*")) {
            for (var each : held) {
                long process = Long.parseLong(each.getFileName().toString().replaceAll("-.*", ""));
                var at = Files.getLastModifiedTime(each, LinkOption.NOFOLLOW_LINKS)
                        .toInstant();
                if (ProcessHandle.of(process).isEmpty()
                        && at.isBefore(Instant.now().minus(LEFT_BEHIND))) {
                    drop(each);
                }
            }
        } catch (NumberFormatException e) {
            // not ours
        }
    }

    private static void drop(Path folder) {
        try {
            Files.walkFileTree(folder, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes about) throws IOException {
                    Files.deleteIfExists(file);
                    return FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult postVisitDirectory(Path emptied, IOException e) throws IOException {
                    Files.deleteIfExists(emptied);
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException e) {
            // a later start does it
        }
    }

    /** Why neither files can be put into a folder nor libraries be run from it; empty when they can. */
    static Optional<String> wrong(Path folder) {
        try {
            var probe = Files.createTempFile(folder, "probe", null);
            try {
                Files.write(probe, new byte[4096]);
                if (OwnerOnly.knowsRights(folder)) {
                    Files.setPosixFilePermissions(probe, RIGHTS);
                    if (!Files.isExecutable(probe)) {
                        return Optional.of("nothing may be run from there (noexec)");
                    }
                }
                return Files.getFileStore(folder).getUsableSpace() < ROOM
                        ? Optional.of("less than %d MB is free there".formatted(ROOM / 1024 / 1024))
                        : Optional.empty();
            } finally {
                Files.delete(probe);
            }
        } catch (NoSuchFileException e) {
            return Optional.of("there is no such folder");
        } catch (IOException e) {
            var reason = e instanceof FileSystemException file ? file.getReason() : e.getMessage();
            return Optional.of(reason == null ? "it cannot be written to" : reason);
        }
    }

    /** Why a library could not be unpacked or run, as the end of a sentence. */
    public static String why() {
        var place = Path.of(System.getProperty(PLACE));
        return "it has to be unpacked into %s, and %s"
                .formatted(place, wrong(place).orElse("it does not run on this machine"));
    }

    /** An empty file. */
    static Path file(String end) {
        try {
            return Files.createTempFile(place(), "haywright", end);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** An empty folder. */
    public static Path folder() throws IOException {
        return Files.createTempDirectory(place(), "haywright");
    }

    /** Java itself keeps to the one it was started with. */
    private static Path place() throws IOException {
        return Files.createDirectories(Path.of(System.getProperty(PLACE)));
    }
}
