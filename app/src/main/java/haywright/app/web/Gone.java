package haywright.app.web;

import haywright.app.store.Drafts;
import haywright.app.store.Ranches;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.NotFoundResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.UUID;

/**
 * What a page or a form is about was deleted in another window, or its ranch archived. It is said, what was typed is kept,
 * and it is brought back where somebody asks for that.
 */
final class Gone extends RuntimeException implements Errors.Answered {
    private static final long serialVersionUID = 1;

    /** Sent by the button that brings it back: the id of what is gone, or of the ranch. */
    static final String AGAIN = "again";

    private static final String ASKED = "bring-back";

    private final transient Errors.Offer offer;
    private final String words;

    private Gone(String words, Errors.Offer offer) {
        super(null, null, false, false);
        this.words = words;
        this.offer = offer;
    }

    String words() {
        return words;
    }

    Errors.Offer offer() {
        return offer;
    }

    static void routes(Routes on) {
        on.post(ASKED, page -> {
            var back = page.http().formParam("back");
            boolean isOwn = back != null && back.startsWith(page.at("")) && !back.contains("//");
            page.leave(isOwn ? back : page.at(""));
        });
    }

    /** @param id of the ranch. @return a page that does not exist where there never was one */
    static RuntimeException ranch(Context http, Desk desk, UUID id) {
        for (var one : desk.store().ranches().deleted()) {
            if (one.id().equals(id)) {
                return new Gone(
                        "“%s” was archived%s.".formatted(one.name(), isSent(http) ? " after you opened this form" : ""),
                        offer(http, desk, id, id, "Restore the ranch"));
            }
        }
        return new NotFoundResponse("That ranch is not here.");
    }

    /** @param id of what is looked for. @return a page that does not exist where it never was on the ranch */
    static RuntimeException row(Page page, UUID id) {
        var http = page.http();
        return page.desk()
                .store()
                .ranches()
                .deleted(page.ranch().id(), id)
                .<RuntimeException>map(gone -> new Gone(
                        "Saved in %s: “%s”.".formatted(isSent(http) ? "another window" : "History", gone.words()),
                        offer(http, page.desk(), page.ranch().id(), id, name(gone))))
                .orElseGet(() -> new NotFoundResponse("It is no longer on this ranch."));
    }

    private static String name(Ranches.Deleted gone) {
        return gone.name().isEmpty() ? "Add it again" : "Add " + gone.name() + " again";
    }

    private static Errors.Offer offer(Context http, Desk desk, UUID ranch, UUID id, String button) {
        if (isSent(http)) {
            return new Errors.Offer(http.path(), button + ", with what you typed", id.toString(), "", List.of());
        }
        var at = http.path().replaceFirst("^/ranch/[^/]+/", "");
        var left = desk.store().drafts().get(ranch, at).entrySet().stream()
                .flatMap(box -> box.getValue().stream()
                        .filter(value -> Errors.Sent.isTyped(box.getKey(), value))
                        .map(value -> Errors.Sent.words(box.getKey()) + ": " + value))
                .toList();
        return new Errors.Offer("/ranch/" + ranch + "/" + ASKED, button, id.toString(), http.path(), left);
    }

    private static boolean isSent(Context http) {
        return http.method() == HandlerType.POST;
    }

    /** Before what was sent is looked at: it is brought back first where that was asked for. */
    static void bringBack(Context http, Desk desk) {
        var again = http.formParam(AGAIN);
        if (again == null) {
            return;
        }
        var ranch = id(http.pathParam("ranch"));
        var id = id(again);
        if (id.equals(ranch)) {
            desk.store().ranches().restore(ranch);
        } else {
            desk.store().ranches().bringBack(ranch, id, Desk.WHO);
        }
    }

    private static UUID id(String typed) {
        try {
            return UUID.fromString(typed);
        } catch (IllegalArgumentException e) {
            throw new NotFoundResponse();
        }
    }

    /**
     * Keeps what was typed. What was left unfinished of the same form stays beside it.
     *
     * @param key of the form
     */
    static void keep(Context http, Desk desk, String key) {
        var typed = new LinkedHashMap<>(Form.posted(key, http.formParamMap()).typed());
        if (typed.isEmpty()) {
            return;
        }
        typed.put(Page.REV, http.formParams(Page.REV));
        desk.store()
                .drafts()
                .put(id(http.pathParam("ranch")), Unfinished.key(http, key), typed, Unfinished.isOwn(http));
        http.attribute(Unfinished.DRAFT, Drafts.print(typed));
    }
}
