package haywright.app.exchange.pdf;

import haywright.workings.Refused;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/**
 * The process that reads one PDF. In: its length in four bytes, and its bytes. Out: true, the length of the text and the
 * text in UTF-8; or false, and the value, the rule and the fix of a refusal.
 */
final class PdfProcess {
    private PdfProcess() {}

    /** One run of a small program: neither a large heap nor the better compiler would pay. */
    static List<String> command() {
        return List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx96m",
                "-XX:MaxMetaspaceSize=64m",
                "-XX:+ExitOnOutOfMemoryError",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Xshare:auto",
                "-Xlog:disable",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                PdfProcess.class.getName());
    }

    public static void main(String[] arguments) throws IOException {
        var in = new DataInputStream(System.in);
        var file = in.readNBytes(in.readInt());
        endWith(in);
        var out = new DataOutputStream(System.out);
        try {
            var text = PdfPages.of(file).getBytes(StandardCharsets.UTF_8);
            out.writeBoolean(true);
            out.writeInt(text.length);
            out.write(text);
        } catch (Refused refused) {
            var problem = refused.problems().get(0);
            out.writeBoolean(false);
            out.writeUTF(problem.value());
            out.writeUTF(problem.rule());
            out.writeUTF(problem.fix());
        }
        out.flush();
        Runtime.getRuntime().halt(0);
    }

    /** The pipe ends when the process that asked does, however it ended. */
    private static void endWith(InputStream pipe) {
        var watch = new Thread(
                () -> {
                    try {
                        pipe.read();
                    } catch (IOException e) {
                        // ended all the same
                    }
                    Runtime.getRuntime().halt(1);
                },
                "end of the pipe");
        watch.setDaemon(true);
        watch.start();
    }
}
