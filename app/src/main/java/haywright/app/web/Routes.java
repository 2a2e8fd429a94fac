package haywright.app.web;

import io.javalin.config.RoutesConfig;
import org.jspecify.annotations.Nullable;

/** Where a step of the trail says which of its methods answers what. Paths are relative to the ranch. */
public final class Routes {
    private final RoutesConfig routes;
    private final Desk desk;
    private final @Nullable Step step;

    Routes(RoutesConfig routes, Desk desk, @Nullable Step step) {
        this.routes = routes;
        this.desk = desk;
        this.step = step;
    }

    /** Answers one request about a ranch. */
    public interface Answer {
        void to(Page page) throws Exception;
    }

    public void get(String path, Answer answer) {
        routes.get("/ranch/{ranch}/" + path, http -> answer.to(Page.of(http, desk, step)));
    }

    public void post(String path, Answer answer) {
        routes.post("/ranch/{ranch}/" + path, http -> answer.to(Page.of(http, desk, step)));
    }
}
