package haywright.app.words;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** The version of this build, as every answer carries it. */
public final class Version {
    public static final String TEXT = read();

    private Version() {}

    private static String read() {
        try (var in = Objects.requireNonNull(Version.class.getResourceAsStream("/haywright/app/version.txt"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
