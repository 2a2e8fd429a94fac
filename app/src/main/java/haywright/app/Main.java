package haywright.app;

import haywright.app.cli.Cli;
import haywright.app.store.Temporary;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.ZoneId;

/** Joins the rooms by hand and runs the command line. */
public final class Main {
    private Main() {}

    public static void main(String[] arguments) {
        int status = new Cli(
                        Clock.system(ZoneId.systemDefault()),
                        utf8(FileDescriptor.out),
                        utf8(FileDescriptor.err),
                        Temporary::choose)
                .run(arguments);
        System.exit(status);
    }

    /**
     * Pounds and degrees come out right whatever the terminal's own setting is. Not through {@code System.out}, which
     * tells nobody that it could not write.
     */
    private static PrintWriter utf8(FileDescriptor stream) {
        return new PrintWriter(new OutputStreamWriter(new FileOutputStream(stream), StandardCharsets.UTF_8), true);
    }
}
