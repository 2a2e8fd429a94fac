package haywright.app.cli;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** What a command writes. */
final class Output {
    private Output() {}

    /** It could not be written; the command ends with {@link Faults#FAILED}. */
    static final class Unwritten extends RuntimeException {
        private static final long serialVersionUID = 1;

        Unwritten(String sentence) {
            super(sentence);
        }
    }

    /** A print writer keeps its failure to itself. */
    static Unwritten closed() {
        return new Unwritten("The answer could not be written: standard output was closed, or its disk is full.");
    }

    interface Writing {
        void write() throws IOException;
    }

    /** @throws Unwritten with the true cause */
    static void to(Path file, Writing writing) {
        try {
            writing.write();
        } catch (IOException e) {
            throw new Unwritten("%s could not be written: %s. Choose another place, or make room."
                    .formatted(file, why(e).replaceAll("[.]+$", "")));
        } catch (UncheckedIOException e) {
            to(file, () -> {
                throw e.getCause();
            });
        }
    }

    /** Asked before writing, said after it: a file that was there is there no longer. */
    static String replaced(Path file) {
        return Files.exists(file) ? ", in the place of the file that was there" : "";
    }

    /** In the system's own words, which name the cause: no space, no permission, a folder of that name. */
    static String why(IOException e) {
        if (e instanceof NoSuchFileException) {
            return "there is no such folder";
        }
        if (e instanceof java.nio.file.AccessDeniedException) {
            return "you have no permission there";
        }
        var reason = e instanceof FileSystemException file ? file.getReason() : e.getMessage();
        return reason == null || reason.isBlank() ? e.getClass().getSimpleName() : reason;
    }

    /** Standard output for a long answer: it ends at the first part that cannot be written. */
    static final class Checked extends FilterWriter {
        private final PrintWriter to;

        Checked(PrintWriter to) {
            super(to);
            this.to = to;
        }

        @Override
        public void flush() {
            if (to.checkError()) {
                throw closed();
            }
        }
    }
}
