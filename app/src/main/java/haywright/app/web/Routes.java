package haywright.app.web;

import haywright.app.web.trail.Step;
import haywright.workings.Refused;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Where a step of the trail says which of its methods answers what. Paths are relative to the ranch. */
public final class Routes {
    /** So often somebody else may be quicker. */
    private static final int MOST_TRIES = 100;

    private final RoutesConfig routes;
    private final Desk desk;
    private final @Nullable Step step;
    /** What answers for a page, by path: the page of a form is shown again when what it sent could not be saved. */
    private final Map<String, Answer> pages = new HashMap<>();

    private final Set<String> beside = new HashSet<>();

    public Routes(RoutesConfig routes, Desk desk, @Nullable Step step) {
        this.routes = routes;
        this.desk = desk;
        this.step = step;
    }

    /** Answers one request about a ranch. */
    public interface Answer {
        void to(Page page) throws Exception;
    }

    public void get(String path, Answer answer) {
        pages.put(path, answer);
        routes.get("/ranch/{ranch}/" + path, http -> {
            Boxes.on(http, List.of(answer));
            try {
                answer.to(Page.of(http, desk, step));
            } finally {
                Page.leaveFigures(http);
            }
        });
    }

    /** The same of a form beside others on one page: it is kept under the path that it is sent to. */
    public void postBeside(String path, Answer answer) {
        beside.add(path);
        post(path, answer);
    }

    public void post(String path, Answer answer) {
        routes.post("/ranch/{ranch}/" + path, http -> {
            Boxes.on(http, pages(path));
            try {
                Gone.bringBack(http, desk);
                for (int tries = 1; !isAnswered(http, path, answer, tries); tries++) {
                    // another window saved meanwhile: once more by what stands now
                }
            } catch (Gone e) {
                kept(http, path);
                throw e;
            } finally {
                Page.leaveFigures(http);
            }
        });
    }

    /** Under the form's own page: the one that was sent to, or the nearest above it. */
    private void kept(Context http, String path) {
        var key = http.path().replaceFirst("^/ranch/[^/]+/", "");
        for (var at = path;
                at.contains("/") && !pages.containsKey(at) && !beside.contains(at);
                at = at.substring(0, at.lastIndexOf('/'))) {
            key = key.substring(0, key.lastIndexOf('/'));
        }
        try {
            Gone.keep(http, desk, key);
        } catch (RuntimeException e) {
            Pages.log(http, e); // what is gone is to be said all the same, with what was typed
        }
    }

    private boolean isAnswered(Context http, String path, Answer answer, int tries) throws Exception {
        var page = Page.of(http, desk, step);
        try {
            if (!page.isAnswered()) {
                answer.to(page);
            }
            return true;
        } catch (Page.Again e) {
            if (tries < MOST_TRIES) {
                return false;
            }
            throw new Refused(
                    "ranch",
                    page.ranch().name(),
                    "another program changes this ranch all the time, so that nothing can be saved on it",
                    "End the other program, then send this again.");
        } catch (HttpResponseException | Gone e) {
            throw e;
        } catch (Exception e) {
            var form = pages.get(path);
            if (form == null || !page.showsAgain(form, Errors.Failure.of(page.http(), e))) {
                throw e;
            }
            return true;
        }
    }

    /** Those that may show the form that is sent to a path: its own, then the ones above it. */
    private List<Answer> pages(String path) {
        var found = new ArrayList<Answer>();
        for (var at = path; !at.isEmpty(); at = at.substring(0, Math.max(0, at.lastIndexOf('/')))) {
            var page = pages.get(at);
            if (page != null) {
                found.add(page);
            }
        }
        return found;
    }
}
