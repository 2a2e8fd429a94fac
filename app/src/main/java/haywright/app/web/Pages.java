package haywright.app.web;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.TemplateException;
import gg.jte.output.StringOutput;
import haywright.app.store.Home;
import io.javalin.config.JavalinConfig;
import io.javalin.config.Key;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What every page stands on: its files, its templates, who may see it, and where what fails is written. */
public final class Pages {
    private static final Key<Home> HOME = new Key<>("home");
    private static final Key<Assets> ASSETS = new Key<>("assets");
    private static final Key<TemplateEngine> TEMPLATES = new Key<>("templates");

    private static final Pattern TYPED_TAG_OR_GAP =
            Pattern.compile("(?s)<(textarea|option).*?</\\1>|<[^>]*>|(?<=[0-9]) (?=%)");

    private Pages() {}

    /** What every page stands on. */
    public static void foundation(JavalinConfig config, Home home, Gate gate, Deadline.Patience patience) {
        Limits.set(config, patience);
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.appData(HOME, home);
        config.appData(ASSETS, new Assets());
        config.appData(
                TEMPLATES,
                TemplateEngine.createPrecompiled(
                        null, ContentType.Html, Pages.class.getClassLoader(), "haywright.app.pages"));
        config.routes.before(gate::before);
        sayServed(config.routes);
        config.routes.get("/static/{name}", http -> assets(http).serve(http));
    }

    /** For the launcher, which keeps the classes that a run loaded only where it showed a page: an empty file says so. */
    private static void sayServed(RoutesConfig routes) {
        var served = System.getProperty("haywright.served");
        if (served == null) {
            return;
        }
        var said = new AtomicBoolean();
        routes.after(http -> {
            boolean page = http.statusCode() == 200
                    && String.valueOf(http.res().getContentType()).startsWith("text/html");
            if (page && said.compareAndSet(false, true)) {
                try {
                    Files.write(Path.of(served), new byte[0]);
                } catch (IOException e) {
                    // the next start is slower; no page may fail for that
                }
            }
        });
    }

    static Assets assets(Context http) {
        return http.appData(ASSETS);
    }

    /** @param template path from the source folder */
    public static void render(Context http, String template, Map<String, Object> with) {
        var html = new StringOutput(16 * 1024);
        try {
            http.appData(TEMPLATES).render(template, with, html);
        } catch (TemplateException e) {
            // the page's own answer, met while it was being written
            throw e.getCause() instanceof Errors.Answered answered ? (RuntimeException) answered : e;
        }
        if (Boxes.areLookedAt(http)) {
            return;
        }
        var body = unbroken(html.toString()).getBytes(StandardCharsets.UTF_8);
        http.contentType("text/html; charset=utf-8");
        if (http.method() == HandlerType.GET && http.statusCode() == 200) {
            // of the page as it came out: it changes with whatever the page changes with, and with nothing else
            var tag = '"' + Assets.version(body) + '"';
            http.header("ETag", tag);
            if (tag.equals(http.header("If-None-Match"))) {
                http.status(304);
                return;
            }
        }
        http.result(body);
    }

    /** No line of a page begins with the sign of a percentage. What somebody typed stays as it is. */
    private static String unbroken(String html) {
        return TYPED_TAG_OR_GAP
                .matcher(html)
                .replaceAll(found -> found.group().equals(" ") ? "\u00a0" : Matcher.quoteReplacement(found.group()));
    }

    /** For what goes on after a request is answered. */
    public static Consumer<Throwable> logger(Context http, String where) {
        var home = http.appData(HOME);
        return e -> home.log(where, e);
    }

    /** @return where what failed can be found, as a sentence */
    public static String log(Context http, Throwable e) {
        return http.appData(HOME).log(http.method() + " " + http.path(), e);
    }
}
