package haywright.app.exchange.pdf;

import haywright.workings.Refused;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/**
 * The words of a PDF as lines of text. A PDF is a program in disguise: a few kB of it can keep a reader busy for hours
 * or fill any memory. So each is read in a process of its own ({@link PdfProcess}) with little memory, which is ended
 * when its time is up, and only a few at once.
 */
public final class PdfText {
    /** Far above any report: a page is some ten kB, and one with a letterhead a few hundred. */
    public static final int MOST_BYTES = 20_000_000;

    static final int MOST_LETTERS = 3_000_000;
    /** A letter has at most three bytes in UTF-8, or a pair of letters four. */
    private static final int MOST_ANSWERED = 3 * MOST_LETTERS + MOST_LETTERS / 10;

    /** From asking to the answer, waiting for others included: forty reports of one page each on a machine at rest. */
    private static final int SECONDS = 20;

    private static final int AT_ONCE = 2;
    private static final Semaphore FREE = new Semaphore(AT_ONCE, true);

    /** What a JVM reads from its surroundings could give it more memory than is meant here. */
    private static final List<String> SURROUNDINGS = List.of("JAVA_TOOL_OPTIONS", "JDK_JAVA_OPTIONS", "_JAVA_OPTIONS");

    private PdfText() {}

    /** Whether the bytes begin as a PDF does; some printers put a few bytes before it. */
    public static boolean isPdf(byte[] file) {
        var head = new String(file, 0, Math.min(file.length, 1024), StandardCharsets.ISO_8859_1);
        return head.contains("%PDF-");
    }

    /**
     * @throws Refused in words: too large, no PDF, locked, broken, too big to read within the limits, or a picture of a
     *     report without any text
     */
    public static String of(byte[] file) {
        return of(file, SECONDS);
    }

    static String of(byte[] file, int seconds) {
        if (file.length > MOST_BYTES) {
            throw new Refused(
                    "file",
                    "more than %d MB".formatted(MOST_BYTES / 1_000_000),
                    "a report is smaller than %d MB".formatted(MOST_BYTES / 1_000_000),
                    "Is this the right file? Print the pages with the reports to a PDF of their own.");
        }
        if (!isPdf(file)) {
            throw new Refused(
                    "file",
                    "",
                    "this is not a PDF, whatever its name says",
                    "Open it where it came from, then save the report as PDF or CSV, or paste its text.");
        }
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
        try {
            if (!FREE.tryAcquire(seconds, TimeUnit.SECONDS)) {
                throw new Refused("file", "", "other PDFs are being read just now", "Send it again in a minute.");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw tooBig();
        }
        try {
            return apart(file, until - System.nanoTime());
        } catch (IOException e) {
            throw new Refused(
                    "file",
                    "",
                    "no process could be started to read this PDF: " + e.getMessage(),
                    "Open it, copy its lines and paste them here.");
        } finally {
            FREE.release();
        }
    }

    static Refused tooBig() {
        return new Refused(
                "file",
                "",
                "this PDF is too big to read here",
                "Open it, copy the lines of the report and paste them here.");
    }

    /** @param nanos after which the process is ended, which ends its pipes and so every wait for it */
    private static String apart(byte[] file, long nanos) throws IOException {
        var builder = new ProcessBuilder(PdfProcess.command()).redirectError(ProcessBuilder.Redirect.DISCARD);
        builder.environment().keySet().removeAll(SURROUNDINGS);
        var process = builder.start();
        CompletableFuture.delayedExecutor(nanos, TimeUnit.NANOSECONDS, Runnable::run)
                .execute(process::destroyForcibly);
        try (var to = new DataOutputStream(process.getOutputStream());
                var from = new DataInputStream(process.getInputStream())) {
            return answer(file, to, from);
        } finally {
            end(process);
        }
    }

    /** Whatever it is doing, and gone before another takes its place. */
    private static void end(Process process) {
        process.destroyForcibly();
        try {
            process.waitFor(1, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static String answer(byte[] file, DataOutputStream to, DataInputStream from) {
        try {
            to.writeInt(file.length);
            to.write(file);
            to.flush(); // stays open: when it ends, the process knows that nobody waits for it
            if (!from.readBoolean()) {
                throw new Refused("file", from.readUTF(), from.readUTF(), from.readUTF());
            }
            int length = from.readInt();
            if (length < 0 || length > MOST_ANSWERED) {
                throw tooBig();
            }
            var text = new byte[length];
            from.readFully(text);
            return new String(text, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw tooBig(); // it ended in the middle: its memory or its time was up
        }
    }
}
