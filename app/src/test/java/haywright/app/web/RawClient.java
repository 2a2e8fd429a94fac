package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.store.Home;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Speaks HTTP over a bare socket, so that a test can send what no library would. Keeps the cookie like a browser. */
final class RawClient {
    private static final Pattern TOKEN = Pattern.compile("name=\"token\" value=\"([^\"]+)\"");
    private static final Pattern REV = Pattern.compile("name=\"rev\" value=\"([0-9a-f-]+)\"");
    private static final Pattern SHEET = Pattern.compile("name=\"sheet\" value=\"([0-9a-f]+)\"");

    private final int port;
    private String cookie = "";

    /** Not let in. */
    RawClient(int port) {
        this.port = port;
    }

    /** Let in by the address with the key. */
    RawClient(int port, Home home) {
        this(port);
        get("/?key=" + home.key());
    }

    /** The same browser at another port. */
    RawClient(int port, RawClient before) {
        this(port);
        cookie = before.cookie;
    }

    record Answer(int status, Map<String, String> headers, String sent) {
        /** With plain blanks where a line may not break. */
        String body() {
            return sent.replace('\u00a0', ' ');
        }

        String header(String name) {
            return headers.getOrDefault(name, "");
        }
    }

    Answer get(String path) {
        return send("GET", path, Map.of(), "");
    }

    Answer send(String method, String path, Map<String, String> headers, String body) {
        var all = new LinkedHashMap<String, String>();
        all.put("Host", "127.0.0.1:" + port);
        if (!cookie.isEmpty()) {
            all.put("Cookie", cookie);
        }
        if (!body.isEmpty()) {
            all.put("Content-Type", "application/x-www-form-urlencoded");
            all.put("Content-Length", Integer.toString(body.getBytes(StandardCharsets.UTF_8).length));
        }
        all.putAll(headers);
        all.put("Connection", "close");
        var head = new StringBuilder(method + " " + path + " HTTP/1.1\r\n");
        all.forEach(
                (name, value) -> head.append(name).append(": ").append(value).append("\r\n"));
        return exchange(head + "\r\n" + body);
    }

    /** Sends the head of a form and the beginning of its body. */
    void half(Socket socket, String path, String type, int length, String beginning) throws IOException {
        var head =
                "POST %s HTTP/1.1\r\nHost: 127.0.0.1:%d\r\nCookie: %s\r\nContent-Type: %s\r\nContent-Length: %d\r\nConnection: close\r\n\r\n"
                        .formatted(path, port, cookie, type, length);
        socket.getOutputStream().write((head + beginning).getBytes(StandardCharsets.UTF_8));
        socket.getOutputStream().flush();
    }

    /** Asks for a page and takes nothing of its answer. */
    void ask(Socket socket, String path) throws IOException {
        socket.getOutputStream().write(asked(path));
        socket.getOutputStream().flush();
    }

    byte[] asked(String path) {
        return "GET %s HTTP/1.1\r\nHost: 127.0.0.1:%d\r\nCookie: %s\r\n\r\n"
                .formatted(path, port, cookie)
                .getBytes(StandardCharsets.UTF_8);
    }

    String token(Answer page) {
        var token = TOKEN.matcher(page.body());
        assertThat(token.find()).isTrue();
        return token.group(1);
    }

    Answer exchange(String request) {
        try (var socket = new Socket("127.0.0.1", port)) {
            socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
            socket.getOutputStream().flush();
            var all = new ByteArrayOutputStream();
            socket.getInputStream().transferTo(all);
            if (all.size() == 0) {
                throw new EOFException("no answer");
            }
            return read(all.toString(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Answer read(String text) {
        int end = text.indexOf("\r\n\r\n");
        var lines = text.substring(0, end).split("\r\n");
        var headers = new TreeMap<String, String>(String.CASE_INSENSITIVE_ORDER);
        for (int i = 1; i < lines.length; i++) {
            int colon = lines[i].indexOf(':');
            headers.put(
                    lines[i].substring(0, colon), lines[i].substring(colon + 1).strip());
        }
        var set = headers.get("Set-Cookie");
        if (set != null) {
            cookie = set.substring(0, set.indexOf(';'));
        }
        return new Answer(Integer.parseInt(lines[0].split(" ")[1]), headers, text.substring(end + 4));
    }

    /** Sends a form as its page would: with the token and the revision found on it. */
    Answer submit(Answer page, String path, Map<String, String> fields) {
        var all = new LinkedHashMap<>(fields);
        var token = TOKEN.matcher(page.body());
        if (token.find()) {
            all.putIfAbsent("token", token.group(1));
        }
        var rev = REV.matcher(page.body());
        if (rev.find()) {
            all.putIfAbsent("rev", rev.group(1));
        }
        var sheet = SHEET.matcher(page.body());
        if (sheet.find()) {
            all.putIfAbsent("sheet", sheet.group(1));
        }
        return send("POST", path, Map.of("Origin", "http://127.0.0.1:" + port), form(all));
    }

    /** Sends a file as a page's form does. */
    Answer upload(Answer page, String path, String name, String content) {
        var line = "--part-of-a-form\r\nContent-Disposition: form-data; name=";
        var body = line + "\"token\"\r\n\r\n" + token(page) + "\r\n" + line + "\"file\"; filename=\"" + name
                + "\"\r\nContent-Type: application/json\r\n\r\n" + content + "\r\n--part-of-a-form--\r\n";
        return send("POST", path, Map.of("Content-Type", "multipart/form-data; boundary=part-of-a-form"), body);
    }

    /** The same of whatever bytes. */
    Answer upload(Answer page, String path, String name, byte[] content) {
        var line = "--part-of-a-form\r\nContent-Disposition: form-data; name=";
        var rev = REV.matcher(page.body());
        var made = rev.find() ? line + "\"rev\"\r\n\r\n" + rev.group(1) + "\r\n" : "";
        var before = made + line + "\"token\"\r\n\r\n" + token(page) + "\r\n" + line + "\"file\"; filename=\"" + name
                + "\"\r\nContent-Type: application/octet-stream\r\n\r\n";
        var after = "\r\n--part-of-a-form--\r\n";
        var head =
                "POST %s HTTP/1.1\r\nHost: 127.0.0.1:%d\r\nCookie: %s\r\nContent-Type: multipart/form-data; boundary=part-of-a-form\r\nContent-Length: %d\r\nConnection: close\r\n\r\n"
                        .formatted(path, port, cookie, before.length() + content.length + after.length());
        try (var socket = new Socket("127.0.0.1", port)) {
            var out = socket.getOutputStream();
            out.write((head + before).getBytes(StandardCharsets.UTF_8));
            out.write(content);
            out.write(after.getBytes(StandardCharsets.UTF_8));
            out.flush();
            return read(new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static String form(Map<String, String> fields) {
        return fields.entrySet().stream()
                .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
    }
}
