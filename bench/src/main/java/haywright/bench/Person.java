package haywright.bench;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Somebody at the pages with a mouse and a keyboard: follows links by their words, fills boxes, presses buttons, and counts
 * all of it. What a form holds already goes along, as a browser sends it.
 */
final class Person {
    private static final Pattern TAG =
            Pattern.compile("<(/?)(form|input|select|option|textarea|button|details|a)\\b([^>]*)>", Pattern.DOTALL);
    private static final Pattern ATTRIBUTE = Pattern.compile("([\\w-]+)(?:=\"([^\"]*)\")?");

    private final HttpClient browser = HttpClient.newBuilder()
            .cookieHandler(new CookieManager())
            .followRedirects(HttpClient.Redirect.NORMAL)
            .build();
    private final String home;
    private URI at;
    private String page = "";
    private int clicks;
    private int typed;
    private int picked;
    private int shown;
    private int refused;
    private final List<String> refusals = new ArrayList<>();

    Person(String home, String path) throws IOException, InterruptedException {
        this.home = home;
        this.at = URI.create(home);
        open(path);
    }

    private void open(String path) throws IOException, InterruptedException {
        answered(browser.send(HttpRequest.newBuilder(at.resolve(path)).build(), HttpResponse.BodyHandlers.ofString()));
    }

    private int answered(HttpResponse<String> answer) {
        at = answer.uri();
        page = answer.body();
        return answer.statusCode();
    }

    String page() {
        return page;
    }

    /** Follows the first link on the page proper that has these words, otherwise the first beside it. */
    Person click(String words) throws IOException, InterruptedException {
        int main = Math.max(0, page.indexOf("<main"));
        for (var part : List.of(page.substring(main), page)) {
            var links =
                    Pattern.compile("<a\\b([^>]*)>(.*?)</a>", Pattern.DOTALL).matcher(part);
            while (links.find()) {
                if (text(links.group(2)).contains(words)) {
                    clicks++;
                    open(plain(attributes(links.group(1)).getOrDefault("href", "")));
                    return this;
                }
            }
        }
        throw new IllegalStateException("No link “" + words + "” on " + at);
    }

    /**
     * Fills boxes of the form that has this button, and presses it.
     *
     * @param filled names of boxes and what goes in, in turn; of a list or a round button, its value
     */
    Person press(String words, String... filled) throws IOException, InterruptedException {
        var fill = new LinkedHashMap<String, String>();
        for (int i = 0; i < filled.length; i += 2) {
            fill.put(filled[i], filled[i + 1]);
        }
        var forms =
                Pattern.compile("<form\\b([^>]*)>(.*?)</form>", Pattern.DOTALL).matcher(page);
        while (forms.find()) {
            var buttons = Pattern.compile("<button\\b([^>]*)>(.*?)</button>", Pattern.DOTALL)
                    .matcher(forms.group(2));
            while (buttons.find()) {
                if (text(buttons.group(2)).contains(words)) {
                    send(attributes(forms.group(1)), forms.group(2), attributes(buttons.group(1)), fill);
                    return this;
                }
            }
        }
        throw new IllegalStateException("No button “" + words + "” on " + at);
    }

