package haywright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;

/**
 * What a step costs that works in a process of its own. Linux.
 *
 * @param seconds by the clock, the middle of five
 * @param memory kB, the most that was seen resident
 */
record Apart(double seconds, double memory) {
    private static final int TIMES = 5;

    static Apart of(Callable<?> step) throws IOException {
        var took = new double[TIMES];
        double most = 0;
        var worker = Executors.newSingleThreadExecutor();
        try {
            for (int i = 0; i < TIMES; i++) {
                long from = System.nanoTime();
                var done = worker.submit(step);
                while (!done.isDone()) {
                    most = Math.max(most, children());
                    Thread.sleep(2);
                }
                done.get();
                took[i] = (System.nanoTime() - from) / 1e9;
            }
        } catch (Exception e) {
            throw new IOException(e);
        } finally {
            worker.shutdown();
        }
        Arrays.sort(took);
        return new Apart(took[TIMES / 2], most);
    }

    /** A JVM that prints its version, with the same settings, by the clock. */
    static double start() throws IOException {
        var java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        return of(() -> new ProcessBuilder(java, "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-version")
                        .redirectErrorStream(true)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .start()
                        .waitFor())
                .seconds;
    }

    static double own() throws IOException {
        return resident(ProcessHandle.current());
    }

    private static double children() {
        return ProcessHandle.current()
                .children()
                .mapToDouble(Apart::maybe)
                .max()
                .orElse(0);
    }

    private static double maybe(ProcessHandle process) {
        try {
            return resident(process);
        } catch (IOException e) {
            return 0; // gone meanwhile
        }
    }

    private static double resident(ProcessHandle process) throws IOException {
        return Files.readAllLines(Path.of("/proc/" + process.pid() + "/status")).stream()
                .filter(line -> line.startsWith("VmHWM"))
                .mapToDouble(line -> Double.parseDouble(line.replaceAll("[^0-9]", "")))
                .findFirst()
                .orElse(0);
    }
}
