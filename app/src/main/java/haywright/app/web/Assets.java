package haywright.app.web;

import haywright.app.document.Fingerprint;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The few files that pages need beside their HTML: all of them named here, read once from the class path and served
 * from memory, so no path of a request ever reaches a file.
 */
final class Assets {
    private static final Map<String, String> FILES = files();

    private final Map<String, Asset> assets = new LinkedHashMap<>();

    private record Asset(String type, byte[] body, String version) {}

    Assets() {
        FILES.forEach((name, type) -> {
            var body = read(folder(name) + name);
            assets.put(name, new Asset(type, body, version(body)));
        });
    }

    private static String folder(String name) {
        if (name.endsWith(".ttf")) {
            return "/fonts/";
        }
        return name.equals("papers.css") ? "/haywright/app/report/" : "/haywright/app/web/";
    }

    private static Map<String, String> files() {
        var files = new LinkedHashMap<String, String>();
        files.put("haywright.css", "text/css; charset=utf-8");
        files.put("papers.css", "text/css; charset=utf-8");
        files.put("haywright.js", "text/javascript; charset=utf-8");
        files.put("htmx.min.js", "text/javascript; charset=utf-8");
        files.put("mark.svg", "image/svg+xml");
        for (var cut : new String[] {"Regular", "Italic", "SemiBold", "Bold"}) {
            files.put("SourceSans3-" + cut + ".ttf", "font/ttf");
        }
        return files;
    }

    /** With the version of its bytes, so that it can be kept for ever and is never stale. */
    String url(String name) {
        var asset = assets.get(name);
        if (asset == null) {
            throw new IllegalStateException("no asset " + name);
        }
        return "/static/" + name + "?v=" + asset.version();
    }

    void serve(Context http) {
        var asset = assets.get(http.pathParam("name"));
        if (asset == null) {
            throw new NotFoundResponse();
        }
        boolean versioned = asset.version().equals(http.queryParam("v"));
        http.header("Cache-Control", versioned ? "max-age=31536000, immutable" : "max-age=86400")
                .contentType(asset.type())
                .result(asset.body());
    }

    private static byte[] read(String resource) {
        try (InputStream in = Assets.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the file " + resource + " is missing from the program");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Short, and another one for any other bytes. */
    static String version(byte[] body) {
        return Fingerprint.sha256(body).substring(0, 24);
    }
}