    private void send(Map<String, String> form, String body, Map<String, String> button, Map<String, String> fill)
            throws IOException, InterruptedException {
        var sent = new ArrayList<String[]>();
        var left = new HashSet<>(fill.keySet());
        var boxes = new HashSet<String>();
        var folds = new ArrayList<Boolean>();
        var tags = TAG.matcher(body).results().toList();
        for (int i = 0; i < tags.size(); i++) {
            var tag = tags.get(i);
            var has = attributes(tag.group(3));
            var name = has.get("name");
            if (tag.group(2).equals("details")) {
                if (tag.group(1).isEmpty()) {
                    folds.add(has.containsKey("open"));
                } else {
                    folds.remove(folds.size() - 1);
                }
            }
            if (name == null
                    || !tag.group(1).isEmpty()
                    || !List.of("input", "select", "textarea").contains(tag.group(2))) {
                continue;
            }
            var type = has.getOrDefault("type", tag.group(2));
            if (!type.equals("hidden") && !folds.contains(false)) {
                boxes.add(name);
            }
            boolean isMark = type.equals("radio") || type.equals("checkbox");
            var own = plain(has.getOrDefault("value", isMark ? "on" : ""));
            if (isMark ? own.equals(fill.get(name)) : fill.containsKey(name) && !type.equals("hidden")) {
                sent.add(new String[] {name, fill.getOrDefault(name, "")});
                left.remove(name);
                if (isMark || type.equals("select")) {
                    picked++;
                } else if (!fill.getOrDefault(name, "").isEmpty()) {
                    typed++;
                }
            } else if (isMark ? has.containsKey("checked") && !fill.containsKey(name) : !type.equals("file")) {
                sent.add(new String[] {
                    name,
                    switch (tag.group(2)) {
                        case "select" -> chosen(tags, i);
                        case "textarea" -> plain(body.substring(tag.end(), body.indexOf("</textarea>", tag.end())));
                        default -> own;
                    }
                });
            }
        }
        if (!left.isEmpty()) {
            throw new IllegalStateException("No box " + left + " on " + at);
        }
        if (button.containsKey("name")) {
            sent.add(new String[] {button.get("name"), button.getOrDefault("value", "")});
        }
        clicks++;
        shown += boxes.size();
        var request = HttpRequest.newBuilder(at.resolve(plain(form.getOrDefault("action", ""))))
                .header("Origin", home)
                .header("Referer", at.toString());
        boolean isFile = "multipart/form-data".equals(form.get("enctype"));
        request.header(
                "Content-Type", isFile ? "multipart/form-data; boundary=cut" : "application/x-www-form-urlencoded");
        request.POST(HttpRequest.BodyPublishers.ofString(isFile ? parts(sent) : fields(sent)));
        int status = answered(browser.send(request.build(), HttpResponse.BodyHandlers.ofString()));
        if (status >= 400) {
            refused++;
            refusals.add(at.getPath().replaceAll("[0-9a-f]{8}-[0-9a-f-]{27}", "ID") + ": "
                    + text(page.replaceAll("(?s).*id=\"problems\"", "<").replaceAll("(?s)</div>.*", "")));
        }
    }

    /** The option that is selected, otherwise the first. */
    private static String chosen(List<MatchResult> tags, int select) {
        var first = "";
        boolean isFirst = true;
        for (int i = select + 1; i < tags.size() && tags.get(i).group(2).equals("option"); i++) {
            if (tags.get(i).group(1).isEmpty()) {
                var has = attributes(tags.get(i).group(3));
                var value = plain(has.getOrDefault("value", ""));
                if (has.containsKey("selected")) {
                    return value;
                }
                first = isFirst ? value : first;
                isFirst = false;
            }
        }
        return first;
    }

    private static String fields(List<String[]> sent) {
        var all = new ArrayList<String>();
        for (var one : sent) {
            all.add(one[0] + "=" + URLEncoder.encode(one[1], StandardCharsets.UTF_8));
        }
        return String.join("&", all);
    }

    private static String parts(List<String[]> sent) {
        var all = new StringBuilder();
        for (var one : sent) {
            all.append("--cut\r\nContent-Disposition: form-data; name=\"%s\"\r\n\r\n%s\r\n".formatted(one[0], one[1]));
        }
        return all + "--cut--\r\n";
    }

    private static Map<String, String> attributes(String tag) {
        var all = new LinkedHashMap<String, String>();
        ATTRIBUTE
                .matcher(tag)
                .results()
                .forEach(one -> all.put(one.group(1), one.group(2) == null ? "" : one.group(2)));
        return all;
    }

    private static String text(String html) {
        return plain(html.replaceAll("<[^>]*>", " ")).replaceAll("\\s+", " ").strip();
    }

    private static String plain(String html) {
        return html.replace("&quot;", "\"")
                .replace("&#34;", "\"")
                .replace("&#39;", "'")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&amp;", "&");
    }

    int refused() {
        return refused;
    }

    /** One line of what it has come to. */
    String counts() {
        return "clicks %d, typed fields %d, picked %d, fields shown %d, refused saves %d%s"
                .formatted(
                        clicks,
                        typed,
                        picked,
                        shown,
                        refused,
                        refusals.isEmpty() ? "" : "\n  " + String.join("\n  ", refusals));
    }
}
