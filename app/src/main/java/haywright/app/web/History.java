package haywright.app.web;

import haywright.app.store.Edit;
import haywright.workings.Refused;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Everything that was saved on a ranch, newest first, and taking it back. */
public final class History {
    private static final DateTimeFormatter AT = DateTimeFormatter.ofPattern("MMM d, uuuu, h:mm a", Locale.US);

    private History() {}

    /** @param problem why the last one could not be taken back; empty if there was none */
    public record View(List<Row> rows, List<Aside> aside, String problem) {}

    /** What could not be read when something else took its place. */
    public record Aside(String key, String at, String size) {}

    public record Row(Edit edit, String at) {}

    public static void routes(Routes on) {
        on.get("history", page -> page.show("haywright/app/web/history.jte", view(page, "")));
        on.post("undo/{rev}", History::undo);
        Gone.routes(on);
        on.get("set-aside/{key}", History::aside);
    }

    private static View view(Page page, String problem) {
        var zone = ZoneId.systemDefault();
        return new View(
                page.desk().store().ranches().history(page.ranch().id()).stream()
                        .map(edit -> new Row(edit, at(edit.at(), zone)))
                        .toList(),
                page.desk().store().recovery().setAside(page.ranch().id()).stream()
                        .map(aside -> new Aside(
                                aside.key(),
                                at(aside.at(), zone),
                                String.format(Locale.US, "%,d characters", aside.characters())))
                        .toList(),
                problem);
    }

    private static void aside(Page page) {
        var doc = page.desk()
                .store()
                .recovery()
                .setAside(page.ranch().id(), page.http().pathParam("key"))
                .orElseThrow(io.javalin.http.NotFoundResponse::new);
        page.http()
                .header("Content-Disposition", "attachment; filename=\"ranch-as-it-was-kept.json\"")
                .contentType("application/octet-stream")
                .result(doc);
    }

    private static String at(@Nullable Instant at, ZoneId zone) {
        return at == null ? "time not known" : AT.format(at.atZone(zone));
    }

    private static void undo(Page page) {
        try {
            long rev = Long.parseLong(page.http().pathParam("rev"));
            Made.check(page, Page.REV);
            var saved = page.desk().store().ranches().undo(page.ranch().id(), rev, Desk.WHO);
            var back = page.http().formParam("back");
            var safe = back != null && back.startsWith(page.at("")) && !back.contains("//") ? back : page.at("history");
            page.leave(safe + "?saved=" + saved.rev());
        } catch (NumberFormatException e) {
            throw new io.javalin.http.NotFoundResponse();
        } catch (Refused e) {
            page.http().status(409);
            page.show(
                    "haywright/app/web/history.jte",
                    view(page, e.problems().get(0).sentence()));
        }
    }
}
