package haywright.app.web.tools;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.workings.Worked;
import io.javalin.http.NotFoundResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;

/** The list of small tools, and each on its page; what is typed stays in the address. */
public final class ToolPages {
    private ToolPages() {}

    /** @param says the answer; empty where something is to be fixed */
    public record View(
            String id,
            String title,
            String about,
            String source,
            List<Ask> asks,
            Form form,
            List<String> says,
            List<Worked> workings) {}

    /** One line of the list. */
    public record Line(String id, String title, String about) {}

    public static void routes(Routes on) {
        on.get("tools", ToolPages::list);
        on.get("tools/{tool}", ToolPages::show);
    }

    private static void list(Page page) {
        page.show(
                "haywright/app/web/tools/tools.jte",
                Tool.ALL.stream()
                        .map(tool -> new Line(tool.id(), tool.title(), tool.about()))
                        .toList());
    }

    private static void show(Page page) {
        var tool = Tool.of(page.http().pathParam("tool")).orElseThrow(NotFoundResponse::new);
        var typed = new LinkedHashMap<String, String>();
        boolean asked = false;
        for (var ask : tool.asks()) {
            var said = page.http().queryParam(ask.name());
            asked |= said != null;
            typed.put(ask.name(), said == null ? "" : said);
        }
        var form = Form.of("tools/" + tool.id(), asked ? typed : tool.example());
        Optional<Tool.Answer> answer = tool.works().apply(tool, form);
        page.http().status(form.hasProblems() ? 422 : 200);
        page.show(
                "haywright/app/web/tools/tool.jte",
                new View(
                        tool.id(),
                        tool.title(),
                        tool.about(),
                        asked ? "" : tool.source(),
                        tool.asks(),
                        form,
                        answer.map(Tool.Answer::says).orElse(List.of()),
                        answer.map(Tool.Answer::workings).orElse(List.of())));
    }
}
