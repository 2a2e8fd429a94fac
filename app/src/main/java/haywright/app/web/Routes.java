package haywright.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.HttpResponseException;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Where a step of the trail says which of its methods answers what. Paths are relative to the ranch. */
public final class Routes {
    private final RoutesConfig routes;
    private final Desk desk;
    private final @Nullable Step step;
    /** What answers for a page, by path: the page of a form is shown again when what it sent could not be saved. */
    private final Map<String, Answer> pages = new HashMap<>();

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
        routes.get("/ranch/{ranch}/" + path, http -> answer.to(Page.of(http, desk, step)));
    }

    public void post(String path, Answer answer) {
        routes.post("/ranch/{ranch}/" + path, http -> {
            var page = Page.of(http, desk, step);
            try {
                answer.to(page);
            } catch (HttpResponseException e) {
                throw e;
            } catch (Exception e) {
                var form = pages.get(path);
                if (form == null || !page.showsAgain(form, Errors.Failure.of(page.http(), e))) {
                    throw e;
                }
            }
        });
    }
}
