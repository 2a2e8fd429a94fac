package haywright.app.store;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Set;
import org.slf4j.LoggerFactory;

/**
 * Folders and files that only their owner may open. What is made here is made so from its first moment; what is here
 * already with wider rights is narrowed, and that is said. Where a file system knows no such rights (Windows keeps them for
 * the whole profile), nothing is done.
 */
public final class OwnerOnly {
    private static final Set<PosixFilePermission> FOLDER = PosixFilePermissions.fromString("rwx------");
    private static final Set<PosixFilePermission> FILE = PosixFilePermissions.fromString("rw-------");
    private static final int STICKY = 01000;

    /** What Haywright itself puts into its folder, by the beginning of the name. */
    private static final List<String> OURS =
            List.of("haywright.", "key", "open.html", "errors.log", "copies", "demo", "feed-letter.pdf", "tmp");

    private OwnerOnly() {}

    /**
     * Makes a folder, or narrows one that is here. A folder that holds anything but our own files is somebody's folder for
     * other things too, and keeps its rights; our files in it are narrowed in any case.
     */
    public static void folder(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            make(folder.toAbsolutePath());
            return;
        }
        boolean onlyOurs = true;
        try (var held = Files.newDirectoryStream(folder)) {
            for (var each : held) {
                boolean ours = OURS.stream().anyMatch(each.getFileName().toString()::startsWith);
                onlyOurs &= ours;
                if (ours && Files.isRegularFile(each, LinkOption.NOFOLLOW_LINKS)) {
                    narrow(each, FILE);
                }
            }
        }
        if (onlyOurs && !isShared(folder)) {
            narrow(folder, FOLDER);
        }
    }

    /** With those above it that are not there either: what is in them is the owner's too. */
    private static void make(Path folder) throws IOException {
        var above = folder.getParent();
        if (above != null && !Files.isDirectory(above)) {
            make(above);
        }
        try {
            if (knowsRights(folder)) {
                Files.createDirectory(folder, PosixFilePermissions.asFileAttribute(FOLDER));
            } else {
                Files.createDirectory(folder);
            }
        } catch (FileAlreadyExistsException e) {
            if (!Files.isDirectory(folder)) {
                throw e;
            }
        }
    }

    /** Makes an empty file where none is. */
    public static void file(Path file) throws IOException {
        try {
            if (knowsRights(file)) {
                Files.createFile(file, PosixFilePermissions.asFileAttribute(FILE));
            } else {
                Files.createFile(file);
            }
        } catch (FileAlreadyExistsException e) {
            narrow(file, FILE);
        }
    }

    private static void narrow(Path path, Set<PosixFilePermission> rights) {
        try {
            if (!knowsRights(path) || rights.containsAll(Files.getPosixFilePermissions(path))) {
                return;
            }
            Files.setPosixFilePermissions(path, rights);
            LoggerFactory.getLogger(OwnerOnly.class)
                    .warn("Others on this machine could open {}. Now only you can.", path);
        } catch (IOException e) {
            LoggerFactory.getLogger(OwnerOnly.class)
                    .warn("Others on this machine may be able to open {}; its rights cannot be changed.", path);
        }
    }

    /** A folder like {@code /tmp}, where everybody may put something. */
    private static boolean isShared(Path folder) throws IOException {
        return knowsRights(folder) && ((int) Files.getAttribute(folder, "unix:mode") & STICKY) != 0;
    }

    static boolean knowsRights(Path path) {
        return path.getFileSystem().supportedFileAttributeViews().contains("unix");
    }
}
