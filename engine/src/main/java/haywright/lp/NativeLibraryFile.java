package haywright.lp;

import com.sun.jna.Platform;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * The solver's library as a file that the system can load. The jar for this platform carries dozens of libraries; only
 * HiGHS is unpacked, into the folder of system property {@value #FOLDER} or else a folder of this user's below the
 * temporary one. Its name is its SHA-256, so another version never meets it, and a file that does not match its name is
 * replaced. It is written beside its place and moved there whole: two programs starting at once do no harm.
 */
final class NativeLibraryFile {
    static final String FOLDER = "haywright.native.dir";

    private NativeLibraryFile() {}

    static Path unpacked() {
        String platform = Platform.RESOURCE_PREFIX;
        String library = Platform.isWindows() ? "highs.dll" : Platform.isMac() ? "libhighs.1.dylib" : "libhighs.so.1";
        String resource = "/ortools-" + platform + "/" + library;
        try (InputStream in = NativeLibraryFile.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("its library for this machine, " + resource
                        + ", is not on the class path. Is com.google.ortools:ortools-" + platform + " in lib/?");
            }
            return unpacked(in.readAllBytes(), library, folder());
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "its library could not be unpacked (" + e.getMessage()
                            + "). Is there room on the disk, and may this user write there?",
                    e);
        }
    }

    static Path unpacked(byte[] library, String name, Path folder) throws IOException {
        byte[] hash = sha256(library);
        Path file = folder.resolve(HexFormat.of().formatHex(hash) + "-" + name);
        if (Files.isRegularFile(file) && Arrays.equals(hash, sha256(Files.readAllBytes(file)))) {
            return file;
        }
        Path beside = Files.createTempFile(folder, "unpacking", null);
        try {
            Files.write(beside, library);
            Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(beside);
        }
        return file;
    }

    private static Path folder() throws IOException {
        String named = System.getProperty(FOLDER);
        if (named != null) {
            return Files.createDirectories(Path.of(named)).toAbsolutePath();
        }
        Path temporary = Path.of(System.getProperty("java.io.tmpdir"));
        return own(temporary.resolve("haywright-native-" + System.getProperty("user.name")));
    }

    /** The temporary folder is everybody's: what is loaded from it must lie where only this user can write. */
    static Path own(Path folder) throws IOException {
        boolean posix = folder.getFileSystem().supportedFileAttributeViews().contains("posix");
        if (!posix) {
            return Files.createDirectories(folder).toAbsolutePath();
        }
        var onlyMe = PosixFilePermissions.fromString("rwx------");
        try {
            Files.createDirectory(folder, PosixFilePermissions.asFileAttribute(onlyMe));
        } catch (FileAlreadyExistsException e) {
            if (Files.isSymbolicLink(folder)
                    || !Files.isDirectory(folder)
                    || !Files.getPosixFilePermissions(folder).equals(onlyMe)
                    || !isMine(folder)) {
                return Files.createTempDirectory("haywright-native");
            }
        }
        return folder.toAbsolutePath();
    }

    private static boolean isMine(Path folder) throws IOException {
        Path probe = Files.createTempFile(folder.getParent(), "haywright-owner", null);
        try {
            return Files.getOwner(folder).equals(Files.getOwner(probe));
        } finally {
            Files.delete(probe);
        }
    }

    private static byte[] sha256(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java has SHA-256.", e);
        }
    }
}
