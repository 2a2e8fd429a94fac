package haywright.app.document;

import haywright.ranch.Ranch;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The demo ranch. It and all its figures are invented, and it says so. */
public final class TinLantern {
    private TinLantern() {}

    public static Ranch ranch() {
        return read("tin-lantern.json");
    }

    /** An invented ranch that ships with the program. */
    static Ranch read(String file) {
        try (InputStream in = TinLantern.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException(file + " is missing beside " + TinLantern.class.getName());
            }
            return new RanchDocument().read(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
