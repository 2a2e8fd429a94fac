package haywright.walk;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Every page of the demo that a link leads to: accessible, and usable in a hand and on a narrow screen. */
class EveryPageIT {
    @RegisterExtension
    private static final Walker walker = new Walker();

    @RegisterExtension
    private static final House house = new House();

    private final List<String> faults = new ArrayList<>();

    @Test
    void everyPageOfTheDemoIsAccessibleAndFits() {
        var page = walker.page(1280, 900, true);
        page.navigate(house.begin());
        faults.addAll(Walker.barriers(page));
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Open the demo"))
                .click();
        var seen = everyKindOfPage(page);
        assertThat(faults).isEmpty();
        assertThat(seen).as("kinds of page").hasSizeGreaterThan(15);
        walker.nothingWasComplainedAbout();
    }

    /** Follows every link, one page of each kind: where ids differ only, the first stands for all. */
    private Set<String> everyKindOfPage(Page page) {
        var seen = new LinkedHashSet<String>();
        var waiting = new ArrayDeque<String>(List.of(page.url()));
        while (!waiting.isEmpty()) {
            var url = waiting.poll();
            if (!seen.add(kind(url))) {
                continue;
            }
            page.setViewportSize(1280, 900);
            page.navigate(url);
            assertThat(page.title()).as(url).doesNotContain("no such page").doesNotContain("went wrong");
            openAll(page);
            faults.addAll(Walker.barriers(page));
            faults.addAll(Walker.misfits(page));
            page.setViewportSize(320, 640);
            faults.addAll(Walker.misfits(page));
            for (var link : (List<?>) page.evaluate("[...document.links].map(a => a.href)")) {
                var to = link.toString().replaceAll("#.*", "");
                if (to.startsWith(house.url("/ranch/")) && isPage(to)) {
                    waiting.add(to);
                }
            }
        }
        return seen;
    }

    private static void openAll(Page page) {
        page.evaluate("document.querySelectorAll('details').forEach(d => d.open = true)");
    }

    private static boolean isPage(String url) {
        return !url.endsWith("/export") && !url.matches(".*/[^/]*\\.[a-z]+(\\?.*)?") && !url.contains("?afresh");
    }

    private static String kind(String url) {
        return url.replaceAll("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f-]{22}", "ID")
                .replaceAll("/[0-9]{4}-[0-9]{2}$", "/WINTER")
                .replaceAll("\\?.*", "");
    }
}
