package haywright.app.cli;

import haywright.app.Main;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Haywright in a process of its own, as somebody starts it, and a browser without scripts that asks it. */
final class Running implements AutoCloseable {
    private static final Pattern ADDRESS = Pattern.compile("(?i)open (http://\\S+)");
    private static final Pattern HIDDEN = Pattern.compile("name=\"(token|rev)\" value=\"([^\"]*)\"");

    private final Process process;
    private final BufferedReader lines;
    private final HttpClient browser = HttpClient.newBuilder()
            .cookieHandler(new CookieManager())
            .followRedirects(HttpClient.Redirect.NORMAL)
            .build();
    final List<String> said = new ArrayList<>();
    private URI address = URI.create("http://127.0.0.1/");

    private Running(Process process) {
        this.process = process;
        lines = process.inputReader(StandardCharsets.UTF_8);
    }

    /** Runs to its end; what it said, with its exit status in the last line. */
    static List<String> toItsEnd(String... arguments) throws IOException, InterruptedException {
        try (var running = new Running(start("", arguments))) {
            running.lines.lines().forEach(running.said::add);
            running.said.add("exit " + running.process.waitFor());
            return running.said;
        }
    }

    /** @param limits a command for the shell before it, such as {@code ulimit -f 2000}; empty for none */
    static Running pages(String limits, Path data, String... more) throws IOException {
        var arguments = new ArrayList<>(List.of("--data", data.toString(), "--port", "0"));
        arguments.addAll(List.of(more));
        var running = new Running(start(limits, arguments.toArray(String[]::new)));
        running.open();
        return running;
    }

    private static Process start(String limits, String... arguments) throws IOException {
        var command = new ArrayList<>(List.of(
                "bash",
                "-c",
                (limits.isEmpty() ? "" : limits + "; ") + "exec \"$@\"",
                "haywright",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:-UsePerfData",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command).redirectErrorStream(true).start();
    }

    /** Waits for the next address that it says, and opens it. */
    Answer open() throws IOException {
        for (var line = lines.readLine(); line != null; line = lines.readLine()) {
            said.add(line);
            var found = ADDRESS.matcher(line);
            if (found.find()) {
                address = URI.create(found.group(1));
                return ask(HttpRequest.newBuilder(address));
            }
        }
        throw new IllegalStateException("It ended: " + said);
    }

    record Answer(int status, String path, String body) {}

    Answer get(String path) {
        return ask(HttpRequest.newBuilder(address.resolve(path)));
    }

    /** Sends a form that a page shows, with what is hidden in it. */
    Answer send(Answer page, String path, Map<String, String> fields) {
        var all = new LinkedHashMap<>(fields);
        HIDDEN.matcher(page.body()).results().forEach(hidden -> all.putIfAbsent(hidden.group(1), hidden.group(2)));
        var body = all.entrySet().stream()
                .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return ask(HttpRequest.newBuilder(address.resolve(path))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("Origin", "http://" + address.getAuthority())
                .POST(BodyPublishers.ofString(body)));
    }

    private Answer ask(HttpRequest.Builder request) {
        try {
            HttpResponse<String> answer = browser.send(request.build(), BodyHandlers.ofString());
            return new Answer(answer.statusCode(), answer.uri().getPath(), answer.body());
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    void kill() throws InterruptedException {
        process.destroyForcibly();
        process.waitFor(30, TimeUnit.SECONDS);
    }

    @Override
    public void close() throws InterruptedException {
        process.destroy();
        if (!process.waitFor(30, TimeUnit.SECONDS)) {
            kill();
        }
    }
}
