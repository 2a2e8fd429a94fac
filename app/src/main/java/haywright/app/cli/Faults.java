package haywright.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Instant;

/** What failed inside is written to a file for whoever mends it; the person reads one sentence. */
final class Faults {
    static final int FAILED = 3;

    private final Data data;
    private final Clock clock;

    Faults(Data data, Clock clock) {
        this.data = data;
        this.clock = clock;
    }

    /** Adds it to {@code faults.log} beside the ranches. */
    String kept(Throwable fault) {
        var sentence = "Haywright failed, and the fault is its own (%s). ".formatted(name(fault));
        try {
            var file = data.home().resolve("faults.log");
            Files.createDirectories(file.toAbsolutePath().getParent());
            try (var to = new PrintWriter(Files.newBufferedWriter(
                    file, StandardCharsets.UTF_8, StandardOpenOption.CREATE, StandardOpenOption.APPEND))) {
                to.println(Instant.now(clock));
                fault.printStackTrace(to);
            }
            return sentence + "What happened is in %s: send it to whoever looks after Haywright.".formatted(file);
        } catch (IOException | RuntimeException e) {
            return sentence + "It could not be written down: " + e.getMessage();
        }
    }

    /** The fault, and the line that it came from. */
    private static String name(Throwable fault) {
        var trace = fault.getStackTrace();
        var at = trace.length == 0 ? "" : " at %s:%d".formatted(trace[0].getFileName(), trace[0].getLineNumber());
        return fault.getClass().getSimpleName() + at;
    }
}
