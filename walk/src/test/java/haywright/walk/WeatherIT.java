package haywright.walk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.regex.Pattern;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A winter on a new ranch, on a phone and without scripts: the wrong file, a place, the picture, last winter, two groups. */
class WeatherIT {
    private static final DateTimeFormatter LONG = DateTimeFormatter.ofPattern("MMM d, uuuu", Locale.US);

    @RegisterExtension
    private static final Walker walker = new Walker();

    @RegisterExtension
    private static final House house = new House();

    private static void fits(Page page) {
        Assertions.assertThat(Walker.misfits(page)).isEmpty();
    }

    private static void herd(Page page, LocalDate today) {
        Walker.fill(page, "Name of the group", "Old cows");
        Walker.fill(page, "Head", "120");
        Walker.fill(page, "Average weight", "1,280");
        Walker.fill(page, "Body condition score", "5");
        Walker.fill(page, "First calves due", LONG.format(today.plusDays(100)));
        Walker.fill(page, "Weeks of calving", "6");
        Walker.push(page, "Save the group");
        assertThat(page.getByText("Group added: Old cows")).isVisible();
    }

    @Test
    void aWinterOnAPhone() {
        var page = walker.page(360, 740, false);
        page.navigate(house.begin());
        Walker.fill(page, "Ranch name", "Sweetwater Bench");
        Walker.push(page, "Add the ranch");
        page.waitForURL(Pattern.compile(".*/ranch/.*"));
        var ranch = page.url().replaceAll("/$", "");
        var today = LocalDate.now();
        page.navigate(ranch + "/herd/new/mature_cow");
        herd(page, today);

        // another file first; then a name spelled wrong, and the place itself
        page.navigate(ranch + "/settings/weather");
        Walker.unfold(page, "Or import a station’s file");
        page.locator("#f-file")
                .setInputFiles(new FilePayload(
                        "hay.csv", "text/csv", "lot,tons\nnorth,80\n".getBytes(StandardCharsets.UTF_8)));
        Walker.push(page, "Import it");
        assertThat(page).hasTitle(Pattern.compile("^Error: "));
        assertThat(page.locator("#problems")).containsText("a line has station, date, element");
        fits(page);
        Walker.fill(page, "Where is the ranch?", "Bozemna, MT");
        Walker.push(page, "Find its winters");
        assertThat(page.locator("#problems")).containsText("Bozeman, MT");
        fits(page);
        Walker.fill(page, "Where is the ranch?", "Bozeman, MT");
        Walker.push(page, "Find its winters");
        assertThat(page.locator("#main")).containsText("28, 1990-91 to 2017-18, estimated");
        fits(page);
        assertThat(page.locator("#main")).containsText("no windbreak");
        Walker.unfold(page, "Change the place, wind, shelter or coats");
        Walker.fill(page, "Wind on a usual winter day", "300 km/h");
        Walker.push(page, "Save");
        assertThat(page.locator("#problems")).containsText("300 km/h");
        Walker.fill(page, "Wind on a usual winter day", "10");
        page.getByLabel("Yes", new Page.GetByLabelOptions().setExact(true)).press("Space");
        Walker.push(page, "Save");
        page.navigate(ranch + "/settings/weather");
        assertThat(page.locator("#main")).not().containsText("no windbreak");

        // the picture and the rule that comes out
        page.navigate(ranch + "/herd");
        Walker.push(Walker.link(page, "Old cows"));
        assertThat(page.locator("#main")).containsText("per head per day");
        assertThat(page.locator("#main")).containsText("16 of 20 winters");
        assertThat(page.locator("svg.picture").first()).containsText("calving starts");
        fits(page);

        // last winter: what is missing is said; then the two are side by side
        page.navigate(ranch + "/herd/last-winter");
        Walker.push(Walker.link(page, "Enter the turnout date"));
        Walker.fill(page, "Turnout date", LONG.format(today.plusDays(150)));
        Walker.push(page, "Save");
        page.navigate(ranch + "/settings/last-winter");
        Walker.fill(page, "Head fed", "120");
        Walker.fill(page, "Days fed", "150");
        Walker.fill(page, "All feed fed, as hay", "330");
        Walker.push(page, "Save");
        page.navigate(ranch + "/herd/last-winter");
        assertThat(page.locator("#main")).containsText("36.7 lb");
        fits(page);
        // so much is what cattle eat to appetite: there is nothing to count
        assertThat(Walker.button(page, "Use it")).hasCount(0);

        // two of one, and one of two
        page.navigate(ranch + "/herd");
        Walker.push(Walker.link(page, "Old cows"));
        Walker.push(Walker.link(page, "Split"));
        Walker.fill(page, "Head to split off", "120");
        Walker.fill(page, "Name of the new group", "Thin cows");
        Walker.push(page, "Split them");
        assertThat(page.locator("#problems")).containsText("some go and some stay of the 120");
        Walker.fill(page, "Head to split off", "30");
        fits(page);
        Walker.push(page, "Split them");
        assertThat(page.locator("#main")).containsText("30 mature cows");
        Walker.push(Walker.link(page, "Old cows"));
        assertThat(page.locator("h1")).hasText("Old cows"); // the page before says the next line too
        assertThat(page.locator("#main")).containsText("30 head split off as Thin cows");
        Walker.push(Walker.link(page, "Join another"));
        fits(page);
        page.getByLabel("Group to join").selectOption(new com.microsoft.playwright.options.SelectOption().setIndex(1));
        Walker.push(page, "Join them");
        assertThat(page.locator("#main")).containsText("30 head of Thin cows joined 90 head");
        assertThat(page.locator("#main")).containsText("120 mature cows");

        page.navigate(ranch + "/settings/weather");
        Walker.push(page, "Delete the weather");
        assertThat(page.locator("#main")).containsText("not entered: needs are for mild days");
        Walker.leave(page);
    }

    /** With scripts, wide, and looked over by the inspector: what only a station on the page shows. */
    @Test
    void thePagesOfAWinterAreAccessible() {
        var page = walker.page(1280, 900, true);
        page.navigate(house.begin());
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Open the demo"))
                .click();
        page.waitForURL(Pattern.compile(".*/ranch/.*"));
        var ranch = page.url().replaceAll("/$", "");
        page.navigate(ranch + "/settings/weather");
        assertThat(page.locator("#main")).containsText("28, 1990-91 to 2017-18, estimated");
        page.evaluate("document.querySelectorAll('details').forEach(d => d.open = true)");
        Assertions.assertThat(Walker.barriers(page)).isEmpty();
        page.navigate(ranch + "/herd");
        Walker.push(Walker.link(page, "Mature cows"));
        assertThat(page.locator("#main")).containsText("16 of 20 winters");
        page.evaluate("document.querySelectorAll('details').forEach(d => d.open = true)");
        Assertions.assertThat(Walker.barriers(page)).isEmpty();
        page.navigate(ranch + "/herd/last-winter");
        page.evaluate("document.querySelectorAll('details').forEach(d => d.open = true)");
        Assertions.assertThat(Walker.barriers(page)).isEmpty();
        page.setViewportSize(360, 740);
        fits(page);
        Walker.leave(page);
    }
}
