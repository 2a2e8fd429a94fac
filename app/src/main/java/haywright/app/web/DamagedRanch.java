package haywright.app.web;

import haywright.app.store.RanchFiles;
import haywright.app.words.Show;
import haywright.workings.Refused;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** In place of every page of a ranch whose document cannot be read: what is wrong with it, and the ways back. */
public final class DamagedRanch {
    private final Desk desk;

    private DamagedRanch(Desk desk) {
        this.desk = desk;
    }

    /** A page of such a ranch was asked for. */
    static final class Met extends RuntimeException {
        private static final long serialVersionUID = 1;

        private final transient UUID ranch;
        private final transient Refused wrong;

        Met(UUID ranch, Refused wrong) {
            super(wrong);
            this.ranch = ranch;
            this.wrong = wrong;
        }
    }

    /** @param ways back, the newest first */
    public record View(UUID id, String token, String name, List<String> wrong, List<Way> ways, String problem) {}

    /** @param from {@code history} or {@code copy} */
    public record Way(String from, String words, String button) {}

    public static void routes(RoutesConfig on, Desk desk) {
        var damaged = new DamagedRanch(desk);
        on.exception(Met.class, (met, http) -> damaged.show(http, met.ranch, met.wrong, ""));
        on.get("/ranch/{ranch}/raw", damaged::raw);
        on.post("/ranch/{ranch}/recover/{from}", damaged::recover);
    }

    private void show(Context http, UUID id, Refused wrong, String problem) {
        http.status(422);
        var frame = Frame.plain(http, "This ranch can’t be read");
        var view = new View(
                id,
                frame.token(),
                desk.store().recovery().raw(id).name(),
                wrong.problems().stream()
                        .limit(20)
                        .map(p -> p.field() + ": " + p.sentence())
                        .toList(),
                ways(id),
                problem);
        Pages.render(http, "haywright/app/web/damagedRanch.jte", Map.of("frame", frame, "view", view));
    }

    private List<Way> ways(UUID id) {
        var recovery = desk.store().recovery();
        var ways = new java.util.ArrayList<Way>();
        recovery.lastRevision(id)
                .ifPresent(revision -> ways.add(new Way(
                        "history",
                        "The last good version is number %d%s (%s)."
                                .formatted(
                                        revision.rev(),
                                        revision.savedAt() == null ? "" : ", saved " + day(revision.savedAt()),
                                        RanchFiles.holds(revision.ranch())),
                        "Go back to version " + revision.rev())));
        recovery.newestCopy(id)
                .ifPresent(copy -> ways.add(new Way(
                        "copy",
                        "The newest daily copy that can be read is of %s (%s)."
                                .formatted(Show.date(copy.day()), RanchFiles.holds(copy.ranch())),
                        "Go back to the copy of " + Show.date(copy.day()))));
        return ways;
    }

    private static String day(Instant at) {
        return Show.date(at.atZone(ZoneId.systemDefault()).toLocalDate());
    }

    private void raw(Context http) {
        try {
            desk.store().recovery().raw(id(http)); // that there is one
            var kept = desk.store().recovery().whole(id(http));
            http.header("Content-Disposition", "attachment; filename=\"ranch-as-kept.json\"")
                    .contentType("application/octet-stream")
                    .result(kept);
        } catch (Refused e) {
            if (desk.store().ranches().isHere(id(http))) {
                throw e;
            }
            throw new NotFoundResponse("That ranch is not here.");
        }
    }

    private void recover(Context http) {
        var recovery = desk.store().recovery();
        var id = id(http);
        if (http.pathParam("from").equals("copy")) {
            var copy = recovery.newestCopy(id).orElseThrow(DamagedRanch::gone);
            recovery.putInPlace(copy.ranch(), Desk.WHO, "Back to the copy of " + Show.date(copy.day()));
        } else {
            var revision = recovery.lastRevision(id).orElseThrow(DamagedRanch::gone);
            recovery.putInPlace(revision.ranch(), Desk.WHO, "Back to version " + revision.rev());
        }
        Page.leave(http, "/ranch/" + id + "/history");
    }

    private static NotFoundResponse gone() {
        return new NotFoundResponse("This way back is gone.");
    }

    private static UUID id(Context http) {
        try {
            return UUID.fromString(http.pathParam("ranch"));
        } catch (IllegalArgumentException e) {
            throw new NotFoundResponse();
        }
    }
}
